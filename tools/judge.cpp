#include "judge.hpp"

#include <algorithm>
#include <charconv>

#include <pelage/io/read.hpp>
#include <pelage/io/reference.hpp>
#include <pelage/select.hpp>
#include <pelage/suggest.hpp>
#include <pelage/text.hpp>

namespace pelage::cli {

namespace {

template <std::size_t size>
std::vector<std::string> words(const std::array<std::string_view, size>& names) {
    return {names.begin(), names.end()};
}

std::string one_of(const std::vector<std::string>& names) {
    std::string out;
    for (const std::string& n : names) {
        out += (out.empty() ? "" : ", ") + n;
    }
    return out;
}

template <class Enum, std::size_t size>
std::optional<Enum> called(const std::string& option, const std::string& text,
                           const std::array<std::string_view, size>& names, faults& f) {
    const auto at = std::find(names.begin(), names.end(), text);
    if (at != names.end()) {
        return static_cast<Enum>(at - names.begin());
    }
    f.say(errc::unknown, option + ": unknown; found \"" + text + "\"" +
                             did_you_mean(text, words(names)) + "; write one of " +
                             one_of(words(names)));
    return std::nullopt;
}

void lay_now(const request& q, const workplace& w, dog& d, faults& f) {
    for (const std::string& text : q.now) {
        const auto digit = text.find_first_of("0123456789.");
        const std::string whom{detail::trimmed(text.substr(0, std::min(digit, text.size())))};
        if (digit == std::string::npos || whom.empty()) {
            f.say(errc::syntax, "--now: a zone and its length are needed; found \"" + text +
                                    "\"; write it like 'body 40 mm'");
            continue;
        }
        if (!select(w.reference.dog_body, whom)) {
            f.say(errc::unknown, "--now: no zone or group is called \"" + whom + "\"" +
                                     did_you_mean(whom, selectors(w.reference.dog_body)));
        }
        if (const auto l = length_in("--now", text.substr(digit), f)) {
            d.now.push_back({whom, *l});
        }
    }
}

void lay_days(const request& q, dog& d, faults& f) {
    for (const std::string& text : q.cannot) {
        if (const auto off = parse_days_off(text)) {
            d.cannot.add(*off);
        } else {
            f.say(errc::syntax, "--cannot: no day off; found \"" + text +
                                    "\"; write it like Monday, 2026-12-24 or '2026-12-24 to "
                                    "2027-01-03'");
        }
    }
    for (const std::string& text : q.events) {
        const auto within = text.find(" within ");
        const auto on = parse_date(detail::trimmed(std::string_view(text).substr(0, within)));
        const auto n =
            within == std::string::npos ? std::optional{7} : parse_wait(text.substr(within + 8));
        if (on && n) {
            d.events.push_back({*on, *n, {}});
        } else {
            f.say(errc::syntax, "--event: not understood; found \"" + text +
                                    "\"; write it like 2027-05-01 or '2027-05-01 within 7 days'");
        }
    }
    if (q.groomed.empty()) {
        return;
    }
    if (const auto on = parse_date(q.groomed)) {
        d.visits.erase(std::remove_if(d.visits.begin(), d.visits.end(),
                                      [&](const visit& v) { return v.on > *on; }),
                       d.visits.end());
        d.visits.push_back({*on, "full"});
    } else {
        f.say(errc::range,
              "--groomed: no such day; found \"" + q.groomed + "\"; write it like 2026-11-25");
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
    if (const dog* d = find(w.place().dogs, name)) {
        return *d;
    }
    f.say(errc::unknown, "no dog of the salon is called \"" + name + "\"" +
                             did_you_mean(name, ids(w.place().dogs)) + "; write the id of one (" +
                             one_of(ids(w.place().dogs)) + ") or a file that ends in .toml");
    f.throw_if_any();  // without the dog nothing else can be judged
    return {};
}

}  // namespace

workplace workplace_of(const request& q, const surroundings& around, faults& f) {
    workplace w{.reference = io::reference()};
    if (q.format == "json") {
        w.json = true;
    } else if (q.format == "ics" && !q.weeks.empty()) {
        w.ics = true;
    } else if (q.format != "text") {
        f.say(errc::usage, q.format == "ics"
                               ? "--format: ics is for a calendar; found no --weeks; write regrow "
                                 "DOG --weeks 26 --format ics"
                               : "--format: found \"" + q.format + "\"; write text or json");
    }
    if (q.units == "in") {
        w.print.units = length_unit::inch;
    } else if (q.units != "mm") {
        f.say(errc::usage, "--units: found \"" + q.units + "\"; write mm or in");
    }
    w.print.explain = q.explain;
    w.print.zones = q.zones;
    w.print.today = around.today;
    if (!q.today.empty()) {
        w.print.today = parse_date(q.today);
        if (!w.print.today) {
            f.say(errc::range,
                  "--today: no such day; found \"" + q.today + "\"; write it like 2026-11-25");
        }
    }
    const std::string dir = q.salon.empty() ? around.salon : q.salon;
    if (!dir.empty()) {
        w.own = io::read_salon_folder(dir, w.reference);
    }
    if (!q.kit.empty()) {
        w.own_kit = io::read_kit(io::slurp(q.kit), w.reference);
    }
    w.styles = w.place().styles;
    for (const style& s : w.reference.styles) {
        if (find(w.styles, s.id) == nullptr) {
            w.styles.push_back(s);
        }
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

std::optional<coat_class> coat_called(const std::string& text, faults& f) {
    return called<coat_class>("--coat", text, coat_names, f);
}

std::optional<length> length_in(const std::string& option, const std::string& text, faults& f) {
    const parsed_length l = parse_length(text);
    if (l.ok()) {
        return l.value;
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
    if (q.zones || q.explain) {
        f.say(errc::usage, std::string("--roster: a line of a roster is short; found ") +
                               (q.zones ? "--zones" : "--explain") +
                               "; plan one dog to see more of it");
    }
}

dog dog_of(const request& q, const workplace& w, faults& f) {
    dog d = recorded(q, w, f);
    if (!q.coat.empty()) {
        d.coat = coat_called(q.coat, f);
    } else if (!d.coat) {
        f.say(errc::missing,
              "the dog's coat isn't said; write --coat with one of " + one_of(words(coat_names)));
    }
    if (!q.size.empty()) {
        d.size = called<dog_size>("--size", q.size, size_names, f).value_or(d.size);
    }
    if (!q.style.empty()) {
        d.style = q.style;
    }
    if (!q.length.empty()) {
        d.body_length = length_in("--length", q.length, f);
    }
    if (!q.brush.empty()) {
        const auto b = parse_brushing(q.brush);
        if (b) {
            d.brushed = *b;
        } else {
            f.say(errc::syntax, "--brush: not understood; found \"" + q.brush +
                                    "\"; write none, 'weekly to the skin', 'every 3 days to the "
                                    "skin' or 'daily on the surface'");
        }
    }
    const std::vector<std::string> known{"clip-down", "clip-jacket", "show-blades"};
    for (const std::string& id : q.consents) {
        if (std::find(known.begin(), known.end(), id) == known.end()) {
            f.say(errc::unknown, "--consent: unknown; found \"" + id + "\"" +
                                     did_you_mean(id, known) + "; write one of " + one_of(known));
        }
    }
    d.consents.insert(d.consents.end(), q.consents.begin(), q.consents.end());
    lay_now(q, w, d, f);
    lay_days(q, d, f);
    return d;
}

const style* sheet_of(const dog& d, const workplace& w, faults& f) {
    const style* s = find(w.styles, d.style);
    if (s != nullptr) {
        return s;
    }
    f.say(d.style.empty() ? errc::missing : errc::unknown,
          d.style.empty()
              ? "no style is said; write --style with one of " + one_of(ids(w.styles))
              : "no style sheet is called \"" + d.style + "\"" +
                    did_you_mean(d.style, ids(w.styles)) + "; there are " + one_of(ids(w.styles)));
    return nullptr;
}

}  // namespace pelage::cli
