// A calendar as a document.
#include <algorithm>
#include <cmath>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/trade/upkeep.hpp>

#include "answers/first_lines.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

std::string count(int n, const std::string& what) {
    return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
}

/// "95 min", "2 h 25 min".
std::string hours(const work& w) {
    const auto all = static_cast<int>(std::lround(in_minutes(w)));
    if (all < 120) {
        return std::to_string(all) + " min";
    }
    return std::to_string(all / 60) + " h" +
           (all % 60 == 0 ? "" : " " + std::to_string(all % 60) + " min");
}

/// Under a head that says minutes.
cell minutes_of(const work& w) {
    return std::int64_t{std::llrint(in_minutes(w))};
}

std::vector<cell> figures(const calendar_sum& s) {
    if (!s.possible) {
        return {"none", {}, {}, {}, {}, {}};
    }
    const auto n = [&](visit_work w) {
        return std::int64_t{s.visits[static_cast<std::size_t>(w)]};
    };
    const std::int64_t both = n(visit_work::bath_and_tidy);
    return {std::int64_t{s.number()},
            n(visit_work::full_groom),
            n(visit_work::tidy) + both,
            n(visit_work::bath) + both,
            minutes_of(s.takes),
            s.by_chance ? detail::fixed(s.throughout * 100.0, 0) + " in 100" : "held"};
}

/// What other chances or habits take; `first` makes the two cells that say which.
template <class First>
typed_table compared(const char* what, const std::vector<calendar_sum>& all, First first) {
    typed_table t{{"", what, "visits", "full", "tidy", "bath", "min", "every time"},
                  {},
                  {false, false, true, true, true, true, true, true}};
    for (const calendar_sum& s : all) {
        std::vector<cell> row = first(s);
        const auto rest = figures(s);
        row.insert(row.end(), rest.begin(), rest.end());
        t.rows.push_back(std::move(row));
    }
    return t;
}

class calendar_writer {
  public:
    calendar_writer(const calendar& c, const calendar_request& r) : c_(c), r_(r) {}

    [[nodiscard]] document all() {
        say_alert(out_, r_.work.patient);
        say(heading(), 2);
        say_note(out_, r_.work.patient);
        if (c_.blocked) {
            blocked();
        } else {
            opening();
            out_.open();
            out_.show(visits());
            out_.open();
            chances();
            comparisons();
        }
        out_.open();
        notes();
        return std::move(out_);
    }

  private:
    void say(const std::string& text, std::size_t indent = 0) { out_.say(text, indent); }
    [[nodiscard]] const coat& coat_here() const {
        return coat_of(r_.work.reference, *r_.work.patient.coat);
    }
    [[nodiscard]] std::string titles(const std::vector<place>& places) const {
        constexpr std::size_t most = 10;
        std::vector<std::string> names;
        for (const place& p : places) {
            names.push_back(title(r_.work.reference.dog_body, p));
        }
        return names.size() <= most ? listed(names) : "nearly the whole coat";
    }

    [[nodiscard]] std::string heading() const {
        const dog& d = r_.work.patient;
        return (d.name.empty() ? "A dog" : d.name) + ": " + r_.work.sheet.title + ", " +
               coat_here().title + ", " + brushing_of(d) +
               (d.invented ? ". An invented dog for trying things out." : ".");
    }

    [[nodiscard]] std::string from_when() const {
        return c_.from_today ? "after today's full groom, " + in_words(c_.from)
                             : "from today, the last full groom being that of " + in_words(c_.from);
    }

    void opening() {
        std::string s =
            count(r_.weeks, "week") + " " + from_when() + ", to " + in_words(c_.until) + ": ";
        s += c_.visits.empty() ? "no visit"
                               : count(c_.sum.number(), "visit") + ", " + hours(c_.sum.takes);
        s += c_.weekday ? ", all on a " + std::string(weekday_names[*c_.weekday]) + "." : ".";
        say(s);
        if (c_.matted) {
            say("Mats were found since: due now. Take them out of the dog's file once they are "
                "gone.");
        }
    }

    [[nodiscard]] std::string clock(due what) const {
        switch (what) {
            case due::matting:
                return "length";
            case due::held:
                return c_.held.empty() || c_.held.size() > 2 ? "what is kept long"
                                                             : titles(c_.held);
            case due::tidy:
                return "face, feet, pads";
            case due::usual:
                return "usual interval";
            case due::event:
                break;
        }
        return {};
    }
    [[nodiscard]] std::string why(const calendar_visit& v) const {
        std::string s;
        for (const due_clock& d : v.due) {
            if (d.what == due::event) {
                continue;
            }
            s += (s.empty() ? "" : "; ") + clock(d.what);
            s += d.by < v.on   ? ", overdue since " + iso(d.by)
                 : d.by > v.on ? " by " + iso(d.by)
                               : "";
        }
        if (v.fresh) {
            s += (s.empty() ? "" : "; ") + std::string("fresh for ") +
                 (v.fresh->name.empty() ? "" : v.fresh->name + " on ") + iso(v.fresh->on);
        }
        return s;
    }

    [[nodiscard]] typed_table visits() const {
        typed_table t{{"date", "day", "visit", "min", "due that day, or by the day named"},
                      {},
                      {false, false, false, true, false}};
        for (const calendar_visit& v : c_.visits) {
            t.rows.push_back({v.on, weekday_in_short(v.on), std::string(name(v.what)),
                              minutes_of(v.takes), why(v)});
        }
        return t;
    }

    void chances() {
        if (!c_.mats_by_length) {
            say("Its length sets no date: the usual interval of a " + coat_here().title +
                " does. The full groom is " +
                (c_.clips ? "the sheet's."
                          : "bath, brushing out and carding as on the sheet; "
                            "the jacket is not clipped."));
            return;
        }
        if (!c_.first.empty()) {
            say("First to mat " + first_to_mat() +
                (c_.sum.by_chance
                     ? ". Each time " + true_odds(c_.sum.asked, c_.sum.least) +
                           " such dogs or more are fine until the visit; " +
                           odds(std::round(c_.sum.throughout * 100.0) / 100.0) +
                           " are fine every time: one that grows fast does so at each visit."
                     : ". Brushing holds it from visit to visit, which is no chance."));
        }
        if (!c_.held.empty()) {
            say("Only brushing holds " + titles(c_.held) +
                " from one combing out to the skin to the next (our guess).");
        }
    }
    [[nodiscard]] std::string first_to_mat() const {
        return std::string(c_.first.size() == 1 ? "is " : "are ") + titles(c_.first);
    }

    void comparisons() {
        if (c_.chances.empty()) {
            return;
        }
        out_.open("What being surer takes");
        out_.show(compared("fine each time", c_.chances, [&](const calendar_sum& s) {
            const bool asked = std::abs(s.asked - c_.sum.asked) < 1e-9;
            return std::vector<cell>{asked ? "asked" : "", likelihood{s.asked}};
        }));
        out_.open("What brushing at home saves");
        out_.show(compared("brushed to the skin", c_.habits, [&](const calendar_sum& s) {
            const bool now = counted(s.habit) == counted(r_.work.patient.brushed);
            const habit h = counted(s.habit);
            return std::vector<cell>{now ? "now" : "",
                                     h == habit::none ? "not at all" : std::string(name(h))};
        }));
        const auto held = [](const calendar_sum& s) { return s.possible && !s.by_chance; };
        if (std::any_of(c_.chances.begin(), c_.chances.end(), held) ||
            std::any_of(c_.habits.begin(), c_.habits.end(), held)) {
            say("  held: brushed out to the skin before length counts, which is no chance", 4);
        }
    }

    [[nodiscard]] std::string in_the_way(due clock) const {
        const calendar_blocked& b = *c_.blocked;
        const auto in = [](int n) { return ", " + count(n, "day"); };
        switch (clock) {
            case due::matting:
                return "the length of " + titles(c_.first) + in(b.runs.length);
            case due::held:
                return "brushing out what is kept long" +
                       (c_.held.empty() ? "" : " (" + titles(c_.held) + ")") +
                       in(b.runs.brush.value_or(0));
            case due::tidy:
                return "face, feet and pads" + in(b.runs.tidy.value_or(0));
            case due::usual:
                return "the usual interval of this coat or sheet";
            case due::event:
                return "the groom before an event";
        }
        return {};
    }
    [[nodiscard]] std::vector<std::string> remedies() const {
        const calendar_blocked& b = *c_.blocked;
        std::vector<std::string> out;
        if (b.brush) {
            out.push_back("brushing to the skin, " + std::string(name(*b.brush)));
        }
        if (b.percent) {
            out.push_back(std::to_string(*b.percent) + " % of the sheet's lengths");
        }
        for (const std::string& s : b.styles) {
            out.push_back("the sheet \"" + s + "\"");
        }
        return out;
    }

    void blocked() {
        const calendar_blocked& b = *c_.blocked;
        say("No calendar of " + count(r_.weeks, "week") + " " + from_when() +
            ": with the days on which a visit can be, nothing goes past " + in_words(b.after) +
            ".");
        bool coat = b.clocks.empty();
        std::vector<std::string> let_go;
        say(b.clocks.empty() ? "Each clock could be kept, but not all together."
                             : "What can't wait so long:");
        for (const due clock : b.clocks) {
            out_.item(in_the_way(clock));
            if (clock == due::matting || clock == due::held) {
                coat = true;
            } else {
                let_go.push_back(in_the_way(clock));
            }
        }
        if (b.days_off) {
            say("With no days off there would be one.");
        }
        if (coat) {
            ways_out(let_go);
        } else {
            say("With a longer wait for that alone there would be one.");
        }
    }
    void ways_out(const std::vector<std::string>& let_go) {
        const auto ways = remedies();
        if (ways.empty()) {
            say("Neither more brushing nor shorter hair nor another sheet for this coat does it.");
            return;
        }
        say(let_go.empty() ? "Any of these does it, tried:"
                           : "Any of these does it, tried, if there is a longer wait for " +
                                 listed(let_go) + ":");
        for (const std::string& s : ways) {
            out_.item(s);
        }
    }

    void notes() {
        std::vector<std::string> shut;
        for (std::size_t i = 0; i < weekday_names.size(); ++i) {
            if (r_.closed.weekdays[i] || r_.work.patient.cannot.weekdays[i]) {
                shut.emplace_back(weekday_names[i]);
            }
        }
        for (const days_off* d : {&r_.closed, &r_.work.patient.cannot}) {
            for (const span_of_days& s : d->spans) {
                const bool told = s.from == s.to && r_.closed.weekdays[weekday_of(s.from)];
                if (s.to >= r_.today && s.from <= c_.until && !told) {
                    shut.push_back(iso(s.from) + (s.from == s.to ? "" : " to " + iso(s.to)));
                }
            }
        }
        if (!shut.empty()) {
            say("No visits: " + listed(shut) + ".");
        }
        for (const date& d : c_.too_far) {
            say("The event on " + iso(d) + " lies after the calendar.");
        }
        const dog& d = r_.work.patient;
        if (!d.mats.empty() || !d.skin.empty()) {
            say("Later grooms are taken to find no mats and no hurt skin.");
        }
        if (r_.work.rules.growth.season_swing.best > 0.0) {
            say("Later intervals are reckoned by the season in which hair grows fastest.");
        }
        if (c_.blocked) {
            return;
        }
        say("Cheapest in minutes, with " + detail::whole_minutes(r_.work.rules.prices.trip.best) +
            " more weighed for each time the owner comes. Minutes and clocks are our guesses until "
            "the salon writes its own. Record each visit in the dog's file, and the calendar goes "
            "on from there.");
    }

    const calendar& c_;
    const calendar_request& r_;
    document out_{r_.work.patient.name.empty() ? "Visits" : "Visits of " + r_.work.patient.name};
};

}  // namespace

document document_of(const calendar& c, const calendar_request& r) {
    return calendar_writer(c, r).all();
}

}  // namespace pelage::io
