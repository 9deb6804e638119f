#include "planner/lone_places.hpp"

#include <algorithm>
#include <map>

#include "planner/candidates.hpp"

namespace pelage {

namespace {

/// What was chosen in one row.
struct chosen_cell {
    const zone_plan& z;
    const setup& how;
    length leaves;
};

class parts_as_chosen {
  public:
    parts_as_chosen(const plan_request& r, const ready_kit& ready, const compiled_plan& c,
                    const solution& s)
        : r_(r), ready_(ready), c_(c), s_(s) {}

    [[nodiscard]] std::vector<part_follower> lone() const {
        std::vector<part_follower> out;
        for (std::size_t row = 0; row < s_.setup.size(); ++row) {
            const chosen_cell here = at(row);
            if (!substituted(here)) {
                continue;
            }
            const auto most = left_around(here.z);
            if (most && off(*most, here.z) && would_change(here, *most)) {
                out.push_back({c_.rows[row], as_far_as_it_may(*most), *here.z.target});
            }
        }
        return out;
    }

    /// The followers of `c`, each with what its part is left at now.
    [[nodiscard]] std::vector<part_follower> again() const {
        std::vector<part_follower> out;
        for (const part_follower& f : c_.follow) {
            zone_plan lone = c_.zones[f.zone];
            lone.target = f.wished;
            lone.tolerated =
                tolerance(f.wished, r_.reference.dog_body.zones[lone.at.zone].where == group::head,
                          r_.rules.prices);
            const auto most = left_around(lone);
            out.push_back({f.zone, most ? as_far_as_it_may(*most) : f.wished, f.wished});
        }
        return out;
    }

  private:
    [[nodiscard]] chosen_cell at(std::size_t row) const {
        const std::size_t k = s_.setup[row];
        return {c_.zones[c_.rows[row]], ready_.top().setups()[c_.setup_of(k)],
                mm(find(c_.choice, row, k)->length / 100.0)};
    }
    [[nodiscard]] part part_at(const zone_plan& z) const {
        return part_of(r_.reference.dog_body.zones[z.at.zone]);
    }
    [[nodiscard]] static bool clips(const zone_plan& z) {
        return z.target && !z.mat && pelage::clips(z.how_finished);
    }
    [[nodiscard]] static bool off(const length& l, const zone_plan& z) {
        return in_hundredths(gap(l, *z.target)) > in_hundredths(z.tolerated);
    }
    [[nodiscard]] static bool substituted(const chosen_cell& here) {
        return clips(here.z) && here.how.kind == tool_kind::scissors && !here.z.tidied;
    }
    /// What skip teeth leave is followed by scissors, no shorter than anybody scissors in place of a blade.
    [[nodiscard]] length as_far_as_it_may(const length& most) const {
        for (std::size_t row = 0; row < s_.setup.size(); ++row) {
            const chosen_cell other = at(row);
            if (goes_anywhere(other.how) && in_hundredths(other.leaves) == in_hundredths(most)) {
                return most;
            }
        }
        return longer(most, r_.rules.refusal.scissor_hand.best);
    }
    /// Scissors that are at their least already can go no nearer to it.
    [[nodiscard]] bool would_change(const chosen_cell& here, const length& to) const {
        const zone& where = r_.reference.dog_body.zones[here.z.at.zone];
        const length least = scissors_leave_at_least(where, r_.rules.refusal);
        return in_hundredths(longer(to, least)) != in_hundredths(here.leaves);
    }
    /// A bare blade with full teeth, with the lay: the others don't go to folds and webs.
    [[nodiscard]] static bool goes_anywhere(const setup& s) {
        return s.kind == tool_kind::clip && !s.over && !skips(s.tool) &&
               s.way == direction::with_lay;
    }
    /// What most of the part, wished about as long, is clipped to for want of better; of the dog where nothing of the part is.
    [[nodiscard]] std::optional<length> left_around(const zone_plan& lone) const {
        const auto of_part = most_of(lone, true);
        return of_part ? of_part : most_of(lone, false);
    }
    /// Only where most of what is left so misses its own wish by it.
    [[nodiscard]] std::optional<length> most_of(const zone_plan& lone, bool its_part) const {
        struct left_so {
            work all{};
            work missed{};
        };
        std::map<std::int32_t, left_so> by_length;
        for (std::size_t row = 0; row < s_.setup.size(); ++row) {
            const chosen_cell other = at(row);
            const bool near = !its_part || part_at(other.z) == part_at(lone);
            if (clips(other.z) && near && !off(*other.z.target, lone) &&
                other.how.kind == tool_kind::clip) {
                const work takes = place_cost(r_, other.z.at, finish::clip);
                left_so& here = by_length[in_hundredths(other.leaves)];
                here.all += takes;
                here.missed += off(other.leaves, other.z) ? takes : work{};
            }
        }
        const auto most = std::max_element(
            by_length.begin(), by_length.end(),
            [](const auto& a, const auto& b) { return a.second.all < b.second.all; });
        const bool missed = most != by_length.end() &&
                            most->second.missed + most->second.missed >= most->second.all;
        return missed ? std::optional{mm(most->first / 100.0)} : std::nullopt;
    }

    const plan_request& r_;
    const ready_kit& ready_;
    const compiled_plan& c_;
    const solution& s_;
};

}  // namespace

std::vector<part_follower> lone_places(const plan_request& r, const ready_kit& ready,
                                       const compiled_plan& c, const solution& s) {
    // with combs in the kit folds and webs are done by them
    return r.tools.combs.empty() ? parts_as_chosen(r, ready, c, s).lone()
                                 : std::vector<part_follower>{};
}

std::vector<part_follower> followed_again(const plan_request& r, const ready_kit& ready,
                                          const compiled_plan& c, const solution& s) {
    return parts_as_chosen(r, ready, c, s).again();
}

}  // namespace pelage
