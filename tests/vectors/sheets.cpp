// Whole grooms after a style sheet, with the kit of the invented demo salon.
#include <algorithm>

#include <pelage/data/reference.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/trade/place_words.hpp>

#include "quantities.hpp"

namespace chk {

namespace {

using pelage::io::reference;

/// A dog with nothing found on it, and the sheet it is groomed after. The request borrows from it.
struct booking {
    pelage::dog patient;
    const pelage::style* sheet = nullptr;

    [[nodiscard]] pelage::plan_request request() const {
        return {reference(), reference().rules, pelage::io::demo_salon().tools, patient,
                *sheet,      std::nullopt};
    }
};

booking booked(givens& g) {
    booking b;
    b.sheet = pelage::find(reference().styles, g.word("sheet"));
    if (b.sheet == nullptr) {
        throw bad_case("no sheet is called '" + g.word("sheet") + "'");
    }
    b.patient.coat = g.coat();
    b.patient.size = pelage::dog_size::medium;
    b.patient.brushed = g.brushing();
    if (g.has("consent")) {
        b.patient.consents = g.list("consent");
    }
    return b;
}

answers minutes(givens& g) {
    const booking b = booked(g);
    const pelage::groom plan = pelage::make_plan(b.request());
    return {{"before", in(plan.before)}, {"after", in(plan.after)}};
}

/// When the dog must be back: as printed, and on the last day whatever the coat's usual interval.
answers sheet_back(givens& g) {
    const booking b = booked(g);
    const pelage::plan_request r = b.request();
    const pelage::groom plan = pelage::make_plan(r);
    const double chance = g.number("chance");
    const pelage::kept_coat k = pelage::after_groom(r, plan);
    return {{"days", in(pelage::return_date_of(k.zones, k.law, chance, k.usual).next_visit)},
            {"uncapped", in(pelage::last_fine_day(k.zones, k.law, chance, pelage::day(400)))}};
}

struct span {
    pelage::length shortest{};
    pelage::length longest{};
};

/// Shortest and longest finished length over the places of some selectors.
span span_over(const pelage::groom& plan, const std::vector<std::string>& where) {
    std::vector<pelage::place> places;
    for (const std::string& word : where) {
        const auto s = pelage::select(reference().dog_body, word);
        if (!s) {
            throw bad_case("no place is called '" + word + "'");
        }
        places.insert(places.end(), s->places.begin(), s->places.end());
    }
    span out{pelage::mm(1e6), pelage::mm(0)};
    for (const pelage::zone_plan& z : plan.zones) {
        if (std::find(places.begin(), places.end(), z.at) == places.end()) {
            continue;
        }
        // what is stripped by hand, and so never cut, ends at the length wished
        const auto ends = z.leaves ? std::optional{z.leaves->best} : z.target;
        if (!ends) {
            throw bad_case(pelage::title(reference().dog_body, z.at) + ": no length in the plan");
        }
        out.shortest = pelage::shorter(out.shortest, *ends);
        out.longest = pelage::longer(out.longest, *ends);
    }
    return out;
}

answers sheet_lengths(givens& g) {
    const booking b = booked(g);
    const span s = span_over(pelage::make_plan(b.request()), g.list("where"));
    return {{"shortest", in(s.shortest)}, {"longest", in(s.longest)}};
}

/// How much longer the shortest place of `longer` ends than the longest of `shorter`.
answers sheet_step(givens& g) {
    const booking b = booked(g);
    const pelage::groom plan = pelage::make_plan(b.request());
    return {{"by", in(span_over(plan, g.list("longer")).shortest -
                      span_over(plan, g.list("shorter")).longest)}};
}

/// The forecast of a resting coat whose jacket is clipped: regrown, 1 in 2.
answers sheet_regrown(givens& g) {
    const booking b = booked(g);
    const pelage::plan_request r = b.request();
    const pelage::forecast f = pelage::forecast_of(r, pelage::make_plan(r));
    if (!f.regrown) {
        throw bad_case("the forecast has no regrowth of a resting coat");
    }
    return {{"even-odds", in(f.regrown->in[1])}};
}

}  // namespace

void add_sheets(std::map<std::string, quantity>& to) {
    to["sheet-minutes"] = minutes;
    to["sheet-back"] = sheet_back;
    to["sheet-lengths"] = sheet_lengths;
    to["sheet-step"] = sheet_step;
    to["calibration-sheet-regrown"] = sheet_regrown;
}

}  // namespace chk
