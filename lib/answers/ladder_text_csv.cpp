// The whole ladder of a kit, as a document: a page for the trainee, and lines for a spreadsheet.
#include <algorithm>

#include <pelage/answers/kit.hpp>

#include "answers/ladder_rows.hpp"
#include "answers/layout.hpp"
#include "answers/words/lookup.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

/// The mark of a note below the table: a, b, c, ...
std::string mark_of(std::size_t note) {
    return std::string(1, static_cast<char>('a' + static_cast<char>(note % 26)));
}

/// Why it is refused in the places asked about; empty if it may be used.
std::string why_not(const rung& g, const lookup_request& r) {
    return g.why_not ? no_go_words(*g.why_not, r.reference.dog_body, g.how.way) : std::string{};
}

/// Why setups are refused in the zone asked about, each once.
std::vector<std::string> reasons(const ladder& l, const lookup_request& r) {
    std::vector<std::string> out;
    for (const rung& g : l.rungs) {
        std::string why = why_not(g, r);
        if (!why.empty() && std::find(out.begin(), out.end(), why) == out.end()) {
            out.push_back(std::move(why));
        }
    }
    return out;
}

/// Where it may go, as short as a column needs: "all", or the mark of the note that says where.
std::string where_text(const rung& g, const ladder& l, const lookup_request& r) {
    if (!r.where.empty()) {
        const auto all = reasons(l, r);
        const auto at = std::find(all.begin(), all.end(), why_not(g, r));
        return at == all.end() ? "yes"
                               : "no " + mark_of(static_cast<std::size_t>(at - all.begin()));
    }
    return g.whole_coat ? "all" : mark_of(*g.where);
}

/// With the lay and against it, said once where both are alike.
std::string where_both(const rung& g, const rung* against, const ladder& l,
                       const lookup_request& r) {
    std::string out = where_text(g, l, r);
    if (against != nullptr && where_text(*against, l, r) != out) {
        out += "/" + where_text(*against, l, r);
    }
    return out + (g.out ? " out" : "");
}

/// What is left against the lay, and what with it, as shares of the longest.
text_bar bar_of(const ladder_row& row, const ladder& l) {
    length longest{};
    for (const rung& g : l.rungs) {
        longest = longer(longest, g.leaves.best);
    }
    const double one = in_mm(row.one->leaves.best) / in_mm(longest);
    const double other =
        row.against == nullptr ? one : in_mm(row.against->leaves.best) / in_mm(longest);
    return {std::min(one, other), std::max(one, other)};
}

typed_table ladder_table(const ladder& l, const lookup_request& r, const print_options& o) {
    typed_table t;
    t.whom = shown_to::people;
    const bool single = r.way.has_value();
    t.head = {"hold"};
    if (single) {
        t.head.emplace_back(name(*r.way));
    } else if (l.one_way) {
        t.head.emplace_back("leaves");
    } else {
        t.head.insert(t.head.end(), {"with the lay", "against it"});
    }
    t.head.emplace_back(!r.where.empty() ? "there?" : "where");
    t.bars_head = "to scale";
    for (const ladder_row& one : ladder_rows_of(l, r, o.units)) {
        std::vector<cell> row{one.what, one.one->leaves};
        if (!asks_one_way(r, l)) {
            row.push_back(one.against == nullptr ? cell{} : one.against->leaves);
        }
        row.push_back(where_both(*one.one, one.against, l, r));
        t.rows.push_back(std::move(row));
        t.bars.push_back(bar_of(one, l));
    }
    return t;
}

bool differ(const ladder& l, const lookup_request& r) {
    const auto rows = ladder_rows_of(l, r, length_unit::mm);
    return std::any_of(rows.begin(), rows.end(), [&](const ladder_row& row) {
        return row.against != nullptr &&
               where_text(*row.against, l, r) != where_text(*row.one, l, r);
    });
}

/// A note below the table, behind its mark.
void note(document& d, const std::string& mark, const std::string& text) {
    d.item_of(padded(mark, 3) + "  ", text, 7);
}

void say_notes(document& d, const ladder& l, const lookup_request& r, length_unit u) {
    if (r.where.empty()) {
        note(d, "all",
             std::string("wherever the coat is clipped, but in the places of prep only what stands "
                         "behind prep") +
                 (!r.way && differ(l, r) ? "; a slash: with the lay/against it" : ""));
        note(d, "prep", prep_words(r.reference.dog_body) + "; with the lay, no comb");
        for (std::size_t n = 0; n < l.places.size(); ++n) {
            note(d, mark_of(n), places_words(l.places[n], r.reference.dog_body));
        }
    } else {
        const auto refused = reasons(l, r);
        for (std::size_t n = 0; n < refused.size(); ++n) {
            note(d, mark_of(n), refused[n]);
        }
    }
    std::string gone;
    for (const rung& g : l.rungs) {
        const std::string text =
            held_words(g.how, u) + (g.out_until ? " until " + iso(*g.out_until) : "");
        if (g.out && gone.find(text) == std::string::npos) {
            gone += (gone.empty() ? "" : ", ") + text;
        }
    }
    if (!gone.empty()) {
        note(d, "out", "for sharpening: " + gone);
    }
}

bool has_comb(const ladder& l) {
    return std::any_of(l.rungs.begin(), l.rungs.end(),
                       [](const rung& g) { return g.how.over.has_value(); });
}

void say_cautions(document& d, const ladder& l, const lookup_request& r) {
    if (has_comb(l)) {
        d.caution(
            "a comb goes on a clean, dry coat that a fine comb passes to the skin, never over a "
            "mat; seat it: if it drops off, the blade beneath cuts to the skin");
    }
    d.caution(
        "short blades against the lay and hot blades irritate skin: test the heat on your wrist "
        "every few minutes");
    const auto lever = [](const kit_blade& b) {
        return b.spec.shape == edge::adjustable && b.settings.empty();
    };
    if (std::any_of(r.tools.blades.begin(), r.tools.blades.end(), lever)) {
        d.caution("the adjustable blade stands here once the kit has the marks of its lever");
    }
}

std::string ladder_sure(const ladder& l, const lookup_request& r) {
    const figure<double>& lay = lay_of(r.reference, r.rules, l.coat);
    std::string text =
        "stated lengths are common practice unless you measured them; angle of the "
        "lay, " +
        detail::fixed(lay.best, 0) + " degrees: " + std::string(in_words(lay.why.how));
    if (!l.one_way) {
        text += "; what the lay adds: " + std::string(in_words(r.rules.cut.comb_share.why.how));
    }
    return text + ". Test a patch, and start one longer.";
}

/// Which stated lengths are known how.
void explain(document& d, const ladder& l, const lookup_request& r, length_unit u) {
    d.open("Stated lengths, how they are known", false);
    for (std::size_t how = 0; how < basis_names.size(); ++how) {
        std::string things;
        for (const rung& g : l.rungs) {
            const bool same = stated_length(g.how, r.rules.cut).why.how == static_cast<basis>(how);
            const std::string tool = held_words(g.how, u);
            if (same && things.find(tool) == std::string::npos) {
                things += (things.empty() ? "" : ", ") + tool;
            }
        }
        if (!things.empty()) {
            d.item(std::string(in_words(static_cast<basis>(how))) + ": " + things);
        }
    }
}

/// A line for each setup.
typed_table setups_table(const ladder& l, const lookup_request& r) {
    typed_table t{
        {"hold", "blade", "comb", "direction", "", "stated", "basis", "at hand", "where"}};
    t.whom = shown_to::programs;
    for (const rung& g : l.rungs) {
        const figure<length> stated = stated_length(g.how, r.rules.cut);
        const std::string where = !r.where.empty() ? g.why_not ? "no: " + why_not(g, r) : "yes"
                                  : g.whole_coat
                                      ? whole_coat_words(g.how, r.reference.dog_body)
                                      : places_words(l.places[*g.where], r.reference.dog_body);
        t.rows.push_back({held(g.how), g.how.tool.id, g.how.over ? g.how.over->id : "",
                          std::string(name(g.how.way)), g.leaves, stated.best,
                          std::string(name(stated.why.how)), g.out ? "no" : "yes", where});
    }
    return t;
}

}  // namespace

document document_of(const ladder& l, const lookup_request& r, const print_options& o) {
    document d{"Ladder on a " + std::string(name(l.coat)) + " coat"};
    std::string head = d.title + ", " + (r.tools.title.empty() ? "the kit" : r.tools.title) +
                       ": what each leaves, combed out, from shortest to longest.";
    if (const std::string beneath = one_beneath(l); !beneath.empty()) {
        head += " Combs over blade " + beneath + ".";
    }
    if (l.one_way) {
        head += " Direction makes no difference to the length on this coat.";
    }
    if (const std::string& first = coat_of(r.reference, l.coat).said_first; !first.empty()) {
        d.say(first, 2);
    }
    d.say(head);
    if (l.rungs.empty()) {
        d.say("Nothing in the kit clips.");
        return d;
    }
    d.show(ladder_table(l, r, o));
    d.show(setups_table(l, r));
    say_notes(d, l, r, o.units);
    if (const std::string asked = targets_words(l, o.units); !asked.empty()) {
        d.say(asked, 2);
    }
    say_cautions(d, l, r);
    d.say_of("How sure: ", ladder_sure(l, r));
    if (o.explain) {
        explain(d, l, r, o.units);
    }
    return d;
}

}  // namespace pelage::io
