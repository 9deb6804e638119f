// Private to lib: what an entry of a record says, in words.
#pragma once

#include <string>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/trade/log_entry.hpp>

namespace pelage::io {

/// "full groom, nails and ears".
[[nodiscard]] std::string services_words(const std::vector<service_kind>& all);
/// "body 13 mm, legs 16 mm as planned; ears 20 mm measured".
[[nodiscard]] std::string lengths_words(const std::vector<logged_length>& all, length_unit u);
/// "none", "ears, left armpit (pelt)"; empty where nobody said.
[[nodiscard]] std::string mats_words(const std::optional<std::vector<logged_mat>>& all);
[[nodiscard]] std::string skin_words_of(const std::vector<logged_skin>& all, length_unit u);
/// "blade 7F, with the lay: body; scissors: head".
[[nodiscard]] std::string tools_words(const std::vector<logged_tool>& all);
/// "95 min".
[[nodiscard]] std::string minutes_words(const work& w);

}  // namespace pelage::io
