// From the words of `log`'s options to an entry, and the talk that asks for what differed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/trade/log_entry.hpp>

#include "asker.hpp"
#include "log_check.hpp"
#include "log_options.hpp"
#include "resolve_arguments.hpp"

namespace pelage::cli {

/// Mats as they were told: "none", "ears, left armpit pelt"; nothing, and a fault of `option`, if a place
/// isn't one or could be several.
[[nodiscard]] std::optional<std::vector<logged_mat>> mats_in(const std::string& option,
                                                             const std::vector<std::string>& texts,
                                                             const workplace& w, faults& f);
[[nodiscard]] std::vector<service_kind> services_in(const std::string& option,
                                                    const std::vector<std::string>& texts,
                                                    const reference_data& c, faults& f);
[[nodiscard]] std::vector<logged_length> lengths_in(const std::string& option,
                                                    const std::vector<std::string>& texts,
                                                    const workplace& w, faults& f);
[[nodiscard]] std::vector<logged_tool> tools_in(const std::string& option,
                                                const std::vector<std::string>& texts,
                                                const workplace& w, faults& f);
[[nodiscard]] std::optional<work> minutes_in(const std::string& option, const std::string& text,
                                             faults& f);
[[nodiscard]] std::string price_in(const std::string& option, const std::string& text, faults& f);
/// A day after `visit`.
[[nodiscard]] std::optional<date> next_in(const std::string& option, const std::string& text,
                                          const date& visit, faults& f);

/// Lays what options say over an entry that went as planned: everything but day, services and lengths left,
/// which the plan had to know.
void apply_told(const log_options& o, const workplace& w, log_entry& e, faults& f);

/// `checks` of a visit that options tell of: tools and lengths that can't be are faults.
void check_told(const log_options& o, const workplace& w, const log_entry& e,
                const entry_checks& checks, faults& f);

/// Asks for what differed, and for mats and minutes unless options said them. Enter, Enter, Enter: it went
/// as planned, with the mats of the dog's file (`found`) or none, nobody looked at the clock. Throws as the asker does.
/// What `checks` refuse is asked again, and taken if it is said once more.
void ask_what_differed(asker& a, const workplace& w, const entry_checks& checks,
                       const std::string& name, bool planned, const std::vector<logged_mat>& found,
                       log_entry& e);

}  // namespace pelage::cli
