// Who of a salon's dogs is due and by when, and the diary of the weeks to come.
//
// A dog's next visit and its next full groom are those of its calendar: what its last visits on record
// left, under its clocks. Who has no full groom on record isn't guessed at: it is told apart.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <pelage/model/reference_data.hpp>
#include <pelage/solver/diary.hpp>
#include <pelage/solver/visit_schedule.hpp>

namespace pelage {

/// What is asked. Borrowed for the call.
struct week_request {
    const reference_data& reference;
    const salon_files& salon;
    const std::vector<style>& styles;  ///< the salon's own and the reference's, as they are today
    date today{};
};

/// What keeps a dog from being planned at all.
enum class not_plannable { no_coat, no_sheet, no_groomer };

/// One dog of the salon as it stands today.
struct due_dog {
    std::size_t dog = 0;  ///< index into salon_files::dogs
    std::optional<not_plannable> why_not;
    bool stopped = false;                        ///< a veterinarian first
    bool asked_first = false;                    ///< its sheet clips a double coat: the owner first
    bool stuck = false;                          ///< some place can't be done as asked
    std::vector<std::string> unsigned_consents;  ///< ids of what the owner hasn't agreed to yet
    std::optional<date> last_full;               ///< on record
    std::optional<date> last_visit;
    visit_work what = visit_work::full_groom;  ///< the next visit
    /// And the day its clock runs out, as plan and regrow tell it; in the past: overdue since. Face and feet
    /// alone make no visit due: a diary books them.
    date by{};
    date full_by{};                ///< likewise of the next full groom
    work takes{};                  ///< the salon's minutes at that visit
    std::optional<date> promised;  ///< the day told to the owner for the next visit, from today on
    // for the diary
    int full_clock = 0;              ///< days between full grooms to come
    std::optional<int> brush_clock;  ///< as diary_dog has them
    int length_clock = 0;
    std::optional<int> tidy_clock;
    std::optional<date> between_by;                  ///< the sooner of brush and tidy
    visit_work between = visit_work::bath_and_tidy;  ///< what is done at a visit between
    work full_takes{};
    work between_takes{};

    /// It can be booked: nothing has to be asked or known first.
    [[nodiscard]] bool bookable() const {
        return !why_not && !stopped && !asked_first && last_full.has_value();
    }
};

/// Every dog of the salon, in the order of its files.
[[nodiscard]] std::vector<due_dog> due_dogs(const week_request& r);

/// The last day on which the salon takes dogs and the owner can come, from `today` to `by`; nothing if
/// there is none.
[[nodiscard]] std::optional<date> last_open_day(const salon_files& s, const dog& d,
                                                const date& today, const date& by);

/// The diary's problem for these dogs: the bookable ones, over `weeks` weeks from today. `which` says of
/// each dog of the problem which of `due` it is. Where the salon names no groomer there are no hours.
struct diary_question {
    diary_problem problem;
    std::vector<std::size_t> which;
};
[[nodiscard]] diary_question diary_question_of(const week_request& r,
                                               const std::vector<due_dog>& due, int weeks);

}  // namespace pelage
