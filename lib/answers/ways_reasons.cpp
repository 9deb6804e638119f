// Why each setup of a plan, and what is in the way of a stuck place.
#include <algorithm>
#include <utility>

#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/lines.hpp"
#include "answers/ways.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/stuck.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

using strings = std::vector<std::string>;

class reasons_writer {
  public:
    reasons_writer(const groom& g, const plan_request& r, const print_options& o)
        : g_(g), r_(r), o_(o), places_(g, r) {}

    /// Why, in a few words.
    [[nodiscard]] std::string reason(const reason_why& why) const;
    /// Why, with the wish where that is what decided.
    [[nodiscard]] std::string reason_and_wish(const reason_why& why) const {
        const zone_plan& z = g_.zones[why.zone];
        const bool asked =
            why.why == chosen_for::wish && z.target && z.came != outcome::clipped_under;
        return reason(why) + (asked ? " (" + show(*z.target, o_.units) + " asked)" : "");
    }
    [[nodiscard]] std::vector<line> all(const std::vector<reason_why>& all) const;

  private:
    [[nodiscard]] std::string only_one(const zone_plan& z) const;
    [[nodiscard]] std::string customary(const zone_plan& z) const;
    [[nodiscard]] std::string off_in_words(const zone_plan& z) const;
    [[nodiscard]] std::string next(const reason_why& why) const;
    [[nodiscard]] std::string called(const setup& s) const { return title_words(s, o_.units); }

    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    place_words places_;
};

/// Why there was nothing to choose from.
std::string reasons_writer::only_one(const zone_plan& z) const {
    if (z.came == outcome::goes_along) {
        return "no long fringe on a short ear";
    }
    const finish how = instruction_for(r_, z.at).how.value_or(finish::clip);
    const zone& here = r_.reference.dog_body.zones[z.at.zone];
    if (z.how.kind == tool_kind::scissors && clips(how) && !z.tidied) {
        return here.has(zone_use::scissors_only)
                   ? "no blade or comb goes there; scissors leave the wish"
                   : "no blade or comb at hand may go there and leave what the sheet allows; "
                     "scissors do";
    }
    const bool bounds = z.target && here.where != group::prep && z.came != outcome::beyond_reach;
    if (z.how.kind == tool_kind::clip && bounds && !z.mat) {
        return "no other blade or comb may go there and leave what the sheet allows";
    }
    if (!z.tidied && (z.came != outcome::as_wished || z.how.kind == tool_kind::clip)) {
        return "nothing else may be used here";
    }
    return z.how.kind == tool_kind::carder && how != finish::card
               ? "a double coat is carded until the owner has signed for clipping"
               : "as the sheet has it";
}

std::string reasons_writer::reason(const reason_why& why) const {
    const zone_plan& z = g_.zones[why.zone];
    const bool told = why.alone && why.next && called(*why.alone) == called(*why.next);
    const std::string alone =
        why.alone && !told ? "; alone " + called(*why.alone) + " would do best" : "";
    switch (why.why) {
        case chosen_for::only_one:
            return only_one(z);
        case chosen_for::customary:
            return customary(z);
        case chosen_for::under_mat:
            return cause_words(r_, z, o_.units);
        case chosen_for::wish:
            return "nearest the wish";
        case chosen_for::enough:
            return "within " + show(z.tolerated, o_.units) + " of the wish, and costs least here";
        case chosen_for::nearest:
            return "the nearest that may be used here, " + off_in_words(z);
        case chosen_for::cheapest:
            return z.target && z.leaves ? off_in_words(z) + ", but costs least here"
                                        : "costs least here";
        case chosen_for::in_hand:
            return "that blade or comb is used anyway" + alone;
        case chosen_for::spares:
            return "spares a pick-up" +
                   (why.with.empty() ? ""
                                     : " together with the " + in_short(places_, why.with, o_)) +
                   alone;
        case chosen_for::neighbours:
            return "a smaller step to its neighbours" + alone;
        case chosen_for::direction:
            return "the direction of its neighbours" + alone;
        case chosen_for::no_time:
            return "combing it out takes longer than this dog is combed for" +
                   (alone.empty() ? "" : "; combed out " + called(*why.alone) + " would do here");
        case chosen_for::with_part:
            return "like what is round it, which the kit leaves at another length than asked";
    }
    return {};
}

/// By the zone's list of blades.
std::string reasons_writer::customary(const zone_plan& z) const {
    const auto& list = r_.reference.dog_body.zones[z.at.zone].prep_blades;
    return z.how.tool.id == list.front() ? "the customary blade"
                                         : "the first of the customary blades that may be used";
}

std::string reasons_writer::off_in_words(const zone_plan& z) const {
    const length off = gap(z.leaves->best, *z.target);
    return show(off, o_.units) + (z.leaves->best < *z.target ? " shorter" : " longer") +
           " than asked";
}

std::string reasons_writer::next(const reason_why& why) const {
    if (!why.next) {
        return {};
    }
    const bool measured = why.next_leaves && why.next->kind == tool_kind::clip;
    return "; next best here " + called(*why.next) + (why.next_combed ? ", combed out first" : "") +
           (measured ? ", " + show(why.next_leaves->best, o_.units) : "");
}

/// Places done alike for the same reason with the same next best, and the span of what that costs more.
struct reasoned_places {
    std::string how;
    std::string because;
    zone_list where;
    work least{};
    work most{};
    bool other = false;
};

std::vector<line> reasons_writer::all(const std::vector<reason_why>& all) const {
    std::vector<reasoned_places> groups;
    for (const reason_why& why : all) {
        const std::string how = called(g_.zones[why.zone].how);
        const std::string because = reason(why) + next(why);
        auto at = std::find_if(groups.begin(), groups.end(), [&](const reasoned_places& one) {
            return one.how == how && one.because == because;
        });
        if (at == groups.end()) {
            at = groups.insert(groups.end(),
                               {how, because, {}, why.dearer, why.dearer, why.next.has_value()});
        }
        at->where.push_back(why.zone);
        at->least = std::min(at->least, why.dearer);
        at->most = std::max(at->most, why.dearer);
    }
    std::vector<line> out;
    for (const reasoned_places& one : groups) {
        std::string cost;
        if (one.other) {
            const std::string low = detail::fixed(in_minutes(one.least), 2);
            const std::string high = detail::fixed(in_minutes(one.most), 2);
            cost = ", " + (low == high ? low : low + " to " + high) + " min dearer";
        }
        out.push_back(
            item(one.how + ": " + places_.listed_of(one.where) + ": " + one.because + cost));
    }
    return out;
}

}  // namespace

std::vector<line> reasons(const beside& b, const groom& g, const plan_request& r,
                          const print_options& o) {
    return reasons_writer(g, r, o).all(b.why);
}

strings reasons_in_words(const beside& b, const zone_list& zones, const groom& g,
                         const plan_request& r, const print_options& o) {
    const reasons_writer writer(g, r, o);
    grouped<std::string> by;
    for (const reason_why& why : b.why) {
        if (std::find(zones.begin(), zones.end(), why.zone) != zones.end()) {
            by.add(writer.reason_and_wish(why), why.zone);
        }
    }
    const place_words places(g, r);
    strings out;
    for (const auto& [text, where] : by.all()) {
        out.push_back(by.all().size() == 1 ? text : places.listed_of(where) + ": " + text);
    }
    return out;
}

namespace {

/// Why they can't be done, and what would help.
grouped<std::pair<std::string, std::string>> stuck_by(const beside& b, const groom& g,
                                                      const plan_request& r,
                                                      const print_options& o) {
    // what is in the way, and what would help
    grouped<std::pair<std::string, std::string>> by;
    for (const std::size_t i : g.stuck) {
        const auto at = std::find_if(b.stuck.begin(), b.stuck.end(),
                                     [&](const infeasible_zone& c) { return c.zone == i; });
        if (at == b.stuck.end()) {
            by.add({cause_words(r, g.zones[i], o.units), ""}, i);
        } else if (at->frees.empty()) {
            by.add(
                {rules_in_words(*at),
                 at->veterinarian ? "nothing frees it today: leave it, a veterinarian decides"
                                  : "no blade or comb we know does it so: agree on another finish"},
                i);
        } else {
            by.add({rules_in_words(*at), "would free it: " + freed_by(*at, o.units)}, i);
        }
    }
    return by;
}

}  // namespace

std::vector<std::string> stuck_in_brief(const beside& b, const groom& g, const plan_request& r,
                                        const print_options& o) {
    grouped<std::string> out;  // what is in the way, with the places, each with what would help
    std::vector<std::string> told;
    const grouped<std::pair<std::string, std::string>> by = stuck_by(b, g, r, o);
    for (std::size_t k = 0; k < by.all().size(); ++k) {
        const auto& [why, where] = by.all()[k];
        out.add(why.first, k);
        told.push_back(listed(place_words(g, r).by_part(where)) +
                       (why.second.empty() ? "" : " (" + why.second + ")"));
    }
    std::vector<std::string> lines;
    for (const auto& [why, which] : out.all()) {
        std::vector<std::string> all;
        for (const std::size_t k : which) {
            all.push_back(told[k]);
        }
        lines.push_back(why + ": " + joined(all, "; "));
    }
    return lines;
}

std::vector<line> stuck_places(const beside& b, const groom& g, const plan_request& r,
                               const print_options& o) {
    std::vector<line> out;
    const grouped<std::pair<std::string, std::string>> by = stuck_by(b, g, r, o);
    for (const auto& [told, where] : by.all()) {
        out.push_back(item(place_words(g, r).listed_of(where) + ": " + told.first));
        if (!told.second.empty()) {
            out.push_back({line_as::detail, told.second, {}, 4, 6});
        }
    }
    return out;
}

}  // namespace pelage::io
