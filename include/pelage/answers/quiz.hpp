// The quiz in words: a question, its answers, the reason, and the score as a document and as JSON.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/kit/quiz.hpp>

namespace pelage::io {

/// "Belly: how may blade 10 go there?"
[[nodiscard]] std::string question_words(const quiz_question& q, const quiz_request& r,
                                         length_unit u);
/// "about 5.1 mm", "blade 10", "with the lay only".
[[nodiscard]] std::string option_words(const quiz_option& o, const quiz_question& q, length_unit u);
/// Why the right answer is right, and why not what else was offered; `chosen`, one of the wrong, first
/// where somebody chose it.
[[nodiscard]] std::string reason_words(const quiz_question& q, const posed_question& p,
                                       const quiz_option* chosen, const quiz_request& r,
                                       length_unit u);
/// How that is known.
[[nodiscard]] std::string basis_words(const quiz_question& q, const quiz_request& r);
/// What holds of every question.
[[nodiscard]] std::string quiz_caution();

/// A sitting, and what all answers come to.
struct quiz_result {
    std::string whose{};                ///< empty: nothing is kept
    std::optional<unsigned> answers{};  ///< of this sitting; none: nothing was asked
    unsigned right = 0;                 ///< of these
    std::vector<std::string> missed{};  ///< of this sitting, each with its answer
    std::vector<quiz_score> scores{};   ///< one a topic
    std::optional<date> next{};         ///< when something is due again
};
[[nodiscard]] document document_of(const quiz_result& q, const quiz_rules& rules,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const quiz_result& q);

}  // namespace pelage::io
