// What carries a comb, the words of the trade, and what is never done, as documents.
#include <algorithm>

#include <pelage/answers/kit.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/asked.hpp"
#include "answers/words/refusal.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

/// "blades 30, 10 and 15".
std::string blades_words(const std::vector<blade>& all) {
    return (all.size() == 1 ? "blade " : "blades ") + listed(ids(all));
}

std::string combs_from_to(const std::vector<comb>& all, length_unit u) {
    const auto shorter = [](const comb& a, const comb& b) { return a.stated.best < b.stated.best; };
    const auto [low, high] = std::minmax_element(all.begin(), all.end(), shorter);
    const std::string first = comb_words(low->id, u);
    return all.size() == 1 ? "the " + first + " comb"
                           : "combs from " + first + " to " + comb_words(high->id, u);
}

/// Of several blades those that carry a comb, what it leaves over each, and how to ask with its length.
void say_each_that_may(document& d, const carrying_answer& a, length_unit u) {
    std::vector<blade> may;
    std::vector<std::string> adds;
    std::vector<std::string> asking;
    for (const carrying_answer::one& b : a.asked) {
        if (b.may) {
            may.push_back(b.tool);
            adds.push_back("over the " + b.tool.id + " it leaves " +
                           (in_hundredths(b.adds) == 0 ? std::string("what is stated on it")
                                                       : show(b.adds, u) + " more"));
            asking.push_back("13 mm comb over " + b.tool.id);
        }
    }
    d.say("Yes: a comb may sit on " + blades_words(may) +
              ", short and with full teeth: " + joined(adds, ", ") + ". How long is the comb? " +
              "Ask for both: pelage lookup '" + joined(asking, " vs ") + "'.",
          2);
}

}  // namespace

document document_of(const carrying_answer& a, const lookup_request& r, const print_options& o) {
    document d{"What carries a comb"};
    const std::string with = a.blades.empty() ? "no blade of the kit" : blades_words(a.blades);
    for (const carrying_answer::one& b : a.asked) {
        if (!b.may) {
            say_no(d, std::string(refusal_words(refusal::comb_on_wrong_blade)) + "; blade " +
                          b.tool.id + " isn't one. Of the kit it goes on " + with + ".");
        }
    }
    if (a.asked.size() > 1 && a.may()) {
        say_each_that_may(d, a, o.units);
    } else if (!a.asked.empty() && a.may()) {
        d.say("Yes: a comb may sit on blade " + a.asked.front().tool.id +
                  ", which is short and has full teeth. How long is the comb? "
                  "Ask for both: pelage lookup '13 mm comb over " +
                  a.asked.front().tool.id + "'.",
              2);
    } else if (a.asked.empty()) {
        d.say(
            "Combs go on a short blade with full teeth: of the kit " + with +
                (a.blades.size() > 1 ? "; the " + r.tools.under_comb + " is kept for that." : "."),
            2);
    }
    if (!a.combs.empty()) {
        d.say("Of the kit sit there: " + combs_from_to(a.combs, o.units) + ".", 2);
    }
    d.open({}, false);
    d.caution(
        "a comb needs a clean, dry coat that a fine comb passes to the skin; if it drops off, "
        "the blade beneath cuts to the skin");
    d.say("Never over skip teeth or a long blade, and never at a mat. How sure: " +
          std::string(in_words(r.rules.cut.comb_stated_over.why.how)) + ".");
    return d;
}

document document_of(const list_asked& l, const lookup_request& r, const print_options& /*o*/) {
    const glossary& g = words_of(r);
    if (l.what == list_asked::of::nevers) {
        document d{"What is never done"};
        d.open("Never:", false);
        typed_table rows{{"never", "because", "basis"}};
        rows.whom = shown_to::programs;
        for (const never_rule& n : g.never) {
            d.item(n.text + ". " + n.instead);
            rows.rows.push_back({n.text, n.instead, how_sure(n.why)});
        }
        d.show(std::move(rows));
        d.open({}, false);
        d.say("What never goes on one place: pelage lookup groin. How sure: " +
              std::string(in_words(basis::practice)) + ".");
        return d;
    }
    document d{"The words of the trade"};
    d.say("Each is explained: pelage lookup 'tuck-up'.");
    typed_table rows{{"kind", "word"}};
    rows.whom = shown_to::programs;
    for (const std::string_view kind : term_kind_names) {
        std::vector<std::string> titles;
        for (const term& t : g.terms) {
            if (name(t.kind) == kind) {
                titles.push_back(t.title);
                rows.rows.push_back({std::string(kind), t.title});
            }
        }
        std::sort(titles.begin(), titles.end());
        d.item_of(std::string(kind) + ": ", joined(titles, ", "));
    }
    d.show(std::move(rows));
    return d;
}

}  // namespace pelage::io
