#include <algorithm>
#include <map>

#include <pelage/model/growth_record.hpp>
#include <pelage/planner/grow_back.hpp>

#include "planner/alternatives_parts.hpp"
#include "planner/candidates.hpp"

namespace pelage {

namespace {

class regrowth_planner {
  public:
    regrowth_planner(const plan_request& r, const groom& g)
        : r_(ways::quietly(r)), g_(g), ready_(r_), coat_(coat_of(r.reference, *r.patient.coat)) {}

    [[nodiscard]] std::vector<regrowth_option> all() {
        if (!g_.planned() || coat_.kind != cycle::growing) {
            return {};
        }
        find_clipped();
        if (least_.empty()) {
            return {};
        }
        law_ = r_.learned != nullptr
                   ? r_.learned->next
                   : learn_rate(r_.patient, r_.reference, r_.rules, r_.today).next;
        std::vector<regrowth_option> out;
        regrowth_option as_planned;
        as_planned.plan = g_;
        const bool some_sound =
            std::any_of(g_.zones.begin(), g_.zones.end(),
                        [](const zone_plan& z) { return z.came == outcome::taken_down; });
        if (some_sound) {
            as_planned.how = grow_back::even_part;
            as_planned.even = mm(1000.0);
            for (std::size_t i = 0; i < g_.zones.size(); ++i) {
                if (g_.zones[i].came == outcome::taken_down) {
                    as_planned.down.push_back(i);
                    as_planned.even = shorter(as_planned.even, g_.zones[i].leaves->best);
                }
            }
        }
        add(std::move(as_planned), out);
        if (g_.down.empty()) {
            add_even(grow_back::even_part, out);
        } else {
            add_patchwork(out);
        }
        if (!all_down()) {
            add_even(grow_back::even_all, out);
        }
        return out;
    }

  private:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }

    /// Every part with mats comes down in the plan, and with legs or body the other of them.
    [[nodiscard]] bool all_down() const {
        const auto down = [&](part p) {
            return std::find(g_.down.begin(), g_.down.end(), p) != g_.down.end();
        };
        const bool trunk = least_.count(part::body) > 0 || least_.count(part::legs) > 0;
        return std::all_of(least_.begin(), least_.end(),
                           [&](const auto& one) { return down(one.first); }) &&
               (!trunk || (down(part::body) && down(part::legs)));
    }

    /// Shorter than the sheet wishes, beyond its tolerance.
    [[nodiscard]] static bool short_of(const zone_plan& z, const length& wish, const length& tol) {
        return z.leaves && in_hundredths(z.leaves->best) < in_hundredths(wish - tol);
    }

    /// What the sheet wishes of a place: its own plan may have been asked for less.
    [[nodiscard]] const zone_plan* wish_of(std::size_t i) const {
        const zone_plan& z = g_.zones[i];
        const bool coat = zone_of(z).where != group::prep && z.target &&
                          z.came != outcome::goes_along && z.came != outcome::stuck;
        return coat ? &z : nullptr;
    }

    void find_clipped() {
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            if (z.came != outcome::clipped_under || wish_of(i) == nullptr ||
                !short_of(z, *z.target, z.tolerated)) {
                continue;
            }
            const auto [at, is_new] = least_.emplace(part_of(zone_of(z)), z.leaves->best);
            at->second = shorter(at->second, z.leaves->best);
        }
    }

    /// To what a place goes down; nothing if it stays.
    [[nodiscard]] std::optional<length> down_to(grow_back how, const zone_plan& z) const {
        const part p = part_of(zone_of(z));
        const bool coat = p == part::body || p == part::legs;
        const bool matted = least_.count(p) > 0;
        if (how == grow_back::even_part) {
            return matted ? std::optional{least_.at(p)} : std::nullopt;
        }
        const bool trunk = least_.count(part::body) > 0 || least_.count(part::legs) > 0;
        if (!matted && !(coat && trunk)) {
            return std::nullopt;
        }
        if (!coat) {
            return least_.at(p);
        }
        length least = mm(1000.0);
        for (const part one : {part::body, part::legs}) {
            if (const auto at = least_.find(one); at != least_.end()) {
                least = shorter(least, at->second);
            }
        }
        return least;
    }

    void add_even(grow_back how, std::vector<regrowth_option>& out) {
        ways::changed_request changed(r_);
        regrowth_option w;
        w.how = how;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            const part p = part_of(zone_of(z));
            // a body that is scissored may come down by a blade where all of it does
            const bool trunk = how == grow_back::even_all &&
                               !zone_of(z).has(zone_use::scissors_only) &&
                               (p == part::body || p == part::legs);
            const bool by_clipper =
                clips(z.how_finished) || (trunk && z.how_finished == finish::scissor);
            const bool may = wish_of(i) != nullptr && by_clipper && !z.hurt &&
                             z.came != outcome::clipped_under && (!z.mat || z.combed_out) &&
                             z.how.kind != tool_kind::none;
            auto to = may ? down_to(how, z) : std::nullopt;
            if (!to) {
                continue;
            }
            // sound coat isn't taken shorter than is good for it
            to = longer(*to, coat_.shortest.best);
            if (!short_enough(*to, z)) {
                continue;
            }
            instruction down;
            down.target = to;
            down.how = finish::clip;
            down.between = side_of_target::nearest;
            changed.departs(r_, z.at, down);
            w.down.push_back(i);
        }
        if (w.down.empty()) {
            return;
        }
        w.plan = ways::plan_again(changed.of(r_, ready_));
        if (w.plan.zones.size() == g_.zones.size() && ways::no_worse_stuck(g_, w.plan)) {
            // what the kit leaves there, not what was wished of it
            w.even = mm(1000.0);
            for (const std::size_t i : w.down) {
                const zone_plan& z = w.plan.zones[i];
                w.even = z.leaves ? shorter(w.even, z.leaves->best) : w.even;
            }
            add(std::move(w), out);
        }
    }
    /// Only what is matted comes off.
    void add_patchwork(std::vector<regrowth_option>& out) {
        plan_request r = r_;
        r.patchwork = true;
        regrowth_option w;
        w.plan = ways::plan_again(r);
        if (w.plan.zones.size() == g_.zones.size() && ways::no_worse_stuck(g_, w.plan)) {
            add(std::move(w), out);
        }
    }
    [[nodiscard]] static bool short_enough(const length& to, const zone_plan& z) {
        return z.leaves && in_hundredths(to) < in_hundredths(z.leaves->best);
    }

    void add(regrowth_option w, std::vector<regrowth_option>& out) const {
        const bool again = std::any_of(out.begin(), out.end(), [&](const regrowth_option& o) {
            return ways::changes(o.plan, w.plan).empty();
        });
        if (again) {
            return;
        }
        w.more = ways::all_work(w.plan) - ways::all_work(g_);
        w.dearer = w.plan.choice.cost - g_.choice.cost;
        w.step = greatest_step(w.plan);
        date_it(w);
        out.push_back(std::move(w));
    }

    [[nodiscard]] length greatest_step(const groom& g) const {
        length most{};
        for (const seam& s : r_.reference.dog_body.seams) {
            for (const zone_plan& a : g.zones) {
                for (const zone_plan& b : g.zones) {
                    const bool sides = a.at.which == b.at.which || a.at.which == side::both ||
                                       b.at.which == side::both;
                    if (a.at.zone == s.a && b.at.zone == s.b && sides && a.target && b.target &&
                        a.leaves && b.leaves && s.kind == seam_kind::blend) {
                        most = longer(most, gap(a.leaves->best, b.leaves->best));
                    }
                }
            }
        }
        return most;
    }

    [[nodiscard]] const std::string& id_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone].id;
    }

    /// All zones share the rate: the last one back at one quantile is the last at all.
    void date_it(regrowth_option& w) const {
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan* wish = wish_of(i);
            const zone_plan& z = w.plan.zones[i];
            if (wish == nullptr || !z.leaves || !short_of(z, *wish->target, wish->tolerated)) {
                continue;
            }
            // short already for want of hair today: no work of the mats
            if (z.came == outcome::hair_shorter) {
                continue;
            }
            const length to = *wish->target;
            const auto in = [&](chance p) {
                return reach_quantile(z.leaves->best, to, terminal_at(coat_, id_of(z)).best, law_,
                                      p);
            };
            if (in(0.5) > w.back_in[1]) {
                w.back_in = {in(0.1), in(0.5), in(0.9)};
                w.last = i;
                w.from = z.leaves->best;
                w.to = *wish->target;
            }
        }
    }

    plan_request r_;
    const groom& g_;
    ready_kit ready_;
    const coat& coat_;
    rate_law law_{};
    std::map<part, length> least_;  ///< of the parts with mats clipped off: the shortest left there
};

}  // namespace

std::vector<regrowth_option> ways_to_grow_back(const plan_request& r, const groom& g) {
    return regrowth_planner(r, g).all();
}

}  // namespace pelage
