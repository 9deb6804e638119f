#include <pelage/model/refusal.hpp>
#include <pelage/planner/appointment.hpp>

#include "planner/targets.hpp"

namespace pelage {

namespace {

/// What a step takes beside the plan; 0 for the plan's own.
work step_work(service_step s, dog_size size, coat_class coat, const price_rules& p) {
    const auto sized = [&](const figure<work>& f) {
        return minutes(in_minutes(f.best) * p.size[static_cast<std::size_t>(size)].best);
    };
    switch (s) {
        case service_step::look:
            return p.visit.best;
        case service_step::brush:
            return sized(p.brush_through);
        case service_step::bath:
            return minutes(in_minutes(sized(p.bath)) *
                           p.bath_coat[static_cast<std::size_t>(coat)].best);
        case service_step::deshed:
            return sized(p.deshed);
        case service_step::roll:
            return sized(p.roll);
        case service_step::nails:
            return p.nails.best;
        case service_step::ears:
            return p.ears.best;
        case service_step::before_bath:
        case service_step::after_bath:
            break;
    }
    return {};
}

/// What washes and dries as: most of a body that was clipped down for its mats before the bath as a smooth coat
/// does, whatever it grew as (assumption).
coat_class bathed_as(const plan_request& r, const groom& g) {
    std::ptrdiff_t body = 0;
    std::ptrdiff_t off = 0;
    for (const zone_plan& z : g.zones) {
        const bool here = r.reference.dog_body.zones[z.at.zone].where == group::body;
        body += here ? 1 : 0;
        off += here && (z.off_by || mat_clipped_off(z)) ? 1 : 0;
    }
    return 2 * off > body ? coat_class::smooth : *r.patient.coat;
}

}  // namespace

work minutes_beside_plan(const service& booked, dog_size size, coat_class coat,
                         const price_rules& p) {
    work sum{};
    for (const service_step s : booked.steps) {
        sum += step_work(s, size, coat, p);
    }
    return sum;
}

work appointment::total() const {
    return by_sheet ? *by_sheet + beyond : by_steps();
}

work appointment::by_steps() const {
    work sum{};
    for (const appointment_step& s : steps) {
        sum += s.takes;
    }
    return sum;
}

std::vector<step_today> steps_today(const plan_request& r, const service& booked) {
    const bool dry = bath_for(r.patient.skin) == bath_care::none;
    std::vector<step_today> out;
    for (const service_step s : booked.steps) {
        const bool goes_with_bath = s == service_step::deshed;
        if (!dry || !goes_with_bath) {
            out.push_back({s, dry && s == service_step::bath ? service_step::brush : s});
        }
    }
    return out;
}

namespace {

/// Whether there are such places and all of them are hurt.
template <class Is>
bool all_hurt(const plan_request& r, const groom& g, Is is) {
    bool any = false;
    for (const zone_plan& z : g.zones) {
        if (is(r.reference.dog_body.zones[z.at.zone])) {
            if (!z.hurt) {
                return false;
            }
            any = true;
        }
    }
    return any;
}

bool left_hurt(service_step s, const plan_request& r, const groom& g) {
    return (s == service_step::nails && no_foot_sound(r, g)) ||
           (s == service_step::ears &&
            all_hurt(r, g, [](const zone& z) { return z.has(zone_use::ear_leather); }));
}

}  // namespace

bool no_foot_sound(const plan_request& r, const groom& g) {
    return all_hurt(r, g, [](const zone& z) { return z.where == group::feet; });
}

appointment appointment_of(const plan_request& r, const groom& g, const service& booked) {
    appointment out;
    for (const step_today& one : steps_today(r, booked)) {
        const service_step s = one.done;
        const work takes = s == service_step::before_bath ? g.before
                           : s == service_step::after_bath
                               ? g.after
                               : step_work(s, r.patient.size, bathed_as(r, g), r.rules.prices);
        if (takes > work{} && !left_hurt(s, r, g)) {
            out.steps.push_back({s, takes});
        }
    }
    for (const combing_out& c : g.combed) {
        out.beyond += c.takes;
    }
    for (const zone_plan& z : g.zones) {
        const bool off = z.mat && !z.combed_out && z.came != outcome::stuck;
        const work plain = place_work(r, z.at, finish::clip);
        out.beyond += z.off_by ? z.off_takes : off && z.takes > plain ? z.takes - plain : work{};
    }
    if (booked.stops_clock(service_clock::full)) {
        out.by_sheet = r.sheet.takes.by_size[static_cast<std::size_t>(r.patient.size)];
    }
    return out;
}

}  // namespace pelage
