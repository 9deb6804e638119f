#include "model/growth_readings.hpp"

#include <algorithm>

namespace pelage {

namespace {

/// Whether the word takes in the place. "all" means the whole coat, prep zones too.
bool takes_in(const selection& s, const place& p) {
    return s.how == reach::all || std::any_of(s.places.begin(), s.places.end(),
                                              [&](const place& w) { return share_side(w, p); });
}

}  // namespace

bool looked_for_mats(const dog& d) {
    return std::any_of(d.visits.begin(), d.visits.end(),
                       [](const visit& v) { return v.mats.has_value(); });
}

growth_readings::growth_readings(const dog& d, const reference_data& c, const parameters& r,
                                 const std::optional<date>& today)
    : dog_(d), reference_(c), rules_(r), today_(today) {
    if (!d.measured.empty() || looked_for_mats(d)) {
        parts_.emplace(c.dog_body);  // nobody else asks what a word means
    }
    for (const visit& v : d.visits) {
        visits_.push_back(&v);
    }
    std::stable_sort(visits_.begin(), visits_.end(),
                     [](const visit* a, const visit* b) { return a->on < b->on; });
}

void growth_readings::sort_into(learned_rate& to) const {
    for (std::size_t i = 0; i < dog_.measured.size(); ++i) {
        const measurement& m = dog_.measured[i];
        const auto places = single_places(m.whom);
        const std::optional<last_cut> cut = common_cut(places, m.on);
        const bool on_record = cut && cut->on != nullptr;
        const std::size_t index =
            on_record ? static_cast<std::size_t>(cut->on - dog_.visits.data()) : 0;
        if (const auto why = why_not(m, cut)) {
            to.left_out.push_back({i, *why, index, {}});
            continue;
        }
        to.counted.push_back({i,
                              index,
                              {between(cut->on->on, m.on), *cut->left, m.is,
                               measuring_error(expected(*cut, m), rules_.growth)}});
    }
    keep_newest(to);
}

std::vector<counted_check> growth_readings::checks() const {
    std::vector<counted_check> out;
    for (const visit* v : visits_) {
        if (auto one = v->mats && (!today_ || v->on <= *today_) ? check_at(*v) : std::nullopt) {
            out.push_back(std::move(*one));
        }
    }
    if (out.size() > most_checks) {
        out.erase(out.begin(), out.end() - static_cast<std::ptrdiff_t>(most_checks));
    }
    return out;
}

/// Each measurement is doubted in turn against all others, so that a record without end would take
/// without end; long before that a rate is as well known as it gets.
void growth_readings::keep_newest(learned_rate& to) const {
    if (to.counted.size() <= most_counted) {
        return;
    }
    const auto on = [&](const counted_measurement& m) { return dog_.measured[m.which].on; };
    std::stable_sort(to.counted.begin(), to.counted.end(),
                     [&](const auto& a, const auto& b) { return on(a) > on(b); });
    for (std::size_t i = most_counted; i < to.counted.size(); ++i) {
        to.left_out.push_back({to.counted[i].which, left_out_because::newer_are_enough, 0, {}});
    }
    to.counted.resize(most_counted);
    std::sort(to.counted.begin(), to.counted.end(),
              [](const auto& a, const auto& b) { return a.which < b.which; });
}

/// What a dog of that coat is expected to measure then.
length growth_readings::expected(const last_cut& cut, const measurement& m) const {
    const coat_class k = dog_.coat.value();
    return grown(*cut.left, longest_terminal(coat_of(reference_, k)).best,
                 rate_of(reference_, rules_, k).median, between(cut.on->on, m.on));
}

/// The last visit before that day which combed the dog out to the skin.
const visit* growth_readings::brushed_before(const date& on, bool full) const {
    for (auto v = visits_.rbegin(); v != visits_.rend(); ++v) {
        if ((*v)->on < on && ((*v)->kind == "full" || (!full && (*v)->kind == "bath"))) {
            return *v;
        }
    }
    return nullptr;
}

/// Whether the visit found mats in the place.
bool growth_readings::mats_at(const visit& v, const place& p) const {
    return std::any_of(v.mats->begin(), v.mats->end(),
                       [&](const std::string& whom) { return takes_in(meant(whom), p); });
}

/// Within the clock that began with the last combing out, length tells nothing of mats.
std::optional<counted_check> growth_readings::check_at(const visit& v) const {
    const visit* const cut = brushed_before(v.on, true);
    const visit* const brushed = brushed_before(v.on, false);
    if (cut == nullptr ||
        between(brushed->on, v.on) <= brush_out_clock(dog_.brushed, rules_.matting)) {
        return std::nullopt;
    }
    counted_check out{static_cast<std::size_t>(&v - dog_.visits.data()),
                      static_cast<std::size_t>(cut - dog_.visits.data()),
                      !v.mats->empty(),
                      {}};
    const coat& c = coat_of(reference_, dog_.coat.value());
    for (std::size_t i = 0; i < reference_.dog_body.zones.size(); ++i) {
        const zone& z = reference_.dog_body.zones[i];
        const auto prone =
            matting_prone_length(c, z, dog_.brushed, dog_.coat_change, rules_.matting);
        const place p{i, side::both};
        const last_cut last = cut_before(p, v.on);
        if (!prone || last.on == nullptr || !last.left) {
            continue;
        }
        out.zones.push_back({between(last.on->on, v.on), *last.left, *prone,
                             terminal_at(c, z.id).best, mats_at(v, p)});
    }
    out.zones = consistent(std::move(out.zones));
    return out.zones.empty() ? std::nullopt : std::optional{std::move(out)};
}

const selection& growth_readings::meant(const std::string& whom) const {
    const selection* s = parts_.value().find(whom);
    if (s == nullptr) {
        throw error(errc::unknown, "no zone, group or side is called \"" + whom + "\"");
    }
    return *s;
}

/// The places a word means, a paired zone as its two sides.
std::vector<place> growth_readings::single_places(const std::string& whom) const {
    std::vector<place> out;
    for (const place& p : meant(whom).places) {
        if (p.which == side::both && reference_.dog_body.zones[p.zone].paired) {
            out.push_back({p.zone, side::left});
            out.push_back({p.zone, side::right});
        } else {
            out.push_back(p);
        }
    }
    return out;
}

/// What the visit says it left at a place: narrower words win, then later ones.
std::optional<length> growth_readings::left_at(const visit& v, const place& p) const {
    const hair_now* out = nullptr;
    const selection* by = nullptr;
    for (const hair_now& h : v.left) {
        const selection& s = meant(h.whom);
        if (takes_in(s, p) && (by == nullptr || !wider(s, *by))) {
            out = &h;
            by = &s;
        }
    }
    return out == nullptr ? std::nullopt : std::optional{out->is};
}

/// Whether a visit that doesn't say so may have cut there: a full groom does, a tidy goes over face,
/// feet and the parts that are always clipped.
bool growth_readings::may_have_cut(const visit& v, const place& p) const {
    const group where = reference_.dog_body.zones[p.zone].where;
    const bool tidied = where == group::head || where == group::feet || where == group::prep;
    return v.kind == "full" || (v.kind == "tidy" && v.left.empty() && tidied);
}

last_cut growth_readings::cut_before(const place& p, const date& on) const {
    for (auto v = visits_.rbegin(); v != visits_.rend(); ++v) {
        if ((*v)->on >= on) {
            continue;
        }
        if (const auto left = left_at(**v, p)) {
            return {*v, left};
        }
        if (may_have_cut(**v, p)) {
            return {*v, std::nullopt};
        }
    }
    return {};
}

/// The cut that all those places were last given; nothing if they were not cut alike.
std::optional<last_cut> growth_readings::common_cut(const std::vector<place>& places,
                                                    const date& on) const {
    std::optional<last_cut> out;
    for (const place& p : places) {
        const last_cut one = cut_before(p, on);
        if (out && !(*out == one)) {
            return std::nullopt;
        }
        out = one;
    }
    return out;
}

std::optional<left_out_because> growth_readings::why_not(const measurement& m,
                                                         const std::optional<last_cut>& cut) const {
    const coat& c = coat_of(reference_, dog_.coat.value());
    if (c.kind == cycle::resting) {
        return left_out_because::coat_rests;
    }
    if (!m.combed_dry) {
        return left_out_because::not_combed_dry;
    }
    if (today_ && m.on > *today_) {
        return left_out_because::after_today;
    }
    if (!cut) {
        return left_out_because::cut_unalike;
    }
    if (cut->on == nullptr) {
        return left_out_because::no_cut;
    }
    if (!cut->left) {
        return left_out_because::cut_unsaid;
    }
    if (m.is >= longest_terminal(c).best) {
        return left_out_because::full_length;
    }
    return std::nullopt;
}

}  // namespace pelage
