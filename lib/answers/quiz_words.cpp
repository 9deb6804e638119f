// Questions, answers and reasons of the quiz in words.
#include <algorithm>

#include <pelage/answers/quiz.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/sheets/check.hpp>
#include <pelage/sheets/compare.hpp>

#include "answers/words/lookup.hpp"
#include "answers/words/sheet.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

std::string capital(std::string s) {
    if (!s.empty() && s.front() >= 'a' && s.front() <= 'z') {
        s.front() = static_cast<char>(s.front() - 'a' + 'A');
    }
    return s;
}

std::string coat_title(const quiz_question& q, const quiz_request& r) {
    return coat_of(r.reference, q.coat).title;
}

std::string zone_title(const quiz_question& q, const quiz_request& r) {
    return r.reference.dog_body.zones[*q.zone].title;
}

/// "Round teddy (teddy-round), body".
std::string of_sheet(const quiz_question& q, const quiz_request& r) {
    const style& s = r.sheets[q.sheet];
    const season* now = r.today ? season_on(s, *r.today) : nullptr;
    return s.title + " (" + s.id + "), " + (now == nullptr ? "" : now->name + ", ") +
           (q.part ? "the whole " + std::string(name(*q.part)) : zone_title(q, r));
}

/// Hair between pads has no lay.
std::string laid(const quiz_question& q, const quiz_request& r) {
    return r.reference.dog_body.zones[*q.zone].has(zone_use::pads) ? "?" : ", with the lay?";
}

std::string use_words(use_there::may use) {
    return use == use_there::may::both_ways       ? "with the lay, and against it, too"
           : use == use_there::may::with_lay_only ? "with the lay only"
                                                  : "not at all";
}

/// Why it may go there with the lay, on a sound dog.
std::string may_because(const setup& s, const quiz_question& q, const quiz_request& r) {
    const zone& z = r.reference.dog_body.zones[*q.zone];
    if (z.has(zone_use::pads)) {
        return "short full teeth scoop the hair out between the pads; it is usual there";
    }
    if (!z.prep_blades.empty()) {
        return "full teeth stand close, so thin skin and folds don't get in between; it is usual "
               "there";
    }
    if (skips(s.tool)) {
        return "skin is firm and flat there";
    }
    if (detail::how_short(s.tool) < detail::shortness::ten) {
        return "so short a blade has its place there";
    }
    return std::string("full teeth, not so short that it bares the skin") +
           (z.has(zone_use::web) ? ", nor so long that its gaps catch a fold" : "");
}

const setup& held_by(const quiz_option& o) {
    return std::get<setup>(o.says);
}

std::string leaves_words(const quiz_option& o, length_unit u) {
    return held_words(held_by(o), u) + " leaves " + show(*o.leaves, u);
}

/// Of bare blades "blade 7" and "blades 7 and 5"; of others each as it is held.
std::string several_words(const std::vector<const setup*>& all, length_unit u) {
    std::vector<std::string> words;
    for (const setup* s : all) {
        const std::string one = held_words(*s, u);
        const bool blade = one.starts_with("blade ") && all.size() > 1;
        words.push_back(blade ? one.substr(6) : one);
    }
    const bool blades = all.size() > 1 && std::all_of(all.begin(), all.end(), [&](const setup* s) {
                            return held_words(*s, u).starts_with("blade ");
                        });
    return (blades ? "blades " : "") + listed(words);
}

/// What may go, and of all else that was offered why not, what `first` is before the others.
std::string may_and_none_of(const std::string& may, const quiz_option& first,
                            const std::vector<quiz_option>& wrong, const quiz_request& r,
                            length_unit u) {
    std::vector<std::pair<no_go, std::vector<const setup*>>> told{{*first.no, {&held_by(first)}}};
    for (const quiz_option& o : wrong) {
        if (held_words(held_by(o), u) == held_words(held_by(first), u)) {
            continue;
        }
        const auto same = std::find_if(told.begin(), told.end(),
                                       [&](const auto& n) { return n.first.same_cause(*o.no); });
        if (same == told.end()) {
            told.push_back({*o.no, {&held_by(o)}});
        } else {
            same->second.push_back(&held_by(o));
        }
    }
    std::string out = may;
    for (const auto& [why, which] : told) {
        out += "; " + several_words(which, u) + " not: " + no_go_words(why, r.reference.dog_body);
    }
    return out;
}

/// What was taken may go, or all else that was offered may; and what is right never does.
std::string may_and_never(const quiz_question& q, const std::vector<quiz_option>& wrong,
                          const quiz_option* chosen, const quiz_request& r, length_unit u) {
    const std::string never = "; " + held_words(held_by(q.right), u) +
                              " not: " + no_go_words(*q.right.no, r.reference.dog_body);
    if (chosen != nullptr) {
        return held_words(held_by(*chosen), u) + " may: " + may_because(held_by(*chosen), q, r) +
               never;
    }
    std::vector<const setup*> may;
    for (const quiz_option& o : wrong) {
        may.push_back(&held_by(o));
    }
    return several_words(may, u) + " may" + never;
}

/// What was offered beside the right answer, in the order it stood.
std::vector<quiz_option> wrong_of(const posed_question& p) {
    std::vector<quiz_option> out{p.options};
    out.erase(out.begin() + static_cast<std::ptrdiff_t>(p.right));
    return out;
}

/// What has to be minded where a comb, or skip teeth, do the work of full teeth.
std::string minded(const setup& in_place, const setup& of) {
    return in_place.over ? ". A comb needs a clean, dry coat that a fine comb passes to the skin"
           : skips(in_place.tool) && !skips(of.tool)
               ? ". Skip teeth only where skin is firm and flat, and they leave it rougher"
               : "";
}

bool read_apart_in(const length& a, const length& b, length_unit u) {
    return show(a, u) != show(b, u);
}

/// Why a blade or a comb leaves with the lay what it does.
std::string left_because(const quiz_question& q, const quiz_request& r, length_unit u) {
    const double lay = lay_of(r.reference, r.rules, q.coat).best;
    const std::string coat = coat_title(q, r);
    const length there = stated_length(q.tool, r.rules.cut).best;
    const bool moved = q.tool.over && read_apart_in(q.tool.over->stated.best, there, u);
    const std::string stated =
        moved ? held_words(q.tool, u) + " is stated as " + show(q.tool.over->stated.best, u) +
                    " over another blade; on this one it stands at " + show(there, u)
              : held_words(q.tool, u) + " has a stated length of " + show(there, u);
    if (lay_factor(lay) == 1.0) {
        return stated + ", and the hair of a " + coat + " stands off the skin: as much is left";
    }
    return stated + "; the hair of a " + coat + " lies at about " + detail::fixed(lay, 0) +
           " degrees to the skin, " +
           (q.tool.over ? "but a comb's teeth lift most of it: little more is left, "
            : q.tool.tool.stated.best > r.rules.cut.blade_flat_from.best
                ? "and with the lay it is cut lying flat, so it is longer once it stands, less so "
                  "by a long blade than by a short one: "
                : "and with the lay it is cut lying flat, so it is longer once it stands: ") +
           show(*q.right.leaves, u);
}

/// What of the kit leaves, moved so, the length that was taken for right: "; about 2.3 mm is left by blade 9".
std::string taken_is_of(const quiz_question& q, const quiz_option* chosen, const quiz_request& r,
                        length_unit u) {
    if (chosen == nullptr) {
        return {};
    }
    const std::string taken = show(std::get<length>(chosen->says), u);
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        if (s.kind == tool_kind::clip && s.way == q.tool.way && s.tool.etched != "50" &&
            show(cut_length(s, lay_of(r.reference, r.rules, q.coat).best, r.rules.cut).best, u) ==
                taken) {
            return "; about " + taken + " is what " + held_words(s, u) + " leaves";
        }
    }
    return {};
}

/// What stands in for what is out, and how far something else is off.
std::string in_place_because(const quiz_question& q, const quiz_option& other,
                             const quiz_request& r, length_unit u) {
    return held_words(q.tool, u) + " leaves " + show(*q.with, u) + ", and " +
           leaves_words(q.right, u) + "; " + leaves_words(other, u) + ", further off than the " +
           show(tolerance(q.with->best, false, r.rules.prices), u) +
           " within which a plan takes one length for another (" +
           std::string(in_words(r.rules.prices.tolerance_share.why.how)) + ")" +
           minded(held_by(q.right), q.tool) +
           (q.right.leaves->best < q.with->best &&
                    read_apart_in(q.right.leaves->best, q.with->best, u)
                ? ". It comes out shorter, which nobody undoes: ask, or test a patch"
                : "");
}

/// "; elsewhere legs 16 mm, tail 38 mm": what the sheet asks for of parts that it wants alike.
std::string beside_it(const quiz_question& q, const quiz_request& r, length_unit u) {
    const body& b = r.reference.dog_body;
    const auto places = places_of(on_day(r.sheets[q.sheet], r.today), b, part_index(b));
    std::vector<std::string> out;
    for (const group part : {group::body, group::legs, group::tail, group::head}) {
        std::vector<length> wanted;
        for (const sheet_place& p : places) {
            if (b.zones[p.at.zone].where == part) {
                wanted.push_back(p.asked.target.value_or(length{}));
            }
        }
        const bool alike = !wanted.empty() && wanted.front() > length{} &&
                           std::count(wanted.begin(), wanted.end(), wanted.front()) ==
                               static_cast<std::ptrdiff_t>(wanted.size());
        if (alike && (!q.wish.target || wanted.front() != *q.wish.target)) {
            out.push_back(std::string(name(part)) + " " + show(wanted.front(), u));
        }
    }
    return out.empty() ? "" : "; elsewhere " + joined(out, ", ");
}

std::string reason(const quiz_question& q, const posed_question& p, const quiz_option* chosen,
                   const quiz_request& r, length_unit u) {
    const std::vector<quiz_option> wrong = wrong_of(p);
    const quiz_option& other = chosen != nullptr ? *chosen : wrong.front();
    const std::string here = q.zone ? zone_title(q, r) + ": " : "";
    switch (q.asks) {
        case quiz_asks::left_by:
            return left_because(q, r, u) + taken_is_of(q, chosen, r, u);
        case quiz_asks::against:
            return "against the lay hair is raised first and cut at the height of the tool: " +
                   show(*q.right.leaves, u) + " in place of " + show(*q.with, u) +
                   taken_is_of(q, chosen, r, u);
        case quiz_asks::which_way:
            return there_words(*q.there, {r.reference,
                                          r.rules,
                                          r.tools,
                                          {},
                                          asked_kind::any,
                                          false,
                                          {},
                                          {{*q.zone, side::both}},
                                          {},
                                          r.today}) +
                   (q.there->use == use_there::may::both_ways
                        ? ": it leaves more than a 10 does, so it is kind to skin against the lay, "
                          "too, and "
                          "nothing here folds into its gaps; beginners keep with the lay all the "
                          "same"
                        : "");
        case quiz_asks::may_go:
            return here + may_and_none_of(held_words(held_by(q.right), u) +
                                              " may: " + may_because(held_by(q.right), q, r),
                                          other, wrong, r, u);
        case quiz_asks::never_goes:
            return here + may_and_never(q, wrong, chosen, r, u);
        case quiz_asks::under_mat:
            return may_and_none_of(held_words(held_by(q.right), u) + " may", other, wrong, r, u) +
                   "; on hurt skin or a mat felted to it nothing may";
        case quiz_asks::in_place_of:
            return in_place_because(q, other, r, u);
        case quiz_asks::under_comb:
            return may_and_none_of(held_words(held_by(q.right), u) + " may", other, wrong, r, u);
        case quiz_asks::nearest_comb:
            return leaves_words(q.right, u) + ", " + leaves_words(other, u) +
                   "; a comb is called by what it states, and of hair that lies flat it leaves "
                   "more";
        case quiz_asks::sheet_length:
        case quiz_asks::sheet_blade:
            break;
    }
    return of_sheet(q, r) + ": " + wish_words(q.wish, u) + beside_it(q, r, u) + "; " +
           (q.wish.why.empty()
                ? "so it is to look: " + std::string(detail::trimmed(r.sheets[q.sheet].text))
                : q.wish.why);
}

}  // namespace

std::string question_words(const quiz_question& q, const quiz_request& r, length_unit u) {
    const std::string tool = q.tool.kind == tool_kind::clip ? held_words(q.tool, u) : "";
    switch (q.asks) {
        case quiz_asks::left_by:
            return capital(coat_title(q, r)) + ": what does " + tool + " leave, with the lay?";
        case quiz_asks::against:
            return capital(coat_title(q, r)) + ": with the lay " + tool + " leaves about " +
                   show(q.with->best, u) + ". And against it?";
        case quiz_asks::which_way:
            return capital(zone_title(q, r)) + ": how may " + tool +
                   " go there, in a skilled hand?";
        case quiz_asks::may_go:
            return capital(zone_title(q, r)) + ": which of these may go there" + laid(q, r);
        case quiz_asks::never_goes:
            return capital(zone_title(q, r)) + ": which of these never goes there" + laid(q, r);
        case quiz_asks::under_mat:
            return "A mat, and nobody knows how much free hair is under it: what may be tried "
                   "under its edge?";
        case quiz_asks::in_place_of:
            return capital(coat_title(q, r)) + ": " + tool +
                   " is out. What of the kit does its work on the " + zone_title(q, r) +
                   ", with the lay?";
        case quiz_asks::under_comb:
            return "Over which blade does the comb " + comb_words(q.tool.over->id, u) + " sit?";
        case quiz_asks::nearest_comb:
            return capital(coat_title(q, r)) + ": which comes nearest to " + show(q.wanted, u) +
                   ", with the lay?";
        case quiz_asks::sheet_length:
            return of_sheet(q, r) + ": what does the sheet ask for there?";
        case quiz_asks::sheet_blade:
            break;
    }
    return of_sheet(q, r) + ": which blade does the sheet name?";
}

std::string option_words(const quiz_option& o, const quiz_question& q, length_unit u) {
    if (const auto* l = std::get_if<length>(&o.says)) {
        return (q.asks == quiz_asks::sheet_length ? "" : "about ") + show(*l, u);
    }
    if (const auto* s = std::get_if<setup>(&o.says)) {
        return held_words(*s, u);
    }
    const auto* use = std::get_if<use_there::may>(&o.says);
    return use != nullptr ? use_words(*use) : "blade " + std::get<std::string>(o.says);
}

std::string reason_words(const quiz_question& q, const posed_question& p, const quiz_option* chosen,
                         const quiz_request& r, length_unit u) {
    std::string out = capital(reason(q, p, chosen, r, u));
    if (out.back() != '.') {
        out += ".";
    }
    return out;
}

std::string basis_words(const quiz_question& q, const quiz_request& r) {
    lookup_request ask{r.reference, r.rules, r.tools, {}, asked_kind::any,
                       false,       q.coat,  {},      {}, r.today};
    std::vector<std::string> parts;
    for (const known_figure& f : q.sure) {
        parts.push_back(figure_words(f, ask) + ": " + std::string(in_words(f.why.how)) +
                        (f.why.from.empty() ? "" : " (" + f.why.from + ")"));
    }
    if (q.known) {
        const bool of_a_sheet =
            q.asks == quiz_asks::sheet_length || q.asks == quiz_asks::sheet_blade;
        parts.push_back((of_a_sheet ? "the sheet says so; that it is good so, " : "") +
                        std::string(in_words(q.known->how)) +
                        (q.known->from.empty() ? "" : " (" + q.known->from + ")"));
    }
    const bool sourced = std::any_of(q.sure.begin(), q.sure.end(),
                                     [](const known_figure& f) { return !f.why.from.empty(); }) ||
                         (q.known && !q.known->from.empty());
    return "How sure: " + joined(parts, "; ") + "." +
           (sourced ? " What a source is: pelage lookup --sources NAME." : "");
}

std::string quiz_caution() {
    return "Every question is of a sound, grown dog with a clean coat that is to be clipped, with "
           "nothing "
           "found on it but where the question says so (a mat). On the table the skin, the dog and "
           "the heat of the blade are looked "
           "at first; local rules, the owner's consent and a veterinarian's word come before any "
           "answer here. In brackets behind a length: it may come out so. How each figure is "
           "known: "
           "--explain.";
}

}  // namespace pelage::io
