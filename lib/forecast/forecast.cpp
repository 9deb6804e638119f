#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <span>

#include <pelage/forecast/forecast.hpp>

namespace pelage {

namespace {

constexpr std::array<chance, 3> shown_chances{0.1, 0.5, 0.9};

bool first_to_mat(const zone_forecast& a, const zone_forecast& b) {
    const auto key = [](const zone_forecast& z) {
        return z.threshold ? in_days(z.early) : std::numeric_limits<double>::infinity();
    };
    return key(a) < key(b);
}

/// When each zone mats, at the chances; reckoned once for zones kept alike.
std::vector<std::vector<days>> quantiles(const kept_coat& k, std::span<const chance> at) {
    std::vector<std::vector<days>> out;
    for (auto z = k.zones.begin(); z != k.zones.end(); ++z) {
        const auto twin = std::find(k.zones.begin(), z, *z);
        out.push_back(twin == z ? prone_quantiles(*z, k.law, at)
                                : out[static_cast<std::size_t>(twin - k.zones.begin())]);
    }
    return out;
}

/// The places of the kept zones, in the order in which they mat.
std::vector<std::size_t> in_order(const std::vector<zone_forecast>& zones) {
    std::vector<std::size_t> order(zones.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return first_to_mat(zones[a], zones[b]);
    });
    return order;
}

template <class T>
std::vector<T> picked(const std::vector<T>& from, const std::vector<std::size_t>& order) {
    std::vector<T> out;
    for (const std::size_t i : order) {
        out.push_back(from[i]);
    }
    return out;
}

std::vector<zone_forecast> zones_of(const kept_coat& k, const groom& g, const return_date& when) {
    const auto when_matted = quantiles(k, shown_chances);
    std::vector<zone_forecast> out;
    for (std::size_t i = 0; i < k.zones.size(); ++i) {
        const kept_zone& z = k.zones[i];
        const bool held = std::find(when.by_brushing.begin(), when.by_brushing.end(), k.index[i]) !=
                          when.by_brushing.end();
        const std::vector<days>& q = when_matted[i];
        out.push_back(
            {g.zones[k.index[i]].at, z.start, z.threshold, q[0], q[1], q[2], held, z.clock});
    }
    return out;
}

/// The same groom with something else known of the dog.
plan_request with(const plan_request& r, const dog& d, const learned_rate* learned) {
    return {r.reference,   r.rules,     r.tools,       d,         r.sheet,     r.today,   r.asked,
            r.length_wish, r.both_ways, r.match_sides, r.by_best, r.patchwork, r.reasons, r.top,
            r.laid,        learned};
}

/// Its zones as those of the groom.
return_date on_the_dog(const kept_coat& k, return_date b) {
    for (std::size_t& i : b.by_brushing) {
        i = k.index[i];
    }
    b.first = b.first ? std::optional{k.index[*b.first]} : std::nullopt;
    return b;
}

/// The date if the dog were known to mat at `factor` times what is taken of it.
days if_it_mats_at(const kept_coat& k, double factor, chance p) {
    shared_law law{k.law.rate, 0.0, k.law.start_error};
    if (!k.law.learned.empty()) {
        // the rate that goes with the nearest factor
        const auto nearest = std::min_element(k.law.learned.begin(), k.law.learned.end(),
                                              [&](const factor_case& a, const factor_case& b) {
                                                  return std::abs(std::log(a.factor / factor)) <
                                                         std::abs(std::log(b.factor / factor));
                                              });
        law.rate = nearest->rate;
    }
    std::vector<kept_zone> zones = k.zones;
    for (kept_zone& z : zones) {
        z.threshold = z.threshold ? std::optional{*z.threshold * factor} : std::nullopt;
    }
    return last_fine_day(zones, law, p, k.usual);
}

std::optional<prone_ends> ends_of(const plan_request& r, const kept_coat& k) {
    const figure<length>* prone =
        prone_of(coat_of(r.reference, r.patient.coat.value()), r.rules.matting);
    if (prone == nullptr) {
        return std::nullopt;
    }
    constexpr chance one_in_twenty = 0.05;
    const double reach = -normal_quantile(one_in_twenty) * r.rules.matting.threshold_log_sd.best;
    const bool stated = prone->low < prone->high;
    double low = stated ? in_mm(prone->low) / in_mm(prone->best) : std::exp(-reach);
    double high = stated ? in_mm(prone->high) / in_mm(prone->best) : std::exp(reach);
    if (!k.law.learned.empty()) {
        double sum = 0.0;
        low = 0.0;
        for (const factor_case& f : k.law.learned) {
            sum += f.weight;
            low = low == 0.0 && sum >= one_in_twenty ? f.factor : low;
            high = sum <= 1.0 - one_in_twenty ? f.factor : high;
        }
    }
    const chance p = chance_asked(r);
    const prone_ends ends{prone->best * low, prone->best * high, if_it_mats_at(k, low, p),
                          if_it_mats_at(k, high, p)};
    return ends.if_low == ends.if_high ? std::nullopt : std::optional{ends};
}

/// The day it was due after the last full groom on record, with the baths since; as it is left now.
std::optional<date> due_by_record(const plan_request& r, const kept_coat& k) {
    if (!r.today) {
        return std::nullopt;
    }
    std::optional<date> full;
    std::optional<date> brushed;
    for (const visit& v : r.patient.visits) {
        if (v.on > *r.today) {
            continue;
        }
        if (v.kind == "full") {
            full = full ? std::max(*full, v.on) : v.on;
        }
        if (v.kind == "full" || v.kind == "bath") {
            brushed = brushed ? std::max(*brushed, v.on) : v.on;
        }
    }
    if (!full || *full == *r.today) {
        return std::nullopt;  // groomed today, it is reckoned from today anyway
    }
    const date usual = plus(*full, k.usual);
    const bool mats = std::any_of(k.zones.begin(), k.zones.end(),
                                  [](const kept_zone& z) { return z.threshold.has_value(); });
    if (!mats) {
        return usual;
    }
    const days clock = brush_out_clock(r.patient.brushed, r.rules.matting);
    const date by_length =
        plus(*full, last_fine_day(k.zones, k.law, chance_asked(r), k.usual, false));
    return std::min(usual, std::max(by_length, plus(std::max(*brushed, *full), clock)));
}

return_date told_date(const plan_request& r, const kept_coat& k) {
    return_date b = on_the_dog(k, return_date_of(k.zones, k.law, chance_asked(r), k.usual));
    b.if_prone = ends_of(r, k);
    b.was_due = due_by_record(r, k);
    return b;
}

std::vector<habit_forecast> habits_of(const plan_request& r, const groom& g,
                                      const std::vector<std::size_t>& order, bool by_zone) {
    std::vector<habit_forecast> out;
    for (std::size_t h = 0; h < habit_names.size(); ++h) {
        dog other = r.patient;
        other.brushed = {static_cast<habit>(h), h != 0};
        const kept_coat k = after_groom(with(r, other, r.learned), g);
        out.push_back({other.brushed,
                       on_the_dog(k, return_date_of(k.zones, k.law, chance_asked(r), k.usual))});
        if (by_zone) {
            for (const auto& q : picked(quantiles(k, std::span(shown_chances).first(1)), order)) {
                out.back().early.push_back(q.front());
            }
        }
    }
    return out;
}

bool clipped_jacket(const plan_request& r, const zone_plan& z) {
    return z.how.kind == tool_kind::clip &&
           r.reference.dog_body.zones[z.at.zone].has(zone_use::jacket);
}

std::optional<regrown_jacket> regrown(const plan_request& r, const groom& done, const coat& c) {
    const bool clipped = std::any_of(done.zones.begin(), done.zones.end(),
                                     [&](const zone_plan& z) { return clipped_jacket(r, z); });
    if (c.kind != cycle::resting || !c.reentry || !clipped) {
        return std::nullopt;
    }
    const resting_coat rest{c.growing_share.best, c.reentry->best, c.terminal.best};
    const rate_law law = prior_rate(rate_of(r.reference, r.rules, c.id), r.rules.growth);
    // regrown: 95 % of the terminal length, as the calibration of the double short class has it
    const length to = c.terminal.best * 0.95;
    const growth_rules& g = r.rules.growth;
    const delay_law late{g.delayed_share.best, g.delay_median.best, g.delay_log_sd.best};
    regrown_jacket out;
    for (std::size_t i = 0; i < shown_chances.size(); ++i) {
        out.in[i] = resting_quantile(rest, law, late, to, shown_chances[i]);
    }
    for (const zone_plan& z : done.zones) {
        if (clipped_jacket(r, z) && z.leaves) {
            out.left = longer(out.left, z.leaves->best);
        }
    }
    return out;
}

}  // namespace

return_date back_of(const plan_request& r, const groom& g) {
    return told_date(r, after_groom(r, g));
}

forecast forecast_of(const plan_request& request, const groom& g, bool by_zone) {
    forecast f;
    f.learned = request.learned != nullptr
                    ? *request.learned
                    : learn_rate(request.patient, request.reference, request.rules, request.today);
    const plan_request r = with(request, request.patient, &f.learned);
    const coat& c = coat_of(r.reference, r.patient.coat.value());
    const kept_coat k = after_groom(r, g);
    f.when = told_date(r, k);
    if (f.learned.own()) {
        const shared_law usual{f.learned.usual, r.rules.matting.threshold_log_sd.best,
                               k.law.start_error};
        f.by_coat = on_the_dog(k, return_date_of(k.zones, usual, chance_asked(r), k.usual));
    }
    f.usual = k.usual;
    f.mats_by_length = mats_by_length(c);
    const auto zones = zones_of(k, g, f.when);
    const auto order = in_order(zones);
    f.zones = picked(zones, order);
    if (f.mats_by_length) {
        f.habits = habits_of(r, g, order, by_zone);
        f.tidy_face_feet = r.rules.matting.tidy_face_feet.best;
        f.tidy_sanitary = r.rules.matting.tidy_sanitary.best;
    }
    f.regrown = regrown(r, g, c);
    for (const zone_plan& z : g.zones) {
        if (!z.leaves || z.came == outcome::stuck) {
            f.unknown.push_back(z.at);
        }
    }
    return f;
}

}  // namespace pelage
