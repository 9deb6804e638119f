// A blade or comb as a tool of its own, whatever it is used with.
#pragma once

#include <string>
#include <vector>

#include <pelage/trade/setup.hpp>

namespace pelage {

/// A blade or a comb, by its id.
struct held_tool {
    bool comb = false;  ///< else a blade
    std::string id;     ///< of it
    friend bool operator==(const held_tool&, const held_tool&) = default;
};

/// "blade 10", "comb 13 mm".
[[nodiscard]] inline std::string name(const held_tool& t) {
    return (t.comb ? "comb " : "blade ") + t.id;
}

/// The names of tools.
[[nodiscard]] inline std::vector<std::string> names(const std::vector<held_tool>& all) {
    std::vector<std::string> out;
    for (const held_tool& t : all) {
        out.push_back(name(t));
    }
    return out;
}

}  // namespace pelage
