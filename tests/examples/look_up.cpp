// Look up a blade: what does a 7F leave on a wavy coat?
#include <iostream>

#include <pelage/base/length_text.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/kit/lookup.hpp>

int main() {
    using namespace pelage;
    const reference_data& c = io::reference();
    const lookup_request ask{.reference = c,
                             .rules = c.rules,
                             .tools = io::demo_salon().tools,
                             .text = "7F",
                             .coat = coat_class::wavy,
                             .where = {},
                             .way = {},
                             .today = {}};
    const lookup_answer a = look_up(ask);
    const coat_row& wavy = a.leaves.front();
    std::cout << held(a.asked.tool) << " on a " << coat_of(c, wavy.coat).title << ": "
              << show(wavy.with) << " with the lay, " << show(wavy.against) << " against it\n";
    return 0;
}
