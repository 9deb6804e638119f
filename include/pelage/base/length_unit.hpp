// Millimetres or inches.
#pragma once

namespace pelage {

/// How lengths are printed.
enum class length_unit { mm, inch };

}  // namespace pelage
