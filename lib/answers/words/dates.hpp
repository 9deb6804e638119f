// Private to lib: when a dog must be back, in words; every chance is the model's own on the day named.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// A chance as it is: the one asked for where it is that within a point, "97 in 100" where it isn't.
[[nodiscard]] std::string true_odds(chance asked, chance is);

/// "Friday, 15 January 2027".
[[nodiscard]] std::string with_weekday(const date& d);
/// "Fri".
[[nodiscard]] std::string weekday_in_short(const date& d);
/// "9 Dec".
[[nodiscard]] std::string day_and_month(const date& d);

/// The day somebody is to come by: "14 January 2027 (day 33)"; where the salon has days off "Friday, 15
/// January 2027 (day 34)", the last open day at or before it.
[[nodiscard]] std::string come_by(const days& d, const print_options& o);
/// The same as on a card: "Wed 23 Dec 2026".
[[nodiscard]] std::string day_in_short(const days& d, const print_options& o);
/// The same for an owner, without the day's number.
[[nodiscard]] std::string come_by_date(const days& d, const print_options& o);
/// Its number, counted from today.
[[nodiscard]] days come_by_day(const days& d, const print_options& o);
/// The day told to the owner for the next visit, where it lies after today; nothing without one.
[[nodiscard]] std::optional<date> promised_day(const plan_request& r, const print_options& o);
/// Whether that day lies after the one to come by.
[[nodiscard]] bool is_too_late(const date& promised, const return_date& b, const print_options& o);
/// Whether that is another day.
[[nodiscard]] bool moved_to_open(const days& d, const print_options& o);

/// The places that only brushing holds, by name.
[[nodiscard]] std::vector<std::string> held_names(const return_date& b, const groom& g,
                                                  const plan_request& r);

/// When the dog must be back, what protects it until then and what will do at the visit, in two or three
/// sentences. `held` as held_names.
[[nodiscard]] std::string when_in_words(const return_date& b, const std::vector<std::string>& held,
                                        const plan_request& r, const print_options& o);
[[nodiscard]] std::string when_in_words(const return_date& b, const groom& g, const plan_request& r,
                                        const print_options& o);

/// The same in two short sentences, for a card.
[[nodiscard]] std::string when_in_brief(const return_date& b, const groom& g, const plan_request& r,
                                        const print_options& o);

/// Beside a visit that is no full groom: when the last full groom said it is due; that none is on record.
[[nodiscard]] std::string full_groom_in_brief(const std::optional<return_date>& b,
                                              const plan_request& r, const print_options& o);

/// The same for an owner: what to come for, and why then; a sentence each.
[[nodiscard]] std::vector<std::string> owner_dates(const return_date& b,
                                                   const std::vector<std::string>& held,
                                                   const std::vector<std::string>& first,
                                                   const plan_request& r, const print_options& o);

}  // namespace pelage::io
