// What the entries of a dog's record come to: which of them hold, and what they add to the dog's own file.
//
// An entry holds unless a later one that holds corrects it or takes it back. So taking back a correction
// brings back what it corrected, and the order of writing alone decides, not the days of the visits.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/trade/log_entry.hpp>

namespace pelage {

/// The entries that hold, in the order of the record; those that only take back are not among them.
[[nodiscard]] std::vector<log_entry> entries_in_force(const std::vector<log_entry>& all);

/// The entry that holds and was written last; nothing if none holds.
[[nodiscard]] std::optional<log_entry> last_in_force(const std::vector<log_entry>& all);

/// Whether two entries say the same but for their numbers.
[[nodiscard]] bool say_the_same(log_entry a, log_entry b);

/// What its visits of that day are by the record: "full", "tidy", "bath"; empty where none is logged.
[[nodiscard]] std::vector<std::string> kinds_logged(const dog& d, const date& on);

/// Adds what holds to the dog: its visits (those of services that touch the coat) with what they left and
/// the mats found, and lengths found before the cut as measurements. A visit of the dog's own file on the
/// same day and of the same kind is the same visit: what the record says of it is laid over it. The file's
/// `now`, which has no day of its own, gives way once anything is on record, since nobody can tell from
/// when it is; `told`, which has one, stays, and the later day wins.
void add_record(dog& d, const std::vector<log_entry>& all);

}  // namespace pelage
