// One dog as it stands on the table.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/brushing.hpp>
#include <pelage/coat.hpp>
#include <pelage/date.hpp>
#include <pelage/days_off.hpp>
#include <pelage/finding.hpp>
#include <pelage/style.hpp>
#include <pelage/units.hpp>

namespace pelage {

/// Size classes as a salon prices them.
enum class dog_size { toy, small, medium, large, giant };
inline constexpr std::array<std::string_view, 5> size_names{"toy", "small", "medium", "large",
                                                            "giant"};
[[nodiscard]] constexpr std::string_view name(dog_size s) {
    return size_names[static_cast<std::size_t>(s)];
}

/// Length of today's hair in a zone, a group or "all".
struct hair_now {
    std::string whom;
    length is{};
};

/// A length measured on a day: only those combed out and dry count for learning.
struct measurement {
    date on{};
    std::string whom;
    length is{};
    bool combed_dry = false;
};

/// A visit that was.
struct visit {
    date on{};
    std::string kind;  ///< "full", "tidy", "bath"
};

/// The dog.
struct dog {
    std::string id;
    std::string name;
    bool invented = false;  ///< demo data
    dog_size size = dog_size::medium;
    std::optional<coat_class> coat;
    std::string mix;                     ///< breed or mix, as said
    std::string style;                   ///< id of its sheet
    std::optional<length> body_length;   ///< in place of the sheet's adjustable length
    std::vector<sheet_rule> departures;  ///< from the sheet, later ones win
    std::vector<hair_now> now;
    brushing brushed;
    bool brushing_said = true;  ///< false: nobody said, taken as none
    bool coat_change = false;   ///< adult coat coming in, or cottony undercoat
    bool thin_or_old = false;   ///< thin-skinned, old, wrinkled or dehydrated
    bool pink_skin = false;     ///< white or pink skin that meets the sun
    std::vector<mat_finding> mats;
    std::vector<skin_finding> skin;
    std::vector<std::string> consents;  ///< what the owner has agreed to, by consent id
    std::vector<measurement> measured;
    std::vector<visit> visits;
    days_off cannot;                ///< days on which the owner can't come
    std::vector<fresh_day> events;  ///< days for which it should be freshly groomed
    std::string note;
};

}  // namespace pelage
