// Private to lib: the chance that all of some zones are fine, as a function of the day.
//
// With rate R, threshold factor F and start error e shared by the dog, a zone kept at s mats when
// s + e + R t reaches theta F, if hair grows that far. So all are fine as long as R t < room(F, e),
// the least of theta F - s - e over the zones, and
//   P(t) = E over F and e of P(R < room / t) = E of Phi((ln room - ln t - mu) / sigma).
// The rooms don't depend on the day: they are worked out once, at the nodes of a quadrature, and each
// day costs one sum. What a dog's visits have taught of F comes as cases, each with a rate of its own: a node
// for each and each e. Else, for a given e the least room is a chain of lines in F; the quadrature is split
// where one line gives way to another, and closer where the room is small and Phi turns quickly.
#pragma once

#include <span>
#include <vector>

#include <pelage/model/return_date.hpp>

namespace pelage {

/// A zone that counts, in millimetres.
struct counted_zone {
    double start = 0.0;
    double threshold = 0.0;
    double terminal = 0.0;

    explicit counted_zone(const kept_zone& z)
        : start(in_mm(z.start)), threshold(in_mm(*z.threshold)), terminal(in_mm(z.terminal)) {}
    friend bool operator==(const counted_zone&, const counted_zone&) = default;
};

/// Whether `b` is fine whenever `a` is, for any rate, factor and start error.
[[nodiscard]] inline bool covers(const counted_zone& a, const counted_zone& b) {
    return b.start <= a.start && b.threshold >= a.threshold && b.terminal <= a.terminal;
}

/// Adds a zone to those that count, unless one of them covers it; what it covers itself goes.
void add_uncovered(std::vector<counted_zone>& to, const counted_zone& z);

/// About P(t) of some zones, for `t` in days over 0, where nothing was learned of the dog, at a tenth of what
/// the curve takes. With the factor integrated out,
///   P(t) = E over R and e of P(F > max over the zones of what they have grown to, of theta),
/// which is smooth in R and e but for kinks, where zones change places or hair ends: few nodes do.
struct about_chance {
    chance is = 1.0;
    chance off = 0.0;  ///< it is no further off than that; as seen, twice what was seen
};
[[nodiscard]] about_chance about_fine(std::span<const counted_zone> zones, const shared_law& law,
                                      double t);

/// The curve of P(t).
class fine_curve {
  public:
    /// All `zones` count from day 0; none: always fine. The curve is wanted from day `first` on.
    fine_curve(const std::vector<counted_zone>& zones, const shared_law& law, double first);

    /// P(t), t in days, at least `first`. Never rises with t.
    [[nodiscard]] chance at(double t) const;
    /// The same, and how much P falls as ln t rises.
    struct fall {
        chance is = 0.0;
        double falls = 0.0;
    };
    [[nodiscard]] fall at_and_fall(double t) const;
    /// About the day at which P falls to `p`, of which `z` is the normal quantile: `t` moved by what
    /// P(t) = `is` is off. Where nothing is known yet, first_guess.
    [[nodiscard]] double next_guess(double t, chance is, chance p, double z) const;
    [[nodiscard]] double first_guess(double z) const;

  private:
    struct node {
        double log_room = 0.0;  ///< (ln room - mu) / sigma
        double per_sigma = 0.0;
        double weight = 0.0;
    };
    void add_learned();
    void add_errors();
    void sum_up();
    /// A start error (mm) with its weight.
    struct start_error {
        double is = 0.0;
        double weight = 0.0;
    };
    void add(double room, double weight);
    /// The factors from `from` to `to` for start errors, smallest first, for which the same zones have
    /// the least room.
    void add_factors(std::span<const start_error> errors, double from, double to);
    void add_piece(const counted_zone& least, std::span<const start_error> errors, double from,
                   double to);
    [[nodiscard]] double past(const counted_zone& z, double error) const;
    [[nodiscard]] double alike_from(std::span<const start_error> errors) const;

    shared_law law_;
    double sigma_ = 1.0;  ///< of ln R; a little where it is said to be nothing
    double per_sigma_ = 1.0;
    double least_room_ = 0;            ///< (mm): less is used up by the first day for certain
    std::vector<counted_zone> zones_;  ///< those that no other covers
    std::vector<node> nodes_;
    double sure_ = 0.0;    ///< weight of what never mats
    double mean_ = 0.0;    ///< of log_room
    double spread_ = 1.0;  ///< of ln t over sigma
};

}  // namespace pelage
