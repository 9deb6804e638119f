// A looked-up blade, comb or length as text.
#include <algorithm>

#include <pelage/answers/write.hpp>

#include "answers/layout.hpp"
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

std::string head_of(const lookup_answer& a, const lookup_request& r, const print_options& o) {
    const setup& s = a.asked.tool;
    std::string out = held_words(s, o.units);
    if (!s.over) {
        out += ": " + teeth_in_words(s.tool);
        out +=
            s.tool.shape == edge::standard ? "" : ", " + std::string(name(s.tool.shape)) + " edge";
        out += s.tool.rare ? ", rare" : "";
        const kit_blade* mine = find_blade(r.tools, s.tool.id);
        out += mine != nullptr && !at_hand(*mine, r.today) ? ", out today" : "";
    }
    const finished spread{a.stated->low, a.stated->best, a.stated->high};
    out += ". Stated length " + show(spread, o.units);
    if (!s.over && !s.tool.in_inch.empty() && o.units == length_unit::mm) {
        out += ", " + s.tool.in_inch + " in";
    }
    return out + ".";
}

table leaves_table(const lookup_answer& a, const lookup_request& r, const print_options& o) {
    table t;
    t.head = {"coat"};
    const bool with = !r.way || *r.way == direction::with_lay;
    const bool against = !r.way || *r.way == direction::against_lay;
    if (with) {
        t.head.emplace_back("with the lay");
    }
    if (against) {
        t.head.emplace_back("against the lay");
    }
    for (const coat_row& row : a.leaves) {
        std::vector<std::string> cells{std::string(name(row.coat))};
        const auto cell = [&](const finished& left) {
            cells.push_back(row.stops && left.best > *row.stops ? "longer than it grows"
                                                                : show(left, o.units));
        };
        if (with) {
            cell(row.with);
        }
        if (against) {
            cell(row.against);
        }
        t.rows.push_back(std::move(cells));
    }
    return t;
}

/// What a person must know of the teeth before taking this blade in place of another.
std::string teeth_warning(const near_setup& n) {
    if (n.how.over || n.how.tool.cut == teeth::full) {
        return {};
    }
    return n.how.tool.cut == teeth::skip ? "; skip teeth, firm flat skin only"
                                         : "; look at its teeth first";
}

std::string near_text(const near_setup& n, const body& b, const print_options& o) {
    std::string out = title_words(n.how, o.units) + ", leaves " + show(n.leaves, o.units);
    const double least = o.units == length_unit::mm ? 0.05 : 25.4 / 64.0;  // what can be written
    if (in_mm(n.off) >= least) {
        out += ", " + show(n.off, o.units) + " off";
    }
    out += teeth_warning(n);
    if (!n.at_hand) {
        out += "; not in the kit or out today";
    }
    if (n.why_not) {
        out += "; but " + no_go_words(*n.why_not, b);
    }
    return out;
}

std::string near_list(const char* head, const std::vector<near_setup>& all, const body& b,
                      const print_options& o) {
    if (all.empty()) {
        return {};
    }
    std::string out = wrapped("", head, 0, o.width);
    for (const near_setup& n : all) {
        out += wrapped("  ", near_text(n, b, o), 4, o.width);
    }
    return out;
}

/// Whether it is worth telling what the blade does when reversed: not on a coat that stands off, nor
/// where one direction was asked about.
bool direction_matters(const lookup_answer& a, const lookup_request& r) {
    return !r.way && std::any_of(a.leaves.begin(), a.leaves.end(), [&](const coat_row& row) {
        return row.coat == a.judged_on && !(row.with == row.against);
    });
}

std::string nearest_text(const lookup_answer& a, const body& b, const print_options& o) {
    std::string out = "Nearest to " + show(a.asked.wanted, o.units) + " from the kit:\n";
    for (const nearest_row& row : a.nearest) {
        if (a.nearest.size() == 1) {
            out += "  on a " + std::string(name(row.coat)) + " coat\n";
            for (const near_setup& n : row.best) {
                out += wrapped("    ", near_text(n, b, o), 6, o.width);
            }
        } else if (row.stops) {
            out += wrapped("  " + padded(name(row.coat), 14),
                           "its hair stops at about " + show(*row.stops, o.units), 16, o.width);
        } else if (!row.best.empty()) {
            out += wrapped("  " + padded(name(row.coat), 14), near_text(row.best.front(), b, o), 16,
                           o.width);
        }
    }
    const bool far = std::all_of(a.nearest.begin(), a.nearest.end(), [&](const nearest_row& row) {
        return row.best.empty() || row.best.front().off > a.asked.wanted * 0.3;
    });
    if (far) {
        out += "Nothing in the kit comes near it: scissors, or another blade or comb.\n";
    }
    if (a.nearest.size() > 1) {
        out += "Name the coat (--coat wavy) for the three nearest.\n";
    }
    return out;
}

std::string sure_text(const lookup_answer& a, const lookup_request& r, const print_options& o) {
    std::string out = "How sure:\n";
    for (const known_figure& f : a.sure) {
        const evidence why = known_how(f, a);
        std::string words{in_words(why.how)};
        words +=
            why.from.empty() ? "" : " (" + why.from + (why.relayed ? ", second-hand" : "") + ")";
        words += o.explain && !why.note.empty() ? "; " + why.note : "";
        out += wrapped("  " + figure_words(f, r) + ": ", words, 4, o.width);
    }
    return out;
}

}  // namespace

std::string text_of(const lookup_answer& a, const lookup_request& r, const print_options& o) {
    std::string out;
    const body& b = r.reference.dog_body;
    const std::string of_coat = coat_words(r);
    out += a.never ? wrapped("", "No: " + never_words(a, r, o.units) + ".", 4, o.width) : "";
    out += of_coat.empty() ? "" : wrapped("", of_coat, 2, o.width);
    if (a.asked.what == question::form::of_length) {
        out += nearest_text(a, b, o);
    } else {
        out += wrapped("", head_of(a, r, o), 2, o.width);
        for (const std::string& h : hint_words(a.asked, o.units)) {
            out += wrapped("", "(" + h + ")", 1, o.width);
        }
        if (!a.asked.tool.tool.note.empty() && !a.asked.tool.over) {
            out += wrapped("", a.asked.tool.tool.note, 0, o.width);
        }
        if (a.there && !(a.never && a.never->why == answered_no::cause::there)) {
            out += wrapped("", there_words(*a.there, r), 2, o.width);
        }
        if (std::any_of(r.where.begin(), r.where.end(),
                        [&](const place& p) { return b.zones[p.zone].has(zone_use::pads); })) {
            out += wrapped("",
                           "Between the pads hair has no lay: it is scooped out, and a blade "
                           "leaves its stated length.",
                           0, o.width);
        }
        if (!a.leaves.empty()) {
            out += "It leaves, combed out:\n" + laid_out(leaves_table(a, r, o), o.width);
        }
        const std::string on = " on a " + std::string(name(a.judged_on)) + " coat";
        out += near_list(("In its place, with the lay" + on + ":").c_str(), a.replaces, b, o);
        if (direction_matters(a, r)) {
            out +=
                near_list(("Reversed it leaves what these leave with the lay" + on + ":").c_str(),
                          a.reverse, b, o);
        }
    }
    for (const std::string& c : caution_words(a, r)) {
        out += wrapped("! ", c, 2, o.width);
    }
    out += sure_text(a, r, o);
    if (!r.coat) {
        out += wrapped("", "The coat isn't named: test a patch, and start one longer.", 0, o.width);
    }
    return out;
}

}  // namespace pelage::io
