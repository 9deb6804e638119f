// Private to lib: words about what was asked and what goes where.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/base/length_unit.hpp>
#include <pelage/kit/place_card.hpp>

namespace pelage::io {

/// "blades 10, 9 and 7F (out today), combs 3 to 32 mm"; empty of none.
[[nodiscard]] std::string tools_words(const std::vector<setup>& all, const lookup_request& r,
                                      length_unit u);

/// What is customary there: "blade 10, nothing else", "scissors".
[[nodiscard]] std::string usual_words(const zone_card& c, const lookup_request& r);

/// What of the kit may go there; empty where that is customary and nothing else.
[[nodiscard]] std::string with_words(const zone_card& c, const lookup_request& r, length_unit u);

/// Where against the lay is right there, and where it isn't.
[[nodiscard]] std::string against_words(const zone_card& c, const lookup_request& r, length_unit u);

/// What never goes there, and why; each a line.
[[nodiscard]] std::vector<std::string> never_words(const zone_card& c, const lookup_request& r,
                                                   length_unit u);

/// "thin", "thin, and it folds": how easily the skin is hurt.
/// What is said of a dog whose coat stays open: "doodle: a cross with a poodle, ...".
[[nodiscard]] std::string coat_open_words(const terms_asked& t);

/// What was asked about and isn't done there: "not on the elbows: skip teeth ...".
[[nodiscard]] std::string not_there_words(const not_there& n, const body& b);

[[nodiscard]] std::string skin_kind(const zone& z);

/// "common practice, no source", with the source where there is one.
[[nodiscard]] std::string how_sure(const evidence& e);

/// What is asked back of a question that another command answers: what to write there.
[[nodiscard]] std::string elsewhere_words(const asked_back& a);

/// A no, and why, before all else.
void say_no(document& d, const std::string& why);

/// The term's text with a small first letter, to stand behind a colon.
[[nodiscard]] std::string behind_colon(std::string text);

}  // namespace pelage::io
