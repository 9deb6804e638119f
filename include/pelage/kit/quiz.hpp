// A quiz on one's own kit: questions made from what look-up, ladder, rules and sheets say, when each is
// asked again, and what the answers come to. Nothing here is worded: lib/answers does that.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/model/reference_data.hpp>

namespace pelage {

/// What a question is about.
enum class quiz_topic { lengths, ways, nevers, substitutes, combs, sheets };
inline constexpr std::array<std::string_view, 6> quiz_topic_names{"lengths",     "ways",  "nevers",
                                                                  "substitutes", "combs", "sheets"};
[[nodiscard]] constexpr std::string_view name(quiz_topic t) {
    return quiz_topic_names[static_cast<std::size_t>(t)];
}

/// What is asked.
enum class quiz_asks {
    left_by,       ///< what `tool` leaves of `coat`
    against,       ///< the same against the lay, where with it is told
    which_way,     ///< how `tool` may go in `zone`
    may_go,        ///< which of the options may go there, with the lay
    never_goes,    ///< which of the options may never go there, with the lay
    under_mat,     ///< which is tried under a mat of unknown depth
    in_place_of,   ///< what of the kit does the work of `tool`, which is out, on `coat`
    under_comb,    ///< which blade the comb of `tool` sits on
    nearest_comb,  ///< which comes nearest to `wanted` of `coat`
    sheet_length,  ///< what `sheet` wants in `zone` or `part`
    sheet_blade    ///< which blade it names there
};

/// One of the answers to choose from: a length left (mm), something held, a way, or a blade's id.
struct quiz_option {
    /// One kind of answer a question.
    std::variant<length, setup, use_there::may, std::string> says{};
    std::optional<no_go> no{};  ///< of something held that may not go: why
    std::optional<finished>
        leaves{};  ///< of something held: what it leaves, where that is asked about
};

/// A question with the one right answer and others that are wrong; never fewer than two of these.
struct quiz_question {
    std::string key;                         ///< the same question of the same kit has the same
    quiz_topic topic = quiz_topic::lengths;  ///< what it is about
    quiz_asks asks = quiz_asks::left_by;     ///< what it asks
    setup tool{};                            ///< where it is of one
    coat_class coat = coat_class::wavy;      ///< where it is of one
    std::optional<std::size_t> zone{};  ///< index into body::zones; of in_place_of: firm and flat
    std::optional<group> part{};        ///< of a sheet that says the same of all of it
    std::size_t sheet = 0;              ///< index into quiz_request::sheets
    length wanted{};                    ///< for nearest_comb (mm)
    instruction wish{};                 ///< for the sheet's
    std::optional<finished> with{};     ///< what `tool` leaves with the lay
    std::optional<use_there> there{};   ///< for which_way
    quiz_option right{};                ///< the answer
    std::vector<quiz_option> wrong{};   ///< the most plausible first
    std::vector<known_figure> sure{};   ///< how the figures are known
    std::optional<evidence> known{};    ///< or how the rule or the sheet's length is
};

/// What the questions are made of.
struct quiz_request {
    const reference_data& reference;   ///< what the library knows
    const parameters& rules;           ///< figures, the salon's own among them
    const kit& tools;                  ///< the kit it is about
    const std::vector<style>& sheets;  ///< asked about
    std::optional<date> today{};       ///< a substitute is at hand on that day
};

/// Every question there is, in a fixed order. Of a sound, grown dog whose coat is clipped, with nothing
/// found on it; what depends on how a sheet asks for a place is not asked.
[[nodiscard]] std::vector<quiz_question> quiz_questions(const quiz_request& r);

/// One answer as the trainee's file keeps it.
struct quiz_answer {
    date on{};                               ///< the day
    std::string key;                         ///< of the question
    quiz_topic topic = quiz_topic::lengths;  ///< of the question
    bool right = false;                      ///< it was right
};

/// The figures of the quiz (reference/quiz.toml).
struct quiz_rules {
    std::array<figure<days>, 5> boxes;  ///< wait after so many right answers in a row
    figure<double> score_from;          ///< answers to a topic before a share is told
};

/// Why a question is asked now.
enum class quiz_turn { missed, due, fresh };

/// A question, and why it is its turn.
struct quiz_turn_of {
    std::size_t question = 0;          ///< index into the questions
    quiz_turn why = quiz_turn::fresh;  ///< why now
};

/// What is asked on `today`, first things first: what the last answer missed, then what is due, the longest
/// overdue first, then what was never asked, the topics by turns. The order of equals depends on the day
/// and on `whose` alone. What isn't due is left out.
[[nodiscard]] std::vector<quiz_turn_of> quiz_order(const std::vector<quiz_question>& all,
                                                   const std::vector<quiz_answer>& before,
                                                   const quiz_rules& rules, const date& today,
                                                   std::string_view whose);

/// The first day on which something that was asked is due again; none where nothing of it was.
[[nodiscard]] std::optional<date> quiz_next_day(const std::vector<quiz_question>& all,
                                                const std::vector<quiz_answer>& before,
                                                const quiz_rules& rules);

/// A question as it is put: at most four options, of which one is right.
struct posed_question {
    std::vector<quiz_option> options;  ///< in the order shown
    std::size_t right = 0;             ///< index of the right one
};
/// Where the right one stands, and which others are beside it, depends on question, day and `whose` alone.
[[nodiscard]] posed_question pose(const quiz_question& q, const date& today,
                                  std::string_view whose);

/// What the answers to a topic come to.
struct quiz_score {
    quiz_topic topic = quiz_topic::lengths;  ///< of the questions
    unsigned answers = 0;                    ///< so many
    unsigned right = 0;                      ///< of these
    unsigned missed = 0;       ///< questions of the kit of which the last answer was wrong
    unsigned asked = 0;        ///< questions of the kit that were asked at all
    unsigned of_kit = 0;       ///< questions of the kit
    unsigned first = 0;        ///< questions answered at all, of this kit or another
    unsigned first_right = 0;  ///< of these the first answer was right: later ones were told before
    bool enough = false;       ///< first answers for a share to be told
};
/// Of each topic, in their order.
[[nodiscard]] std::vector<quiz_score> quiz_scores(const std::vector<quiz_question>& all,
                                                  const std::vector<quiz_answer>& answers,
                                                  const quiz_rules& rules);

}  // namespace pelage
