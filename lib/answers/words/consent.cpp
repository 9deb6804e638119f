#include "answers/words/consent.hpp"

#include <algorithm>
#include <optional>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/places.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

bool shorter_than_wished(const zone_plan& z) {
    switch (z.came) {
        case outcome::goes_along:
            return true;
        case outcome::clipped_under:
        case outcome::taken_down:
            // without a wish the sheet would leave the hair as it is
            return !z.target || !z.leaves || z.leaves->best < *z.target - z.tolerated;
        default:
            return false;
    }
}

/// The places of one part of the dog: those concerned, and the others.
struct split {
    std::vector<place> shorter;
    std::vector<place> others;
};

split split_of(const groom& g, const body& b, group where, bool matted_alone) {
    split out;
    for (const zone_plan& z : g.zones) {
        if (b.zones[z.at.zone].where == where) {
            const bool chosen = matted_alone && z.came == outcome::taken_down;
            (shorter_than_wished(z) && !chosen ? out.shorter : out.others).push_back(z.at);
        }
    }
    return out;
}

}  // namespace

std::string shorter_by_mats(const groom& g, const body& b, bool matted_alone) {
    std::vector<std::string> whole;
    std::vector<std::string> said;
    for (const group one : {group::body, group::legs, group::feet, group::tail, group::head}) {
        const split s = split_of(g, b, one, matted_alone);
        const std::string part(name(one));
        if (s.shorter.empty()) {
            continue;
        }
        if (s.others.empty()) {
            whole.push_back(part);
            continue;
        }
        const std::vector<std::string> here = titles(b, s.shorter);
        const std::vector<std::string> not_here = titles(b, s.others);
        const bool nearly = not_here.size() <= 2 && here.size() > 2 * not_here.size();
        const std::string places = nearly ? "all but " + listed(not_here) : listed(here);
        said.push_back(places == part ? part : part + ": " + places);
    }
    if (!whole.empty()) {
        said.insert(said.begin(), "all of the " + listed(whole));
    }
    return joined(said, "; ");
}

bool bares_double_coat(const groom& g) {
    return std::any_of(g.cautions.begin(), g.cautions.end(),
                       [](const caution_line& c) {
                           return c.what.when == caution_when::double_jacket_clipped;
                       }) &&
           std::none_of(g.consents.begin(), g.consents.end(),
                        [](const consent& c) { return c.what == consent_for::double_jacket; });
}

namespace {

/// " (2.3 mm)", " (1.5 to 3.2 mm)": what the mats' places come to, for who signs.
std::string come_to(const groom& g, const body& b, length_unit u) {
    std::optional<ends> all;
    for (const zone_plan& z : g.zones) {
        // what is always short is told with no part
        const bool told = b.zones[z.at.zone].where != group::prep;
        if (told && z.leaves && shorter_than_wished(z)) {
            const length& l = z.leaves->best;
            all = all ? ends{shorter(all->low, l), longer(all->high, l)} : ends{l, l};
        }
    }
    if (!all) {
        return {};
    }
    const std::string low = show(all->low, u);
    const std::string high = show(all->high, u);
    const std::string bare = u == length_unit::mm ? number(all->low) : fraction_of_inch(all->low);
    return " (" + (low == high ? high : bare + " to " + high) + ")";
}

}  // namespace

namespace {

/// The places of shorter_by_mats() as the steps name them.
std::string shorter_in_brief(const groom& g, const plan_request& r) {
    zone_list where;
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        const bool prep = r.reference.dog_body.zones[z.at.zone].where == group::prep;
        if (!prep && z.leaves && shorter_than_wished(z)) {
            where.push_back(i);
        }
    }
    return joined(place_words(g, r).by_part(where), ", ");
}

}  // namespace

std::string consent_in_brief(const consent& c, const groom& g, const plan_request& r,
                             length_unit u) {
    switch (c.what) {
        case consent_for::mats_off: {
            const std::string where = shorter_by_mats(g, r.reference.dog_body);
            return "mats clipped off" +
                   (where.empty() ? ""
                                  : ", shorter" + come_to(g, r.reference.dog_body, u) + ": " +
                                        shorter_in_brief(g, r)) +
                   (bares_double_coat(g) ? "; a double coat may come back slowly, patchy or changed"
                                         : "");
        }
        case consent_for::strip_jacket:
            return "clipped, not stripped: softer, paler coat";
        case consent_for::frail:
            return std::string(only_with_young(r.patient) ? "a pregnant or nursing"
                                                          : "an old or unwell") +
                   " dog is groomed all the same, and stopped when it has had enough";
        default:
            return consent_words(c, g, r);
    }
}

std::string consent_words(const consent& c, const groom& g, const plan_request& r) {
    switch (c.what) {
        case consent_for::mats_off: {
            const std::string where = shorter_by_mats(g, r.reference.dog_body);
            return (where.empty() ? "mats are clipped off: shorter than the style in those places"
                                  : "mats are clipped off; shorter than the style: " + where) +
                   (bares_double_coat(g)
                        ? "; a double coat so clipped may come back slowly, patchy or changed"
                        : "");
        }
        case consent_for::other_length:
            return std::string(
                       "nothing in the kit that may go there leaves the length agreed: some "
                       "places come out ") +
                   (c.shorter ? c.longer ? "shorter, others longer" : "shorter" : "longer");
        case consent_for::double_jacket:
            return std::string("clipping a double coat: it may grow back slowly or changed") +
                   (c.withheld ? "; until then what was to be clipped is left" : "");
        case consent_for::strip_jacket:
            return "clipping instead of hand-stripping: softer coat, paler colour";
        case consent_for::frail:
            return std::string(only_with_young(r.patient) ? "a pregnant or nursing"
                                                          : "an old, ill or thin-skinned") +
                   " dog is groomed: it tires and is hurt more easily, "
                   "and the groom stops early if it has had enough";
        case consent_for::show_blades:
            return "very short blades on clean face and feet (show finish)";
        case consent_for::sun_short:
            return "out in the sun most of the day, pale or thin skin burns under such short hair: "
                   "so short all the same, or longer there";
        case consent_for::by_sheet:
            break;
    }
    return c.id == "clip-jacket"
               ? "the jacket is clipped, not hand-stripped or carded: its coat may change"
               : c.id;
}

}  // namespace pelage::io
