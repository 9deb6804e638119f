// Private to lib: what a dog's own measurements say, in words.
#pragma once

#include <string>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// How many measurements count, what rate they give and by how much the date moved; then what was left
/// out and why. Nothing for a dog that was never measured.
void say_learned(document& d, const forecast& f, const plan_request& r, length_unit u);

/// "0.29 mm/day (0.25 to 0.34 in 8 of 10), log SD ...", for --explain.
[[nodiscard]] std::string learned_in_figures(const learned_rate& l, length_unit u);

/// Why a measurement of the dog doesn't count, as the end of a sentence.
[[nodiscard]] std::string left_out_words(const left_out_measurement& m, const plan_request& r);

/// "0.34 mm a day", "0.41 in a month": a rate in mm a day.
[[nodiscard]] std::string rate_words(double rate, length_unit u, int digits = 2);

/// "0.34 mm/day", "0.41 in/month": the same, shortly.
[[nodiscard]] std::string rate_per(double rate, length_unit u);

/// "12 % faster than the 0.34 mm a day", "about the 0.34 mm a day"; rates in mm a day.
[[nodiscard]] std::string against(double rate, double usual, length_unit u);

}  // namespace pelage::io
