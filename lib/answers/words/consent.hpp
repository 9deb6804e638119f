// Private to lib: what the owner's consents are about.
#pragma once

#include <string>

#include <pelage/base/length_text.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// Every place that mats make shorter than was wished, by the parts of the dog: what is matted, what comes
/// down with its part, and edges that go along. "all of the legs and feet; body: back and loin"; empty: none.
/// `matted_alone`: without what comes down only with its part.
[[nodiscard]] std::string shorter_by_mats(const groom& g, const body& b, bool matted_alone = false);

/// What the owner agrees to, as a groomer says it.
[[nodiscard]] std::string consent_words(const consent& c, const groom& g, const plan_request& r);

/// The same in a few words, for a card.
[[nodiscard]] std::string consent_in_brief(const consent& c, const groom& g, const plan_request& r,
                                           length_unit u);

/// Mats come off a double coat's jacket, and no consent to clip it asks about that.
[[nodiscard]] bool bares_double_coat(const groom& g);

}  // namespace pelage::io
