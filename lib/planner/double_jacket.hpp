// Private to lib: the jacket of a double coat, and what hand tools and pads are about.
#pragma once

#include <optional>

#include <pelage/planner/plan.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

class ready_kit;
class wishes_by_place;

/// Where a blade on a double coat needs the owner's consent: all of it but feet and prep zones. A
/// clipped head on a coat left standing is no groom either.
[[nodiscard]] bool asks_consent(const zone& z);

/// A double coat whose owner hasn't agreed to have it clipped.
[[nodiscard]] bool jacket_unsigned(const plan_request& r);

/// The wish clips: by blade, or by comb before scissors.
[[nodiscard]] bool wants_clipping(const instruction& wish);

/// The sheet, departures counted, wants the jacket clipped.
[[nodiscard]] bool clips_jacket(const wishes_by_place& wishes, const body& b);

/// The reference's first sheet for such a coat that leaves its jacket unclipped; null if there is none.
[[nodiscard]] const style* sheet_instead(const reference_data& c, coat_class k);

/// Whether the clip asked for is a question to the owner first. `zones`: what was compiled.
[[nodiscard]] std::optional<clip_question> question_of(const plan_request& r,
                                                       const ready_kit& ready,
                                                       const std::vector<zone_plan>& zones);

/// Before a double coat is clipped its loose undercoat comes out, on a bathed and dried coat: a block
/// at the head of the second list, its minutes added (common practice, no source).
void card_out_first(const plan_request& r, groom& g);

/// A hand tool under the name the trade has for it on this coat.
void call_by_name(setup& s, const coat& c);

/// What a setup leaves in a zone, `clipped` being what it leaves on the coat: between the pads hair
/// has no lay and is scooped out, so a blade leaves its stated length there.
[[nodiscard]] finished left_there(const zone& z, const setup& s, const finished& clipped,
                                  const cut_rules& rules);

}  // namespace pelage
