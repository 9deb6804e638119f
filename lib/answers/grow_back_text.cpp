// How a dog grows back after mats were clipped off, as text.
#include <algorithm>
#include <cmath>

#include <pelage/base/phrase.hpp>

#include "answers/alternatives_text.hpp"
#include "answers/layout.hpp"
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

namespace {

std::string more_in_words(const work& w) {
    const double v = std::abs(in_minutes(w));
    return v < 0.5 ? "as long at the table"
                   : detail::fixed(v, 0) + (w > work{} ? " min more" : " min less");
}

class grow_back_writer {
  public:
    grow_back_writer(const groom& g, const plan_request& r, const print_options& o)
        : g_(g), r_(r), o_(o) {}

    [[nodiscard]] std::string line(const regrowth_option& w) const {
        std::string text;
        if (w.how == grow_back::keep_long) {
            text = g_.down.empty() ? "as planned, what is sound is kept long"
                                   : "in patches: only what is matted comes off, what is sound is "
                                     "kept long: " +
                                         more_in_words(w.more);
            if (in_mm(w.step) > in_mm(r_.rules.prices.seam_allowance.best)) {
                text += ", with steps of up to " + show(w.step, o_.units) + " to see until then";
            }
        } else {
            const bool planned = w.how == grow_back::even_part && !g_.down.empty();
            text = (planned ? "as planned, " : "") + even_places(w) + " taken down too, to about " +
                   even_in_words(w, o_.units) + ", to come back in one length" +
                   (planned ? "" : ": " + more_in_words(w.more));
        }
        text += "; " + back(w);
        return wrapped("  ", text, 4, o_.width);
    }

    [[nodiscard]] std::string how_sure() const {
        const coat& c = coat_of(r_.reference, *r_.patient.coat);
        return "8 in 10 such dogs lie between; the owner chooses" +
               (o_.explain ? "; growth of the coat: " + basis_words(c.rate.why) : std::string{});
    }

  private:
    /// Parts of the dog by name where most of them go; a few places one by one.
    [[nodiscard]] std::string even_places(const regrowth_option& w) const {
        std::vector<std::string> names;
        for (const std::size_t i : w.down) {
            names.push_back(title(r_.reference.dog_body, g_.zones[i].at));
        }
        if (names.size() <= 3 || o_.explain) {
            return listed(names);
        }
        std::vector<std::string> parts;
        for (const group part : {group::body, group::legs, group::tail, group::feet, group::head}) {
            if (std::any_of(w.down.begin(), w.down.end(), [&](std::size_t i) {
                    return r_.reference.dog_body.zones[g_.zones[i].at.zone].where == part;
                })) {
                parts.emplace_back(name(part));
            }
        }
        return listed(parts);
    }
    [[nodiscard]] std::string back(const regrowth_option& w) const {
        const std::string where = title(r_.reference.dog_body, g_.zones[w.last].at);
        return "back at " + show(w.to, o_.units) + " " +
               weeks_in_words(w.back_in[0], w.back_in[2]) + " (last: " + where + ", from " +
               show(w.from, o_.units) + ")";
    }

    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
};

}  // namespace

std::string grow_back_text(const beside& b, const groom& g, const plan_request& r,
                           const print_options& o) {
    if (b.grow_back.empty()) {
        return {};
    }
    const grow_back_writer writer(g, r, o);
    std::string text;
    for (const regrowth_option& w : b.grow_back) {
        text += writer.line(w);
    }
    return text + wrapped("  ", writer.how_sure(), 4, o.width);
}

}  // namespace pelage::io
