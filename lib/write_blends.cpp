#include "write_blends.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include <pelage/phrase.hpp>
#include <pelage/text.hpp>

#include "layout.hpp"

namespace pelage::io {

namespace {

using zone_list = std::vector<std::size_t>;

/// Zones blended into zones, all by the same hand movement: "thighs and stifles into rump and flanks".
struct patch {
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

/// Adds one pair; patches that share a zone with it become one.
void add(std::vector<patch>& patches, std::size_t from, std::size_t into) {
    patch whole{{from}, {into}};
    const auto touched = [&](const patch& p) { return has(p.from, from) || has(p.into, into); };
    for (const patch& p : patches) {
        if (touched(p)) {
            add(whole.from, p.from);
            add(whole.into, p.into);
        }
    }
    patches.erase(std::remove_if(patches.begin(), patches.end(), touched), patches.end());
    patches.push_back(std::move(whole));
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

/// "about 2 cm", "about 1 to 3 cm", or in inches: a width is worked by eye.
std::string wide(const way& w, length_unit u) {
    if (u == length_unit::inch) {
        const std::string least = show(w.narrow, u);
        const std::string most = show(w.wide, u);
        return "about " + (least == most ? most : least + " to " + most);
    }
    const auto cm = [](const length& l) {
        return std::to_string(std::max(1L, std::lround(in_mm(l) / 10.0)));
    };
    const std::string most = cm(w.wide);
    return "about " + (cm(w.narrow) == most ? "" : cm(w.narrow) + " to ") + most + " cm";
}

std::vector<way> ways_of(const groom& g, list when) {
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
        add(w.patches, b.from, b.into);
        w.narrow = shorter(w.narrow, b.width);
        w.wide = longer(w.wide, b.width);
    }
    // hand tools alone last, as in the list itself
    std::stable_partition(ways.begin(), ways.end(), [](const way& w) { return !w.by_hand; });
    return ways;
}

}  // namespace

std::string blend_lines(const groom& g, const groom_request& r, list when, const print_options& o) {
    const auto titles = [&](const zone_list& zones) {
        std::vector<place> places;
        for (const std::size_t i : zones) {
            places.push_back(g.zones[i].at);
        }
        std::vector<std::string> names = pelage::titles(r.reference.dog_body, places);
        for (std::string& name : names) {
            name = (name.starts_with("behind") ? "the hair " : "") + name;
        }
        return listed(names);
    };
    std::string out;
    for (const way& w : ways_of(g, when)) {
        zone_list edges;
        std::string pairs;
        for (const patch& p : w.patches) {
            add(edges, p.from);
            pairs += (pairs.empty() ? "" : "; ") + titles(p.from) + " into " + titles(p.into);
        }
        const std::string text = w.how +
                                 (w.by_hand ? " into what is shorter beside them, " : ", ") +
                                 wide(w, o.units) + " wide: " + (w.by_hand ? titles(edges) : pairs);
        out += wrapped("  blend by ", text, 5, o.width);
    }
    return out;
}

}  // namespace pelage::io
