#include "answers/words/places.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

namespace pelage::io {

body plain_body(const body& b, const glossary& g) {
    body out{b};
    for (const term& t : g.terms) {
        if (t.zone && !t.plain.empty()) {
            out.zones[*t.zone].title = t.plain;
            out.zones[*t.zone].one = t.plain_one;
        }
    }
    return out;
}

std::string on_the(const std::vector<std::string>& titles) {
    const std::string all = listed(titles);
    return (all.starts_with("behind ") || all.starts_with("under ") ? "" : "on the ") + all;
}

std::string places_or_whole(const body& b, const std::vector<place>& all) {
    const auto covered = [&](std::size_t zone, side s) {
        return std::any_of(all.begin(), all.end(), [&](const place& p) {
            return p.zone == zone && (p.which == side::both || p.which == s);
        });
    };
    bool whole = true;
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        const bool here = covered(z, side::left) && covered(z, side::right);
        whole = whole && (here || b.zones[z].where == group::prep);
    }
    return whole ? "the whole dog" : listed(titles(b, all));
}

std::vector<std::string> place_words::each_of(const zone_list& which) const {
    std::vector<std::string> out;
    for (const std::size_t i : which) {
        out.push_back(title_of(i));
    }
    return out;
}

std::vector<std::string> place_words::titles_of(const zone_list& which) const {
    std::vector<place> places;
    for (const std::size_t i : which) {
        places.push_back(g_.zones[i].at);
    }
    return titles(body_, places);
}

std::string place_words::listed_of(const zone_list& which) const {
    return listed(titles_of(which));
}

std::string place_words::in_pairs(const zone_list& whole, std::size_t i) const {
    const place& p = g_.zones[i].at;
    const bool both = std::count_if(whole.begin(), whole.end(), [&](std::size_t n) {
                          return g_.zones[n].at.zone == p.zone;
                      }) > 1;
    return title(body_, both ? place{p.zone, side::both} : p);
}

zone_list place_words::all_of(group part) const {
    zone_list out;
    for (std::size_t i = 0; i < g_.zones.size(); ++i) {
        if (zone_of(i).where == part) {
            out.push_back(i);
        }
    }
    return out;
}

std::vector<std::string> place_words::by_part(const zone_list& which) const {
    std::vector<std::string> out;
    std::vector<group> told;
    for (const std::size_t i : which) {
        const group part = zone_of(i).where;
        if (std::find(told.begin(), told.end(), part) != told.end()) {
            continue;
        }
        told.push_back(part);
        zone_list here;
        zone_list missing;
        for (const std::size_t n : all_of(part)) {
            const bool in = std::find(which.begin(), which.end(), n) != which.end();
            (in ? here : missing).push_back(n);
        }
        // behind "left flank" a skirt would be read as the left one
        std::stable_partition(missing.begin(), missing.end(),
                              [&](std::size_t n) { return g_.zones[n].at.which == side::both; });
        const std::vector<std::string> names = titles_of(here);
        const std::vector<std::string> but = titles_of(missing);
        constexpr std::size_t few = 2;
        // "tail" is a place by itself, beside its base
        const bool a_place = std::find(names.begin(), names.end(), name(part)) != names.end();
        const bool whole = part != group::prep && !a_place && names.size() > 1 &&
                           but.size() <= few && names.size() > 2 * but.size();
        if (whole) {
            out.push_back(std::string(name(part)) +
                          (but.empty() ? "" : " (not " + listed(but) + ")"));
        } else {
            out.insert(out.end(), names.begin(), names.end());
        }
    }
    return out;
}

std::string place_words::in_parts(std::vector<std::string> names) const {
    for (const group part : {group::body, group::legs, group::head}) {
        const std::vector<std::string> own = titles_of(all_of(part));
        const auto named = [&](const std::string& t) {
            return std::find(names.begin(), names.end(), t) != names.end();
        };
        if (own.size() > 1 && std::all_of(own.begin(), own.end(), named)) {
            *std::find(names.begin(), names.end(), own.front()) = name(part);
            std::erase_if(names, [&](const std::string& t) {
                return std::find(own.begin(), own.end(), t) != own.end();
            });
        }
    }
    return listed(names);
}

std::vector<std::string> place_words::parts_of(const zone_list& which) const {
    const bool trunk = std::any_of(which.begin(), which.end(),
                                   [&](std::size_t i) { return zone_of(i).where == group::body; });
    // the tail's base alone, gone down with the body, is no tail
    const auto counts = [&](std::size_t i, group part) {
        return zone_of(i).where == part && !(trunk && zone_of(i).has(zone_use::tail_band));
    };
    std::vector<std::string> out;
    for (const group part : {group::body, group::legs, group::tail, group::feet, group::head}) {
        if (std::any_of(which.begin(), which.end(),
                        [&](std::size_t i) { return counts(i, part); })) {
            out.emplace_back(name(part));
        }
    }
    return out;
}

}  // namespace pelage::io
