// The seven classes of coat the models know, and what each is taken to be.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <pelage/evidence.hpp>
#include <pelage/units.hpp>

namespace pelage {

/// What a groomer sees on the table.
enum class coat_class { smooth, double_short, double_long, wire, drop, wavy, curly };
inline constexpr std::array<std::string_view, 7> coat_names{
    "smooth", "double-short", "double-long", "wire", "drop", "wavy", "curly"};
[[nodiscard]] constexpr std::string_view name(coat_class c) {
    return coat_names[static_cast<std::size_t>(c)];
}

/// How the coat grows: hair that keeps growing, or hair that rests and is replaced.
enum class cycle { growing, resting };
inline constexpr std::array<std::string_view, 2> cycle_names{"growing", "resting"};
[[nodiscard]] constexpr std::string_view name(cycle c) {
    return cycle_names[static_cast<std::size_t>(c)];
}

/// How a jacket is finished where the sheet doesn't say.
enum class jacket_finish { clip, card, ask };
inline constexpr std::array<std::string_view, 3> jacket_names{"clip", "card", "ask"};
[[nodiscard]] constexpr std::string_view name(jacket_finish j) {
    return jacket_names[static_cast<std::size_t>(j)];
}

/// Lognormal prior of a growing hair's rate: ln R ~ Normal(ln median, log_sd).
struct rate_prior {
    growth_rate median{};
    double log_sd = 0.0;  ///< > 0, dimensionless
    evidence why{};
};

/// One coat class with its figures.
struct coat {
    coat_class id = coat_class::wavy;
    std::string title;           ///< "wavy coat"
    std::string look;            ///< what to look for on the table
    figure<double> lay_degrees;  ///< angle of the lay to the skin (degrees, 0 < a <= 90)
    rate_prior rate;
    cycle kind = cycle::growing;
    figure<double> growing_share;         ///< share of hairs growing at the clip, 0 to 1
    std::optional<figure<days>> reentry;  ///< resting coats: mean wait until a follicle grows again
    figure<length> terminal;              ///< length at which hair stops (mm)
    std::optional<figure<length>> matting_prone;  ///< none: does not mat by length
    figure<length> shortest;                      ///< shortest advisable length on the jacket (mm)
    figure<days> usual_interval;                  ///< between grooms
    jacket_finish jacket = jacket_finish::clip;
    evidence jacket_why;
};

}  // namespace pelage
