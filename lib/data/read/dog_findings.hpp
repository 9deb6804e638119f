// Private to lib: what was found on a dog, from its file.
#pragma once

#include "data/read/parts.hpp"

namespace pelage::io {

/// Mats, place by place: what is said of a narrower word stands.
void get_mats(record& top, page& p, dog& d);

/// What the skin shows, likewise.
void get_skin(record& top, page& p, dog& d);

}  // namespace pelage::io
