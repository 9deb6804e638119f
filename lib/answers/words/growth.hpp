// Private to lib: how a coat grows out, in words beside its curves.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/forecast/growth_course.hpp>

namespace pelage::io {

/// "collar line and behind the ears"; of many only as many as `fits` takes: "neck, withers and 15 more".
template <class Fits>
[[nodiscard]] std::string few_places(const std::vector<std::string>& all, Fits fits) {
    std::string out;
    for (std::size_t n = 1; n <= all.size(); ++n) {
        std::string text;
        for (std::size_t i = 0; i < n; ++i) {
            text += (i == 0 ? "" : i + 1 == n && n == all.size() ? " and " : ", ") + all[i];
        }
        if (n < all.size()) {
            text += " and " + std::to_string(all.size() - n) + " more";
        }
        if (n > 1 && !fits(text)) {
            break;
        }
        out = text;
    }
    return out;
}

/// "13 mm left; mats from 30 mm (23 to 39)", or without what 8 in 10 such dogs lie between.
[[nodiscard]] std::string part_words(const growing_part& p, length_unit u, bool spread = true);

/// "back by 19 December (day 20)".
[[nodiscard]] std::string back_words(const forecast& f, const print_options& o);

/// "not at all", "two or three times a week".
[[nodiscard]] std::string habit_words(const brushing& b);

}  // namespace pelage::io
