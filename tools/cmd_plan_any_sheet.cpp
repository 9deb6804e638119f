#include <algorithm>

#include <pelage/answers/sheets.hpp>
#include <pelage/sheets/rank.hpp>
#include <pelage/trade/upkeep.hpp>

#include "plan_options.hpp"
#include "resolve_arguments.hpp"

namespace pelage::cli {

reply any_sheet(const plan_options& o, const surroundings& around) {
    faults f;
    workplace w = workplace_of(o, around, f, o.dog.season);
    const auto wait =
        o.back_in.empty() ? std::optional{shortest_rota} : wait_in("--back-in", o.back_in, f);
    dog d = dog_of(o.dog, w, around, f);
    const auto chance_asked = o.dog.chance.empty() ? std::nullopt : chance_in(o.dog.chance, f);
    f.throw_if_any();
    w.print.closed = w.closed();
    w.print.closed.add(d.cannot);
    const bool unseen = coat_by_mix(d, w).has_value();
    const style* own = find(w.styles, d.style);
    if (own == nullptr) {
        d.style.clear();
        own = &w.styles.front();
    }
    assume_upkeep(d, d.style.empty() ? style{} : *own);
    const plan_request r{w.reference, w.place().rules, w.tools(),   d,
                         *own,        w.print.today,   chance_asked};
    const auto all = rank_sheets(r, w.styles, *wait);
    const bool any =
        std::any_of(all.begin(), all.end(), [](const ranked_sheet& t) { return t.carried(); });
    if (w.json) {
        return {io::json_of(all, r, *wait, w.print), any ? done : answer_is_no};
    }
    io::document page = io::document_of(all, r, *wait, w.print);
    if (unseen) {
        page.sections.insert(page.sections.begin(), io::section{{}, false})
            ->blocks.emplace_back(
                io::line{io::line_as::paragraph,
                         "Its coat is the likeliest of its mix: nobody has seen it."});
    }
    return {w.written(page), any ? done : answer_is_no};
}

}  // namespace pelage::cli
