// What stands beside a plan, as text.
#include "answers/alternatives_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include <pelage/base/phrase.hpp>

#include "answers/layout.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/stuck.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

using strings = std::vector<std::string>;

/// "8 min less", "about as long"; to a tenth under --explain: the minutes are guesses.
std::string more_in_words(const work& w, bool exact) {
    const double v = std::abs(in_minutes(w));
    if (v < (exact ? 0.05 : 0.5)) {
        return exact || v < 0.05 ? "as long" : "about as long";
    }
    const std::string n = exact && v < 9.95 ? detail::fixed(v, 1) : std::to_string(std::lround(v));
    return n + (w > work{} ? " min more" : " min less");
}

/// Parts with the same key, in the order of their first.
template <class Key>
class grouped {
  public:
    void add(const Key& key, std::size_t zone) {
        const auto at = std::find_if(all_.begin(), all_.end(),
                                     [&](const auto& one) { return one.first == key; });
        (at == all_.end() ? all_.emplace_back(key, std::vector<std::size_t>{}) : *at)
            .second.push_back(zone);
    }
    [[nodiscard]] const auto& all() const { return all_; }

  private:
    std::vector<std::pair<Key, std::vector<std::size_t>>> all_;
};

class ways_writer {
  public:
    ways_writer(const groom& g, const plan_request& r, const print_options& o,
                const std::optional<return_date>& when = std::nullopt)
        : g_(g), r_(r), o_(o), when_(when) {}

    [[nodiscard]] std::string line(const other_way& w) const;
    [[nodiscard]] std::string line(const without_tool& w) const;
    [[nodiscard]] std::string lines(const std::vector<reason_why>& all) const;
    [[nodiscard]] std::string stuck_lines(const std::vector<infeasible_zone>& all) const;
    /// "neck, back and ribs: nearest the wish", a line for each reason.
    [[nodiscard]] strings reasons_of(const std::vector<reason_why>& all,
                                     const std::vector<std::size_t>& which) const {
        grouped<std::string> by;
        for (const reason_why& why : all) {
            if (std::find(which.begin(), which.end(), why.zone) != which.end()) {
                const zone_plan& z = g_.zones[why.zone];
                const bool asked =
                    why.why == chosen_for::wish && z.target && z.came != outcome::clipped_under;
                by.add(reason(why) + (asked ? " (" + show(*z.target, o_.units) + " asked)" : ""),
                       why.zone);
            }
        }
        strings out;
        for (const auto& [text, where] : by.all()) {
            out.push_back(by.all().size() == 1 ? text : listed(titles(where)) + ": " + text);
        }
        return out;
    }

  private:
    using zones = std::vector<std::size_t>;

    [[nodiscard]] std::string title_of(std::size_t i) const {
        return title(r_.reference.dog_body, g_.zones[i].at);
    }
    [[nodiscard]] strings titles(const zones& which) const {
        std::vector<place> places;
        for (const std::size_t i : which) {
            places.push_back(g_.zones[i].at);
        }
        return pelage::titles(r_.reference.dog_body, places);
    }
    [[nodiscard]] std::string in_short(const zones& which) const;
    [[nodiscard]] std::string length_of(const zone_plan& z) const {
        return z.leaves ? show(z.leaves->best, o_.units) : std::string{};
    }
    [[nodiscard]] std::string becomes(const zone_plan& was, const zone_plan& is) const;
    [[nodiscard]] std::string changes(const groom& plan, const zones& changed) const;
    [[nodiscard]] std::string back_of(const other_way& w) const;
    [[nodiscard]] std::string body_line(const other_way& w) const;
    [[nodiscard]] std::string fewer_line(const other_way& w) const;
    [[nodiscard]] std::string scissors_line(const other_way& w) const;
    [[nodiscard]] std::string alike_line(const other_way& w) const;
    [[nodiscard]] std::string clip_line(const other_way& w) const;
    [[nodiscard]] std::string patch_line(const other_way& w) const;
    [[nodiscard]] std::string only_one(const zone_plan& z) const;
    [[nodiscard]] std::string reason(const reason_why& why) const;
    [[nodiscard]] std::string customary(const zone_plan& z) const;
    [[nodiscard]] std::string off_in_words(const zone_plan& z) const;
    [[nodiscard]] std::string next(const reason_why& why) const;

    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    std::optional<return_date> when_;  ///< of the plan itself
};

/// A few places by name, many by the parts of the dog they are on; all by name under --explain.
std::string ways_writer::in_short(const zones& which) const {
    if (o_.explain || which.size() <= 3) {
        return listed(titles(which));
    }
    strings parts;
    for (const group part :
         {group::body, group::legs, group::tail, group::feet, group::head, group::prep}) {
        zones all;
        zones here;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (r_.reference.dog_body.zones[g_.zones[i].at.zone].where == part) {
                all.push_back(i);
                if (std::find(which.begin(), which.end(), i) != which.end()) {
                    here.push_back(i);
                }
            }
        }
        const std::string whole{part == group::prep ? "prep places" : name(part)};
        if (here.size() > 3 && here.size() < all.size()) {
            parts.push_back((2 * here.size() >= all.size() ? "most of the " : "some of the ") +
                            whole);
        } else if (!here.empty() && here.size() == all.size()) {
            parts.push_back(whole);
        } else {
            const strings named = titles(here);
            parts.insert(parts.end(), named.begin(), named.end());
        }
    }
    return listed(parts);
}

/// What a place comes to instead: its length where that differs, else the tool.
std::string ways_writer::becomes(const zone_plan& was, const zone_plan& is) const {
    if (is.came == outcome::stuck) {
        return "not to be done as asked";
    }
    if (is.how.kind == tool_kind::none) {
        return "left";
    }
    const std::string before = length_of(was);
    const std::string after = length_of(is);
    if (!after.empty() && after != before) {
        return after + (before.empty() ? "" : ", not " + before);
    }
    return "by " + held(is.how);
}

std::string ways_writer::changes(const groom& plan, const zones& changed) const {
    grouped<std::string> by;
    for (const std::size_t i : changed) {
        by.add(becomes(g_.zones[i], plan.zones[i]), i);
    }
    strings parts;
    for (const auto& [text, where] : by.all()) {
        parts.push_back(in_short(where) + " " + text);
    }
    return joined(parts, "; ");
}

std::string ways_writer::body_line(const other_way& w) const {
    // the length most of the body comes to
    grouped<std::string> by;
    for (const std::size_t i : w.about) {
        by.add(length_of(w.plan.zones[i]), i);
    }
    const auto most = std::max_element(
        by.all().begin(), by.all().end(),
        [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
    const std::size_t i = most->second.front();
    const zone_plan& was = g_.zones[i];
    const zone_plan& is = w.plan.zones[i];
    const auto off = [&](const zone_plan& z) {
        return in_hundredths(gap(z.leaves->best, *was.target));
    };
    const bool longer_now = was.leaves->best < is.leaves->best;
    const std::string what = off(is) == 0         ? "body at the sheet's own wish"
                             : off(is) < off(was) ? "body nearer the sheet's wish"
                             : longer_now         ? "longer body"
                                                  : "shorter body";
    return what + ": " + length_of(is) + ", not " + length_of(was) + " (" + held(is.how) + "), " +
           more_in_words(w.more, o_.explain) +
           (w.beyond_sheet ? "; shorter than the sheet allows: ask the owner" : "");
}

/// When the dog would have to be back, where that is another day than the plan's.
std::string ways_writer::back_of(const other_way& w) const {
    if (!w.when || !when_ || w.when->next_visit == when_->next_visit) {
        return {};
    }
    return "; back by " + on_day(w.when->next_visit, o_);
}

std::string ways_writer::fewer_line(const other_way& w) const {
    return "without " + listed(names(w.dropped)) +
           (w.taken.empty() ? "" : ", with " + listed(names(w.taken))) + ": " +
           changes(w.plan, w.changed) + "; " + more_in_words(w.more, o_.explain);
}

std::string ways_writer::scissors_line(const other_way& w) const {
    zones resized;
    std::copy_if(w.about.begin(), w.about.end(), std::back_inserter(resized), [&](std::size_t i) {
        return length_of(g_.zones[i]) != length_of(w.plan.zones[i]);
    });
    return "no scissoring on " + in_short(w.about) + ": " + more_in_words(w.more, o_.explain) +
           ", a plainer outline" + (resized.empty() ? "" : "; " + changes(w.plan, resized));
}

std::string ways_writer::alike_line(const other_way& w) const {
    strings pairs;
    for (std::size_t n = 0; n + 1 < w.about.size(); n += 2) {
        const std::size_t left = w.about[n];
        const std::size_t right = w.about[n + 1];
        pairs.push_back(title_of(left) + " " + length_of(g_.zones[left]) + ", " + title_of(right) +
                        " " + length_of(g_.zones[right]) + "; alike: both " +
                        length_of(w.plan.zones[left]));
    }
    return joined(pairs, "; ") + ", " + more_in_words(w.more, o_.explain);
}

std::string ways_writer::clip_line(const other_way& w) const {
    strings parts;
    for (const std::size_t i : w.about) {
        const zone_plan& z = w.plan.zones[i];
        parts.push_back(title_of(i) + (z.leaves ? " " + length_of(z) : ""));
    }
    std::string text = "mats clipped off, not combed out: " + listed(parts) + ", " +
                       more_in_words(w.more, o_.explain);
    if (w.back_in) {
        text += ", the length back " + weeks_in_words((*w.back_in)[0], (*w.back_in)[2]);
    }
    return text;
}

std::string ways_writer::patch_line(const other_way& w) const {
    grouped<std::string> by;
    for (const std::size_t i : w.about) {
        const zone_plan& z = w.plan.zones[i];
        by.add(held(z.how) + " should leave " + show(z.leaves->best, o_.units) +
                   " and may leave as little as " + show(z.leaves->low, o_.units),
               i);
    }
    strings parts;
    for (const auto& [how, where] : by.all()) {
        parts.push_back(listed(titles(where)) + ": " + how);
    }
    return "nearer what is wished, if a test patch proves it: " + joined(parts, "; ") + ", " +
           more_in_words(w.more, o_.explain);
}

std::string ways_writer::line(const other_way& w) const {
    std::string text;
    switch (w.what) {
        case way_kind::body_length:
            text = body_line(w);
            break;
        case way_kind::fewer_tools:
            text = fewer_line(w);
            break;
        case way_kind::no_scissoring:
            text = scissors_line(w);
            break;
        case way_kind::sides_alike:
            text = alike_line(w);
            break;
        case way_kind::clip_mats:
            text = clip_line(w);
            break;
        case way_kind::test_patch:
            text = patch_line(w);
            break;
    }
    text += back_of(w);
    if (o_.explain) {
        text += " (with misses and steps " + more_in_words(w.dearer, o_.explain) +
                (w.cheapest ? ")" : "; not proven the cheapest of its kind)");
    }
    return wrapped("  ", text, 4, o_.width);
}

std::string ways_writer::line(const without_tool& w) const {
    zones changed;
    std::set_difference(w.changed.begin(), w.changed.end(), w.stuck.begin(), w.stuck.end(),
                        std::back_inserter(changed));
    grouped<std::string> by;
    for (const std::size_t i : changed) {
        const zone_plan& z = w.plan.zones[i];
        std::string how = z.how.kind == tool_kind::none ? "left" : "by " + held(z.how);
        how += z.leaves ? ", " + length_of(z) : "";
        const bool missed = z.target && z.leaves && z.came == outcome::off_target;
        if (missed) {
            how += " (" + show(*z.target, o_.units) + " asked)";
        }
        by.add(how, i);
    }
    strings parts;
    for (const auto& [how, where] : by.all()) {
        parts.push_back(listed(titles(where)) + " " + how);
    }
    if (!w.stuck.empty()) {
        parts.push_back("not to be done as asked: " + listed(titles(w.stuck)));
    }
    std::string text = name(w.tool);
    text += w.in_kit > 1 ? " (" + std::to_string(w.in_kit) + " in the kit)" : "";
    text += ": " + more_in_words(w.more, o_.explain) + (parts.empty() ? "" : "; ") +
            joined(parts, "; ");
    return wrapped("  ", text, 4, o_.width);
}

/// Why there was nothing to choose from.
std::string ways_writer::only_one(const zone_plan& z) const {
    if (z.came == outcome::goes_along) {
        return "no long fringe on a short ear";
    }
    if (!z.tidied && (z.came != outcome::as_wished || z.how.kind == tool_kind::clip)) {
        return "nothing else may be used here";
    }
    const finish how = instruction_for(r_, z.at).how.value_or(finish::clip);
    return z.how.kind == tool_kind::carder && how != finish::card
               ? "a double coat is carded until the owner has signed for clipping"
               : "as the sheet has it";
}

std::string ways_writer::reason(const reason_why& why) const {
    const zone_plan& z = g_.zones[why.zone];
    const bool told = why.alone && why.next && title(*why.alone) == title(*why.next);
    const std::string alone = why.alone && !told ? "; for itself " + title(*why.alone) : "";
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
            return "in the hand anyway" + alone;
        case chosen_for::spares:
            return "spares a pick-up" +
                   (why.with.empty() ? "" : " together with the " + in_short(why.with)) + alone;
        case chosen_for::neighbours:
            return "a smaller step to its neighbours" + alone;
        case chosen_for::direction:
            return "the direction of its neighbours" + alone;
        case chosen_for::no_time:
            return "no time to comb it out" + alone + " after combing out";
    }
    return {};
}

/// By the zone's list of blades.
std::string ways_writer::customary(const zone_plan& z) const {
    const auto& list = r_.reference.dog_body.zones[z.at.zone].prep_blades;
    return z.how.tool.id == list.front() ? "the customary blade"
                                         : "the first of the customary blades that may be used";
}

std::string ways_writer::off_in_words(const zone_plan& z) const {
    const length off = gap(z.leaves->best, *z.target);
    return show(off, o_.units) + (z.leaves->best < *z.target ? " shorter" : " longer") +
           " than asked";
}

std::string ways_writer::next(const reason_why& why) const {
    if (!why.next) {
        return {};
    }
    const bool measured = why.next_leaves && why.next->kind == tool_kind::clip;
    return "; next best here " + title(*why.next) + (why.next_combed ? ", combed out first" : "") +
           (measured ? ", " + show(why.next_leaves->best, o_.units) : "");
}

std::string ways_writer::lines(const std::vector<reason_why>& all) const {
    // by what is done, why and what else: costs of the same group may differ
    struct group_of_places {
        std::string how;
        std::string because;
        zones where;
        work least{};
        work most{};
        bool other = false;
    };
    std::vector<group_of_places> groups;
    for (const reason_why& why : all) {
        const std::string how = title(g_.zones[why.zone].how);
        const std::string because = reason(why) + next(why);
        auto at = std::find_if(groups.begin(), groups.end(), [&](const group_of_places& one) {
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
    std::string text;
    for (const group_of_places& one : groups) {
        std::string cost;
        if (one.other) {
            const std::string low = detail::fixed(in_minutes(one.least), 2);
            const std::string high = detail::fixed(in_minutes(one.most), 2);
            cost = ", " + (low == high ? low : low + " to " + high) + " min dearer";
        }
        text +=
            wrapped("  ", one.how + ": " + listed(titles(one.where)) + ": " + one.because + cost, 4,
                    o_.width);
    }
    return text;
}

/// Places for which the same is in the way and would help, together.
std::string ways_writer::stuck_lines(const std::vector<infeasible_zone>& all) const {
    grouped<std::pair<std::string, std::string>> by;
    for (const std::size_t i : g_.stuck) {
        const auto at = std::find_if(all.begin(), all.end(),
                                     [&](const infeasible_zone& c) { return c.zone == i; });
        if (at == all.end()) {
            by.add({cause_words(r_, g_.zones[i], o_.units), ""}, i);
        } else if (at->frees.empty()) {
            by.add(
                {rules_in_words(*at),
                 at->veterinarian ? "nothing frees it today: leave it, a veterinarian decides"
                                  : "no blade or comb we know does it so: agree on another finish"},
                i);
        } else {
            by.add({rules_in_words(*at), "would free it: " + freed_by(*at, o_.units)}, i);
        }
    }
    std::string text;
    for (const auto& [told, where] : by.all()) {
        text += wrapped("  ", listed(titles(where)) + ": " + told.first, 4, o_.width);
        text += told.second.empty() ? "" : wrapped("    ", told.second, 6, o_.width);
    }
    return text;
}

}  // namespace

std::string other_ways_text(const beside& b, const groom& g, const plan_request& r,
                            const print_options& o, const std::optional<return_date>& when) {
    std::string text;
    for (const other_way& w : b.ways) {
        text += ways_writer(g, r, o, when).line(w);
    }
    return text;
}

std::string without_text(const beside& b, const groom& g, const plan_request& r,
                         const print_options& o) {
    std::string text;
    for (const without_tool& w : b.without) {
        text += ways_writer(g, r, o).line(w);
    }
    return text;
}

std::string why_text(const beside& b, const groom& g, const plan_request& r,
                     const print_options& o) {
    return ways_writer(g, r, o).lines(b.why);
}

strings why_lines(const beside& b, const std::vector<std::size_t>& zones, const groom& g,
                  const plan_request& r, const print_options& o) {
    return ways_writer(g, r, o).reasons_of(b.why, zones);
}

std::string stuck_text(const beside& b, const groom& g, const plan_request& r,
                       const print_options& o) {
    return ways_writer(g, r, o).stuck_lines(b.stuck);
}

}  // namespace pelage::io
