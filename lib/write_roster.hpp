// Private to lib: the lines that a roster is answered with.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include <pelage/error.hpp>
#include <pelage/groom.hpp>
#include <pelage/visits.hpp>

namespace pelage::io {

/// Adds {"line":n,"id":...,"plan":{...}} and a line end. `when` is left out where the groom stops.
void add_plan(std::string& out, std::uint64_t line, const groom& g, const std::optional<back>& when,
              const groom_request& r);

/// Adds {"line":n,"id":...,"error":[...]} and a line end; without the id where it couldn't be read.
void add_faults(std::string& out, std::uint64_t line, const std::string& id,
                const diagnostics& all);

}  // namespace pelage::io
