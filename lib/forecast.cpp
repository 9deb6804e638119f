#include <algorithm>

#include <pelage/forecast.hpp>

namespace pelage {

namespace {

chance asked(const groom_request& r) {
    return r.asked.value_or(r.rules.matting.chance.best);
}

bool longest_first(const zone_forecast& a, const zone_forecast& b) {
    const auto key = [](const zone_forecast& z) {
        return z.threshold ? in_days(z.early) : std::numeric_limits<double>::infinity();
    };
    return key(a) < key(b);
}

std::vector<zone_forecast> zones_of(const kept_coat& k, const groom& g, const back& when) {
    std::vector<zone_forecast> out;
    for (std::size_t i = 0; i < k.zones.size(); ++i) {
        const kept_zone& z = k.zones[i];
        const auto alike =
            std::find(k.zones.begin(), k.zones.begin() + static_cast<std::ptrdiff_t>(i), z);
        const auto twin = static_cast<std::size_t>(alike - k.zones.begin());
        zone_forecast f;
        if (twin < i) {
            f = out[twin];
        } else {
            f.start = z.start;
            f.threshold = z.threshold;
            f.clock = z.clock;
            f.early = prone_quantile(z, k.law, 0.1);
            f.even = prone_quantile(z, k.law, 0.5);
            f.late = prone_quantile(z, k.law, 0.9);
        }
        f.at = g.zones[k.index[i]].at;
        f.held = std::find(when.held.begin(), when.held.end(), i) != when.held.end();
        out.push_back(f);
    }
    std::stable_sort(out.begin(), out.end(), longest_first);
    return out;
}

std::vector<habit_forecast> habits_of(const groom_request& r, const groom& g) {
    std::vector<habit_forecast> out;
    for (std::size_t h = 0; h < habit_names.size(); ++h) {
        dog other = r.patient;
        other.brushed = {static_cast<habit>(h), h != 0};
        const groom_request ask{r.reference, r.rules, r.tools,       other,      r.sheet,
                                r.today,     r.asked, r.length_wish, r.both_ways};
        out.push_back({other.brushed, back_of(ask, g)});
    }
    return out;
}

std::optional<std::array<days, 3>> regrown(const groom_request& r, const groom& g, const coat& c) {
    const bool clipped = std::any_of(g.zones.begin(), g.zones.end(), [&](const zone_plan& z) {
        return z.how.kind == tool_kind::clip &&
               r.reference.dog_body.zones[z.at.zone].has(zone_use::jacket);
    });
    if (c.kind != cycle::resting || !c.reentry || !clipped) {
        return std::nullopt;
    }
    const resting_coat rest{c.growing_share.best, c.reentry->best, c.terminal.best};
    const rate_law law = prior_rate(c, r.rules.growth);
    // regrown: 95 % of the terminal length, as the calibration of the double short class has it
    const length to = c.terminal.best * 0.95;
    return std::array<days, 3>{resting_quantile(rest, law, to, 0.1),
                               resting_quantile(rest, law, to, 0.5),
                               resting_quantile(rest, law, to, 0.9)};
}

}  // namespace

back back_of(const groom_request& r, const groom& g) {
    const kept_coat k = after_groom(r, g);
    return when_back(k.zones, k.law, asked(r), k.usual);
}

forecast forecast_of(const groom_request& r, const groom& g) {
    const coat& c = coat_of(r.reference, r.patient.coat.value());
    const kept_coat k = after_groom(r, g);
    forecast f;
    f.when = when_back(k.zones, k.law, asked(r), k.usual);
    f.usual = k.usual;
    f.mats_by_length = c.matting_prone.has_value();
    f.zones = zones_of(k, g, f.when);
    if (f.mats_by_length) {
        f.habits = habits_of(r, g);
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
