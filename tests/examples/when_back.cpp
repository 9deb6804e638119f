// When must an invented dog be back, and which place mats first?
#include <iostream>

#include <pelage/data/reference.hpp>
#include <pelage/forecast/forecast.hpp>

int main() {
    using namespace pelage;
    const reference_data& c = io::reference();
    const salon_files& s = io::demo_salon();
    const dog* biscuit = find(s.dogs, "biscuit");
    const style* sheet = biscuit == nullptr ? nullptr : find(s.styles, biscuit->style);
    if (sheet == nullptr) {
        return 1;
    }
    const date today = parse_date("2026-11-25").value();
    const plan_request ask{c, s.rules, s.tools, *biscuit, *sheet, today};
    const groom g = make_plan(ask);
    const forecast f = forecast_of(ask, g);
    std::cout << biscuit->name << " back by " << in_words(plus(today, f.when.in))
              << "; first to mat: " << title(c.dog_body, f.zones.front().at) << '\n';
    return 0;
}
