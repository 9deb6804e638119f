// A looked-up blade, comb or length, as a document.
#include <algorithm>
#include <cmath>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/layout.hpp"
#include "answers/nearest_by_coat.hpp"
#include "answers/words/lookup.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

std::string teeth_in_words(const blade& b) {
    switch (b.cut) {
        case teeth::full:
            return "full teeth";
        case teeth::skip:
            return "skip teeth";
        case teeth::unknown:
            break;
    }
    return "teeth not known from the number";
}

/// "1/64", and nothing finer: no ruler shows it.
std::string fine_inch(const length& l) {
    const double parts = in_mm(l) / 25.4 * 64.0;
    if (parts >= 1.96) {
        return fraction_of_inch(l);
    }
    return parts < 0.98 ? "under 1/64" : parts < 1.5 ? "1/64" : "1/32";
}

/// What is left, as far as it can be measured.
std::string left_words(const finished& f, length_unit u) {
    if (u == length_unit::mm || in_mm(f.low) / 25.4 * 64.0 >= 1.96) {
        return show(f, u);
    }
    const std::string low = fine_inch(f.low);
    const std::string high = fine_inch(f.high);
    return fine_inch(f.best) + " in" + (low == high ? "" : " (" + low + " to " + high + ")");
}

/// Whether a test patch says something else of the blade than is etched on it.
bool measured(const lookup_request& r, const setup& s) {
    const kit_blade* mine = find_blade(r.tools, s.tool.id);
    return mine != nullptr && mine->measured.has_value();
}

std::string head_of(const lookup_answer& a, const lookup_request& r, const print_options& o) {
    const setup& s = a.asked.tool;
    std::string out = held_words(s, o.units);
    if (!s.over) {
        out += ": " + teeth_in_words(s.tool);
        out +=
            s.tool.shape == edge::standard ? "" : ", " + std::string(name(s.tool.shape)) + " edge";
        out += s.tool.rare ? ", rare" : "";
        const kit_blade* mine = find_blade(r.tools, s.tool.id);
        out += mine != nullptr && !at_hand(*mine, r.today) ? ", " + out_words(r) : "";
    }
    const finished spread{a.stated->low, a.stated->best, a.stated->high};
    const bool in_inch = !s.over && !s.tool.in_inch.empty();
    // what is etched keeps its name: 1/100, of which no ruler has the nearest mark
    const bool by_name = in_inch && o.units != length_unit::mm && !measured(r, s);
    const bool reckoned =
        s.over && show(spread.best, o.units) != show(s.over->stated.best, o.units);
    out += (reckoned ? ". With so long a blade beneath, worked out: " : ". Stated length ") +
           (by_name ? s.tool.in_inch + " in" : show(spread, o.units));
    if (in_inch && o.units == length_unit::mm) {
        out += ", " + s.tool.in_inch + " in";
    }
    return out + ".";
}

typed_table leaves_table(const lookup_answer& a, const lookup_request& r, length_unit u) {
    typed_table t{{"coat"}};
    const bool with = !r.way || *r.way == direction::with_lay;
    // where against the lay it may never go, nobody needs what it would leave
    const bool barred = a.there && (a.there->use == use_there::may::by_style
                                        ? !a.there->against
                                        : a.there->use == use_there::may::with_lay_only &&
                                              a.there->but == use_there::exception::none);
    const bool against = r.way ? *r.way == direction::against_lay : !barred;
    if (with) {
        t.head.emplace_back("with the lay");
    }
    if (against) {
        t.head.emplace_back("against the lay");
    }
    for (const coat_row& row : a.leaves) {
        std::vector<cell> cells{std::string(name(row.coat))};
        const auto add = [&](const finished& left) {
            const bool too_long = row.stops && left.best > *row.stops;
            cells.push_back(too_long ? cell("longer than it grows")
                                     : cell(left, left_words(left, u)));
        };
        if (with) {
            add(row.with);
        }
        if (against) {
            add(row.against);
        }
        t.rows.push_back(std::move(cells));
    }
    return t;
}

/// How far off, as coarse as what is left is shown, so that the sum comes out: 14 mm is 1 mm off 13.
std::string off_words(const near_setup& n, length_unit u) {
    if (u != length_unit::mm) {
        return show(n.off, u);
    }
    const double best = in_mm(n.leaves.best);
    const auto shown = [](double l) {
        const double steps = l < 1.0 ? 100.0 : l < 10.0 ? 10.0 : 1.0;
        return std::round(l * steps) / steps;
    };
    const bool less = n.wanted < n.leaves.best;
    const double off = (less ? 1.0 : -1.0) * (shown(best) - shown(in_mm(n.wanted)));
    return off < 0.005 ? "" : show(mm(off), u);
}

/// `wanted` as it is shown.
std::string near_text(const near_setup& n, const body& b, const print_options& o,
                      const std::string& wanted = {}) {
    std::string out = title_words(n.how, o.units) + ", leaves " + left_words(n.leaves, o.units);
    const double least = o.units == length_unit::mm ? 0.05 : 25.4 / 64.0;  // what can be written
    // half an inch is the 13 mm comb's own name: what reads alike isn't off
    if (const std::string off = off_words(n, o.units);
        in_mm(n.off) >= least && show(n.leaves.best, o.units) != wanted && !off.empty()) {
        out += ", " + off +
               (n.longer                   ? " longer: the next that may go there"
                : n.wanted < n.leaves.best ? " longer"
                                           : " shorter");
    }
    out += teeth_warning(n);
    if (!n.at_hand) {
        out += "; not in the kit or out today";
    }
    if (n.why_not) {
        out += "; but " + no_go_words(*n.why_not, b, n.how.way);
    }
    return out;
}

/// `wanted`: what the tool asked about leaves, as it is shown.
void say_near(document& d, const std::string& head, const std::vector<near_setup>& all,
              const body& b, const print_options& o, const std::string& wanted) {
    if (!all.empty()) {
        d.open(head, false);
    }
    for (const near_setup& n : all) {
        d.item(near_text(n, b, o, wanted));
    }
}

/// Whether it is worth telling what the blade does when reversed: not on a coat that stands off, nor
/// where one direction was asked about.
bool direction_matters(const lookup_answer& a, const lookup_request& r) {
    const bool barred = a.there && a.there->use != use_there::may::both_ways;
    return !r.way && !barred &&
           std::any_of(a.leaves.begin(), a.leaves.end(),
                       [](const coat_row& row) { return !(row.with == row.against); });
}

/// Without blanks, an inch by its short name.
std::string tight(std::string_view s) {
    std::string out;
    for (const char c : s) {
        out += c == ' ' ? "" : c == '"' ? "in" : std::string(1, c);
    }
    const auto at = out.find("inch");
    return at == std::string::npos ? out : out.substr(0, at) + "in";
}

/// A length as it was typed, in the unit that is shown: to 1/64 in where it is that, and no ruler's mark is
/// said of what lies between.
std::string typed_words(const length& l, length_unit u) {
    if (u == length_unit::mm) {
        return show(l, u);
    }
    constexpr double finest = 64.0;
    const double parts = in_mm(l) / 25.4 * finest;
    const double near = std::round(parts);
    if (near < 1.0 || std::abs(parts - near) > 0.01) {
        return "about " + show(l, u);
    }
    auto n = static_cast<int>(near);
    int d = 64;
    for (; n % 2 == 0 && d > 1; n /= 2) {
        d /= 2;
    }
    const std::string whole = n >= d ? std::to_string(n / d) : "";
    const std::string part = n % d == 0 ? "" : std::to_string(n % d) + "/" + std::to_string(d);
    return whole + (whole.empty() || part.empty() ? "" : " ") + part + " in";
}

void say_nearest(document& d, const lookup_answer& a, const lookup_request& r,
                 const print_options& o) {
    const body& b = r.reference.dog_body;
    const std::string wanted = show(a.asked.wanted, o.units);
    std::string said = a.asked.said;
    if (said.ends_with('"')) {
        said.replace(said.size() - 1, 1, " in");
    }
    const std::string typed = typed_words(a.asked.wanted, o.units);
    const bool otherwise = !said.empty() && tight(said) != tight(typed);
    const std::string nearest = a.asked.only == asked_kind::blade  ? "Nearest blade to "
                                : a.asked.only == asked_kind::comb ? "Nearest comb to "
                                                                   : "Nearest to ";
    const bool blades = a.asked.only == asked_kind::blade;
    if (blades) {
        say_stated_so(d, a, o.units);
    }
    d.open((otherwise ? '"' + said + "\" is " + typed + ". " + nearest + "it from the kit:"
                      : nearest + typed + " from the kit:"),
           false);
    for (const nearest_row& row : a.nearest) {
        if (a.nearest.size() > 1) {
            break;
        }
        d.add({line_as::paragraph, "on a " + std::string(name(row.coat)) + " coat", {}, 2, 2});
        for (const near_setup& n : row.best) {
            d.add({line_as::item, near_text(n, b, o, wanted), {}, 4, 6});
        }
        if (row.out) {
            d.add({line_as::item,
                   held_words(row.out->how, o.units) + " would leave " +
                       left_words(row.out->leaves, o.units) + ", but is " + out_words(r),
                   {},
                   4,
                   6});
        }
    }
    if (a.nearest.size() > 1) {
        say_nearest_by_tool(d, a, b, o.units);
    }
    const bool far = std::all_of(a.nearest.begin(), a.nearest.end(), [&](const nearest_row& row) {
        return row.best.empty() || row.best.front().off > a.asked.wanted * 0.3;
    });
    if (far) {
        d.say("Nothing in the kit comes near it: scissors, or another blade or comb.");
    }
    if (!blades) {
        say_stated_so(d, a, o.units);
    }
    if (a.nearest.size() > 1) {
        d.say("Name the coat (--coat wavy) for the three nearest.");
    }
}

void say_sure(document& d, const lookup_answer& a, const lookup_request& r, bool explain) {
    d.open("How sure:", false);
    for (const known_figure& f : a.sure) {
        const evidence why = known_how(f, a);
        std::string words{in_words(why.how)};
        words +=
            why.from.empty() ? "" : " (" + why.from + (why.relayed ? ", second-hand" : "") + ")";
        words += explain && !why.note.empty() ? "; " + why.note : "";
        d.item_of(figure_words(f, r) + ": ", words);
    }
}

/// On the coat that was asked about: what does the same, and what it does reversed.
void say_others(document& d, const lookup_answer& a, const lookup_request& r,
                const print_options& o) {
    const std::string on = " on a " + std::string(name(a.judged_on)) + " coat:";
    const body& b = r.reference.dog_body;
    const auto judged = std::find_if(a.leaves.begin(), a.leaves.end(),
                                     [&](const coat_row& row) { return row.coat == a.judged_on; });
    const bool known = judged != a.leaves.end();
    say_near(d, "In its place, with the lay" + on, a.replaces, b, o,
             known ? show(judged->with.best, o.units) : std::string{});
    if (direction_matters(a, r)) {
        say_near(d, "Against the lay it leaves about as much as these do with it" + on, a.reverse,
                 b, o, known ? show(judged->against.best, o.units) : std::string{});
    }
}

/// A blade or a comb: what it is, where it may be used, what it leaves, what does the same.
void say_tool(document& d, const lookup_answer& a, const lookup_request& r,
              const print_options& o) {
    const body& b = r.reference.dog_body;
    if (a.there && !(a.never && a.never->why == answered_no::cause::there)) {
        const bool turned = a.there->use == use_there::may::both_ways ||
                            (a.there->use == use_there::may::so && r.way == direction::against_lay);
        const bool either = turned && !a.asked.tool.over;
        d.say(there_words(*a.there, r) + "." + (either ? " Beginners keep with the lay." : ""), 2);
    }
    const blade& own = a.asked.tool.tool;
    const bool lever = own.shape == edge::adjustable && own.setting.empty() && own.reach;
    const auto only_there = [&] {
        const bool told = a.only_there && !a.only_there->nowhere && !a.never;
        const std::string on = r.way == direction::against_lay ? "Against the lay only on: "
                               : lever                         ? "At its shortest bare only on: "
                                                               : "Bare only on: ";
        if (told) {
            d.say(on + places_words(*a.only_there, b) +
                      (own.id == r.tools.under_comb ? "; it lies under the kit's combs." : "."),
                  2);
        }
    };
    if (!lever) {
        only_there();
    }
    d.say(head_of(a, r, o), 2);
    if (lever) {
        d.say("A lever at its side sets its length: told here at the shortest, up to " +
                  show(*own.reach, o.units) +
                  " at the longest. Written into the kit with its marks, it stands in the ladder "
                  "once for each.",
              2);
        only_there();
    }
    for (const std::string& h : hint_words(a.asked, o.units)) {
        d.say("(" + h + ")", 1);
    }
    if (!a.asked.tool.tool.note.empty() && !a.asked.tool.over) {
        d.say(a.asked.tool.tool.note);
    }
    const bool pads = of_pads_alone(r);
    if (pads) {
        d.say(
            "Between the pads hair has no lay: it is scooped out, and a blade leaves its stated "
            "length on every coat.");
    }
    if (!a.leaves.empty() && !pads) {
        d.open("It leaves, combed out (in brackets: it may come out so):", false);
        d.show(leaves_table(a, r, o.units));
    }
    if (r.coat) {
        say_others(d, a, r, o);
    } else {
        // of a comb on the wrong blade nobody knows what it would leave
        const bool known = !a.never || a.never->why != answered_no::cause::rule;
        say_by_coat(d, "In its place from the kit:", a.replaces_by_coat, r, o.units, known);
    }
    if (a.nothing_else_there) {
        d.say("Nothing else in the kit goes there: keep a second " +
              held_words(a.asked.tool, o.units) + ".");
    }
    if (!r.coat && direction_matters(a, r)) {
        say_by_coat(d, "Against the lay it leaves about as much as these do with it:",
                    a.reverse_by_coat, r, o.units);
    }
}

}  // namespace

document document_of(const lookup_answer& a, const lookup_request& r, const print_options& o) {
    document d{"What " + r.text + " means"};
    if (a.never) {
        d.add({line_as::caution, "No: " + never_words(a, r, o.units) + ".", {}, 0, 4});
    }
    if (const std::string of_coat = coat_words(r); !of_coat.empty()) {
        d.say(of_coat, 2);
    }
    if (a.asked.what == question::form::of_length) {
        say_nearest(d, a, r, o);
    } else {
        say_tool(d, a, r, o);
    }
    d.open({}, false);
    for (const std::string& c : caution_words(a, r)) {
        d.caution(c);
    }
    say_sure(d, a, r, o.explain);
    if (!r.coat) {
        d.say("The coat isn't named: test a patch, and start one longer.");
    }
    return d;
}

}  // namespace pelage::io
