// A kit checked: what in it can be mistaken, what is unsafe together, what is missing or idle for the
// salon's sheets, and how well its lengths are known.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/stock.hpp>

namespace pelage {

/// What is checked. Everything is borrowed for the call.
struct drawer_request {
    const catalogue& reference;
    const rule_book& rules;
    const kit& own;
    const std::vector<style>& sheets;
    std::optional<date> today{};
};

/// What a remark is about, gravest first.
enum class drawer_matter { unsafe, two_lengths, gap, out, no_basis, idle, remark };
/// The matter in a program's words: "unsafe", "two-lengths".
[[nodiscard]] std::string_view name(drawer_matter m);

/// One thing found.
struct drawer_remark {
    drawer_matter what = drawer_matter::remark;
    std::string text;
};

/// What was found, gravest first.
struct drawer_check {
    std::vector<drawer_remark> remarks;
    std::size_t targets = 0;  ///< zones of the sheets, on their coats, that clippers cut
    std::size_t met = 0;      ///< of them within tolerance, everything in the kit at hand
    std::size_t met_today = 0;
    /// Whether something has to be mended: unsafe, a label with two lengths, or a gap.
    [[nodiscard]] bool amiss() const;
};

[[nodiscard]] drawer_check check_drawer(const drawer_request& r);

}  // namespace pelage
