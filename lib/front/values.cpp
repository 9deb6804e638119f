// What answers hold, as values.
#include <algorithm>

#include "front/state.hpp"

namespace pelage {

namespace detail {

tool_in_hand in_hand(const setup& s) {
    tool_in_hand t{.kind = s.kind, .hand_tool = s.called, .moved = s.way};
    if (s.kind == tool_kind::clip) {
        t.blade = s.tool.id;
        t.lever_at = s.tool.setting;
        t.comb = s.over ? s.over->id : std::string{};
    }
    return t;
}

sheet_card card_of(const style& s) {
    return {s.id, s.title, s.coats};
}

namespace {

step step_of(const block& b, const plan_state& of) {
    step s{.before_bath = b.when == list::before_bath,
           .tool = in_hand(b.how),
           .done = b.done,
           .finished_later = b.off,
           .takes = b.takes};
    for (const std::size_t i : b.zones) {
        const zone_plan& z = of.made.zones[i];
        s.places.push_back({pelage::title(of.home->reference.dog_body, z.at), left_in(b, z)});
    }
    return s;
}

}  // namespace

}  // namespace detail

dog_card::dog_card(const pelage::dog& d) : dog_(std::make_shared<const pelage::dog>(d)) {}
std::string dog_card::id() const {
    return dog_->id;
}
std::string dog_card::name() const {
    return dog_->name;
}
std::optional<coat_class> dog_card::coat() const {
    return dog_->coat;
}
std::string dog_card::sheet() const {
    return dog_->style;
}
bool dog_card::invented() const {
    return dog_->invented;
}
pelage::dog dog_card::all() const {
    return *dog_;
}

days return_day::in() const {
    return of_->when->next_visit;
}
std::optional<date> return_day::on() const {
    return of_->today ? std::optional{plus(*of_->today, of_->when->next_visit)} : std::nullopt;
}
visit_kind return_day::reason() const {
    return of_->when->reason;
}
days return_day::even_odds() const {
    return of_->when->even_odds;
}
days return_day::full_groom() const {
    return of_->when->full_groom;
}
std::optional<double> return_day::fine() const {
    return of_->when->fine;
}
double return_day::chance() const {
    return of_->when->asked;
}

bool plan::goes_ahead() const {
    return made_->made.planned();
}
bool plan::needs_veterinarian() const {
    return made_->made.stopped();
}
bool plan::asks_owner() const {
    return made_->made.question.has_value();
}

std::vector<step> plan::steps() const {
    std::vector<step> out;
    if (goes_ahead()) {
        for (const block& b : made_->made.blocks) {
            out.push_back(detail::step_of(b, *made_));
        }
    }
    return out;
}

std::vector<combed_mat> plan::combed_out() const {
    std::vector<combed_mat> out;
    for (const combing_out& c : made_->made.combed) {
        out.push_back(
            {title(made_->home->reference.dog_body, made_->made.zones[c.zone].at), c.takes});
    }
    return out;
}

work plan::takes() const {
    return made_->made.before + made_->made.after;
}

std::vector<std::string> plan::stuck() const {
    std::vector<place> where;
    for (const std::size_t i : made_->made.stuck) {
        where.push_back(made_->made.zones[i].at);
    }
    return titles(made_->home->reference.dog_body, where);
}

std::vector<plan_caution> plan::cautions() const {
    std::vector<plan_caution> out;
    for (const caution_line& c : made_->made.cautions) {
        out.push_back({c.what.id, c.what.danger, c.what.text,
                       titles(made_->home->reference.dog_body, c.where)});
    }
    return out;
}

return_day plan::return_date() const {
    if (!made_->when) {
        throw error(errc::refused, made_->made.stopped()
                                       ? "this dog isn't groomed now: a veterinarian sees it first"
                                       : "this dog isn't groomed now: its owner is asked first");
    }
    return return_day(made_);
}

dog_card plan::dog() const {
    return dog_card(made_->patient);
}
sheet_card plan::sheet() const {
    return detail::card_of(made_->sheet);
}

bool tool_lookup::never() const {
    return made_->made.never.has_value();
}

std::vector<coat_leaves> tool_lookup::leaves() const {
    std::vector<coat_leaves> out;
    for (const coat_row& r : made_->made.leaves) {
        out.push_back({r.coat, r.with, r.against});
    }
    return out;
}

std::vector<near_tool> tool_lookup::nearest() const {
    std::vector<near_tool> out;
    for (const nearest_row& r : made_->made.nearest) {
        for (const near_setup& n : r.best) {
            out.push_back({r.coat, detail::in_hand(n.how), n.leaves, n.off, n.at_hand});
        }
    }
    return out;
}

std::vector<ladder_rung> kit_ladder::rungs() const {
    std::vector<ladder_rung> out;
    for (const rung& r : made_->made.rungs) {
        out.push_back({detail::in_hand(r.how), r.leaves, !r.out, r.whole_coat});
    }
    return out;
}

bool visit_calendar::possible() const {
    return !made_->made.blocked;
}

std::vector<visit_day> visit_calendar::visits() const {
    std::vector<visit_day> out;
    for (const calendar_visit& v : made_->made.visits) {
        out.push_back({v.on, v.what, v.takes});
    }
    return out;
}

bool kit_report::amiss() const {
    return made_->made.amiss();
}

std::vector<kit_matter> kit_report::matters() const {
    std::vector<kit_matter> out;
    for (const kit_remark& r : made_->made.remarks) {
        out.push_back(r.what);
    }
    return out;
}

}  // namespace pelage
