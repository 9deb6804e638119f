// Private to lib: what is wished of each place and what was found there.
#pragma once

#include <string>
#include <vector>

#include <pelage/planner/kit_setups.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

/// Whether the visit that is booked, if only part of a groom is, does the zone. A face that the sheet keeps
/// clean is one place: where its muzzle is done, cheeks and throat are.
[[nodiscard]] bool booked_does(const plan_request& r, std::size_t zone);

/// What is made once for many dogs, taken from the request or made for this one.
class ready_kit {
  public:
    /// Throws error(unknown) if the sheet names no place of the dog. Borrows `r`.
    explicit ready_kit(const plan_request& r);

    [[nodiscard]] const kit_setups& top() const { return top_ != nullptr ? *top_ : *own_top_; }
    [[nodiscard]] const resolved_style& sheet() const {
        return sheet_ != nullptr ? *sheet_ : *own_sheet_;
    }

  private:
    const kit_setups* top_;
    const resolved_style* sheet_;
    std::optional<kit_setups> own_top_;
    std::optional<resolved_style> own_sheet_;
};

/// The sheet, the dog's departures and today's hair with their words resolved once.
class wishes_by_place {
  public:
    /// Throws error(unknown) if a word names no zone, group or side. Borrows all of it.
    wishes_by_place(const plan_request& r, const ready_kit& ready);

    /// What is wished of a place: wider rules first, departures over the sheet.
    [[nodiscard]] instruction at(const place& p) const;
    /// Length of today's hair there, where the record says.
    [[nodiscard]] std::optional<length> hair(const place& p) const;
    /// Every place of the plan in reference order: a paired zone stands once, or once a side where
    /// the sides differ in findings, today's hair or the sheet.
    [[nodiscard]] std::vector<place> places() const;

    /// Whether the dog's departures say something of this very place or its side.
    [[nodiscard]] bool departs(const place& p) const;

  private:
    template <class What>
    struct said {
        const selection* whom;
        const What* what;
    };
    [[nodiscard]] bool one_sided(std::size_t zone) const;
    /// Of what was said of today's hair the narrowest that takes the place in; null: none does by name.
    [[nodiscard]] const selection* narrowest(const place& p) const;

    const plan_request& request_;
    const resolved_style& sheet_;
    std::vector<said<instruction>> departures_;
    std::vector<said<length>> now_;
    bool of_one_side_ = false;  ///< something is said of a side of the dog
};

/// Whether `edge` is an edge of the zone that `p` is in, on the same side.
[[nodiscard]] bool is_edge_of(const body& b, const place& edge, const place& p);

/// Whether an edge goes along when mats are clipped off what it belongs to: scissored to a length by
/// the sheet, sound itself, and the dog's departures say nothing of it.
[[nodiscard]] bool may_go_along(const wishes_by_place& wishes, const body& b,
                                const zone_plan& edge);

/// Time to do a place: one side of a pair takes half of what the zone takes.
[[nodiscard]] work place_work(const plan_request& r, const place& p, finish f);

/// The same on a medium dog: plans are compared by what they cost there, so that a dog's size doesn't
/// change its lengths.
[[nodiscard]] work place_cost(const plan_request& r, const place& p, finish f);

/// Whether what a clipper leaves is too short to scissor over after it: one blade then, but for edges and feet.
[[nodiscard]] inline bool by_blade_alone(const zone_plan& z, const zone& where, const length& left,
                                         const refusal_rules& r) {
    const bool outline =
        !where.edge_of.empty() || where.where == group::feet || where.has(zone_use::scissors_only);
    return z.how_finished == finish::comb_then_scissor && !outline && left < r.scissor_finish.best;
}

/// Whether the blade of the body runs over a belly fringe or round feet: what is wished there is shorter than
/// scissors leave, and nobody leaves a fringe round a dog that is clipped so short (common practice). Lids
/// and the edges of ears aren't run over.
[[nodiscard]] inline bool runs_over(const zone_plan& z, const zone& where, const refusal_rules& r) {
    const bool outline = where.where == group::feet || where.has(zone_use::scissors_only);
    return z.how_finished == finish::scissor && z.target && outline && !ten_at_most(where) &&
           *z.target < scissors_leave_at_least(where, r);
}

/// The worst mat found at a place, or null: what is felted to the skin, then the graver, then the one
/// with less free hair.
[[nodiscard]] const mat_finding* mat_at(const dog& d, const place& p);

/// The finding that leaves a place alone, or null: its own, or that of what it is the edge of.
[[nodiscard]] const skin_finding* hurt_at(const body& b, const dog& d, const place& p);

/// The lumps and scabs of a place that are gone around.
[[nodiscard]] std::vector<skin_finding> bumps_at(const dog& d, const place& p);

/// Where fleas were seen.
[[nodiscard]] std::vector<place> fleas_on(const dog& d);

/// The signs of the stop list that hold, gravest first: those recorded, and a wound under a mat, which
/// is a broken skin and a mat in one place.
[[nodiscard]] std::vector<stop_sign> signs_of(const plan_request& r);

/// Titles of hurt places that touch this one.
[[nodiscard]] std::vector<place> hurt_neighbours(const plan_request& r, const place& p);

}  // namespace pelage
