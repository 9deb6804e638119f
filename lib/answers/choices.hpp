// Private to lib: whole ways of doing a dog, side by side, where the wish can't be had.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// Two or three ways as rows: what most of each part comes to where the ways differ, the minutes of the whole
/// appointment, and when it is as wished again or, where the kit is what falls short, when the dog must be
/// back, `when` by the plan itself. Nothing where the wish can be had, or there is no other way worth the owner's
/// word: what mats cost in length, and what the kit can't leave.
[[nodiscard]] std::optional<typed_table> choices(const groom& g, const beside& b,
                                                 const std::optional<return_date>& when,
                                                 const plan_request& r, const print_options& o);

/// The same ways without the lengths, as a card has them, a box to tick each: what it is, and the minutes and
/// weeks where they differ.
[[nodiscard]] std::vector<line> choices_in_brief(const groom& g, const beside& b,
                                                 const std::optional<return_date>& when,
                                                 const plan_request& r, const print_options& o);

/// The same ways for an owner, a sentence each, where the kit falls short; empty where there is no other.
[[nodiscard]] std::vector<std::string> lengths_to_choose(const groom& g,
                                                         const std::vector<other_way>& ways,
                                                         const std::optional<return_date>& when,
                                                         const plan_request& r,
                                                         const print_options& o);

}  // namespace pelage::io
