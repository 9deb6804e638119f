#include <algorithm>

#include <pelage/any_sheet.hpp>
#include <pelage/io/sheets.hpp>
#include <pelage/upkeep.hpp>

#include "commands.hpp"
#include "judge.hpp"

namespace pelage::cli {

reply any_sheet(const request& q, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(q, around, f);
    if (!q.style.empty()) {
        f.say(errc::usage, "--any-sheet: every sheet is tried; found --style; leave one out");
    }
    if (!q.roster.empty()) {
        f.say(errc::usage, "--any-sheet: goes with one dog; found --roster; leave one out");
    }
    const auto wait =
        q.back_in.empty() ? std::optional{shortest_rota} : wait_in("--back-in", q.back_in, f);
    dog d = dog_of(q, w, around, f);
    const auto chance_asked = q.chance.empty() ? std::nullopt : chance_in(q.chance, f);
    f.throw_if_any();
    const bool unseen = coat_by_mix(d, w).has_value();
    const style* own = find(w.styles, d.style);
    if (own == nullptr) {
        d.style.clear();
        own = &w.styles.front();
    }
    assume_upkeep(d, d.style.empty() ? style{} : *own);
    const groom_request r{w.reference, w.place().rules, w.tools(),   d,
                          *own,        w.print.today,   chance_asked};
    const auto all = try_sheets(r, w.styles, *wait);
    const bool any =
        std::any_of(all.begin(), all.end(), [](const sheet_trial& t) { return t.carried(); });
    return {w.json ? io::json_of(all, r, *wait, w.print)
                   : (unseen ? "Its coat is the likeliest of its mix: nobody has seen it.\n" : "") +
                         io::text_of(all, r, *wait, w.print),
            any ? done : answer_is_no};
}

}  // namespace pelage::cli
