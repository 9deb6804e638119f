// What was done at one visit, as the record beside a dog's file keeps it: values, no decisions.
//
// A record is a list of entries, each with a number of its own from 1 up, in the order in which they were
// written. Nothing in it is ever changed: an entry that `corrects` another stands in its place, and one
// that `takes_back` another says that it was never so (model/dog_record.hpp has the rules). Lengths, minutes
// and what was found are as the person who groomed says them.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/finding.hpp>
#include <pelage/trade/service.hpp>

namespace pelage {

/// What kind of visit it counts as for hair and mats, the first of "full", "tidy", "bath" that any of its
/// services is; empty where none touches the coat.
[[nodiscard]] std::string_view visit_kind_of(const std::vector<service_kind>& all);
/// All that it counts as: a full groom alone, otherwise a tidy, a bath, or both.
[[nodiscard]] std::vector<std::string_view> visit_kinds_of(const std::vector<service_kind>& all);

/// A length in a place, and whether it was measured or is what the plan let expect.
struct logged_length {
    std::string whom;       ///< a word for places
    length is{};            ///< from 0.1 mm
    bool measured = false;  ///< by who groomed; otherwise as planned
    friend bool operator==(const logged_length&, const logged_length&) = default;
};

/// Mats found in a place.
struct logged_mat {
    std::string whom;                  ///< the word for the place
    std::optional<mat_grade> grade{};  ///< none: not said
    friend bool operator==(const logged_mat&, const logged_mat&) = default;
};

/// What the skin showed in a place.
struct logged_skin {
    std::string whom;                          ///< the word for the place
    skin_state state = skin_state::irritated;  ///< what was found
    std::optional<length> size{};              ///< of a lump
    bool known = false;                        ///< of a lump: a veterinarian has seen it
    friend bool operator==(const logged_skin&, const logged_skin&) = default;
};

/// What was held, and where.
struct logged_tool {
    std::string tool;                 ///< "comb 13 mm over blade 30, with the lay"
    std::vector<std::string> places;  ///< words for them
    friend bool operator==(const logged_tool&, const logged_tool&) = default;
};

/// One entry.
struct log_entry {
    unsigned number = 0;                 ///< in its record, from 1
    unsigned corrects = 0;               ///< the entry in whose place it stands; 0: none
    bool takes_back = false;             ///< it only takes that one back: all below is empty
    date on{};                           ///< the day of the visit
    std::vector<service_kind> services;  ///< what was done
    std::string who;                     ///< who groomed
    std::vector<logged_tool> used;       ///< where something was held
    std::vector<logged_length> found;    ///< before the cut, combed out and dry
    std::vector<logged_length> left;     ///< after it
    std::optional<std::vector<logged_mat>>
        mats{};                     ///< empty: combed through, none; nothing: not said
    std::vector<logged_skin> skin;  ///< what was found
    std::string behaviour;          ///< in words; may be empty
    std::optional<work> took{};     ///< minutes really taken
    std::string price;              ///< an amount, with its currency if said: "60", "60 EUR"
    std::string remarks;            ///< for the next one; may be empty
    std::optional<date> next{};     ///< the day promised for the next visit
    friend bool operator==(const log_entry&, const log_entry&) = default;
};

}  // namespace pelage
