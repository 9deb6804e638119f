// A roster's lines. Lengths in millimetres to 0.01, minutes to 0.001, whole days; dates ISO 8601.
#include "roster/line_json.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/base/date.hpp>

#include "answers/words/plan.hpp"
#include "roster/json_line.hpp"

namespace pelage::io {

namespace {

class plan_line {
  public:
    plan_line(std::string& out, const groom& g, const plan_request& r) : j_(out), g_(g), r_(r) {}

    void write(std::uint64_t line, const std::optional<return_date>& when,
               const std::optional<coat_answer>& by_mix) {
        j_.begin('{').key("line").whole(static_cast<std::int64_t>(line));
        j_.key("id").text(r_.patient.id).key("alerts").begin('[');
        for (const std::string& one : titles(r_.patient.alerts)) {
            j_.text(one);
        }
        j_.end(']');
        if (!r_.patient.note.empty()) {
            j_.key("note").text(r_.patient.note);
        }
        j_.key("plan").begin('{');
        j_.key("style").text(r_.sheet.id);
        if (by_mix) {
            coats(*by_mix);
        }
        places_to_stop();
        question();
        stuck();
        j_.key("minutes_before_bath").decimal(in_mmin(g_.before), 1000);
        j_.key("minutes_after_bath").decimal(in_mmin(g_.after), 1000);
        combed_out();
        j_.key("blocks").begin('[');
        for (const block& b : g_.blocks) {
            one(b);
        }
        j_.end(']').key("cautions").begin('[');
        for (const caution_line& c : g_.cautions) {
            j_.text(c.what.id);
        }
        j_.end(']').key("consents").begin('[');
        for (const consent& c : g_.consents) {
            j_.begin('{').key("id").text(c.id).key("given").truth(c.given).end('}');
        }
        j_.end(']');
        if (when) {
            back_line(*when);
        }
        if (g_.planned()) {
            j_.key("proven").truth(g_.choice.sure.optimal && g_.order_before.proven &&
                                   g_.order_after.proven);
        }
        j_.end('}').end('}');
    }

  private:
    void at(const place& p) {
        j_.key("zone").text(r_.reference.dog_body.zones[p.zone].id);
        if (p.which != side::both) {
            j_.key("side").text(name(p.which));
        }
    }
    void coats(const coat_answer& a) {
        j_.key("coat_from_mix").begin('[');
        for (const coat_chance& c : a.coats) {
            j_.begin('{').key("coat").text(name(c.coat));
            j_.key("chance").decimal(std::llround(c.chance * 1e6), 1000000).end('}');
        }
        j_.end(']');
    }
    void places_to_stop() {
        j_.key("stop").begin('[');
        for (const std::string& s : titles(r_.reference.dog_body, g_.stop)) {
            j_.text(s);
        }
        j_.end(']').key("stop_signs").begin('[');
        for (const stop_sign s : g_.signs) {
            j_.text(name(s));
        }
        j_.end(']');
    }
    /// Only where there is one: what the owner is asked before a double coat is clipped.
    void question() {
        if (!g_.question) {
            return;
        }
        j_.key("ask_owner").begin('{').key("consent").text("clip-jacket");
        j_.key("why").text("double coat: card it out, don't clip it; it may not grow back");
        j_.key("instead").text(g_.question->instead).end('}');
    }
    void stuck() {
        j_.key("stuck").begin('[');
        for (const std::size_t i : g_.stuck) {
            j_.begin('{');
            at(g_.zones[i].at);
            j_.key("why").text(cause_words(r_, g_.zones[i], length_unit::mm)).end('}');
        }
        j_.end(']');
    }
    void combed_out() {
        j_.key("comb_out").begin('[');
        for (const combing_out& c : g_.combed) {
            j_.begin('{');
            at(g_.zones[c.zone].at);
            j_.key("grade").text(name(c.grade));
            j_.key("minutes").decimal(in_mmin(c.takes), 1000).end('}');
        }
        j_.end(']');
    }
    void one(const block& b) {
        j_.begin('{');
        j_.key("list").text(b.when == list::before_bath ? "before bath" : "after bath");
        if (b.how.kind == tool_kind::clip) {
            j_.key("blade").text(b.how.tool.id);
            if (!b.how.tool.setting.empty()) {
                j_.key("setting").text(b.how.tool.setting);
            }
            if (b.how.over) {
                j_.key("comb").text(b.how.over->id);
            }
            j_.key("direction").text(b.how.way == direction::with_lay ? "with" : "against");
        } else {
            j_.key("tool").text(held(b.how));
        }
        j_.key("finish").text(name(b.done));
        j_.key("minutes").decimal(in_mmin(b.takes), 1000);
        if (b.off) {
            j_.key("finished_after_bath").truth(true);
        }
        j_.key("zones").begin('[');
        for (const std::size_t i : b.zones) {
            const zone_plan& z = g_.zones[i];
            j_.begin('{');
            at(z.at);
            if (const auto& leaves = left_in(b, z)) {
                j_.key("mm").decimal(in_hundredths(leaves->best), 100);
            }
            j_.end('}');
        }
        j_.end(']').end('}');
    }
    void day_and_date(std::string_view days_key, std::string_view date_key, const days& d) {
        j_.key(days_key).whole(static_cast<std::int64_t>(in_days(d)));
        if (r_.today) {
            j_.key(date_key).text(iso(plus(*r_.today, d)));
        }
    }
    void back_line(const return_date& b) {
        j_.key("back").begin('{');
        day_and_date("back_in_days", "back_by", b.next_visit);
        j_.key("ended_by")
            .text(b.reason == visit_kind::by_length     ? "length"
                  : b.reason == visit_kind::by_brushing ? "brushing"
                                                        : "usual interval");
        if (b.fine) {
            j_.key("chance_then").decimal(std::llround(*b.fine * 1e4), 10000);
        }
        day_and_date("even_odds_days", "even_odds_by", b.even_odds);
        day_and_date("full_groom_days", "full_groom_by", b.full_groom);
        j_.end('}');
    }

    json_line j_;
    const groom& g_;
    const plan_request& r_;
};

}  // namespace

void add_plan(std::string& out, std::uint64_t line, const groom& g,
              const std::optional<return_date>& when, const plan_request& r,
              const std::optional<coat_answer>& by_mix) {
    plan_line(out, g, r).write(line, when, by_mix);
    out += '\n';
}

void add_faults(std::string& out, std::uint64_t line, const std::string& id,
                const diagnostics& all) {
    json_line j(out);
    j.begin('{').key("line").whole(static_cast<std::int64_t>(line));
    if (!id.empty()) {
        j.key("id").text(id);
    }
    j.key("error").begin('[');
    const auto tell = [&](unsigned column, std::string_view text) {
        j.begin('{').key("line").whole(static_cast<std::int64_t>(line));
        j.key("column").whole(column).key("message").text(text).end('}');
    };
    constexpr std::size_t most = 20;
    for (std::size_t i = 0; i < std::min(all.size(), most); ++i) {
        tell(all[i].column, all[i].text);
    }
    if (all.size() > most) {
        tell(all[most].column, "and " + std::to_string(all.size() - most) + " more");
    }
    j.end(']').end('}');
    out += '\n';
}

}  // namespace pelage::io
