#include "answers/blends.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/model/cut.hpp>

#include "answers/grouped.hpp"
#include "answers/layout.hpp"
#include "answers/lines.hpp"
#include "answers/words/places.hpp"
#include "answers/words/tool.hpp"
#include "planner/at_the_teeth.hpp"

namespace pelage::io {

namespace {

constexpr std::string_view sore_edge = "short of the sore edge";

/// Zones of one length blended into zones of one length, in words: "25 mm" into "13 mm".
struct patch {
    std::string from_length;
    std::string into_length;
    zone_list from;
    zone_list into;
};

/// Blends done alike: from length to length with the same thing in hand. Those by a hand tool alone are told by the longer zones only: each is scissored
/// anyway, and what is shorter beside it is plain to see.
struct blended_alike {
    std::string how;
    std::optional<setup> by;  ///< the clipper's part of it
    std::string last;         ///< what is taken to it last: "thinning scissors"; empty: nothing
    bool by_hand = false;
    std::vector<patch> patches;
    bool sore = false;  ///< what of it borders on hurt skin stays
    length narrow{};
    length wide{};
};

bool has(const zone_list& l, std::size_t zone) {
    return std::find(l.begin(), l.end(), zone) != l.end();
}

void add(zone_list& l, std::size_t zone) {
    if (!has(l, zone)) {
        l.insert(std::upper_bound(l.begin(), l.end(), zone), zone);
    }
}

void add(zone_list& l, const zone_list& more) {
    for (const std::size_t zone : more) {
        add(l, zone);
    }
}

std::string left_in_words(const zone_plan& z, length_unit u) {
    return z.leaves ? show(z.leaves->best, u) : std::string{};
}

/// Adds one pair to those of the same two lengths.
void add(std::vector<patch>& patches, const groom& g, const blend& b, length_unit u) {
    const std::string from = left_in_words(g.zones[b.from], u);
    const std::string into = left_in_words(g.zones[b.into], u);
    const auto alike = std::find_if(patches.begin(), patches.end(), [&](const patch& p) {
        return p.from_length == from && p.into_length == into;
    });
    patch& p = alike != patches.end() ? *alike : patches.emplace_back(patch{from, into, {}, {}});
    add(p.from, b.from);
    add(p.into, b.into);
}

blended_alike how_of(const blend& b, length_unit u) {
    blended_alike w{{}, b.between, {}, !b.between, {}, false, b.width, b.width};
    w.last = b.smoothed == tool_kind::none ? "" : held(by_hand(b.smoothed));
    if (!b.between) {
        w.how = w.last;
        return w;
    }
    const setup& s = *b.between;
    const bool against = s.way == direction::against_lay;
    w.how = (against ? title_words(s, u) : held_words(s, u)) +
            (w.last.empty() ? "" : ", then " + w.last);
    return w;
}

/// "20 mm", "10 to 30 mm", or in inches: a width is worked by eye.
std::string wide(const blended_alike& w, length_unit u) {
    if (u == length_unit::inch) {
        const std::string least = show(w.narrow, u);
        const std::string most = show(w.wide, u);
        return least == most ? most : least + " to " + most;
    }
    const auto tens = [](const length& l) {
        return std::to_string(10L * std::max(1L, std::lround(in_mm(l) / 10.0)));
    };
    const std::string most = tens(w.wide);
    return (tens(w.narrow) == most ? "" : tens(w.narrow) + " to ") + most + " mm";
}

/// What is only scissored is blended anyway.
bool meets_clipped(const groom& g, const blend& b) {
    return g.zones[b.from].how.kind == tool_kind::clip ||
           g.zones[b.into].how.kind == tool_kind::clip;
}

/// A face that isn't reached through the basket isn't blended either.
bool through_basket(const groom& g, const plan_request& r, const blend& b) {
    const auto face = [&](std::size_t i) {
        return at_the_teeth(r.reference.dog_body.zones[g.zones[i].at.zone]);
    };
    return may_bite(r.patient) && (face(b.from) || face(b.into));
}

std::vector<blended_alike> alike_of(const groom& g, const plan_request& r, list when,
                                    length_unit u) {
    std::vector<blended_alike> all;
    for (const blend& b : g.blends) {
        if (b.when != when || !meets_clipped(g, b) || through_basket(g, r, b)) {
            continue;
        }
        blended_alike one = how_of(b, u);
        const auto alike = std::find_if(all.begin(), all.end(),
                                        [&](const blended_alike& w) { return w.how == one.how; });
        blended_alike& w = alike != all.end() ? *alike : all.emplace_back(std::move(one));
        add(w.patches, g, b, u);
        w.sore =
            w.sore || !g.zones[b.from].beside_hurt.empty() || !g.zones[b.into].beside_hurt.empty();
        w.narrow = shorter(w.narrow, b.width);
        w.wide = longer(w.wide, b.width);
    }
    // hand tools alone last, as in the list itself
    std::stable_partition(all.begin(), all.end(),
                          [](const blended_alike& w) { return !w.by_hand; });
    return all;
}

/// Three places or more of a part are that part: they are blended where the two parts meet.
std::string named(const zone_list& zones, const place_words& places) {
    std::vector<std::string> names;
    for (const group one : {group::body, group::legs, group::feet, group::tail, group::head}) {
        zone_list here;
        std::copy_if(zones.begin(), zones.end(), std::back_inserter(here),
                     [&](std::size_t i) { return places.zone_of(i).where == one; });
        constexpr std::size_t few = 2;
        const std::vector<std::string> all = places.titles_of(here);
        if (all.size() > few) {
            names.emplace_back(name(one));
        } else {
            names.insert(names.end(), all.begin(), all.end());
        }
    }
    return joined(names, ", ");
}

/// From where into where.
std::string edges(const blended_alike& w, const place_words& places) {
    if (w.by_hand) {
        zone_list longer_ones;
        for (const patch& p : w.patches) {
            add(longer_ones, p.from);
        }
        return named(longer_ones, places) + " into what is shorter beside";
    }
    std::string pairs;
    for (const patch& p : w.patches) {
        pairs += (pairs.empty() ? "from " : "; from ") + p.from_length + " (" +
                 named(p.from, places) + ") to " + p.into_length + " (" + named(p.into, places) +
                 ")";
    }
    return pairs;
}

}  // namespace

std::vector<line> blends(const groom& g, const plan_request& r, list when, length_unit u) {
    const place_words places(g, r);
    std::vector<line> out;
    for (const blended_alike& w : alike_of(g, r, when, u)) {
        out.push_back(item(w.how + ", over " + wide(w, u) + ": " + edges(w, places) +
                               (w.sore ? std::string("; ") + std::string(sore_edge) : ""),
                           "blend by ", 5));
    }
    return out;
}

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

edge_zones zones_of(const alike_list& alike) {
    edge_zones out;
    for (const blended_alike* w : alike) {
        out.sore = out.sore || w->sore;
        for (const patch& p : w->patches) {
            add(out.from, p.from);
            add(out.into, p.into);
        }
    }
    return out;
}

/// As named() has it; but a part that another tool is held at, too, isn't said whole.
std::string named_apart(const zone_list& zones, const zone_list& elsewhere,
                        const place_words& places) {
    zone_list whole;
    zone_list single;
    for (const std::size_t i : zones) {
        const bool shared = std::any_of(elsewhere.begin(), elsewhere.end(), [&](std::size_t k) {
            return places.zone_of(k).where == places.zone_of(i).where;
        });
        (shared ? single : whole).push_back(i);
    }
    std::vector<std::string> all;
    if (!whole.empty()) {
        all.push_back(named(whole, places));
    }
    if (!single.empty()) {
        all.push_back(joined(places.titles_of(single), ", "));
    }
    return joined(all, ", ");
}

/// "legs, head into body": what one tool blends beside those others.
std::string where_of(const alike_list& alike, const alike_list& others, const place_words& places) {
    const edge_zones e = zones_of(alike);
    const edge_zones elsewhere = zones_of(others);
    return named_apart(e.from, elsewhere.from, places) + " into " +
           named_apart(e.into, elsewhere.into, places) +
           (e.sore ? ", " + std::string(sore_edge) : "");
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
        out.push_back(t.held + ", leaves about " + show(leaves.best, u) + ": " + where(t));
    }
    for (const auto& [over, which] : by_blade.all()) {
        std::vector<std::string> each;
        for (const std::size_t k : which) {
            each.push_back(kept_together(tools[k].held) + (which.size() > 1 ? " " : over + ": ") +
                           where(tools[k]));
        }
        out.push_back((which.size() > 1 ? "combs" + over + ": " : "comb ") + joined(each, "; "));
    }
    return out;
}

}  // namespace

std::string blends_in_brief(const groom& g, const plan_request& r, list when, length_unit u) {
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
    const std::vector<std::string> clippers = clippers_in_brief(clipped, r, place_words(g, r), u);
    if (clippers.empty()) {
        alike_list hands;
        for (const blended_alike& w : all) {
            hands.push_back(&w);
        }
        return last.empty()
                   ? ""
                   : "blend by " + listed(last) + ": " + where_of(hands, {}, place_words(g, r));
    }
    return "blend by " + joined(clippers, "; ") + (last.empty() ? "" : "; then " + by_hand);
}

}  // namespace pelage::io
