// The dog asked about: its file or the salon's, with what options say put over it.
#include <algorithm>
#include <istream>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/data/read.hpp>
#include <pelage/data/record_file.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/trade/place_words.hpp>
#include <pelage/trade/term.hpp>

#include "dog_in_words.hpp"
#include "resolve_arguments.hpp"
#include "resolve_words.hpp"

namespace pelage::cli {

std::optional<hair_now> place_and_length(const std::string& option, const std::string& text,
                                         const workplace& w, faults& f) {
    const auto digit = text.find_first_of("0123456789.");
    const std::string whom{detail::trimmed(text.substr(0, std::min(digit, text.size())))};
    if (digit == std::string::npos || whom.empty() || whom.ends_with('=') || whom.ends_with(':') ||
        whom.ends_with('-')) {
        f.say(errc::syntax, option + ": a zone and its length are needed; found \"" + text +
                                "\"; write it like 'body 40 mm'");
        return std::nullopt;
    }
    const bool known = places_called(option, whom, w.reference.dog_body, f).has_value();
    const auto l = length_in(option, text.substr(digit), f);
    return known && l ? std::optional{hair_now{whom, *l}} : std::nullopt;
}

namespace {

/// What --coat says where that is no coat but breeds: "miniature poodle".
std::string breeds_for_coat(const dog_options& o, const workplace& w) {
    const std::vector<std::string> coats = words_of(coat_names);
    if (o.coat.empty() || std::find(coats.begin(), coats.end(), o.coat) != coats.end()) {
        return {};
    }
    try {
        (void)expect_coat(o.coat, w.reference.genes, w.reference.coats);
        return o.coat;
    } catch (const error&) {
        return {};
    }
}

void apply_now(const dog_options& o, const workplace& w, dog& d, faults& f) {
    std::vector<std::vector<place>> before;
    for (const std::string& text : o.now) {
        const auto said = place_and_length("--now", text, w, f);
        if (!said) {
            continue;
        }
        const std::vector<place> meant = select(w.reference.dog_body, said->whom)->places;
        if (std::find(before.begin(), before.end(), meant) != before.end()) {
            f.say(errc::duplicate, "--now: the same place twice; found \"" + text +
                                       "\" after another there; say it once");
        }
        before.push_back(meant);
        d.now.push_back(*said);
    }
}

void apply_groomed(const dog_options& o, const workplace& w, dog& d, faults& f) {
    const auto on = o.groomed.empty() ? std::nullopt : day_in("--groomed", o.groomed, f);
    if (!on) {
        return;
    }
    if (w.print.today && *on > *w.print.today) {
        f.say(errc::range, "--groomed: lies after today, " + iso(*w.print.today) + "; found \"" +
                               o.groomed + "\"; write the day of the last full groom");
        return;
    }
    d.visits.erase(std::remove_if(d.visits.begin(), d.visits.end(),
                                  [&](const visit& v) { return v.on > *on; }),
                   d.visits.end());
    d.visits.push_back({*on, "full", {}});
}

void apply_days(const dog_options& o, const workplace& w, dog& d, faults& f) {
    for (const std::string& text : o.cannot) {
        if (const auto off = parse_days_off(text)) {
            d.cannot.add(*off);
        } else {
            const std::string meant = did_you_mean(text, words_of(weekday_names));
            f.say(errc::syntax, "--cannot: no day off; found \"" + text + "\"" +
                                    (meant.empty() ? "; write it like Monday, 2026-12-24 or "
                                                     "'2026-12-24 to 2027-01-03'"
                                                   : meant));
        }
    }
    for (const std::string& text : o.events) {
        const auto within = text.find(" within ");
        const auto on = parse_date(detail::trimmed(std::string_view(text).substr(0, within)));
        const auto n =
            within == std::string::npos ? std::optional{7} : parse_wait(text.substr(within + 8));
        if (on && w.print.today && *on < *w.print.today) {
            f.say(errc::range, "--event: lies before today, " + iso(*w.print.today) + "; found \"" +
                                   text + "\"");
        } else if (on && n) {
            d.events.push_back({*on, *n, {}});
        } else {
            f.say(errc::syntax, "--event: not understood; found \"" + text +
                                    "\"; write it like 2027-05-01 or '2027-05-01 within 7 days'");
        }
    }
}

/// The dog's file from standard input, at most 1 MB as any other.
io::document_text standard_input(const surroundings& around) {
    constexpr std::size_t most = 1'000'000;
    io::document_text out{"standard input", {}};
    if (around.in == nullptr) {
        throw error(errc::io, "cannot read standard input; name a dog's file");
    }
    out.text.resize(most + 1);
    around.in->read(out.text.data(), static_cast<std::streamsize>(out.text.size()));
    out.text.resize(static_cast<std::size_t>(around.in->gcount()));
    if (out.text.size() > most) {
        throw error(errc::io, "standard input: larger than 1 MB, which no dog's file is");
    }
    return out;
}

}  // namespace

dog recorded_dog(const dog_options& o, const workplace& w, const surroundings& around, faults& f) {
    if (o.dog.empty()) {
        dog d;
        d.brushed = {habit::none, false};
        d.brushing_said = !o.brush.empty();
        return d;
    }
    const std::string& name = o.dog;
    const bool file = is_file_name(name);
    if (name == "-") {
        return io::read_dog(standard_input(around), w.reference, w.styles);
    }
    if (file) {
        dog d = io::read_dog(io::read_text(name), w.reference, w.styles);
        for (const diagnostic& one : io::add_record_beside(d, w.reference)) {
            const std::string text = io::text_of({one});
            note(around, "left out: " + text.substr(0, text.size() - 1));
        }
        return d;
    }
    throw_if_unsound(w, name, true);
    if (const dog* d = find(w.place().dogs, name)) {
        return *d;
    }
    f.say(errc::unknown, no_dog_called(name, w));
    f.throw_if_any();  // without the dog nothing else can be judged
    return {};
}

void apply_options(const dog_options& o, const workplace& w, dog& d, faults& f) {
    if (const std::string breeds = breeds_for_coat(o, w); !breeds.empty()) {
        d.coat.reset();
        d.mix = breeds;
    } else if (!o.coat.empty()) {
        d.coat = coat_called(o.coat, f);
    }
    if (!o.size.empty()) {
        d.size = named<dog_size>("--size", o.size, size_names, f).value_or(d.size);
    }
    if (o.brush.empty()) {
        return;
    }
    const auto b = parse_brushing(o.brush);
    if (b) {
        d.brushed = *b;
        d.brushing_said = true;
    } else {
        f.say(errc::syntax, "--brush: not understood; found \"" + o.brush +
                                "\"; write none, 'weekly to the skin', 'every 3 days to the "
                                "skin' or 'daily on the surface'");
    }
}

namespace {

/// Days of the file that say nothing today.
void note_days(const dog& d, const workplace& w, const surroundings& around) {
    if (!w.print.today) {
        return;
    }
    for (const visit& v : d.visits) {
        if (v.on > *w.print.today) {
            note(around, "a visit dated " + iso(v.on) + ", after today, " + iso(*w.print.today) +
                             ", doesn't count yet; is its date right?");
        }
    }
    for (const fresh_day& e : d.events) {
        if (e.on < *w.print.today) {
            note(around, "the event of " + iso(e.on) + " is over and doesn't count");
        }
    }
}

}  // namespace

dog dog_of(const dog_options& o, const workplace& w, const surroundings& around, faults& f,
           const std::string& service) {
    dog d = recorded_dog(o, w, around, f);
    apply_options(o, w, d, f);
    if (!o.mix.empty()) {
        d.mix = o.mix;
    }
    if (!d.coat && o.coat.empty() && d.mix.empty()) {
        f.say(errc::missing, "the dog's coat isn't said; write --coat with one of " +
                                 joined(words_of(coat_names), ", ") +
                                 ", or the breeds, as in --mix 'poodle x beagle'");
    }
    if (!o.style.empty()) {
        d.style = o.style;
    }
    const std::vector<std::string> known = words_of(consent_names);
    for (const std::string& id : o.consents) {
        if (std::find(known.begin(), known.end(), id) == known.end()) {
            f.say(errc::unknown, "--consent: unknown; found \"" + id + "\"" +
                                     did_you_mean(id, known) + "; write one of " +
                                     joined(known, ", "));
        }
    }
    d.consents.insert(d.consents.end(), o.consents.begin(), o.consents.end());
    faults told_later;  // where the booking is read
    apply_lengths(o.length, w, d,
                  service.empty() ? nullptr : service_in("", service, w.reference, told_later), f);
    apply_now(o, w, d, f);
    apply_intake(o.found, !o.now.empty(), w, d, f);
    apply_days(o, w, d, f);
    apply_groomed(o, w, d, f);
    note_days(d, w, around);
    return d;
}

std::optional<expected_coat> coat_by_mix(dog& d, const workplace& w) {
    if (d.coat || d.mix.empty()) {
        return std::nullopt;
    }
    expected_coat e = expect_coat(d.mix, w.reference.genes, w.reference.coats);
    d.coat = e.may_be.likeliest();
    return e;
}

namespace {

/// A style that a word of the trade names: the sheets that come nearest to it.
std::string sheets_meant(const std::string& text) {
    const term* t = term_index(io::trade_words()).find(text);
    if (t == nullptr || t->sheets.empty()) {
        return {};
    }
    std::vector<std::string> styles;
    for (const std::string& id : t->sheets) {
        styles.push_back("--style " + id);
    }
    return "\"" + text + "\" is a word of the trade" +
           (t->title == text ? "" : " (" + t->title + ")") +
           " and no sheet's name; the nearest: " + one_of(styles) +
           "; what is left where: --length '25 mm'";
}

}  // namespace

namespace {

/// The sheets made for the dog's coat; all of them where it isn't known or none is.
std::string sheets_to_name(const dog& d, const workplace& w) {
    std::optional<coat_class> coat = d.coat;
    if (!coat && !d.mix.empty()) {
        try {
            coat = expect_coat(d.mix, w.reference.genes, w.reference.coats).may_be.likeliest();
        } catch (const error&) {  // told where the mix is read
            coat = {};
        }
    }
    std::vector<std::string> fit;
    for (const style& s : w.styles) {
        if (coat && std::find(s.coats.begin(), s.coats.end(), *coat) != s.coats.end()) {
            fit.push_back(s.id);
        }
    }
    return fit.empty() ? joined(ids(w.styles), ", ")
                       : joined(fit, ", ") + " (made for a " + std::string(name(*coat)) +
                             " coat; pelage sheet list has all)";
}

}  // namespace

const style* sheet_of(const dog& d, const workplace& w, faults& f) {
    const style* s = find(w.styles, d.style);
    throw_if_unsound(w, d.style, false);
    if (s != nullptr) {
        return s;
    }
    if (const std::string booked = service_meant(d.style, w.reference); !booked.empty()) {
        f.say(errc::unknown, booked);
        return nullptr;
    }
    if (const std::string meant = sheets_meant(d.style); !meant.empty()) {
        f.say(errc::unknown, meant);
        return nullptr;
    }
    f.say(d.style.empty() ? errc::missing : errc::unknown,
          d.style.empty() ? "no style is said; write --style with one of " + sheets_to_name(d, w)
                          : "no style sheet is called \"" + d.style + "\"" +
                                did_you_mean(d.style, ids(w.styles)) + "; there are " +
                                joined(ids(w.styles), ", "));
    return nullptr;
}

}  // namespace pelage::cli
