// Two sheets beside one another, and many sheets tried on one dog, as documents.
#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/format.h>

#include <pelage/answers/sheets.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/trade/upkeep.hpp>

#include "answers/first_lines.hpp"
#include "answers/layout.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/objection.hpp"
#include "answers/words/sheet.hpp"
#include "answers/words/tool.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

std::string minutes_words(const work& w) {
    return detail::whole_minutes(w) + " min";
}

std::string dog_words(const plan_request& r, const std::string& brushed) {
    const dog& d = r.patient;
    return (d.name.empty() ? "a dog" : d.name) + ", " + coat_of(r.reference, *d.coat).title + ", " +
           std::string(name(d.size)) + ", " + brushed;
}

/// What is wished where both say something of the same kind: only what differs.
std::string wish_of(const instruction& i, const instruction& other, length_unit u) {
    instruction some = i;
    if (i.target == other.target && i.blade == other.blade) {
        some.target.reset();
        some.blade.reset();
    }
    some.tolerance = i.tolerance == other.tolerance ? std::nullopt : i.tolerance;
    some.how = i.how == other.how ? std::nullopt : i.how;
    some.way = i.way == other.way || !by_clipper(i) ? std::nullopt : i.way;
    some.between = i.between == other.between ? std::nullopt : i.between;
    const std::string text = wish_words(some, u);
    return text;
}

class comparison_writer {
  public:
    comparison_writer(const sheet_comparison& c, const plan_request& r, const print_options& o)
        : c_(c), r_(r), o_(o) {}

    document all() {
        say_alert(out_, r_.patient);
        out_.say(c_.first->title + " (" + c_.first->id + ") and " + c_.second->title + " (" +
                     c_.second->id + ") on " + dog_words(r_, brushing_of(r_.patient)) + ".",
                 2);
        say_note(out_, r_.patient);
        zones();
        costs();
        return std::move(out_);
    }

  private:
    void zones() {
        if (c_.differ.empty()) {
            out_.open();
            out_.say("They say the same of every zone.");
            return;
        }
        std::vector<std::pair<std::string, std::string>> lines;
        for (const sheet_difference& d : c_.differ) {
            const std::string what = wish_of(d.first, d.second, o_.units) + " becomes " +
                                     wish_of(d.second, d.first, o_.units);
            const std::string where = title(r_.reference.dog_body, d.at);
            const auto same = std::find_if(lines.begin(), lines.end(),
                                           [&](const auto& l) { return l.first == what; });
            if (same == lines.end()) {
                lines.emplace_back(what, where);
            } else {
                same->second += ", " + where;
            }
        }
        out_.open("What differs");
        for (const auto& [what, where] : lines) {
            out_.item(what + ": " + where, 6);
        }
        if (c_.alike > 0) {
            out_.item(std::to_string(c_.alike) + " places the same");
        }
    }

    /// "+3", "-12", "same".
    static std::string change(double a, double b) {
        const double by = std::round(b) - std::round(a);  // as the columns show them
        return by == 0.0 ? "same" : (by > 0.0 ? "+" : "") + detail::fixed(by, 0);
    }

    static cell whole(double v) {
        return std::isfinite(v) ? cell(std::int64_t{std::llrint(v)}) : cell(detail::fixed(v, 0));
    }
    static void row(typed_table& t, std::string what, double a, double b) {
        t.rows.push_back({std::move(what), whole(a), whole(b), change(a, b)});
    }

    void costs() {
        const sheet_cost& a = c_.of_first;
        const sheet_cost& b = c_.of_second;
        if (a.plan.question || b.plan.question) {
            out_.open();
            out_.say(
                "No costs: a double coat is carded, not clipped, unless its owner agrees in "
                "writing.");
            return;
        }
        if (!a.plan.stop.empty() || !b.plan.stop.empty()) {
            out_.open();
            out_.say("Felted to the skin: nothing is planned, a veterinarian decides.");
            return;
        }
        typed_table t;
        constexpr std::size_t widest = 20;  // of a column's head
        const bool fit = c_.first->id.size() <= widest && c_.second->id.size() <= widest;
        t.head = {"what it costs", fit ? c_.first->id : "first", fit ? c_.second->id : "second",
                  "change"};
        t.numbers = {false, true, true, false};
        row(t, "minutes to clip and finish", in_minutes(a.takes()), in_minutes(b.takes()));
        row(t, "setups", static_cast<double>(a.setups), static_cast<double>(b.setups));
        row(t, "blades and combs", static_cast<double>(a.tools.size()),
            static_cast<double>(b.tools.size()));
        row(t, "places not as wished", static_cast<double>(missed(a)),
            static_cast<double>(missed(b)));
        row(t, "back in days, " + odds(a.when.asked), in_days(a.when.next_visit),
            in_days(b.when.next_visit));
        visits(t);
        out_.open();
        out_.show(std::move(t));
        tools();
        why_no_calendar();
        out_.say(
            "Minutes and growth are our guesses until you measure; both sheets are planned "
            "with this kit on the same dog.",
            2);
    }

    void visits(typed_table& t) const {
        const auto& a = c_.of_first.visits;
        const auto& b = c_.of_second.visits;
        if (!a || !b || !a->sum.possible || !b->sum.possible) {
            return;
        }
        const auto n = [](const calendar& c, visit_work w) {
            return static_cast<double>(c.sum.visits[static_cast<std::size_t>(w)]);
        };
        row(t, "visits in half a year", a->sum.number(), b->sum.number());
        for (const visit_work w : {visit_work::full_groom, visit_work::bath,
                                   visit_work::bath_and_tidy, visit_work::tidy}) {
            if (n(*a, w) + n(*b, w) > 0.0) {
                row(t, "  " + std::string(name(w)), n(*a, w), n(*b, w));
            }
        }
        row(t, "minutes in half a year", in_minutes(a->sum.takes), in_minutes(b->sum.takes));
    }

    void why_no_calendar() {
        for (const auto& [sheet, cost] :
             {std::pair{c_.first, &c_.of_first}, std::pair{c_.second, &c_.of_second}}) {
            if (cost->visits && !cost->visits->sum.possible) {
                out_.say(sheet->id + ": no calendar of half a year keeps this dog at " +
                             odds(cost->when.asked) + " in each interval.",
                         2);
            }
        }
    }

    [[nodiscard]] static std::size_t missed(const sheet_cost& c) {
        return static_cast<std::size_t>(
            std::count_if(c.plan.zones.begin(), c.plan.zones.end(), [](const zone_plan& z) {
                return z.came == outcome::off_target || z.came == outcome::stuck ||
                       z.came == outcome::clipped_under;
            }));
    }

    void tools() {
        const auto only = [this](const sheet_cost& x, const sheet_cost& y) {
            std::vector<std::string> out;
            for (const held_tool& t : x.tools) {
                if (std::find(y.tools.begin(), y.tools.end(), t) == y.tools.end()) {
                    out.push_back(held_words(t, o_.units));
                }
            }
            return out;
        };
        const auto a = only(c_.of_first, c_.of_second);
        const auto b = only(c_.of_second, c_.of_first);
        if (!a.empty()) {
            out_.say_of("Only for " + c_.first->id + ": ", listed(a));
        }
        if (!b.empty()) {
            out_.say_of("Only for " + c_.second->id + ": ", listed(b));
        }
    }

    const sheet_comparison& c_;
    const plan_request& r_;
    const print_options& o_;
    document out_{c_.first->title + " and " + c_.second->title};
};

std::string carried_line(const ranked_sheet& t, const print_options& o) {
    std::string text = t.own ? "its own sheet; " : t.for_mix ? "made for its mix; " : "";
    text += minutes_words(t.takes());
    if (t.when) {
        text += ", back by " + come_by(t.when->next_visit, o);
        if (t.when->next_visit < t.when->full_groom) {
            text += ", full groom by " + come_by(t.when->full_groom, o);
        }
    }
    if (t.away && !t.own) {
        text += ", " + show(*t.away, o.units) + " off its own sheet on average";
    }
    return text;
}

std::string instead_line(const ranked_sheet& t, const tool_instead& i, const plan_request& r,
                         length_unit u) {
    const std::string left = show(i.leaves.best, u);
    const std::string would = show(i.would_leave.best, u);
    return "blade " + i.out + " is out: " + title_words(i.instead, u) + " in its place, leaves " +
           left + (left == would ? " as well" : ", not " + would) + ": " +
           some_places(titles_in(t, i.where, r));
}

std::string reasons(const ranked_sheet& t, const plan_request& r, length_unit u) {
    std::vector<std::string> texts;
    for (told_objection& why : told_objections(t, r, u)) {
        texts.push_back(std::move(why.text));
    }
    return joined(texts, "; ");
}

class trials_writer {
  public:
    trials_writer(const plan_request& r, const days& wait, const print_options& o)
        : r_(r), wait_(wait), o_(o) {}

    document all(const std::vector<ranked_sheet>& trials) {
        std::vector<std::string> no;
        std::vector<std::string> other_coats;
        std::vector<const ranked_sheet*> hair;
        const std::string brushed =
            r_.patient.brushing_said ? title(r_.patient.brushed) : "brushed as each sheet assumes";
        say_alert(out_, r_.patient);
        out_.say("Which sheet? " + dog_words(r_, brushed) + ".", 2);
        say_note(out_, r_.patient);
        out_.open("It can carry");
        for (const ranked_sheet& t : trials) {
            if (t.carried()) {
                say_numbered(t, "");
            } else if (t.carried_but_for_hair()) {
                hair.push_back(&t);
            } else if (t.wrong_coat()) {
                other_coats.push_back(t.sheet->id + " (" + coats_of(*t.sheet) + ")");
            } else {
                no.push_back(name_of(t) + ": " + reasons(t, r_, o_.units));
            }
        }
        if (n_ == 0) {
            out_.sections.back().heading = "It can carry none of them as written.";
        }
        if (!hair.empty()) {
            out_.open("Nearly: only mats or today's hair keep it from coming out as written");
        }
        for (const ranked_sheet* t : hair) {
            say_numbered(*t, "; but for: " + reasons(*t, r_, o_.units));
        }
        if (!no.empty()) {
            out_.open("Not today");
        }
        for (const std::string& text : no) {
            out_.item(text, 5);
        }
        if (!other_coats.empty()) {
            out_.open();
            out_.say_of("Not for a " + coat_of(r_.reference, *r_.patient.coat).title + ": ",
                        listed(other_coats));
        }
        out_.open();
        out_.say(rule(), 2);
        return std::move(out_);
    }

  private:
    static std::string name_of(const ranked_sheet& t) {
        return t.sheet->title + " (" + t.sheet->id + ")";
    }
    [[nodiscard]] std::string coats_of(const style& s) const {
        std::vector<std::string> names;
        for (const coat_class k : coats_for(s, r_.reference)) {
            names.emplace_back(name(k));
        }
        return listed(names);
    }
    void say_numbered(const ranked_sheet& t, const std::string& more) {
        out_.add({line_as::item, name_of(t) + ": " + carried_line(t, o_) + more,
                  padded(std::to_string(++n_), 3, true) + "  ", 0, 5});
        for (const tool_instead& i : t.instead) {
            out_.add({line_as::item, instead_line(t, i, r_, o_.units), {}, 5, 7});
        }
    }
    [[nodiscard]] std::string rule() const {
        const bool own = !r_.patient.style.empty();
        return "Carried: the sheet is for such a coat, everything is allowed, every zone ends "
               "within "
               "its tolerance, and " +
               odds(chance_asked(r_)) + " such dogs are fine until their full groom for " +
               detail::fixed(in_days(wait_), 0) +
               " days or longer (21 days is the shortest rota in common use, no source; --back-in "
               "asks for another). Ranked: " +
               (own ? "its own sheet, then the nearest to it by the mean difference in length, "
                      "then "
                    : "") +
               "those made for its mix, then the longest wait, then the fewest minutes.";
    }

    const plan_request& r_;
    days wait_;
    const print_options& o_;
    document out_{"Which sheet?"};
    int n_ = 0;
};

}  // namespace

document document_of(const sheet_comparison& c, const plan_request& r, const print_options& o) {
    return comparison_writer(c, r, o).all();
}

document document_of(const std::vector<ranked_sheet>& all, const plan_request& r, const days& wait,
                     const print_options& o) {
    return trials_writer(r, wait, o).all(all);
}

}  // namespace pelage::io
