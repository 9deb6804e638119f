// What style sheets ask of a kit on one coat.
#include <algorithm>

#include <pelage/kit/buy.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/sheets/check.hpp>

namespace pelage {

namespace {

/// The sheet for that coat alone; nothing if it is for others.
std::optional<style> for_coat(const style& s, coat_class c, const reference_data& known) {
    const std::vector<coat_class> named = coats_for(s, known);
    if (!named.empty() && std::find(named.begin(), named.end(), c) == named.end()) {
        return std::nullopt;
    }
    style out = s;
    out.coats = {c};
    out.mixes.clear();
    return out;
}

}  // namespace

std::vector<ladder_target> targets_on(const lookup_request& r, const std::vector<style>& sheets) {
    std::vector<style> asking;
    std::vector<std::size_t> which;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        if (auto one = for_coat(sheets[i], r.coat.value(), r.reference)) {
            asking.push_back(std::move(*one));
            which.push_back(i);
        }
    }
    kit whole = r.tools;
    for (kit_blade& b : whole.blades) {
        b.out = false;
        b.out_until.reset();
    }
    const std::vector<setup> setups = setups_of(whole, r.today, r.rules.cut);
    std::vector<ladder_target> out;
    for (const judged_target& t : judge_targets(r.reference, r.rules, whole, asking, setups)) {
        if (!t.what.wanted) {
            continue;
        }
        const length wanted = rounded(*t.what.wanted);
        auto at = std::find_if(out.begin(), out.end(),
                               [&](const ladder_target& l) { return l.wanted == wanted; });
        if (at == out.end()) {
            at = out.insert(at, {wanted, {}, true});
        }
        const std::size_t sheet = which[t.what.sheet];
        if (std::find(at->sheets.begin(), at->sheets.end(), sheet) == at->sheets.end()) {
            at->sheets.push_back(sheet);
        }
        at->met = at->met && !t.met_by.empty();
    }
    std::sort(out.begin(), out.end(),
              [](const ladder_target& a, const ladder_target& b) { return a.wanted < b.wanted; });
    return out;
}

}  // namespace pelage
