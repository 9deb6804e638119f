#include "answers/words/stuck.hpp"

#include <vector>

#include <pelage/base/phrase.hpp>

#include "answers/words/bound.hpp"
#include "answers/words/refusal.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

using strings = std::vector<std::string>;

std::string step_words(const remedy_step& w, length_unit u) {
    switch (w.how) {
        case remedy_kind::comb_out:
            return "combing it out at another visit, about " + detail::whole_minutes(*w.takes) +
                   " min";
        case remedy_kind::measure_hair:
            return "measuring it, " + show(printed_no_less(*w.least, u), u) + " or more will do";
        case remedy_kind::comb_tip:
            return "a comb's tip that passes beneath";
        case remedy_kind::consent:
            return "the owner's consent in writing (--consent " + w.id + ")";
        case remedy_kind::shorter:
            return "the owner's word that it may be shorter";
        case remedy_kind::either_way:
            return "the direction left open";
        case remedy_kind::blade:
            return "blade " + w.id;
        case remedy_kind::comb:
            return "comb " + comb_words(w.id, u);
        case remedy_kind::measure_tool:
            return "blade " + w.id + " measured again, " + show(*w.least, u) + " as it is made";
        case remedy_kind::heal:
            return "what was found on the skin healed or treated";
    }
    return {};
}

}  // namespace

std::string rule_words(const broken_rule& rule) {
    const std::string which = rule.at_hand ? "no blade at hand that may be used here "
                                           : "no blade that may be used here ";
    switch (rule.what) {
        case obstacle::refused:
            return std::string(refusal_words(rule.no));
        case obstacle::none_short_enough:
            return which + "is short enough for the free hair under the mat";
        case obstacle::hair_unknown:
            return "how much free hair lies under the mat isn't known";
        case obstacle::none_passes:
            return which + "passes under the mat as a comb's tip does";
        case obstacle::pelt:
            return "a pelt is never combed out";
        case obstacle::never_combed_out:
            return "a mat isn't combed out here";
        case obstacle::over_limit:
            return "combing it out takes about " + detail::whole_minutes(rule.takes) +
                   " min, this dog is combed out for " + detail::whole_minutes(rule.most);
        case obstacle::no_time_left:
            return "there is no time left to comb it out today";
        case obstacle::not_at_hand:
            return "the kit has nothing for it at hand";
        case obstacle::odd_measure:
            return "the blade for it was measured at another length than it is made for";
        case obstacle::too_short:
            return "the sheet goes no shorter";
        case obstacle::other_direction:
            return "the sheet wants the other direction";
        case obstacle::no_tool_allowed:
            return "no blade or comb may be used here";
        case obstacle::not_held:
            return "too little hair beneath it to hold while it is combed out";
        case obstacle::may_bite:
            return "a dog that may bite isn't combed out there";
        case obstacle::teats:
            return "pregnant or nursing";
    }
    return {};
}

std::string rules_in_words(const infeasible_zone& c) {
    strings texts;
    for (const broken_rule& rule : c.rules) {
        texts.push_back(rule_words(rule));
    }
    return joined(texts, "; ");
}

std::string freed_in_words(const remedy_set& f, length_unit u) {
    strings parts;
    bool tool = false;
    for (const remedy_step& w : f.by) {
        parts.push_back(step_words(w, u));
        tool = tool || w.how == remedy_kind::blade || w.how == remedy_kind::comb ||
               w.how == remedy_kind::measure_tool;
    }
    // what a missing tool is for goes without saying
    const bool say = f.then && f.then->kind == tool_kind::clip && !tool;
    return joined(parts, " and ") + (say ? " (then " + held_words(*f.then, u) + ")" : "");
}

/// What would free a place, one thing or set of things after the other.
std::string freed_by(const infeasible_zone& c, length_unit u) {
    strings out;
    strings tools;  // each would do alone: one thing to look for
    for (const remedy_set& f : c.frees) {
        const bool tool_alone = f.by.size() == 1 && (f.by.front().how == remedy_kind::blade ||
                                                     f.by.front().how == remedy_kind::comb);
        (tool_alone ? tools : out).push_back(freed_in_words(f, u));
    }
    if (!tools.empty()) {
        out.push_back(one_of(tools));
    }
    return joined(out, "; or ");
}

}  // namespace pelage::io
