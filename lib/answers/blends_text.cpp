#include "answers/blends_text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/layout.hpp"

namespace pelage::io {

namespace {

using zone_list = std::vector<std::size_t>;

/// Zones of one length blended into zones of one length, in words: "25 mm" into "13 mm".
struct patch {
    std::string from_length;
    std::string into_length;
    zone_list from;
    zone_list into;
};

/// Blends done alike. Those by a hand tool alone are told by the longer zones only: each is scissored
/// anyway, and what is shorter beside it is plain to see.
struct way {
    std::string how;
    bool by_hand = false;
    std::vector<patch> patches;
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

std::string how_of(const blend& b) {
    if (!b.between) {
        return held(by_hand(b.smoothed));
    }
    std::string text =
        b.between->way == direction::against_lay ? title(*b.between) : held(*b.between);
    if (b.smoothed != tool_kind::none) {
        text += ", then " + held(by_hand(b.smoothed));
    }
    return text;
}

/// "20 mm", "10 to 30 mm", or in inches: a width is worked by eye.
std::string wide(const way& w, length_unit u) {
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

std::vector<way> ways_of(const groom& g, list when, length_unit u) {
    std::vector<way> ways;
    for (const blend& b : g.blends) {
        const bool clipped = g.zones[b.from].how.kind == tool_kind::clip ||
                             g.zones[b.into].how.kind == tool_kind::clip;
        if (b.when != when || !clipped) {
            continue;
        }
        const std::string how = how_of(b);
        const auto alike =
            std::find_if(ways.begin(), ways.end(), [&](const way& w) { return w.how == how; });
        way& w = alike != ways.end()
                     ? *alike
                     : ways.emplace_back(way{how, !b.between, {}, b.width, b.width});
        add(w.patches, g, b, u);
        w.narrow = shorter(w.narrow, b.width);
        w.wide = longer(w.wide, b.width);
    }
    // hand tools alone last, as in the list itself
    std::stable_partition(ways.begin(), ways.end(), [](const way& w) { return !w.by_hand; });
    return ways;
}

}  // namespace

std::string blend_lines(const groom& g, const plan_request& r, list when, const print_options& o) {
    const body& b = r.reference.dog_body;
    // three places or more of a part are that part: they are blended where the two parts meet
    const auto named = [&](const zone_list& zones) {
        std::vector<std::string> names;
        for (const group one : {group::body, group::legs, group::feet, group::tail, group::head}) {
            std::vector<place> here;
            for (const std::size_t i : zones) {
                if (b.zones[g.zones[i].at.zone].where == one) {
                    here.push_back(g.zones[i].at);
                }
            }
            constexpr std::size_t few = 2;
            const std::vector<std::string> all = titles(b, here);
            if (all.size() > few) {
                names.emplace_back(name(one));
            } else {
                names.insert(names.end(), all.begin(), all.end());
            }
        }
        return joined(names, ", ");
    };
    std::string out;
    for (const way& w : ways_of(g, when, o.units)) {
        std::string text = w.how + ", over " + wide(w, o.units) + ": ";
        if (w.by_hand) {
            zone_list edges;
            for (const patch& p : w.patches) {
                add(edges, p.from);
            }
            text += named(edges) + " into what is shorter beside";
        } else {
            std::string pairs;
            for (const patch& p : w.patches) {
                pairs += (pairs.empty() ? "from " : "; from ") + p.from_length + " (" +
                         named(p.from) + ") to " + p.into_length + " (" + named(p.into) + ")";
            }
            text += pairs;
        }
        out += wrapped("  blend by ", text, 5, o.width);
    }
    return out;
}

}  // namespace pelage::io
