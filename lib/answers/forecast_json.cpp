// How it grows out, and what was learned, as JSON.
#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/json.hpp"
#include "answers/plan_basis.hpp"
#include "answers/words/learned.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

using io::json_of;  // beside those of this file

json rate_json(double log_rate) {
    return thousandth(std::exp(log_rate));
}

/// Days won over another habit; where neither is ever there, none.
json won_json(const days& with, const days& without) {
    if (is_never(with) || is_never(without)) {
        return is_never(without) ? json(0.0) : json("never");
    }
    return days_json(with - without);
}

/// A measurement of the dog, with what is said of it.
json measurement_json(const measurement& m) {
    return {{"date", iso(m.on)}, {"zone", m.whom}, {"length_mm", mm_json(m.is)}};
}

json learning_json(const forecast& f, const plan_request& r) {
    const learned_rate& l = f.learned;
    const auto at = [](const rate_law& law, chance p) {
        return rate_json(std::log(in_mm_per_day(rate_quantile(law, p))));
    };
    json j{
        {"measurements", l.counted.size()},
        {"coat_mm_per_day", rate_json(l.usual.log_median)},
        {"dog_mm_per_day",
         {{"rate_10", at(l.dog, 0.1)}, {"rate_50", at(l.dog, 0.5)}, {"rate_90", at(l.dog, 0.9)}}},
        {"next_mm_per_day",
         {{"rate_10", at(l.next, 0.1)},
          {"rate_50", at(l.next, 0.5)},
          {"rate_90", at(l.next, 0.9)}}},
        {"coat_weight", thousandth(l.coat_weight)}};
    if (f.by_coat) {
        j["back_in_days_by_coat"] = days_json(f.by_coat->next_visit);
    }
    j["counted"] = json::array();
    for (const counted_measurement& m : l.counted) {
        json one = measurement_json(r.patient.measured[m.which]);
        one["days_after_cut"] = days_json(m.read.after);
        one["cut_left_mm"] = mm_json(m.read.start);
        j["counted"].push_back(std::move(one));
    }
    j["visits_counted"] = json::array();
    for (const counted_check& k : l.checks) {
        j["visits_counted"].push_back({{"date", iso(r.patient.visits[k.which].on)},
                                       {"full_groom_before", iso(r.patient.visits[k.cut].on)},
                                       {"matted", k.matted}});
    }
    if (!l.cases.empty()) {
        j["matting_factor"] = {{"log_mean", thousandth(l.factor_mean)},
                               {"log_sd", thousandth(l.factor_sd)}};
    }
    j["left_out"] = json::array();
    for (const left_out_measurement& m : l.left_out) {
        json one = measurement_json(r.patient.measured[m.which]);
        one["why"] = left_out_words(m, r);
        j["left_out"].push_back(std::move(one));
    }
    return j;
}

}  // namespace

std::string json_of(const forecast& f, const plan_request& r, const print_options& o,
                    const mixed_coat* unseen) {
    json j{
        {"schema", "pelage/regrow/1"}, {"alerts", titles(r.patient.alerts)}, {"dog", dog_json(r)}};
    if (unseen != nullptr) {
        j["coat_from_mix"] = unseen_json(*unseen, r);
    }
    if (o.today) {
        j["today"] = iso(*o.today);
    }
    const json when = back_json(f.when, o);
    for (const auto& [key, value] : when.items()) {
        j[key] = value;
    }
    j["usual_interval_days"] = days_json(f.usual);
    j["mats_by_length"] = f.mats_by_length;
    j["zones"] = json::array();
    for (const zone_forecast& z : f.zones) {
        json one{{"title", title(r.reference.dog_body, z.at)}, {"start_mm", mm_json(z.start)}};
        if (z.threshold) {
            one["matting_prone_mm"] = mm_json(*z.threshold);
            one["days_10"] = days_json(z.early);
            one["days_50"] = days_json(z.even);
            one["days_90"] = days_json(z.late);
            one["held_by_brushing"] = z.held;
        }
        j["zones"].push_back(std::move(one));
    }
    j["brushing"] = json::array();
    for (const habit_forecast& h : f.habits) {
        json one = back_json(h.when, o);
        one["habit"] = title(h.habit);
        one["days_won"] = days_json(h.when.next_visit - f.habits.front().when.next_visit);
        one["zones"] = json::array();
        for (std::size_t i = 0; i < h.early.size(); ++i) {
            one["zones"].push_back({{"title", title(r.reference.dog_body, f.zones[i].at)},
                                    {"days_10", days_json(h.early[i])},
                                    {"days_won", won_json(h.early[i], f.habits.front().early[i])}});
        }
        j["brushing"].push_back(std::move(one));
    }
    if (f.tidy_face_feet) {
        j["tidy_face_feet_days"] = days_json(*f.tidy_face_feet);
        j["tidy_sanitary_days"] = days_json(*f.tidy_sanitary);
    }
    if (f.regrown) {
        j["jacket_regrown_days"] = {{"days_10", days_json(f.regrown->in[0])},
                                    {"days_50", days_json(f.regrown->in[1])},
                                    {"days_90", days_json(f.regrown->in[2])}};
        const figure<double>& share = r.rules.growth.delayed_share;
        j["delayed_regrowth"] = {{"share", share.best},
                                 {"low", share.low},
                                 {"high", share.high},
                                 {"evidence", json_of(share.why)}};
    }
    const rate_prior& rate = rate_of(r.reference, r.rules, *r.patient.coat);
    j["growth"] = {{"median_mm_per_day", in_mm_per_day(rate.median)},
                   {"log_sd", rate.log_sd},
                   {"evidence", json_of(rate.why)}};
    if (!r.patient.measured.empty() || f.learned.own()) {
        j["learning"] = learning_json(f, r);
    }
    return dumped(j);
}

std::string proposal_json(const std::vector<population_rate>& lessons, const growth_rules& g) {
    json j{{"schema", "pelage/learn/1"}, {"dogs_needed", g.herd.best}, {"coats", json::array()}};
    for (const population_rate& l : lessons) {
        json one{
            {"coat", name(l.coat)},
            {"dogs", l.dogs},
            {"measurements", l.measurements},
            {"left_out", l.left_out},
            {"reference",
             {{"median_mm_per_day", in_mm_per_day(l.before.median)}, {"log_sd", l.before.log_sd}}}};
        if (l.fit) {
            one["proposed"] = {{"median_mm_per_day", rate_json(l.fit->law.log_median)},
                               {"median_log_error", thousandth(l.fit->median_error)},
                               {"log_sd", thousandth(l.fit->law.log_sd)},
                               {"log_sd_of_the_dogs", thousandth(l.fit->fitted_log_sd)},
                               {"basis", name(basis::measured)}};
        }
        j["coats"].push_back(std::move(one));
    }
    return dumped(j);
}

}  // namespace pelage::io
