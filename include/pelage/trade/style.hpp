// A style sheet: what every zone of the dog should be left at, and how.
#pragma once

#include <array>
#include <chrono>
#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/coat.hpp>
#include <pelage/trade/setup.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// On which side of the target a miss is borne.
enum class side_of_target { longer, shorter, nearest };
inline constexpr std::array<std::string_view, 3> between_names{"longer", "shorter", "nearest"};
[[nodiscard]] constexpr std::string_view name(side_of_target b) {
    return between_names[static_cast<std::size_t>(b)];
}

/// Which directions a sheet allows. Only `either` leaves a choice.
enum class lay_choice { with_lay, against_lay, either };
inline constexpr std::array<std::string_view, 3> lay_choice_names{"with", "against", "either"};
[[nodiscard]] constexpr std::string_view name(lay_choice c) {
    return lay_choice_names[static_cast<std::size_t>(c)];
}

/// What the sheet says of one zone or group; what it leaves out falls to the wider rule.
struct instruction {
    std::optional<length> target{};           ///< finished length wished (mm, > 0)
    std::optional<std::string> blade{};       ///< or a blade by id
    std::optional<length> tolerance{};        ///< (mm, > 0)
    std::optional<lay_choice> way{};          ///< in which direction; none: not said
    std::optional<finish> how{};              ///< how it is finished; none: not said
    std::optional<side_of_target> between{};  ///< which side to miss on; none: not said
    std::string note{};                       ///< a word for the table
    std::string why{};                        ///< the reason the zone is as it is
    std::optional<evidence> known{};  ///< how its length is known; none: as the sheet's lengths are
    /// The tolerance was given beside a length or blade and goes with it; set by lay_over.
    bool tolerance_goes_with_length = false;
};

/// Where something was written; line and column 0 where it isn't known.
struct written_at {
    std::string file{};   ///< its path
    unsigned line = 0;    ///< from 1
    unsigned column = 0;  ///< from 1
};

/// A rule of the sheet: whom it is for, as written ("body", "left ear", "all"), and what.
struct sheet_rule {
    std::string whom;    ///< the word for the place
    instruction what;    ///< what is done there
    std::string from{};  ///< id of the sheet it was written in, where that is a parent
    written_at at{};     ///< where it is written
};

/// How far a standard lets a zone or group go; both ends included.
struct limit {
    std::string whom;            ///< the word for the place
    std::optional<length> low;   ///< not shorter than (mm)
    std::optional<length> high;  ///< not longer than (mm)
    std::string not_below{};  ///< nowhere shorter than this zone or group is; empty: no such clause
    evidence why{};           ///< how it is known
    std::string from{};       ///< id of the sheet it was written in, where that is a parent
    written_at at{};          ///< where it is written
};

/// How two neighbours meet on this sheet, in place of how they meet as a rule.
struct sheet_seam {
    std::string a;                      ///< a zone or group
    std::string b;                      ///< and the word for the other
    seam_kind kind = seam_kind::blend;  ///< how they meet
    std::string why{};                  ///< in words; may be empty
};

/// A day of any year.
struct day_of_year {
    unsigned month = 1;  ///< 1 to 12
    unsigned day = 1;    ///< 1 to 31
    friend auto operator<=>(const day_of_year&, const day_of_year&) = default;
};

/// Days of the year from one to another, both included; over the new year where `from` is later.
struct span_of_year {
    day_of_year from;  ///< the first day
    day_of_year to;    ///< the last, in it
};

/// What is otherwise in a part of the year.
struct season {
    std::string name;                      ///< "summer"
    std::vector<span_of_year> when;        ///< none: only by name
    double scale = 1.0;                    ///< on every length of the sheet, over 0
    std::vector<sheet_rule> rules;         ///< laid over the sheet's, as they are written
    std::optional<days> longest_interval;  ///< none: the sheet's
    std::string upkeep;                    ///< empty: the sheet's
    std::string why;                       ///< in words; may be empty
    written_at at{};                       ///< where it is written
};

/// What the salon itself says that a dog takes, by size.
struct sheet_minutes {
    std::array<std::optional<work>, 5> by_size{};  ///< in the order of dog_size
    evidence why{};                                ///< how they are known
};

/// The style sheet. What it takes over from a parent is in it already.
struct style {
    std::string id;                    ///< as files name it
    std::string title;                 ///< as people call it
    std::string extends{};             ///< id of its parent
    std::vector<std::string> line{};   ///< its parent, that one's parent, and so on
    std::string in_season{};           ///< the season laid on it; empty: none
    int version = 1;                   ///< from 1
    std::optional<date> dated;         ///< none: not said
    std::string approved_by;           ///< may be empty
    std::string text;                  ///< what it is, in a sentence or two
    std::vector<coat_class> coats;     ///< coats it is for; empty: any
    std::vector<std::string> mixes;    ///< breeds and mixes it is for
    std::vector<sheet_rule> rules;     ///< in file order
    std::vector<limit> limits;         ///< what a published standard states
    std::vector<sheet_seam> seams;     ///< later ones win
    std::vector<season> seasons;       ///< no two on one day
    sheet_minutes takes;               ///< by its own word
    std::string feet;                  ///< round, clean, natural
    std::string face;                  ///< clean, round, bearded, natural
    std::string ears;                  ///< in words; may be empty
    std::string tail;                  ///< in words; may be empty
    std::string topknot;               ///< in words; may be empty
    bool show = false;                 ///< show finish: shorter blades on clean face and feet
    bool clip_jacket = false;          ///< the sheet itself means to clip a double-coated jacket
    std::optional<length> adjustable;  ///< `--length` replaces this body length where given
    std::string upkeep;                ///< brushing it assumes, as a person says it
    std::optional<days> longest_interval;  ///< none: not said
    std::vector<std::string> consent;      ///< ids of what the owner signs
    std::string front_desk;                ///< one sentence for the front desk
    evidence why;                          ///< how its lengths are known
    written_at at{};                       ///< its id
    std::vector<written_at> mixes_at{};    ///< in the order of mixes
};

/// Whether the sheet keeps cords, which are parted by hand and never brushed.
[[nodiscard]] inline bool corded(const style& s) {
    return s.ears == "corded" || s.tail == "corded" || s.topknot == "corded";
}

/// Every length of a sheet at a share of what it was, to 0.01 mm, with the tolerances beside them.
/// Blades wished by name, limits and seasons' own lengths stay. `share` over 0.
inline void scale_lengths(style& s, double share) {
    for (sheet_rule& r : s.rules) {
        if (r.what.target) {
            r.what.target = rounded(*r.what.target * share);
            if (r.what.tolerance) {
                r.what.tolerance = rounded(*r.what.tolerance * share);
            }
        }
    }
    if (s.adjustable) {
        s.adjustable = rounded(*s.adjustable * share);
    }
}

/// Whether a day lies in the span.
[[nodiscard]] inline bool holds(const span_of_year& s, const day_of_year& d) {
    return s.from <= s.to ? s.from <= d && d <= s.to : s.from <= d || d <= s.to;
}

/// The season of a day; null if the sheet has none for it.
[[nodiscard]] inline const season* season_on(const style& s, const date& d) {
    const std::chrono::year_month_day ymd{d};
    const day_of_year on{static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day())};
    for (const season& one : s.seasons) {
        for (const span_of_year& when : one.when) {
            if (holds(when, on)) {
                return &one;
            }
        }
    }
    return nullptr;
}

/// The season of that name, or null.
[[nodiscard]] inline const season* season_called(const style& s, std::string_view name) {
    for (const season& one : s.seasons) {
        if (one.name == name) {
            return &one;
        }
    }
    return nullptr;
}

/// The sheet as it is in a season of its own: its lengths scaled, then the season's rules laid on.
[[nodiscard]] inline style in_season(style s, const season& one) {
    if (one.scale != 1.0) {
        scale_lengths(s, one.scale);
    }
    s.rules.insert(s.rules.end(), one.rules.begin(), one.rules.end());
    s.longest_interval = one.longest_interval ? one.longest_interval : s.longest_interval;
    s.upkeep = one.upkeep.empty() ? s.upkeep : one.upkeep;
    s.in_season = one.name;
    s.title += ", " + one.name;
    return s;
}

/// The sheet as it is on a day.
[[nodiscard]] inline style on_day(const style& s, const std::optional<date>& d) {
    const season* one = d ? season_on(s, *d) : nullptr;
    return one == nullptr ? s : in_season(s, *one);
}

}  // namespace pelage
