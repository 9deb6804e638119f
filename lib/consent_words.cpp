#include "consent_words.hpp"

#include <vector>

#include <pelage/phrase.hpp>

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

split split_of(const groom& g, const body& b, group where) {
    split out;
    for (const zone_plan& z : g.zones) {
        if (b.zones[z.at.zone].where == where) {
            (shorter_than_wished(z) ? out.shorter : out.others).push_back(z.at);
        }
    }
    return out;
}

}  // namespace

std::string shorter_by_mats(const groom& g, const groom_request& r) {
    const body& b = r.reference.dog_body;
    std::vector<std::string> whole;
    std::vector<std::string> said;
    for (const group one : {group::body, group::legs, group::feet, group::tail, group::head}) {
        const split s = split_of(g, b, one);
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

}  // namespace pelage::io
