#include "answers/words/growth.hpp"

#include <cmath>

#include <pelage/trade/brushing.hpp>

#include "answers/words/dates.hpp"

namespace pelage::io {

std::string part_words(const growing_part& p, length_unit u, bool spread) {
    if (!p.prone) {
        return "clipped near the skin";
    }
    return show(p.start, u) + " left; mats from " +
           (spread ? show(finished{p.prone_low, *p.prone, p.prone_high}, u) : show(*p.prone, u));
}

std::string back_words(const forecast& f, const print_options& o) {
    const days by = come_by_day(f.when.next_visit, o);
    const std::string number = "day " + detail::fixed(std::floor(in_days(by)), 0);
    if (!o.today) {
        return "back by " + number;
    }
    const std::string on = in_words(plus(*o.today, by));
    return "back by " + on.substr(0, on.rfind(' ')) + " (" + number + ")";
}

std::string habit_words(const brushing& b) {
    return b.how_often == habit::none ? "not at all" : std::string(name(b.how_often));
}

}  // namespace pelage::io
