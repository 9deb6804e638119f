// What a plan took as given, and what it asks the owner about uneven pairs, in words.
#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/plan.hpp"
#include "answers/words/strip.hpp"

namespace pelage::io {

namespace {

std::string coats_words(const style& s) {
    std::string coats;
    for (const coat_class c : s.coats) {
        coats += (coats.empty() ? "" : ", ") + std::string(name(c));
    }
    return "this sheet is made for another coat (" + coats + "): think twice before you follow it";
}

std::string strip_words(const matting_rules& m) {
    return "a stripped jacket is stripped again after " + strip_weeks(m) +
           " and rolled in between (common practice, no source); how stripped hair "
           "comes back isn't modelled: the date is for the rest of the coat";
}

std::string uneven_words(const uneven_pair& p, const body& b, length_unit u) {
    const auto said = [&](const std::optional<length>& l) { return l ? show(*l, u) : "as it is"; };
    return title(b, {p.zone, side::both}) + " uneven: left " + said(p.left) + ", right " +
           said(p.right);
}

std::string tracks_words(const plan_note& n, const body& b) {
    std::string pairs;
    for (const auto& [with, against] : n.pairs) {
        pairs += (pairs.empty() ? "" : "; ") + title(b, with) + " with the lay, " +
                 title(b, against) + " against it";
    }
    return "tracks can show: no one direction may be used on these neighbours: " + pairs +
           "; scissor over where they meet";
}

std::string daily_words(const plan_note& n, const plan_request& r, length_unit u) {
    std::string names;
    for (const place& p : n.places) {
        names += (names.empty() ? "" : ", ") + title(r.reference.dog_body, p);
    }
    return "over " + show(r.rules.matting.daily_only_above.best, u) +
           " only daily brushing to the skin holds a coat: " + names;
}

/// Places whose hair is reckoned alike.
struct reckoned_alike {
    const recorded_hair* hair;
    std::vector<place> where;
};

std::string by_record_words(const dog& d, const body& b, length_unit u) {
    const std::vector<recorded_hair>& all = d.by_record;
    std::vector<reckoned_alike> groups;
    const auto told = [&](const recorded_hair& h) {
        return "about " + show(finished{h.low, h.is, h.high}, u) + " since " + in_words(h.since);
    };
    for (const recorded_hair& h : all) {
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const reckoned_alike& g) {
            return told(*g.hair) == told(h);
        });
        if (same == groups.end()) {
            groups.push_back({&h, {h.at}});
        } else {
            same->where.push_back(h.at);
        }
    }
    std::stable_sort(groups.begin(), groups.end(), [](const auto& one, const auto& other) {
        return one.where.size() > other.where.size();
    });
    std::string text = "today's hair is reckoned from the record, check with a comb: ";
    constexpr std::size_t most = 3;
    for (std::size_t i = 0; i < std::min(most, groups.size()); ++i) {
        const bool most_places = i == 0 && groups.front().where.size() * 2 > all.size();
        text += (i == 0 ? "" : "; ") + told(*groups[i].hair) +
                (groups.size() == 1 ? ""
                 : most_places      ? " in most places"
                                    : ": " + joined(titles(b, groups[i].where), ", "));
    }
    return text + (groups.size() > most ? "; other lengths elsewhere (--zones)" : "") +
           (d.now_gave_way ? "; what the dog's file tells has no day (now_on) and isn't taken"
                           : "");
}

/// Findings that went, or may have, on the same days: "a mat at the left ear, of 3 November 2026".
struct gone_alike {
    const mat_since* first;
    std::vector<place> where;
};

std::vector<gone_alike> by_day(const std::vector<mat_since>& all) {
    std::vector<gone_alike> out;
    for (const mat_since& m : all) {
        const auto same = std::find_if(out.begin(), out.end(), [&](const gone_alike& g) {
            return g.first->on == m.on && g.first->what.seen == m.what.seen &&
                   g.first->what.grade == m.what.grade;
        });
        if (same == out.end()) {
            out.push_back({&m, {m.what.at}});
        } else {
            same->where.push_back(m.what.at);
        }
    }
    return out;
}

std::string dealt_words(const std::vector<mat_since>& all, const body& b) {
    std::vector<std::string> parts;
    for (const gone_alike& g : by_day(all)) {
        parts.push_back(std::string(in_words(g.first->what.grade)) + " of " +
                        in_words(*g.first->what.seen) + " (" + joined(titles(b, g.where), ", ") +
                        "): dealt with on " + in_words(g.first->on) + " by the record");
    }
    return joined(parts, "; ");
}

std::string undated_words(const std::vector<mat_since>& all, const body& b) {
    std::vector<std::string> parts;
    for (const gone_alike& g : by_day(all)) {
        parts.push_back(std::string(in_words(g.first->what.grade)) + " (" +
                        joined(titles(b, g.where), ", ") + ") may be gone since " +
                        in_words(g.first->on) + " by the record");
    }
    return joined(parts, "; ") +
           ": planned for, since the dog's file has no day for it; write that there (seen), or "
           "take it out";
}

}  // namespace

std::string note_words(const plan_note& n, const plan_request& r, length_unit u) {
    using kind = plan_note::kind;
    switch (n.what) {
        case kind::other_coat:
            return coats_words(r.sheet);
        case kind::hair_unknown:
            return "today's hair isn't recorded everywhere: taken as long enough";
        case kind::hair_by_record:
            return by_record_words(r.patient, r.reference.dog_body, u);
        case kind::mats_dealt:
            return dealt_words(r.patient.dealt, r.reference.dog_body);
        case kind::mats_undated:
            return undated_words(r.patient.undated, r.reference.dog_body);
        case kind::own_length:
            return "the sheet's own length of " + show(*r.sheet.adjustable, u) +
                   "; another with --length";
        case kind::health:
            return "told of its health: " + r.patient.health;
        case kind::less_combing:
            return "old, ill, thin-skinned, young, pregnant or nursing: combing out mats ends "
                   "after " +
                   detail::whole_minutes(comb_out_budget(r.patient, r.rules.refusal)) +
                   " min, not " + detail::whole_minutes(r.rules.refusal.comb_out_limit.best);
        case kind::brushing_by_sheet:
            return "nothing is said of brushing at home: taken as the sheet assumes, " +
                   title(r.patient.brushed) + "; ask the owner (--brush)";
        case kind::brushing_none:
            return "nothing is said of brushing at home, by the sheet neither: taken as none; ask "
                   "the owner (--brush)";
        case kind::strip_again:
            return strip_words(r.rules.matting);
        case kind::daily_only:
            return daily_words(n, r, u);
        case kind::uneven:
            return uneven_words(n.pair, r.reference.dog_body, u);
        case kind::tracks:
            return tracks_words(n, r.reference.dog_body);
        case kind::combing_order:
            break;
    }
    return "mats are combed out while there is time for it, first where most coat would be lost; "
           "the dog's file can say comb_out = true of one";
}

std::string ask_words(const uneven_pair& p, const body& b, const coat& c, length_unit u) {
    if (p.hurt) {
        // what is left alone is the longer one, or of a length that nobody knows
        const bool left_longer = !p.left || (p.right && *p.left > *p.right);
        const side sound = left_longer ? side::right : side::left;
        const std::optional<length>& cut = left_longer ? p.right : p.left;
        const std::optional<length>& stays = left_longer ? p.left : p.right;
        return title(b, {p.zone, sound}) + (cut ? " at " + show(*cut, u) : " as planned") +
               " while the " + (left_longer ? "left" : "right") + " one stays as it is" +
               (stays ? " (" + show(*stays, u) + ")" : "") + ", or leave both?";
    }
    // what is asked goes no shorter than is advised, a mat may have to
    const length& cut = shorter(*p.left, *p.right);
    const std::string other = std::string(*p.left > *p.right ? "; the left" : "; the right") +
                              " one shorter, too, but no less than ";
    return uneven_words(p, b, u) + (cut < c.shortest.best ? other : "; alike at ") +
           show(longer(cut, c.shortest.best), u) + "?";
}

}  // namespace pelage::io
