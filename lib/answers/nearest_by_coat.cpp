#include "answers/nearest_by_coat.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/words/lookup.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

/// Coats on which the same comes nearest, or whose hair stops short of it.
struct same_nearest {
    std::string what;  ///< the tool, with what must be known of it
    length low{};
    length high{};
    bool stops = false;
    std::vector<std::string> coats;
};

std::vector<same_nearest> by_tool(const lookup_answer& a, const body& b, length_unit u) {
    std::vector<same_nearest> out;
    for (const nearest_row& row : a.nearest) {
        if (!row.stops && row.best.empty()) {
            continue;
        }
        same_nearest one;
        one.stops = row.stops.has_value();
        if (one.stops) {
            one.what = "its hair stops at about " + show(*row.stops, u);
        } else {
            const near_setup& n = row.best.front();
            one.what = title_words(n.how, u) + teeth_warning(n) +
                       (n.why_not ? "; but " + no_go_words(*n.why_not, b) : "");
            one.low = one.high = n.leaves.best;
        }
        const auto same = std::find_if(out.begin(), out.end(), [&](const same_nearest& s) {
            return s.what == one.what && s.stops == one.stops;
        });
        same_nearest& to = same == out.end() ? out.emplace_back(one) : *same;
        to.low = shorter(to.low, one.low);
        to.high = longer(to.high, one.high);
        to.coats.emplace_back(name(row.coat));
    }
    return out;
}

std::string from_to(const length& low, const length& high, length_unit u) {
    const std::string last = show(high, u);
    std::string first = show(low, u);
    if (first == last) {
        return last;
    }
    const auto unit = first.rfind(' ');
    if (unit != std::string::npos && last.ends_with(first.substr(unit))) {
        first.resize(unit);
    }
    return first + " to " + last;
}

}  // namespace

std::string teeth_warning(const near_setup& n) {
    if (n.how.over || n.how.tool.cut == teeth::full) {
        return {};
    }
    return n.how.tool.cut == teeth::skip ? "; skip teeth, firm flat skin only"
                                         : "; look at its teeth first";
}

void say_nearest_by_tool(document& d, const lookup_answer& a, const body& b, length_unit u) {
    for (const same_nearest& s : by_tool(a, b, u)) {
        const bool several = s.coats.size() > 1;
        const std::string coats =
            (several ? "" : "a ") + listed(s.coats) + (several ? " coats" : " coat");
        const bool every = s.coats.size() == a.nearest.size();
        if (s.stops) {
            d.item("on " + coats + " " + s.what);
        } else {
            d.item(s.what + ": leaves " + from_to(s.low, s.high, u) + " on " +
                   (every ? "every coat" : coats));
        }
    }
}

void say_stated_so(document& d, const lookup_answer& a, length_unit u) {
    if (a.stated_so.empty()) {
        return;
    }
    std::vector<std::string> ids;
    for (const blade& b : a.stated_so) {
        ids.push_back(b.id);
    }
    const bool one = ids.size() == 1;
    const blade& first = a.stated_so.front();
    const bool by_name = u != length_unit::mm && !first.in_inch.empty();
    d.say((one ? "Blade " : "Blades ") + listed(ids) + ": stated length " +
              (by_name ? first.in_inch + " in" : show(first.stated.best, u)) +
              "; where hair lies flat more is left.",
          2);
}

}  // namespace pelage::io
