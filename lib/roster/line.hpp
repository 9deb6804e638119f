// Private to lib: one line of a roster read, planned and answered.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/planner/kit_setups.hpp>
#include <pelage/roster/roster.hpp>

#include "data/read/parts.hpp"

namespace pelage::io {

/// The longest line that is read.
inline constexpr std::size_t longest_line = 1'000'000;

/// What all lines share, made ready once: the kit, and each sheet. Read by all threads.
class prepared {
  public:
    explicit prepared(const roster_request& r);
    [[nodiscard]] const kit_setups& top() const { return top_; }
    /// `s` is one of the request's sheets.
    [[nodiscard]] const resolved_style& laid(const style& s) const {
        return sheets_[static_cast<std::size_t>(&s - styles_.data())];
    }

  private:
    kit_setups top_;
    const std::vector<style>& styles_;
    std::vector<resolved_style> sheets_;
};

/// Answers lines one after the other. Each thread has one of its own.
class line_planner {
  public:
    line_planner(const roster_request& r, const prepared& ready)
        : all_(r), ready_(ready), places_(r.reference.dog_body) {}

    /// Adds the answer to line `number` to `out` and counts it in `n`. Throws only if there is no
    /// memory to say what went wrong.
    void answer(std::string_view text, std::uint64_t number, std::string& out, roster_count& n);
    /// The answer to a line that was too long to be kept.
    static void answer_too_long(std::uint64_t number, std::string& out, roster_count& n);

  private:
    void plan(std::string_view text, std::uint64_t number, std::string& out, roster_count& n);

    const roster_request& all_;
    const prepared& ready_;
    place_finder places_;
    std::string id_;  ///< of the dog in hand, as far as it is known
};

}  // namespace pelage::io
