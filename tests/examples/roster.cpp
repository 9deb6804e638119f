// A roster: the day's dogs, how long each takes, and when it must be back.
#include <cmath>
#include <iostream>

#include <pelage/pelage.hpp>

int main() {
    const auto salon = pelage::salon::embedded();
    const auto today = pelage::parse_date("2026-11-25");
    pelage::work day{};
    for (const pelage::dog_card& dog : salon.dogs()) {
        const pelage::plan plan = salon.plan(dog, {.today = today});
        std::cout << dog.name() << ", " << plan.sheet().title << ": ";
        if (plan.goes_ahead()) {
            std::cout << std::lround(pelage::in_minutes(plan.takes())) << " minutes, back by "
                      << pelage::in_words(plan.return_date().on().value()) << '\n';
            day += plan.takes();
        } else {
            std::cout << (plan.asks_owner() ? "ask the owner" : "to a veterinarian") << " first\n";
        }
    }
    std::cout << "The day: " << std::lround(pelage::in_minutes(day)) << " minutes of work\n";
}
