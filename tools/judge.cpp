#include "judge.hpp"

#include <algorithm>
#include <charconv>
#include <filesystem>

#include <pelage/io/read.hpp>
#include <pelage/io/reference.hpp>
#include <pelage/phrase.hpp>
#include <pelage/select.hpp>
#include <pelage/suggest.hpp>
#include <pelage/text.hpp>

#include "judge_words.hpp"

namespace pelage::cli {

namespace {

void lay_now(const request& q, const workplace& w, dog& d, faults& f) {
    std::vector<std::vector<place>> before;
    for (const std::string& text : q.now) {
        const auto digit = text.find_first_of("0123456789.");
        const std::string whom{detail::trimmed(text.substr(0, std::min(digit, text.size())))};
        if (digit == std::string::npos || whom.empty() || whom.ends_with('=') ||
            whom.ends_with(':')) {
            f.say(errc::syntax, "--now: a zone and its length are needed; found \"" + text +
                                    "\"; write it like 'body 40 mm'");
            continue;
        }
        const auto meant = places_called("--now", whom, w.reference.dog_body, f);
        if (meant && std::find(before.begin(), before.end(), meant->places) != before.end()) {
            f.say(errc::duplicate, "--now: the same place twice; found \"" + text +
                                       "\" after another there; say it once");
        } else if (meant) {
            before.push_back(meant->places);
        }
        if (const auto l = length_in("--now", text.substr(digit), f)) {
            d.now.push_back({whom, *l});
        }
    }
}

void lay_groomed(const request& q, const workplace& w, dog& d, faults& f) {
    const auto on = q.groomed.empty() ? std::nullopt : day_in("--groomed", q.groomed, f);
    if (!on) {
        return;
    }
    if (w.print.today && *on > *w.print.today) {
        f.say(errc::range, "--groomed: lies after today, " + iso(*w.print.today) + "; found \"" +
                               q.groomed + "\"; write the day of the last full groom");
        return;
    }
    d.visits.erase(std::remove_if(d.visits.begin(), d.visits.end(),
                                  [&](const visit& v) { return v.on > *on; }),
                   d.visits.end());
    d.visits.push_back({*on, "full", {}});
}

void lay_days(const request& q, const workplace& w, dog& d, faults& f) {
    for (const std::string& text : q.cannot) {
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
    for (const std::string& text : q.events) {
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

dog recorded(const request& q, const workplace& w, faults& f) {
    if (q.operands.empty()) {
        dog d;
        d.brushed = {habit::none, false};
        d.brushing_said = !q.brush.empty();
        return d;
    }
    const std::string& name = q.operands.front();
    if (q.operands.size() > 1) {
        f.say(errc::usage,
              "one dog at a time; found \"" + q.operands[1] + "\" after \"" + name + "\"");
    }
    const bool file = name.find('/') != std::string::npos ||
                      (name.size() > 5 && name.substr(name.size() - 5) == ".toml");
    if (file) {
        return io::read_dog(io::slurp(name), w.reference, w.styles);
    }
    throw_if_unsound(w, name, true);
    if (const dog* d = find(w.place().dogs, name)) {
        return *d;
    }
    f.say(errc::unknown, "no dog of the salon is called \"" + name + "\"" +
                             did_you_mean(name, ids(w.place().dogs)) + "; write the id of one (" +
                             joined(ids(w.place().dogs), ", ") + ") or a file that ends in .toml");
    f.throw_if_any();  // without the dog nothing else can be judged
    return {};
}

}  // namespace

style asked_season(const request& q, const style& s, const std::optional<date>& today) {
    if (q.season.empty()) {
        return on_day(s, today);
    }
    const season* one = season_called(s, q.season);
    return one == nullptr ? s : in_season(s, *one);
}

void lay_options(const request& q, dog& d, faults& f) {
    if (!q.coat.empty()) {
        d.coat = coat_called(q.coat, f);
    }
    if (!q.size.empty()) {
        d.size = named<dog_size>("--size", q.size, size_names, f).value_or(d.size);
    }
    if (q.brush.empty()) {
        return;
    }
    const auto b = parse_brushing(q.brush);
    if (b) {
        d.brushed = *b;
        d.brushing_said = true;
    } else {
        f.say(errc::syntax, "--brush: not understood; found \"" + q.brush +
                                "\"; write none, 'weekly to the skin', 'every 3 days to the "
                                "skin' or 'daily on the surface'");
    }
}

void judge_season(const request& q, const style& s, faults& f) {
    if (q.season.empty() || q.season == "none" || s.in_season == q.season) {
        return;
    }
    std::vector<std::string> known{"none"};
    for (const season& one : s.seasons) {
        known.push_back(one.name);
    }
    f.say(errc::unknown, "--season: the sheet \"" + s.id + "\" has no such season; found \"" +
                             q.season + "\"" + did_you_mean(q.season, known) + "; write one of " +
                             joined(known, ", "));
}

void note(const surroundings& around, const std::string& text) {
    if (around.notes != nullptr) {
        around.notes->push_back("pelage: note: " + text + "\n");
    }
}

salon salon_at(const std::string& dir, const catalogue& c, const surroundings& around,
               std::vector<io::unsound_file>& unsound) {
    salon s = io::read_salon_folder(dir, c, unsound);
    for (const io::unsound_file& u : unsound) {
        const std::string more =
            u.faults.size() > 1 ? " (and " + std::to_string(u.faults.size() - 1) + " more)" : "";
        std::string why =
            u.faults.empty() ? u.file + ": the sheet it extends, \"" + u.extends + "\", is faulty\n"
                             : io::text_of({u.faults.front()});
        why.insert(why.size() - 1, more);
        note(around, "left out: " + why.substr(0, why.size() - 1));
    }
    return s;
}

void throw_if_unsound(const workplace& w, const std::string& id, bool dog) {
    const auto called = [&](const io::unsound_file& u) {
        return u.is_dog == dog &&
               (u.id.empty() ? std::filesystem::path(u.file).stem().string() : u.id) == id;
    };
    const auto u = std::find_if(w.unsound.begin(), w.unsound.end(), called);
    if (u == w.unsound.end()) {
        return;
    }
    if (u->faults.empty() && u->extends != id) {
        throw_if_unsound(w, u->extends, dog);
    }
    if (!u->faults.empty()) {
        throw bad_input(u->faults);
    }
}

workplace workplace_of(const request& q, const surroundings& around, faults& f) {
    workplace w{.reference = io::reference()};
    if (q.format == "json") {
        w.json = true;
    } else if (q.format == "ics" && !q.weeks.empty()) {
        w.ics = true;
    } else if (q.format == "csv" && q.all) {
        w.csv = true;
    } else if (q.format == "html" && q.reader == "owner") {
        w.html = true;
    } else if (q.format == "html") {
        f.say(errc::usage,
              "--format: html is for the owner's page; write plan DOG --for owner --format html");
    } else if (q.format != "text") {
        f.say(errc::usage, q.format == "csv"
                               ? "--format: csv is for the ladder; write lookup --all "
                                 "--coat curly --format csv"
                           : q.format == "ics"
                               ? "--format: ics is for a calendar; found no --weeks; write regrow "
                                 "DOG --weeks 26 --format ics"
                               : "--format: found \"" + q.format + "\"; write text or json");
    }
    if (q.units == "in") {
        w.print.units = length_unit::inch;
    } else if (q.units != "mm") {
        f.say(errc::usage, "--units: found \"" + q.units + "\"; write mm or in");
    }
    if (!q.reader.empty() && q.reader != "owner" && q.reader != "trainee") {
        const std::string meant = did_you_mean(q.reader, {"owner", "trainee"});
        f.say(errc::unknown, "--for: found \"" + q.reader + "\"" +
                                 (meant.empty() ? "; write owner or trainee" : meant));
    }
    w.print.trainee = q.reader == "trainee";
    w.print.explain = q.explain;
    w.print.zones = q.zones;
    w.print.today = around.today;
    if (!q.today.empty()) {
        w.print.today = day_in("--today", q.today, f);
    }
    const std::string dir = q.salon.empty() ? around.salon : q.salon;
    if (!dir.empty()) {
        try {
            w.own = salon_at(dir, w.reference, around, w.unsound);
        } catch (const bad_input&) {
            throw;
        } catch (const error& e) {
            if (!q.salon.empty()) {
                throw;
            }
            throw error(e.code(), std::string("PELAGE_SALON: ") + e.what());
        }
    }
    if (!q.kit.empty()) {
        w.own_kit = io::read_kit(io::slurp(q.kit), w.reference);
    }
    if (!q.table.empty()) {
        std::vector<std::string> known;
        for (const table_drawer& t : w.tools().tables) {
            known.push_back(t.id);
        }
        if (std::find(known.begin(), known.end(), q.table) != known.end()) {
            w.own_kit = at_table(w.tools(), q.table);
        } else {
            f.say(errc::unknown, "--table: no table of the kit is called \"" + q.table + "\"" +
                                     did_you_mean(q.table, known) +
                                     (known.empty() ? "; the kit has no [[kit.table]]"
                                                    : "; there are " + joined(known, ", ")));
        }
    }
    w.styles = w.place().styles;
    for (const style& s : w.reference.styles) {
        if (find(w.styles, s.id) == nullptr) {
            w.styles.push_back(s);
        }
    }
    for (style& s : w.styles) {
        s = asked_season(q, s, w.print.today);
    }
    return w;
}

std::optional<days> wait_in(const std::string& option, const std::string& text, faults& f) {
    const auto n = parse_wait(text);
    if (!n) {
        f.say(errc::range, option + ": not a wait of 1 day to 52 weeks; found \"" + text +
                               "\"; write it like 6w, 42d or '6 weeks'");
        return std::nullopt;
    }
    return day(*n);
}

int weeks_in(const std::string& text, faults& f) {
    std::string_view s = detail::trimmed(text);
    const auto n = detail::take_decimal(s);
    if (n && s.empty() && *n == std::floor(*n) && *n >= 4.0 && *n <= 52.0) {
        return static_cast<int>(*n);
    }
    f.say(errc::range,
          "--weeks: a whole number from 4 to 52; found \"" + text + "\"; write it like --weeks 26");
    return 26;
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

std::optional<direction> direction_called(const std::string& text, faults& f) {
    if (text == "with" || text == "against") {
        return text == "with" ? direction::with_lay : direction::against_lay;
    }
    f.say(errc::unknown, "--direction: found \"" + text + "\"; write with or against");
    return std::nullopt;
}

std::optional<coat_class> coat_called(const std::string& text, faults& f) {
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

unsigned jobs_in(const request& q, const surroundings& around, faults& f) {
    if (q.jobs.empty()) {
        return std::clamp(around.cores, 1U, 256U);
    }
    unsigned n = 0;
    const auto [end, failed] = std::from_chars(q.jobs.data(), q.jobs.data() + q.jobs.size(), n);
    if (failed == std::errc{} && end == q.jobs.data() + q.jobs.size() && n >= 1 && n <= 256) {
        return n;
    }
    f.say(errc::range, "--jobs: must be a whole number from 1 to 256; found \"" + q.jobs +
                           "\"; write it like 4, or leave it out for all cores");
    return 1;
}

void refuse_beside_roster(const request& q, faults& f) {
    const auto refuse = [&](bool said, const std::string& what) {
        if (said) {
            f.say(errc::usage,
                  "--roster: each line says it of its own dog; found " + what + "; leave it out");
        }
    };
    refuse(!q.operands.empty(),
           "the dog \"" + (q.operands.empty() ? "" : q.operands.front()) + "\"");
    refuse(!q.coat.empty(), "--coat");
    refuse(!q.style.empty(), "--style");
    refuse(!q.size.empty(), "--size");
    refuse(!q.length.empty(), "--length");
    refuse(!q.brush.empty(), "--brush");
    refuse(!q.now.empty(), "--now");
    refuse(!q.consents.empty(), "--consent");
    const std::vector<std::pair<bool, const char*>> found{{!q.mats.empty(), "--mat"},
                                                          {!q.skin.empty(), "--skin"},
                                                          {!q.sensitive.empty(), "--sensitive"},
                                                          {!q.signs.empty(), "--sign"},
                                                          {!q.alerts.empty(), "--alert"},
                                                          {!q.age.empty(), "--age"},
                                                          {!q.health.empty(), "--health"},
                                                          {!q.outdoors.empty(), "--outdoors"},
                                                          {q.coat_change, "--coat-change"},
                                                          {q.shedding, "--shedding"},
                                                          {q.thin_or_old, "--thin-skin"},
                                                          {q.pink_skin, "--pink-skin"},
                                                          {!q.reader.empty(), "--for"},
                                                          {!q.groomed.empty(), "--groomed"},
                                                          {q.any_sheet, "--any-sheet"}};
    for (const auto& [said, what] : found) {
        refuse(said, what);
    }
    if (q.units != "mm") {
        f.say(errc::usage,
              "--roster: answers are JSON, with their unit in each name; found --units " + q.units +
                  "; leave it out");
    }
    if (q.zones || q.explain) {
        f.say(errc::usage, std::string("--roster: a line of a roster is short; found ") +
                               (q.zones ? "--zones" : "--explain") +
                               "; plan one dog to see more of it");
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

dog dog_of(const request& q, const workplace& w, const surroundings& around, faults& f) {
    dog d = recorded(q, w, f);
    lay_options(q, d, f);
    if (!q.mix.empty()) {
        d.mix = q.mix;
    }
    if (!d.coat && q.coat.empty() && d.mix.empty()) {
        f.say(errc::missing, "the dog's coat isn't said; write --coat with one of " +
                                 joined(words_of(coat_names), ", ") +
                                 ", or the breeds, as in --mix 'poodle x beagle'");
    }
    if (!q.style.empty()) {
        d.style = q.style;
    }
    if (!q.length.empty()) {
        d.body_length = length_in("--length", q.length, f);
    }
    const std::vector<std::string> known = words_of(consent_names);
    for (const std::string& id : q.consents) {
        if (std::find(known.begin(), known.end(), id) == known.end()) {
            f.say(errc::unknown, "--consent: unknown; found \"" + id + "\"" +
                                     did_you_mean(id, known) + "; write one of " +
                                     joined(known, ", "));
        }
    }
    d.consents.insert(d.consents.end(), q.consents.begin(), q.consents.end());
    lay_now(q, w, d, f);
    lay_intake(q, w, d, f);
    lay_days(q, w, d, f);
    lay_groomed(q, w, d, f);
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

const style* sheet_of(const dog& d, const workplace& w, faults& f) {
    const style* s = find(w.styles, d.style);
    throw_if_unsound(w, d.style, false);
    if (s != nullptr) {
        return s;
    }
    f.say(d.style.empty() ? errc::missing : errc::unknown,
          d.style.empty()
              ? "no style is said; write --style with one of " + joined(ids(w.styles), ", ")
              : "no style sheet is called \"" + d.style + "\"" +
                    did_you_mean(d.style, ids(w.styles)) + "; there are " +
                    joined(ids(w.styles), ", "));
    return nullptr;
}

}  // namespace pelage::cli
