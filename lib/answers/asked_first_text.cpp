#include <pelage/answers/asked_first.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/planner/alternatives.hpp>

namespace pelage::io {

document asked_first(const groom& g, const plan_request& r, const print_options& o,
                     const mixed_coat* unseen, plan_told as) {
    document d = as == plan_told::card ? card_of(g, std::nullopt, r, o, {}, unseen)
                                       : document_of(g, std::nullopt, r, o, {}, unseen);
    if (const auto instead = instead_of(r, g)) {
        const plan_request ask{r.reference,     r.rules, r.tools, instead->patient,
                               *instead->sheet, r.today, r.asked};
        const groom tidy = make_plan(ask);
        beside b = beside_plan(ask, tidy, o.explain);
        if (o.trainee && !o.explain) {
            b.why = reasons_why(ask, tidy);
        }
        const return_date when = back_of(ask, tidy);
        d.append(as == plan_told::card ? card_of(tidy, when, ask, o, b)
                                       : document_of(tidy, when, ask, o, b));
    }
    return d;
}

}  // namespace pelage::io
