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
constexpr double over_leader = 400.0;  ///< and one across another leader
constexpr double far_off = 220.0;      ///< what stands so badly that others may give way
constexpr double near_by = 260.0;      ///< others so near may give way
constexpr double over_others = 1.5;    ///< a leader over other polygons, of its length there
constexpr double over_end = 900.0;     ///< and one past the end of another
constexpr double end_size = 13.0;      ///< how near that is
constexpr double aside = 0.8;          ///< a leader that doesn't go straight up from there
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

/// Labels outside take the best places that are left, those near the edge first; then each in turn looks
/// for a better one.
class label_layout {
  public:
    explicit label_layout(const std::vector<polygon>& solid) : solid_(solid) {
        for (const polygon& p : solid) {
            edge_.add(p);
        }
        constexpr int ways = 40;
        for (int k = 0; k < ways; ++k) {
            const double angle = 2.0 * std::numbers::pi * k / ways;
            ways_.push_back({std::cos(angle), std::sin(angle)});
        }
    }

    [[nodiscard]] bool put_inside(const wanted_label& w) {
        const text_box size = size_of(w.lines);
        const auto middle = room_in(w.of, size.width, size.height, {});
        if (!middle) {
            return false;
        }
        text_box b = around(*middle, size.width, size.height);
        b.text = size.text;
        inside_.push_back({b, w.lines, true, {}, {}});
        return true;
    }

    void put_outside(const std::vector<const wanted_label*>& all) {
        std::vector<std::pair<double, placed_label>> todo;
        for (const wanted_label* w : all) {
            ends_.push_back({innermost(w->of), w->of});
        }
        for (std::size_t i = 0; i < all.size(); ++i) {
            placed_label l{size_of(all[i]->lines), all[i]->lines, false, ends_[i].at, {},
                           all[i]->above,          all[i]->warns};
            todo.emplace_back(seek(l), l);
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
            if (i < 2) {
                for (const std::size_t k : worst_of(1)) {
                    give_way(k);  // dear: two searches for each other label
                }
            }
        }
        uncross();
    }

    [[nodiscard]] std::vector<placed_label> take() {
        inside_.insert(inside_.end(), outside_.begin(), outside_.end());
        return std::move(inside_);
    }

  private:
    static constexpr double never = std::numeric_limits<double>::max();

    /// Takes labels away and puts them again, in that order; gives what they cost together. Or what they
    /// cost as they are.
    double put_again(const std::vector<std::size_t>& which, bool as_they_are = false) {
        std::vector<placed_label> all = outside_;
        std::vector<placed_label> others;
        for (std::size_t k = 0; k < all.size(); ++k) {
            if (std::find(which.begin(), which.end(), k) == which.end()) {
                others.push_back(all[k]);
            }
        }
        outside_ = std::move(others);
        double cost = 0.0;
        for (const std::size_t k : which) {
            cost +=
                as_they_are ? cost_of(all[k].box, all[k].from, all[k].anchor, never) : seek(all[k]);
            outside_.push_back(all[k]);
        }
        outside_ = std::move(all);
        return cost;
    }

    /// The labels that stand worst, so many at most.
    [[nodiscard]] std::vector<std::size_t> worst_of(std::size_t most) {
        std::vector<std::pair<double, std::size_t>> by;
        for (std::size_t k = 0; k < outside_.size(); ++k) {
            const placed_label l = outside_[k];
            outside_.erase(outside_.begin() + static_cast<std::ptrdiff_t>(k));
            const double cost = cost_of(l.box, l.from, l.anchor, never);
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

    /// That label takes the place of another, where both together are better off.
    void give_way(std::size_t k) {
        std::vector<placed_label> best = outside_;
        double saved = 0.0;
        for (std::size_t m = 0; m < outside_.size(); ++m) {
            const double off = std::hypot(outside_[m].anchor.x - outside_[k].anchor.x,
                                          outside_[m].anchor.y - outside_[k].anchor.y);
            if (m != k && off < near_by) {
                const std::vector<placed_label> before = outside_;
                const double as_it_is = put_again({m, k});
                outside_ = before;
                const double other_way = put_again({k, m});
                if (as_it_is - other_way > saved) {
                    saved = as_it_is - other_way;
                    best = outside_;
                }
                outside_ = before;
            }
        }
        outside_ = std::move(best);
    }

    /// Two whose leaders cross are both put again, in either order, where that is better for both together.
    void uncross() {
        for (std::size_t k = 0; k < outside_.size(); ++k) {
            for (std::size_t m = k + 1; m < outside_.size(); ++m) {
                if (!cross(outside_[k].from, outside_[k].anchor, outside_[m].from,
                           outside_[m].anchor)) {
                    continue;
                }
                std::vector<placed_label> best = outside_;
                const std::vector<placed_label> before = outside_;
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

    /// Puts it where it costs least among the others; gives the cost.
    double seek(placed_label& l) const {
        double least = never;
        const text_box size = l.box;
        for (double r = 16.0; r < reach && r < least; r += 10.0) {
            for (const drawn_point& way : ways_) {
                const drawn_point middle{l.anchor.x + (r + size.width / 2.0) * way.x,
                                         l.anchor.y + (r + size.height / 2.0) * way.y};
                text_box b = around(middle, size.width, size.height);
                const drawn_point from = side_of(b, l.anchor);
                const double own = !l.above ? 0.0
                                            : aside * std::abs(from.x - l.anchor.x) +
                                                  (middle.y > l.anchor.y ? not_above : 0.0);
                const double cost = own + cost_of(b, from, l.anchor, least - own);
                if (cost < least) {
                    least = cost;
                    b.text = size.text;
                    l.box = std::move(b);
                    l.from = from;
                }
            }
        }
        return least;
    }

    /// How long its leader is, how far it stands out over the sides, and what it crosses; `never` where it isn't
    /// below `most`.
    [[nodiscard]] double cost_of(const text_box& b, const drawn_point& from,
                                 const drawn_point& anchor, double most) const {
        const text_box wide{
            b.left - gap, b.top - gap, b.width + 2.0 * gap, b.height + 2.0 * gap, {}};
        double cost =
            std::hypot(from.x - anchor.x, from.y - anchor.y) + std::max(0.0, edge_.left - b.left) +
            std::max(0.0, b.left + b.width - edge_.right) + 0.3 * std::max(0.0, edge_.top - b.top) +
            0.3 * std::max(0.0, b.top + b.height - edge_.bottom);
        if (cost >= most || !solid_.is_free(wide)) {
            return never;
        }
        for (const placed_label& other : inside_) {
            if (overlap(wide, other.box)) {
                return never;
            }
            cost += through(other.box, from, anchor) ? over_text : 0.0;
        }
        for (const placed_label& other : outside_) {
            if (overlap(wide, other.box)) {
                return never;
            }
            cost += through(other.box, from, anchor) || through(wide, other.from, other.anchor)
                        ? over_text
                    : cross(from, anchor, other.from, other.anchor) ? over_leader
                                                                    : 0.0;
            if (cost >= most) {
                return never;
            }
        }
        return cost + past_others(from, anchor);
    }

    /// What the leader goes over and past: all but its own polygon.
    [[nodiscard]] double past_others(const drawn_point& from, const drawn_point& anchor) const {
        double cost = 0.0;
        const polygon* own = nullptr;
        for (const leader_end& e : ends_) {
            if (e.at == anchor) {
                own = &e.of;
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

    /// Where a leader ends, and in what.
    struct leader_end {
        drawn_point at;
        polygon of;
    };

    raster solid_;
    extent edge_;
    std::vector<drawn_point> ways_;  ///< in which a label may lie from its place
    std::vector<leader_end> ends_;
    std::vector<placed_label> inside_;
    std::vector<placed_label> outside_;
};

}  // namespace

std::vector<placed_label> place_labels(const std::vector<wanted_label>& wanted,
                                       const std::vector<polygon>& solid) {
    label_layout out(solid);
    std::vector<const wanted_label*> others;
    for (const wanted_label& w : wanted) {
        if (!out.put_inside(w)) {
            others.push_back(&w);
        }
    }
    out.put_outside(others);
    return out.take();
}

}  // namespace pelage::io
