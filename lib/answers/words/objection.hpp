// Private to lib: what speaks against a sheet that was tried on a dog, in words.
#pragma once

#include <string>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/sheets/rank.hpp>

namespace pelage::io {

/// One reason, in a sentence without its stop.
struct told_objection {
    objection what = objection::coat;
    std::string text;
};

/// Each of the trial's reasons; those of one kind that the plan or a standard gives by their words.
[[nodiscard]] std::vector<told_objection> told_objections(const ranked_sheet& t,
                                                          const plan_request& r, length_unit u);

/// "back, ribs, loin and 3 more".
[[nodiscard]] std::string some_places(const std::vector<std::string>& titles);
/// The titles of places, indices into groom::zones of the trial's plan.
[[nodiscard]] std::vector<std::string> titles_in(const ranked_sheet& t,
                                                 const std::vector<std::size_t>& zones,
                                                 const plan_request& r);

}  // namespace pelage::io
