// A calendar's file (RFC 5545) in the place of an earlier one.
#pragma once

#include <string>
#include <string_view>

namespace pelage::io {

/// The calendar as it takes the place of the file whose bytes are `before`: where that says another thing,
/// every SEQUENCE is above all of the earlier file's, so that whoever imports both takes this one; where it
/// says the same, it stays as it was. What is no calendar isn't looked at. Without an earlier file a SEQUENCE
/// tells the day alone: two calendars of one day that were never in one file can't be told apart.
[[nodiscard]] std::string in_place_of(std::string calendar, std::string_view before);

}  // namespace pelage::io
