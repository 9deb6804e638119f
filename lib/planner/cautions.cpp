#include "planner/cautions.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>
#include <vector>

#include <pelage/trade/place_words.hpp>

#include "planner/candidates.hpp"
#include "planner/notes.hpp"
#include "planner/targets.hpp"

namespace pelage {

namespace {

/// Where a caution applies: not at all (nothing), to the whole dog (empty), or to these places.
using places_named = std::optional<std::vector<place>>;

class judge {
  public:
    judge(const plan_request& r, const groom& g)
        : r_(r), g_(g), coat_(coat_of(r.reference, r.patient.coat.value())) {
        if (r.patient.sensitive.empty()) {
            return;
        }
        std::optional<part_index> own;
        const part_index& parts =
            r.top != nullptr ? r.top->parts() : own.emplace(r.reference.dog_body);
        for (const std::string& word : r.patient.sensitive) {
            if (const selection* meant = parts.find(word)) {
                hated_.insert(hated_.end(), meant->places.begin(), meant->places.end());
            }
        }
    }

    /// Where it applies, of the zones that it is about.
    [[nodiscard]] places_named applies(const caution& c) const {
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
    [[nodiscard]] places_named applies(caution_when w) const {
        // a dog that goes to a veterinarian is told of that alone
        if (g_.stopped() && w != caution_when::stop && w != caution_when::skin_finding &&
            w != caution_when::lump_new && w != caution_when::fleas &&
            w != caution_when::mat_on_limb) {
            return {};
        }
        switch (w) {
            case caution_when::any_clipping:
                return whole(any(clipped));
            case caution_when::comb_used:
                return whole(any(by_comb));
            case caution_when::double_jacket_clipped:
                return where(
                    [&](const zone_plan& z) { return clipped(z) && jacket(z) && doubled(); });
            case caution_when::wire_clipped:
                return where([&](const zone_plan& z) {
                    return clipped(z) && jacket(z) && stripped_by_custom();
                });
            case caution_when::clip_under:
                return where(mat_clipped_off);
            case caution_when::matted_ears_or_tail:
                return where(
                    [&](const zone_plan& z) { return mat_clipped_off(z) && ear_or_tail(z); });
            case caution_when::sun:
                return sun();
            case caution_when::thin_skin:
                return where([&](const zone_plan& z) {
                    return clipped(z) && zone_of(z).cover != skin::firm && !z.how.over;
                });
            case caution_when::skin_finding:
                return where([](const zone_plan& z) { return z.hurt.has_value(); });
            case caution_when::stop:
                return whole(!g_.stop.empty());
            case caution_when::unknown_hair:
                return whole(any(hair_unknown));
            case caution_when::old_or_thin:
                return whole(tender(r_.patient));
            case caution_when::against_short:
                return where([&](const zone_plan& z) {
                    return clipped(z) && !z.how.over && z.how.way == direction::against_lay &&
                           in_mm(z.how.tool.stated.best) < 1.75;
                });
            case caution_when::coat_change:
                return whole(r_.patient.coat_change);
            case caution_when::sun_hours:
                return r_.patient.out == outdoors::much ? sun() : places_named{};
            case caution_when::young:
                return whole(r_.patient.age == life_stage::young);
            case caution_when::ill:
                return whole(ails(r_.patient));
            case caution_when::mat_in_bath:
                return where([](const zone_plan& z) {
                    return mat_clipped_off(z) ||
                           (z.mat && !z.combed_out && z.came == outcome::stuck);
                });
            case caution_when::sensitive:
                return where(
                    [&](const zone_plan& z) { return worked(z) && hated(z) && !on_limb(z); });
            case caution_when::sensitive_limb:
                return where([&](const zone_plan& z) {
                    const bool nails = r_.booked != nullptr && zone_of(z).where == group::feet &&
                                       r_.booked->has(service_step::nails) && !z.hurt;
                    return (worked(z) || nails) && hated(z) && on_limb(z);
                });
            case caution_when::shedding:
                return whole(r_.patient.shedding && doubled());
            case caution_when::long_since:
                return whole(long_since());
            case caution_when::combing_out:
                return where([](const zone_plan& z) { return z.combed_out; });
            case caution_when::fleas:  // their bath waits for a veterinarian's word, too
                return bath_for(r_.patient.skin) == bath_care::none ? places_named{}
                                                                    : of_skin(skin_state::fleas);
            case caution_when::lump_new:
                return where([](const zone_plan& z) {
                    return std::any_of(z.around.begin(), z.around.end(), [](const auto& f) {
                        return f.state == skin_state::lump && !f.known;
                    });
                });
            case caution_when::scab:
                return where([](const zone_plan& z) {
                    return std::any_of(z.around.begin(), z.around.end(),
                                       [](const auto& f) { return f.state == skin_state::scab; });
                });
            case caution_when::frail_felted:
                return whole(frail() && !g_.down.empty());
            case caution_when::mat_on_limb:
                return mats_on_limbs();
            case caution_when::muzzled:
                return may_bite(r_.patient) ? where([&](const zone_plan& z) {
                    return worked(z) && zone_of(z).has(zone_use::clean_face);
                })
                                            : places_named{};
            case caution_when::bites:
                return whole(may_bite(r_.patient));
            case caution_when::faints:
                return whole(told_more(r_.patient) || told_of(r_.patient, ailment_kind::heart) ||
                             has_alert(alert_kind::faints));
            case caution_when::seizures:
                return whole(told_of(r_.patient, ailment_kind::seizures) ||
                             has_alert(alert_kind::seizures));
            case caution_when::joints:
                return whole(told_of(r_.patient, ailment_kind::joints));
            case caution_when::senses:
                return whole(told_of(r_.patient, ailment_kind::senses));
            case caution_when::with_young:
                return whole(with_young(r_.patient));
            case caution_when::season:
                return whole(told_of(r_.patient, ailment_kind::season));
            case caution_when::diabetes:
                return whole(told_of(r_.patient, ailment_kind::diabetes));
            case caution_when::first_groom:
                return whole(told_of(r_.patient, ailment_kind::first));
            case caution_when::fear:
                return whole(told_of(r_.patient, ailment_kind::fear));
            case caution_when::open_skin:
                return bath_is(bath_care::none) ? open_skin() : places_named{};
            case caution_when::red_skin:
                return bath_is(bath_care::gently) && !g_.bath_waits()
                           ? of_skin(skin_state::irritated)
                           : places_named{};
        }
        return {};
    }

    [[nodiscard]] bool doubled() const { return double_coated(coat_.id); }
    [[nodiscard]] bool jacket(const zone_plan& z) const { return zone_of(z).has(zone_use::jacket); }
    [[nodiscard]] static bool clipped(const zone_plan& z) {
        return z.how.kind == tool_kind::clip && z.came != outcome::stuck;
    }
    [[nodiscard]] bool stripped_by_custom() const { return pelage::stripped_by_custom(coat_.id); }
    [[nodiscard]] bool made_for_another_coat() const {
        const auto& fits = r_.sheet.coats;
        return !fits.empty() && std::find(fits.begin(), fits.end(), coat_.id) == fits.end();
    }

  private:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }
    [[nodiscard]] static bool by_comb(const zone_plan& z) {
        return clipped(z) && z.how.over.has_value();
    }
    [[nodiscard]] static bool hair_unknown(const zone_plan& z) {
        return !z.now && z.target && !z.hurt && z.came != outcome::clipped_under &&
               z.came != outcome::stuck;
    }
    [[nodiscard]] bool ear_or_tail(const zone_plan& z) const {
        return zone_of(z).has(zone_use::ear_leather) || zone_of(z).id == "ear-edge" ||
               zone_of(z).where == group::tail;
    }
    [[nodiscard]] bool any(bool (*holds)(const zone_plan&)) const {
        return std::any_of(g_.zones.begin(), g_.zones.end(), holds);
    }
    [[nodiscard]] static places_named whole(bool holds) {
        return holds ? places_named{std::vector<place>{}} : places_named{};
    }
    template <class Holds>
    [[nodiscard]] places_named where(Holds holds) const {
        std::vector<place> all;
        for (const zone_plan& z : g_.zones) {
            if (holds(z)) {
                all.push_back(z.at);
            }
        }
        return all.empty() ? places_named{} : places_named{all};
    }
    [[nodiscard]] places_named of_skin(skin_state s) const {
        std::vector<place> all;
        for (const skin_finding& f : r_.patient.skin) {
            if (f.state == s) {
                all.push_back(f.at);
            }
        }
        return all.empty() ? places_named{} : places_named{all};
    }
    /// Where hair may have wound itself round a leg or toes: what is more than a tangle there.
    [[nodiscard]] places_named mats_on_limbs() const {
        std::vector<place> all;
        for (const mat_finding& m : r_.patient.mats) {
            if (m.grade != mat_grade::tangle && limb(r_.reference.dog_body.zones[m.at.zone])) {
                all.push_back(m.at);
            }
        }
        return all.empty() ? places_named{} : places_named{all};
    }
    /// Old or thin-skinned, and ill, one that bites, or both of them; or with what bears no long sitting
    /// whatever its age: heart, breath, seizures, pups, what nobody here knows.
    [[nodiscard]] bool frail() const {
        const dog& d = r_.patient;
        const bool bears_none = told_more(d) || with_young(d) || told_of(d, ailment_kind::heart) ||
                                told_of(d, ailment_kind::seizures) ||
                                has_alert(alert_kind::faints) || has_alert(alert_kind::seizures);
        const bool both = d.thin_or_old && d.age == life_stage::old;
        return bears_none || (tender(d) && (ails(d) || may_bite(d) || both));
    }
    /// It is booked to be bathed, and so.
    [[nodiscard]] bool bath_is(bath_care c) const {
        const bool booked = r_.booked == nullptr || r_.booked->has(service_step::bath);
        return booked && bath_for(r_.patient.skin) == c;
    }
    [[nodiscard]] places_named open_skin() const {
        std::vector<place> all;
        for (const skin_finding& f : r_.patient.skin) {
            if (f.state == skin_state::broken || f.state == skin_state::wet) {
                all.push_back(f.at);
            }
        }
        return all;
    }
    [[nodiscard]] bool has_alert(alert_kind k) const {
        const auto& all = r_.patient.alerts;
        return std::any_of(all.begin(), all.end(), [&](const alert& a) { return a.what == k; });
    }
    [[nodiscard]] static bool worked(const zone_plan& z) {
        return z.how.kind != tool_kind::none || z.combed_out;
    }
    /// A leg, a foot, or the pads beneath it.
    [[nodiscard]] static bool limb(const zone& w) {
        return w.where == group::legs || w.where == group::feet || w.has(zone_use::pads);
    }
    [[nodiscard]] bool on_limb(const zone_plan& z) const { return limb(zone_of(z)); }
    [[nodiscard]] bool hated(const zone_plan& z) const {
        return std::any_of(hated_.begin(), hated_.end(), [&](const place& p) {
            // who can't touch the feet can't scoop the pads
            const bool foot = zone_of(z).has(zone_use::pads) &&
                              r_.reference.dog_body.zones[p.zone].where == group::feet;
            return foot || share_side(p, z.at);
        });
    }
    /// The last full groom is longer ago than such a coat usually goes.
    [[nodiscard]] bool long_since() const {
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
    // the sun reaches the upper side: jacket, ears and muzzle; judged on the shortest it may come out
    [[nodiscard]] places_named sun() const {
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

    const plan_request& r_;
    const groom& g_;
    const coat& coat_;
    std::vector<place> hated_;  ///< what the dog hates to have touched
};

void add_consents(const plan_request& r, const judge& j, groom& g) {
    const auto need = [&](const char* id, consent_for what) -> consent& {
        consent c;
        c.id = id;
        c.what = what;
        c.given = agreed(r.patient, id);
        return g.consents.emplace_back(std::move(c));
    };
    if (j.applies(caution_when::clip_under)) {
        need("clip-down", consent_for::mats_off);
    }
    const auto beyond = [&](bool shorter) {
        return std::any_of(g.zones.begin(), g.zones.end(), [&](const zone_plan& z) {
            return z.came == outcome::beyond_reach &&
                   (shorter ? z.leaves->low < *z.target - z.tolerated
                            : z.leaves->best > *z.target + z.tolerated);
        });
    };
    if (beyond(true) || beyond(false)) {
        consent& c = need("other-length", consent_for::other_length);
        c.shorter = beyond(true);
        c.longer = beyond(false);
    }
    const bool jacket_clipped =
        std::any_of(g.zones.begin(), g.zones.end(),
                    [&](const zone_plan& z) { return judge::clipped(z) && j.jacket(z); });
    const bool withheld =
        std::any_of(g.zones.begin(), g.zones.end(), [](const zone_plan& z) { return z.withheld; });
    if (j.doubled() && (r.sheet.clip_jacket || jacket_clipped || withheld)) {
        need("clip-jacket", consent_for::double_jacket).withheld = withheld && !g.question;
    }
    const bool frail = tender(r.patient) || ails(r.patient) || with_young(r.patient);
    if (frail && g.planned()) {
        need("frail-dog", consent_for::frail);
    }
    if (r.sheet.show && g.planned()) {
        need("show-blades", consent_for::show_blades);
    }
    if (j.applies(caution_when::sun_hours)) {
        need("sun-short", consent_for::sun_short);
    }
    if (stripped_by_custom(r.patient.coat.value()) && jacket_clipped) {
        need("clip-jacket", consent_for::strip_jacket);
    }
    for (const std::string& s : r.sheet.consent) {
        if (s == "clip-jacket") {
            continue;  // asked above, of the coats that are stripped or carded
        }
        const bool known = std::any_of(g.consents.begin(), g.consents.end(),
                                       [&](const consent& c) { return c.id == s; });
        if (!known) {
            need(s.c_str(), consent_for::by_sheet);
        }
    }
}

}  // namespace

void add_cautions(const plan_request& r, groom& g) {
    const judge j(r, g);
    struct applying {
        const caution* what;
        std::vector<place> where;
    };
    std::vector<applying> found;
    for (const caution& c : r.reference.cautions) {
        if (auto where = j.applies(c)) {
            found.push_back({&c, std::move(*where)});
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const applying& a, const applying& b) {
        return a.what->danger < b.what->danger;
    });
    g.cautions.reserve(found.size());
    for (applying& a : found) {
        g.cautions.push_back({*a.what, std::move(a.where)});
    }
    add_consents(r, j, g);
    add_notes(r, j.made_for_another_coat(), g);
}

}  // namespace pelage
