#include <pelage/forecast/all_coats.hpp>
#include <pelage/forecast/mixed_coat.hpp>

namespace pelage {

void over_all_coats(forecast& f, const plan_request& r, const groom& g,
                    const std::vector<coat_chance>& coats) {
    if (coats.size() < 2) {
        return;
    }
    f.when = back_of(r, g, coats);
    for (habit_forecast& h : f.habits) {
        dog other = r.patient;
        other.brushed = h.habit;
        const plan_request ask{r.reference, r.rules, r.tools, other, r.sheet, r.today, r.asked};
        h.when = back_of(ask, g, coats);
    }
}

}  // namespace pelage
