// A problem by its definition: what a plan costs, and what is wrong with a problem.
#include <pelage/error.hpp>

#include "plan_parts.hpp"

namespace pelage {

namespace {

[[noreturn]] void refuse(const char* what) {
    throw error(errc::range, what);
}

void need(bool holds, const char* what) {
    if (!holds) {
        refuse(what);
    }
}

bool within(std::int32_t x, std::int32_t most) {
    return x >= 0 && x <= most;
}

}  // namespace

const allowed_setup* find(const problem& p, std::size_t zone, std::size_t setup) {
    const auto& all = p.zones.at(zone);
    const auto at = std::find_if(all.begin(), all.end(), [&](auto& s) { return s.setup == setup; });
    return at != all.end() ? &*at : nullptr;
}

std::optional<planning::cost_t> planning::price_of(const problem& p,
                                                   std::span<const std::size_t> setup) {
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
    each_bit(held, [&](std::size_t t) { sum += p.price[t]; });
    for (const seam_cost& s : p.seams) {
        const std::int32_t step = std::max(left[s.a] - left[s.b], left[s.b] - left[s.a]);
        sum += cost_t{std::max(0, step - s.allowance)} * s.per_hundredth;
    }
    return spent <= p.budget ? std::optional{sum} : std::nullopt;
}

work cost_of(const problem& p, std::span<const std::size_t> setup) {
    check(p);
    const auto price = planning::price_of(p, setup);
    need(price.has_value(), "the plan needs more combing out than its budget");
    return mmin(*price);
}

void check(const problem& p) {
    need(p.zones.size() <= most_zones && p.price.size() <= most_tools &&
             p.seams.size() <= most_steps,
         "too many zones, tools or seams");
    need(p.budget >= 0, "a budget lies below 0 minutes");
    std::int64_t most = 0;  // no plan costs more: each zone, tool and step at its dearest
    tool_set priced = 0;
    for (const std::int32_t price : p.price) {
        need(within(price, dearest), "a price lies outside 0 to 1000 minutes");
        most += price;
        priced = priced << 1U | 1U;
    }
    std::int32_t low = longest_hair;
    std::int32_t high = 0;
    for (const auto& zone : p.zones) {
        std::int32_t dear = 0;
        std::int32_t next = 0;
        for (const allowed_setup& s : zone) {
            need(s.setup >= next && s.setup < most_setups,
                 "the setups of a zone don't stand in their order, each once, below 512");
            need(within(s.cost, dearest), "a cost lies outside 0 to 1000 minutes");
            need(within(s.length, longest_hair), "a length lies outside 0 to 1000 mm");
            need((s.tools & ~priced) == 0, "a setup holds a tool that has no price");
            next = s.setup + 1;
            dear = std::max(dear, s.cost);
            low = std::min(low, s.length);
            high = std::max(high, s.length);
        }
        most += dear;
    }
    for (const seam_cost& s : p.seams) {
        need(std::max(s.a, s.b) < p.zones.size() && s.allowance >= 0 &&
                 within(s.per_hundredth, dearest / 1000),
             "a seam names no zone of the problem or lies outside its bounds");
        most += std::int64_t{s.per_hundredth} * std::max(0, high - low - s.allowance);
    }
    need(most <= most_cost, "the dearest plan would cost more than 250000 minutes");
}

}  // namespace pelage
