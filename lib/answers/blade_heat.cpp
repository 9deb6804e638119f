#include "answers/blade_heat.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/lines.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

std::vector<hot_run> hot_runs(const groom& g, const plan_request& r) {
    std::vector<hot_run> out;
    const std::int64_t every = std::max<std::int64_t>(1, in_mmin(r.rules.refusal.oil_after.best));
    for (const block& b : g.blocks) {
        if (b.how.kind != tool_kind::clip) {
            continue;
        }
        if (in_mmin(b.running_before) == 0) {
            const kit_blade* have = find_blade(r.tools, b.how.tool.id);
            out.push_back({b.how.tool.id, b.when, {}, {}, have != nullptr ? have->count : 1});
        }
        hot_run& h = out.back();
        h.runs = b.running;
        h.oil_at.clear();
        for (std::int64_t at = every; at < in_mmin(h.runs); at += every) {
            h.oil_at.push_back(mmin(at));
        }
    }
    return out;
}

std::string swap_in_words(const hot_run& h) {
    return h.in_kit > 1 ? "swap it for the second one there, and let the first cool"
                        : "the kit has one: let it cool in between; with a second of its size you "
                          "would swap and go on";
}

std::vector<line> heat(const groom& g, const plan_request& r) {
    const std::vector<hot_run> runs = hot_runs(g, r);
    if (std::all_of(runs.begin(), runs.end(), [](const hot_run& h) { return h.oil_at.empty(); })) {
        return {};
    }
    const auto called = [&](const hot_run& h) {
        const bool twice = std::count_if(runs.begin(), runs.end(), [&](const hot_run& other) {
                               return other.blade == h.blade;
                           }) > 1;
        return "blade " + h.blade +
               (!twice                        ? ""
                : h.when == list::before_bath ? " before the bath"
                                              : " after the bath");
    };
    std::vector<line> out;
    std::vector<std::string> short_ones;
    for (const hot_run& h : runs) {
        const std::string in_all = detail::whole_minutes(h.runs);
        if (in_all == "0") {
            continue;
        }
        if (h.oil_at.empty()) {
            short_ones.push_back(called(h) + ": " + in_all + " min");
            continue;
        }
        std::vector<std::string> at;
        for (const work& w : h.oil_at) {
            at.push_back(detail::whole_minutes(w));
        }
        out.push_back(
            item(in_all + " min, felt and oiled at about " + listed(at) + "; " + swap_in_words(h),
                 called(h) + ": "));
    }
    if (!short_ones.empty()) {
        out.push_back(item(joined(short_ones, ", "), "not for long: "));
    }
    return out;
}

}  // namespace pelage::io
