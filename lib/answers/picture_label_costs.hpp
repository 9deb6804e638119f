// Private to lib: what it costs a label to stand somewhere beside a drawing, whatever other labels do.
#pragma once

#include <limits>
#include <vector>

#include "answers/picture_labels.hpp"

namespace pelage::io {

inline constexpr double never = std::numeric_limits<double>::max();
inline constexpr double unknown = -1.0;
inline constexpr double over_text =
    2000.0;  ///< what a leader across a label costs, in length of leader

/// How large a label is, with a little air.
[[nodiscard]] text_box size_of(const std::vector<label_line>& lines);
/// Its lines, each as wide as it is: from the label's middle and its top.
[[nodiscard]] std::vector<text_box> rows_of(const std::vector<label_line>& lines);
/// The same with the air that other labels keep.
[[nodiscard]] text_box with_gap(const text_box& b);

/// A leader's end, and in what.
struct leader_end {
    drawn_point at;
    const polygon* of;
};

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
    std::vector<text_box> rows;  ///< its lines: a leader begins at words, not at an empty corner
    std::vector<stand> stands{};
    std::vector<std::size_t> cheapest_first{};  ///< of the stands, but for those that can't be
};

/// Costs in length of leader.
class label_costs {
  public:
    /// Borrows both; `inside`: labels that stand already.
    label_costs(const label_ground& ground, const std::vector<placed_label>& inside)
        : ground_(ground), inside_(inside) {}

    /// A leader ends there, of a label whose place isn't known yet.
    void add(const leader_end& e) { ends_.push_back(e); }
    /// What it costs a label to stand there, `r` off its place, whatever is beside it.
    [[nodiscard]] stand stand_at(const asked_label& a, double r, const drawn_point& way) const;
    /// What the leader goes over and past: all but its own polygon.
    [[nodiscard]] double past(const drawn_point& from, const drawn_point& anchor) const;

  private:
    [[nodiscard]] double alone_at(const text_box& b, const drawn_point& from,
                                  const drawn_point& anchor) const;

    const label_ground& ground_;
    const std::vector<placed_label>& inside_;
    std::vector<leader_end> ends_;
};

}  // namespace pelage::io
