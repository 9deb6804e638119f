// A sheet's steps between neighbours.
#include <pelage/model/blend.hpp>
#include <pelage/model/refusal.hpp>

#include "sheets/check_parts.hpp"

namespace pelage::sheets {

namespace {

const sheet_place* one_at(const judged_sheet& s, std::size_t zone, side which) {
    for (const sheet_place& p : s.places) {
        if (p.at.zone == zone &&
            (p.at.which == side::both || which == side::both || p.at.which == which)) {
            return &p;
        }
    }
    return nullptr;
}

/// A face or foot clipped close beside hair left long ends in a line (common practice).
bool edge_on_purpose(const judged_sheet& s, const sheet_place& longer_one,
                     const sheet_place& shorter_one) {
    const zone& from = s.dog().zones[longer_one.at.zone];
    const zone& into = s.dog().zones[shorter_one.at.zone];
    const blade* b = s.blade_of(shorter_one);
    return b != nullptr && detail::how_short(*b) != detail::shortness::longer &&
           ((from.where == group::head && into.where == group::head) || into.where == group::feet);
}

/// How wide the step can be sloped: a share of the seam's length, or the whole of a scissored zone,
/// which is about as wide as its seam is long (assumption). A slope steeper than it is wide shows
/// as an edge (assumption).
length room_for(const judged_sheet& s, const sheet_place& high, const seam& at) {
    const auto how = high.asked.how;
    const bool scissored = how == finish::scissor || how == finish::thin ||
                           how == finish::comb_then_scissor || how == finish::hand_strip;
    return scissored ? at.along.best : at.along.best * s.rules.prices.blend_room.best;
}

void step_at(judged_sheet& s, std::size_t index, side which, told_lengths& told) {
    const seam& at = s.dog().seams[index];
    const sheet_place* a = one_at(s, at.a, which);
    const sheet_place* b = one_at(s, at.b, which);
    if (a == nullptr || b == nullptr) {
        return;
    }
    for (const coat_class k : s.coats) {
        const coat& c = coat_of(s.known, k);
        const auto x = length_on(a->asked, c, s.known, s.rules.cut);
        const auto y = length_on(b->asked, c, s.known, s.rules.cut);
        if (!x || !y) {
            continue;
        }
        const sheet_place& high = *x < *y ? *b : *a;
        const sheet_place& low = *x < *y ? *a : *b;
        const length step = gap(*x, *y);
        const length room = room_for(s, high, at);
        if (!shows(step, s.rules.prices) || in_hundredths(step) <= in_hundredths(room) ||
            edge_on_purpose(s, high, low) || !told.emplace(sheet_doubt::step, index, 0, 0).second) {
            continue;
        }
        s.say(sheet_doubt::step, s.own_line(high) || !s.own_line(low) ? high : low,
              high_step{at.a,
                        at.b,
                        {high.at, longer(*x, *y)},
                        {low.at, shorter(*x, *y)},
                        room,
                        s.season_name()});
    }
}

}  // namespace

void judge_steps(judged_sheet& s, told_lengths& told) {
    for (std::size_t i = 0; i < s.dog().seams.size(); ++i) {
        if (s.laid.kind_of(i) == seam_kind::blend) {
            for (const side one : {side::left, side::right}) {
                step_at(s, i, one, told);
            }
        }
    }
}

}  // namespace pelage::sheets
