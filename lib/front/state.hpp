// Private to lib: what answers of the front door share. Each state owns or shares all that its values
// refer to; it is made once, on the heap, and never changes or moves.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/forecast/calendar.hpp>
#include <pelage/front/salon.hpp>
#include <pelage/kit/check.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage::detail {

/// What was read. The reference lives as long as the program.
struct salon_state {
    const reference_data& reference;
    salon_files files;
    std::vector<style> sheets;  ///< the salon's, then those of the reference with other ids
};

struct plan_state {
    std::shared_ptr<const salon_state> home;
    std::optional<date> today;
    std::optional<pelage::chance> asked;
    dog patient;
    style sheet;
    std::optional<expected_coat> by_mix;  ///< where nobody has seen the coat
    groom made{};
    std::optional<return_date> when{};  ///< none: the plan doesn't go ahead

    [[nodiscard]] plan_request request() const {
        return {
            home->reference, home->files.rules, home->files.tools, patient, sheet, today, asked};
    }
    [[nodiscard]] io::print_options print(length_unit u) const {
        return {.units = u, .today = today, .closed = home->files.closed};
    }
};

struct lookup_state {
    std::shared_ptr<const salon_state> home;
    std::string text;
    std::optional<coat_class> coat;
    std::optional<date> today;
    lookup_answer made{};

    [[nodiscard]] lookup_request request() const {
        return {.reference = home->reference,
                .rules = home->files.rules,
                .tools = home->files.tools,
                .text = text,
                .coat = coat,
                .where = {},
                .way = {},
                .today = today};
    }
};

struct ladder_state {
    lookup_state asked;
    ladder made{};
};

struct calendar_state {
    std::shared_ptr<const plan_state> of;
    date today{};
    int weeks = 26;
    std::vector<style> sheets;  ///< the salon's, as they are on the day
    calendar made{};
};

struct kit_state {
    std::shared_ptr<const salon_state> home;
    std::optional<date> today;
    kit_check made{};

    [[nodiscard]] kit_check_request request() const {
        return {home->reference, home->files.rules, home->files.tools, home->files.styles, today};
    }
};

/// A setup as a value of the front door, and back.
[[nodiscard]] tool_in_hand in_hand(const setup& s);
[[nodiscard]] sheet_card card_of(const style& s);

/// A calendar's request lives in two objects; both borrow from the state.
template <class Use>
[[nodiscard]] auto with_request(const calendar_state& s, Use use) {
    const plan_request work = s.of->request();
    const calendar_request r{work, s.today, s.weeks, s.of->home->files.closed, &s.of->home->sheets};
    return use(r);
}

}  // namespace pelage::detail
