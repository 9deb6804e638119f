// The matting-prone length: beyond it this coat, in this zone, brushed as it is, is likely to mat.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>

#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>
#include <pelage/model/growth.hpp>
#include <pelage/trade/brushing.hpp>
#include <pelage/trade/coat.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// The figures of matting and of the visits that prevent it (reference/matting.toml).
struct matting_rules {
    std::array<figure<double>, 5> brush;  ///< factor by counted habit
    std::array<figure<days>, 5> clock;    ///< how long brushing alone holds a zone that is over it
    figure<double> coat_change;           ///< factor while the adult coat comes in
    figure<double> threshold_log_sd;      ///< spread of the length, shared by the whole dog
    figure<length> daily_only_above;      ///< above this only with daily brushing
    figure<days> tidy_face_feet;          ///< after which they are tidied
    figure<days> tidy_sanitary;           ///< likewise
    figure<days> visits_apart;            ///< visits of a calendar lie at least so far apart
    figure<double> chance;                ///< asked for unless a person says otherwise
    figure<days> strip_again;     ///< a hand-stripped jacket is stripped again, rolled in between
    figure<double> mishap_share;  ///< of visits whose mats, or none, say nothing of the length
    // a salon's own, in place of the reference's
    std::array<std::optional<figure<length>>, coat_names.size()> own_prone{};  ///< by coat class
    std::map<std::string, figure<double>> own_zones{};  ///< factor of a zone, by its id
};

/// A value that the dog's factor on all its matting-prone lengths may have, with its chance, and the rate
/// of growth that goes with it, the spread from visit to visit in it.
struct factor_case {
    double factor = 1.0;  ///< > 0
    chance weight = 0.0;  ///< those of a dog sum to 1
    rate_law rate{};      ///< that goes with it
};

/// The matting-prone length taken of a coat, before zones and brushing: the salon's own, or else the
/// reference's; of its feathering where only that mats. Null if nothing of it mats by length.
[[nodiscard]] inline const figure<length>* prone_of(const coat& c, const matting_rules& r) {
    const auto& own = r.own_prone[static_cast<std::size_t>(c.id)];
    return matting_prone_of(c) == nullptr ? nullptr : own ? &*own : matting_prone_of(c);
}

/// The factor of a zone on it: the salon's own, or else the reference's.
[[nodiscard]] inline const figure<double>& zone_factor(const zone& z, const matting_rules& r) {
    const auto own = r.own_zones.find(z.id);
    return own == r.own_zones.end() ? z.matting : own->second;
}

/// Factor of a habit on the matting-prone length; two or three times a week to the skin is 1.
[[nodiscard]] inline double brush_factor(const brushing& b, const matting_rules& r) {
    return r.brush[static_cast<std::size_t>(counted(b))].best;
}

/// How long brushing alone holds a zone that is at or over its matting-prone length, from the visit
/// that combed it out to the skin.
[[nodiscard]] inline days brush_out_clock(const brushing& b, const matting_rules& r) {
    return r.clock[static_cast<std::size_t>(counted(b))].best;
}

/// The matting-prone length (mm) of a coat in a zone under a habit; nothing where the coat does
/// not mat by length. Above 51 mm only daily brushing holds a coat, so less brushing is capped there.
[[nodiscard]] inline std::optional<length> matting_prone_length(const coat& c, const zone& z,
                                                                const brushing& b, bool coat_change,
                                                                const matting_rules& r) {
    if (matting_prone_at(c, z.id) == nullptr) {
        return std::nullopt;
    }
    const length m = prone_of(c, r)->best * zone_factor(z, r).best * brush_factor(b, r) *
                     (coat_change ? r.coat_change.best : 1.0);
    return counted(b) == habit::daily ? m : shorter(m, r.daily_only_above.best);
}

}  // namespace pelage
