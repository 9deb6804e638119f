// Private to lib: lumps, scabs and fleas in the words of a plan.
#pragma once

#include <string>
#include <string_view>

#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// "a known lump of 10 mm".
[[nodiscard]] std::string finding_words(const skin_finding& f, length_unit u);

/// Where skin is hurt, by what: "left foreleg (broken skin, a wound)"; empty: nowhere.
[[nodiscard]] std::string hurt_skin_words(const plan_request& r);

/// Why hurt skin, or the edge of it, is left alone: "wet, raw skin: left alone, for a veterinarian to
/// see". `z` is left for its skin (outcome::skin_left).
[[nodiscard]] std::string left_alone_words(const zone_plan& z, const plan_request& r);

/// What a place is left alone for, on a card: "wet, raw skin".
[[nodiscard]] std::string sore_in_brief(const zone_plan& z);

/// How long the hair over a lump or scab of a zone is left; nothing where the zone isn't cut.
[[nodiscard]] std::optional<length> hair_over(const zone_plan& z, const refusal_rules& r);

/// Whether a bare blade goes so close there that the hair over a lump stays uncut.
[[nodiscard]] bool shaved_about(const zone_plan& z, const refusal_rules& r);

/// The same in a few words, for a card.
[[nodiscard]] std::string around_in_brief(const zone_plan& z, const skin_finding& f,
                                          const refusal_rules& r, length_unit u);

/// What is done at a lump or scab of a zone that is worked.
[[nodiscard]] std::string go_around_words(const zone_plan& z, const skin_finding& f,
                                          const refusal_rules& r, length_unit u);

/// Why there is no bath, and what is done in its place: "no bath today: broken or wet skin (belly); dry work
/// away from it, ...". Empty where it may be bathed.
[[nodiscard]] std::string no_bath_words(const plan_request& r);
/// The same without what is done in its place, where that stands above.
[[nodiscard]] std::string no_bath_in_brief(const plan_request& r);
/// How it is bathed, "; lukewarm, ... (red skin: belly)", behind what says that it is; empty: as ever.
[[nodiscard]] std::string gently_words(const plan_request& r);
/// What a step before the bath says of being finished after it.
[[nodiscard]] std::string_view finished_later(const plan_request& r);
/// And a step after it of going over what was clipped off before.
[[nodiscard]] std::string_view once_more_words(const plan_request& r);

/// Whether the flea bath comes before any tool, the comb too.
[[nodiscard]] bool flea_bath_first(const groom& g, const plan_request& r);

/// A place is left alone for its skin.
[[nodiscard]] bool any_hurt(const groom& g);
/// Whether fleas wait for the mats to come out: wet mats tighten.
[[nodiscard]] bool fleas_after_mats(const groom& g, const plan_request& r);

/// The flea bath as a step; nothing where no fleas were seen.
[[nodiscard]] std::string flea_bath_words(const groom& g, const plan_request& r);

}  // namespace pelage::io
