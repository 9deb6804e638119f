// Private to lib: what several kinds of file have in common: figures with their evidence, places of
// the dog, blades, and what a sheet says of a place.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include <pelage/model/reference_data.hpp>
#include <pelage/trade/days_off.hpp>
#include <pelage/trade/place_words.hpp>

#include "data/table_reader.hpp"

namespace pelage::io {

/// The days off listed under a key: "Monday", "2026-12-24", "2026-12-24 to 2027-01-03".
[[nodiscard]] days_off get_days_off(record& r, std::string_view key);

/// The places that words mean.
class place_finder {
  public:
    explicit place_finder(const body& b) : body_(b) {}

    /// What `w` means, or null; complains of words that name nothing or several places.
    const selection* find(const word& w, faults& out);
    [[nodiscard]] const body& whole() const { return body_; }
    /// Every word and its meaning, made on the first question.
    [[nodiscard]] const part_index& index();

  private:
    const body& body_;
    std::optional<part_index> parts_;  ///< made on the first question, when the zones are read
    std::size_t looked_up_ = 0;        ///< words for which the nearest was sought
};

/// What the reading of a file needs besides its text.
struct page {
    faults& out;
    const reference_data& known;
    place_finder& places;
    const kit* drawer = nullptr;                   ///< the salon's own blades count too
    std::vector<listed_figure>* listed = nullptr;  ///< where figures of the reference are listed
    bool ours = false;  ///< a file of the reference: nothing may be left to be assumed
    presence format_there = presence::must;  ///< whether `format = 1` has to be said
};

/// The keys basis, source, relayed and note of a record. Where `basis` may be left out and is, the
/// evidence is `otherwise`.
evidence get_evidence(record& r, page& p, presence basis_there, const evidence& otherwise = {});

/// The evidence under one key: a basis that needs no source, or a table like a figure's without
/// numbers.
evidence get_basis(record& r, page& p, std::string_view key);

/// A figure before its numbers have a type, in the unit of its measure.
struct raw_figure {
    double low = 0.0;
    double best = 0.0;
    double high = 0.0;
    evidence why;
};

/// The keys best, low and high of a record, low <= best <= high; its evidence is left as it is.
std::optional<raw_figure> get_spread(record& r, measure m, const bounds& b);

/// Adds a figure to those the page lists, if it lists any.
void list_figure(page& p, std::string key, const raw_figure& f, measure m);
/// Adds what isn't a number, too.
void list_text(page& p, std::string key, std::string value, const evidence& why);

template <class Quantity>
inline constexpr measure measure_of = std::is_same_v<Quantity, length> ? measure::length
                                      : std::is_same_v<Quantity, days> ? measure::days
                                      : std::is_same_v<Quantity, work> ? measure::minutes
                                                                       : measure::number;

template <class Quantity>
[[nodiscard]] Quantity of_raw(double v) {
    if constexpr (std::is_same_v<Quantity, work>) {
        return minutes(v);
    } else if constexpr (std::is_same_v<Quantity, double>) {
        return v;
    } else {
        return Quantity::from_value(v);
    }
}

template <class Quantity>
[[nodiscard]] figure<Quantity> typed(const raw_figure& f) {
    return {of_raw<Quantity>(f.low), of_raw<Quantity>(f.best), of_raw<Quantity>(f.high), f.why};
}

/// The figures of one record, listed under "prefix/key".
class figures {
  public:
    /// `inherited`: the record's own basis, for plain values; null if it has none.
    figures(record& r, page& p, std::string prefix, const evidence* inherited = nullptr)
        : record_(r), page_(p), prefix_(std::move(prefix)), inherited_(inherited) {}

    template <class Quantity>
    std::optional<figure<Quantity>> may(std::string_view key, const bounds& b,
                                        measure m = measure_of<Quantity>) {
        const auto f = get(key, presence::may, m, b);
        return f ? std::optional{typed<Quantity>(*f)} : std::nullopt;
    }
    template <class Quantity>
    figure<Quantity> must(std::string_view key, const bounds& b, measure m = measure_of<Quantity>) {
        const auto f = get(key, presence::must, m, b);
        return f ? typed<Quantity>(*f) : figure<Quantity>{};
    }

  private:
    std::optional<raw_figure> get(std::string_view key, presence p, measure m, const bounds& b);
    std::optional<raw_figure> plain(const member& at, measure m, const bounds& b);

    record& record_;
    page& page_;
    std::string prefix_;
    const evidence* inherited_;
};

/// The reference's or the salon's own blade that `w` names, as its id is written; complains and gives
/// nothing if there is none, or if the label could mean two things ("5/8", "7/8", "1", "2"; "blade 2"
/// means the blade).
std::optional<std::string> blade_named(const word& w, page& p);

/// Whether a label could mean two things; complains if so. `w` may begin with "blade ", which is
/// taken off and settles what 1 and 2 mean.
bool asks_back(word& w, faults& out);

/// What to write in place of an unknown label: the known blades of the same number.
[[nodiscard]] std::string blades_like(std::string_view label,
                                      const std::vector<std::string>& known);

/// What a sheet or a dog's departures say, with positions for later checks.
struct placed_rule {
    sheet_rule rule;
    selection whom;
    spot at;
};
/// The table [key] of selectors with instructions.
std::vector<placed_rule> get_rules(record& r, page& p, std::string_view key, presence there);
/// The rules without their positions.
std::vector<sheet_rule> without_positions(std::vector<placed_rule> rules);

/// Complains if `whom` means the same as one of `before`, and adds it to them.
void refuse_twice(const word& w, const selection& whom,
                  std::vector<std::pair<selection, std::string>>& before, faults& out);

/// The ids of one kind of record in a file: complains of doubles.
class unique_ids {
  public:
    void add(const std::string& id, const spot& at, std::string_view what, faults& out);

  private:
    std::map<std::string, unsigned, std::less<>> lines_;
};

}  // namespace pelage::io
