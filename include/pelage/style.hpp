// A style sheet: what every zone of the dog should be left at, and how.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/coat.hpp>
#include <pelage/date.hpp>
#include <pelage/evidence.hpp>
#include <pelage/setup.hpp>
#include <pelage/units.hpp>

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
    std::optional<length> target{};      ///< finished length wished (mm, > 0)
    std::optional<std::string> blade{};  ///< or a blade by id
    std::optional<length> tolerance{};   ///< (mm, > 0)
    std::optional<lay_choice> way{};
    std::optional<finish> how{};
    std::optional<side_of_target> between{};
    std::string note{};
};

/// A rule of the sheet: whom it is for, as written ("body", "left ear", "all"), and what.
struct sheet_rule {
    std::string whom;
    instruction what;
};

/// How far a standard lets a zone or group go; both ends included.
struct limit {
    std::string whom;
    std::optional<length> low;   ///< not shorter than (mm)
    std::optional<length> high;  ///< not longer than (mm)
    evidence why;
};

/// The style sheet.
struct style {
    std::string id;
    std::string title;
    int version = 1;
    std::optional<date> dated;
    std::string approved_by;
    std::string text;                ///< what it is, in a sentence or two
    std::vector<coat_class> coats;   ///< coats it is for; empty: any
    std::vector<std::string> mixes;  ///< breeds and mixes it is for
    std::vector<sheet_rule> rules;   ///< in file order
    std::vector<limit> limits;       ///< what a published standard states
    std::string feet;                ///< round, clean, natural
    std::string face;                ///< clean, round, bearded, natural
    std::string ears;
    std::string tail;
    std::string topknot;
    bool show = false;                 ///< show finish: shorter blades on clean face and feet
    bool clip_jacket = false;          ///< the sheet itself means to clip a double-coated jacket
    std::optional<length> adjustable;  ///< `--length` replaces this body length where given
    std::string upkeep;                ///< brushing it assumes, as a person says it
    std::optional<days> longest_interval;
    std::vector<std::string> consent;
    std::string front_desk;  ///< one sentence for the front desk
    evidence why;
};

}  // namespace pelage
