// How a dog grows back after mats were clipped off.
#include <algorithm>
#include <cmath>

#include <pelage/base/phrase.hpp>

#include "answers/lines.hpp"
#include "answers/ways.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

std::string weeks_in_words(const days& early, const days& late) {
    if (is_never(late)) {
        return "perhaps never";
    }
    const int first = std::max(1, static_cast<int>(std::floor(in_days(early) / 7.0)));
    const int last = std::max(first, static_cast<int>(std::ceil(in_days(late) / 7.0)));
    const std::string to = std::to_string(last) + (last == 1 ? " week" : " weeks");
    return "in " + (first == last ? "about " + to : std::to_string(first) + " to " + to);
}

std::string even_in_words(const regrowth_option& w, length_unit u) {
    length least = w.even;
    length most = w.even;
    for (const std::size_t i : w.down) {
        if (const auto& leaves = w.plan.zones[i].leaves) {
            least = shorter(least, leaves->best);
            most = longer(most, leaves->best);
        }
    }
    const std::string to = show(most, u);
    std::string from = show(least, u);
    if (from == to) {
        return to;
    }
    constexpr std::string_view unit = " mm";  // said once
    if (u == length_unit::mm && from.ends_with(unit)) {
        from.resize(from.size() - unit.size());
    }
    return from + " to " + to;
}

std::string back_in_words(const regrowth_option& w, length_unit u) {
    return "back at " + show(w.to, u) + " " + weeks_in_words(w.back_in[0], w.back_in[2]);
}

namespace {

std::string more_in_words(const work& w) {
    const double v = std::abs(in_minutes(w));
    return v < 0.5 ? "as long at the table"
                   : detail::fixed(v, 0) + (w > work{} ? " min more" : " min less");
}

/// Parts of the dog by name where most of them go; a few places one by one.
std::string even_places(const regrowth_option& w, const place_words& places, bool all) {
    return listed(w.down.size() <= 3 || all ? places.each_of(w.down) : places.parts_of(w.down));
}

std::string grown_back_words(const regrowth_option& w, const groom& g, const plan_request& r,
                             const print_options& o) {
    if (w.how == grow_back::keep_long) {
        const std::string text =
            g.down.empty() ? "as planned, what is sound is kept long"
                           : "in patches: only what is matted comes off, what is sound is "
                             "kept long: " +
                                 more_in_words(w.more);
        return in_mm(w.step) > in_mm(r.rules.prices.seam_allowance.best)
                   ? text + ", with steps of up to " + show(w.step, o.units) + " to see until then"
                   : text;
    }
    const bool planned = w.how == grow_back::even_part && !g.down.empty();
    return (planned ? "as planned, " : "") + even_places(w, place_words(g, r), o.explain) +
           " taken down too, to about " + even_in_words(w, o.units) +
           ", to come back in one length" + (planned ? "" : ": " + more_in_words(w.more));
}

}  // namespace

std::vector<line> growing_back(const beside& b, const groom& g, const plan_request& r,
                               const print_options& o) {
    std::vector<line> out;
    for (const regrowth_option& w : b.grow_back) {
        out.push_back(item(grown_back_words(w, g, r, o) + "; " + back_in_words(w, o.units) +
                           " (last: " + place_words(g, r).title_of(w.last) + ", from " +
                           show(w.from, o.units) + ")"));
    }
    if (!out.empty()) {
        const coat& c = coat_of(r.reference, *r.patient.coat);
        out.push_back(
            item("8 in 10 such dogs lie between; the owner chooses" +
                 (o.explain ? "; growth of the coat: " + basis_words(c.rate.why) : std::string{})));
    }
    return out;
}

}  // namespace pelage::io
