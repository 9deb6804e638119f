// The salon's week and its diary: who is due, and when everybody comes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/forecast/week.hpp>

namespace pelage::io {

/// What a week shows: the dogs of `due` whose clock runs out by the Sunday of the week of `of`, and those
/// of whom something has to be asked or known first.
struct week_matter {
    const week_request& asked;        ///< the salon, and the day
    const std::vector<due_dog>& due;  ///< what is due, a dog each
    date of{};                        ///< any day of the week; not before asked.today's
};
[[nodiscard]] document document_of(const week_matter& m);
[[nodiscard]] std::string json_of(const week_matter& m);

/// A diary; `only`: the visits of that groomer alone.
struct diary_matter {
    const week_request& asked;          ///< the salon, and the day
    const std::vector<due_dog>& due;    ///< what is due, a dog each
    const diary_question& question;     ///< as it was asked of the solver
    const diary& found;                 ///< its answer
    std::optional<std::size_t> only{};  ///< index of the groomer whose visits are told; none: all
};
[[nodiscard]] document document_of(const diary_matter& m);
[[nodiscard]] std::string json_of(const diary_matter& m);
/// As iCalendar (RFC 5545): each visit a whole day, its UID made of the dog's id and how many visits came
/// before it, on record and in the diary.
[[nodiscard]] std::string ics_of(const diary_matter& m);

}  // namespace pelage::io
