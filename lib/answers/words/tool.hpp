// Private to lib: what is held, in the units asked for. A comb's name is its length.
#pragma once

#include <string>
#include <string_view>

#include <pelage/base/length_text.hpp>
#include <pelage/trade/held_tool.hpp>
#include <pelage/trade/setup.hpp>

namespace pelage::io {

/// "13 mm" of a comb called so, and in inches the trade's fraction for it, "1/2 in".
[[nodiscard]] std::string comb_words(std::string_view id, length_unit u);

/// held() and title() of a setup with the comb's name and the mark of a lever in those units.
[[nodiscard]] std::string held_words(const setup& s, length_unit u);
[[nodiscard]] std::string held_words(const held_tool& t, length_unit u);
[[nodiscard]] std::string title_words(const setup& s, length_unit u);

/// From where to where.
struct ends {
    length low;
    length high;
};

/// What a clipper leaves, in brief: one length, or where nobody knows it well the two between which it may
/// come out, so that no tenth of a millimetre is promised.
[[nodiscard]] ends ends_in_brief(const finished& left);

}  // namespace pelage::io
