// Private to lib: iCalendar (RFC 5545): a whole day each, lines folded at 75 octets, CRLF.
#pragma once

#include <string>

#include <pelage/base/date.hpp>

namespace pelage::io::ics {

/// What a calendar begins and ends with.
[[nodiscard]] std::string opening();
[[nodiscard]] std::string closing();

/// A whole-day event. `id` is its own, however its day moves.
struct event {
    std::string id;
    date on{};
    std::string summary;
    std::string about;
};
[[nodiscard]] std::string whole_day(const event& e, const date& today);

}  // namespace pelage::io::ics
