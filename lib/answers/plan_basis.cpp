#include "answers/plan_basis.hpp"

#include <algorithm>
#include <map>

#include <pelage/base/phrase.hpp>

#include "answers/words/learned.hpp"
#include "answers/words/when.hpp"
#include "planner/usual_interval.hpp"

namespace pelage::io {

namespace {

class basis_list {
  public:
    basis_list(const groom& g, const plan_request& r, const print_options& o)
        : g_(g), r_(r), o_(o), coat_(coat_of(r.reference, *r.patient.coat)) {}

    void date(const return_date& b);
    void misses();
    void mats();
    [[nodiscard]] std::vector<stands_on> all() && { return std::move(all_); }

  private:
    void add(std::string id, std::string text, const evidence& why) {
        all_.push_back({std::move(id), std::move(text), why});
    }
    [[nodiscard]] std::string as(const length& l) const { return show(l, o_.units); }
    static std::string percent(double share) { return detail::fixed(share * 100.0, 0) + " %"; }
    static std::string in_days_of(const days& d) { return detail::fixed(in_days(d), 0) + " days"; }

    void brushing();
    void weights();

    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    const coat& coat_;
    std::vector<stands_on> all_;
};

void basis_list::brushing() {
    const habit h = counted(r_.patient.brushed);
    const figure<double>& factor = r_.rules.matting.brush[static_cast<std::size_t>(h)];
    add("brushing",
        "brushed as it is that length counts " + detail::fixed(factor.best, 2) + " times",
        factor.why);
}

/// The figures a date comes from; a coat that doesn't mat by length has only its usual interval.
void basis_list::date(const return_date& b) {
    const auto& m = r_.rules.matting;
    if (const figure<length>* prone = prone_of(coat_, r_.rules.matting);
        prone != nullptr && b.reason != visit_kind::usual) {
        add("growth",
            "growth " + rate_words(in_mm_per_day(coat_.rate.median), o_.units) +
                " in the middle of such dogs" +
                (r_.patient.measured.empty() ? "" : ", before this dog's own measurements"),
            coat_.rate.why);
        add("matting-length", "mats from about " + as(prone->best), prone->why);
        brushing();
        add("matting-spread",
            "that length lies within a factor of " +
                detail::fixed(std::exp(m.threshold_log_sd.best), 2) + " in two of three dogs",
            m.threshold_log_sd.why);
        if (!r_.asked) {
            add("chance", "asked for a chance of " + odds(m.chance.best), m.chance.why);
        }
    }
    if (r_.sheet.longest_interval && *r_.sheet.longest_interval < usual_interval(r_)) {
        return;  // the sheet's own word
    }
    add("usual-interval",
        "never later than " + in_days_of(usual_interval(r_)) +
            (neglected(r_) ? ", the short end: it isn't brushed or came matted" : ""),
        coat_.usual_interval.why);
}

/// How much a miss shows, place by place: "skull and cheeks 3, back 1.5".
void basis_list::weights() {
    std::map<int, std::pair<std::vector<place>, evidence>, std::greater<>> by_weight;
    for (const zone_plan& z : g_.zones) {
        const zone& where = r_.reference.dog_body.zones[z.at.zone];
        if (z.target) {
            auto& [places, why] = by_weight[where.weight_tenths];
            places.push_back(z.at);
            why = where.weight_why;
        }
    }
    for (const auto& [tenths, what] : by_weight) {
        add("weight",
            "a miss counts " + detail::fixed(tenths / 10.0, 1) + " times at " +
                listed(titles(r_.reference.dog_body, what.first)),
            what.second);
    }
}

void basis_list::misses() {
    if (std::none_of(g_.zones.begin(), g_.zones.end(),
                     [](const zone_plan& z) { return z.target.has_value(); })) {
        return;
    }
    const price_rules& p = r_.rules.prices;
    add("tolerance", "as wished is within " + percent(p.tolerance_share.best),
        p.tolerance_share.why);
    add("tolerance-head", "on the head within " + percent(p.tolerance_head_share.best),
        p.tolerance_head_share.why);
    add("tolerance-least",
        "or within " + as(p.tolerance_cap.best) + ", at most " +
            percent(p.tolerance_cap_share.best) + " of the wish",
        p.tolerance_cap.why);
    add("miss",
        "beyond it a miss as long as the wish itself costs " +
            detail::whole_minutes(p.miss_per_excess.best) + " min",
        p.miss_per_excess.why);
    weights();
}

void basis_list::mats() {
    if (r_.patient.mats.empty()) {
        return;
    }
    const refusal_rules& rules = r_.rules.refusal;
    add("under-mat-share",
        "a blade under a mat states at most " + percent(rules.under_mat_share.best) +
            " of the free hair",
        rules.under_mat_share.why);
    add("under-mat-longest", "and at most " + as(rules.under_mat_longest.best),
        rules.under_mat_longest.why);
}

}  // namespace

std::vector<stands_on> what_it_stands_on(const groom& g, const std::optional<return_date>& when,
                                         const plan_request& r, const print_options& o) {
    basis_list b(g, r, o);
    if (when) {
        b.date(*when);
    }
    b.misses();
    b.mats();
    return std::move(b).all();
}

}  // namespace pelage::io
