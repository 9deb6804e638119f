// What is a rule and what is a wish when blocks are put in order.
// Rules: what is done before the bath is done before it (each list is ordered by itself); the face of a
// dog that bites or wears a muzzle comes after all else of its list; in a list the clippers' work comes
// before the hand tools', since scissors neaten what clippers leave; loose undercoat comes out before
// anything is scissored.
// Wishes, the weightier first, as solver/order.hpp counts them: the least time for taking up blades and
// combs; the head last; body, legs, tail, feet, head, where prep stands with the body; no jumps.
#include "planner/working_order.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <functional>
#include <map>
#include <tuple>

#include <boost/container/small_vector.hpp>

#include "planner/at_the_teeth.hpp"
#include "planner/targets.hpp"

namespace pelage {

namespace {

constexpr part_set head_part = 1U << 4U;

/// The part of the dog a group belongs to in working order, as the bit of a part_set.
part_set part_of(group g) {
    switch (g) {
        case group::prep:
        case group::body:
            return 1U << 0U;
        case group::legs:
            return 1U << 1U;
        case group::tail:
            return 1U << 2U;
        case group::feet:
            return 1U << 3U;
        case group::head:
            break;
    }
    return head_part;
}

/// Minutes by part, in working order.
using part_minutes = std::array<work, 5>;

part_minutes minutes_of(const plan_request& r, const groom& g, const block& b) {
    part_minutes out{};
    for (const std::size_t i : b.zones) {
        const zone_plan& z = g.zones[i];
        const part_set part = part_of(r.reference.dog_body.zones[z.at.zone].where);
        out[static_cast<std::size_t>(std::countr_zero(part))] += b.off ? z.off_takes : z.takes;
    }
    return out;
}

/// The parts a block of a list counts as: that in which most of its minutes lie, and those of which it
/// does half or more. A hand's breadth behind the ears makes no head of a body's trim.
part_set parts_of(const part_minutes& here, const part_minutes& all) {
    const auto main = std::max_element(here.begin(), here.end());
    part_set out = 0;
    for (std::size_t p = 0; p < here.size(); ++p) {
        const bool half = here[p] > work{} && here[p] + here[p] >= all[p];
        out = static_cast<part_set>(
            out | (half || here.begin() + static_cast<std::ptrdiff_t>(p) == main ? 1U << p : 0U));
    }
    return out;
}

part_minutes minutes_of(const plan_request& r, const groom& g, std::span<const block> blocks,
                        list when) {
    part_minutes all{};
    for (const block& b : blocks) {
        const part_minutes here = b.when == when ? minutes_of(r, g, b) : part_minutes{};
        std::transform(here.begin(), here.end(), all.begin(), all.begin(), std::plus<>{});
    }
    return all;
}

bool same_setup(const setup& a, const setup& b) {
    if (a.kind != b.kind || a.kind != tool_kind::clip) {
        return a.kind == b.kind;
    }
    const bool same_comb = a.over ? b.over && a.over->id == b.over->id : !b.over;
    return a.tool.id == b.tool.id && a.tool.setting == b.tool.setting && same_comb &&
           a.way == b.way;
}

bool by_hand(const block& b) {
    return b.how.kind != tool_kind::clip;
}

bool carded(const block& b) {
    return b.how.kind == tool_kind::carder;
}

std::vector<block> gathered(const plan_request& r, const groom& g) {
    std::vector<block> out;
    out.reserve(16);  // more than any sheet of ours asks for
    const bool bites = may_bite(r.patient);
    const auto zone_of = [&](const zone_plan& z) -> const zone& {
        return r.reference.dog_body.zones[z.at.zone];
    };
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        const auto add = [&](const setup& how, finish done, list when, bool off,
                             const work& takes) {
            const bool last = bites && at_the_teeth(zone_of(z));
            const auto same = std::find_if(out.begin(), out.end(), [&](const block& b) {
                return b.when == when && b.done == done && b.off == off && b.last == last &&
                       same_setup(b.how, how);
            });
            block& b = same != out.end()
                           ? *same
                           : out.emplace_back(block{how, done, when, {}, off, last, {}, {}, {}});
            b.zones.push_back(i);
            b.takes += takes;
            if (!by_hand(b)) {
                // while it is scissored to shape the clipper rests
                b.running += done == finish::clip ? takes : place_work(r, z.at, finish::clip);
            }
        };
        if (z.came == outcome::stuck) {
            continue;
        }
        if (z.off_by) {
            add(*z.off_by, finish::clip, list::before_bath, true, z.off_takes);
        }
        if (z.how.kind != tool_kind::none) {
            add(z.how, z.how_finished, z.when, false, z.takes);
        }
    }
    return out;
}

/// The blocks of one list as numbers.
class list_problem {
  public:
    list_problem(const plan_request& r, const groom& g, std::span<const block> blocks)
        : r_(r), g_(g) {
        if (blocks.size() > most_blocks) {
            throw error(errc::range, "a list has at most 64 setups");
        }
        problem_.last = head_part;
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            clipped_ |= by_hand(blocks[b]) ? 0 : block_set{1} << b;
            carded_ |= carded(blocks[b]) ? block_set{1} << b : 0;
        }
        if (!blocks.empty()) {
            all_ = minutes_of(r, g, blocks, blocks.front().when);
        }
        at_.resize(r.reference.dog_body.zones.size());
        for (std::size_t b = 0; b < blocks.size(); ++b) {
            add(blocks[b], b);
        }
        find_neighbours();
    }
    [[nodiscard]] const order_problem& problem() const { return problem_; }

  private:
    struct standing {
        side which;
        std::size_t in;  ///< number of the block
    };

    [[nodiscard]] tool_set tool(std::string_view id, bool comb, const work& price) {
        const auto [at, fresh] = tools_.try_emplace({id, comb}, problem_.price.size());
        if (fresh) {
            problem_.price.push_back(static_cast<std::int32_t>(in_mmin(price)));
        }
        return tool_set{1} << at->second;
    }

    void add(const block& b, std::size_t number) {
        const price_rules& p = r_.rules.prices;
        order_block o;
        if (by_hand(b)) {
            o.after = clipped_ | (carded(b) ? 0 : carded_);
        } else {
            o.held =
                tool(b.how.tool.id, false,
                     r_.tools.clippers > 1 ? p.pick_up_second_clipper.best : p.pick_up_blade.best);
            o.held |= b.how.over ? tool(b.how.over->id, true, p.pick_up_comb.best) : 0;
        }
        o.beside = block_set{1} << number;
        o.parts = parts_of(minutes_of(r_, g_, b), all_);
        for (const std::size_t i : b.zones) {
            const place& at = g_.zones[i].at;
            at_[at.zone].push_back({at.which, number});
        }
        problem_.blocks.push_back(o);
    }

    void find_neighbours() {
        for (const auto& sides : at_) {
            for (const standing& a : sides) {
                for (const standing& b : sides) {  // from the left ear to the right is no jump
                    meet(a, b);
                }
            }
        }
        for (const seam& s : r_.reference.dog_body.seams) {
            for (const standing& a : at_[s.a]) {
                for (const standing& b : at_[s.b]) {
                    if (a.which == b.which || a.which == side::both || b.which == side::both) {
                        meet(a, b);
                    }
                }
            }
        }
    }
    void meet(const standing& a, const standing& b) {
        problem_.blocks[a.in].beside |= block_set{1} << b.in;
        problem_.blocks[b.in].beside |= block_set{1} << a.in;
    }

    const plan_request& r_;
    const groom& g_;
    order_problem problem_;
    part_minutes all_{};
    block_set clipped_ = 0;
    block_set carded_ = 0;
    std::map<std::pair<std::string_view, bool>, std::size_t> tools_;
    std::vector<boost::container::small_vector<standing, 4>> at_;  ///< by zone of the body
};

/// The first order of a list: what best_order() falls back on where no wish decides: of one part the longest
/// first.
void put_first(const plan_request& r, const groom& g, std::vector<block>& blocks) {
    const std::array all{minutes_of(r, g, blocks, list::before_bath),
                         minutes_of(r, g, blocks, list::after_bath)};
    const auto key = [&](const block& b) {
        const part_set parts = parts_of(minutes_of(r, g, b), all[b.when == list::after_bath]);
        const unsigned first = parts & (0U - parts);
        // what is long can still be shortened
        const int longest_first = by_hand(b) ? 0 : -in_hundredths(b.how.tool.stated.best);
        const int comb_first = b.how.over ? -in_hundredths(b.how.over->stated.best) : 0;
        return std::tuple{b.when == list::after_bath,
                          b.last,
                          by_hand(b),
                          by_hand(b) && !carded(b),
                          first,
                          parts,
                          comb_first,
                          longest_first,
                          b.zones.front()};
    };
    std::vector<std::pair<decltype(key(blocks.front())), std::size_t>> keys;
    keys.reserve(blocks.size());
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        keys.emplace_back(key(blocks[b]), b);
    }
    std::sort(keys.begin(), keys.end());
    std::vector<block> sorted;
    sorted.reserve(blocks.size());
    for (const auto& [rank, b] : keys) {
        sorted.push_back(std::move(blocks[b]));
    }
    blocks = std::move(sorted);
}

/// How long a blade has been running when each block of a list ends: it goes on where the next
/// block holds the same blade, whatever comb is on it.
void run_on(std::span<block> list) {
    const block* before = nullptr;
    for (block& b : list) {
        if (by_hand(b)) {
            continue;
        }
        if (before != nullptr && before->how.tool.id == b.how.tool.id) {
            b.running_before = before->running;
            b.running += before->running;
        }
        before = &b;
    }
}

list_order sort_best(const plan_request& r, const groom& g, std::span<block> list) {
    const list_problem p(r, g, list);
    const work_order best = best_order(p.problem());
    std::vector<block> sorted;
    sorted.reserve(list.size());
    for (const std::size_t b : best.blocks) {
        sorted.push_back(std::move(list[b]));
    }
    std::move(sorted.begin(), sorted.end(), list.begin());
    return {best.cost, best.proven};
}

/// The face of a dog that may bite is a list of its own, after all else: what is in the hand for it is
/// taken up once more.
void order_list(const plan_request& r, groom& g, std::span<block> list, list_order& known) {
    const auto face = std::find_if(list.begin(), list.end(), [](const block& b) { return b.last; });
    const auto others = static_cast<std::size_t>(face - list.begin());
    known = sort_best(r, g, list.first(others));
    if (face != list.end()) {
        const list_order last = sort_best(r, g, list.subspan(others));
        known.cost.pick_ups += last.cost.pick_ups;
        known.cost.early += last.cost.early;
        known.cost.departures += last.cost.departures;
        known.cost.jumps += last.cost.jumps;
        known.proven = known.proven && last.proven;
    }
    run_on(list);
}

}  // namespace

void put_in_order(const plan_request& r, groom& g) {
    g.blocks = gathered(r, g);
    put_first(r, g, g.blocks);
    const auto bath = std::find_if(g.blocks.begin(), g.blocks.end(),
                                   [](const block& b) { return b.when == list::after_bath; });
    order_list(r, g, {g.blocks.begin(), bath}, g.order_before);
    order_list(r, g, {bath, g.blocks.end()}, g.order_after);
    g.before = mmin(g.order_before.cost.pick_ups);
    g.after = mmin(g.order_after.cost.pick_ups);
    for (const block& b : g.blocks) {
        (b.when == list::before_bath ? g.before : g.after) += b.takes;
    }
    for (const combing_out& c : g.combed) {
        g.before += c.takes;
    }
}

}  // namespace pelage
