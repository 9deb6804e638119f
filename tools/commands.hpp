// The verbs: each turns a request into the bytes of its answer.
#pragma once

#include <iosfwd>
#include <string>

#include "cli.hpp"
#include "request.hpp"

namespace pelage::cli {

/// An answer and its exit code (0, or 1 where the answer is no).
struct reply {
    std::string text{};
    int code = done;
};

[[nodiscard]] reply lookup(const request& q, const surroundings& around);
[[nodiscard]] reply plan(const request& q, const surroundings& around);
/// Plans a whole roster; its lines go to `out` as they are made. Text is what is said beside them, on
/// standard error.
[[nodiscard]] reply roster(const request& q, const surroundings& around, std::ostream& out);
[[nodiscard]] reply regrow(const request& q, const surroundings& around);

}  // namespace pelage::cli
