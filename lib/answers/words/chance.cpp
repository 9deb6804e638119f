#include "answers/words/chance.hpp"

#include <cmath>

#include <pelage/base/phrase.hpp>

namespace pelage::io {

std::string percent(double p) {
    if (p > 0.99 && p < 1.0 - 1e-9) {
        return "over 99 %";
    }
    if (p > 0.0 && p < 0.001) {
        return "under 0.1 %";
    }
    const double hundredths = p * 100.0;
    return p > 0.0 && p < 0.01 ? detail::fixed(hundredths, 1) + " %"
                               : detail::fixed(std::floor(hundredths + 0.5), 0) + " %";
}

std::string chance_in_words(double p) {
    if (p > 1.0 - 1e-9) {
        return "all";
    }
    for (int d = 2; d <= 20; ++d) {
        const double n = p * d;
        if (n > 0.5 && std::abs(n - std::round(n)) < 1e-9) {
            return detail::fixed(n, 0) + " in " + std::to_string(d);
        }
    }
    if (p > 0.95) {
        return "more than 19 in 20";
    }
    if (p > 0.4) {
        return "about " + detail::fixed(p * 10.0, 0) + " in 10";
    }
    return p < 0.001 ? "fewer than 1 in 1000" : "about 1 in " + detail::fixed(1.0 / p, 0);
}

}  // namespace pelage::io
