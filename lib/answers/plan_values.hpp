// Private to lib: what every JSON of a plan says alike, a roster's line and `plan --format json`. Lengths in
// millimetres to 0.01, days to 0.1, minutes to 0.001; dates ISO 8601.
#pragma once

#include <optional>

#include <pelage/base/date.hpp>
#include <pelage/planner/plan.hpp>

#include "answers/json_line.hpp"

namespace pelage::io {

/// How much is said: a roster's line leaves out what the reference holds by id.
enum class plan_detail { line, whole };

/// Keys of an object that is open: "zone", and "side" where only one is meant.
void add_place(json_line& j, const body& b, const place& p);
/// An object: "name" as people call it; of what clips "blade", "setting" of a lever, "comb", their stated
/// lengths and "direction".
void add_setup(json_line& j, const setup& s);
/// An object: "low_mm", "best_mm", "high_mm".
void add_finished(json_line& j, const finished& f);
/// An object: when the dog must be back; on a day off "last_open_day" too, where there is one.
void add_back(json_line& j, const return_date& b, const std::optional<date>& today,
              const days_off& closed);
/// Keys of an object that is open: all of the plan but its zones, and what stands beside it.
void add_plan(json_line& j, const groom& g, const std::optional<return_date>& when,
              const plan_request& r, plan_detail how, const days_off& closed = {});

}  // namespace pelage::io
