// The blends of a card, in a line or two; of many joins only what does them.
#include <algorithm>
#include <iterator>
#include <utility>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/model/cut.hpp>

#include "answers/blends.hpp"
#include "answers/blends_alike.hpp"
#include "answers/grouped.hpp"
#include "answers/layout.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

/// Adds it unless it is there or nothing.
void add_once(std::vector<std::string>& all, const std::string& one) {
    if (!one.empty() && std::find(all.begin(), all.end(), one) == all.end()) {
        all.push_back(one);
    }
}

const length& stated(const setup& s) {
    return s.over ? s.over->stated.best : s.tool.stated.best;
}

using alike_list = std::vector<const blended_alike*>;

/// Where some tool blends from, and into what.
struct edge_zones {
    zone_list from;
    zone_list into;
    bool sore = false;
};

/// All it blends, or of that what hangs together, one after the other.
std::vector<edge_zones> zones_of(const alike_list& alike, bool apart, const place_words& places) {
    // all round the body it is one thing to the hand
    const auto leg_into_body = [&](std::size_t from, std::size_t into) {
        return places.zone_of(from).where == group::legs &&
               places.zone_of(into).where == group::body;
    };
    std::vector<edge_zones> out;
    for (const blended_alike* w : alike) {
        for (const auto& [from, into] : w->pairs) {
            edge_zones one{{from}, {into}, w->sore};
            for (auto at = out.begin(); at != out.end();) {
                if (!apart || has(at->from, from) || has(at->into, into) ||
                    (leg_into_body(from, into) &&
                     leg_into_body(at->from.front(), at->into.front()))) {
                    add(one.from, at->from);
                    add(one.into, at->into);
                    one.sore = one.sore || at->sore;
                    at = out.erase(at);
                } else {
                    ++at;
                }
            }
            out.push_back(std::move(one));
        }
    }
    std::stable_sort(out.begin(), out.end(), [](const edge_zones& a, const edge_zones& b) {
        return a.from.front() < b.from.front();
    });
    return out;
}

/// As names_of() has them; but a part that another tool is held at, too, isn't said whole.
std::vector<std::string> names_apart(const zone_list& zones, const zone_list& elsewhere,
                                     const place_words& places) {
    zone_list whole;
    zone_list single;
    for (const std::size_t i : zones) {
        const bool shared = std::any_of(elsewhere.begin(), elsewhere.end(), [&](std::size_t k) {
            return places.zone_of(k).where == places.zone_of(i).where;
        });
        (shared ? single : whole).push_back(i);
    }
    std::vector<std::string> all = names_of(whole, places);
    for (std::string& one : places.titles_of(single)) {
        all.push_back(std::move(one));
    }
    return all;
}

bool at_the_eye(const edge_zones& e, const place_words& places) {
    const auto brow = [&](std::size_t i) { return places.zone_of(i).id == "eyebrow"; };
    return std::any_of(e.from.begin(), e.from.end(), brow) ||
           std::any_of(e.into.begin(), e.into.end(), brow);
}

std::string edge_words(const edge_zones& e, const zone_list& from_elsewhere,
                       const zone_list& into_elsewhere, const place_words& places) {
    return listed(names_apart(e.from, from_elsewhere, places)) + " into " +
           listed(names_apart(e.into, into_elsewhere, places)) +
           (at_the_eye(e, places) ? " (points off the eye)" : "") +
           (e.sore ? ", " + std::string(sore_edge) : "");
}

/// "legs and head into body": what one tool blends beside those others. Of many places what hangs together apart, so
/// that nobody has to pair them.
std::vector<std::string> where_of(const alike_list& alike, const alike_list& others,
                                  const place_words& places) {
    zone_list from;
    zone_list into;
    for (const edge_zones& e : zones_of(others, false, places)) {
        add(from, e.from);
        add(into, e.into);
    }
    constexpr std::size_t at_sight = 4;  // places: more have to be paired
    const edge_zones all = zones_of(alike, false, places).front();
    const std::size_t told =
        names_apart(all.from, from, places).size() + names_apart(all.into, into, places).size();
    const std::vector<edge_zones> parts = zones_of(alike, true, places);
    if (parts.size() == 1 || told <= at_sight) {
        return {edge_words(all, from, into, places)};
    }
    std::vector<std::string> out;
    for (const edge_zones& e : parts) {
        zone_list other_from = from;
        zone_list other_into = into;
        for (const edge_zones& o : parts) {
            if (&o != &e) {
                add(other_from, o.from);
                add(other_into, o.into);
            }
        }
        out.push_back(edge_words(e, other_from, other_into, places));
    }
    return out;
}

/// One tool that blends, and all it does.
struct blending_tool {
    std::string held;  ///< "blade 5F", "comb 10 mm"
    std::string over;  ///< of a comb: " over 30", and the way where it is against the lay
    alike_list blends;
};

/// Shortest first.
std::vector<blending_tool> tools_of(alike_list all, length_unit u) {
    std::stable_sort(all.begin(), all.end(),
                     [](const blended_alike* one, const blended_alike* other) {
                         return stated(*one->by) < stated(*other->by);
                     });
    std::vector<blending_tool> out;
    for (const blended_alike* w : all) {
        const setup& s = *w->by;
        const bool against = s.way == direction::against_lay;
        const std::string way = against ? ", " + std::string(name(s.way)) : "";
        const std::string held = s.over ? comb_words(s.over->id, u) : held_words(s, u) + way;
        const std::string over = s.over ? " over " + s.tool.id + way : "";
        const auto same = std::find_if(out.begin(), out.end(), [&](const blending_tool& t) {
            return t.held == held && t.over == over;
        });
        (same != out.end() ? *same : out.emplace_back(blending_tool{held, over, {}}))
            .blends.push_back(w);
    }
    return out;
}

/// "blade 5F, leaves about 6.3 mm: back into legs", "combs over 30: 10 mm feet into legs; 13 mm legs into body".
std::vector<std::string> clippers_in_brief(const alike_list& all, const plan_request& r,
                                           const place_words& places, length_unit u) {
    const std::vector<blending_tool> tools = tools_of(all, u);
    const auto where = [&](const blending_tool& t) {
        alike_list others;
        std::copy_if(all.begin(), all.end(), std::back_inserter(others), [&](const auto* w) {
            return std::find(t.blends.begin(), t.blends.end(), w) == t.blends.end();
        });
        return where_of(t.blends, others, places);
    };
    std::vector<std::string> out;
    grouped<std::string> by_blade;  // of combs, by what is beneath
    for (std::size_t k = 0; k < tools.size(); ++k) {
        const blending_tool& t = tools[k];
        if (!t.over.empty()) {
            by_blade.add(t.over, k);
            continue;
        }
        const double lay = lay_of(r.reference, r.rules, *r.patient.coat).best;
        const finished leaves = cut_length(*t.blends.front()->by, lay, r.rules.cut);
        out.push_back(t.held + ", leaves about " + show(leaves.best, u) + ": " +
                      joined(where(t), "; "));
    }
    for (const auto& [over, which] : by_blade.all()) {
        std::vector<std::string> each;
        for (const std::size_t k : which) {
            const std::vector<std::string> parts = where(tools[k]);
            if (which.size() == 1) {
                each.push_back(kept_together(tools[k].held) + over + ": " + joined(parts, "; "));
                continue;
            }
            for (const std::string& one : parts) {
                const std::size_t first = std::min(one.find_first_of(" ,"), one.size());
                each.push_back(kept_together(tools[k].held + " " + one.substr(0, first)) +
                               one.substr(first));
            }
        }
        out.push_back((which.size() > 1 ? "combs" + over + ": " : "comb ") + joined(each, "; "));
    }
    return out;
}

/// "body with legs and tail; within the head": where lengths meet, part by part.
std::string parts_that_meet(const std::vector<blended_alike>& all, const place_words& places) {
    std::vector<std::pair<group, group>> pairs;
    for (const blended_alike& w : all) {
        for (const auto& [from, into] : w.pairs) {
            const group a = places.zone_of(from).where;
            const group b = places.zone_of(into).where;
            // the trunk first: all else meets it
            pairs.emplace_back(b == group::body || (a != group::body && b < a) ? std::pair{b, a}
                                                                               : std::pair{a, b});
        }
    }
    std::sort(pairs.begin(), pairs.end());
    pairs.erase(std::unique(pairs.begin(), pairs.end()), pairs.end());
    std::vector<std::string> out;
    std::vector<std::string> within;
    for (auto at = pairs.begin(); at != pairs.end();) {
        const group first = at->first;
        std::vector<std::string> others;
        for (; at != pairs.end() && at->first == first; ++at) {
            (at->second == first ? within : others).emplace_back(name(at->second));
        }
        if (!others.empty()) {
            out.push_back(std::string(name(first)) + " with " + listed(others));
        }
    }
    if (!within.empty()) {
        out.push_back("within " + listed(within));
    }
    return joined(out, "; ");
}

/// "blade 5F, combs 10 and 13 mm over 30": what lies between, where it is too much to say of each where.
std::string between_in_brief(const alike_list& all, length_unit u) {
    grouped<std::string> by_blade;  // of combs, by what is beneath
    std::vector<std::string> out;
    for (const blending_tool& t : tools_of(all, u)) {
        if (t.over.empty()) {
            out.push_back(t.held);
        } else {
            by_blade.add(t.over, out.size());
        }
    }
    for (const auto& [over, which] : by_blade.all()) {
        std::vector<std::string> combs;
        for (const blending_tool& t : tools_of(all, u)) {
            if (t.over == over) {
                combs.push_back(t.held);
            }
        }
        for (std::size_t k = 0; u == length_unit::mm && k + 1 < combs.size(); ++k) {
            combs[k].resize(combs[k].find(' '));  // the last one's unit is that of all
        }
        out.push_back((combs.size() > 1 ? "combs " : "comb ") + joined(combs, ", ") + over);
    }
    return joined(out, ", ");
}

}  // namespace

std::string blends_in_brief(const groom& g, const plan_request& r, list when, bool say_way,
                            length_unit u) {
    constexpr std::size_t at_sight = 96;  // letters: more isn't looked through at the table
    constexpr std::size_t each_told =
        230;  // of clippers, else a groomer has to pair tools and places
    const place_words places(g, r);
    const std::vector<blended_alike> all = alike_of(g, r, when, u);
    std::vector<std::string> last;
    alike_list clipped;
    for (const blended_alike& w : all) {
        add_once(last, w.by_hand ? w.how : w.last);
        if (w.by) {
            clipped.push_back(&w);
        }
    }
    const bool sore = std::any_of(all.begin(), all.end(),
                                  [](const blended_alike& w) { return w.by_hand && w.sore; });
    const std::string by_hand =
        last.empty() ? "" : listed(last) + (sore ? ", " + std::string(sore_edge) : "");
    const std::vector<std::string> clippers = clippers_in_brief(clipped, r, places, u);
    if (clippers.empty()) {
        alike_list hands;
        for (const blended_alike& w : all) {
            hands.push_back(&w);
        }
        if (last.empty()) {
            return {};
        }
        const std::string where = joined(where_of(hands, {}, places), "; ");
        return where.size() <= at_sight
                   ? "blend by " + listed(last) + ": " + where
                   : "blend lengths that meet (" + parts_that_meet(all, places) +
                         "): " + joined(last, ", ") + (sore ? ", " + std::string(sore_edge) : "");
    }
    const std::string each = joined(clippers, "; ");
    const std::string blend =
        "blend" + (say_way ? ", " + std::string(name(direction::with_lay)) + "," : "");
    if (each.size() <= each_told) {
        return blend + " by " + each + (last.empty() ? "" : "; then " + by_hand);
    }
    const bool near_sore =
        std::any_of(clipped.begin(), clipped.end(), [](const auto* w) { return w->sore; });
    return blend + " lengths that meet (" + parts_that_meet(all, places) +
           "): " + between_in_brief(clipped, u) +
           (near_sore && !sore ? ", " + std::string(sore_edge) : "") +
           (last.empty() ? ""
                         : "; " + joined(last, ", ") + (sore ? ", " + std::string(sore_edge) : ""));
}

}  // namespace pelage::io
