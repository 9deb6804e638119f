// Private to lib: the figures of the rules by the ids that files use, each with where it goes and
// between what it must lie. The reference's files and a salon's overrides share these lists.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <pelage/kit/quiz.hpp>
#include <pelage/model/reference_data.hpp>

#include "data/read/parts.hpp"

namespace pelage::io {

/// One figure of the rules.
struct figure_field {
    std::string id;
    std::variant<figure<length>*, figure<days>*, figure<work>*, figure<double>*> to;
    bounds range;

    [[nodiscard]] measure kind() const;
    void store(const raw_figure& f) const;
};

/// A set of rules as one file holds it: "cut" is reference/cut.toml and [override.cut].
struct rule_set {
    std::string_view name;
    std::vector<figure_field> slots;
};

/// Every set of the rule book; the slots point into `b`.
[[nodiscard]] std::vector<rule_set> rule_sets(parameters& b);

/// The figures of the quiz likewise, which no salon replaces; the slots point into `r`.
[[nodiscard]] rule_set quiz_slots(quiz_rules& r);

/// A rule that links several figures: complains at `at` if it doesn't hold.
void check_rules(const parameters& b, std::string_view set, const spot& at, faults& out);

}  // namespace pelage::io
