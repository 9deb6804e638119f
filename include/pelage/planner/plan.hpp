// The plan of one groom: from the dog, its sheet and the kit to what is done in each zone.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <pelage/model/growth_record.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/planner/cause.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/solver/order.hpp>
#include <pelage/solver/setup_solver.hpp>
#include <pelage/trade/body_part.hpp>

namespace pelage {

/// What is planned for. Everything is borrowed for the call; nothing is kept.
struct plan_request {
    const reference_data& reference;      ///< what the library knows
    const parameters& rules;              ///< the reference's, or a salon's own
    const kit& tools;                     ///< the kit
    const dog& patient;                   ///< its coat must be set
    const style& sheet;                   ///< as it is today
    std::optional<date> today;            ///< decides which blades are out for sharpening
    std::optional<chance> asked{};        ///< for when back; none: the rules' own, 9 in 10
    std::optional<length> length_wish{};  ///< in place of the sheet's adjustable length
    bool both_ways = false;               ///< treat every direction as left open
    bool match_sides = false;             ///< a pair matted on one side is left alike on both
    bool by_best =
        false;  ///< too short is judged on what a tool should leave, not the least it may
    bool patchwork = false;                ///< a part stays in patches however much of it mats take
    bool reasons = true;                   ///< say of each setup why it may not be used
    const kit_setups* top = nullptr;       ///< the kit made ready; null: made for this call
    const resolved_style* laid = nullptr;  ///< the sheet made ready; null: made for this call
    const learned_rate* learned = nullptr;  ///< the dog's own rate; null: worked out for this call
    /// What it is booked for: what isn't part of it is left, whatever is wished; null: a full groom.
    const service* booked = nullptr;
};

/// The chance when back is told for: what is asked, else the rules' own.
[[nodiscard]] inline chance chance_asked(const plan_request& r) {
    return r.asked.value_or(r.rules.matting.chance.best);
}

/// When work on a zone is done.
enum class list { before_bath, after_bath };

/// What became of a zone's wish.
enum class outcome {
    as_wished,      ///< within the tolerance
    off_target,     ///< beyond the tolerance: the nearest that may be had, or cheaper on the whole
    beyond_reach,   ///< nothing that may be used leaves a length the sheet allows: the nearest
    hair_shorter,   ///< today's hair is at or below the wish: nothing to cut
    left_by_sheet,  ///< the sheet leaves it
    skin_left,      ///< hurt skin: left alone
    clipped_under,  ///< a mat clipped off, whatever the sheet wished
    stuck,          ///< nothing is allowed
    goes_along,     ///< an edge taken down with the part whose mats are clipped off
    taken_down      ///< sound coat of a part that comes down whole, since mats take much of it
};
[[nodiscard]] std::string_view name(outcome o);

/// One place of the dog in the plan.
struct zone_plan {
    place at;                            ///< which place
    list when = list::after_bath;        ///< before or after the bath
    finish how_finished = finish::clip;  ///< as the sheet wants it
    std::optional<length> target;  ///< finished length wished; none for prep zones and left ones
    std::optional<length> aim;     ///< what scissors aim at: the target, but not under their least
    std::optional<std::string> blade_wish;            ///< id of the blade the sheet names
    length tolerated{};                               ///< how far off it may be
    side_of_target between = side_of_target::longer;  ///< which side to miss on
    lay_choice way = lay_choice::with_lay;            ///< in which direction
    std::optional<length> now;                        ///< today's hair, where known
    setup how{};                                      ///< what is held
    std::optional<finished> leaves;                   ///< none: not known
    work takes{};                                     ///< with both sides where both are meant
    outcome came = outcome::as_wished;                ///< how it came out
    zone_cause why;                                   ///< what decided over it
    std::string note;                                 ///< the sheet's
    std::optional<mat_grade> mat;                     ///< the worst found there
    std::optional<length>
        nearer;               ///< off target: what the nearest allowed leaves, if it isn't this
    bool tidied = false;      ///< no longer than wished: scissored over, only what stands out
    bool combed_out = false;  ///< the mat is combed out first
    bool trial =
        false;  ///< how deep the mat lies isn't known: the blade is tried under its edge first
    std::optional<setup> off_by;  ///< clips it down before the bath; `how` then finishes it after
    std::optional<finished> off_leaves;  ///< what that leaves
    work off_takes{};                    ///< how long that takes
    bool withheld = false;           ///< a clip asked of a double coat without its owner's consent
    bool beside_mat = false;         ///< the other side of the pair is matted and this one isn't
    std::optional<skin_state> hurt;  ///< what leaves it alone, here or in what it edges
    bool edge_of_hurt = false;       ///< the hurt skin is in what it is the edge of
    std::vector<skin_finding> around;    ///< lumps and scabs in it, gone around
    std::vector<place> beside_hurt;      ///< hurt places it touches
    std::vector<refused_setup> refused;  ///< what was not allowed, if reasons are asked
};

/// Whether a mat of the place is clipped off, whatever comes after it.
[[nodiscard]] inline bool mat_clipped_off(const zone_plan& z) {
    return z.mat && !z.combed_out &&
           (z.off_by || (z.how.kind == tool_kind::clip && z.came == outcome::clipped_under));
}

/// The zone of the body that a place of the plan is in.
[[nodiscard]] inline const zone& zone_of(const plan_request& r, const zone_plan& z) {
    return r.reference.dog_body.zones[z.at.zone];
}

/// Zones done with one setup in one go; indices into groom::zones, in reference order.
struct block {
    setup how{};                     ///< what is held
    finish done = finish::clip;      ///< how it is finished
    list when = list::after_bath;    ///< before or after the bath
    std::vector<std::size_t> zones;  ///< indices into groom::zones
    bool off = false;                ///< clips down what another block finishes after the bath
    bool last = false;               ///< the face of a dog that bites or wears a muzzle
    work takes{};                    ///< all of it
    work running_before{};  ///< how long its blade has been running without rest when it begins
    work running{};         ///< and when it ends; 0 for hand tools
};

/// What a block leaves in a place it is done in; nothing where it takes the undercoat out first.
[[nodiscard]] inline std::optional<finished> left_in(const block& b, const zone_plan& z) {
    if (b.done == finish::card && z.how.kind == tool_kind::clip) {
        return std::nullopt;
    }
    return b.off ? z.off_leaves : z.leaves;
}

/// A step between two neighbours that is blended by hand: the edge of the longer one is taken down.
struct blend {
    std::size_t from = 0;          ///< the longer one; index into groom::zones
    std::size_t into = 0;          ///< the shorter one
    list when = list::after_bath;  ///< before or after the bath
    length step{};                 ///< between the finished lengths
    length asked{};                ///< of it the sheet's own pattern; 0 where it gives no length
    length width{};                ///< how wide it is worked away
    std::optional<setup>
        between;  ///< what breaks the step, where the kit has it and rules allow it
    std::optional<finished> leaves;        ///< of what is in between
    tool_kind smoothed = tool_kind::none;  ///< the hand tool after it, or alone; none: not needed
};

/// How far the order of a list is from what is wished (solver/order.hpp), and whether that is proven best.
struct list_order {
    order_cost cost{};   ///< of the order
    bool proven = true;  ///< no order costs less
};

/// A mat combed out before the bath.
struct combing_out {
    std::size_t zone = 0;                 ///< index into groom::zones
    mat_grade grade = mat_grade::tangle;  ///< of the mat
    work takes{};                         ///< to comb it out
};

/// A clip of a double coat to which the owner hasn't agreed: a question, not a plan. A blade on such a
/// jacket may leave it slow to grow back, or changed.
struct clip_question {
    std::vector<std::size_t> asked;  ///< what the sheet would clip; indices into groom::zones
    std::string instead;  ///< id of the reference's sheet that fits; empty: there is none
};

/// A caution that applies, and where.
struct caution_line {
    caution what;              ///< as the reference has it
    std::vector<place> where;  ///< empty: the whole dog
};

/// A place done at the length of its part: scissored as wished it would stand out of what is clipped
/// around it, since the kit leaves its part at another length.
struct part_follower {
    std::size_t zone = 0;  ///< index into groom::zones
    length at{};           ///< what most of its part is left at
    length wished{};       ///< what the sheet or the dog's file wishes
};

/// The plan of the groom.
struct groom {
    std::vector<zone_plan> zones;        ///< every place of the dog
    std::vector<combing_out> combed;     ///< mats that are combed out first
    std::vector<block> blocks;           ///< in working order
    list_order order_before;             ///< of the list before the bath
    list_order order_after;              ///< of the list after it
    std::vector<blend> blends;           ///< in the order of the body's seams
    std::vector<caution_line> cautions;  ///< gravest first
    std::vector<consent> consents;       ///< what the owner signs
    std::vector<place> stop;  ///< places felted to the skin: a veterinarian's; no work is planned
    std::vector<stop_sign> signs;           ///< of the stop list; likewise
    std::optional<clip_question> question;  ///< asked of the owner first; likewise
    std::vector<std::size_t> stuck;         ///< zones for which nothing is allowed
    std::vector<part> down;  ///< parts that come down whole, since mats take much of them
    std::vector<part_follower> follow;  ///< places done at the length of their part
    std::vector<place> fleas;       ///< where they were seen: a flea bath comes first; none: none
    std::vector<plan_note> notes;   ///< what was taken as given
    std::vector<uneven_pair> asks;  ///< pairs of which the owner is asked whether to cut them alike
    solution choice;                ///< the solver's
    work before{};                  ///< minutes before the bath, pick-ups included
    work after{};                   ///< minutes after the bath

    /// The dog goes to a veterinarian before anything is done: no work is planned.
    [[nodiscard]] bool stopped() const { return !stop.empty() || !signs.empty(); }
    /// A mat that nothing takes off is still in: no bath, and nothing after it, until it is out.
    [[nodiscard]] bool bath_waits() const {
        return std::any_of(zones.begin(), zones.end(), [](const zone_plan& z) {
            return z.mat && !z.combed_out &&
                   (z.came == outcome::stuck || z.came == outcome::skin_left);
        });
    }
    /// There is work to do: no veterinarian and no owner is asked first.
    [[nodiscard]] bool planned() const { return !stopped() && !question; }
};

/// Whether the dog bears no groom in one go: a veterinarian's word, then two visits or more.
[[nodiscard]] inline bool in_visits(const groom& g) {
    return std::any_of(g.cautions.begin(), g.cautions.end(), [](const caution_line& c) {
        return c.what.when == caution_when::frail_felted;
    });
}

/// Whether what comes after the bath isn't done today: what was found may change it.
[[nodiscard]] inline bool goes_on_another_day(const groom& g) {
    return g.bath_waits() || in_visits(g);
}

/// What is done another day; of what came off today nothing is, though it is gone over again. Indices into
/// groom::zones; empty where all is done today.
[[nodiscard]] std::vector<std::size_t> done_another_day(const groom& g);

/// Plans the groom. Throws error(missing) if the dog's coat isn't set and error(unknown) if the
/// sheet or the dog names a place that doesn't exist (readers refuse that earlier).
[[nodiscard]] groom make_plan(const plan_request& r);

/// What fits in place of a clip that is a question: the reference's sheet for the coat, and the dog
/// without its own departures and length, which belong to the clip.
struct instead_of_clip {
    dog patient;                   ///< with what is asked of it changed
    const style* sheet = nullptr;  ///< not null; lives as long as the reference
};
/// Nothing where there is no question, or no sheet of the reference fits.
[[nodiscard]] std::optional<instead_of_clip> instead_of(const plan_request& r, const groom& g);

/// The zones of a planned groom as the forecast sees them, with the index of each in groom::zones.
/// Zones whose length isn't known (today's hair unknown), that stay undone, or that are left for hurt skin or for
/// teats, are not in it.
struct kept_coat {
    std::vector<kept_zone> zones;    ///< that hair is kept on
    std::vector<std::size_t> index;  ///< of each its index into groom::zones
    shared_law law;                  ///< of the dog's growth
    days usual{};                    ///< the usual interval
};
[[nodiscard]] kept_coat after_groom(const plan_request& r, const groom& g);

/// Length of today's hair in a place by the dog's record; nothing if it isn't said.
[[nodiscard]] std::optional<length> hair_today(const plan_request& r, const place& p);

/// What the sheet and the dog's departures say of a place: wider rules first, later ones win.
[[nodiscard]] instruction instruction_for(const plan_request& r, const place& p);

}  // namespace pelage
