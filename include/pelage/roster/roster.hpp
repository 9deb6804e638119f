// A whole roster: one dog a line in, one plan a line out.
//
// Both sides are JSON Lines. A line holds one object with the keys of a dog's file; `format` may be
// left out. Every line gets one line, in order: {"line":n,"id":...,"plan":{...}} or, where the dog
// can't be read or planned, {"line":n,"error":[{"line":n,"column":c,"message":...}]}. An empty line
// is a faulty one. A file may begin with a byte order mark, lines may end in CR LF, the last needs no
// end. A line has at most 1 MB.
#pragma once

#include <cstdint>
#include <iosfwd>
#include <optional>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/stats.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/roster/count.hpp>

namespace pelage::io {

/// What all dogs of a roster share. Everything is borrowed for the call.
struct roster_request {
    const reference_data& reference;   ///< what the library knows
    const parameters& rules;           ///< figures, the salon's own among them
    const kit& tools;                  ///< the kit
    const std::vector<style>& styles;  ///< sheets that a dog may name
    std::optional<date> today{};       ///< day of the grooms; dates are given only if it is known
    std::optional<chance> asked{};     ///< for when back; none: the rules' own
    unsigned jobs = 1;                 ///< threads that plan, 1 to 256
    std::uint64_t from = 1;  ///< the first line planned, from 1; those before are passed over
};

/// Plans every dog of `in` and writes `out` as it goes. The same input gives the same bytes for any
/// number of threads. Holds a bounded number of lines at a time. Throws error(io) if `in` can't be
/// read or `out` not written.
roster_count plan_roster(std::istream& in, std::ostream& out, const roster_request& r);

}  // namespace pelage::io
