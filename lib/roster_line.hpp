// Private to lib: one line of a roster read, planned and answered.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include <pelage/io/roster.hpp>

#include "read_parts.hpp"

namespace pelage::io {

/// The longest line that is read.
inline constexpr std::size_t longest_line = 1'000'000;

/// Answers lines one after the other. Each thread has one of its own.
class line_planner {
  public:
    explicit line_planner(const roster_request& r) : all_(r), places_(r.reference.dog_body) {}

    /// Adds the answer to line `number` to `out` and counts it in `n`. Throws only if there is no
    /// memory to say what went wrong.
    void answer(std::string_view text, std::uint64_t number, std::string& out, roster_count& n);
    /// The answer to a line that was too long to be kept.
    static void answer_too_long(std::uint64_t number, std::string& out, roster_count& n);

  private:
    void plan(std::string_view text, std::uint64_t number, std::string& out, roster_count& n);

    const roster_request& all_;
    place_finder places_;
    std::string id_;  ///< of the dog in hand, as far as it is known
};

}  // namespace pelage::io
