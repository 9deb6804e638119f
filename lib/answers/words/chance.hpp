// Private to lib: chances of coats in words, the same in every answer.
#pragma once

#include <string>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// "1 in 4", "about 1 in 11", "all".
[[nodiscard]] std::string chance_in_words(double p);

/// "25 %", "0.4 %", "over 99 %".
[[nodiscard]] std::string percent(double p);

/// What a plan or forecast tells of a coat that nobody has seen: planned on which, what to look at,
/// and what changes on the others.
void say_unseen(document& d, const mixed_coat& u, const plan_request& r, const print_options& o);
/// The same on a card: that it is by the mix, and which other coat would have its jacket left.
void say_unseen_in_brief(document& d, const mixed_coat& u, const plan_request& r);

}  // namespace pelage::io
