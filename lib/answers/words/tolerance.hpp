// Private to lib: how far off a length may end.
#pragma once

#include <string>

#include <pelage/base/length_text.hpp>
#include <pelage/trade/prices.hpp>

namespace pelage::io {

/// "tolerance, where the sheet gives none: 15 % of the length (head 10 %), ...: our guess".
[[nodiscard]] std::string tolerance_words(const price_rules& p, length_unit u);

}  // namespace pelage::io
