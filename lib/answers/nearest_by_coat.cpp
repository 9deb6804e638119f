#include "answers/nearest_by_coat.hpp"

#include <algorithm>
#include <cmath>

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
                       (n.why_not ? "; but " + no_go_words(*n.why_not, b, n.how.way) : "");
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

std::string length_range(const length& low, const length& high, length_unit u) {
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
            d.item(s.what + ": leaves " + length_range(s.low, s.high, u) + " on " +
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

namespace {

std::string in_coats(const std::vector<std::string>& coats) {
    return coats.size() == 1 ? "a " + coats.front() + " coat" : listed(coats) + " coats";
}

/// One tool that does nearly the same on some coats, and how far it is off where that can be read.
struct same_on_coats {
    std::string tool;
    std::string behind;  ///< what must be known of it
    bool longer = false;
    bool shorter = false;
    length least{};
    length most{};
    std::vector<std::string> coats;
};

/// ", 0.2 to 0.9 mm shorter"; nothing where what is left reads alike.
std::string off_by_coats(const same_on_coats& t, length_unit u) {
    const bool metric = u == length_unit::mm;
    const length finest = metric ? mm(0.05) : mm(25.4 / 64.0);
    if (t.most < finest) {
        return {};
    }
    const auto tenths = [&](const length& l) {
        return metric ? mm(std::round(in_mm(l) * 10.0) / 10.0) : l;
    };
    return (t.least < finest ? ", up to " + show(tenths(t.most), u)
                             : ", " + length_range(tenths(t.least), tenths(t.most), u)) +
           (t.longer && t.shorter ? " longer or shorter"
            : t.longer            ? " longer"
                                  : " shorter");
}

}  // namespace

void say_by_coat(document& d, const std::string& head, const std::vector<nearest_row>& rows,
                 const lookup_request& r, length_unit u, bool how_far) {
    std::vector<same_on_coats> tools;
    const auto add = [&](const near_setup& n, coat_class c) {
        const std::string tool = title_words(n.how, u) + teeth_warning(n);
        const std::string behind =
            n.why_not ? "; " + no_go_words(*n.why_not, r.reference.dog_body, n.how.way) : "";
        auto same = std::find_if(tools.begin(), tools.end(), [&](const same_on_coats& t) {
            return t.tool == tool && t.behind == behind;
        });
        if (same == tools.end()) {
            same = tools.insert(tools.end(), {tool, behind, false, false, n.off, n.off, {}});
        }
        const bool off = in_mm(n.off) >= 0.05;
        same->longer = same->longer || (off && n.leaves.best > n.wanted);
        same->shorter = same->shorter || (off && n.leaves.best < n.wanted);
        same->least = shorter(same->least, n.off);
        same->most = longer(same->most, n.off);
        same->coats.emplace_back(name(c));
    };
    for (const nearest_row& row : rows) {
        for (const near_setup& n : row.best) {
            add(n, row.coat);
        }
    }
    if (!tools.empty()) {
        d.open(head, false);
    }
    for (const same_on_coats& t : tools) {
        const bool every = t.coats.size() == r.reference.coats.size();
        d.item(t.tool + (how_far ? off_by_coats(t, u) : "") + t.behind + ", on " +
               (every ? "every coat" : in_coats(t.coats)));
    }
}

}  // namespace pelage::io
