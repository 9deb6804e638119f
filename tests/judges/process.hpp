// Another program, run and timed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "judges/stopwatch.hpp"

namespace judges {

/// A folder that goes with its object.
class scratch {
  public:
    scratch();
    ~scratch();
    scratch(const scratch&) = delete;
    scratch& operator=(const scratch&) = delete;
    [[nodiscard]] std::filesystem::path operator/(const char* name) const { return path_ / name; }

  private:
    std::filesystem::path path_;
};

struct ended {
    bool in_time = false;  ///< false: it was killed
    int status = -1;       ///< exit status; 127 if there is no such program
    seconds_spent spent;   ///< from before its start until it was gone
};

/// Runs a program of the path with its output and errors in a file, and kills it after
/// `most_seconds`. Throws std::system_error if nothing can be started at all.
[[nodiscard]] ended run(const std::vector<std::string>& words, const std::filesystem::path& output,
                        double most_seconds);

}  // namespace judges
