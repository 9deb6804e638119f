#include "planner/double_jacket.hpp"

#include <algorithm>

#include "planner/candidates.hpp"
#include "planner/targets.hpp"

namespace pelage {

namespace {

/// The sheet as it stands wants the jacket clipped somewhere.
bool sheet_clips_jacket(const style& s, const body& b, const part_index& parts) {
    const resolved_style laid(b, parts, s);
    for (std::size_t i = 0; i < b.zones.size(); ++i) {
        if (b.zones[i].has(zone_use::jacket) && wants_clipping(laid.at({i, side::both}))) {
            return true;
        }
    }
    return false;
}

}  // namespace

bool asks_consent(const zone& z) {
    return carded_by_default(z) || z.where == group::head;
}

bool jacket_unsigned(const plan_request& r) {
    return double_coated(r.patient.coat.value()) && !agreed(r.patient, "clip-jacket");
}

bool wants_clipping(const instruction& wish) {
    return (wish.target || wish.blade) && clips(wish.how.value_or(finish::clip));
}

bool clips_jacket(const wishes_by_place& wishes, const body& b) {
    for (std::size_t i = 0; i < b.zones.size(); ++i) {
        if (b.zones[i].has(zone_use::jacket) && wants_clipping(wishes.at({i, side::both}))) {
            return true;
        }
    }
    return false;
}

namespace {

const style* sheet_with(const reference_data& c, coat_class k, const part_index& parts) {
    const auto at = std::find_if(c.styles.begin(), c.styles.end(), [&](const style& s) {
        return std::find(s.coats.begin(), s.coats.end(), k) != s.coats.end() &&
               !sheet_clips_jacket(s, c.dog_body, parts);
    });
    return at == c.styles.end() ? nullptr : &*at;
}

}  // namespace

const style* sheet_instead(const reference_data& c, coat_class k) {
    return sheet_with(c, k, part_index(c.dog_body));
}

std::optional<clip_question> question_of(const plan_request& r, const ready_kit& ready,
                                         const std::vector<zone_plan>& zones) {
    if (!jacket_unsigned(r)) {
        return std::nullopt;
    }
    const auto& known = r.reference.dog_body.zones;
    const wishes_by_place wishes(r, ready);
    clip_question q;
    bool jacket = false;
    for (std::size_t i = 0; i < zones.size(); ++i) {
        const zone& z = known[zones[i].at.zone];
        if (asks_consent(z) && wants_clipping(wishes.at(zones[i].at))) {
            q.asked.push_back(i);
            jacket = jacket || z.has(zone_use::jacket);
        }
    }
    if (!jacket) {
        return std::nullopt;
    }
    const style* fits = sheet_with(r.reference, *r.patient.coat, ready.top().parts());
    q.instead = fits != nullptr ? fits->id : std::string{};
    return q;
}

std::optional<instead_of_clip> instead_of(const plan_request& r, const groom& g) {
    const style* sheet = g.question ? find(r.reference.styles, g.question->instead) : nullptr;
    if (sheet == nullptr) {
        return std::nullopt;
    }
    instead_of_clip out{r.patient, sheet};
    out.patient.departures.clear();
    out.patient.body_length.reset();
    return out;
}

void card_out_first(const plan_request& r, groom& g) {
    const auto& known = r.reference.dog_body.zones;
    block first;
    first.how = by_hand(tool_kind::carder);
    first.done = finish::card;
    first.when = list::after_bath;
    call_by_name(first.how, coat_of(r.reference, *r.patient.coat));
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        const bool clipped = z.how.kind == tool_kind::clip && z.when == list::after_bath &&
                             z.came != outcome::stuck && z.came != outcome::clipped_under;
        if (clipped && carded_by_default(known[z.at.zone])) {
            first.zones.push_back(i);
            first.takes += place_work(r, z.at, finish::card);
        }
    }
    const bool jacket = std::any_of(first.zones.begin(), first.zones.end(), [&](std::size_t i) {
        return known[g.zones[i].at.zone].has(zone_use::jacket);
    });
    if (!double_coated(*r.patient.coat) || !jacket) {
        return;
    }
    g.after += first.takes;
    g.blocks.insert(std::find_if(g.blocks.begin(), g.blocks.end(),
                                 [](const block& b) { return b.when == list::after_bath; }),
                    std::move(first));
}

void call_by_name(setup& s, const coat& c) {
    if (s.kind == tool_kind::carder) {
        s.called = c.carded_with;
    }
}

finished left_there(const zone& z, const setup& s, const finished& clipped,
                    const cut_rules& rules) {
    return s.kind == tool_kind::clip && z.has(zone_use::pads) ? cut_length(s, upright, rules)
                                                              : clipped;
}

}  // namespace pelage
