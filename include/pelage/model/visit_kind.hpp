// What ends the wait for the next visit.
#pragma once

namespace pelage {

/// What is due when: hair that gets long enough to mat, the clock of what brushing alone holds, or the
/// usual interval.
enum class visit_kind { by_length, by_brushing, usual };

}  // namespace pelage
