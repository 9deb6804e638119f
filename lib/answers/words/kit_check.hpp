// Private to lib: what a checked kit shows, each finding as one sentence.
#pragma once

#include <string>

#include <pelage/base/length_text.hpp>
#include <pelage/kit/check.hpp>

namespace pelage::io {

/// The sentence of a finding, lengths in those units. `r` is what was checked.
[[nodiscard]] std::string finding_words(const drawer_finding& f, const kit_check_request& r,
                                        length_unit u);

/// " in \"summer\"", or nothing of a sheet as it is.
[[nodiscard]] std::string in_its_season(const std::string& season);

}  // namespace pelage::io
