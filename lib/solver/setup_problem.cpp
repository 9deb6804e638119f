// A problem by its definition: what a plan costs, and what is wrong with a problem.
#include <algorithm>
#include <array>
#include <cstdlib>

#include <pelage/base/error.hpp>
#include <pelage/solver/setup_problem.hpp>

#include "solver/setup_cost.hpp"

namespace pelage {

namespace {

void need(bool holds, const char* what) {
    if (!holds) {
        throw error(errc::range, what);
    }
}

}  // namespace

const allowed_setup* find(const problem& p, std::size_t zone, std::size_t setup) {
    const auto& all = p.zones.at(zone);
    const auto at = std::find_if(all.begin(), all.end(), [&](auto& s) { return s.setup == setup; });
    return at != all.end() ? &*at : nullptr;
}

planning::cost_t planning::price_of(const problem& p, std::span<const std::size_t> setup) {
    need(setup.size() == p.zones.size(), "a plan names one setup per zone");
    cost_t sum = 0;
    std::int32_t spent = 0;
    tool_set held = 0;
    std::array<std::int32_t, most_zones> left{};
    for (std::size_t z = 0; z < setup.size(); ++z) {
        const allowed_setup* const s = find(p, z, setup[z]);
        need(s != nullptr, "the plan uses a setup that is not allowed in its zone");
        sum += s->cost;
        spent += s->spend;
        held |= s->tools;
        left[z] = s->length;
    }
    for (std::size_t t = 0; t < p.price.size(); ++t) {
        sum += (held >> t & 1U) != 0 ? p.price[t] : 0;
    }
    for (const seam_cost& s : p.seams) {
        const std::int32_t step = std::abs(left[s.a] - left[s.b]);
        sum += cost_t{std::max(0, step - s.allowance)} * s.per_hundredth;
    }
    return spent <= p.budget ? sum : none;
}

work cost_of(const problem& p, std::span<const std::size_t> setup) {
    check(p);
    const planning::cost_t price = planning::price_of(p, setup);
    need(price != planning::none, "the plan needs more combing out than its budget");
    return mmin(price);
}

void check(const problem& p) {
    need(p.zones.size() <= most_zones && p.price.size() <= most_tools &&
             p.seams.size() <= most_steps,
         "too many zones, tools or seams");
    need(p.budget >= 0, "a budget lies below 0 minutes");
    std::int64_t most = 0;  // no plan costs more: each zone, tool and step at its dearest
    tool_set priced = 0;
    std::uint32_t dear = 0;  // without a sign: what lies below 0 lies beyond every bound
    for (const std::int32_t price : p.price) {
        dear = std::max(dear, static_cast<std::uint32_t>(price));
        most += price;
        priced = priced << 1U | 1U;
    }
    need(dear <= std::uint32_t{dearest}, "a price lies outside 0 to 1000 minutes");
    dear = 0;
    bool in_order = true;
    tool_set held = 0;
    std::uint32_t spends_most = 0;
    std::uint32_t high = 0;
    std::uint32_t low = longest_hair;
    for (const auto& zone : p.zones) {
        std::uint32_t dear_here = 0;
        std::int32_t next = 0;
        for (const allowed_setup& s : zone) {
            in_order &= s.setup >= next;
            next = s.setup + 1;
            held |= s.tools;
            dear_here = std::max(dear_here, static_cast<std::uint32_t>(s.cost));
            spends_most = std::max(spends_most, static_cast<std::uint32_t>(s.spend));
            low = std::min(low, static_cast<std::uint32_t>(s.length));
            high = std::max(high, static_cast<std::uint32_t>(s.length));
        }
        in_order &= next <= std::int32_t{most_setups};
        dear = std::max(dear, dear_here);
        most += dear_here;
    }
    need(in_order, "the setups of a zone don't stand in their order, each once, below 512");
    need(dear <= std::uint32_t{dearest}, "a cost lies outside 0 to 1000 minutes");
    need(spends_most <= std::uint32_t{dearest},
         "combing out in one place lies outside 0 to 1000 minutes");
    need(high <= std::uint32_t{longest_hair}, "a length lies outside 0 to 1000 mm");
    need((held & ~priced) == 0, "a setup holds a tool that has no price");
    bool sound = true;
    const std::int64_t widest = std::int64_t{high} - low;
    for (const seam_cost& s : p.seams) {
        sound &= (std::max(s.a, s.b) < p.zones.size()) & (s.allowance >= 0) &
                 (s.per_hundredth >= 0) & (s.per_hundredth <= dearest / 1000);
        most += s.per_hundredth * std::max<std::int64_t>(0, widest - s.allowance);
    }
    need(sound, "a seam names no zone of the problem or lies outside its bounds");
    need(most <= most_cost, "the dearest plan would cost more than 250000 minutes");
}

}  // namespace pelage
