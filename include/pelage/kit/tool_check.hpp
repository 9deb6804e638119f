// A tool as somebody wrote it, held against what lies in the kit.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/held_tool.hpp>
#include <pelage/trade/kit.hpp>

namespace pelage {

/// What is wrong or odd with a tool.
struct tool_doubt {
    /// The kinds there are.
    enum class kind {
        unknown,  ///< no blade, comb or hand tool is called so
        lacking,  ///< the kit has no such blade or comb
        out       ///< it is out for sharpening on that day
    };
    kind what = kind::unknown;     ///< what is wrong with it
    std::string text;              ///< as it was written
    std::vector<held_tool> which;  ///< lacking, out: which of it
    /// lacking: what the kit has that could be meant, of the same number or the nearest in length; unknown:
    /// the nearest names. May be empty.
    std::vector<std::string> near;
    std::string complaint;  ///< unknown: what the reader of labels says, where it says something
    std::optional<date> until{};  ///< out: the last day

    /// It wasn't used, as far as the kit's file is right.
    [[nodiscard]] bool impossible() const { return what != kind::out; }
};

/// The doubt of a tool: "blade 7F", "comb 13 mm over blade 30, with the lay", "curved scissors"; nothing
/// if there is none. `drawer`: the salon's kit; null: only whether there are such tools. `on`: the day.
[[nodiscard]] std::optional<tool_doubt> doubt_of_tool(const std::string& text,
                                                      const reference_data& c, const parameters& r,
                                                      const kit* drawer,
                                                      const std::optional<date>& on);

}  // namespace pelage
