// Why a file can't be read or written, in words.
#pragma once

#include <string>

namespace pelage::io {

/// What an error number of the system (errno) says of a file: "there is no room left".
[[nodiscard]] std::string disk_reason(int number);

}  // namespace pelage::io
