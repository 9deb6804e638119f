// A kit checked: what is looked at in turn, and what of the sheets it meets.
#include <algorithm>
#include <array>

#include <pelage/kit/check.hpp>

#include "kit/check_parts.hpp"

namespace pelage {

std::string_view name(kit_matter m) {
    constexpr std::array<std::string_view, 7> names{"unsafe",   "two-lengths", "gap",   "out",
                                                    "no-basis", "idle",        "remark"};
    return names[static_cast<std::size_t>(m)];
}

bool kit_check::amiss() const {
    return std::any_of(remarks.begin(), remarks.end(),
                       [](const kit_remark& r) { return r.what <= kit_matter::gap; });
}

namespace {

std::size_t met(const std::vector<judged_target>& all) {
    return static_cast<std::size_t>(std::count_if(
        all.begin(), all.end(), [](const judged_target& t) { return !t.met_by.empty(); }));
}

void count(const checked_kit& k, kit_check& to) {
    const kit_check_request& r = k.asked;
    to.targets = k.targets.size();
    to.met = met(k.targets);
    to.met_today = met(judge_targets(r.reference, r.rules, r.own, r.sheets,
                                     setups_of(r.own, r.today, r.rules.cut)));
    if (to.met < to.targets) {
        const shopping all = what_to_buy(
            {r.reference, r.rules, r.own, r.sheets, usual_wares(r.reference, r.own), 0, r.today});
        to.more_to_buy = all.reachable > all.curve.front().choice.met;
    }
}

}  // namespace

checked_kit::checked_kit(const kit_check_request& r)
    : asked(r),
      whole(all_there(r.own)),
      setups(setups_of(whole, r.today, r.rules.cut)),
      targets(judge_targets(r.reference, r.rules, whole, r.sheets, setups)) {}

std::optional<refusal> checked_kit::refused(const setup& s) const {
    const zone_today anywhere{.where = &asked.reference.dog_body.zones.front()};
    return refuse(s, anywhere, asked.rules.refusal, asked.rules.cut);
}

std::vector<kit_remark> checked_kit::remarks() && {
    std::stable_sort(found_.begin(), found_.end(),
                     [](const auto& a, const auto& b) { return a.what < b.what; });
    return std::move(found_);
}

kit_check check_kit(const kit_check_request& r) {
    checked_kit k(r);
    for (auto* const find : {&find_unsafe, &find_two_lengths, &find_gaps, &find_blades_out,
                             &find_guessed, &find_idle, &find_remarks}) {
        find(k);
    }
    kit_check out;
    count(k, out);
    out.remarks = std::move(k).remarks();
    return out;
}

}  // namespace pelage
