#include "answers/ladder_rows.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

/// The rung of the same thing in the other direction, or null.
const rung* rung_other_way(const ladder& l, const rung& g) {
    const auto at = std::find_if(l.rungs.begin(), l.rungs.end(), [&](const rung& o) {
        return held(o.how) == held(g.how) && o.how.way != g.how.way;
    });
    return at == l.rungs.end() ? nullptr : &*at;
}

std::string wanted_words(const std::vector<const ladder_target*>& all, length_unit u) {
    std::vector<std::string> out;
    for (const ladder_target* t : all) {
        std::string text = u == length_unit::mm ? number(t->wanted) : fraction_of_inch(t->wanted);
        if (out.empty() || out.back() != text) {  // what reads alike is said once
            out.push_back(std::move(text));
        }
    }
    return listed(out) + (u == length_unit::mm ? " mm" : " in");
}

}  // namespace

std::string one_beneath(const ladder& l) {
    std::string out;
    for (const rung& g : l.rungs) {
        if (g.how.over && !out.empty() && g.how.tool.id != out) {
            return {};
        }
        out = g.how.over ? g.how.tool.id : out;
    }
    return out;
}

bool asks_one_way(const lookup_request& r, const ladder& l) {
    return r.way.has_value() || l.one_way;
}

std::vector<ladder_row> ladder_rows_of(const ladder& l, const lookup_request& r, length_unit u) {
    const bool single = r.way.has_value();
    const std::string beneath = one_beneath(l);
    std::vector<ladder_row> out;
    for (const rung& g : l.rungs) {
        if (!single && g.how.way == direction::against_lay) {
            continue;  // told beside the other direction
        }
        out.push_back({g.how.over && !beneath.empty() ? "comb " + comb_words(g.how.over->id, u)
                                                      : held_words(g.how, u),
                       &g, single ? nullptr : rung_other_way(l, g)});
    }
    return out;
}

std::string targets_words(const ladder& l, length_unit u) {
    std::vector<const ladder_target*> all;
    std::vector<const ladder_target*> unmet;
    for (const ladder_target& t : l.targets) {
        all.push_back(&t);
        if (!t.met) {
            unmet.push_back(&t);
        }
    }
    return all.empty()
               ? ""
               : "The sheets ask clippers on this coat for " + wanted_words(all, u) +
                     (unmet.empty()
                          ? "; this kit leaves every one."
                          : "; not left everywhere it is asked: " + wanted_words(unmet, u) + ".");
}

}  // namespace pelage::io
