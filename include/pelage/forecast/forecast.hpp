// The forecast of one groom: per zone when its coat reaches the matting-prone length, when the dog
// must be back, and what brushing more or less changes.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include <pelage/model/return_date.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage {

/// One place of the dog in the forecast. Days count from the groom.
struct zone_forecast {
    place at;                         ///< which place
    length start{};                   ///< length after the groom
    std::optional<length> threshold;  ///< matting-prone length; none: doesn't mat by length
    days early{};                     ///< 1 in 10 such dogs are there
    days even{};                      ///< 1 in 2
    days late{};                      ///< 9 in 10
    bool held = false;  ///< on the day of the next visit only brushing protects it (by_brushing)
    days clock{};       ///< days that brushing holds it
};

/// When the dog must be back under another brushing habit, and what that habit does in each zone.
struct habit_forecast {
    brushing habit;             ///< how it would be brushed
    return_date when;           ///< back then
    std::vector<days> early{};  ///< as zone_forecast::early, in the order of forecast::zones
};

/// A resting coat's clipped jacket as it comes back. The model is of a cut near the skin: cut hair that
/// rests doesn't grow, it waits for the next to come beneath it, so what was left longer covers sooner
/// than these days say, by how much nobody has measured.
struct regrown_jacket {
    std::array<days, 3>
        in{};       ///< 1 in 10, 1 in 2, 9 in 10 such dogs are back, delayed ones among them
    length left{};  ///< the longest the jacket was clipped to
};

/// The forecast.
struct forecast {
    std::vector<zone_forecast> zones;       ///< the first to mat first, then in reference order
    return_date when;                       ///< back then
    std::vector<habit_forecast> habits;     ///< from none to daily, all to the skin
    days usual{};                           ///< the cap
    bool mats_by_length = true;             ///< false: this coat doesn't mat by its length
    std::optional<days> tidy_face_feet;     ///< their own clocks, where the coat needs them
    std::optional<days> tidy_sanitary;      ///< none: with the full groom
    std::optional<regrown_jacket> regrown;  ///< resting coats whose jacket is clipped
    std::vector<place> unknown;             ///< places whose length isn't known
    learned_rate learned;                   ///< what the dog's own measurements say
    std::optional<return_date> by_coat;  ///< when it would be due by its coat alone; if any count
};

/// Forecast of a planned groom; `g` came from make_plan(r). `by_zone`: what each habit does in each
/// zone, too, which takes as long as all the rest.
[[nodiscard]] forecast forecast_of(const plan_request& r, const groom& g, bool by_zone = true);

/// Only when the dog must be back: what a plan prints, without the tables. With what the matting-prone
/// length does to it, and the day it was due by its record. Its zones are indices into
/// groom::zones; so are those of every return_date of a forecast.
[[nodiscard]] return_date back_of(const plan_request& r, const groom& g);

}  // namespace pelage
