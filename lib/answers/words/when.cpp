#include "answers/words/when.hpp"

#include <cmath>

#include <pelage/base/length_text.hpp>

namespace pelage::io {

std::string odds(chance p) {
    const double tenths = p * 10.0;
    if (std::abs(p - 0.5) < 1e-9) {
        return "1 in 2";
    }
    if (std::abs(tenths - std::round(tenths)) < 1e-9) {
        return detail::fixed(tenths, 0) + " in 10";
    }
    return detail::fixed(p * 100.0, 0) + " in 100";
}

std::string on_day(const days& d, const print_options& o) {
    if (is_never(d)) {
        return "never";
    }
    const std::string plain = "day " + detail::fixed(std::floor(in_days(d)), 0);
    return o.today ? in_words(plus(*o.today, d)) + " (" + plain + ")" : plain;
}

std::string basis_words(const evidence& e) {
    std::string s{in_words(e.how)};
    s += e.from.empty() ? "" : ": " + e.from;
    s += e.relayed ? ", seen second-hand" : "";
    const std::size_t end = e.note.find_last_not_of('.') + 1;  // a sentence ends behind the bracket
    s += end == 0 ? "" : " (" + e.note.substr(0, end) + ")";
    return s;
}

std::string often(habit h) {
    switch (h) {
        case habit::none:
        case habit::weekly:
            return "once a week";
        case habit::two_or_three:
            return "two or three times a week";
        case habit::every_other_day:
            return "every second day";
        case habit::daily:
            break;
    }
    return "each day";
}

}  // namespace pelage::io
