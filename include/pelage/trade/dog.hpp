// One dog as it stands on the table.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/ailment.hpp>
#include <pelage/trade/alert.hpp>
#include <pelage/trade/brushing.hpp>
#include <pelage/trade/coat.hpp>
#include <pelage/trade/days_off.hpp>
#include <pelage/trade/finding.hpp>
#include <pelage/trade/style.hpp>

namespace pelage {

/// Size classes as a salon prices them.
enum class dog_size { toy, small, medium, large, giant };
/// What an owner can agree to, as files and options name it.
inline constexpr std::array<std::string_view, 6> consent_names{
    "clip-down", "clip-jacket", "frail-dog", "other-length", "show-blades", "sun-short"};
inline constexpr std::array<std::string_view, 5> size_names{"toy", "small", "medium", "large",
                                                            "giant"};
[[nodiscard]] constexpr std::string_view name(dog_size s) {
    return size_names[static_cast<std::size_t>(s)];
}

/// How old a dog is, as far as a groom cares; the groomer says what it is.
enum class life_stage { young, adult, old };
inline constexpr std::array<std::string_view, 3> life_stage_names{"young", "adult", "old"};
[[nodiscard]] constexpr std::string_view name(life_stage s) {
    return life_stage_names[static_cast<std::size_t>(s)];
}

/// How long it is out in the sun on a day: hardly at all, walks, most of it.
enum class outdoors { little, some, much };
inline constexpr std::array<std::string_view, 3> outdoors_names{"little", "some", "much"};
[[nodiscard]] constexpr std::string_view name(outdoors o) {
    return outdoors_names[static_cast<std::size_t>(o)];
}

/// Length of today's hair in a zone, a group or "all".
struct hair_now {
    std::string whom;  ///< the word for the place
    length is{};       ///< today's hair there
};

/// A length measured on a day: only those combed out and dry count for learning.
struct measurement {
    date on{};                ///< the day
    std::string whom;         ///< the word for the place
    length is{};              ///< what was measured
    bool combed_dry = false;  ///< else as it lies, which doesn't count
};

/// A visit that was.
struct visit {
    date on{};                     ///< the day
    std::string kind;              ///< "full", "tidy", "bath"
    std::vector<hair_now> left{};  ///< what the cut left, where it is known; wider words first
    /// Words for the places where mats were found that day, and nowhere else; empty: combed through and
    /// none found; nothing: nobody said.
    std::optional<std::vector<std::string>> mats{};
    std::string who{};    ///< who groomed, where the record says
    bool logged = false;  ///< of the record beside the dog's file, not of that file
};

/// Today's hair in a place as the record lets expect it: what was left or seen there, grown since.
struct recorded_hair {
    place at;       ///< which place
    length is{};    ///< at the dog's usual rate
    length low{};   ///< shorter in 1 of 10
    length high{};  ///< longer in 1 of 10
    date since{};   ///< the day it was left or seen
};

/// A mat of the dog's file, and a later visit that dealt with it or may have.
struct mat_since {
    mat_finding what;  ///< the mat
    date on{};         ///< the day of that visit
};

/// The dog.
struct dog {
    std::string id;                        ///< as files name it
    std::string name;                      ///< as it is called
    std::string file{};                    ///< where it was read from; empty: nowhere
    bool invented = false;                 ///< demo data
    dog_size size = dog_size::medium;      ///< of the whole dog
    std::optional<coat_class> coat;        ///< none: from its mix
    std::string mix;                       ///< breed or mix, as said
    std::string style;                     ///< id of its sheet
    std::optional<length> body_length;     ///< in place of the sheet's adjustable length
    std::vector<sheet_rule> departures;    ///< from the sheet, later ones win
    std::vector<hair_now> now;             ///< today's hair, as it was told
    std::vector<measurement> told;         ///< hair told of a day that may be past
    std::vector<recorded_hair> by_record;  ///< what of `now` is reckoned (model/hair_by_record.hpp)
    bool now_gave_way = false;             ///< its file tells today's hair, but the record is taken
    brushing brushed;                      ///< at home
    bool brushing_said = true;             ///< false: nobody said (assume_upkeep)
    bool upkeep_assumed = false;           ///< nobody said, and `brushed` is what the sheet assumes
    bool coat_change = false;              ///< adult coat coming in, or cottony undercoat
    bool thin_or_old = false;              ///< thin-skinned, old, wrinkled or dehydrated
    bool pink_skin = false;                ///< white or pink skin that meets the sun
    bool shedding = false;                 ///< a double coat letting go of its undercoat
    std::optional<life_stage> age;         ///< none: not said, taken as grown up
    std::optional<outdoors> out;           ///< time in the sun; none: not said, taken as some
    std::string health;                    ///< what ails it, as told; empty: nothing said
    std::optional<health_told> heard{};    ///< of health and note; none: nobody read them
    std::vector<std::string> sensitive;    ///< what it hates to have touched: zones, groups, sides
    std::vector<stop_sign> signs;          ///< of the stop list
    std::vector<alert> alerts;             ///< told before anything else
    std::optional<date> combed_on{};       ///< the day of that; none: nobody said
    bool comb_checked = false;       ///< a comb went through to the skin wherever no mat is named
    std::vector<mat_finding> mats;   ///< found on it
    std::vector<mat_since> dealt;    ///< mats no longer among them (model/mats_dealt_with.hpp)
    std::vector<mat_since> undated;  ///< and those of which nobody knows: they stay among them
    std::vector<skin_finding> skin;  ///< found on it
    std::vector<std::string> consents;  ///< what the owner has agreed to, by consent id
    std::vector<measurement> measured;  ///< of its hair
    std::vector<visit> visits;          ///< as they were
    std::optional<date> promised;   ///< the day told to its owner for the next visit, by the record
    std::string groomer;            ///< who alone grooms it; empty: anybody
    days_off cannot;                ///< days on which the owner can't come
    std::vector<fresh_day> events;  ///< days for which it should be freshly groomed
    std::string note;               ///< for the groomer; may be empty
};

/// Skin that tears easily: the rules for old, thin, wrinkled or dehydrated dogs hold.
[[nodiscard]] inline bool tender(const dog& d) {
    return d.thin_or_old || d.age == life_stage::old;
}

/// What was told of its health is of that kind.
[[nodiscard]] inline bool told_of(const dog& d, ailment_kind k) {
    return d.heard && d.heard->has(k);
}

/// Something was told of its health for which no advice is held.
[[nodiscard]] inline bool told_more(const dog& d) {
    return !d.health.empty() && (!d.heard || d.heard->more);
}

/// Something ails it: told of its health, or it faints or has seizures.
[[nodiscard]] inline bool ails(const dog& d) {
    const bool told = told_more(d) || (d.heard && d.heard->unwell);
    return told || std::any_of(d.alerts.begin(), d.alerts.end(), [](const alert& a) {
               return a.what == alert_kind::faints || a.what == alert_kind::seizures;
           });
}

/// It is pregnant or nursing.
[[nodiscard]] inline bool with_young(const dog& d) {
    return told_of(d, ailment_kind::young);
}

/// Pregnant or nursing, and otherwise well.
[[nodiscard]] inline bool only_with_young(const dog& d) {
    return with_young(d) && !tender(d) && !ails(d);
}

/// It bites or wears a muzzle.
[[nodiscard]] inline bool may_bite(const dog& d) {
    return std::any_of(d.alerts.begin(), d.alerts.end(), [](const alert& a) {
        return a.what == alert_kind::bites || a.what == alert_kind::muzzle;
    });
}

/// A dog that bears less: old, thin-skinned, ill, young, pregnant or nursing. It gets less time for combing
/// out mats.
[[nodiscard]] inline bool bears_less(const dog& d) {
    return tender(d) || d.age == life_stage::young || ails(d) || with_young(d);
}

/// A dog whose front is never lifted: old, thin-skinned, ill, pregnant or nursing.
[[nodiscard]] inline bool never_lifted(const dog& d) {
    return tender(d) || ails(d) || with_young(d);
}

}  // namespace pelage
