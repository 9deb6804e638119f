// The owner's page: what was asked, what could be done and why, how to brush, when to come back. Plain
// words without blame, one sheet of A4.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/planner/alternatives.hpp>
#include <pelage/planner/grow_back.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// Which page: before the groom (what was asked for and found, what to choose, what to sign), after it (what
/// was done by the record, the next visit, how to keep it), or both on one.
enum class owner_moment { both, before, after };

/// What the page is made of besides the plan. Everything is borrowed for the call.
struct owner_matter {
    const groom& plan;                                        ///< as it was planned
    const plan_request& asked;                                ///< what it was planned for
    std::optional<return_date> when;                          ///< none: the dog goes to a vet first
    const forecast* ahead = nullptr;                          ///< null likewise
    const std::vector<regrowth_option>* grow_back = nullptr;  ///< null: none
    salon_card from{};                                        ///< whose page it is
    const std::vector<infeasible_zone>* stuck =
        nullptr;                                   ///< what would free stuck places; null: not said
    owner_moment moment = owner_moment::both;      ///< before the groom, after it, or both
    const std::vector<other_way>* ways = nullptr;  ///< where owner_chooses(); null: none
};

/// Whether the kit can't leave the length agreed and nobody has agreed to another: other ways are shown to
/// choose from.
[[nodiscard]] bool owner_chooses(const groom& g);

/// The page; as HTML it prints on one sheet of A4.
[[nodiscard]] document document_of(const owner_matter& m, const print_options& o);
[[nodiscard]] std::string owner_json(const owner_matter& m, const print_options& o);

}  // namespace pelage::io
