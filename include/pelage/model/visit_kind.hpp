// What ends the wait for the next visit.
#pragma once

namespace pelage {

/// What is due when.
enum class visit_kind { full_groom, brush_out, usual };

}  // namespace pelage
