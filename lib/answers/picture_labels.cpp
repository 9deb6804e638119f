#include "answers/picture_labels.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace pelage::io {

namespace {

constexpr double gap = 5.0;            ///< around a label
constexpr double reach = 1500.0;       ///< how far a label may be from its place
constexpr double over_text = 2000.0;   ///< what a leader across a label costs, in length of leader
constexpr double over_leader = 700.0;  ///< and one across another leader
constexpr double far_off = 130.0;      ///< what stands so badly that others may give way
constexpr double too_long = 260.0;     ///< a leader so long costs twice its length
constexpr double over_others = 3.0;    ///< a leader over other polygons, of its length there
constexpr double over_end = 900.0;     ///< and one past the end of another
constexpr double end_size = 13.0;      ///< how near that is
constexpr double aside = 0.5;          ///< a leader that doesn't go straight up from there
constexpr double not_above = 5000.0;   ///< a label below what has nothing above it

/// How large a label is, with a little air.
text_box size_of(const std::vector<label_line>& lines) {
    text_box b;
    for (const label_line& l : lines) {
        b.width = std::max(b.width, text_width(l.text, l.size, l.bold));
        b.height += std::ceil(l.size * 1.2);
        b.text += (b.text.empty() ? "" : " ") + l.text;
    }
    b.width += 8.0;
    b.height += 4.0;
    return b;
}

/// Where a line from `to` meets the box.
drawn_point side_of(const text_box& b, const drawn_point& to) {
    return {std::clamp(to.x, b.left, b.left + b.width), std::clamp(to.y, b.top, b.top + b.height)};
}

/// A leader's end, and in what.
struct leader_end {
    drawn_point at;
    const polygon* of;
};

constexpr double never = std::numeric_limits<double>::max();
constexpr double unknown = -1.0;

/// Where a label may stand, and what that costs whatever stands beside it.
struct stand {
    text_box box;
    drawn_point from;       ///< where its leader begins
    double alone = never;   ///< `never`: not there
    double past = unknown;  ///< what its leader goes over and past; worked out once it is asked
    double aside = 0.0;     ///< how far it is from straight above, where it has to be above

    /// No other label makes it less.
    [[nodiscard]] double at_least() const { return alone + aside; }
};

/// A label outside, with the stands looked at so far: so many around its place, and so on outward.
struct asked_label {
    const wanted_label* wanted;
    text_box size;
    drawn_point anchor;
    std::vector<stand> stands{};
    std::vector<std::size_t> cheapest_first{};  ///< of the stands, but for those that can't be
};

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
    explicit label_layout(const label_ground& g) : solid_(g.solid), edge_(g.edge) {
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
            ends_.push_back({w->inmost ? *w->inmost : innermost(w->of), &w->of});
            asked_.push_back({w, size_of(w->lines), ends_.back().at});
        }
        std::vector<std::pair<double, standing>> todo;
        for (std::size_t i = 0; i < all.size(); ++i) {
            standing l{i};
            const double cost = seek(l);
            todo.emplace_back(cost, l);
        }
        std::stable_sort(todo.begin(), todo.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        for (auto& [cost, l] : todo) {
            (void)seek(l);
            outside_.push_back(l);
        }
        constexpr int rounds = 4;
        for (int i = 0; i < rounds; ++i) {
            for (std::size_t k = 0; k < outside_.size(); ++k) {
                (void)put_again({k});
            }
            for (const std::size_t k : worst_of(3)) {
                push_aside(k);
            }
        }
        uncross();
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
    [[nodiscard]] std::vector<std::size_t> worst_of(std::size_t most) {
        std::vector<std::pair<double, std::size_t>> by;
        for (std::size_t k = 0; k < outside_.size(); ++k) {
            const standing l = outside_[k];
            outside_.erase(outside_.begin() + static_cast<std::ptrdiff_t>(k));
            const double cost = cost_as_it_is(l);
            outside_.insert(outside_.begin() + static_cast<std::ptrdiff_t>(k), l);
            if (cost > far_off) {
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

    /// Two whose leaders cross are both put again, in either order, where that is better for both together.
    void uncross() {
        for (std::size_t k = 0; k < outside_.size(); ++k) {
            for (std::size_t m = k + 1; m < outside_.size(); ++m) {
                if (!cross(outside_[k].from, anchor_of(outside_[k]), outside_[m].from,
                           anchor_of(outside_[m]))) {
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
            a.stands.push_back(stand_at(a, r, way));
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

    /// What it costs a label to stand there, `r` off its place, whatever is beside it.
    [[nodiscard]] stand stand_at(const asked_label& a, double r, const drawn_point& way) const {
        const drawn_point middle{a.anchor.x + (r + a.size.width / 2.0) * way.x,
                                 a.anchor.y + (r + a.size.height / 2.0) * way.y};
        stand s;
        s.box = around(middle, a.size.width, a.size.height);
        s.from = side_of(s.box, a.anchor);
        s.alone = alone_at(s.box, s.from, a.anchor);
        s.aside = !a.wanted->above ? 0.0
                                   : aside * std::abs(s.from.x - a.anchor.x) +
                                         (middle.y > a.anchor.y ? not_above : 0.0);
        return s;
    }

    /// What a label costs where it stands, but for how far aside it is.
    [[nodiscard]] double cost_as_it_is(const standing& l) {
        asked_label& a = asked_[l.label];
        return among_others(a.stands[l.at], a.anchor, never);
    }

    /// How long its leader is, how far it stands out over the sides, and which labels inside it crosses; `never`
    /// where it would cover something.
    [[nodiscard]] double alone_at(const text_box& b, const drawn_point& from,
                                  const drawn_point& anchor) const {
        const text_box wide = with_gap(b);
        if (!solid_.is_free(wide)) {
            return never;
        }
        const double leader = std::hypot(from.x - anchor.x, from.y - anchor.y);
        double cost = leader + leader * leader / too_long +
                      1.5 * std::max(0.0, edge_.left - b.left) +
                      1.5 * std::max(0.0, b.left + b.width - edge_.right) +
                      0.3 * std::max(0.0, edge_.top - b.top) +
                      0.3 * std::max(0.0, b.top + b.height - edge_.bottom);
        for (const placed_label& other : inside_) {
            if (overlap(wide, other.box)) {
                return never;
            }
            cost += through(other.box, from, anchor) ? over_text : 0.0;
        }
        return cost;
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
            s.past = past_others(s.from, anchor);
        }
        return cost + s.past;
    }

    [[nodiscard]] static text_box with_gap(const text_box& b) {
        return {b.left - gap, b.top - gap, b.width + 2.0 * gap, b.height + 2.0 * gap, {}};
    }

    /// What the leader goes over and past: all but its own polygon.
    [[nodiscard]] double past_others(const drawn_point& from, const drawn_point& anchor) const {
        double cost = 0.0;
        const polygon* own = nullptr;
        for (const leader_end& e : ends_) {
            if (e.at == anchor) {
                own = e.of;
            } else if (distance(e.at, from, anchor) < end_size) {
                cost += over_end;
            }
        }
        constexpr double each = 8.0;
        const double all = std::hypot(from.x - anchor.x, from.y - anchor.y);
        double over = 0.0;
        bool left_own = false;
        for (double at = each; at < all; at += each) {
            const drawn_point q{anchor.x + (from.x - anchor.x) * at / all,
                                anchor.y + (from.y - anchor.y) * at / all};
            left_own = left_own || own == nullptr || !within(*own, q);
            over += left_own && !solid_.is_free({q.x, q.y, 0.0, 0.0, {}}) ? each : 0.0;
        }
        return cost + over_others * over;
    }

    const raster& solid_;
    const extent& edge_;
    std::vector<drawn_point> ways_;  ///< in which a label may lie from its place
    std::vector<leader_end> ends_;
    std::vector<asked_label> asked_;  ///< those outside
    std::vector<std::size_t> which_;  ///< of those wanted, the same
    std::vector<placed_label> inside_;
    std::vector<standing> outside_;
};

}  // namespace

label_ground::label_ground(const std::vector<polygon>& all) : solid(all) {
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
