// Private to lib: the kit inside a salon file.
#pragma once

#include "data/read/parts.hpp"

namespace pelage::io {

/// The table [kit].
[[nodiscard]] kit get_kit(const node& table, page& p);

}  // namespace pelage::io
