// Private to lib: what the card and the whole plan say alike.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// What it is booked for is no whole groom.
[[nodiscard]] inline bool booked_in_part(const plan_request& r) {
    return r.booked != nullptr && !r.booked->whole;
}
/// What it is booked for; a full groom where nobody said.
[[nodiscard]] inline const service& booked_service(const plan_request& r) {
    return r.booked != nullptr ? *r.booked : service_of(r.reference, service_kind::full);
}
/// It is bathed between the two lists.
[[nodiscard]] inline bool bathed_between(const plan_request& r) {
    return r.booked == nullptr || r.booked->has(service_step::bath);
}

/// It isn't bathed between them for its skin.
[[nodiscard]] inline bool stays_dry(const plan_request& r) {
    return bathed_between(r) && bath_for(r.patient.skin) == bath_care::none;
}
/// How an appointment of so many minutes is broken up, behind them; empty: it isn't.
[[nodiscard]] std::string broken_up(const groom& g, const plan_request& r, const work& whole);

/// The basis in brackets, under --explain.
[[nodiscard]] std::string because(const evidence& e, const print_options& o);

/// Why nothing is planned: a veterinarian first.
[[nodiscard]] std::vector<line> stop_lines(const groom& g, const plan_request& r,
                                           const print_options& o);

/// What it is booked for, and what that doesn't do; nothing where nobody said.
[[nodiscard]] std::vector<line> booking_lines(const groom& g, const plan_request& r,
                                              bool brief = false);
/// Steps of a booking that the lists of a plan don't hold, each as the trade does it (common practice).
[[nodiscard]] std::vector<line> booked_steps(const groom& g, const plan_request& r);
/// Where skin is hurt so that nobody holds the foot for its nails: " on the sore feet", " on the sore leg"; empty:
/// nowhere.
[[nodiscard]] std::string sore_limbs(const groom& g, const plan_request& r);
/// "nails", or what is minded of them today: sore feet, and feet it hates to have touched.
[[nodiscard]] std::string nails_today(const groom& g, const plan_request& r);
/// Whether an ear is left alone for its skin: it isn't wiped, either.
[[nodiscard]] bool sore_ear(const groom& g, const plan_request& r);

/// Places that are left, by why; hurt ones as cautions.
inline constexpr std::string_view not_booked = "all that isn't booked";
/// `by_length`: with those whose hair is at the wish already or has still to grow to it.
[[nodiscard]] std::vector<line> left_lines(const groom& g, const plan_request& r, length_unit u,
                                           bool by_length = true);
/// Its hair is at the wish or below it, and nothing of it is cut.
[[nodiscard]] bool left_for_its_length(const zone_plan& z);
/// Why no day is set yet: what stopped it, or a groom in visits of which a veterinarian says the next; empty:
/// one is.
[[nodiscard]] std::string_view no_day_yet(const groom& g);

/// What the owner is asked: about pairs that come out uneven, unless whole ways to choose from say it
/// (`choices_told`), and about a jacket most of which comes out longer than asked, within its sheet.
[[nodiscard]] std::vector<line> ask_lines(const groom& g, const plan_request& r, length_unit u,
                                          bool choices_told);

/// What the coat is, where custom doesn't clip it and this plan does, a double one apart: its owner has
/// agreed. Empty otherwise.
[[nodiscard]] std::string not_clipped_as_a_rule(const groom& g, const plan_request& r);

}  // namespace pelage::io
