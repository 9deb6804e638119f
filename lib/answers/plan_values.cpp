#include "answers/plan_values.hpp"

#include <cmath>

#include <pelage/planner/appointment.hpp>
#include <pelage/trade/zone.hpp>

#include "answers/words/consent.hpp"
#include "answers/words/plan.hpp"

namespace pelage::io {

namespace {

std::string_view list_name(list l) {
    return l == list::before_bath ? "before bath" : "after bath";
}

std::string_view end_name(visit_kind k) {
    return k == visit_kind::by_length     ? "length"
           : k == visit_kind::by_brushing ? "brushing"
                                          : "usual interval";
}

void add_minutes(json_line& j, std::string_view key, const work& w) {
    j.key(key).decimal(in_mmin(w), 1000);
}
void add_mm(json_line& j, std::string_view key, const length& l) {
    j.key(key).decimal(in_hundredths(l), 100);
}

void add_evidence(json_line& j, const evidence& e) {
    j.key("evidence").begin('{').key("basis").text(name(e.how));
    if (!e.from.empty()) {
        j.key("source").text(e.from);
    }
    if (e.relayed) {
        j.key("second_hand").truth(true);
    }
    if (!e.note.empty()) {
        j.key("note").text(e.note);
    }
    j.end('}');
}

/// The keys of a plan one after the other.
class plan_writer {
  public:
    plan_writer(json_line& j, const groom& g, const plan_request& r, plan_detail how)
        : j_(j), g_(g), r_(r), body_(r.reference.dog_body), whole_(how == plan_detail::whole) {}

    void stops() {
        add_titles("stop", g_.stop);
        j_.key("stop_signs").begin('[');
        for (const stop_sign s : g_.signs) {
            j_.begin('{').key("id").text(name(s));
            if (whole_) {
                const stop_rule& rule = r_.reference.stops[static_cast<std::size_t>(s)];
                j_.key("seen").text(rule.seen).key("act").text(rule.act);
                add_evidence(j_, rule.why);
            }
            j_.end('}');
        }
        j_.end(']');
    }
    /// Only where there is one: what the owner is asked before a double coat is clipped.
    void question() {
        if (g_.question) {
            j_.key("ask_owner").begin('{').key("consent").text("clip-jacket");
            j_.key("why").text("double coat: card it out, don't clip it; it may not grow back");
            j_.key("clips").begin('[');
            for (const std::size_t i : g_.question->asked) {
                j_.begin('{');
                at(i);
                j_.end('}');
            }
            j_.end(']').key("instead").text(g_.question->instead).end('}');
        }
    }
    void stuck() {
        j_.key("stuck").begin('[');
        for (const std::size_t i : g_.stuck) {
            j_.begin('{');
            at(i);
            j_.key("why").text(cause_words(r_, g_.zones[i], length_unit::mm)).end('}');
        }
        j_.end(']');
    }
    void work_lists() {
        const bath_care bath = bath_for(r_.patient.skin);
        if (!g_.fleas.empty() && bath != bath_care::none) {
            add_titles("flea_bath_first", g_.fleas);
        }
        if (g_.planned() && bath != bath_care::usual) {
            j_.key("bath").text(bath == bath_care::none ? "none" : "gently");
        }
        add_minutes(j_, "minutes_before_bath", g_.before);
        add_minutes(j_, "minutes_after_bath", g_.after);
        if (g_.planned() && !g_.bath_waits()) {
            const service& s =
                r_.booked != nullptr ? *r_.booked : service_of(r_.reference, service_kind::full);
            j_.key("service").text(name(s.kind));
            add_minutes(j_, "appointment_minutes", appointment_of(r_, g_, s).total());
        }
        j_.key("comb_out").begin('[');
        for (const combing_out& c : g_.combed) {
            j_.begin('{');
            at(c.zone);
            j_.key("grade").text(name(c.grade));
            add_minutes(j_, "minutes", c.takes);
            j_.end('}');
        }
        j_.end(']').key("blocks").begin('[');
        for (const block& b : g_.blocks) {
            add(b);
        }
        j_.end(']');
    }
    void cautions() {
        j_.key("cautions").begin('[');
        for (const caution_line& c : g_.cautions) {
            j_.begin('{').key("id").text(c.what.id);
            if (whole_) {
                j_.key("danger").whole(c.what.danger).key("who").text(c.what.who);
                add_titles("where", c.where);
                j_.key("text").text(c.what.text);
                add_evidence(j_, c.what.why);
            }
            j_.end('}');
        }
        j_.end(']').key("consents").begin('[');
        for (const consent& c : g_.consents) {
            j_.begin('{').key("id").text(c.id);
            if (whole_) {
                j_.key("text").text(consent_words(c, g_, r_));
            }
            j_.key("given").truth(c.given).end('}');
        }
        j_.end(']');
    }
    void back_and_proof(const std::optional<return_date>& when, const days_off& closed) {
        if (when) {
            j_.key("back");
            add_back(j_, *when, r_.today, closed);
        }
        const std::optional<date>& told = r_.patient.promised;
        if (told && r_.today && *told > *r_.today) {
            j_.key("promised").text(iso(*told));
        }
        if (g_.planned()) {
            j_.key("proven").truth(g_.choice.sure.optimal && g_.order_before.proven &&
                                   g_.order_after.proven);
        }
    }

  private:
    void at(std::size_t i) { add_place(j_, body_, g_.zones[i].at); }
    void add_titles(std::string_view key, const std::vector<place>& places) {
        j_.key(key).begin('[');
        for (const std::string& s : titles(body_, places)) {
            j_.text(s);
        }
        j_.end(']');
    }
    void add(const block& b) {
        j_.begin('{').key("list").text(list_name(b.when)).key("setup");
        add_setup(j_, b.how);
        j_.key("finish").text(name(b.done));
        add_minutes(j_, "minutes", b.takes);
        if (b.off) {
            j_.key("finished_after_bath").truth(true);
        }
        if (b.how.kind == tool_kind::clip) {
            add_minutes(j_, "running_minutes", b.running);
        }
        j_.key("zones").begin('[');
        for (const std::size_t i : b.zones) {
            j_.begin('{');
            at(i);
            if (const auto& leaves = left_in(b, g_.zones[i])) {
                add_mm(j_, "leaves_mm", leaves->best);
            }
            j_.end('}');
        }
        j_.end(']').end('}');
    }

    json_line& j_;
    const groom& g_;
    const plan_request& r_;
    const body& body_;
    bool whole_;
};

}  // namespace

void add_place(json_line& j, const body& b, const place& p) {
    j.key("zone").text(b.zones[p.zone].id);
    if (p.which != side::both) {
        j.key("side").text(name(p.which));
    }
}

void add_setup(json_line& j, const setup& s) {
    j.begin('{').key("name").text(title(s));
    if (s.kind == tool_kind::clip) {
        j.key("blade").text(s.tool.id);
        if (!s.tool.setting.empty()) {
            j.key("setting").text(s.tool.setting);
        }
        add_mm(j, "blade_stated_mm", s.tool.stated.best);
        if (s.over) {
            j.key("comb").text(s.over->id);
            add_mm(j, "comb_stated_mm", s.over->stated.best);
        }
        j.key("direction").text(name(s.way));
    }
    j.end('}');
}

void add_finished(json_line& j, const finished& f) {
    j.begin('{');
    add_mm(j, "low_mm", f.low);
    add_mm(j, "best_mm", f.best);
    add_mm(j, "high_mm", f.high);
    j.end('}');
}

void add_back(json_line& j, const return_date& b, const std::optional<date>& today,
              const days_off& closed) {
    const auto decimal_days = [&](const days& d) {
        if (is_never(d)) {
            j.text("never");
        } else {
            j.decimal(std::llround(in_days(d) * 10.0), 10);
        }
    };
    const auto day_and_date = [&](std::string_view days_key, std::string_view date_key,
                                  const days& d) {
        j.key(days_key);
        decimal_days(d);
        if (today && !is_never(d)) {
            j.key(date_key).text(iso(plus(*today, d)));
        }
    };
    const auto share = [&](std::string_view key, chance p) {
        j.key(key).decimal(std::llround(p * 1e6), 1000000);
    };
    const auto if_it_mats = [&](const length& from, const days& d) {
        j.begin('{');
        add_mm(j, "mm", from);
        j.key("back_in_days");
        decimal_days(d);
        j.end('}');
    };
    j.begin('{');
    day_and_date("back_in_days", "back_by", b.next_visit);
    j.key("ended_by").text(end_name(b.reason));
    share("chance", b.asked);
    day_and_date("even_odds_days", "even_odds_by", b.even_odds);
    day_and_date("full_groom_days", "full_groom_by", b.full_groom);
    if (b.fine) {
        share("chance_then", *b.fine);
    }
    if (b.fine_even) {
        share("chance_even_odds", *b.fine_even);
    }
    if (!b.by_brushing.empty()) {
        j.key("brushing_holds_days");
        decimal_days(b.held_for);
    }
    if (b.if_prone) {
        j.key("if_it_mats_from").begin('[');
        if_it_mats(b.if_prone->low, b.if_prone->if_low);
        if_it_mats(b.if_prone->high, b.if_prone->if_high);
        j.end(']');
    }
    if (b.was_due) {
        j.key("was_due").text(iso(*b.was_due));
    }
    if (const auto by = today ? std::optional{plus(*today, b.next_visit)} : std::nullopt;
        by && closed.cover(*by)) {
        const auto open = last_open(closed, *today + std::chrono::days{1}, *by);
        if (open) {
            j.key("last_open_day").text(iso(*open));
        }
    }
    j.end('}');
}

void add_plan(json_line& j, const groom& g, const std::optional<return_date>& when,
              const plan_request& r, plan_detail how, const days_off& closed) {
    plan_writer w(j, g, r, how);
    w.stops();
    w.question();
    w.stuck();
    w.work_lists();
    w.cautions();
    w.back_and_proof(when, closed);
}

}  // namespace pelage::io
