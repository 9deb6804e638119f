#include "answers/words/tool.hpp"

#include <cmath>

namespace pelage::io {

namespace {

setup named(setup s, length_unit u) {
    if (s.over) {
        s.over->id = comb_words(s.over->id, u);
    }
    const parsed_length mark = parse_length(s.tool.setting);
    if (u == length_unit::inch && mark.ok()) {
        s.tool.setting = show(mark.value, u);
    }
    return s;
}

}  // namespace

std::string comb_words(std::string_view id, length_unit u) {
    const parsed_length l = parse_length(id);
    if (u == length_unit::mm || !l.ok()) {
        return std::string(id);
    }
    // the trade rounds an eighth to the millimetre; another length isn't called by that eighth
    const double inches = in_mm(l.value) / 25.4;
    const length eighth = inch(static_cast<int>(std::lround(inches * 8.0)), 8);
    return gap(eighth, l.value) < mm(0.5) ? show(eighth, u) : detail::fixed(inches, 2) + " in";
}

std::string held_words(const setup& s, length_unit u) {
    return held(named(s, u));
}

std::string held_words(const held_tool& t, length_unit u) {
    return t.comb ? "comb " + comb_words(t.id, u) : name(t);
}

std::string title_words(const setup& s, length_unit u) {
    return title(named(s, u));
}

ends ends_in_brief(const finished& left) {
    constexpr double well_known = 2.0;  // as a ratio: our guess; a patch measured is well within it
    const bool wide =
        in_mm(left.high) > well_known * in_mm(left.low) && left.high - left.low > mm(1.0);
    return wide ? ends{left.low, left.high} : ends{left.best, left.best};
}

}  // namespace pelage::io
