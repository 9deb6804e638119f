#include "forecast/calendar_clocks.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/model/mats_dealt_with.hpp>
#include <pelage/planner/appointment.hpp>

#include "planner/plan_again.hpp"

namespace pelage {

namespace {

int whole(const days& d) {
    return static_cast<int>(std::floor(in_days(d)));
}

coat_to_keep kept(kept_coat k) {
    coat_to_keep out{std::move(k.zones), std::move(k.index), std::move(k.law), k.usual, {}};
    for (const kept_zone& z : out.zones) {
        if (z.threshold) {
            out.clock = z.clock;  // one habit, one clock
        }
    }
    return out;
}

/// What the sheet leaves is never cut: by the later grooms it is taken as grown to its matting-prone
/// length, and so as held by brushing alone.
void add_what_is_left(const plan_request& r, const groom& today, const groom& steady,
                      kept_coat& k) {
    const kept_coat now = after_groom(r, today);
    for (std::size_t i = 0; i < now.zones.size(); ++i) {
        const zone_plan& z = today.zones[now.index[i]];
        const auto same = std::find_if(steady.zones.begin(), steady.zones.end(),
                                       [&](const zone_plan& s) { return s.at.zone == z.at.zone; });
        if (z.came == outcome::left_by_sheet && now.zones[i].threshold &&
            same != steady.zones.end()) {
            kept_zone grown = now.zones[i];
            grown.start = longer(grown.start, *grown.threshold);
            k.zones.push_back(grown);
            k.index.push_back(static_cast<std::size_t>(same - steady.zones.begin()));
        }
    }
}

/// The dog at a later groom.
dog without_findings(dog d) {
    d.mats.clear();
    d.skin.clear();
    d.now.clear();
    return d;
}

/// A calendar runs through the year: its intervals are reckoned by the season of fastest growth.
void at_its_fastest(const plan_request& r, kept_coat& k) {
    const growth_rules& g = r.rules.growth;
    k.law.grow_by(std::log((1.0 + g.season_swing.best) / season_factor(g, r.today, k.usual)));
}

void keep_coats(const calendar_request& r, const plan_request& ask, const groom& g,
                grooms_to_come& c) {
    kept_coat later = after_groom(ask, c.steady);
    add_what_is_left(ask, g, c.steady, later);
    at_its_fastest(ask, later);
    c.later = kept(std::move(later));
    c.first = last_by_file_of(r).full > 0 ? c.later : kept(after_groom(ask, g));
}

bool trims(const zone_plan& z) {
    return z.how.kind == tool_kind::clip || z.how.kind == tool_kind::scissors ||
           z.how.kind == tool_kind::thinners;
}

/// The tidy clock: of those places that the sheet trims at all.
std::optional<int> tidy_clock(const plan_request& r, const groom& g) {
    std::optional<days> soonest;
    const auto see = [&](const days& d) { soonest = soonest ? std::min(*soonest, d) : d; };
    for (const zone_plan& z : g.zones) {
        const zone& where = r.reference.dog_body.zones[z.at.zone];
        if (trims(z) && (where.where == group::head || where.where == group::feet ||
                         where.has(zone_use::pads))) {
            see(r.rules.matting.tidy_face_feet.best);
        }
        if (trims(z) && where.has(zone_use::sanitary)) {
            see(r.rules.matting.tidy_sanitary.best);
        }
    }
    return soonest ? std::optional{std::max(1, whole(*soonest))} : std::nullopt;
}

visit_clocks clocks_of(const coat_to_keep& c, const std::optional<int>& tidy, chance p) {
    visit_clocks v;
    v.full = std::max(1, whole(c.usual));
    v.length = length_clock(c, p, c.usual);
    if (c.clock && v.length < v.full) {
        v.brush = std::max(1, whole(*c.clock));
    }
    v.tidy = tidy;
    return v;
}

std::array<work, visit_work_names.size()> costs_of(const plan_request& r, const grooms_to_come& c) {
    const price_rules& p = r.rules.prices;
    const double size = p.size[static_cast<std::size_t>(r.patient.size)].best;
    const work tidy = minutes(in_minutes(p.tidy.best) * size);
    const work trip = p.trip.best;
    const work bath = minutes_beside_plan(service_of(r.reference, service_kind::bath),
                                          r.patient.size, *r.patient.coat, p);
    // a tidy on its own is no bath: taken in, tidied, handed back
    return {
        trip + p.visit.best + tidy, trip + bath,
        trip + std::max({bath, c.bath_and_tidy, p.visit.best + tidy}),
        trip + appointment_of(r, c.steady, service_of(r.reference, service_kind::full)).total()};
}

}  // namespace

last_by_file last_by_file_of(const calendar_request& r) {
    const auto last = [&](std::string_view kind) {
        std::optional<date> on;
        for (const visit& v : r.work.patient.visits) {
            if (v.kind == kind && v.on <= r.today) {
                on = on ? std::max(*on, v.on) : v.on;
            }
        }
        return on;
    };
    const auto ago = [&](const date& d) { return whole(between(d, r.today)); };
    const auto full = last("full");
    if (!full) {
        return {};
    }
    last_by_file l{ago(*full), ago(*full), ago(*full)};
    if (const auto bath = last("bath")) {
        l.brush = std::min(l.brush, ago(*bath));
    }
    if (const auto tidy = last("tidy")) {
        l.tidy = std::min(l.tidy, ago(*tidy));
    }
    return l;
}

grooms_to_come grooms_of(const calendar_request& r, const groom& g) {
    const dog later = without_findings(r.work.patient);
    grooms_to_come c;
    plan_request ask = ask_again(r.work, later, r.work.sheet);
    ask.laid = r.work.laid;
    c.steady = make_plan(ask);
    keep_coats(r, r.work, g, c);
    const service& full = service_of(r.work.reference, service_kind::full);
    if (last_by_file_of(r).full > 0 && !r.work.patient.mats.empty()) {
        c.mats = std::max(work{}, appointment_of(r.work, g, full).total() -
                                      appointment_of(ask, c.steady, full).total());
    }
    const service& tidy = service_of(r.work.reference, service_kind::tidy);
    ask.booked = &tidy;
    c.bath_and_tidy = appointment_of(ask, make_plan(ask), tidy).total();
    return c;
}

grooms_to_come brushed_otherwise(const calendar_request& r, const groom& g,
                                 const grooms_to_come& now, const brushing& b) {
    dog other = r.work.patient;
    other.brushed = b;
    grooms_to_come c;
    c.steady = now.steady;
    c.bath_and_tidy = now.bath_and_tidy;
    c.mats = now.mats;
    keep_coats(r, ask_again(r.work, other, r.work.sheet), g, c);
    return c;
}

int length_clock(const coat_to_keep& c, chance p, const days& cap) {
    return whole(last_fine_day(c.zones, c.law, p, cap, false));
}

schedule_problem problem_of(const calendar_request& r, const grooms_to_come& c, chance p) {
    schedule_problem b;
    b.last = 7 * r.weeks;
    const last_by_file ago = last_by_file_of(r);
    b.full_ago = ago.full;
    b.brush_ago = ago.brush;
    b.tidy_ago = ago.tidy;
    for (int n = 0; n <= b.last; ++n) {
        const date on = r.today + std::chrono::days{n};
        b.open.push_back(!r.closed.cover(on) && !r.work.patient.cannot.cover(on));
    }
    for (const fresh_day& f : r.work.patient.events) {
        const int on = whole(between(r.today, f.on));
        if (on >= 1 && on <= b.last) {
            b.fresh.push_back({on, f.within});
            b.open[static_cast<std::size_t>(on)] = false;
        }
    }
    b.gap = whole(r.work.rules.matting.visits_apart.best);
    b.costs = costs_of(r.work, c);
    const auto tidy = tidy_clock(r.work, c.steady);
    b.first = clocks_of(c.first, tidy, p);
    b.later = clocks_of(c.later, tidy, p);
    if (b.full_ago > 0 && matted_since(r.work.patient)) {
        b.first.full = std::min(b.first.full, b.full_ago);  // matted since: due now
    }
    return b;
}

}  // namespace pelage
