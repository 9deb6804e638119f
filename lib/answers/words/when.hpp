// Private to lib: days, dates, chances and bases in words, the same in every answer.
#pragma once

#include <string>

#include <pelage/answers/write.hpp>
#include <pelage/base/evidence.hpp>

namespace pelage::io {

/// "9 in 10", "1 in 2", "85 in 100".
[[nodiscard]] std::string odds(chance p);

/// "day 33 (28 December 2026)", or "day 33" where today isn't known, or "never".
[[nodiscard]] std::string on_day(const days& d, const print_options& o);

/// "common practice, no source", "published: diaz-2004", "our guess", with the note.
[[nodiscard]] std::string basis_words(const evidence& e);

/// How often an owner is asked to brush: "every second day".
[[nodiscard]] std::string often(habit h);

}  // namespace pelage::io
