#include "answers/under_mats.hpp"

#include <algorithm>
#include <vector>

#include <pelage/base/phrase.hpp>
#include <pelage/planner/under_mat.hpp>

#include "answers/words/places.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

/// "blade 9, down to 10": what goes under that mat after the blade that is planned; empty where nothing may.
std::string next_blade(const plan_request& r, const zone_plan& z, length_unit u) {
    const std::vector<setup> next = shorter_under_mat(r, z);
    return next.empty() ? std::string{}
                        : held_words(next.front(), u) +
                              (next.size() > 1 ? ", down to " + next.back().tool.id : "");
}

/// The same of all mats that are clipped off.
grouped<std::string> next_blades(const groom& g, const plan_request& r, length_unit u) {
    grouped<std::string> by;
    for (const block& b : g.blocks) {
        if (b.when != list::before_bath) {
            continue;  // they are out by then
        }
        for (const std::size_t i : b.zones) {
            const zone_plan& z = g.zones[i];
            if (z.mat && (b.off || z.why.what == pelage::cause::mat_off)) {
                by.add(next_blade(r, z, u), i);
            }
        }
    }
    return by;
}

std::string freed_before(const block& b, const groom& g, const plan_request& r) {
    const auto tender = [&](const place& p) {
        return std::any_of(g.cautions.begin(), g.cautions.end(), [&](const caution_line& c) {
            return c.what.when == caution_when::matted_ears_or_tail &&
                   std::find(c.where.begin(), c.where.end(), p) != c.where.end();
        });
    };
    zone_list freed;
    for (const std::size_t i : b.zones) {
        const zone_plan& z = g.zones[i];
        if (b.when == list::after_bath && b.how.kind == tool_kind::clip && z.off_by &&
            tender(z.at)) {
            freed.push_back(i);
        }
    }
    return joined(place_words(g, r).by_part(freed), ", ");
}

std::string wont_pass_in_brief(const groom& g, const plan_request& r, length_unit u) {
    const auto by = next_blades(g, r, u);
    if (by.all().empty()) {
        return {};
    }
    const std::string& only = by.all().front().first;
    return by.all().size() > 1
               ? "won't pass: the blade named at its step; else it stays in: no bath, a vet"
           : only.empty() ? "won't pass: it stays in: no bath, a vet"
                          : "won't pass: " + only + "; else it stays in: no bath, a vet";
}

}  // namespace pelage::io
