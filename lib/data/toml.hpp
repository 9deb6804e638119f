// Private to lib: a TOML text as a plain tree with positions; the parser itself is seen by
// data/toml.cpp alone.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/date.hpp>

#include "data/faults.hpp"

namespace pelage::io {

/// What stands at a place of the text.
enum class node_kind { table, list, text, whole, real, truth, day, other };

struct member;

/// One value with its position; which member counts is said by `kind`.
struct node {
    node_kind kind = node_kind::table;
    spot at;
    std::string text;  ///< of `text`; what it is for `other`
    std::int64_t whole = 0;
    double real = 0.0;  ///< may be nan or infinite
    bool truth = false;
    date day{};
    std::vector<member> members;  ///< of a table, in the order of the text
    std::vector<node> items;      ///< of a list
};

/// A key with its value.
struct member {
    std::string key;
    spot at;
    node value;
};

/// The text as a tree; nothing after a fault of syntax, which is added to `out`. Keys and brackets
/// may nest 16 deep at most: the parser would run out of stack far beyond that.
[[nodiscard]] std::optional<node> parse_toml(std::string_view text, faults& out);

}  // namespace pelage::io
