// A file that is written beside its place and then put there: never half a file, never another
// writer's, and nothing left behind by a signal.
#pragma once

#include <functional>
#include <iosfwd>
#include <string>

namespace pelage::cli {

/// Has `write` write the whole answer beside `path`, then puts it in its place; a link is followed to
/// what it names, the mode of a file that is there is kept. Throws error(io) where that can't be done.
void write_file(const std::string& path, const std::function<void(std::ostream&)>& write);

/// Throws the error(io) that `path` can't be written, and why.
[[noreturn]] void cannot_write(const std::string& path, const std::string& why);

}  // namespace pelage::cli
