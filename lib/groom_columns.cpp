#include "groom_columns.hpp"

#include <algorithm>
#include <tuple>

namespace pelage {

blade as_measured(const kit_blade& b) {
    blade out = b.spec;
    if (b.measured) {
        out.stated = exactly(*b.measured, {basis::measured, {}, false, "test patch"});
    }
    return out;
}

comb as_measured(const kit_comb& c) {
    comb out = c.spec;
    if (c.measured) {
        out.stated = exactly(*c.measured, {basis::measured, {}, false, "test patch"});
    }
    return out;
}

namespace {

constexpr direction both_ways[] = {direction::with_lay, direction::against_lay};

void add_combs(const kit& k, const std::optional<date>& today, std::vector<setup>& out) {
    for (const kit_comb& c : k.combs) {
        const std::vector<std::string> under =
            c.fits.empty() ? std::vector<std::string>{k.under_comb} : c.fits;
        for (const std::string& id : under) {
            const kit_blade* b = find_blade(k, id);
            if (b == nullptr || !at_hand(*b, today) || c.count < 1) {
                continue;
            }
            for (const direction d : both_ways) {
                out.push_back(combed(as_measured(c), as_measured(*b), d));
            }
        }
    }
}

}  // namespace

std::vector<setup> setups_of(const kit& k, const std::optional<date>& today, const cut_rules& c) {
    std::vector<setup> out;
    for (const kit_blade& b : k.blades) {
        if (!at_hand(b, today) || b.spec.shape == edge::adjustable) {
            continue;
        }
        for (const direction d : both_ways) {
            out.push_back(bare(as_measured(b), d));
        }
    }
    add_combs(k, today, out);
    std::stable_sort(out.begin(), out.end(), [&](const setup& a, const setup& b) {
        const auto key = [&](const setup& s) {
            return std::tuple{skips(s.tool), in_hundredths(stated_length(s, c).best),
                              !s.over.has_value(), held(s), s.way == direction::against_lay};
        };
        return key(a) < key(b);
    });
    for (const tool_kind t : {tool_kind::scissors, tool_kind::thinners, tool_kind::carder,
                              tool_kind::fingers, tool_kind::none}) {
        out.push_back(by_hand(t));
    }
    return out;
}

}  // namespace pelage
