#include "answers/words/lookup.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/words/places.hpp"
#include "answers/words/refusal.hpp"

namespace pelage::io {

namespace {

bool on_pads_alone(const no_go& no, const body& b) {
    return !no.where.empty() && std::all_of(no.where.begin(), no.where.end(), [&](const place& p) {
        return b.zones[p.zone].has(zone_use::pads);
    });
}

/// Where no skin is easily hurt: what is customary is all that forbids a short blade against the lay.
bool on_firm_skin(const no_go& no, const body& b) {
    return std::all_of(no.where.begin(), no.where.end(),
                       [&](const place& p) { return b.zones[p.zone].cover == skin::firm; });
}

std::string no_go_cause(const no_go& no, const body& b, direction way) {
    switch (no.why) {
        case no_go::cause::rule:
            if (no.rule == refusal::long_on_web && way == direction::against_lay) {
                return "against the lay the gaps of any blade longer than a 10 catch what is thin "
                       "or folds here";
            }
            if (no.rule == refusal::against_lay_here && on_firm_skin(no, b)) {
                return "against the lay so short a blade irritates easily: by custom with the lay "
                       "(common practice, no source)";
            }
            return std::string(refusal_words(no.rule));
        case no_go::cause::not_customary:
            return "customary there: blade " + one_of(no.customary);
        case no_go::cause::only_with_lay:
            break;
    }
    return on_pads_alone(no, b) ? "hair has no lay there, it is scooped out"
                                : "customary there: with the lay";
}

/// Where skin is firm and flat enough for skip teeth.
std::vector<std::string> for_skip_teeth(const body& b) {
    std::vector<std::string> out;
    for (const zone& z : b.zones) {
        if (z.has(zone_use::skip_teeth)) {
            out.push_back(z.title);
        }
    }
    return out;
}

std::string caution_words(lookup_caution c, const lookup_answer& a, const lookup_request& r) {
    switch (c) {
        case lookup_caution::nearest_comb:
            return "a comb needs a clean, dry coat that a fine comb passes to the skin; if it "
                   "drops off, the blade beneath cuts to the skin";
        case lookup_caution::nearest_skip:
            return "skip teeth only where skin is firm and flat";
        case lookup_caution::comb_in_tangles:
            return "needs a clean, dry coat that a fine comb passes to the skin; it jams in "
                   "tangles and cannot go through a mat";
        case lookup_caution::comb_drops_off:
            return "seat it: if it drops off, the " + a.asked.tool.tool.id + " cuts to the skin";
        case lookup_caution::fold_of_skin:
            return "skip teeth let a fold of skin roll in and cut it: only on the " +
                   listed(for_skip_teeth(r.reference.dog_body)) +
                   ", and not on old, thin-skinned or dehydrated dogs";
        case lookup_caution::teeth_unknown:
            return "whether it has full or skip teeth isn't known from the number: look at it; "
                   "until then treat it as skip teeth";
        case lookup_caution::fraction_is_width:
            return "the fraction on it is its width, not a length";
        case lookup_caution::short_irritates:
            return "so short against the lay it irritates skin easily; test the blade's heat on "
                   "your wrist every few minutes";
        case lookup_caution::top_of_feet:
            return "over the top of the foot only, never between the toes: its gaps take the web; "
                   "clean feet are done by a 10 or a 15, where the style asks for them";
        case lookup_caution::refused:
            return no_go_words(*a.on_firm_skin, r.reference.dog_body,
                               r.way.value_or(direction::with_lay));
        case lookup_caution::carded_coats:
            break;
    }
    return "double coats are carded, smooth ones rubbed out; neither is clipped as a rule";
}

std::string_view exception_words(use_there::exception e) {
    switch (e) {
        case use_there::exception::clean:
            return "only where the style asks for it clean: ";
        case use_there::exception::in_show:
            return "only in show finish with the owner's consent: ";
        case use_there::exception::pattern:
            return "only on pattern breeds: ";
        case use_there::exception::none:
            break;
    }
    return "not: ";
}

/// "belly: blade 10": what goes in the prep zones, those of the same blades together.
std::vector<std::string> own_blades(const body& b) {
    std::vector<std::pair<std::vector<std::string>, std::vector<std::string>>> told;
    for (const zone& z : b.zones) {
        if (z.where != group::prep) {
            continue;
        }
        const auto same = std::find_if(told.begin(), told.end(),
                                       [&](const auto& t) { return t.first == z.prep_blades; });
        (same == told.end() ? told.insert(told.end(), {z.prep_blades, {}}) : same)
            ->second.push_back(z.title);
    }
    std::vector<std::string> out;
    for (const auto& [blades, zones] : told) {
        out.push_back(listed(zones) + ": " + (blades.size() > 1 ? "blades " : "blade ") +
                      listed(blades));
    }
    return out;
}

std::vector<std::string> zone_titles(const std::vector<std::size_t>& zones, const body& b) {
    std::vector<std::string> out;
    for (const std::size_t z : zones) {
        out.push_back(b.zones[z].title);
    }
    return out;
}

}  // namespace

std::string no_go_words(const no_go& no, const body& b, direction way) {
    return (no.everywhere ? "" : listed(titles(b, no.where)) + ": ") + no_go_cause(no, b, way);
}

std::string there_words(const use_there& there, const lookup_request& r) {
    const body& b = r.reference.dog_body;
    const direction turned = r.way.value_or(direction::with_lay);
    std::vector<place> clipped = r.where;
    std::erase_if(clipped, [&](const place& p) {
        return std::find(there.scissored.begin(), there.scissored.end(), p) !=
               there.scissored.end();
    });
    const auto on = [&](const std::vector<place>& where) {
        return on_the(titles(b, where)) + ": ";
    };
    const std::string rest =
        there.scissored.empty() ? "" : "; with scissors " + on_the(titles(b, there.scissored));
    switch (there.use) {
        case use_there::may::so:
            return on(clipped) + "it may be used so" + rest;
        case use_there::may::both_ways:
            return on(clipped) + "it may be used, with the lay and against it" + rest;
        case use_there::may::with_lay_only:
            if (there.no->why == no_go::cause::only_with_lay && on_pads_alone(*there.no, b)) {
                return on(clipped) + "it may be used; " + no_go_cause(*there.no, b, turned) + rest;
            }
            return on(clipped) + "it may be used with the lay; against it " +
                   std::string(exception_words(there.but)) +
                   no_go_cause(*there.no, b, direction::against_lay) + rest;
        case use_there::may::by_style:
            return on(there.no->where) + (there.against ? "" : "with the lay, and ") +
                   std::string(exception_words(there.but)) + no_go_cause(*there.no, b, turned) +
                   rest;
        case use_there::may::not_at_all:
            break;
    }
    return "not " + on(there.no->where) + no_go_cause(*there.no, b, turned) + rest;
}

std::string prep_words(const body& b) {
    return joined(own_blades(b), "; ");
}

std::string whole_coat_words(const setup& s, const body& b) {
    std::vector<std::string> but;
    for (const zone& z : b.zones) {
        const auto& own = z.prep_blades;
        const bool goes = !s.over && s.way == direction::with_lay &&
                          std::find(own.begin(), own.end(), s.tool.id) != own.end();
        if (z.where == group::prep && !goes) {
            but.push_back(z.title);
        }
    }
    return but.empty() ? "whole coat" : "whole coat but " + listed(but);
}

std::string never_words(const lookup_answer& a, const lookup_request& r, length_unit u) {
    switch (a.never->why) {
        case answered_no::cause::rule:
            return std::string(refusal_words(a.never->rule));
        case answered_no::cause::there:
            return there_words(*a.there, r);
        case answered_no::cause::outgrown:
            break;
    }
    const coat& c = coat_of(r.reference, *r.coat);
    return "no blade or comb leaves " + show(a.asked.wanted, u) + " of a " + c.title +
           ": its hair stops at about " + show(a.never->stops, u) + " (" +
           std::string(in_words(c.terminal.why.how)) + ")";
}

std::string coat_words(const lookup_request& r) {
    if (!r.coat) {
        return {};
    }
    const coat& c = coat_of(r.reference, *r.coat);
    const std::string taken =
        r.breed.empty() ? "" : r.breed + ": taken as a " + c.title + "; the dog on the table wins.";
    return taken + (taken.empty() || c.said_first.empty() ? "" : " ") + c.said_first;
}

std::string out_words(const lookup_request& r) {
    return r.invented ? "out today in the demo kit" : "out today";
}

std::vector<std::string> hint_words(const question& q, length_unit u) {
    std::vector<std::string> out;
    for (const question_hint h : q.hints) {
        if (h == question_hint::comb_as_typed) {
            out.emplace_back(
                "no such comb among the usual lengths or in the kit: taken as you typed it");
        } else if (u == length_unit::mm) {
            const std::string& id = q.tool.tool.id;
            out.push_back("for " + id + " millimetres type " + id + "mm");
        }
    }
    return out;
}

std::vector<std::string> caution_words(const lookup_answer& a, const lookup_request& r) {
    std::vector<std::string> out;
    for (const lookup_caution c : a.cautions) {
        out.push_back(caution_words(c, a, r));
    }
    return out;
}

std::string figure_words(const known_figure& f, const lookup_request& r) {
    switch (f.what) {
        case lookup_figure::stated_length:
            return "stated length";
        case lookup_figure::lay_of_blades:
            return "what the lay adds, blades";
        case lookup_figure::lay_of_combs:
            return "what the lay adds, combs";
        case lookup_figure::lay_angle:
            break;
    }
    return "angle of the lay, " + coat_of(r.reference, *r.coat).title;
}

evidence known_how(const known_figure& f, const lookup_answer& a) {
    evidence out = f.why;
    const auto& hints = a.asked.hints;
    const bool typed =
        std::find(hints.begin(), hints.end(), question_hint::comb_as_typed) != hints.end();
    if (typed && f.what == lookup_figure::stated_length) {
        out.note = "the length you typed";
    }
    return out;
}

std::string places_words(const where_it_may& w, const body& b) {
    const auto all = [&](const std::vector<std::size_t>& zones) {
        return joined(zone_titles(zones, b), ", ");
    };
    if (w.firm_skin_only) {
        return "firm, flat skin: " + all(w.always) + "; not on old or thin-skinned dogs";
    }
    if (w.nowhere) {
        return "nowhere: " + no_go_words(*w.nowhere, b);
    }
    std::vector<std::string> out;
    const auto add = [&](const char* asked, const std::vector<std::size_t>& zones) {
        if (!zones.empty()) {
            out.push_back(asked + all(zones));
        }
    };
    add("", w.always);
    add("where the sheet asks for clean face or feet: ", w.clean);
    add("in show finish with the owner's consent: ", w.in_show);
    add("of pattern breeds: ", w.pattern);
    return joined(out, "; ");
}

}  // namespace pelage::io
