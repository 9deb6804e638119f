#include "resolve_arguments.hpp"

#include <algorithm>
#include <charconv>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/trade/term.hpp>

#include "resolve_words.hpp"
#include "words_said.hpp"

namespace pelage::cli {

namespace {

/// A word as it is compared: small letters, no blanks or hyphens.
std::string heard(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c != ' ' && c != '-') {
            out.push_back(c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c);
        }
    }
    return out;
}

}  // namespace

std::optional<days> wait_in(const std::string& option, const std::string& text, faults& f) {
    const auto n = parse_wait(text);
    if (!n) {
        f.say(errc::range, option + ": not a wait of 1 day to 52 weeks; found \"" + text +
                               "\"; write it like 6w, 42d or '6 weeks'");
        return std::nullopt;
    }
    return day(*n);
}

std::optional<unsigned> whole_in(const std::string& option, const std::string& text, unsigned least,
                                 unsigned most, const std::string& example, faults& f) {
    const std::string_view s = detail::trimmed(text);
    unsigned n = 0;
    const auto [end, failed] = std::from_chars(s.data(), s.data() + s.size(), n);
    if (failed == std::errc{} && end == s.data() + s.size() && n >= least && n <= most) {
        return n;
    }
    f.say(errc::range, option + ": must be a whole number from " + std::to_string(least) + " to " +
                           std::to_string(most) + "; found \"" + text + "\"; " + example);
    return std::nullopt;
}

std::optional<date> day_in(const std::string& option, const std::string& text, faults& f) {
    const auto d = parse_date(text);
    if (d && is_near(*d)) {
        return d;
    }
    f.say(errc::range,
          option + (d ? ": too far away; found \"" + text + "\"; right is a day from 1990 to 2199"
                      : ": no such day; found \"" + text + "\"; write it like 2026-11-25"));
    return std::nullopt;
}

std::optional<selection> places_called(const std::string& option, const std::string& text,
                                       const body& b, faults& f) {
    const part_index parts(b);
    if (const selection* s = parts.find(text)) {
        return *s;
    }
    const part_index::stranger no = parts.about(text);
    f.say(no.code, option + ": " + no.wrong + "; found \"" + text + "\"" +
                       (no.right.empty() ? "; pelage plan biscuit --zones names them" : no.right));
    return std::nullopt;
}

std::optional<place> zone_called(const std::string& text, const body& b, faults& f) {
    const auto s = places_called("--zone", text, b, f);
    if (!s || s->places.size() == 1) {
        return s ? std::optional{s->places.front()} : std::nullopt;
    }
    f.say(errc::type, "--zone: a patch is in one zone; found \"" + text + "\"; write one of " +
                          joined(titles(b, s->places), ", "));
    return std::nullopt;
}

std::optional<std::size_t> choice_in(const std::string& option, const std::string& text,
                                     const std::vector<std::string>& words, faults& f) {
    const auto at = std::find(words.begin(), words.end(), text);
    if (at != words.end()) {
        return static_cast<std::size_t>(at - words.begin());
    }
    if (!text.empty()) {
        const std::string meant = did_you_mean(text, words);
        f.say(errc::unknown, option + ": found \"" + text + "\"" +
                                 (meant.empty() ? "; write " + one_of(words) : meant));
    }
    return std::nullopt;
}

namespace {

/// "bath, nails", "bath and sanitary": what each of them holds, where at least one is a service; else empty.
std::string several_services(const std::string& text, const reference_data& c) {
    strings words = split_at(text, ' ');
    strings pieces{{}};
    for (std::string w : words) {
        const bool comma = w.ends_with(',');
        w.resize(w.size() - (comma ? 1 : 0));
        if (!any_of_these({w}, {"and", "&", "+", "with"})) {
            pieces.back() += (pieces.back().empty() ? "" : " ") + w;
        }
        if (comma || any_of_these({w}, {"and", "&", "+", "with"})) {
            pieces.emplace_back();
        }
    }
    std::erase(pieces, "");
    strings known;
    for (const std::string& one : pieces) {
        faults ignored;
        if (const service* s = pieces.size() > 1 ? service_in("", one, c, ignored) : nullptr) {
            known.push_back("--service " + std::string(name(s->kind)) + " is " + s->text);
        }
    }
    return known.empty() ? ""
                         : ": one service is booked; found \"" + text +
                               "\"; write one: " + joined(known, ". ");
}

}  // namespace

const service* service_in(const std::string& option, const std::string& said,
                          const reference_data& c, faults& f) {
    const std::string text = said.ends_with(" only") ? said.substr(0, said.size() - 5) : said;
    std::vector<std::string> words;
    for (const service& s : c.services) {
        std::vector<std::string> mine = s.words;
        mine.emplace_back(name(s.kind));
        mine.push_back(s.title);
        for (const std::string& w : mine) {
            if (heard(w) == heard(text)) {
                return &s;
            }
            words.push_back(w);
        }
    }
    if (const std::string several = several_services(text, c); !several.empty()) {
        f.say(errc::ambiguous, option + several);
        return nullptr;
    }
    const std::string meant = did_you_mean(text, words);
    f.say(errc::unknown,
          option + ": no such service; found \"" + text + "\"" +
              (meant.empty() ? "; write " + one_of({service_names.begin(), service_names.end()})
                             : meant));
    return nullptr;
}

std::string service_meant(const std::string& sheet, const reference_data& c) {
    faults ignored;
    const service* s = sheet.empty() ? nullptr : service_in("", sheet, c, ignored);
    return s == nullptr ? ""
                        : "no style sheet is called \"" + sheet + "\": it is a service, " +
                              s->title + "; book it with --service " + std::string(name(s->kind)) +
                              ", and name the sheet beside it";
}

std::optional<direction> direction_called(const std::string& text, faults& f) {
    const auto n = choice_in("--direction", text, {"with", "against"}, f);
    return n ? std::optional{*n == 0 ? direction::with_lay : direction::against_lay} : std::nullopt;
}

namespace {

/// What the trade's word for a coat is asked back with: the coats it may mean; empty of other words.
std::string coats_meant(const std::string& text) {
    const term* t = term_index(io::trade_words()).find(text);
    if (t == nullptr || t->kind != term_kind::coat) {
        return {};
    }
    std::vector<std::string> coats;
    for (const std::string_view c : coat_names) {
        const bool of_it = t->id == std::string(c) + "-coat" ||
                           (t->id == "double-coat" && c.starts_with("double"));
        if (of_it) {
            coats.push_back("--coat " + std::string(c));
        }
    }
    return coats.empty() ? ""
                         : "--coat: found \"" + text + "\", a " + t->title + "; write " +
                               one_of(coats) + (t->id == "double-coat" ? ". " + t->text : "");
}

}  // namespace

std::optional<coat_class> coat_called(const std::string& text, faults& f) {
    const bool known = std::find(coat_names.begin(), coat_names.end(), text) != coat_names.end();
    if (const std::string meant = known ? "" : coats_meant(text); !meant.empty()) {
        f.say(errc::ambiguous, meant);
        return std::nullopt;
    }
    return named<coat_class>("--coat", text, coat_names, f);
}

std::optional<length> length_in(const std::string& option, const std::string& text, faults& f) {
    constexpr length shortest = mm(0.1);  // as files have it
    const parsed_length l = parse_length(text);
    if (l.ok() && l.value >= shortest) {
        return l.value;
    }
    if (l.ok()) {
        f.say(errc::range, option + ": no hair is told that short; found \"" + text +
                               "\"; right is from 0.1 mm");
        return std::nullopt;
    }
    f.say(l.fault == length_fault::no_unit ? errc::unit : errc::range,
          option + ": " + complaint(l, text));
    return std::nullopt;
}

std::optional<chance> chance_in(const std::string& text, faults& f) {
    std::string_view s = detail::trimmed(text);
    auto v = detail::take_decimal(s);
    s = detail::trimmed(s);
    if (v && s == "%") {
        v = *v / 100.0;
        s = {};
    } else if (v && s.substr(0, 3) == "in ") {
        s.remove_prefix(3);
        const auto of = detail::take_decimal(s);
        v = of && *of > 0.0 ? std::optional{*v / *of} : std::nullopt;
    }
    if (v && s.empty() && *v > 0.0 && *v < 1.0) {
        return v;
    }
    f.say(errc::range, "--chance: must lie between 0 and 1; found \"" + text +
                           "\"; write it like 0.9, 90% or '9 in 10'");
    return std::nullopt;
}

}  // namespace pelage::cli
