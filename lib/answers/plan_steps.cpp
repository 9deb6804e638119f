#include "answers/plan_steps.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <pelage/base/phrase.hpp>

#include "answers/block_notes.hpp"
#include "answers/grouped.hpp"
#include "answers/plan_parts.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/tool.hpp"
#include "planner/at_the_teeth.hpp"

namespace pelage::io {

namespace {

/// Of one grade; more are told by the parts they are on.
constexpr std::size_t few_mats = 2;

using strings = std::vector<std::string>;

/// "matted-area" as it is said.
std::string spoken(std::string_view id) {
    std::string text{id};
    std::replace(text.begin(), text.end(), '-', ' ');
    return text;
}

/// " at the tail", " behind the ears": some titles say where by themselves.
std::string at_the(const std::string& title) {
    const bool itself = title.starts_with("behind ") || title.starts_with("under ");
    return (itself ? " " : " at the ") + title;
}

class step_list {
  public:
    step_list(const groom& g, const plan_request& r, const print_options& o, const beside& b)
        : g_(g), r_(r), o_(o), beside_(b), places_(g, r) {}

    std::vector<plan_step> all() {
        before_tools();
        bool seated = false;
        for (const list when : {list::before_bath, list::after_bath}) {
            for (const block& b : g_.blocks) {
                if (b.when == when) {
                    add(b, b.how.over && !seated);
                    seated = seated || b.how.over;
                }
            }
            if (when == list::before_bath) {
                comb_out(true);
            }
        }
        return std::move(out_);
    }

  private:
    plan_step& add(list when, std::string does) {
        plan_step& s = out_.emplace_back();
        s.number = static_cast<int>(out_.size());
        s.when = when;
        s.does = std::move(does);
        return s;
    }
    void add(const block& b, bool first_comb) {
        plan_step& s = add(b.when, title_words(b.how, o_.units) + then_words(b, r_));
        s.of = &b;
        s.leaves = leaves_of(b);
        s.where = where_of(b);
        s.notes = notes_below(b, first_comb, {g_, r_, o_, beside_});
    }

    /// The look over the dog, mats tried and combed out.
    void before_tools() {
        const auto say = [&](std::string text) -> plan_step& {
            return add(list::before_bath, std::move(text));
        };
        const bool handled_only = booked_in_part(r_) && !r_.booked->has(service_step::brush) &&
                                  !r_.booked->has(service_step::before_bath);
        std::string fleas = flea_bath_words(g_, r_);
        const bool smooth = r_.patient.coat == coat_class::smooth;  // a comb finds nothing there
        std::string look = "look the dog over: skin, ears, eyes, feet";
        if (!handled_only && !smooth) {
            look += flea_bath_first(g_, r_) ? "; feel for mats by hand"
                    : corded(r_.sheet)      ? "; part the cords to the skin by hand"
                    : felted()              ? "; comb and hand check to the skin"
                                            : "; comb check down to the skin";
            look += any_hurt(g_) ? ", not where it is hurt" : "";
        }
        if (fleas_after_mats(g_, r_)) {  // nothing to take up yet
            look += "; " + std::exchange(fleas, {});
        }
        say(std::move(look));
        if (!fleas.empty()) {
            say(std::move(fleas));
        }
        if (const auto [tried, longer] = trials(); !tried.empty()) {
            plan_step& s = say(tried);
            if (!longer.empty()) {
                s.notes.push_back({note_about::skin, {}, longer});
            }
        }
        comb_out(false);
    }
    /// Mats combed out; those at the teeth of a dog that may bite once all else before the bath is done.
    void comb_out(bool last) {
        std::vector<combing_out> some;
        std::copy_if(g_.combed.begin(), g_.combed.end(), std::back_inserter(some),
                     [&](const combing_out& c) {
                         return last ==
                                (may_bite(r_.patient) && at_the_teeth(places_.zone_of(c.zone)));
                     });
        if (some.empty()) {
            return;
        }
        plan_step& s = add(list::before_bath, combed_out(some));
        for (const combing_out& c : some) {
            s.combs.push_back(c.zone);
        }
        if (o_.trainee) {
            s.notes.push_back(
                {note_about::reason, "why: ",
                 "within the " +
                     detail::whole_minutes(comb_out_budget(r_.patient, r_.rules.refusal)) +
                     " min this dog is combed out for: the hair stays"});
        }
    }
    [[nodiscard]] bool felted() const {
        return std::any_of(g_.zones.begin(), g_.zones.end(),
                           [](const zone_plan& z) { return z.mat == mat_grade::pelt; });
    }
    /// "comb out the tangle at the tail and the mat behind the ears, about 4 min"; of many "the tangles (legs,
    /// ears)".
    [[nodiscard]] std::string combed_out(const std::vector<combing_out>& some) const {
        grouped<mat_grade> by_grade;
        work all{};
        for (const combing_out& c : some) {
            by_grade.add(c.grade, c.zone);
            all += c.takes;
        }
        strings each;
        for (const auto& [grade, where] : by_grade.all()) {
            const std::string what = "the " + spoken(name(grade));
            if (where.size() > few_mats) {
                each.push_back(what + "s (" + listed(places_.by_part(where)) + ")");
                continue;
            }
            for (const std::size_t i : where) {
                each.push_back(what + at_the(places_.title_of(i)));
            }
        }
        return (corded(r_.sheet) ? "part by hand " : "comb out ") + listed(each) + ", about " +
               std::to_string(std::lround(in_minutes(all))) + " min";
    }

    /// How deep a mat lies isn't known: tried first, and what more there is beneath would change.
    [[nodiscard]] std::pair<std::string, std::string> trials() const {
        zone_list unknown;
        zone_list last;  // what a muzzle covers comes last
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const bool face = may_bite(r_.patient) && at_the_teeth(places_.zone_of(i));
            if (g_.zones[i].trial) {
                (face ? last : unknown).push_back(i);
            }
        }
        if (unknown.empty() && last.empty()) {
            return {};
        }
        const zone_plan& first = g_.zones[unknown.empty() ? last.front() : unknown.front()];
        const setup& tried = first.off_by ? *first.off_by : first.how;
        strings where;
        if (!unknown.empty()) {
            where.push_back(places_.listed_of(unknown));
        }
        if (!last.empty()) {
            where.push_back(places_.listed_of(last) + " last, before the bath");
        }
        unknown.insert(unknown.end(), last.begin(), last.end());
        const std::string which = unknown.size() == 1 && last.empty()
                                      ? "the mat" + at_the(places_.title_of(unknown.front()))
                                      : "each of these mats: " + joined(where, "; ");
        return {"try " + held_words(tried, o_.units) + " flat under the edge of " + which +
                    "; if it won't pass, end here: a vet decides",
                longer_than(tried, unknown)};
    }
    /// From how much free hair on a longer blade may go under; only where one may go bare at all.
    [[nodiscard]] std::string longer_than(const setup& tried, const zone_list& where) const {
        const refusal_rules& rules = r_.rules.refusal;
        const bool firm = std::all_of(where.begin(), where.end(), [&](std::size_t i) {
            const zone& z = places_.zone_of(i);
            return z.where != group::prep && z.cover == skin::firm;
        });
        std::string more;
        for (const setup& s : setups_of(r_.tools, r_.today, r_.rules.cut)) {
            const bool next = firm && s.kind == tool_kind::clip && !s.over &&
                              s.way == direction::with_lay && s.tool.cut == teeth::full &&
                              s.tool.stated.best > tried.tool.stated.best &&
                              s.tool.stated.best <= rules.under_mat_longest.best;
            if (next) {
                const double lying =
                    in_mm(cut_length(s, coat_of(r_.reference, *r_.patient.coat).lay_degrees.best,
                                     r_.rules.cut)
                              .best);
                const double needed =
                    std::max(in_mm(s.tool.stated.best) / rules.under_mat_share.best, lying);
                more = "measure the free hair beneath: where it is " +
                       show(mm(std::ceil(needed * 10.0) / 10.0), o_.units) + " or more, " +
                       held_words(s, o_.units) + " may go under";
            }
        }
        return more;
    }

    /// What a clipper leaves, where it is the same everywhere.
    [[nodiscard]] std::string leaves_of(const block& b) const {
        const auto& first = left_in(b, g_.zones[b.zones.front()]);
        if (!first || b.how.kind != tool_kind::clip) {
            return {};
        }
        const bool alike = std::all_of(b.zones.begin(), b.zones.end(), [&](std::size_t i) {
            const auto& here = left_in(b, g_.zones[i]);
            return here && *here == *first;
        });
        return alike ? show(*first, o_.units) : std::string{};
    }

    /// "muzzle 25 mm, skull 32 mm" for scissors, "neck, back" for clippers.
    [[nodiscard]] std::string where_of(const block& b) const {
        const bool aimed = b.how.kind == tool_kind::scissors || b.how.kind == tool_kind::thinners;
        strings all;
        zone_list alike;
        for (std::size_t n = 0; n < b.zones.size(); ++n) {
            const std::size_t i = b.zones[n];
            alike.push_back(i);
            const bool last = n + 1 == b.zones.size();
            if (!last && (!aimed || same_aim(i, b.zones[n + 1]))) {
                continue;
            }
            const strings names = places_.titles_of(alike);
            all.insert(all.end(), names.begin(), names.end());
            if (const auto& leaves = g_.zones[i].leaves; aimed && leaves) {
                all.back() += " " + show(leaves->best, o_.units);
            }
            alike.clear();
        }
        return joined(all, ", ");
    }
    /// What a hand tool is aimed at: the wish, or today's hair where that is only tidied.
    [[nodiscard]] bool same_aim(std::size_t a, std::size_t b) const {
        const auto& x = g_.zones[a].leaves;
        const auto& y = g_.zones[b].leaves;
        return x && y && in_hundredths(x->best) == in_hundredths(y->best);
    }

    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    const beside& beside_;
    place_words places_;
    std::vector<plan_step> out_;
};

}  // namespace

std::string plan_step::in_a_line() const {
    return does + (leaves.empty() ? "" : ", leaves " + leaves) +
           (where.empty() ? "" : ": " + where);
}

bool basket_off(const plan_step& s, const groom& g, const plan_request& r) {
    return may_bite(r.patient) && s.of != nullptr &&
           std::all_of(s.of->zones.begin(), s.of->zones.end(), [&](std::size_t i) {
               return at_the_teeth(r.reference.dog_body.zones[g.zones[i].at.zone]);
           });
}

std::vector<plan_step> steps_of(const groom& g, const plan_request& r, const print_options& o,
                                const beside& b) {
    return step_list(g, r, o, b).all();
}

}  // namespace pelage::io
