// The nine classes of coat the models know, and what each is taken to be.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/coat_class.hpp>

namespace pelage {

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
    growth_rate median{};  ///< of such dogs
    double log_sd = 0.0;   ///< > 0, dimensionless
    evidence why{};        ///< how it is known
};

/// Hair that keeps growing in some places of a coat whose jacket stays short.
struct feathering {
    std::vector<std::string> zones;  ///< ids of the zones where it grows
    figure<length> terminal;         ///< length at which it stops (mm)
    figure<length> matting_prone;    ///< beyond this it mats by length (mm)
};

/// One coat class with its figures. Where it has feathering, `terminal` and `matting_prone` are of the
/// rest of the coat; terminal_at and matting_prone_at know both.
struct coat {
    coat_class id = coat_class::wavy;     ///< which
    std::string title;                    ///< "wavy coat"
    std::string look;                     ///< what to look for on the table
    figure<double> lay_degrees;           ///< angle of the lay to the skin (degrees, 0 < a <= 90)
    rate_prior rate;                      ///< at which its hair grows
    cycle kind = cycle::growing;          ///< whether its hair keeps growing
    figure<double> growing_share;         ///< share of hairs growing at the clip, 0 to 1
    std::optional<figure<days>> reentry;  ///< resting coats: mean wait until a follicle grows again
    figure<length> terminal;              ///< length at which hair stops (mm)
    std::optional<figure<length>> matting_prone;  ///< none: does not mat by length
    std::optional<feathering> feathers;           ///< none: the whole coat is of one kind
    figure<length> shortest;                      ///< shortest advisable length on the jacket (mm)
    figure<days> usual_interval;                  ///< between grooms
    jacket_finish jacket = jacket_finish::clip;   ///< what is done with it
    evidence jacket_why;                          ///< how that is known
    std::string said_first;   ///< before any blade or length is named for it; may be empty
    std::string carded_with;  ///< the trade's tool for its dead hair: "undercoat rake"
    evidence carded_why;      ///< how that is known
};

/// Whether the feathering of a coat grows in the zone of that id.
[[nodiscard]] inline bool feathered_at(const coat& c, std::string_view zone) {
    return c.feathers && std::find(c.feathers->zones.begin(), c.feathers->zones.end(), zone) !=
                             c.feathers->zones.end();
}

/// Where hair stops in the zone of that id (mm).
[[nodiscard]] inline const figure<length>& terminal_at(const coat& c, std::string_view zone) {
    return feathered_at(c, zone) ? c.feathers->terminal : c.terminal;
}

/// Where hair stops at the longest anywhere on the dog (mm).
[[nodiscard]] inline const figure<length>& longest_terminal(const coat& c) {
    return c.feathers && c.feathers->terminal.best > c.terminal.best ? c.feathers->terminal
                                                                     : c.terminal;
}

/// The matting-prone length of the coat in the zone of that id, before the zone's own factor; null
/// where it does not mat by length.
[[nodiscard]] inline const figure<length>* matting_prone_at(const coat& c, std::string_view zone) {
    if (feathered_at(c, zone)) {
        return &c.feathers->matting_prone;
    }
    return c.matting_prone ? &*c.matting_prone : nullptr;
}

/// The matting-prone length of the coat, or of its feathering; null if nothing of it mats by length.
[[nodiscard]] inline const figure<length>* matting_prone_of(const coat& c) {
    if (c.matting_prone) {
        return &*c.matting_prone;
    }
    return c.feathers ? &c.feathers->matting_prone : nullptr;
}

/// Whether any of the coat mats as it gets long.
[[nodiscard]] inline bool mats_by_length(const coat& c) {
    return matting_prone_of(c) != nullptr;
}

}  // namespace pelage
