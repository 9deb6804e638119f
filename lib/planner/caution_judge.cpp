#include "planner/caution_judge.hpp"

#include <algorithm>

#include <pelage/planner/roughing.hpp>
#include <pelage/trade/place_words.hpp>

#include "planner/at_the_teeth.hpp"
#include "planner/targets.hpp"

namespace pelage {

namespace {

places_named named(std::vector<place> all) {
    return all.empty() ? places_named{} : places_named{std::move(all)};
}

bool by_comb(const zone_plan& z) {
    return caution_judge::clipped(z) && z.how.over.has_value();
}

bool hair_unknown(const zone_plan& z) {
    return caution_judge::clipped(z) && !z.now && z.target && !z.hurt &&
           z.came != outcome::clipped_under && z.came != outcome::stuck;
}

bool worked(const zone_plan& z) {
    return z.how.kind != tool_kind::none || z.combed_out;
}

/// A leg, a foot, or the pads beneath it.
bool limb(const zone& w) {
    return w.where == group::legs || w.where == group::feet || w.has(zone_use::pads);
}

bool goes_around(const zone_plan& z, skin_state s, bool known_too) {
    return std::any_of(z.around.begin(), z.around.end(), [&](const skin_finding& f) {
        return f.state == s && (known_too || !f.known);
    });
}

}  // namespace

template <class Holds>
places_named caution_judge::where(Holds holds) const {
    std::vector<place> all;
    for (const zone_plan& z : g_.zones) {
        if (holds(z)) {
            all.push_back(z.at);
        }
    }
    return named(std::move(all));
}

template <class Is>
places_named caution_judge::skin_that(Is is) const {
    std::vector<place> all;
    for (const skin_finding& f : r_.patient.skin) {
        if (is(f.state)) {
            all.push_back(f.at);
        }
    }
    return named(std::move(all));
}

caution_judge::caution_judge(const plan_request& r, const groom& g)
    : r_(r), g_(g), coat_(coat_of(r.reference, r.patient.coat.value())) {
    if (r.patient.sensitive.empty()) {
        return;
    }
    std::optional<part_index> own;
    const part_index& parts = r.top != nullptr ? r.top->parts() : own.emplace(r.reference.dog_body);
    for (const std::string& word : r.patient.sensitive) {
        if (const selection* meant = parts.find(word)) {
            hated_.insert(hated_.end(), meant->places.begin(), meant->places.end());
        }
    }
}

places_named caution_judge::applies(const caution& c) const {
    places_named found = applies(c.when);
    if (!found || c.zones.empty()) {
        return found;
    }
    std::erase_if(*found, [&](const place& p) {
        const std::string& id = r_.reference.dog_body.zones[p.zone].id;
        return std::find(c.zones.begin(), c.zones.end(), id) == c.zones.end();
    });
    return found->empty() ? places_named{} : found;
}

places_named caution_judge::applies(caution_when w) const {
    // a dog that goes to a veterinarian is told of that alone
    if (g_.stopped() && w != caution_when::stop && w != caution_when::skin_finding &&
        w != caution_when::lump_new && w != caution_when::fleas && w != caution_when::mat_on_limb) {
        return {};
    }
    std::optional<bool> holds = of_the_dog(w);
    holds = holds ? holds : of_its_health(w);
    if (holds) {
        return *holds ? places_named{std::vector<place>{}} : places_named{};
    }
    places_named found = of_findings(w);
    return found ? std::move(found) : of_work(w);
}

std::optional<bool> caution_judge::of_the_dog(caution_when w) const {
    switch (w) {
        case caution_when::any_clipping:
            return any(clipped);
        case caution_when::comb_used:
            return any(by_comb);
        case caution_when::stop:
            return !g_.stop.empty();
        case caution_when::old_or_thin:
            return tender(r_.patient);
        case caution_when::coat_change:
            return r_.patient.coat_change;
        case caution_when::young:
            return r_.patient.age == life_stage::young;
        case caution_when::shedding:
            return r_.patient.shedding && doubled();
        case caution_when::long_since:
            return long_since();
        case caution_when::frail_felted:
            return frail() && much_felted();
        case caution_when::much_off:
            return !g_.bath_waits() && much_comes_off();
        case caution_when::nearly_bare:
            return nearly_bare();
        case caution_when::bites:
            return may_bite(r_.patient);
        default:
            return std::nullopt;
    }
}

std::optional<bool> caution_judge::of_its_health(caution_when w) const {
    const dog& d = r_.patient;
    switch (w) {
        case caution_when::ill:
            return ails(d);
        case caution_when::faints:
            return told_more(d) || told_of(d, ailment_kind::heart) || has_alert(alert_kind::faints);
        case caution_when::seizures:
            return told_of(d, ailment_kind::seizures) || has_alert(alert_kind::seizures);
        case caution_when::joints:
            return told_of(d, ailment_kind::joints);
        case caution_when::blind:
            return told_of(d, ailment_kind::blind);
        case caution_when::deaf:
            return told_of(d, ailment_kind::deaf);
        case caution_when::with_young:
            return with_young(d);
        case caution_when::season:
            return told_of(d, ailment_kind::season);
        case caution_when::diabetes:
            return told_of(d, ailment_kind::diabetes);
        case caution_when::first_groom:
            return told_of(d, ailment_kind::first);
        case caution_when::fear:
            return told_of(d, ailment_kind::fear);
        case caution_when::flat_face:
            return told_of(d, ailment_kind::flat_face);
        case caution_when::ear_trouble:
            return told_of(d, ailment_kind::ears);
        case caution_when::bleeds:
            return told_of(d, ailment_kind::bleeds);
        case caution_when::nail:
            return told_of(d, ailment_kind::nail);
        default:
            return std::nullopt;
    }
}

places_named caution_judge::of_findings(caution_when w) const {
    if (r_.patient.mats.empty() && r_.patient.skin.empty()) {
        return {};
    }
    switch (w) {
        case caution_when::clip_under:
            return where(mat_clipped_off);
        case caution_when::matted_ears_or_tail:
            return where([&](const zone_plan& z) { return mat_clipped_off(z) && ear_or_tail(z); });
        case caution_when::mat_in_bath:
            return where([](const zone_plan& z) {
                return mat_clipped_off(z) || (z.mat && !z.combed_out && z.came == outcome::stuck);
            });
        case caution_when::combing_out:
            return where([](const zone_plan& z) { return z.combed_out; });
        case caution_when::mat_on_limb:
            return mats_on_limbs();
        case caution_when::skin_finding:
            return where([](const zone_plan& z) { return z.hurt.has_value(); });
        case caution_when::fleas:  // their bath waits for a veterinarian's word, too
            return bath_for(r_.patient.skin) == bath_care::none
                       ? places_named{}
                       : skin_that([](skin_state s) { return s == skin_state::fleas; });
        case caution_when::lump_new:
            return where(
                [](const zone_plan& z) { return goes_around(z, skin_state::lump, false); });
        case caution_when::scab:
            return where([](const zone_plan& z) { return goes_around(z, skin_state::scab, true); });
        case caution_when::open_skin:
            return skin_that(
                [](skin_state s) { return s == skin_state::broken || s == skin_state::wet; });
        case caution_when::red_skin:
            return bath_is(bath_care::gently) && !g_.bath_waits()
                       ? skin_that([](skin_state s) { return s == skin_state::irritated; })
                       : places_named{};
        default:
            return {};
    }
}

places_named caution_judge::of_work(caution_when w) const {
    switch (w) {
        case caution_when::double_jacket_clipped:
            return doubled() ? where([&](const zone_plan& z) {
                return clipped(z) && (jacket(z) || (z.mat && carded_by_default(zone_of(z))));
            })
                             : places_named{};
        case caution_when::wire_clipped:
            return stripped_by_custom()
                       ? where([&](const zone_plan& z) { return clipped(z) && jacket(z); })
                       : places_named{};
        case caution_when::sun:
            return sun();
        case caution_when::sun_hours:
            return r_.patient.out == outdoors::much ? sun() : places_named{};
        case caution_when::thin_skin:
            return where([&](const zone_plan& z) {
                return clipped(z) && zone_of(z).cover != skin::firm && !z.how.over;
            });
        case caution_when::against_short:
            return where([&](const zone_plan& z) {
                return clipped(z) && !z.how.over && z.how.way == direction::against_lay &&
                       in_mm(z.how.tool.stated.best) < 1.75;
            });
        case caution_when::unknown_hair: {
            // of many places it is said of the dog
            constexpr std::size_t few = 4;
            places_named all = where(hair_unknown);
            return all && all->size() > few ? places_named{std::vector<place>{}} : std::move(all);
        }
        case caution_when::sensitive:
            return where(
                [&](const zone_plan& z) { return touched(z) && hated(z) && !limb(zone_of(z)); });
        case caution_when::sensitive_limb:
            return where(
                [&](const zone_plan& z) { return touched(z) && hated(z) && limb(zone_of(z)); });
        case caution_when::bare_blade:
            return where([&](const zone_plan& z) {
                return clipped(z) && !z.how.over && !mat_clipped_off(z);
            });
        case caution_when::feet_by_blade:
            return where([&](const zone_plan& z) {
                return clipped(z) && !z.how.over && !mat_clipped_off(z) &&
                       zone_of(z).has(zone_use::clean_feet) && r_.sheet.feet != "clean";
            });
        case caution_when::muzzled:
            return may_bite(r_.patient) ? where([&](const zone_plan& z) {
                return worked(z) && at_the_teeth(zone_of(z));
            })
                                        : places_named{};
        default:
            return {};
    }
}

bool caution_judge::made_for_another_coat() const {
    const auto& fits = r_.sheet.coats;
    return !fits.empty() && std::find(fits.begin(), fits.end(), coat_.id) == fits.end();
}

bool caution_judge::ear_or_tail(const zone_plan& z) const {
    return zone_of(z).has(zone_use::ear_leather) || zone_of(z).id == "ear-edge" ||
           zone_of(z).where == group::tail;
}

bool caution_judge::any(bool (*holds)(const zone_plan&)) const {
    return std::any_of(g_.zones.begin(), g_.zones.end(), holds);
}

places_named caution_judge::mats_on_limbs() const {
    std::vector<place> all;
    for (const mat_finding& m : r_.patient.mats) {
        if (m.grade != mat_grade::tangle && limb(r_.reference.dog_body.zones[m.at.zone])) {
            all.push_back(m.at);
        }
    }
    return named(std::move(all));
}

/// Old or thin-skinned, and ill, or both of them; one that bites; or with what bears no long sitting
/// whatever its age: heart, breath, seizures, pups, what nobody here knows.
bool caution_judge::frail() const {
    const dog& d = r_.patient;
    const bool bears_none = told_more(d) || with_young(d) || told_of(d, ailment_kind::heart) ||
                            told_of(d, ailment_kind::seizures) || has_alert(alert_kind::faints) ||
                            has_alert(alert_kind::seizures);
    const bool both = d.thin_or_old && d.age == life_stage::old;
    return bears_none || may_bite(d) || (tender(d) && (ails(d) || both));
}

bool caution_judge::much_felted() const {
    const auto share = [&](group g) {
        work all{};
        work felted{};
        for (const zone_plan& z : g_.zones) {
            if (zone_of(z).where == g) {
                const work takes = zone_of(z).clip_time.best;
                all += takes;
                felted += z.mat && !z.combed_out ? takes : work{};
            }
        }
        return all > work{} ? in_minutes(felted) / in_minutes(all) : 0.0;
    };
    const double much = r_.rules.prices.part_down.best;
    return !g_.down.empty() || share(group::body) >= much || share(group::legs) >= much;
}

template <class In, class Holds>
bool caution_judge::most_of(In in, Holds holds) const {
    work all{};
    work so{};
    for (const zone_plan& z : g_.zones) {
        if (in(z)) {
            all += zone_of(z).clip_time.best;
            so += clipped(z) && z.leaves && holds(z) ? zone_of(z).clip_time.best : work{};
        }
    }
    return so + so > all;
}

bool caution_judge::much_comes_off() const {
    const auto by = roughing_blade(r_, g_);
    return by && most_of_jacket([&](const zone_plan& z) {
               return z.now && !z.mat && z.leaves->best < by->tool.stated.best &&
                      *z.now - z.leaves->best >= r_.rules.refusal.much_off.best;
           });
}

bool caution_judge::nearly_bare() const {
    const auto bare = [&](const zone_plan& z) {
        return z.leaves->best < r_.rules.refusal.comb_for.best;
    };
    // four bare legs are cold, too
    const auto leg = [&](const zone_plan& z) { return zone_of(z).where == group::legs; };
    return most_of(leg, bare) || most_of_jacket(bare);
}

bool caution_judge::bath_is(bath_care c) const {
    const bool booked = r_.booked == nullptr || r_.booked->has(service_step::bath);
    return booked && bath_for(r_.patient.skin) == c;
}

bool caution_judge::has_alert(alert_kind k) const {
    const auto& all = r_.patient.alerts;
    return std::any_of(all.begin(), all.end(), [&](const alert& a) { return a.what == k; });
}

bool caution_judge::touched(const zone_plan& z) const {
    const bool whole = r_.booked == nullptr;  // nails and ears are of it
    const bool nails = zone_of(z).where == group::feet && !z.hurt &&
                       (whole || r_.booked->has(service_step::nails));
    const bool ears = zone_of(z).has(zone_use::ear_leather) && !z.hurt &&
                      (whole || r_.booked->has(service_step::ears));
    return worked(z) || nails || ears;
}

bool caution_judge::hated(const zone_plan& z) const {
    return std::any_of(hated_.begin(), hated_.end(), [&](const place& p) {
        // who can't touch the feet can't scoop the pads
        const bool foot = zone_of(z).has(zone_use::pads) &&
                          r_.reference.dog_body.zones[p.zone].where == group::feet;
        return foot || share_side(p, z.at);
    });
}

bool caution_judge::long_since() const {
    if (!mats_by_length(coat_) || !r_.today) {
        return false;
    }
    const auto& all = r_.patient.visits;
    const visit* last = nullptr;
    for (const visit& v : all) {
        if (v.kind == "full" && v.on <= *r_.today && (last == nullptr || last->on < v.on)) {
            last = &v;
        }
    }
    return last != nullptr && between(last->on, *r_.today) > coat_.usual_interval.best;
}

/// The sun reaches the upper side: jacket, ears and muzzle; judged on the shortest it may come out
places_named caution_judge::sun() const {
    const dog& d = r_.patient;
    // thin skin counts where it is known to be in the sun; who is hardly out needs no telling
    const bool bare = d.pink_skin || (tender(d) && d.out && *d.out != outdoors::little);
    if (!bare || d.out == outdoors::little) {
        return {};
    }
    return where([&](const zone_plan& z) {
        const zone& w = zone_of(z);
        const bool upper = w.where == group::body || w.where == group::head;
        const bool cut = clipped(z) || z.how.kind == tool_kind::scissors;
        return upper && cut && z.leaves && z.leaves->low < r_.rules.refusal.sun_length.best;
    });
}

}  // namespace pelage
