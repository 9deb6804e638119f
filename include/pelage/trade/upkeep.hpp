// How a dog is taken to be brushed where nobody said it.
#pragma once

#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/style.hpp>

namespace pelage {

/// Where nobody said how the dog is brushed, it is taken as its sheet assumes; as not at all where the
/// sheet doesn't say either, or where it came felted over an area: who brushes so doesn't bring it so (assumption).
inline void assume_upkeep(dog& d, const style& s) {
    if (d.brushing_said) {
        return;
    }
    const bool felted = std::any_of(d.mats.begin(), d.mats.end(), [](const mat_finding& m) {
        return m.grade == mat_grade::pelt || m.grade == mat_grade::matted_area;
    });
    const auto assumed = felted ? std::nullopt : parse_brushing(s.upkeep);
    d.brushed = assumed.value_or(brushing{habit::none, false});
    d.upkeep_assumed = assumed.has_value();
}

/// The dog's brushing in words, and that nobody said it: "brushed weekly to the skin (as the sheet
/// assumes)".
[[nodiscard]] inline std::string brushing_of(const dog& d) {
    return title(d.brushed) + (d.brushing_said    ? ""
                               : d.upkeep_assumed ? " (as the sheet assumes)"
                                                  : " (nothing is said of it)");
}

}  // namespace pelage
