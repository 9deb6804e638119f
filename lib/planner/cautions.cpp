#include "planner/cautions.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "planner/candidates.hpp"
#include "planner/caution_judge.hpp"
#include "planner/notes.hpp"

namespace pelage {

namespace {

void add_consents(const plan_request& r, const caution_judge& j, groom& g) {
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
                    [&](const zone_plan& z) { return caution_judge::clipped(z) && j.jacket(z); });
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
    const caution_judge j(r, g);
    struct applying {
        const caution* what;
        std::vector<place> where;
    };
    std::vector<applying> found;
    found.reserve(r.reference.cautions.size());
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
