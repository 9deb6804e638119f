// Private to lib: a groom written as a problem in integers. Decisions about each place are in
// planner/compile.cpp, what its setups are and cost in planner/compile_rows.cpp.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "planner/candidates.hpp"
#include "planner/compile.hpp"
#include "planner/mats.hpp"

namespace pelage {

/// What a mat costs that the groomer decided to comb out and that is clipped off all the same, and a
/// zone that stays matted: more than any coat lost.
inline constexpr work against_the_groomer = mmin(600'000);

/// Price of 0.01 mm between sides that are to match: a minute, so that nothing else outweighs it.
inline constexpr std::int32_t to_match = 1000;

class compiler {
  public:
    compiler(const plan_request& r, const ready_kit& ready, std::vector<part> down,
             std::vector<part_follower> follow)
        : r_(r),
          ready_(ready),
          top_(ready.top()),
          sheet_(ready.sheet()),
          wishes_(r, ready),
          coat_(coat_of(r.reference, r.patient.coat.value())) {
        out_.setups = top_.setups().size();
        out_.down = std::move(down);
        out_.follow = std::move(follow);
        bits_.assign(2 * top_.tools().size(), kit_setups::none);
    }

    compiled_plan run() {
        const std::vector<place> places = wishes_.places();
        out_.zones.reserve(places.size());
        for (const place& p : places) {
            add_zone(p);
        }
        mark_beside_mats();
        take_parts_down();
        add_rows();
        add_seams();
        return std::move(out_);
    }

  private:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }

    void add_zone(const place& p);
    void decide_mat(zone_plan& z, const mat_finding* m);
    void look_at_skin(zone_plan& z) const;
    void decide_wish(zone_plan& z, const instruction& wish);
    void decide_target(zone_plan& z, const instruction& wish);
    void follow_part(std::size_t index);
    [[nodiscard]] bool is_tidied(const zone_plan& z) const;
    void mark_beside_mats();
    void add_rows();
    void add_seams();
    void seam_between(std::size_t a, std::size_t b, const length& allowance);
    void take_parts_down();
    bool add_row(std::size_t index);
    [[nodiscard]] std::size_t leave_column() const;
    /// What all cells of a zone have in common.
    struct approach {
        std::size_t begin = 0;  ///< first column: 0, or that of the combed-out half
        list when = list::after_bath;
        work surcharge{};
        std::int32_t spend = 0;
        tool_set held = 0;     ///< tools held before them
        bool reasons = false;  ///< say why a setup may not be used
    };
    bool add_part_down(std::size_t index);
    bool add_under(std::size_t index);
    void find_under(std::size_t index, const zone_situation& at);
    bool add_finish_after(std::size_t index, const work& off);
    bool add_combed(std::size_t index);
    bool add_cells(std::size_t index, zone_situation at, approach how);
    bool add_cells_once(std::size_t index, const zone_situation& at, const approach& how);
    [[nodiscard]] work left_too_long(const zone_plan& z, const length& left) const;
    [[nodiscard]] bool cut_short_anyway(const zone_plan& z) const;
    [[nodiscard]] bool is_near(const zone_plan& z, const allowed_setup& s) const;
    [[nodiscard]] bool near_enough(const zone_plan& z, std::size_t before) const;
    [[nodiscard]] work clipped_for_nothing(std::size_t index, const length& left) const;
    void add_cell(std::size_t index, std::size_t setup, const candidate& c, const approach& how);
    [[nodiscard]] work edges_taken_along(const place& p, const length& left) const;
    [[nodiscard]] tool_set tools_held(std::size_t setup, list when);
    [[nodiscard]] tool_set tool_bit(std::size_t tool, list when);
    /// Counts a tool that no setup held before.
    [[nodiscard]] std::size_t next_bit(std::size_t tool);

    const plan_request& r_;
    const ready_kit& ready_;
    const kit_setups& top_;
    const resolved_style& sheet_;
    wishes_by_place wishes_;
    const coat& coat_;
    compiled_plan out_;
    std::vector<std::size_t> bits_;  // of a tool before the bath, then after it
};

}  // namespace pelage
