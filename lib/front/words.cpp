// Answers of the front door as bytes: what the writers of answers/ make of them.
#include <algorithm>

#include <pelage/answers/asked_first.hpp>
#include <pelage/answers/kit.hpp>
#include <pelage/answers/owner_page.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/forecast/all_coats.hpp>
#include <pelage/planner/alternatives.hpp>
#include <pelage/planner/grow_back.hpp>

#include "answers/words/dates.hpp"
#include "answers/words/tool.hpp"
#include "answers/words/when.hpp"
#include "front/state.hpp"

namespace pelage {

namespace {

std::optional<mixed_coat> unseen(const detail::plan_state& s, const plan_request& r) {
    return s.by_mix ? std::optional{mixed_coat{*s.by_mix,
                                               on_other_coats(r, s.made, s.by_mix->may_be.coats)}}
                    : std::nullopt;
}

beside beside_of(const detail::plan_state& s, const plan_request& r) {
    beside b = beside_plan(r, s.made, false);
    for (other_way& w : b.ways) {
        w.when = s.by_mix ? back_of(r, w.plan, s.by_mix->may_be.coats) : back_of(r, w.plan);
    }
    return b;
}

bool same_length(const step_place& a, const step_place& b) {
    return a.leaves_length.has_value() == b.leaves_length.has_value() &&
           (!a.leaves_length || *a.leaves_length == *b.leaves_length);
}

}  // namespace

std::string text(const tool_in_hand& t, length_unit u) {
    setup s = by_hand(t.kind);
    s.tool.id = t.blade;
    s.tool.setting = t.lever_at;
    if (!t.comb.empty()) {
        s.over.emplace().id = t.comb;
    }
    s.way = t.moved;
    s.called = t.hand_tool;
    return io::title_words(s, u);
}

std::string text(const step& s, length_unit u) {
    const bool alike = std::all_of(s.places.begin(), s.places.end(), [&](const step_place& p) {
        return same_length(p, s.places.front());
    });
    std::vector<std::string> where;
    for (const step_place& p : s.places) {
        where.push_back(p.title +
                        (alike || !p.leaves_length ? "" : " " + show(p.leaves_length->best, u)));
    }
    const bool one = alike && !s.places.empty() && s.places.front().leaves_length;
    const char* then = s.finished_later                      ? ", to be finished after the bath"
                       : s.done == finish::comb_then_scissor ? ", then scissor to shape"
                                                             : "";
    return text(s.tool, u) + then +
           (one ? ", leaves " + show(*s.places.front().leaves_length, u) : std::string{}) + ": " +
           joined(where, ", ");
}

std::string text(const ladder_rung& r, length_unit u) {
    return text(r.tool, u) + ": " + show(r.leaves_length, u);
}

std::string text(const return_day& d, length_unit u) {
    const detail::plan_state& s = *d.of_;
    return io::when_in_words(*s.when, s.made, s.request(), s.print(u));
}

std::string text(const plan& p, length_unit u) {
    const detail::plan_state& s = *p.made_;
    const plan_request r = s.request();
    const auto mixed = unseen(s, r);
    if (s.made.question) {
        return io::text_of(
            io::asked_first(s.made, r, s.print(u), mixed ? &*mixed : nullptr, io::plan_told::card),
            u);
    }
    return io::text_of(
        io::card_of(s.made, s.when, r, s.print(u), beside_of(s, r), mixed ? &*mixed : nullptr), u);
}

std::string text_in_full(const plan& p, length_unit u) {
    const detail::plan_state& s = *p.made_;
    const plan_request r = s.request();
    const auto mixed = unseen(s, r);
    if (s.made.question) {
        return io::text_of(
            io::asked_first(s.made, r, s.print(u), mixed ? &*mixed : nullptr, io::plan_told::whole),
            u);
    }
    return io::text_of(
        io::document_of(s.made, s.when, r, s.print(u), beside_of(s, r), mixed ? &*mixed : nullptr),
        u);
}

std::string json(const plan& p) {
    const detail::plan_state& s = *p.made_;
    const plan_request r = s.request();
    const auto mixed = unseen(s, r);
    return io::json_of(s.made, s.when, r, s.print(length_unit::mm), beside_of(s, r),
                       mixed ? &*mixed : nullptr);
}

std::string html(const plan& p, length_unit u) {
    const detail::plan_state& s = *p.made_;
    const plan_request r = s.request();
    io::owner_matter m{s.made, r, s.when};
    m.from = s.home->files.card;
    forecast ahead;
    std::vector<regrowth_option> grow_back;
    std::vector<infeasible_zone> stuck;
    std::vector<other_way> ways;
    if (s.when) {
        ahead = forecast_of(r, s.made, false);
        if (s.by_mix) {
            over_all_coats(ahead, r, s.made, s.by_mix->may_be.coats);
        }
        grow_back = ways_to_grow_back(r, s.made);
        m.ahead = &ahead;
        m.grow_back = &grow_back;
        stuck = s.made.stuck.empty() ? stuck : infeasible_zones(r, s.made);
        m.stuck = &stuck;
        ways = io::owner_chooses(s.made) ? beside_of(s, r).ways : ways;
        m.ways = &ways;
    }
    return io::html_of(io::document_of(m, s.print(u)), u);
}

std::string text(const tool_lookup& l, length_unit u) {
    const io::print_options o{.units = u, .today = l.made_->today};
    return io::text_of(io::document_of(l.made_->made, l.made_->request(), o), u);
}
std::string json(const tool_lookup& l) {
    return io::json_of(l.made_->made, l.made_->request());
}

std::string text(const kit_ladder& l, length_unit u) {
    const detail::ladder_state& s = *l.made_;
    const io::print_options o{.units = u, .today = s.asked.today};
    return io::text_of(io::document_of(s.made, s.asked.request(), o), u);
}
std::string json(const kit_ladder& l) {
    return io::json_of(l.made_->made, l.made_->asked.request());
}
std::string csv(const kit_ladder& l) {
    return io::csv_of(io::document_of(l.made_->made, l.made_->asked.request(), {}));
}

std::string text(const visit_calendar& c, length_unit u) {
    return detail::with_request(*c.made_, [&](const calendar_request& r) {
        return io::text_of(io::document_of(c.made_->made, r), u);
    });
}
std::string json(const visit_calendar& c) {
    return detail::with_request(
        *c.made_, [&](const calendar_request& r) { return io::json_of(c.made_->made, r); });
}
std::string ics(const visit_calendar& c) {
    return detail::with_request(
        *c.made_, [&](const calendar_request& r) { return io::ics_of(c.made_->made, r); });
}

std::string text(const kit_report& k, length_unit u) {
    const io::print_options o{.units = u, .today = k.made_->today};
    return io::text_of(io::document_of(k.made_->made, k.made_->request(), o), u);
}
std::string json(const kit_report& k) {
    return io::json_of(k.made_->made, k.made_->request());
}

}  // namespace pelage
