// Answers: documents, which are text, HTML or CSV (document.hpp), and JSON for programs; what is no
// document yet is text (UTF-8, 80 columns, no colour).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/base/date.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/forecast/calendar.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/forecast/growth_course.hpp>
#include <pelage/forecast/longest_coat.hpp>
#include <pelage/forecast/mixed_coat.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/planner/alternatives.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// How to print.
struct print_options {
    length_unit units = length_unit::mm;  ///< in which lengths are told
    std::size_t width = 80;               ///< columns
    bool explain = false;                 ///< with rules, bases, proof and refusals
    bool zones = false;           ///< a plan with its zone table, a forecast with brushing by zone
    bool trainee = false;         ///< a plan with the why of each line
    std::optional<date> today{};  ///< the day of the groom; without it days are counted, not dated
    days_off closed{};            ///< no visit then: a date is the last open day before
};

/// A looked-up blade, comb or length.
[[nodiscard]] document document_of(const lookup_answer& a, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const lookup_answer& a, const lookup_request& r);

/// A looked-up breed or mix.
[[nodiscard]] document document_of(const expected_coat& e, const reference_data& c,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const expected_coat& e, const reference_data& c);

/// A plan with when the dog must be back and what stands beside it; `unseen` if its coat was taken
/// from its mix.
[[nodiscard]] document document_of(const groom& g, const std::optional<return_date>& when,
                                   const plan_request& r, const print_options& o,
                                   const beside& b = {}, const mixed_coat* unseen = nullptr);
[[nodiscard]] std::string json_of(const groom& g, const std::optional<return_date>& when,
                                  const plan_request& r, const print_options& o,
                                  const beside& b = {}, const mixed_coat* unseen = nullptr);

/// How a plan is told: to work from at arm's length, or with all that belongs to it.
enum class plan_told { card, whole };

/// The same plan as a card to work from: alerts, minutes, a line a tool, what is special to this dog, the
/// usual cautions in one line, back by. Steps bear the numbers they have in the plan. Cautions that it
/// only names stand whole there.
[[nodiscard]] document card_of(const groom& g, const std::optional<return_date>& when,
                               const plan_request& r, const print_options& o, const beside& b = {},
                               const mixed_coat* unseen = nullptr);

/// A forecast; likewise. With its course text has a small plot of the first part to mat.
[[nodiscard]] document document_of(const forecast& f, const plan_request& r, const print_options& o,
                                   const mixed_coat* unseen = nullptr,
                                   const growth_course* course = nullptr);
[[nodiscard]] std::string json_of(const forecast& f, const plan_request& r, const print_options& o,
                                  const mixed_coat* unseen = nullptr);

/// A calendar. As iCalendar (RFC 5545) every visit is a whole day, stamped with today, its UID made of
/// the dog's id and the date.
[[nodiscard]] document document_of(const calendar& c, const calendar_request& r);
[[nodiscard]] std::string json_of(const calendar& c, const calendar_request& r);
[[nodiscard]] std::string ics_of(const calendar& c, const calendar_request& r);

/// The longest coat for a wait, with its plan where it holds; `r` is the request as it was asked.
[[nodiscard]] document document_of(const longest_coat_answer& a, const plan_request& r,
                                   const print_options& o, plan_told as = plan_told::whole);
[[nodiscard]] std::string json_of(const longest_coat_answer& a, const plan_request& r,
                                  const print_options& o);

/// Growth rates proposed from a salon's measured dogs: lines that a salon.toml takes as they are, with what
/// was too little as comments. `from` names the salon.
[[nodiscard]] document proposal(const std::vector<population_rate>& lessons, const growth_rules& g,
                                const std::string& from, const print_options& o);
[[nodiscard]] std::string proposal_json(const std::vector<population_rate>& lessons,
                                        const growth_rules& g);

/// Every figure whose key contains `key` (all if empty) with its basis, and counts by basis. Without a
/// section if nothing matches; its JSON is empty then.
[[nodiscard]] document sources(const reference_data& c, const std::string& key);
[[nodiscard]] std::string sources_json(const reference_data& c, const std::string& key);

/// "file:line:column: error: text" for each fault, at most `most`, then how many more; a newline
/// after each.
[[nodiscard]] std::string text_of(const diagnostics& all, std::size_t most = 20);

}  // namespace pelage::io
