// An answer for people before it is text, HTML or CSV: what it says, in the order in which it says it.
// Values in tables keep their units until they are written.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/setup.hpp>

namespace pelage::io {

/// A part of a whole, shown in percent; rounded down, so that it never says 100 where something is
/// missing.
struct percentage {
    std::int64_t part = 0;   ///< so many of them
    std::int64_t whole = 0;  ///< 0: nothing at all
};

/// A probability, from 0 to 1; "9 in 10" to people.
struct likelihood {
    double p = 0.0;  ///< from 0 to 1
};

/// What a table holds in one place; the first is nothing.
using cell_value = std::variant<std::monostate, std::string, std::int64_t, length, finished, work,
                                days, date, percentage, likelihood>;

/// One value of a table: for programs what it is, for people how it is said.
struct cell {
    cell() = default;
    /// A value, and what people read in its place; empty: what its kind makes of it.
    template <class T>
    requires std::is_constructible_v<cell_value, T> cell(
        T&& v, std::string as = {})  // NOLINT: a value is a cell
        : value(std::forward<T>(v)), said(std::move(as)) {}

    cell_value value{};  ///< for programs
    std::string said{};  ///< what people read in its place; empty: what its kind makes of it
};

/// A bar beside a row in text, all of a table to one scale: from 0 to 1, drawn strong as far as `strong` and
/// light from there to `light`.
struct text_bar {
    double strong = 0.0;
    double light = 0.0;
};

/// Who is shown a table.
enum class shown_to { all, people, programs };

/// Rows of as many cells as the head has. In text the last column is wrapped, the others take what they
/// need.
struct typed_table {
    std::vector<std::string> head{};        ///< what the columns are called
    std::vector<std::vector<cell>> rows{};  ///< as many cells each as the head has
    std::vector<bool> numbers{};            ///< columns that stand to the right
    shown_to whom = shown_to::all;          ///< who is shown it
    bool narrow = false;                    ///< in text a line a row: "first: second; third"
    std::vector<text_bar>
        bars{};  ///< one a row, or none at all; text alone shows them, where there is room
    std::string bars_head{};  ///< what heads them
};

/// What a line is: running text, one of a list, what more is said of the line before it, a caution, a box
/// to tick, something to be copied as it is, what is done between steps or after them and has no number, a
/// caution of what hurts nobody at once, or running text whose lead heads the page already.
enum class line_as {
    paragraph,
    item,
    bullet,
    step,
    detail,
    caution,
    box,
    copied,
    between,
    notice,
    headed
};

/// A text that begins on a line of its own.
struct line {
    line_as as = line_as::paragraph;  ///< what kind of line
    std::string text{};               ///< the words, no line ends in them
    std::string lead{};               ///< a word or a mark that it stands behind
    std::size_t indent = 0;           ///< columns before it in text
    std::size_t hang = 0;             ///< columns before its further lines in text
    std::string to{};                 ///< the id of a section that its text leads to, in HTML
};

/// A picture. CSV has none of it.
struct drawing {
    std::string
        svg{};  ///< one svg element with its own title, all of it escaped; empty: none on a page
    std::string caption{};  ///< what stands below it
    std::string text{};     ///< what text shows in its place, in lines of so many columns
    bool chart = false;     ///< no wider than text reads well
};

/// A heading, if any, and what stands below it.
struct section {
    std::string heading{};  ///< empty: none
    bool apart = true;      ///< a blank line before it in text
    bool beside = false;    ///< in HTML two such in a row stand side by side
    std::string id{};       ///< a-z, 0-9 and -: what lines lead to; in HTML it begins a page
    std::vector<std::variant<line, typed_table, drawing>> blocks{};  ///< in their order
};

/// An answer. What is added goes to the last section.
struct document {
    std::string title{};  ///< names the page
    std::string name{};   ///< what of the title, at its beginning, somebody wrote by hand
    bool titled = false;  ///< text shows the title, too
    std::vector<section> sections{};  ///< in their order
    bool small = false;               ///< in HTML in smaller type: much stands on a page
    bool sign = false;                ///< with a place for name, date and signature
    std::string foot{};               ///< stands last

    /// Begins a section; `apart` as there.
    section& open(std::string heading = {}, bool apart = true);
    /// Running text, its further lines indented by `hang` columns.
    void say(std::string text, std::size_t hang = 0);
    /// The same behind a word or a mark ("For: "), at which no line ends.
    void say_of(std::string lead, std::string text, std::size_t hang = 2);
    /// One of a list.
    void item(std::string text, std::size_t hang = 4);
    /// The same behind a word or a mark.
    void item_of(std::string lead, std::string text, std::size_t hang = 4);
    /// A line for somebody's file, never broken.
    void copied(std::string text);
    /// What is dangerous, or has to be looked at first.
    void caution(std::string text);
    /// A line as it is.
    void add(line l);
    /// Lines for somebody's file, from the first column.
    void copy(const std::string& text);
    /// A section of these lines; nothing where there are none. `apart` as there.
    void tell(std::string heading, std::vector<line> lines, bool apart = true);
    /// Another answer below this one, its first section apart.
    void append(document more);
    /// Nothing, if it has no rows.
    void show(typed_table t);
    /// A picture.
    void show(drawing d);

  private:
    section& last();
};

/// The same for paper and pictures: without what stands in brackets to be typed, "(--consent ID)".
[[nodiscard]] document on_paper(document d);

/// As text (UTF-8) of so many columns.
[[nodiscard]] std::string text_of(const document& d, length_unit u = length_unit::mm,
                                  std::size_t width = 80);
/// As one page of HTML that prints on A4: no scripts, nothing from elsewhere, everything escaped.
[[nodiscard]] std::string html_of(const document& d, length_unit u = length_unit::mm);
/// Its tables as CSV (RFC 4180), an empty line between two. Numbers are bare, their unit is in the head;
/// lengths to 0.01 mm or 0.0001 in, a range is three columns.
[[nodiscard]] std::string csv_of(const document& d, length_unit u = length_unit::mm);

}  // namespace pelage::io
