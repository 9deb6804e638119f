// Plan the groom of an invented dog with the invented salon's kit.
#include <iostream>

#include <pelage/data/reference.hpp>
#include <pelage/planner/plan.hpp>

int main() {
    using namespace pelage;
    const reference_data& c = io::reference();
    const salon_files& s = io::demo_salon();
    const dog* biscuit = find(s.dogs, "biscuit");
    const style* sheet = biscuit == nullptr ? nullptr : find(s.styles, biscuit->style);
    if (sheet == nullptr) {
        return 1;
    }
    const groom g = make_plan({c, s.rules, s.tools, *biscuit, *sheet, parse_date("2026-11-25")});
    std::cout << biscuit->name << ": " << g.blocks.size() << " setups, "
              << in_minutes(g.before + g.after) << " minutes, first " << title(g.blocks.front().how)
              << '\n';
    return 0;
}
