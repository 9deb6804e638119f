// Private to lib: what is told of the words of a question that nobody knows.
#pragma once

#include <vector>

#include <pelage/kit/asked.hpp>

#include "kit/asked_pieces.hpp"

namespace pelage::asking {

/// Each of them with what is near to it, and the rest as it was taken.
[[nodiscard]] strangers each_stranger(const std::vector<piece>& all, const vocabulary& known);

}  // namespace pelage::asking
