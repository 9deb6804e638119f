// What a salon answers. Each answer shares, unchanged for good, all that it was made of: it may be kept
// after the salon is gone, copied, and asked from many threads. Copies are cheap. Everything is handed
// over by value.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <pelage/front/values.hpp>
#include <pelage/kit/matter.hpp>
#include <pelage/model/visit_kind.hpp>

namespace pelage {

struct dog;

namespace detail {
struct plan_state;
struct lookup_state;
struct ladder_state;
struct calendar_state;
struct kit_state;
}  // namespace detail

/// A dog, as its file says it.
class dog_card {
  public:
    /// A dog made by hand: the struct of <pelage/trade/dog.hpp>, copied.
    explicit dog_card(const pelage::dog& d);
    dog_card(const dog_card&) = default;  // no move: what is moved from stays whole
    dog_card& operator=(const dog_card&) = default;
    ~dog_card() = default;
    [[nodiscard]] std::string id() const;                  ///< as files name it
    [[nodiscard]] std::string name() const;                ///< as it is called
    [[nodiscard]] std::optional<coat_class> coat() const;  ///< none: it is taken from its mix
    [[nodiscard]] std::string sheet() const;               ///< id of its style sheet; may be empty
    [[nodiscard]] bool invented() const;                   ///< demo data
    /// All of it, to be changed and put on a card of its own.
    [[nodiscard]] pelage::dog all() const;

  private:
    std::shared_ptr<const pelage::dog> dog_;
};

/// When the dog must be back.
class return_day {
  public:
    /// Made by a plan.
    explicit return_day(std::shared_ptr<const detail::plan_state> of) : of_(std::move(of)) {}
    return_day(const return_day&) = default;  // no move: what is moved from stays whole
    return_day& operator=(const return_day&) = default;
    ~return_day() = default;
    [[nodiscard]] days in() const;  ///< of the next visit: last whole day after the groom
    [[nodiscard]] std::optional<date> on() const;  ///< none: the day of the groom isn't known
    [[nodiscard]] visit_kind reason() const;       ///< what ends the wait
    [[nodiscard]] days even_odds() const;          ///< last whole day at 1 in 2
    [[nodiscard]] days full_groom() const;         ///< last whole day for it: the usual interval
    /// That all is under its matting-prone length on the last day; none where only brushing holds it.
    [[nodiscard]] std::optional<double> fine() const;
    [[nodiscard]] double chance() const;  ///< at which it is reckoned, over 0 and below 1

  private:
    friend std::string text(const return_day& d, length_unit u);
    std::shared_ptr<const detail::plan_state> of_;
};
/// When, and why then, in two or three sentences.
[[nodiscard]] std::string text(const return_day& d, length_unit u = length_unit::mm);

/// The plan of one groom.
class plan {
  public:
    /// Made by a salon.
    explicit plan(std::shared_ptr<const detail::plan_state> made) : made_(std::move(made)) {}
    plan(const plan&) = default;  // no move: what is moved from stays whole
    plan& operator=(const plan&) = default;
    ~plan() = default;

    /// There is work to do: no veterinarian and no owner is asked first.
    [[nodiscard]] bool goes_ahead() const;
    [[nodiscard]] bool needs_veterinarian() const;  ///< before anything is done
    [[nodiscard]] bool asks_owner() const;  ///< a clip of a double coat that nobody agreed to
    [[nodiscard]] std::vector<step> steps()
        const;  ///< in working order; empty if it doesn't go ahead
    [[nodiscard]] std::vector<combed_mat> combed_out() const;  ///< before the first step
    [[nodiscard]] work takes() const;                      ///< all of it, with picking up the tools
    [[nodiscard]] std::vector<std::string> stuck() const;  ///< places where nothing is allowed
    [[nodiscard]] std::vector<plan_caution> cautions() const;  ///< gravest first
    /// Throws error(refused) if the plan doesn't go ahead.
    [[nodiscard]] return_day return_date() const;
    [[nodiscard]] dog_card dog() const;      ///< as it was asked
    [[nodiscard]] sheet_card sheet() const;  ///< it was planned by

  private:
    friend std::string text(const plan& p, length_unit u);
    friend std::string text_in_full(const plan& p, length_unit u);
    friend std::string json(const plan& p);
    friend std::string html(const plan& p, length_unit u);
    std::shared_ptr<const detail::plan_state> made_;
};
/// The whole plan on 80 columns, as `pelage plan` prints it.
[[nodiscard]] std::string text(const plan& p, length_unit u = length_unit::mm);
/// The working plan: strokes, holds, cautions whole, other ways.
[[nodiscard]] std::string text_in_full(const plan& p, length_unit u = length_unit::mm);
[[nodiscard]] std::string json(const plan& p);
/// The page for the owner, which prints on one sheet of A4.
[[nodiscard]] std::string html(const plan& p, length_unit u = length_unit::mm);

/// What a blade, a comb or a length means.
class tool_lookup {
  public:
    /// Made by a salon.
    explicit tool_lookup(std::shared_ptr<const detail::lookup_state> made)
        : made_(std::move(made)) {}
    tool_lookup(const tool_lookup&) = default;
    tool_lookup& operator=(const tool_lookup&) = default;
    ~tool_lookup() = default;
    [[nodiscard]] bool never() const;                       ///< what is asked about isn't done
    [[nodiscard]] std::vector<coat_leaves> leaves() const;  ///< of a blade or comb: by coat
    [[nodiscard]] std::vector<near_tool> nearest() const;   ///< of a length: by coat, nearest first

  private:
    friend std::string text(const tool_lookup& l, length_unit u);
    friend std::string json(const tool_lookup& l);
    std::shared_ptr<const detail::lookup_state> made_;
};
[[nodiscard]] std::string text(const tool_lookup& l, length_unit u = length_unit::mm);
[[nodiscard]] std::string json(const tool_lookup& l);

/// Everything the kit leaves on one coat, shortest first.
class kit_ladder {
  public:
    /// Made by a salon.
    explicit kit_ladder(std::shared_ptr<const detail::ladder_state> made)
        : made_(std::move(made)) {}
    kit_ladder(const kit_ladder&) = default;
    kit_ladder& operator=(const kit_ladder&) = default;
    ~kit_ladder() = default;
    [[nodiscard]] std::vector<ladder_rung> rungs() const;  ///< shortest first

  private:
    friend std::string text(const kit_ladder& l, length_unit u);
    friend std::string json(const kit_ladder& l);
    friend std::string csv(const kit_ladder& l);
    std::shared_ptr<const detail::ladder_state> made_;
};
[[nodiscard]] std::string text(const kit_ladder& l, length_unit u = length_unit::mm);
[[nodiscard]] std::string json(const kit_ladder& l);
[[nodiscard]] std::string csv(const kit_ladder& l);  ///< RFC 4180, lengths in mm

/// The visits of some weeks.
class visit_calendar {
  public:
    /// Made by a salon.
    explicit visit_calendar(std::shared_ptr<const detail::calendar_state> made)
        : made_(std::move(made)) {}
    visit_calendar(const visit_calendar&) = default;
    visit_calendar& operator=(const visit_calendar&) = default;
    ~visit_calendar() = default;
    [[nodiscard]] bool possible() const;                  ///< there is one that keeps every clock
    [[nodiscard]] std::vector<visit_day> visits() const;  ///< in their order

  private:
    friend std::string text(const visit_calendar& c, length_unit u);
    friend std::string json(const visit_calendar& c);
    friend std::string ics(const visit_calendar& c);
    std::shared_ptr<const detail::calendar_state> made_;
};
[[nodiscard]] std::string text(const visit_calendar& c, length_unit u = length_unit::mm);
[[nodiscard]] std::string json(const visit_calendar& c);
[[nodiscard]] std::string ics(const visit_calendar& c);  ///< RFC 5545

/// What a check of the kit found.
class kit_report {
  public:
    /// Made by a salon.
    explicit kit_report(std::shared_ptr<const detail::kit_state> made) : made_(std::move(made)) {}
    kit_report(const kit_report&) = default;
    kit_report& operator=(const kit_report&) = default;
    ~kit_report() = default;
    [[nodiscard]] bool amiss() const;                       ///< something has to be mended
    [[nodiscard]] std::vector<kit_matter> matters() const;  ///< of each remark, gravest first

  private:
    friend std::string text(const kit_report& r, length_unit u);
    friend std::string json(const kit_report& r);
    std::shared_ptr<const detail::kit_state> made_;
};
[[nodiscard]] std::string text(const kit_report& r, length_unit u = length_unit::mm);
[[nodiscard]] std::string json(const kit_report& r);

}  // namespace pelage
