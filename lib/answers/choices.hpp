// Private to lib: whole ways of doing a dog, side by side, where the wish can't be had.
#pragma once

#include <optional>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// Two or three ways as rows: what most of each part comes to where the ways differ, the minutes of the whole appointment, when
/// it is as wished again. Nothing where the wish can be had, or there is no other way worth the owner's
/// word: what mats cost in length, and what the kit can't leave.
[[nodiscard]] std::optional<typed_table> choices(const groom& g, const beside& b,
                                                 const plan_request& r, length_unit u);

}  // namespace pelage::io
