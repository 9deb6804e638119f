// Private to lib: what the week and the diary say of a dog that is due.
#pragma once

#include <string>
#include <string_view>

#include <pelage/forecast/week.hpp>

namespace pelage::io {

/// Whole days from one to the other; below 0 where that lies before.
[[nodiscard]] int days_to(const date& from, const date& to);
/// Its name, or its id where it has none.
[[nodiscard]] std::string called(const dog& d);
/// What has to be asked or known before the dog can be booked; empty: nothing.
[[nodiscard]] std::string first_words(const due_dog& one);
/// What stands beside a dog: alerts first, then what has to be asked or known, then what was promised, if that is
/// asked for, too.
[[nodiscard]] std::string beside_words(const due_dog& one, const week_request& r,
                                       bool promised = true);
/// What is done at a visit of the diary.
[[nodiscard]] std::string_view visit_name(const due_dog& one, const diary_visit& v);
/// "6.5 h".
[[nodiscard]] std::string hours_words(const work& w);
/// What the minutes are worth, and whether there is such a salon.
[[nodiscard]] std::string week_foot(const salon_files& s);

}  // namespace pelage::io
