#include "answers/picture_labels.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

#include "answers/picture_label_costs.hpp"

namespace pelage::io {

namespace {

constexpr double reach = 1500.0;       ///< how far a label may be from its place
constexpr double over_leader = 700.0;  ///< and one across another leader
constexpr double far_off = 130.0;      ///< what stands so badly that others may give way
constexpr std::size_t nowhere = std::numeric_limits<std::size_t>::max();

/// Where it stands: at which of its stands.
struct standing {
    std::size_t label = 0;
    std::size_t at = nowhere;
    text_box box{};
    drawn_point from{};
};

/// Labels outside take the best places that are left, those near the edge first; then each in turn looks
/// for a better one.
class label_layout {
  public:
    explicit label_layout(const label_ground& g) : costs_(g, inside_) {
        constexpr int ways = 40;
        for (int k = 0; k < ways; ++k) {
            const double angle = 2.0 * std::numbers::pi * k / ways;
            ways_.push_back({std::cos(angle), std::sin(angle)});
        }
    }

    [[nodiscard]] bool put_inside(const wanted_label& w, std::size_t which) {
        const text_box size = size_of(w.lines);
        const auto middle = room_in(w.of, size.width, size.height, {});
        if (!middle) {
            return false;
        }
        text_box b = around(*middle, size.width, size.height);
        b.text = size.text;
        placed_label out{b, w.lines, true, {}, {}};
        out.which = which;
        inside_.push_back(std::move(out));
        return true;
    }

    void put_outside(const std::vector<wanted_label>& wanted, const std::vector<std::size_t>& all) {
        which_ = all;
        for (const std::size_t i : all) {
            const wanted_label* w = &wanted[i];
            const drawn_point end = w->inmost ? *w->inmost : innermost(w->of);
            costs_.add({end, &w->of});
            asked_.push_back({w, size_of(w->lines), end, rows_of(w->lines)});
        }
        std::vector<std::pair<double, standing>> todo;
        for (std::size_t i = 0; i < all.size(); ++i) {
            standing l{i};
            const double cost = seek(l);
            todo.emplace_back(cost, l);
        }
        // what mustn't be touched is told beside its place; the others find theirs around it
        std::stable_sort(todo.begin(), todo.end(), [&](const auto& a, const auto& b) {
            const bool first = asked_[a.second.label].wanted->warns;
            const bool second = asked_[b.second.label].wanted->warns;
            return std::pair(!first, a.first) < std::pair(!second, b.first);
        });
        for (auto& [cost, l] : todo) {
            (void)seek(l);
            outside_.push_back(l);
        }
        better(4);
        uncross();
        clear_all();
    }

    [[nodiscard]] std::vector<placed_label> take() {
        for (const standing& l : outside_) {
            const asked_label& a = asked_[l.label];
            placed_label out{l.box,  a.wanted->lines, false,          a.anchor,
                             l.from, a.wanted->above, a.wanted->warns};
            out.box.text = a.size.text;
            out.which = which_[l.label];
            inside_.push_back(std::move(out));
        }
        return std::move(inside_);
    }

  private:
    [[nodiscard]] const drawn_point& anchor_of(const standing& l) const {
        return asked_[l.label].anchor;
    }
    /// While some leader goes through words or across a leader, a few times; the best of all is kept.
    void clear_all() {
        std::vector<standing> best = outside_;
        double least = cost_of_all();
        const auto keep = [&] {
            const double cost = cost_of_all();
            best = cost < least ? outside_ : best;
            least = std::min(least, cost);
        };
        for (int i = 0; i < 2; ++i) {
            const std::vector<std::size_t> bad = worst_of(4, over_leader);
            if (bad.empty()) {
                break;
            }
            for (const std::size_t k : bad) {
                clear(k);
                keep();
            }
            better(1);
            keep();
        }
        outside_ = std::move(best);
    }
    double cost_of_all() {
        std::vector<std::size_t> all(outside_.size());
        std::iota(all.begin(), all.end(), std::size_t{0});
        return put_again(all, true);
    }

    /// Each looks for a better place, so many times, and the worst have others give way.
    void better(int rounds) {
        for (int i = 0; i < rounds; ++i) {
            for (std::size_t k = 0; k < outside_.size(); ++k) {
                (void)put_again({k});
            }
            for (const std::size_t k : worst_of(3)) {
                push_aside(k);
            }
        }
    }

    /// Takes labels away and puts them again, in that order; gives what they cost together. Or what they
    /// cost as they are.
    double put_again(const std::vector<std::size_t>& which, bool as_they_are = false) {
        std::vector<standing> all = outside_;
        std::vector<standing> others;
        for (std::size_t k = 0; k < all.size(); ++k) {
            if (std::find(which.begin(), which.end(), k) == which.end()) {
                others.push_back(all[k]);
            }
        }
        outside_ = std::move(others);
        double cost = 0.0;
        for (const std::size_t k : which) {
            cost += as_they_are ? cost_as_it_is(all[k]) : seek(all[k]);
            outside_.push_back(all[k]);
        }
        outside_ = std::move(all);
        return cost;
    }

    /// The labels that stand worst, so many at most.
    [[nodiscard]] std::vector<std::size_t> worst_of(std::size_t most, double least = far_off) {
        std::vector<std::pair<double, std::size_t>> by;
        for (std::size_t k = 0; k < outside_.size(); ++k) {
            const standing l = outside_[k];
            outside_.erase(outside_.begin() + static_cast<std::ptrdiff_t>(k));
            const double cost = cost_as_it_is(l);
            outside_.insert(outside_.begin() + static_cast<std::ptrdiff_t>(k), l);
            if (cost > least) {
                by.emplace_back(-cost, k);
            }
        }
        std::sort(by.begin(), by.end());
        std::vector<std::size_t> out;
        for (std::size_t i = 0; i < std::min(most, by.size()); ++i) {
            out.push_back(by[i].second);
        }
        return out;
    }

    /// The label gets the place it would have alone, and those in its way others, where all together are better
    /// off.
    void push_aside(std::size_t k) {
        const std::vector<standing> before = outside_;
        standing alone = outside_[k];
        outside_.clear();
        alone.at = nowhere;
        (void)seek(alone);
        outside_ = before;
        push_aside_for(k, alone);
    }

    /// It gets, of its cheapest places that lie apart, the one that is best for all who are in its way there.
    void clear(std::size_t k) {
        constexpr std::size_t most = 6;
        constexpr double apart = 45.0;
        std::vector<standing> tried;
        const std::vector<std::size_t> cheapest = asked_[outside_[k].label].cheapest_first;
        for (const std::size_t at : cheapest) {
            const stand& s = asked_[outside_[k].label].stands[at];
            const bool new_one = std::none_of(tried.begin(), tried.end(), [&](const standing& t) {
                return std::hypot(t.box.left - s.box.left, t.box.top - s.box.top) < apart;
            });
            if (new_one) {
                tried.push_back({outside_[k].label, at, s.box, s.from});
            }
            if (tried.size() == most) {
                break;
            }
        }
        for (const standing& t : tried) {
            push_aside_for(k, t);
        }
    }

    void push_aside_for(std::size_t k, const standing& alone) {
        const std::vector<standing> before = outside_;
        std::vector<std::size_t> moved{k};
        for (std::size_t m = 0; m < before.size(); ++m) {
            if (m != k && in_the_way(before[m], alone)) {
                moved.push_back(m);
            }
        }
        const double as_it_was = put_again(moved, true);
        outside_[k] = alone;
        for (std::size_t i = 1; i < moved.size(); ++i) {
            outside_[moved[i]].at = nowhere;  // all may stand elsewhere, none where it was
            outside_[moved[i]].box = {-1e6, -1e6, 0.0, 0.0, {}};
            outside_[moved[i]].from = anchor_of(outside_[moved[i]]);
        }
        for (std::size_t i = 1; i < moved.size(); ++i) {
            (void)put_again({moved[i]});
        }
        if (put_again(moved, true) >= as_it_was) {
            outside_ = before;
        }
    }

    [[nodiscard]] bool in_the_way(const standing& one, const standing& of) const {
        return overlap(with_gap(of.box), one.box) || through(one.box, of.from, anchor_of(of)) ||
               through(with_gap(of.box), one.from, anchor_of(one)) ||
               cross(one.from, anchor_of(one), of.from, anchor_of(of));
    }

    /// Two of which one's leader crosses the other or its words are both put again, in either order, where that
    /// is better for both together.
    void uncross() {
        for (std::size_t k = 0; k < outside_.size(); ++k) {
            for (std::size_t m = k + 1; m < outside_.size(); ++m) {
                if (!in_the_way(outside_[k], outside_[m])) {
                    continue;
                }
                std::vector<standing> best = outside_;
                const std::vector<standing> before = outside_;
                double least = put_again({k, m}, true);
                for (const auto& order : {std::vector{k, m}, std::vector{m, k}}) {
                    outside_ = before;
                    if (const double cost = put_again(order); cost < least) {
                        least = cost;
                        best = outside_;
                    }
                }
                outside_ = std::move(best);
            }
        }
    }

    /// Puts it where it costs least among the others, which may be where it is; gives the cost.
    double seek(standing& l) {
        asked_label& a = asked_[l.label];
        double least = never;
        if (l.at < a.stands.size()) {
            stand& now = a.stands[l.at];
            least = now.aside + among_others(now, a.anchor, never);
        }
        for (const std::size_t k : a.cheapest_first) {
            if (a.stands[k].at_least() >= least) {
                break;
            }
            try_at(a, k, l, least);
        }
        while (next_ring(a) < std::min(reach, least)) {
            add_ring(a);
            for (std::size_t k = a.stands.size() - ways_.size(); k < a.stands.size(); ++k) {
                try_at(a, k, l, least);
            }
        }
        return least;
    }

    /// Stands there if that costs less.
    void try_at(asked_label& a, std::size_t k, standing& l, double& least) {
        stand& s = a.stands[k];
        if (s.at_least() + std::max(s.past, 0.0) >= least) {
            return;
        }
        const double cost = s.aside + among_others(s, a.anchor, least - s.aside);
        if (cost < least) {
            least = cost;
            l.at = k;
            l.box = s.box;
            l.from = s.from;
        }
    }

    /// How far off its place the stands are that weren't looked at yet.
    [[nodiscard]] double next_ring(const asked_label& a) const {
        return 16.0 + 10.0 * static_cast<double>(a.stands.size() / ways_.size());
    }

    void add_ring(asked_label& a) {
        const double r = next_ring(a);
        const auto known = static_cast<std::ptrdiff_t>(a.cheapest_first.size());
        for (const drawn_point& way : ways_) {
            a.stands.push_back(costs_.stand_at(a, r, way));
            if (a.stands.back().alone < never) {
                a.cheapest_first.push_back(a.stands.size() - 1);
            }
        }
        const auto cheaper = [&](std::size_t one, std::size_t other) {
            return a.stands[one].at_least() < a.stands[other].at_least();
        };
        const auto middle = a.cheapest_first.begin() + known;
        std::stable_sort(middle, a.cheapest_first.end(), cheaper);
        std::inplace_merge(a.cheapest_first.begin(), middle, a.cheapest_first.end(), cheaper);
    }

    /// What a label costs where it stands, but for how far aside it is.
    [[nodiscard]] double cost_as_it_is(const standing& l) {
        asked_label& a = asked_[l.label];
        return among_others(a.stands[l.at], a.anchor, never);
    }

    /// What it costs to stand there among the labels outside; `never` where it isn't below `most`.
    [[nodiscard]] double among_others(stand& s, const drawn_point& anchor, double most) const {
        const text_box wide = with_gap(s.box);
        double cost = s.alone;
        const double more = std::max(s.past, 0.0);
        for (const standing& other : outside_) {
            if (overlap(wide, other.box)) {
                return never;
            }
            const drawn_point& its = anchor_of(other);
            cost += through(other.box, s.from, anchor) || through(wide, other.from, its) ? over_text
                    : cross(s.from, anchor, other.from, its) ? over_leader
                                                             : 0.0;
            if (cost + more >= most) {
                return never;
            }
        }
        if (s.past == unknown) {
            s.past = costs_.past(s.from, anchor);
        }
        return cost + s.past;
    }

    std::vector<drawn_point> ways_;   ///< in which a label may lie from its place
    std::vector<asked_label> asked_;  ///< those outside
    std::vector<std::size_t> which_;  ///< of those wanted, the same
    std::vector<placed_label> inside_;
    label_costs costs_;  ///< among `inside_`
    std::vector<standing> outside_;
};

}  // namespace

label_ground::label_ground(const std::vector<polygon>& all, std::vector<drawn_point> dots)
    : solid(all), eyes(std::move(dots)) {
    for (const polygon& p : all) {
        edge.add(p);
    }
}

std::vector<placed_label> place_labels(const std::vector<wanted_label>& wanted,
                                       const label_ground& solid) {
    label_layout out(solid);
    std::vector<std::size_t> others;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        if (!out.put_inside(wanted[i], i)) {
            others.push_back(i);
        }
    }
    out.put_outside(wanted, others);
    return out.take();
}

std::vector<placed_label> label_memory::place(const std::vector<wanted_label>& wanted,
                                              const label_ground& solid) {
    std::vector<double> sizes;
    for (const wanted_label& w : wanted) {
        const text_box size = size_of(w.lines);
        const drawn_point at = w.inmost ? *w.inmost : innermost(w.of);
        sizes.insert(sizes.end(), {at.x, at.y, size.width, size.height, w.above ? 1.0 : 0.0});
    }
    const auto known = known_.find(sizes);
    if (known == known_.end()) {
        return known_.emplace(std::move(sizes), place_labels(wanted, solid)).first->second;
    }
    std::vector<placed_label> out = known->second;
    for (placed_label& l : out) {
        const wanted_label& w = wanted[l.which];
        l.lines = w.lines;
        l.box.text = size_of(w.lines).text;
        l.warns = !l.inside && w.warns;
    }
    return out;
}

}  // namespace pelage::io
