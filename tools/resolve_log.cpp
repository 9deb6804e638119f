#include "resolve_log.hpp"

#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/planner/planned_entry.hpp>

#include "resolve_words.hpp"

namespace pelage::cli {

namespace {

using strings = std::vector<std::string>;

/// The pieces between commas, of all texts.
strings pieces(const strings& texts) {
    strings out;
    for (const std::string& text : texts) {
        std::size_t from = 0;
        while (from <= text.size()) {
            const std::size_t end = std::min(text.find(',', from), text.size());
            out.emplace_back(detail::trimmed(std::string_view(text).substr(from, end - from)));
            from = end + 1;
        }
    }
    std::erase(out, "");
    return out;
}

/// Takes the grade off the end of "left armpit pelt".
std::optional<mat_grade> take_grade(std::string& piece) {
    constexpr std::string_view spaced = " matted area";
    if (piece.ends_with(spaced)) {
        piece.resize(piece.size() - spaced.size());
        return mat_grade::matted_area;
    }
    for (std::size_t i = 0; i < mat_names.size(); ++i) {
        const std::string end = " " + std::string(mat_names[i]);
        if (piece.ends_with(end)) {
            piece.resize(piece.size() - end.size());
            return static_cast<mat_grade>(i);
        }
    }
    return std::nullopt;
}

/// A text that a record keeps as it is.
std::string plain_in(const std::string& option, const std::string& text, faults& f) {
    if (!is_plain_line(text)) {
        f.say(errc::syntax, option +
                                ": a line of plain text in UTF-8, without control characters, of "
                                "2000 bytes at most; found \"" +
                                text + "\"");
        return {};
    }
    return text;
}

}  // namespace

std::optional<std::vector<logged_mat>> mats_in(const std::string& option, const strings& texts,
                                               const workplace& w, faults& f) {
    strings all = pieces(texts);
    std::vector<logged_mat> out;
    if (all == strings{"none"}) {
        return out;
    }
    bool sound = true;
    for (std::string& piece : all) {
        if (piece == "none") {
            f.say(errc::conflict, option + ": none is said alone; found it beside places");
            return std::nullopt;
        }
        const auto grade = take_grade(piece);
        sound = places_called(option, piece, w.reference.dog_body, f) && sound;
        out.push_back({piece, grade});
    }
    return sound ? std::optional{out} : std::nullopt;
}

std::vector<service_kind> services_in(const std::string& option, const strings& texts,
                                      const reference_data& c, faults& f) {
    std::vector<service_kind> out;
    for (const std::string& one : pieces(texts)) {
        const service* s = service_in(option, one, c, f);
        if (s != nullptr && std::find(out.begin(), out.end(), s->kind) == out.end()) {
            out.push_back(s->kind);
        }
    }
    return out;
}

namespace {

/// The blade that stands where a length is wanted: "7F" of "body 7F"; empty if none does.
std::string blade_named_in(const std::string& text, const workplace& w) {
    const auto blank = text.rfind(' ');
    const std::string last = blank == std::string::npos ? "" : text.substr(blank + 1);
    const auto& all = w.reference.blades;
    return std::any_of(all.begin(), all.end(), [&](const auto& b) { return b.id == last; }) &&
                   !parse_length(last).ok()
               ? last
               : "";
}

}  // namespace

std::vector<logged_length> lengths_in(const std::string& option, const strings& texts,
                                      const workplace& w, faults& f) {
    std::vector<logged_length> out;
    for (const std::string& text : pieces(texts)) {
        if (const std::string blade = blade_named_in(text, w); !blade.empty()) {
            f.say(errc::syntax,
                  option + ": what a blade leaves hangs on how it is led; found \"" + text +
                      "\"; write the length, or the tool: --used 'blade " + blade + ": " +
                      std::string(detail::trimmed(text.substr(0, text.size() - blade.size()))) +
                      "'");
            continue;
        }
        const auto said = place_and_length(option, text, w, f);
        if (!said) {
            continue;
        }
        if (std::any_of(out.begin(), out.end(),
                        [&](const logged_length& l) { return l.whom == said->whom; })) {
            f.say(errc::duplicate, option + ": the same place twice; found \"" + text + "\"");
        }
        out.push_back({said->whom, said->is, true});
    }
    return out;
}

std::vector<logged_tool> tools_in(const std::string& option, const strings& texts,
                                  const workplace& w, faults& f) {
    std::vector<logged_tool> out;
    for (const std::string& text : texts) {
        const std::size_t colon = text.rfind(':');
        const std::string tool =
            plain_in(option, std::string(detail::trimmed(text.substr(0, colon))), f);
        if (colon == std::string::npos || tool.empty()) {
            f.say(errc::syntax, option + ": a tool and its places are needed; found \"" + text +
                                    "\"; write it like 'blade 7F: body, legs'");
            continue;
        }
        out.push_back({tool, {}});
        for (const std::string& whom : pieces({text.substr(colon + 1)})) {
            if (places_called(option, whom, w.reference.dog_body, f)) {
                out.back().places.push_back(whom);
            }
        }
    }
    return out;
}

namespace {

/// The minutes of "2h", "1h30", "1 h 30" and "2 hours"; nothing for what has no hours.
std::optional<unsigned> hours_and_minutes(std::string_view s) {
    const auto digits = [&s] {
        unsigned n = 0;
        std::size_t took = 0;
        for (; took < s.size() && took < 4 && detail::is_digit(s[took]); ++took) {
            n = 10 * n + static_cast<unsigned>(s[took] - '0');
        }
        s = detail::trimmed(s.substr(took));
        return took > 0 ? std::optional{n} : std::nullopt;
    };
    const auto hours = digits();
    std::string_view unit;
    for (const std::string_view one : {"hours", "hour", "hrs", "hr", "h"}) {
        unit = unit.empty() && s.starts_with(one) ? one : unit;
    }
    if (!hours || unit.empty()) {
        return std::nullopt;
    }
    s = detail::trimmed(s.substr(unit.size()));
    const auto rest = s.empty() ? std::optional{0U} : digits();
    const unsigned all = 60 * *hours + rest.value_or(0);
    return rest && *rest < 60 && s.empty() && all > 0 ? std::optional{all} : std::nullopt;
}

}  // namespace

std::optional<work> minutes_in(const std::string& option, const std::string& text, faults& f) {
    constexpr unsigned most = 1440;
    std::string_view s = detail::trimmed(text);
    for (const std::string_view unit : {"minutes", "min", "m"}) {
        if (s.ends_with(unit)) {
            s = detail::trimmed(s.substr(0, s.size() - unit.size()));
            break;
        }
    }
    if (const auto in_hours = hours_and_minutes(s); in_hours && *in_hours <= most) {
        return pelage::minutes(*in_hours);
    }
    const auto n = whole_in(option, std::string(s), 1, most, "write it like 95 or 1h35", f);
    return n ? std::optional{pelage::minutes(*n)} : std::nullopt;
}

std::string price_in(const std::string& option, const std::string& text, faults& f) {
    std::string_view s = detail::trimmed(text);
    const auto amount = detail::take_decimal(s);
    const std::string_view currency = detail::trimmed(s);
    constexpr std::size_t longest = 8;
    const bool plain = currency.find_first_of("0123456789") == std::string_view::npos;
    if (!amount || *amount < 0.0 || currency.size() > longest || !plain || !is_plain_line(text)) {
        f.say(errc::syntax, option + ": an amount, with its currency if you like; found \"" + text +
                                "\"; write it like 60 or '60 EUR'");
        return {};
    }
    return std::string(detail::trimmed(text));
}

std::optional<date> next_in(const std::string& option, const std::string& text, const date& visit,
                            faults& f) {
    const auto on = day_in(option, text, f);
    if (on && *on <= visit) {
        f.say(errc::range, option + ": must lie after the visit, " + iso(visit) + "; found \"" +
                               text + "\"; write the day promised");
        return std::nullopt;
    }
    return on;
}

namespace {

/// Who groomed; where the salon names its groomers, one of them.
std::string who_in(const std::string& text, const workplace& w, faults& f) {
    const std::string who = plain_in("--who", text, f);
    std::vector<std::string> names;
    for (const groomer& g : w.own ? w.own->groomers : std::vector<groomer>{}) {
        names.push_back(g.name);
    }
    if (who.empty() && !text.empty()) {
        return {};  // it was told what is wrong with it
    }
    if (!names.empty() && std::find(names.begin(), names.end(), who) == names.end()) {
        f.say(errc::unknown, "--who: the salon names no such groomer; found \"" + who +
                                 "\"; write " + one_of(names));
    }
    return who;
}

}  // namespace

void apply_told(const log_options& o, const workplace& w, log_entry& e, faults& f) {
    if (!o.who.empty()) {
        e.who = who_in(o.who, w, f);
    } else if (e.who.empty() && w.own) {
        e.who = w.own->card.groomer;
    }
    const part_index parts(w.reference.dog_body);
    for (const logged_tool& t : tools_in("--used", o.used, w, f)) {
        forget_left(parts, e.left, e.used, t);
        put_told(parts, e.used, t);
    }
    if (!o.measured.empty()) {
        e.found = lengths_in("--measured", o.measured, w, f);
    }
    if (!o.mats.empty()) {
        e.mats = mats_in("--mats", o.mats, w, f);
    }
    for (const std::string& text : o.dog.found.skin) {
        faults said_before;  // applied to the dog already, which told its faults
        if (const auto s = skin_in(text, w, said_before)) {
            e.skin.push_back({s->whom, s->what.state, s->what.size, s->what.known});
        }
    }
    if (!o.behaviour.empty()) {
        e.behaviour = plain_in("--behaviour", o.behaviour, f);
    }
    if (!o.remarks.empty()) {
        e.remarks = plain_in("--note", o.remarks, f);
    }
    if (!o.minutes.empty()) {
        e.took = minutes_in("--minutes", o.minutes, f);
    }
    if (!o.price.empty()) {
        e.price = price_in("--price", o.price, f);
    }
    if (!o.next.empty()) {
        e.next = next_in("--next", o.next, e.on, f);
    }
}

void check_told(const log_options& o, const workplace& w, const log_entry& e,
                const entry_checks& checks, faults& f) {
    faults said_before;
    checks.tools("--used", tools_in("--used", o.used, w, said_before), f);
    checks.lengths({"--left", "--measured"}, e, f);
}

}  // namespace pelage::cli
