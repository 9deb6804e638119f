// Private to lib: the cautions of a card.
#pragma once

#include <vector>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// Of the whole dog and of the gravest: before anything is taken up.
[[nodiscard]] bool first_of_all(const caution_line& c);

/// Those special to this dog, what is said of the same places together; what the owner is told, and the usual ones,
/// in one line each. `told`: cautions that stand already beside what they are about.
void say_cautions(document& page, const groom& g, const plan_request& r,
                  const std::vector<caution_when>& told);

}  // namespace pelage::io
