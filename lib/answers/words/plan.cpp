#include "answers/words/plan.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/refusal.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

std::string off_words(const zone_plan& z, length_unit u) {
    const length off = gap(z.leaves->best, *z.target);
    return show(off, u) + (z.leaves->best < *z.target ? " shorter" : " longer") + " than asked";
}

/// "; near enough in 20 to 45 days".
std::string wait_words(const std::optional<hair_wait>& w) {
    if (!w) {
        return {};
    }
    return w->never ? "; this coat may never get there"
                    : "; near enough in " + detail::fixed(in_days(w->early), 0) + " to " +
                          detail::fixed(in_days(w->late), 0) + " days";
}

std::string nearer_words(const zone_plan& z, length_unit u) {
    const setup& s = *z.why.nearest;
    if (s.kind == tool_kind::scissors) {
        // under half a minute more isn't worth a word
        return "scissoring would leave " + show(*z.nearer, u) +
               (in_mmin(z.why.more) >= 500
                    ? " and take " + detail::whole_minutes(z.why.more) + " min more here"
                    : "");
    }
    if (s.kind == tool_kind::none) {
        return "left as it is it would be " + show(*z.nearer, u);
    }
    return (held(s) == held(z.how) ? title_words(s, u) : held_words(s, u)) + " would leave " +
           show(*z.nearer, u);
}

std::string beyond_words(const zone_plan& z) {
    switch (z.why.beyond) {
        case beyond_sheet::no:
            break;
        case beyond_sheet::shorter:
            return "; shorter than the sheet allows: the owner decides";
        case beyond_sheet::longer:
            return "; longer than the sheet allows: the owner decides";
    }
    return {};
}

std::string missed_words(const zone_plan& z, length_unit u) {
    std::string text = z.why.nearest
                           ? off_words(z, u) +
                                 (z.why.proven ? ", which costs least on the whole; " : "; ") +
                                 nearer_words(z, u)
                           : "the nearest that may be used here, " + off_words(z, u);
    return text + beyond_words(z);
}

std::string other_blade_words(const zone_plan& z) {
    const auto why = [&]() -> std::string {
        switch (z.why.named) {
            case not_named::not_in_kit:
                return "not in the kit";
            case not_named::out:
                return "out for sharpening";
            case not_named::refused:
                return "not used here";
            case not_named::dearer:
                break;
        }
        return "which would cost more on the whole";
    };
    return "in place of blade " + *z.blade_wish + ", " + why();
}

std::string hair_words(const zone_plan& z, length_unit u) {
    const std::string text =
        z.why.what == cause::hair_below_wish
            ? "today's hair is " + show(*z.now, u) + ", the sheet wants " + show(*z.target, u) +
                  wait_words(z.why.wait)
        : z.target && show(*z.target, u) != show(*z.now, u)
            ? "today's hair is " + show(*z.now, u) + ", near enough to " + show(*z.target, u)
            : "today's hair is already " + show(*z.now, u);
    return z.tidied ? "tidied, what stands out; " + text : text;
}

std::string mat_words(const plan_request& r, const zone_plan& z) {
    const std::string whole{name(part_of(r.reference.dog_body.zones[z.at.zone]))};
    return std::string(in_words(*z.mat)) + ", clipped off" +
           (z.why.with_part   ? " with all of the " + whole
            : z.why.customary ? ""
            : z.trial         ? " by the blade that is safe to try"
                              : " by the longest blade that passes beneath");
}

}  // namespace

std::string then_words(const block& b, const plan_request& r) {
    return std::string(b.off                                 ? finished_later(r)
                       : b.done == finish::comb_then_scissor ? ", then scissor"
                                                             : "");
}

std::string cause_words(const plan_request& r, const zone_plan& z, length_unit u) {
    switch (z.why.what) {
        case cause::none:
            break;
        case cause::felted:
            return "felted to the skin somewhere: a veterinarian decides before anything is done";
        case cause::veterinarian:
            return "a veterinarian sees this dog before anything is done";
        case cause::owner:
            return "a double coat's owner agrees in writing before it is clipped";
        case cause::by_sheet:
            return "the sheet leaves it";
        case cause::no_length:
            return "the sheet gives no length here";
        case cause::jacket_unsigned:
            return "a double coat's jacket is carded, not clipped, unless the owner agrees in "
                   "writing";
        case cause::head_unsigned:
            return "a double coat's head and ears are not clipped unless the owner agrees in "
                   "writing";
        case cause::skin:
        case cause::skin_within:
            return left_alone_words(z, r);
        case cause::hair_at_wish:
        case cause::hair_below_wish:
            return hair_words(z, u);
        case cause::missed:
            return missed_words(z, u);
        case cause::may_leave_less:
            return show(z.leaves->low, u) == show(z.leaves->best, u)
                       ? std::string{}
                       : "may leave as little as " + show(z.leaves->low, u) +
                             ": test a patch first";
        case cause::scissored:
            return "nothing in the kit that may be used here leaves about " + show(*z.target, u) +
                   ": scissored";
        case cause::other_blade:
            return other_blade_words(z);
        case cause::mat_off:
            return mat_words(r, z);
        case cause::part_down:
            return "clipped too: much of the " +
                   std::string(name(part_of(r.reference.dog_body.zones[z.at.zone]))) + " is matted";
        case cause::goes_along:
            return "goes with the " + title(r.reference.dog_body, *z.why.of) +
                   ", whose mats are clipped off; the sheet wants " + show(*z.why.wished, u);
        case cause::as_its_part:
            return off_words(z, u) + ", like what is round it" + beyond_words(z);
        case cause::no_tool:
            return "the kit has nothing at hand that may be used here";
        case cause::no_ten:
            return "the kit has no blade 10 to try under the mat, and how deep it lies isn't known";
        case cause::nothing_passes:
            return "no blade in the kit that may be used here passes under the mat";
        case cause::teats:
            return "pregnant or nursing";
    }
    return {};
}

namespace {

bool wanted_otherwise(const zone_plan& z, length_unit u) {
    return z.target && z.now && show(*z.target, u) != show(*z.now, u);
}

/// "42 to 51 mm wanted"; of places whose hair is all of another length than wanted.
std::string wanted_words(const std::vector<const zone_plan*>& all, length_unit u) {
    length low = *all.front()->target;
    length high = low;
    for (const zone_plan* z : all) {
        low = shorter(low, *z->target);
        high = longer(high, *z->target);
    }
    const std::string least = show(low, u);
    const std::string most = show(high, u);
    return (least == most
                ? most
                : (u == length_unit::mm ? number(low) : fraction_of_inch(low)) + " to " + most) +
           " wanted";
}

/// "near enough in 10 to 44 days", from the first of them to the last; nothing where none is waited for.
std::string wait_words(const std::vector<const zone_plan*>& all) {
    if (!all.front()->why.wait) {
        return {};
    }
    if (all.front()->why.wait->never) {
        return ", may never get there";
    }
    days early = all.front()->why.wait->early;
    days late = all.front()->why.wait->late;
    for (const zone_plan* z : all) {
        early = std::min(early, z->why.wait->early);
        late = std::max(late, z->why.wait->late);
    }
    return ", near enough in " + detail::fixed(in_days(early), 0) + " to " +
           detail::fixed(in_days(late), 0) + " days";
}

}  // namespace

hair_told hair_told_of(const zone_plan& z, length_unit u) {
    const bool wish = wanted_otherwise(z, u);
    return {z.now ? show(*z.now, u) : std::string{}, wish, wish && z.why.wait,
            wish && z.why.wait && z.why.wait->never};
}

std::string hair_in_brief(const std::vector<const zone_plan*>& all, length_unit u) {
    const zone_plan& first = *all.front();
    const std::string now = first.now ? show(*first.now, u) : std::string{};
    return wanted_otherwise(first, u) ? now + " (" + wanted_words(all, u) + wait_words(all) + ")"
                                      : now;
}

std::string missed_in_brief(const zone_plan& z, length_unit u) {
    return off_words(z, u) + beyond_words(z);
}

std::string refused_title(const refused_setup& s, length_unit u) {
    return title_words(s.tool, u) + (s.combed_out ? ", the mat combed out" : "");
}

std::string bar_words(const refused_setup& s, const zone_plan& z, length_unit u) {
    switch (s.no.what) {
        case barrier::kind::none:
            break;
        case barrier::kind::rule:
            return std::string(refusal_words(s.no.rule));
        case barrier::kind::hair_shorter:
            return "longer than today's hair (" + show(*z.now, u) + "): it would do nothing";
        case barrier::kind::too_short:
            return "may leave as little as " + show(s.leaves.low, u) +
                   "; the sheet goes no shorter than " + show(*z.target - z.tolerated, u);
        case barrier::kind::not_longest:
            return "another goes under the mat here: the customary one, or the longest that passes";
        case barrier::kind::too_long:
            return "leaves " + show(s.leaves.best, u) + "; the sheet goes no longer than " +
                   show(*z.target + z.tolerated, u);
    }
    return {};
}

}  // namespace pelage::io
