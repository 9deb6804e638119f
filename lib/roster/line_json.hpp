// Private to lib: the lines that a roster is answered with.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include <pelage/base/error.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// Adds {"line":n,"id":...,"plan":{...}} and a line end. `when` is left out where the groom stops;
/// `by_mix` is there where nobody has seen the coat.
void add_plan(std::string& out, std::uint64_t line, const groom& g,
              const std::optional<return_date>& when, const plan_request& r,
              const std::optional<coat_answer>& by_mix);

/// Adds {"line":n,"id":...,"error":[...]} and a line end; without the id where it couldn't be read.
void add_faults(std::string& out, std::uint64_t line, const std::string& id,
                const diagnostics& all);

}  // namespace pelage::io
