// What is otherwise in a part of the year, and everything longer or shorter by a share.
#include <algorithm>

#include <fmt/format.h>

#include <pelage/base/length_text.hpp>
#include <pelage/base/suggest.hpp>

#include "data/read/style_parts.hpp"

namespace pelage::io {

namespace {

constexpr std::array<std::string_view, 12> month_names{
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};
constexpr std::array<unsigned, 12> month_ends{31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
constexpr double shortest_scale = 0.1;
constexpr double longest_scale = 3.0;

/// "20 % shorter", "10 % longer".
std::optional<double> in_percent(std::string_view text) {
    std::string_view s = detail::trimmed(text);
    const auto n = detail::take_decimal(s);
    s = detail::trimmed(s);
    if (!n || s.substr(0, 1) != "%") {
        return std::nullopt;
    }
    s = detail::trimmed(s.substr(1));
    if (s == "shorter" && *n < 100.0) {
        return 1.0 - *n / 100.0;
    }
    return s == "longer" && *n <= 200.0 ? std::optional{1.0 + *n / 100.0} : std::nullopt;
}

/// "1 June".
std::optional<day_of_year> day_in_words(std::string_view text) {
    std::string_view s = detail::trimmed(text);
    const auto n = detail::take_decimal(s);
    const std::string month{detail::trimmed(s)};
    const auto* const at = std::find(month_names.begin(), month_names.end(), month);
    if (!n || at == month_names.end() || *n < 1.0 || *n != std::floor(*n)) {
        return std::nullopt;
    }
    const auto m = static_cast<std::size_t>(at - month_names.begin());
    if (*n > month_ends[m]) {
        return std::nullopt;
    }
    return day_of_year{static_cast<unsigned>(m) + 1, static_cast<unsigned>(*n)};
}

std::optional<day_of_year> get_day_of_year(record& r, std::string_view key, presence there) {
    const std::string text = r.get_text(key, there);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto d = day_in_words(text);
    if (!d) {
        r.out().add(r.at(key), errc::syntax,
                    fmt::format("{} is no day of every year; found {}; write it like {}",
                                named(key), shown(text), r.out().setting(key, "\"1 June\"")));
    }
    return d;
}

std::vector<span_of_year> get_when(record& r) {
    std::vector<span_of_year> out;
    for (const word& w : r.get_words("months", presence::may)) {
        const int m = index_of(w, "month", month_names, r.out());
        if (m >= 0) {
            const auto month = static_cast<unsigned>(m) + 1;
            out.push_back({{month, 1}, {month, month_ends[static_cast<std::size_t>(m)]}});
        }
    }
    const bool dated = r.get("from") != nullptr || r.get("to") != nullptr;
    const presence there = dated ? presence::must : presence::may;
    const auto from = get_day_of_year(r, "from", there);
    const auto to = get_day_of_year(r, "to", there);
    if (from && to) {
        out.push_back({*from, *to});
    }
    return out;
}

season get_season(const member& m, page& p) {
    season s;
    s.name = m.key;
    s.at = {p.out.file(), m.at.line, m.at.column};
    if (!is_id(m.key)) {
        p.out.add(m.at, errc::syntax,
                  fmt::format("a season's name is made of a-z, 0-9 and -; found {}; write \"{}\"",
                              shown(m.key), id_like(m.key)));
    }
    const std::string path = fmt::format("season.{}.", escaped(m.key, 60));
    record r(m.value, p.out, path);
    s.when = get_when(r);
    s.scale = get_scale(r, "scale").value_or(1.0);
    for (placed_rule& one : get_rules(r, p, "zones", presence::may)) {
        s.rules.push_back(std::move(one.rule));
    }
    if (const auto d =
            r.get_number("longest_interval", presence::may, measure::days, {1.0, 365.0, true})) {
        s.longest_interval = day(*d);
    }
    s.upkeep = get_upkeep_words(r, "upkeep");
    s.why = r.get_text("why", presence::may, text_kind::prose);
    r.done();
    if (s.scale == 1.0 && s.rules.empty() && !s.longest_interval && s.upkeep.empty() &&
        p.out.none()) {
        p.out.add(m.at, errc::missing,
                  fmt::format("a season in which nothing is otherwise; found {}; write scale = "
                              "\"20 % shorter\", or zones = {{ ... }}, below its heading",
                              shown(m.key)));
    }
    return s;
}

/// A day on which both seasons are, if there is one.
std::optional<day_of_year> both_on(const season& a, const season& b) {
    const auto is_on = [](const season& s, const day_of_year& d) {
        return std::any_of(s.when.begin(), s.when.end(),
                           [&](const span_of_year& w) { return holds(w, d); });
    };
    for (unsigned m = 1; m <= 12; ++m) {
        for (unsigned d = 1; d <= month_ends[m - 1]; ++d) {
            if (is_on(a, {m, d}) && is_on(b, {m, d})) {
                return day_of_year{m, d};
            }
        }
    }
    return std::nullopt;
}

void check_apart(const std::vector<season>& all, page& p) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const auto day = both_on(all[j], all[i]);
            const season& own = all[i].at.file == p.out.file() ? all[i] : all[j];
            const season& other = &own == &all[i] ? all[j] : all[i];
            if (day && own.at.file == p.out.file()) {
                p.out.add({own.at.line, own.at.column}, errc::conflict,
                          fmt::format("two seasons on one day; found {} and {} on {} {}; end one "
                                      "before the other begins",
                                      shown(own.name), shown(other.name), day->day,
                                      month_names[day->month - 1]));
            }
        }
    }
}

}  // namespace

std::optional<double> get_scale(record& r, std::string_view key) {
    const member* m = r.get(key);
    if (m == nullptr) {
        return std::nullopt;
    }
    std::optional<double> share;
    if (m->value.kind == node_kind::text) {
        share = in_percent(m->value.text);
    } else if (m->value.kind == node_kind::real) {
        share = m->value.real;
    } else if (m->value.kind == node_kind::whole) {
        share = static_cast<double>(m->value.whole);
    }
    if (share && *share >= shortest_scale && *share <= longest_scale) {
        return share;
    }
    r.out().add(m->value.at, share ? errc::range : errc::syntax,
                fmt::format("{} is a share of every length, from {} to {}; found {}; write "
                            "it like {} or {}",
                            named(key), shortest_scale, longest_scale, found(m->value),
                            r.out().setting(key, "0.8"), r.out().setting(key, "\"20 % shorter\"")));
    return std::nullopt;
}

std::vector<season> get_seasons(record& r, page& p, std::vector<season> inherited) {
    const node* table = r.get_table("season", presence::may);
    if (table == nullptr) {
        return inherited;
    }
    constexpr std::size_t most = 12;
    for (const member& m : table->members) {
        if (m.value.kind != node_kind::table) {
            p.out.add(m.value.at, errc::type,
                      fmt::format("a season is a table; found {}; write [season.summer] with its "
                                  "keys below",
                                  found(m.value)));
            continue;
        }
        season own = get_season(m, p);
        std::erase_if(inherited, [&](const season& s) { return s.name == own.name; });
        inherited.push_back(std::move(own));
    }
    if (table->members.size() > most) {
        p.out.add(table->at, errc::range,
                  fmt::format("too many seasons; found {}; right are at most {}",
                              table->members.size(), most));
        return {};
    }
    check_apart(inherited, p);
    return inherited;
}

}  // namespace pelage::io
