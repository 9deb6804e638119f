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
            const auto most = left_around(here);
            if (most && off(*most, here.z) && would_change(here, *most)) {
                out.push_back({c_.rows[row], *most, *here.z.target});
            }
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
        return z.target && !z.mat &&
               (z.how_finished == finish::clip || z.how_finished == finish::comb_then_scissor);
    }
    [[nodiscard]] static bool off(const length& l, const zone_plan& z) {
        return in_hundredths(gap(l, *z.target)) > in_hundredths(z.tolerated);
    }
    [[nodiscard]] static bool substituted(const chosen_cell& here) {
        return clips(here.z) && here.how.kind == tool_kind::scissors && !here.z.tidied;
    }
    /// Scissors that are at their least already can go no nearer to it.
    [[nodiscard]] bool would_change(const chosen_cell& here, const length& to) const {
        const zone& where = r_.reference.dog_body.zones[here.z.at.zone];
        const length least = scissors_leave_at_least(where, r_.rules.refusal);
        return in_hundredths(longer(to, least)) != in_hundredths(here.leaves);
    }
    /// What most of the part, wished about as long, is clipped to for want of better; of the dog where nothing of the part is.
    [[nodiscard]] std::optional<length> left_around(const chosen_cell& here) const {
        const auto of_part = most_of(here, true);
        return of_part ? of_part : most_of(here, false);
    }
    [[nodiscard]] std::optional<length> most_of(const chosen_cell& here, bool its_part) const {
        std::map<std::int32_t, work> by_length;
        for (std::size_t row = 0; row < s_.setup.size(); ++row) {
            const chosen_cell other = at(row);
            const bool near = !its_part || part_at(other.z) == part_at(here.z);
            const bool alike = clips(other.z) && near && !off(*other.z.target, here.z);
            if (alike && other.how.kind == tool_kind::clip && off(other.leaves, other.z)) {
                by_length[in_hundredths(other.leaves)] += place_cost(r_, other.z.at, finish::clip);
            }
        }
        const auto most =
            std::max_element(by_length.begin(), by_length.end(),
                             [](const auto& a, const auto& b) { return a.second < b.second; });
        return most != by_length.end() ? std::optional{mm(most->first / 100.0)} : std::nullopt;
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

}  // namespace pelage
