// Blended is every seam that isn't a line, between two zones that are both cut, where their finished
// lengths differ by more than blends by itself: a step the kit leaves, and the sheet's own steps too,
// since a skirt or a fuller leg is set off by its length and not by an edge.
// Not blended: where the pattern sets an edge on purpose. A face or foot clipped close beside hair
// left long, as the sheet asks, ends in a line (common practice, no source).
#include "planner/blends.hpp"

#include <algorithm>
#include <tuple>

#include <boost/container/small_vector.hpp>

#include <pelage/model/blend.hpp>

#include "planner/candidates.hpp"

namespace pelage {

namespace {

bool clips(const zone_plan& z) {
    return z.how.kind == tool_kind::clip;
}

bool cut(const zone_plan& z) {
    const bool by_hand = z.how.kind == tool_kind::scissors || z.how.kind == tool_kind::thinners ||
                         z.how.kind == tool_kind::fingers;
    return z.came != outcome::stuck && z.leaves && (clips(z) || by_hand);
}

class blender {
  public:
    blender(const plan_request& r, const ready_kit& ready, groom& g)
        : r_(r),
          top_(ready.top()),
          sheet_(ready.sheet()),
          g_(g),
          at_(r.reference.dog_body.zones.size()) {
        g.blends.reserve(16);
        for (std::size_t i = 0; i < g.zones.size(); ++i) {
            if (cut(g.zones[i])) {
                at_[g.zones[i].at.zone].push_back(i);
            }
        }
    }

    void run() {
        const std::vector<seam>& seams = r_.reference.dog_body.seams;
        for (std::size_t i = 0; i < seams.size(); ++i) {
            const seam& s = seams[i];
            if (sheet_.kind_of(i) == seam_kind::line) {
                continue;
            }
            for (const std::size_t a : at_[s.a]) {
                for (const std::size_t b : at_[s.b]) {
                    const side x = g_.zones[a].at.which;
                    const side y = g_.zones[b].at.which;
                    if (x == y || x == side::both || y == side::both) {
                        meet(a, b, s.along.best);
                    }
                }
            }
        }
    }

  private:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }

    void meet(std::size_t a, std::size_t b, const length& along) {
        const length x = g_.zones[a].leaves->best;
        const length y = g_.zones[b].leaves->best;
        if (!shows(gap(x, y), r_.rules.prices)) {
            return;
        }
        blend one;
        std::tie(one.from, one.into) = y < x ? std::pair{a, b} : std::pair{b, a};
        const zone_plan& from = g_.zones[one.from];
        const zone_plan& into = g_.zones[one.into];
        one.step = rounded(gap(x, y));
        one.asked = from.target && into.target ? gap(*from.target, *into.target) : mm(0.0);
        if (edge_on_purpose(from, into, one.asked)) {
            return;
        }
        // nobody blends a head into an ear that was shaved
        if (zone_of(into).has(zone_use::ear_leather) && into.came == outcome::clipped_under) {
            return;
        }
        const bool stripped =
            from.how.kind == tool_kind::fingers && into.how.kind == tool_kind::fingers;
        one.when = stripped ? list::before_bath : list::after_bath;
        one.width = blend_width(one.step, along, r_.patient.size, r_.rules.prices);
        one.smoothed = stripped ? tool_kind::fingers : smoother(from, into);
        // what is only scissored isn't blended by a blade because a mat took one to it
        const auto scissored = [&](const zone_plan& z) {
            return zone_of(z).has(zone_use::scissors_only) && z.came == outcome::clipped_under;
        };
        if (clips(from) && clips(into) && !scissored(from) && !scissored(into)) {
            break_step(one, from, into);
        }
        g_.blends.push_back(std::move(one));
    }

    /// Thinners where a line of the pattern is worked away: where clipped, carded or stripped coat meets
    /// another length. Scissors where both are scissored anyway, and on coats that stand off, in which
    /// thinners leave marks (common practice, no source).
    [[nodiscard]] tool_kind smoother(const zone_plan& from, const zone_plan& into) const {
        const auto scissored = [](const zone_plan& z) {
            return z.how.kind == tool_kind::scissors || z.how_finished == finish::comb_then_scissor;
        };
        const bool thinned = from.how_finished == finish::thin || into.how_finished == finish::thin;
        const bool line = !scissored(from) || !scissored(into);
        return thinned || (line && r_.patient.coat != coat_class::curly) ? tool_kind::thinners
                                                                         : tool_kind::scissors;
    }

    [[nodiscard]] bool edge_on_purpose(const zone_plan& from, const zone_plan& into,
                                       const length& asked) const {
        const bool close = clips(into) && !into.how.over &&
                           detail::how_short(into.how.tool) != detail::shortness::longer &&
                           into.came != outcome::clipped_under;
        const bool face = zone_of(from).where == group::head && zone_of(into).where == group::head;
        const bool foot = zone_of(into).where == group::feet;
        return close && (face || foot) && shows(asked, r_.rules.prices);
    }

    /// Puts the best setup of the kit between the two, if there is one: full teeth, since what skip
    /// teeth leave would want blending itself. One whose tools are in use anyway is taken before one
    /// that would have to be taken up; then the nearest to the middle.
    void break_step(blend& one, const zone_plan& from, const zone_plan& into) const {
        const price_rules& p = r_.rules.prices;
        const coat_class coat = r_.patient.coat.value();
        const length x = from.leaves->best;
        const length y = into.leaves->best;
        // a mat came off before the bath, combed out or not
        const zone_situation here(r_, coat_of(r_.reference, coat), from, true);
        const zone_situation there(r_, coat_of(r_.reference, coat), into, true);
        const auto allowed = [&](const setup& s) {
            return !refuse(s, here.today, r_.rules.refusal, r_.rules.cut) &&
                   !refuse(s, there.today, r_.rules.refusal, r_.rules.cut);
        };
        std::size_t best = kit_setups::none;
        std::tuple<int, std::int32_t> least{};
        for (const std::size_t k : top_.clips(from.how.way)) {
            const setup& s = top_.setups()[k];
            const length leaves = top_.leaves(k, coat).best;
            if (skips(s.tool) || !breaks_step(leaves, x, y, p)) {
                continue;
            }
            const std::tuple how{new_tools(s), in_hundredths(off_middle(leaves, x, y))};
            if ((best == kit_setups::none || how < least) && allowed(s)) {
                least = how;
                best = k;
            }
        }
        if (best == kit_setups::none) {
            return;
        }
        one.between = top_.setups()[best];
        one.leaves = top_.leaves(best, coat);
        if (!shows(gap(one.leaves->best, x), p) && !shows(gap(one.leaves->best, y), p)) {
            one.smoothed = tool_kind::none;
        }
    }

    [[nodiscard]] int new_tools(const setup& s) const {
        bool blade = true;
        bool comb = s.over.has_value();
        for (const block& b : g_.blocks) {
            if (b.when == list::after_bath && b.how.kind == tool_kind::clip) {
                blade = blade && b.how.tool.id != s.tool.id;
                comb = comb && !(b.how.over && b.how.over->id == s.over->id);
            }
        }
        return (blade ? 1 : 0) + (comb ? 1 : 0);
    }

    const plan_request& r_;
    const kit_setups& top_;
    const resolved_style& sheet_;
    groom& g_;
    /// Cut places by zone of the body: one, or its sides.
    std::vector<boost::container::small_vector<std::size_t, 2>> at_;
};

}  // namespace

void add_blends(const plan_request& r, const ready_kit& ready, groom& g) {
    blender(r, ready, g).run();
}

}  // namespace pelage
