// The groomer's plan: what to do with a dog, step by step, and when it must be back.
#include <iostream>

#include <pelage/pelage.hpp>

int main() {
    const auto salon = pelage::salon::embedded();  // or pelage::salon::open("my-salon")
    const pelage::plan plan =
        salon.plan(salon.dog("biscuit"), {.today = pelage::parse_date("2026-11-25")});
    for (const pelage::step& step : plan.steps()) {
        std::cout << "- " << pelage::text(step) << '\n';
    }
    for (const pelage::plan_caution& caution : plan.cautions()) {
        std::cout << "! " << caution.text << '\n';
    }
    if (plan.goes_ahead()) {  // else a veterinarian or the owner is asked first
        std::cout << pelage::text(plan.return_date()) << '\n';
    }
}
