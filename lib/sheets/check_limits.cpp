// A sheet against the limits and clauses of a standard.
#include <pelage/model/cut.hpp>

#include "sheets/check_parts.hpp"

namespace pelage::sheets {

namespace {

/// The length a place is cut to by the sheet alone: a blade counts as it is etched.
std::optional<length> cut(const judged_sheet& s, const sheet_place& p) {
    if (keeps_length(p.asked) || p.asked.target) {
        return keeps_length(p.asked) ? std::nullopt : p.asked.target;
    }
    const blade* b = s.blade_of(p);
    return b == nullptr ? std::nullopt : std::optional{b->stated.best};
}

/// The most a blade leaves on a coat of the sheet.
length with_the_lay(const judged_sheet& s, const blade& b) {
    length most = b.stated.best;
    for (const coat_class k : s.coats) {
        most = longer(most, cut_length(bare(b, direction::with_lay),
                                       coat_of(s.known, k).lay_degrees.best, s.rules.cut)
                                .best);
    }
    return most;
}

bool breaks(const judged_sheet& s, const sheet_place& p, const limit& l) {
    if (keeps_length(p.asked)) {
        return false;
    }
    if (p.asked.target) {
        return (l.low && *p.asked.target < *l.low) || (l.high && *p.asked.target > *l.high);
    }
    const blade* b = s.blade_of(p);
    return b != nullptr &&
           ((l.high && b->stated.best > *l.high) || (l.low && with_the_lay(s, *b) < *l.low));
}

/// Of the places a clause compares with the one that is cut longest; null if none is cut.
const sheet_place* longest_of(const judged_sheet& s, const selection& than) {
    const sheet_place* longest = nullptr;
    for (const sheet_place& p : s.places) {
        if (p.rule && covers(than, p.at) && cut(s, p) &&
            (longest == nullptr || *cut(s, p) > *cut(s, *longest))) {
            longest = &p;
        }
    }
    return longest;
}

}  // namespace

void judge_limits(judged_sheet& s, const style& standard, told_limits& told) {
    for (std::size_t n = 0; n < standard.limits.size(); ++n) {
        const limit& l = standard.limits[n];
        const selection* whom = s.parts.find(l.whom);
        for (const sheet_place& p : s.places) {
            if (whom != nullptr && p.rule && covers(*whom, p.at) && breaks(s, p, l) &&
                told.emplace(*p.rule, n).second) {
                s.say(sheet_doubt::limit, p, broken_limit{s.says(p), standard.id, l});
            }
        }
    }
}

void judge_clauses(judged_sheet& s, const style& standard, told_limits& told) {
    for (std::size_t n = 0; n < standard.limits.size(); ++n) {
        const limit& l = standard.limits[n];
        const selection* whom = s.parts.find(l.whom);
        const selection* than = l.not_below.empty() ? nullptr : s.parts.find(l.not_below);
        const sheet_place* longest = than == nullptr ? nullptr : longest_of(s, *than);
        if (whom == nullptr || longest == nullptr) {
            continue;
        }
        for (const sheet_place& p : s.places) {
            if (p.rule && covers(*whom, p.at) && cut(s, p) && *cut(s, p) < *cut(s, *longest) &&
                told.emplace(*p.rule, n).second) {
                s.say(sheet_doubt::limit, p,
                      broken_clause{s.says(p), s.says(*longest),
                                    l.from.empty() ? standard.id : l.from, l});
            }
        }
    }
}

}  // namespace pelage::sheets
