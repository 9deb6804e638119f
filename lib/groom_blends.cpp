// Blended is every seam that isn't a line, between two zones that are both cut, where their finished
// lengths differ by more than blends by itself: a step the kit leaves, and the sheet's own steps too,
// since a skirt or a fuller leg is set off by its length and not by an edge.
// Not blended: where the pattern sets an edge on purpose. A face or foot clipped close beside hair
// left long, as the sheet asks, ends in a line (common practice, no source).
#include "groom_blends.hpp"

#include <algorithm>
#include <tuple>

#include <pelage/blend.hpp>

#include "groom_cells.hpp"

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
    blender(const groom_request& r, const std::vector<setup>& columns, groom& g)
        : r_(r), columns_(columns), g_(g), at_(r.reference.dog_body.zones.size()) {
        for (std::size_t i = 0; i < g.zones.size(); ++i) {
            if (cut(g.zones[i])) {
                at_[g.zones[i].at.zone].push_back(i);
            }
        }
    }

    void run() {
        for (const seam& s : r_.reference.dog_body.seams) {
            if (s.kind == seam_kind::line) {
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
        const bool stripped =
            from.how.kind == tool_kind::fingers && into.how.kind == tool_kind::fingers;
        one.when = stripped ? list::before_bath : list::after_bath;
        one.width = blend_width(one.step, along, r_.patient.size, r_.rules.prices);
        one.smoothed = stripped ? tool_kind::fingers
                       : from.how_finished == finish::thin || into.how_finished == finish::thin
                           ? tool_kind::thinners
                           : tool_kind::scissors;
        if (clips(from) && clips(into)) {
            break_step(one, from, into);
        }
        g_.blends.push_back(std::move(one));
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

    /// What may stand between, and how many tools must be taken up for it.
    struct candidate {
        const setup* how;
        finished leaves;
        int new_tools;
    };

    /// Puts the best setup of the kit between the two, if there is one. One whose tools are in use
    /// anyway is taken before one that would have to be taken up; then the nearest to the middle.
    void break_step(blend& one, const zone_plan& from, const zone_plan& into) {
        const price_rules& p = r_.rules.prices;
        const length x = from.leaves->best;
        const length y = into.leaves->best;
        const candidate* best = nullptr;
        std::tuple<int, std::int32_t> least{};
        for (const candidate& c : candidates()) {
            if (c.how->way != from.how.way || !breaks_step(c.leaves.best, x, y, p)) {
                continue;
            }
            const std::tuple how{c.new_tools, in_hundredths(off_middle(c.leaves.best, x, y))};
            if ((best == nullptr || how < least) && allowed(*c.how, from) &&
                allowed(*c.how, into)) {
                least = how;
                best = &c;
            }
        }
        if (best == nullptr) {
            return;
        }
        one.between = *best->how;
        one.leaves = best->leaves;
        if (!shows(gap(best->leaves.best, x), p) && !shows(gap(best->leaves.best, y), p)) {
            one.smoothed = tool_kind::none;
        }
    }

    /// Blades and combs with full teeth: what skip teeth leave would want blending itself.
    [[nodiscard]] const std::vector<candidate>& candidates() {
        if (candidates_.empty()) {
            const coat& c = coat_of(r_.reference, r_.patient.coat.value());
            for (const setup& s : columns_) {
                if (s.kind == tool_kind::clip && !skips(s.tool)) {
                    candidates_.push_back({&s,
                                           rounded(cut_length(s, c.lay_degrees.best, r_.rules.cut)),
                                           new_tools(s)});
                }
            }
        }
        return candidates_;
    }

    [[nodiscard]] bool allowed(const setup& s, const zone_plan& z) const {
        zone_today t = today_in(r_, z);
        t.mat = nullptr;  // it came off before the bath
        return !refuse(s, t, r_.rules.refusal, r_.rules.cut);
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

    const groom_request& r_;
    const std::vector<setup>& columns_;
    groom& g_;
    std::vector<std::vector<std::size_t>> at_;  ///< cut places by zone of the body
    std::vector<candidate> candidates_;         ///< filled when the first step asks for one
};

}  // namespace

void add_blends(const groom_request& r, const std::vector<setup>& columns, groom& g) {
    blender(r, columns, g).run();
}

}  // namespace pelage
