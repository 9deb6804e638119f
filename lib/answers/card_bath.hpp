// Private to lib: what stands on a card between its two lists.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// The bath, or why the lists stop before it; empty where nothing stands between them. The cautions it tells are
/// added to `told`.
[[nodiscard]] std::string between_lists(const groom& g, const plan_request& r,
                                        std::vector<caution_when>& told);

}  // namespace pelage::io
