// What a remark on a kit is about.
#pragma once

#include <string_view>

namespace pelage {

/// What a remark is about, gravest first.
enum class kit_matter { unsafe, two_lengths, gap, out, no_basis, idle, remark };
/// The matter in a program's words: "unsafe", "two-lengths".
[[nodiscard]] std::string_view name(kit_matter m);

}  // namespace pelage
