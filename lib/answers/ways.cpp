// Other ways beside a plan, and the plan without each of its tools.
#include "answers/ways.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/lines.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/tool.hpp"
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

class ways_writer {
  public:
    ways_writer(const groom& g, const plan_request& r, const print_options& o,
                const std::optional<return_date>& when = std::nullopt)
        : g_(g), o_(o), when_(when), places_(g, r) {}

    [[nodiscard]] line of(const other_way& w) const;
    [[nodiscard]] line of(const without_tool& w) const;

  private:
    [[nodiscard]] std::string length_of(const zone_plan& z) const {
        return z.leaves ? show(z.leaves->best, o_.units) : std::string{};
    }
    [[nodiscard]] std::string tool(const setup& s) const { return held_words(s, o_.units); }
    [[nodiscard]] std::string becomes(const zone_plan& was, const zone_plan& is) const;
    [[nodiscard]] std::string changes(const groom& plan, const zone_list& changed) const;
    [[nodiscard]] std::string back_of(const other_way& w) const;
    [[nodiscard]] std::string body_line(const other_way& w) const;
    [[nodiscard]] std::string fewer_line(const other_way& w) const;
    [[nodiscard]] std::string scissors_line(const other_way& w) const;
    [[nodiscard]] std::string alike_line(const other_way& w) const;
    [[nodiscard]] std::string clip_line(const other_way& w) const;
    [[nodiscard]] std::string patch_line(const other_way& w) const;
    [[nodiscard]] std::string in_words(const other_way& w) const;
    [[nodiscard]] std::string named(const std::vector<held_tool>& tools) const {
        strings names;
        for (const held_tool& t : tools) {
            names.push_back(held_words(t, o_.units));
        }
        return listed(names);
    }

    const groom& g_;
    const print_options& o_;
    std::optional<return_date> when_;  ///< of the plan itself
    place_words places_;
};

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
    return "by " + tool(is.how);
}

std::string ways_writer::changes(const groom& plan, const zone_list& changed) const {
    grouped<std::string> by;
    for (const std::size_t i : changed) {
        by.add(becomes(g_.zones[i], plan.zones[i]), i);
    }
    strings parts;
    for (const auto& [text, where] : by.all()) {
        parts.push_back(in_short(places_, where, o_) + " " + text);
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
    return what + ": " + length_of(is) + ", not " + length_of(was) + " (" + tool(is.how) + "), " +
           more_in_words(w.more, o_.explain) +
           (w.beyond_sheet ? "; shorter than the sheet allows: ask the owner" : "");
}

/// When the dog would have to be back, where that is another day than the plan's.
std::string ways_writer::back_of(const other_way& w) const {
    if (!w.when || !when_ || w.when->next_visit == when_->next_visit) {
        return {};
    }
    const std::string by = come_by(w.when->next_visit, o_);
    return by == come_by(when_->next_visit, o_) ? "" : "; back by " + by;
}

std::string ways_writer::fewer_line(const other_way& w) const {
    return "without " + named(w.dropped) + (w.taken.empty() ? "" : ", with " + named(w.taken)) +
           ": " + changes(w.plan, w.changed) + "; " + more_in_words(w.more, o_.explain);
}

std::string ways_writer::scissors_line(const other_way& w) const {
    zone_list resized;
    std::copy_if(w.about.begin(), w.about.end(), std::back_inserter(resized), [&](std::size_t i) {
        return length_of(g_.zones[i]) != length_of(w.plan.zones[i]);
    });
    return "no scissoring on " + in_short(places_, w.about, o_) + ": " +
           more_in_words(w.more, o_.explain) + ", a plainer outline" +
           (resized.empty() ? "" : "; " + changes(w.plan, resized));
}

std::string ways_writer::alike_line(const other_way& w) const {
    strings pairs;
    for (std::size_t n = 0; n + 1 < w.about.size(); n += 2) {
        const std::size_t left = w.about[n];
        const std::size_t right = w.about[n + 1];
        pairs.push_back(places_.title_of(left) + " " + length_of(g_.zones[left]) + ", " +
                        places_.title_of(right) + " " + length_of(g_.zones[right]) +
                        "; alike: both " + length_of(w.plan.zones[left]));
    }
    return joined(pairs, "; ") + ", " + more_in_words(w.more, o_.explain);
}

std::string ways_writer::clip_line(const other_way& w) const {
    strings parts;
    for (const std::size_t i : w.about) {
        const zone_plan& z = w.plan.zones[i];
        parts.push_back(places_.title_of(i) + (z.leaves ? " " + length_of(z) : ""));
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
        by.add(tool(z.how) + " should leave " + show(z.leaves->best, o_.units) +
                   " and may leave as little as " + show(z.leaves->low, o_.units),
               i);
    }
    strings parts;
    for (const auto& [how, where] : by.all()) {
        parts.push_back(places_.listed_of(where) + ": " + how);
    }
    return "nearer what is wished, if a test patch proves it: " + joined(parts, "; ") + ", " +
           more_in_words(w.more, o_.explain);
}

std::string ways_writer::in_words(const other_way& w) const {
    switch (w.what) {
        case way_kind::body_length:
            return body_line(w);
        case way_kind::fewer_tools:
            return fewer_line(w);
        case way_kind::no_scissoring:
            return scissors_line(w);
        case way_kind::sides_alike:
            return alike_line(w);
        case way_kind::clip_mats:
            return clip_line(w);
        case way_kind::test_patch:
            return patch_line(w);
    }
    return {};
}

line ways_writer::of(const other_way& w) const {
    std::string text = in_words(w) + back_of(w);
    if (o_.explain) {
        text += " (misses and steps weighed as minutes: " + more_in_words(w.dearer, o_.explain) +
                (w.cheapest ? ")" : "; not proven the cheapest of its kind)");
    }
    return item(std::move(text));
}

line ways_writer::of(const without_tool& w) const {
    zone_list changed;
    std::set_difference(w.changed.begin(), w.changed.end(), w.stuck.begin(), w.stuck.end(),
                        std::back_inserter(changed));
    grouped<std::string> by;
    for (const std::size_t i : changed) {
        const zone_plan& z = w.plan.zones[i];
        std::string how = z.how.kind == tool_kind::none ? "left" : "by " + tool(z.how);
        how += z.leaves ? ", " + length_of(z) : "";
        const bool missed = z.target && z.leaves && z.came == outcome::off_target;
        if (missed) {
            how += " (" + show(*z.target, o_.units) + " asked)";
        }
        by.add(how, i);
    }
    strings parts;
    for (const auto& [how, where] : by.all()) {
        parts.push_back(places_.listed_of(where) + " " + how);
    }
    if (!w.stuck.empty()) {
        parts.push_back("not to be done as asked: " + places_.listed_of(w.stuck));
    }
    std::string text = held_words(w.tool, o_.units);
    text += w.in_kit > 1 ? " (" + std::to_string(w.in_kit) + " in the kit)" : "";
    text += ": " + more_in_words(w.more, o_.explain) + (parts.empty() ? "" : "; ") +
            joined(parts, "; ");
    return item(std::move(text));
}

}  // namespace

std::string in_short(const place_words& places, const zone_list& which, const print_options& o) {
    if (o.explain || which.size() <= 3) {
        return places.listed_of(which);
    }
    strings parts;
    for (const group part :
         {group::body, group::legs, group::tail, group::feet, group::head, group::prep}) {
        const zone_list all = places.all_of(part);
        zone_list here;
        std::copy_if(all.begin(), all.end(), std::back_inserter(here), [&](std::size_t i) {
            return std::find(which.begin(), which.end(), i) != which.end();
        });
        const std::string whole{part == group::prep ? "prep places" : name(part)};
        if (here.size() > 3 && here.size() < all.size()) {
            parts.push_back((2 * here.size() >= all.size() ? "most of the " : "some of the ") +
                            whole);
        } else if (!here.empty() && here.size() == all.size()) {
            parts.push_back(whole);
        } else {
            const strings named = places.titles_of(here);
            parts.insert(parts.end(), named.begin(), named.end());
        }
    }
    return listed(parts);
}

std::vector<line> other_ways(const beside& b, const groom& g, const plan_request& r,
                             const print_options& o, const std::optional<return_date>& when) {
    const ways_writer writer(g, r, o, when);
    std::vector<line> out;
    for (const other_way& w : b.ways) {
        out.push_back(writer.of(w));
    }
    return out;
}

std::vector<line> without_tools(const beside& b, const groom& g, const plan_request& r,
                                const print_options& o) {
    const ways_writer writer(g, r, o);
    std::vector<line> out;
    for (const without_tool& w : b.without) {
        out.push_back(writer.of(w));
    }
    return out;
}

}  // namespace pelage::io
