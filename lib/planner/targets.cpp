// What is wished of each place and what was found there.
#include "planner/targets.hpp"

#include <algorithm>
#include <tuple>

#include <pelage/base/error.hpp>
#include <pelage/model/refusal.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

namespace {

bool covers(const place& wide, const place& p) {
    return share_side(wide, p);
}

bool covers(const selection& s, const place& p) {
    return std::any_of(s.places.begin(), s.places.end(),
                       [&](const place& w) { return covers(w, p); });
}

const selection& meant(const kit_setups& top, const std::string& whom) {
    const selection* s = top.parts().find(whom);
    if (s == nullptr) {
        throw error(errc::unknown, "no zone, group or side is called \"" + whom + "\"");
    }
    return *s;
}

/// `said`: wider words first.
template <class Said>
void lay_over_place(const std::vector<Said>& said, const place& p, const auto& lay) {
    for (const Said& one : said) {
        if (covers(*one.whom, p)) {
            lay(*one.what);
        }
    }
}

template <class Said>
void wide_first(std::vector<Said>& said) {
    std::stable_sort(said.begin(), said.end(),
                     [](const Said& a, const Said& b) { return wider(*a.whom, *b.whom); });
}

/// A length or a blade asked of a place that the sheet leaves or cards is a clip.
void lay_wish(instruction& out, const instruction& wish) {
    lay_over(out, wish);
    const bool uncut = out.how == finish::leave || out.how == finish::card;
    if ((wish.target || wish.blade) && !wish.how && uncut) {
        out.how = finish::clip;
    }
}

}  // namespace

bool booked_does(const plan_request& r, std::size_t zone) {
    if (r.booked == nullptr || r.booked->does(zone)) {
        return true;
    }
    const auto& known = r.reference.dog_body.zones;
    const auto of_the_face = [&](std::size_t i) {
        return r.booked->does(i) && known[i].has(zone_use::clean_face);
    };
    bool face = false;
    for (std::size_t i = 0; i < known.size(); ++i) {
        face = face || of_the_face(i);
    }
    return face && r.sheet.face == "clean" && known[zone].has(zone_use::clean_face);
}

ready_kit::ready_kit(const plan_request& r) : top_(r.top), sheet_(r.laid) {
    if (top_ == nullptr) {
        own_top_.emplace(r.reference, r.rules, r.tools, r.today);
    }
    if (sheet_ == nullptr) {
        own_sheet_.emplace(r.reference.dog_body, top().parts(), r.sheet);
    }
}

wishes_by_place::wishes_by_place(const plan_request& r, const ready_kit& ready)
    : request_(r), sheet_(ready.sheet()) {
    for (const sheet_rule& s : r.patient.departures) {
        departures_.push_back({&meant(ready.top(), s.whom), &s.what});
    }
    for (const hair_now& n : r.patient.now) {
        now_.push_back({&meant(ready.top(), n.whom), &n.is});
    }
    wide_first(departures_);
    wide_first(now_);
    const auto one_side = [](const auto& one) {
        return std::any_of(one.whom->places.begin(), one.whom->places.end(),
                           [](const place& p) { return p.which != side::both; });
    };
    of_one_side_ = std::any_of(departures_.begin(), departures_.end(), one_side) ||
                   std::any_of(now_.begin(), now_.end(), one_side);
}

instruction wishes_by_place::at(const place& p) const {
    instruction out = sheet_.at(p);
    const plan_request& r = request_;
    const std::optional<length> wish = r.length_wish ? r.length_wish : r.patient.body_length;
    if (wish && r.sheet.adjustable && out.target == r.sheet.adjustable) {
        out.target = wish;
    }
    const bool first =
        r.booked != nullptr && !r.booked->whole && r.patient.age == life_stage::young;
    if (first && out.way) {
        out.way = lay_choice::with_lay;  // a puppy that flinches is cut (practice)
    }
    lay_over_place(departures_, p, [&](const instruction& i) { lay_wish(out, i); });
    const zone& where = r.reference.dog_body.zones[p.zone];
    const bool begins = first && where.where == group::head;
    if (begins && r.sheet.face != "clean" && clips(out.how.value_or(finish::leave))) {
        out.how = finish::scissor;  // no comb over a 30 beside a puppy's eye (practice)
    }
    if (!booked_does(r, p.zone)) {
        instruction leave;
        leave.how = finish::leave;
        return leave;
    }
    return out;
}

std::optional<length> wishes_by_place::hair(const place& p) const {
    const body& b = request_.reference.dog_body;
    const std::string& inner = b.zones[p.zone].edge_of;
    if (!inner.empty()) {
        // who says how long the ears are means their edges, too, rather than all of the head
        const auto its = std::find_if(b.zones.begin(), b.zones.end(),
                                      [&](const zone& z) { return z.id == inner; });
        const place whole{static_cast<std::size_t>(its - b.zones.begin()), p.which};
        const selection* told = narrowest(whole);
        const selection* own = narrowest(p);
        if (told != nullptr && (own == nullptr || wider(*own, *told))) {
            return hair(whole);
        }
    }
    std::optional<length> out;
    for (const said<length>& n : now_) {
        if (n.whom->how == reach::all) {
            out = *n.what;  // "all" as a length means the whole coat, prep zones too
        }
    }
    lay_over_place(now_, p, [&](const length& l) { out = l; });
    return out;
}

const selection* wishes_by_place::narrowest(const place& p) const {
    const selection* out = nullptr;
    for (const said<length>& n : now_) {  // wide ones first
        if (covers(*n.whom, p)) {
            out = n.whom;
        }
    }
    return out;
}

namespace {

/// Whether a mat hides the finding: a scab under any; a lump only under a pelt, which is never combed out.
bool hidden(const dog& d, const skin_finding& f) {
    return std::any_of(d.mats.begin(), d.mats.end(), [&](const mat_finding& m) {
        return covers(m.at, f.at) && (f.state != skin_state::lump || m.grade == mat_grade::pelt);
    });
}

/// The pads of a foot whose skin is hurt: whoever holds them holds the foot.
bool under_hurt_foot(const body& b, const dog& d, const skin_finding& f, const place& p) {
    return b.zones[p.zone].has(zone_use::pads) && b.zones[f.at.zone].where == group::feet &&
           same_side(f.at, p) && leaves_alone(b, f, f.at, hidden(d, f));
}

}  // namespace

bool wishes_by_place::one_sided(std::size_t zone) const {
    const auto on_side = [&](const place& p) { return p.zone == zone && p.which != side::both; };
    const auto any = [&](const auto& said_of) {
        return std::any_of(said_of.begin(), said_of.end(), [&](const auto& one) {
            return std::any_of(one.whom->places.begin(), one.whom->places.end(), on_side);
        });
    };
    const dog& d = request_.patient;
    // the edge of one matted or hurt side goes its own way
    const body& b = request_.reference.dog_body;
    const auto found_within = [&](const auto& findings) {
        return std::any_of(findings.begin(), findings.end(), [&](const auto& f) {
            return edges(b, {zone, side::both}, f.at) && one_sided(f.at.zone);
        });
    };
    const bool inner = found_within(d.mats) || found_within(d.skin);
    const bool foot = std::any_of(d.skin.begin(), d.skin.end(), [&](const skin_finding& f) {
        return f.at.which != side::both && under_hurt_foot(b, d, f, {zone, f.at.which});
    });
    return inner || foot || sheet_.one_sided(zone) ||
           (of_one_side_ && (any(departures_) || any(now_))) ||
           std::any_of(d.mats.begin(), d.mats.end(),
                       [&](const mat_finding& m) { return on_side(m.at); }) ||
           std::any_of(d.skin.begin(), d.skin.end(), [&](const skin_finding& f) {
               return f.state != skin_state::fleas && on_side(f.at);
           });
}

bool wishes_by_place::departs(const place& p) const {
    return std::any_of(departures_.begin(), departures_.end(), [&](const said<instruction>& s) {
        return s.whom->how != reach::all && s.whom->how != reach::group && covers(*s.whom, p);
    });
}

std::vector<place> wishes_by_place::places() const {
    std::vector<place> out;
    const body& b = request_.reference.dog_body;
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        if (b.zones[z].paired && one_sided(z)) {
            out.push_back({z, side::left});
            out.push_back({z, side::right});
        } else {
            out.push_back({z, side::both});
        }
    }
    return out;
}

std::optional<length> hair_today(const plan_request& r, const place& p) {
    return wishes_by_place(r, ready_kit(r)).hair(p);
}

instruction instruction_for(const plan_request& r, const place& p) {
    return wishes_by_place(r, ready_kit(r)).at(p);
}

bool is_edge_of(const body& b, const place& edge, const place& p) {
    return edges(b, edge, p);
}

bool may_go_along(const wishes_by_place& wishes, const body& b, const zone_plan& edge) {
    return !b.zones[edge.at.zone].edge_of.empty() && edge.target &&
           edge.how_finished == finish::scissor && !edge.mat && !edge.hurt &&
           !wishes.departs(edge.at);
}

namespace {

work work_on(const plan_request& r, const place& p, finish f, dog_size size) {
    const work whole = zone_work(r.reference.dog_body.zones[p.zone], f, size, r.rules.prices);
    return p.which == side::both ? whole : mmin((in_mmin(whole) + 1) / 2);
}

}  // namespace

work place_work(const plan_request& r, const place& p, finish f) {
    return work_on(r, p, f, r.patient.size);
}

work place_cost(const plan_request& r, const place& p, finish f) {
    return work_on(r, p, f, dog_size::medium);
}

const mat_finding* mat_at(const dog& d, const place& p) {
    const mat_finding* worst = nullptr;
    for (const mat_finding& m : d.mats) {
        const auto gravity = [](const mat_finding& f) {
            return std::tuple{f.to_skin, f.grade, f.free_hair ? -in_mm(*f.free_hair) : 0.0};
        };
        if (covers(m.at, p) && (worst == nullptr || gravity(m) > gravity(*worst))) {
            worst = &m;
        }
    }
    return worst;
}

const skin_finding* hurt_at(const body& b, const dog& d, const place& p) {
    const skin_finding* beneath = nullptr;
    for (const skin_finding& f : d.skin) {
        if (leaves_alone(b, f, p, hidden(d, f)) || under_hurt_foot(b, d, f, p)) {
            if (f.at.zone == p.zone) {
                return &f;  // its own before what it is the edge of
            }
            beneath = beneath == nullptr ? &f : beneath;
        }
    }
    return beneath;
}

std::vector<skin_finding> bumps_at(const dog& d, const place& p) {
    std::vector<skin_finding> out;
    for (const skin_finding& f : d.skin) {
        if (covers(f.at, p) && care_for(f.state, hidden(d, f)) == skin_care::gone_around) {
            out.push_back(f);
        }
    }
    return out;
}

std::vector<place> fleas_on(const dog& d) {
    std::vector<place> out;
    for (const skin_finding& f : d.skin) {
        if (care_for(f.state, false) == skin_care::bathed_first) {
            out.push_back(f.at);
        }
    }
    return out;
}

namespace {

/// Whether more of the dog than the rules allow is hurt, by clipping time; an edge counts by itself.
bool much_is_hurt(const plan_request& r) {
    const body& b = r.reference.dog_body;
    std::int64_t all = 0;
    std::int64_t hurt = 0;
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        for (const side s : {side::left, side::right}) {
            const std::int64_t here = in_mmin(place_cost(r, {z, s}, finish::clip));
            all += here;
            const bool sore =
                std::any_of(r.patient.skin.begin(), r.patient.skin.end(), [&](const auto& f) {
                    return f.at.zone == z && same_side(f.at, {z, s}) &&
                           care_for(f.state, false) == skin_care::left_alone;
                });
            hurt += sore ? here : 0;
        }
    }
    return static_cast<double>(hurt) > r.rules.refusal.hurt_share.best * static_cast<double>(all);
}

}  // namespace

std::vector<stop_sign> signs_of(const plan_request& r) {
    const dog& d = r.patient;
    std::vector<stop_sign> out = d.signs;
    if (d.heard) {
        out.insert(out.end(), d.heard->signs.begin(), d.heard->signs.end());
    }
    for (const mat_finding& m : d.mats) {
        const bool raw = std::any_of(d.skin.begin(), d.skin.end(), [&](const skin_finding& f) {
            return (f.state == skin_state::broken || f.state == skin_state::wet) &&
                   covers(f.at, m.at);
        });
        if (raw && m.grade != mat_grade::tangle) {
            out.push_back(stop_sign::wounds);
        }
    }
    if (!d.skin.empty() && much_is_hurt(r)) {
        out.push_back(stop_sign::much_skin);
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

std::vector<place> hurt_neighbours(const plan_request& r, const place& p) {
    const body& b = r.reference.dog_body;
    std::vector<place> out;
    for (const skin_finding& f : r.patient.skin) {
        if (!leaves_alone(b, f, f.at, hidden(r.patient, f))) {
            continue;
        }
        const bool touch = std::any_of(b.seams.begin(), b.seams.end(), [&](const seam& s) {
            return (s.a == p.zone && s.b == f.at.zone) || (s.b == p.zone && s.a == f.at.zone);
        });
        if (touch && same_side(f.at, p) && std::find(out.begin(), out.end(), f.at) == out.end()) {
            out.push_back(f.at);
        }
    }
    return out;
}

}  // namespace pelage
