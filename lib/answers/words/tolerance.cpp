#include "answers/words/tolerance.hpp"

#include <cmath>

#include <pelage/base/phrase.hpp>

namespace pelage::io {

std::string tolerance_words(const price_rules& p, length_unit u) {
    const auto percent = [](const figure<double>& f) {
        return std::to_string(std::lround(f.best * 100.0)) + " %";
    };
    return "tolerance, where the sheet gives none: " + percent(p.tolerance_share) +
           " of the length (head " + percent(p.tolerance_head_share) + "), at least " +
           show(p.tolerance_cap.best, u) + " or " + percent(p.tolerance_cap_share) +
           " of it, whichever is less: " + std::string(in_words(p.tolerance_share.why.how));
}

}  // namespace pelage::io
