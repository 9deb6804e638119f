#include "answers/blends.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/blends_alike.hpp"
#include "answers/lines.hpp"
#include "answers/words/tool.hpp"
#include "planner/at_the_teeth.hpp"

namespace pelage::io {

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

namespace {

std::string left_in_words(const zone_plan& z, length_unit u) {
    return z.leaves ? show(z.leaves->best, u) : std::string{};
}

/// Adds one pair to those of the same two lengths.
void add_pair(std::vector<patch>& patches, const groom& g, const blend& b, length_unit u) {
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
    blended_alike w{{}, b.between, {}, !b.between, {}, {}, false, b.width, b.width};
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

}  // namespace

bool told(const blend& b, const groom& g, const plan_request& r) {
    return meets_clipped(g, b) && !through_basket(g, r, b);
}

std::vector<blended_alike> alike_of(const groom& g, const plan_request& r, list when,
                                    length_unit u) {
    std::vector<blended_alike> all;
    for (const blend& b : g.blends) {
        if (b.when != when || !told(b, g, r)) {
            continue;
        }
        blended_alike one = how_of(b, u);
        const auto alike = std::find_if(all.begin(), all.end(),
                                        [&](const blended_alike& w) { return w.how == one.how; });
        blended_alike& w = alike != all.end() ? *alike : all.emplace_back(std::move(one));
        add_pair(w.patches, g, b, u);
        w.pairs.emplace_back(b.from, b.into);
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

std::vector<std::string> names_of(const zone_list& zones, const place_words& places) {
    std::vector<std::string> names;
    for (const group one : {group::body, group::legs, group::feet, group::tail, group::head}) {
        zone_list here;
        std::copy_if(zones.begin(), zones.end(), std::back_inserter(here),
                     [&](std::size_t i) { return places.zone_of(i).where == one; });
        constexpr std::size_t few = 2;
        const std::vector<std::string> all = places.titles_of(here);
        if (all.size() > few) {
            // an ear that was bared for a mat isn't blended with the rest of the head
            const zone_list whole = places.all_of(one);
            zone_list bared;
            std::copy_if(whole.begin(), whole.end(), std::back_inserter(bared), [&](std::size_t i) {
                return one == group::head && places.bared(i) && !has(zones, i);
            });
            names.push_back(
                std::string(name(one)) +
                (bared.empty() ? "" : " (not " + joined(places.titles_of(bared), ", ") + ")"));
        } else {
            names.insert(names.end(), all.begin(), all.end());
        }
    }
    return names;
}

std::string named(const zone_list& zones, const place_words& places) {
    return joined(names_of(zones, places), ", ");
}

namespace {

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

}  // namespace pelage::io
