// The trainee's ladder: what each blade and comb of the kit leaves on a coat, shortest first.
#include <iostream>

#include <pelage/pelage.hpp>

int main() {
    const auto salon = pelage::salon::embedded();
    for (const pelage::ladder_rung& rung : salon.ladder(pelage::coat_class::curly).rungs()) {
        if (rung.whole_coat && rung.tool.moved == pelage::direction::with_lay) {
            std::cout << pelage::text(rung, pelage::length_unit::inch) << '\n';
        }
    }
    for (const pelage::near_tool& near : salon.lookup("9mm", pelage::coat_class::wavy).nearest()) {
        std::cout << "near 9 mm on a wavy coat: " << pelage::text(near.tool)
                  << (near.at_hand ? "\n" : " (not at hand)\n");
    }
}
