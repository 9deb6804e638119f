#include "generate/made_stock.hpp"

#include <algorithm>
#include <string>

#include <pelage/data/reference.hpp>

namespace generate {

using namespace pelage;

std::vector<style> made_sheets(dice& d, std::size_t n, bool any_length) {
    const std::vector<double> trade{3, 5, 6, 7, 9.5, 10, 13, 16, 19, 22, 25, 28, 32, 38};
    std::vector<style> out;
    for (std::size_t s = 0; s < n; ++s) {
        style one;
        one.id = "made-" + std::to_string(s + 1);
        one.title = one.id;
        one.consent = {"clip-jacket"};
        for (const zone& z : io::reference().dog_body.zones) {
            if (z.where == group::prep) {
                continue;
            }
            instruction i;
            i.target = any_length ? mm(d.roll(75) / 2.0 + 1.5) : mm(d.one_of(trade));
            i.how = d.luck(40) ? finish::comb_then_scissor : finish::clip;
            i.way = d.luck(70)   ? lay_choice::with_lay
                    : d.luck(50) ? lay_choice::against_lay
                                 : lay_choice::either;
            one.rules.push_back({z.id, i});
        }
        out.push_back(std::move(one));
    }
    return out;
}

std::vector<ware> made_catalogue(std::size_t n) {
    const reference_data& c = io::reference();
    std::vector<ware> out;
    for (const comb& one : c.combs) {
        out.push_back({{}, one, {}});
    }
    for (const edge shape : {edge::standard, edge::wide}) {
        for (const blade& b : c.blades) {
            if (out.size() < n && b.shape == shape && b.etched != "50") {
                out.push_back({b, {}, {}});
            }
        }
    }
    // blades first, as in a shop's list
    std::rotate(out.begin(), out.begin() + static_cast<std::ptrdiff_t>(c.combs.size()), out.end());
    return out;
}

cover_problem made_stock(dice& d, std::size_t items, std::size_t targets) {
    cover_problem p{items, {}};
    for (std::size_t t = 0; t < targets; ++t) {
        cover_target one{d.roll(6), {}};
        for (int ways = d.roll(4); ways > 0; --ways) {
            item_set way = 0;
            for (int needed = d.luck(10) ? 0 : 1 + d.roll(3); needed > 0; --needed) {
                way |= item_set{1} << d.roll(static_cast<int>(items));
            }
            one.ways.push_back(way);
        }
        p.targets.push_back(std::move(one));
    }
    return p;
}

}  // namespace generate
