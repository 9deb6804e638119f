// Private to lib: places that would stand out of a part which the kit can't leave as wished.
#pragma once

#include <vector>

#include "planner/compile.hpp"

namespace pelage {

/// Places scissored as wished for want of a clipper's tool, in a part most of which the kit leaves at
/// another length: elbows of 13 mm on a leg of 9.5. Each with the length of what is clipped around it.
[[nodiscard]] std::vector<part_follower> lone_places(const plan_request& r, const ready_kit& ready,
                                                     const compiled_plan& c, const solution& s);

/// The followers of `c`, each at what its part is left at by `s`, which need not be the choice they were found
/// by; one whose part comes out as wished is wished as before.
[[nodiscard]] std::vector<part_follower> followed_again(const plan_request& r,
                                                        const ready_kit& ready,
                                                        const compiled_plan& c, const solution& s);

}  // namespace pelage
