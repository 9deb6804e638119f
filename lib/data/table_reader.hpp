// Private to lib: a table of a file as a record of typed values. Each key is named once, where it is
// read; what is left over at the end is unknown.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/units.hpp>

#include "data/toml.hpp"

namespace pelage::io {

/// Whether a key has to be there.
enum class presence { must, may };

/// What a number measures; all but `number` are written as text with a unit.
enum class measure { length, days, minutes, rate, degrees, number };

/// What a number must lie between, in the unit of its measure; `high` included, `low` only if
/// `low_too`.
struct bounds {
    double low = 0.0;
    double high = 0.0;
    bool low_too = false;
};
[[nodiscard]] constexpr bounds over_zero(double high) {
    return {0.0, high, false};
}
[[nodiscard]] constexpr bounds from_zero(double high) {
    return {0.0, high, true};
}

/// The longest length a file may hold (mm).
inline constexpr double longest_mm = 1000.0;
/// The shortest that hair is told or wished to be (mm): shorter than the shortest blade leaves
/// (assumption).
inline constexpr double shortest_hair_mm = 0.1;
inline constexpr bounds any_hair{shortest_hair_mm, longest_mm, true};

/// How a text may look: a line without control characters, or prose with line breaks.
enum class text_kind { line, prose };

/// A word of a list, with its position.
struct word {
    std::string text;
    spot at;
};

/// What they say, without where they stand.
[[nodiscard]] inline std::vector<std::string> texts_of(const std::vector<word>& all) {
    std::vector<std::string> out;
    for (const word& w : all) {
        out.push_back(w.text);
    }
    return out;
}

/// Names known while compiling.
using names_view = std::span<const std::string_view>;

/// The index of `w` in `names`; complains and gives -1 if it isn't there. `what` says what it is:
/// "coat".
[[nodiscard]] int index_of(const word& w, std::string_view what, names_view names, faults& out);

/// What stands at a node, for messages: 13, "13 mm", a list.
[[nodiscard]] std::string found(const node& n);

/// The number at `n`, in the unit of `m`; `key` names it in messages.
[[nodiscard]] std::optional<double> number_at(const node& n, std::string_view key, measure m,
                                              const bounds& b, faults& out);
/// A number with its unit, every digit: "25.4 mm", "0.34 mm/day", "0.8".
[[nodiscard]] std::string with_unit(double value, measure m);

/// The text at `n`: not empty, of at most 2000 characters.
[[nodiscard]] std::optional<std::string> text_at(const node& n, std::string_view key, text_kind k,
                                                 faults& out);

/// Whether `s` is an id: a-z, 0-9 and -, beginning with a letter, at most 64 characters. Nothing
/// that a spreadsheet would take for a formula.
[[nodiscard]] bool is_id(std::string_view s);

/// An id made of `s`: "bella-luna" of "Bella, Luna".
[[nodiscard]] std::string id_like(std::string_view s);

/// The day at `n`, of TOML's own kind or as text.
[[nodiscard]] std::optional<date> day_at(const node& n, std::string_view key, faults& out);

/// A key for a message, in quotes.
[[nodiscard]] std::string named(std::string_view key);

/// One table. Every `get_` adds a fault if the value isn't right, or isn't there and must be.
class record {
  public:
    /// `path` stands before the keys of tables in messages: "kit." for the table [kit].
    record(const node& table, faults& out, std::string_view path = {})
        : table_(table), out_(out), path_(path) {}

    [[nodiscard]] const spot& at() const { return table_.at; }
    /// Where the value of `key` stands; the table's own position if there is none.
    [[nodiscard]] spot at(std::string_view key) const;
    [[nodiscard]] faults& out() { return out_; }

    /// The key with its value, or null; names it known. No copy of `key` is kept: it must outlive
    /// the record.
    const member* get(std::string_view key);
    /// The same; complains if the key must be there and isn't, and says to write `right` after it.
    const member* get(std::string_view key, presence p, std::string_view right);

    std::string get_text(std::string_view key, presence p, text_kind k = text_kind::line);
    std::string get_id(std::string_view key);
    /// A length of hair or of a tool.
    std::optional<length> get_length(std::string_view key, presence p, const bounds& b = any_hair);
    std::optional<date> get_day(std::string_view key, presence p);
    bool get_flag(std::string_view key);
    /// A whole number from `low` to `high`; `otherwise` if it isn't there.
    int get_count(std::string_view key, int low, int high, int otherwise);
    std::optional<double> get_number(std::string_view key, presence p, measure m, const bounds& b);
    /// A list of texts, none of them twice.
    std::vector<word> get_words(std::string_view key, presence p);
    const node* get_table(std::string_view key, presence p);
    /// The tables of [[key]].
    std::vector<const node*> get_tables(std::string_view key, presence p);

    /// One of the names of an enumeration in the order of its values.
    template <class Enum, std::size_t n>
    std::optional<Enum> get_name(std::string_view key, presence p,
                                 const std::array<std::string_view, n>& names) {
        const int i = get_index(key, p, names);
        return i < 0 ? std::nullopt : std::optional{static_cast<Enum>(i)};
    }
    /// One of `names`; empty if it isn't there or wrong.
    std::string get_choice(std::string_view key, presence p, names_view names);

    /// Complains of every key that nobody asked for.
    void done();

  private:
    int get_index(std::string_view key, presence p, names_view names);
    void missing(std::string_view key, std::string_view right);

    const node& table_;
    faults& out_;
    std::string_view path_;
    std::vector<std::string_view> known_;
};

/// Complains unless the table has `format = 1`, which may be left out if `p` says so.
void check_format(record& r, presence p = presence::must);

}  // namespace pelage::io
