// Who of a salon's dogs is due and by when, and the diary of the weeks to come.
//
// A dog's next visit and its next full groom are those of its calendar: what its last visits on record
// left, under its clocks. Who has no full groom on record isn't guessed at: it is told apart.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/model/reference_data.hpp>
#include <pelage/solver/diary.hpp>
#include <pelage/solver/visit_schedule.hpp>

namespace pelage {

/// What is asked. Borrowed for the call.
struct week_request {
    const reference_data& reference;   ///< what the library knows
    const salon_files& salon;          ///< its dogs, sheets and groomers
    const std::vector<style>& styles;  ///< the salon's own and the reference's, as they are today
    date today{};                      ///< from when it is reckoned
};

/// What keeps a dog from being planned at all.
enum class not_plannable { no_coat, no_sheet, no_groomer };

/// One dog of the salon as it stands today.
struct due_dog {
    std::size_t dog = 0;                         ///< index into salon_files::dogs
    std::optional<not_plannable> why_not;        ///< none: it can be planned
    bool stopped = false;                        ///< a veterinarian first
    bool asked_first = false;                    ///< its sheet clips a double coat: the owner first
    bool vet_word = false;                       ///< it ails: a veterinarian's word first
    bool in_visits = false;                      ///< and no groom in one go: two visits or more
    bool stuck = false;                          ///< some place can't be done as asked
    std::vector<std::string> unsigned_consents;  ///< ids of what the owner hasn't agreed to yet
    bool undated_mats = false;       ///< its file names mats without a day, and a groom came since
    std::optional<date> last_full;   ///< on record
    std::optional<date> last_visit;  ///< none on record
    visit_work what = visit_work::full_groom;  ///< the next visit
    /// And the day its clock runs out, as plan and regrow tell it; in the past: overdue since. Face and feet
    /// alone make no visit due: a diary books them.
    date by{};
    date full_by{};                ///< likewise of the next full groom
    work takes{};                  ///< the salon's minutes at that visit
    std::optional<date> promised;  ///< the day told to the owner for the next visit, from today on
    // for the diary
    int full_clock = 0;                              ///< days between full grooms to come
    std::optional<int> brush_clock;                  ///< as diary_dog has them
    int length_clock = 0;                            ///< likewise
    std::optional<int> tidy_clock;                   ///< likewise
    std::optional<date> between_by;                  ///< the sooner of brush and tidy
    visit_work between = visit_work::bath_and_tidy;  ///< what is done at a visit between
    work full_takes{};                               ///< the whole appointment of a full groom
    work first_full_takes{};  ///< the next full groom: with what today's mats add
    work between_takes{};     ///< the whole appointment of a visit between

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

/// The day on which what was promised for `on` is done: that day, or where the salon is closed or nobody who
/// may groom the dog works, the nearest that is open to both, of two the sooner; nothing if there is none from
/// `today` on within four weeks.
[[nodiscard]] std::optional<date> day_for_promise(const salon_files& s, const dog& d,
                                                  const date& today, const date& on);

/// Why a day told to an owner isn't booked.
enum class promise_broken {
    no,            ///< it is booked
    after_diary,   ///< it lies after the last day, and the dog isn't booked before it
    closed,        ///< the salon is closed that day
    owner_cannot,  ///< its owner can't come
    away,          ///< whoever may groom it isn't there
    no_room        ///< nobody who may groom it has as much time left
};

inline constexpr std::array<std::string_view, 6> promise_names{
    "kept", "later", "closed", "owner cannot", "nobody there", "no room"};
[[nodiscard]] constexpr std::string_view name(promise_broken p) {
    return promise_names[static_cast<std::size_t>(p)];
}

/// A day told to a dog's owner for its next visit (due_dog::promised).
struct promised_visit {
    std::size_t due = 0;                      ///< index into the due dogs
    std::size_t dog = 0;                      ///< of the problem; booked ones
    date on{};                                ///< the day promised
    promise_broken why = promise_broken::no;  ///< kept, or why it can't be
    std::optional<date> instead{};  ///< booked then, since nobody works on the day promised
    // of a booked one
    bool full = true;         ///< a full groom, else what comes between
    std::size_t groomer = 0;  ///< index into the salon's groomers
    work takes{};             ///< the whole appointment
    int late = 0;             ///< days after the clock that ended first; 0 or less: in time

    /// The day it is booked for; nothing if it isn't.
    [[nodiscard]] std::optional<date> booked() const {
        return why == promise_broken::no ? std::optional{on} : instead;
    }
};

/// The diary's problem for these dogs: the bookable ones, over `weeks` weeks from today. `which` says of
/// each dog of the problem which of `due` it is. Where the salon names no groomer there are no hours.
/// What was promised is no part of the search: it is booked before it, its minutes are out of the hours,
/// and the dog comes to the problem as it will be after that visit. It is a full groom where a visit
/// between would be followed by one sooner than its clock.
struct diary_question {
    date from{};                     ///< day 0
    diary_problem problem;           ///< in whole numbers
    std::vector<std::size_t> which;  ///< of each dog of the problem its index into the dogs due
    std::vector<promised_visit> promised;  ///< by day, then dog
    work promised_cost{};                  ///< minutes, trips and days late of those booked
};

/// Minutes of each visit of a diary for these dogs, in its order: a dog's first full groom takes what its
/// mats of today add. (The search reckons every full groom of such a dog so, and books nobody beyond hours.)
[[nodiscard]] std::vector<work> visit_minutes(const diary& d, const diary_question& q,
                                              const std::vector<due_dog>& due);

/// The diary found for it, with what was promised in it.
[[nodiscard]] diary with_promised(diary found, const diary_question& q);
[[nodiscard]] diary_question diary_question_of(const week_request& r,
                                               const std::vector<due_dog>& due, int weeks);

}  // namespace pelage
