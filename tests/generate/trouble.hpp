// Tables with trouble on them: little in the drawer, more mats than there is time for.
#pragma once

#include "generate/real_problems.hpp"

namespace generate {

/// A table as any_table lays it, its drawer thinned out, the dog matted, sometimes old or ill.
[[nodiscard]] table any_trouble(dice& d);

}  // namespace generate
