// Private to lib: what the owner's consent to clip mats off is about.
#pragma once

#include <string>

#include <pelage/groom.hpp>

namespace pelage::io {

/// Every place that mats make shorter than was wished, by the parts of the dog: what is matted, what comes
/// down with its part, and edges that go along. "all of the legs and feet; body: back and loin"; empty: none.
[[nodiscard]] std::string shorter_by_mats(const groom& g, const groom_request& r);

}  // namespace pelage::io
