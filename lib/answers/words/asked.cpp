#include "answers/words/asked.hpp"

#include <algorithm>

#include <pelage/answers/kit.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/lookup.hpp"
#include "answers/words/places.hpp"
#include "answers/words/refusal.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

std::vector<std::string> in_quotes(std::vector<std::string> words) {
    for (std::string& w : words) {
        w = '"' + w + '"';
    }
    return words;
}

/// Each as it is typed.
std::vector<std::string> as_commands(std::vector<std::string> words) {
    for (std::string& w : words) {
        w = "pelage lookup " + (w.find(' ') == std::string::npos ? w : "'" + w + "'");
    }
    return words;
}

bool out_today(const setup& s, const lookup_request& r) {
    const kit_blade* b = find_blade(r.tools, s.tool.id);
    return b != nullptr && !at_hand(*b, r.today);
}

std::string combs_words(const std::vector<setup>& all, length_unit u) {
    std::vector<const setup*> combs;
    for (const setup& s : all) {
        if (s.over) {
            combs.push_back(&s);
        }
    }
    if (combs.empty()) {
        return {};
    }
    const auto shorter = [](const setup* a, const setup* b) {
        return a->over->stated.best < b->over->stated.best;
    };
    const auto [low, high] = std::minmax_element(combs.begin(), combs.end(), shorter);
    const std::string first = comb_words((*low)->over->id, u);
    const std::string last = comb_words((*high)->over->id, u);
    return first == last ? "the " + first + " comb" : "combs from " + first + " to " + last;
}

/// The customary blades of a prep zone, first choice first.
std::string customary_words(const zone& z, const lookup_request& r) {
    std::vector<std::string> blades;
    bool any = false;
    for (const std::string& id : z.prep_blades) {
        const kit_blade* b = find_blade(r.tools, id);
        const bool here = b != nullptr && at_hand(*b, r.today);
        any = any || here;
        blades.push_back(id + (here           ? ""
                               : b != nullptr ? " (" + out_words(r) + ")"
                                              : " (not in the kit)"));
    }
    std::string text = (blades.size() > 1 ? "blades " : "blade ") + joined(blades, ", ");
    text += blades.size() > 1 ? "; the first is the usual one" : ", nothing else";
    return any ? text : text + ": keep a second " + z.prep_blades.front();
}

std::string never_line(const never_there& n, const zone& z, const lookup_request& r,
                       length_unit u) {
    if (n.why.why == no_go::cause::not_customary) {
        return z.prep_blades.empty() ? "" : "any other blade, or a comb";
    }
    return tools_words(n.tools, r, u) + ": " + no_go_words(n.why, r.reference.dog_body);
}

}  // namespace

std::string tools_words(const std::vector<setup>& all, const lookup_request& r, length_unit u) {
    std::vector<std::string> blades;
    for (const setup& s : all) {
        if (!s.over) {
            const std::string mark = s.tool.setting.empty() ? "" : " at " + s.tool.setting;
            blades.push_back(s.tool.id + mark + (out_today(s, r) ? " (" + out_words(r) + ")" : ""));
        }
    }
    const std::string combs = combs_words(all, u);
    const std::string text =
        blades.empty() ? "" : (blades.size() > 1 ? "blades " : "blade ") + listed(blades);
    return text + (text.empty() || combs.empty() ? "" : "; ") + combs;
}

std::string usual_words(const zone_card& c, const lookup_request& r) {
    const zone& z = r.reference.dog_body.zones[c.zone];
    if (!z.prep_blades.empty()) {
        return customary_words(z, r);
    }
    return c.words == nullptr ? std::string{} : c.words->usual;
}

std::string with_words(const zone_card& c, const lookup_request& r, length_unit u) {
    const zone& z = r.reference.dog_body.zones[c.zone];
    if (z.has(zone_use::scissors_only) || !z.prep_blades.empty()) {
        return {};
    }
    std::string text = tools_words(c.with, r, u);
    if (!c.clean.empty()) {
        text += "; where the style asks for it clean, " + tools_words(c.clean, r, u) + " too";
    }
    if (!c.in_show.empty()) {
        text += "; in show finish with the owner's consent, " + tools_words(c.in_show, r, u);
    }
    return text;
}

std::string against_words(const zone_card& c, const lookup_request& r, length_unit u) {
    const zone& z = r.reference.dog_body.zones[c.zone];
    if (z.has(zone_use::scissors_only)) {
        return {};
    }
    if (z.has(zone_use::pads)) {
        return "hair has no lay here: it is scooped out";
    }
    if (z.where == group::prep) {
        return "never here";
    }
    std::vector<std::string> parts;
    if (!c.against.empty()) {
        parts.push_back(tools_words(c.against, r, u) + ", but beginners keep with the lay");
    }
    if (!c.against_clean.empty()) {
        parts.push_back(tools_words(c.against_clean, r, u) + " where the style asks for it clean");
    }
    if (!c.against_pattern.empty()) {
        parts.push_back(tools_words(c.against_pattern, r, u) + " on pattern breeds");
    }
    return parts.empty() ? "never here" : joined(parts, "; ");
}

std::vector<std::string> never_words(const zone_card& c, const lookup_request& r, length_unit u) {
    const zone& z = r.reference.dog_body.zones[c.zone];
    std::vector<std::string> out;
    for (const never_there& n : c.never) {
        std::string text = z.has(zone_use::scissors_only)
                               ? "a blade or a snap-on comb, unless the sheet asks for it; a mat "
                                 "comes off by a blade" +
                                     std::string(ten_at_most(z) ? ", a 10 or a shorter one" : "")
                               : never_line(n, z, r, u);
        if (!text.empty() && std::find(out.begin(), out.end(), text) == out.end()) {
            out.push_back(std::move(text));
        }
    }
    // what holds of everything else stands after what has a reason of its own
    std::stable_partition(out.begin(), out.end(),
                          [](const std::string& t) { return t.find(':') != std::string::npos; });
    if (z.has(zone_use::never_demat)) {
        out.emplace_back("de-matting: a mat here is clipped off");
    }
    return out;
}

std::string coat_open_words(const terms_asked& t) {
    return t.breed + ": " + t.open->wrong + (t.open->right.empty() ? "" : "; " + t.open->right);
}

std::string not_there_words(const not_there& n, const body& b) {
    const std::string where = on_the(titles(b, n.where));
    switch (n.what) {
        case not_there::of::skip_teeth:
            return "not " + where + ": " + std::string(refusal_words(refusal::skip_teeth_here));
        case not_there::of::de_mat:
            return "no de-matting " + where + ": a mat there is clipped off";
        case not_there::of::against:
            break;
    }
    return "never against the lay " + where;
}

std::string skin_kind(const zone& z) {
    switch (z.cover) {
        case skin::firm:
            return "firm";
        case skin::thin:
            return "thin";
        case skin::fold:
            break;
    }
    return "in folds";
}

std::string how_sure(const evidence& e) {
    return std::string(in_words(e.how)) +
           (e.from.empty() ? "" : " (" + e.from + (e.relayed ? ", second-hand" : "") + ")");
}

void say_no(document& d, const std::string& why) {
    d.add({line_as::caution, "No: " + why, {}, 0, 4});
}

std::string behind_colon(std::string text) {
    const bool one_letter = text.size() > 1 && text[1] == ' ' && text[0] != 'A';
    if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z' && !one_letter) {
        text[0] = static_cast<char>(text[0] + 32);
    }
    return text;
}

std::string text_of(const asked_back& a) {
    const std::string write = one_of(in_quotes(a.readings));
    const std::string found = a.word.empty() ? "" : "; found \"" + a.word + "\"";
    switch (a.why) {
        case asked_back::cause::places:
            return "a word for more than one place" + found + "; write " + write;
        case asked_back::cause::terms:
            return "a word for more than one thing" + found + "; write " + write;
        case asked_back::cause::breed_too:
            return "a place of the dog, and a breed is called so too" + found + "; write " + write;
        case asked_back::cause::cross:
            return "a cross, or each by itself? write " + write;
        case asked_back::cause::ladder:
            return "of which coat? write lookup --all --coat curly: everything the kit leaves, "
                   "shortest first";
        case asked_back::cause::beside:
            return "told apart from what? found nothing behind \"" + a.word +
                   " vs\"; write the other one behind it";
        case asked_back::cause::things:
            break;
        default:
            return elsewhere_words(a);
    }
    return "more than one question; found " + listed(in_quotes(a.readings)) +
           "; ask them one by one: " + one_of(as_commands(a.readings));
}

std::string text_of(const strangers& s) {
    std::vector<std::string> words;
    std::vector<std::string> near;
    for (const strangers::one& w : s.words) {
        words.push_back(w.word);
        near.insert(near.end(), w.near.begin(), w.near.end());
    }
    std::string text =
        "not a blade, a comb or a length, nor a place, a breed or a word of the trade; found " +
        listed(in_quotes(words));
    if (!s.understood.empty()) {
        text += " beside " + listed(in_quotes(s.understood));
    }
    const std::string first =
        s.clips_double ? ". But first: " + std::string(refusal_words(refusal::jacket_consent)) : "";
    if (!near.empty()) {
        return text + "; did you mean " + one_of(in_quotes(near)) + "?" + first;
    }
    return text +
           "; write \"7F\", \"9mm\", \"13 mm comb over 10\", \"belly\", \"lay\", \"7F vs "
           "10\" or \"poodle x beagle\"" +
           first;
}

}  // namespace pelage::io
