// How a roster went.
#pragma once

#include <cstdint>

namespace pelage {

/// How many lines came out how.
struct roster_count {
    std::uint64_t lines = 0;    ///< read
    std::uint64_t refused = 0;  ///< planned, and the answer is no: a stop, or a zone stuck
    std::uint64_t faulty = 0;   ///< the line is wrong
    std::uint64_t failed = 0;   ///< our own fault
};

}  // namespace pelage
