// The questions of a kit. The right answer is always what look-up, ladder, rules or sheet say; a wrong one
// is something else of the kit of which the same functions say that it is wrong.
#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "kit/quiz_parts.hpp"

namespace pelage {

namespace {

constexpr std::size_t fewest_wrong = 2;

std::string key_of(quiz_topic t, const std::vector<std::string>& about) {
    std::string out{name(t)};
    for (const std::string& one : about) {
        out += "/" + one;
    }
    return out;
}

kit with_all_there(kit k) {
    for (kit_blade& b : k.blades) {
        b.out = false;
        b.out_until.reset();
    }
    return k;
}

}  // namespace

quiz_drawer::quiz_drawer(const quiz_request& r) : asked(r), whole(with_all_there(r.tools)) {
    for (const setup& s : setups_of(whole, r.today, r.rules.cut)) {
        const bool known = s.tool.cut != teeth::unknown;  // no rule is asked about of a guess
        if (s.kind == tool_kind::clip && s.tool.etched != "50" && known) {
            (s.over ? combed : bare).push_back(s);
        }
    }
}

lookup_request quiz_drawer::asking(const kit& k, std::vector<place> where) const {
    return {asked.reference,  asked.rules, k,          {}, asked_kind::any, false, {},
            std::move(where), {},          asked.today};
}

void quiz_list::add(quiz_question q, const std::vector<std::string>& about) {
    if (q.wrong.size() >= fewest_wrong) {
        q.key = key_of(q.topic, about);
        all_.push_back(std::move(q));
    }
}

bool read_apart(const length& a, const length& b) {
    return number(a) != number(b) && fraction_of_inch(a) != fraction_of_inch(b);
}

std::vector<quiz_option> other_lengths(const finished& right, std::vector<length> all) {
    std::sort(all.begin(), all.end(), [&](const length& a, const length& b) {
        return std::pair{gap(a, right.best), a} < std::pair{gap(b, right.best), b};
    });
    std::vector<length> kept{right.best};
    std::vector<quiz_option> out;
    for (const length& l : all) {
        const bool apart = std::all_of(kept.begin(), kept.end(),
                                       [&](const length& k) { return read_apart(k, l); });
        // an end of the range, as it is read, is right, too
        const bool beyond = (l < right.low || l > right.high) && read_apart(l, right.low) &&
                            read_apart(l, right.high);
        if (apart && beyond) {
            kept.push_back(l);
            out.push_back({l});
        }
    }
    return out;
}

std::vector<quiz_question> quiz_questions(const quiz_request& r) {
    const quiz_drawer d(r);
    quiz_list out;
    add_lengths(out, d);
    add_places(out, d);
    add_sheets(out, d);
    return std::move(out).all();
}

}  // namespace pelage
