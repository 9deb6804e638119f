// Places, words of the trade, coats and tools side by side, as documents.
#include <algorithm>

#include <pelage/answers/kit.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/asked.hpp"
#include "answers/words/lookup.hpp"
#include "answers/words/refusal.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

std::string titles_of(const std::vector<std::string>& ids, const glossary& g) {
    std::vector<std::string> out;
    for (const std::string& id : ids) {
        out.push_back(find(g.terms, id)->title);
    }
    return joined(out, ", ");
}

/// What stands behind a basis that has no page to show.
std::string_view behind(basis b) {
    switch (b) {
        case basis::practice:
            return "groomers say and do so, and nobody we know of has published it";
        case basis::memory:
            return "we know it so and have not looked it up";
        case basis::assumption:
            return "nobody we know of says so: put it right where you know better";
        case basis::published:
        case basis::contested:
        case basis::derived:
        case basis::measured:
            break;
    }
    return {};
}

/// How a word is known: where groomers disagree about what, and on request what stands behind it.
std::string known_words(const evidence& e, const lookup_request& r, bool explain, term_kind k) {
    if (k == term_kind::desk && !e.note.empty()) {
        return e.note;  // "our word for it": what it means here, nobody else need say so
    }
    std::string out = how_sure(e);
    const std::string note = explain || e.how == basis::contested ? e.note : std::string{};
    out += note.empty() ? "" : ": " + note;
    if (!explain) {
        return out;
    }
    const source* from = find(r.reference.sources, e.from);
    const std::string more =
        from != nullptr ? from->title + (from->year > 0 ? ", " + std::to_string(from->year) : "")
                        : std::string(behind(e.how));
    return out + (more.empty() ? "" : "; " + more);
}

/// Words of the trade, each with what is customary, what else it is called and what belongs to it.
void say_terms(document& d, const std::vector<const term*>& all, const lookup_request& r,
               bool explain) {
    typed_table rows{{"word", "kind", "meaning", "basis"}};
    rows.whom = shown_to::programs;
    constexpr std::size_t most = 6;
    for (const term* one : all) {
        if (const term_on_coats* on = r.coat ? said_of(words_of(r), *one, *r.coat) : nullptr) {
            d.say(on->text + " (" + how_sure(on->why) + ")", 2);
        }
    }
    for (const term* one : all) {
        d.say_of(one->title + ": ", behind_colon(one->text));
        if (!one->usual.empty()) {
            d.say_of("  customary: ", one->usual + ".", 4);
        }
        std::vector<std::string> also = one->words;
        also.resize(std::min(also.size(), most));
        if (!also.empty()) {
            d.say_of("  also said: ", joined(also, ", "), 4);
        }
        if (!one->see.empty()) {
            d.say_of("  see: ", titles_of(one->see, words_of(r)), 4);
        }
        d.say_of("  how sure: ", known_words(one->why, r, explain, one->kind), 4);
        rows.rows.push_back(
            {one->title, std::string(name(one->kind)), one->text, how_sure(one->why)});
    }
    d.show(std::move(rows));
}

/// What stands of one zone on a card.
void say_zone(document& d, const zone_card& c, const lookup_request& r, const print_options& o) {
    const zone& z = r.reference.dog_body.zones[c.zone];
    d.say_of("Skin: ", c.words == nullptr ? skin_kind(z) : behind_colon(c.words->skin));
    if (!z.hold.empty()) {
        d.say_of("Hold: ",
                 z.hold + "." +
                     (z.hold_frail.empty()
                          ? ""
                          : " An old, ailing, pregnant or nursing dog: " + z.hold_frail + "."));
    }
    const bool no_lay = z.has(zone_use::scissors_only) || z.has(zone_use::pads);
    d.say_of(no_lay ? "Way: " : "Way: with the lay, ", z.stroke + ".");
    if (const std::string against = against_words(c, r, o.units); !against.empty()) {
        d.say_of("Against the lay: ", against + ".");
    }
    d.say_of("With: ", usual_words(c, r) + ".");
    if (const std::string with = with_words(c, r, o.units); !with.empty()) {
        d.say_of("Of the kit may go there: ", with + ".");
    }
    if (!z.hazard.empty()) {
        d.say_of("Mind: ", z.hazard + ".");
    }
}

void say_never(document& d, const zone_card& c, const lookup_request& r, const print_options& o) {
    const std::vector<std::string> never = never_words(c, r, o.units);
    if (never.empty()) {
        return;
    }
    d.open("Never:", false);
    for (const std::string& n : never) {
        d.item(n);
    }
}

/// What it is to go against the lay, asked about of a place.
void say_against(document& d, const lookup_request& r) {
    if (const term* t = find(words_of(r).terms, "against-the-lay")) {
        d.say_of(t->title + ": ", behind_colon(t->text));
        d.open();
    }
}

/// The card as a row for programs.
typed_table place_rows(const place_card& card, const lookup_request& r, const print_options& o) {
    typed_table t{{"place", "skin", "hold", "way", "against", "with", "never"}};
    t.whom = shown_to::programs;
    for (const zone_card& c : card.zones) {
        const zone& z = r.reference.dog_body.zones[c.zone];
        t.rows.push_back({z.title, skin_kind(z), z.hold, z.stroke, against_words(c, r, o.units),
                          usual_words(c, r), joined(never_words(c, r, o.units), "; ")});
    }
    return t;
}

void say_coat_first(document& d, const lookup_request& r) {
    if (const std::string of_coat = coat_words(r); !of_coat.empty()) {
        d.say(of_coat, 2);
    }
}

void say_one_zone(document& d, const place_card& card, const lookup_request& r,
                  const print_options& o) {
    const zone_card& c = card.zones.front();
    const zone& z = r.reference.dog_body.zones[c.zone];
    const term* own = card.asked.said;
    if (own != nullptr && own != c.words) {
        d.say_of(own->title + ": ", behind_colon(own->text));
    }
    const std::string called = card.asked.word == z.title || own == c.words
                                   ? z.title
                                   : z.title + " (" + card.asked.word + ")";
    d.say_of(called + ": ", c.words == nullptr ? z.stroke : behind_colon(c.words->text));
    say_zone(d, c, r, o);
    say_never(d, c, r, o);
}

/// Of more zones than these only the hold and the way are told.
constexpr std::size_t most_whole = 3;

void say_zones(document& d, const place_card& card, const lookup_request& r,
               const print_options& o) {
    const body& b = r.reference.dog_body;
    if (card.asked.said != nullptr) {
        d.say_of(card.asked.said->title + ": ", behind_colon(card.asked.said->text));
    }
    std::vector<std::string> titles;
    for (const zone_card& c : card.zones) {
        // of a pair one side may be all that was asked about
        const auto& all = card.asked.places;
        const auto of_it = [&](const place& p) { return p.zone == c.zone; };
        const auto one = std::find_if(all.begin(), all.end(), of_it);
        titles.push_back(std::count_if(all.begin(), all.end(), of_it) == 1 ? title(b, *one)
                                                                           : b.zones[c.zone].title);
    }
    d.say_of(card.asked.word + ": ", listed(titles) + ".");
    for (const zone_card& c : card.zones) {
        const zone& z = b.zones[c.zone];
        d.open({}, true);
        d.say_of(z.title + ": ", c.words == nullptr ? z.stroke : behind_colon(c.words->text));
        if (card.zones.size() <= most_whole) {
            say_zone(d, c, r, o);
            continue;
        }
        if (!z.hold.empty()) {
            d.say_of("Hold: ", z.hold + ".");
        }
        d.say_of("Way: ", z.stroke + ".");
        if (const std::string against = against_words(c, r, o.units);
            card.asked.against && !against.empty()) {
            d.say_of("Against the lay: ", against + ".");
        }
        d.say_of("With: ", usual_words(c, r) + ".");
    }
    d.open({}, true);
    d.say("What may go there and what never: ask for one of them, as in pelage lookup " +
          titles.front() + ".");
}

/// What tells two tools apart besides their length.
void say_differences(document& d, const comparison& c, const lookup_request& r, length_unit u) {
    for (const lookup_answer& a : c.all) {
        const setup& s = a.asked.tool;
        if (a.never) {
            d.caution("No, " + held(s) + ": " + never_words(a, r, u));
        }
        if (a.there && !a.never) {
            d.item(held(s) + " " + there_words(*a.there, r));
        }
        if (a.asked.what == question::form::of_blade && s.tool.cut == teeth::skip) {
            d.item(held(s) + " has skip teeth: firm, flat skin only");
        }
        if (a.asked.what == question::form::of_blade && s.tool.cut == teeth::full) {
            d.item(held(s) + " has full teeth: an even result");
        }
        const kit_blade* mine =
            a.asked.what == question::form::of_blade ? find_blade(r.tools, s.tool.id) : nullptr;
        if (mine != nullptr && !at_hand(*mine, r.today)) {
            d.item(held(s) + " is " + out_words(r));
        }
    }
}

/// "blade 7F", "comb 13 mm over blade 30", "9 mm".
std::string asked_name(const lookup_answer& a, length_unit u) {
    return a.asked.what == question::form::of_length ? show(a.asked.wanted, u)
                                                     : held_words(a.asked.tool, u);
}

/// What is etched, by its name where it has one.
std::string etched_words(const lookup_answer& a, length_unit u) {
    const blade& b = a.asked.tool.tool;
    const bool by_name =
        u != length_unit::mm && a.asked.what == question::form::of_blade && !b.in_inch.empty();
    return by_name ? b.in_inch + " in" : show(etched(a), u);
}

/// "blade 4F is longer: 9.5 mm; blade 5F is shorter: 6.3 mm."
std::string which_is_longer(const comparison& c, const std::vector<std::string>& names,
                            length_unit u) {
    const bool two = c.all.size() == 2;
    std::vector<std::string> parts;
    const auto as_read = [&](std::size_t i) { return etched_words(c.all[i], u); };
    if (two && c.longest && as_read(0) == as_read(1)) {
        return "The same, but for less than a figure shows: " + as_read(0) + ".";
    }
    for (std::size_t i = 0; i < c.all.size(); ++i) {
        const bool longest = c.longest == i;
        const std::string rank = !c.longest ? ": "
                                 : longest  ? (two ? " is longer: " : " is longest: ")
                                 : two      ? " is shorter: "
                                            : ": ";
        const bool tool = c.all[i].stated.has_value();
        parts.push_back(
            names[i] + (tool ? rank + etched_words(c.all[i], u) : rank.substr(0, rank.size() - 2)));
    }
    if (c.longest) {
        std::rotate(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(*c.longest),
                    parts.begin() + static_cast<std::ptrdiff_t>(*c.longest) + 1);
    }
    return (c.longest ? ""
            : two     ? "Of one length: "
                      : "None is longest: ") +
           joined(parts, "; ") + ".";
}

typed_table leaves_beside(const comparison& c, const print_options& o) {
    typed_table t{{"coat"}};
    std::vector<const lookup_answer*> tools;
    for (const lookup_answer& a : c.all) {
        if (!a.leaves.empty()) {
            t.head.push_back(asked_name(a, o.units));
            tools.push_back(&a);
        }
    }
    if (tools.empty()) {
        return t;
    }
    for (std::size_t i = 0; i < tools.front()->leaves.size(); ++i) {
        std::vector<cell> cells{std::string(name(tools.front()->leaves[i].coat))};
        for (const lookup_answer* a : tools) {
            cells.emplace_back(a->leaves[i].with);
        }
        t.rows.push_back(std::move(cells));
    }
    return t;
}

/// Where what is left doesn't follow what is etched: "blade 4F leaves more on smooth coats".
std::string left_by_others(const comparison& c, const std::vector<std::string>& names) {
    const std::size_t coats =
        std::max_element(c.all.begin(), c.all.end(), [](const auto& a, const auto& b) {
            return a.leaves.size() < b.leaves.size();
        })->leaves.size();
    const std::string more =
        c.all.size() == 2 ? names[1 - *c.longest] + " leaves more" : "another leaves more";
    std::vector<std::string> on;
    for (const coat_class one : c.otherwise) {
        on.emplace_back(name(one));
    }
    const std::string where = coats > 1 && on.size() == coats ? "every coat"
                              : on.size() == 1                ? "a " + on.front() + " coat"
                                                              : listed(on) + " coats";
    return "with the lay " + more + " on " + where +
           ", since hair that lies flat is left longer than what is stated";
}

}  // namespace

document document_of(const place_card& c, const lookup_request& r, const print_options& o) {
    document d{c.asked.word};
    if (const never_rule* n = never_of(r, c.asked)) {
        say_no(d, "never " + n->text + ". " + n->instead);
    }
    for (const not_there& n : c.no) {
        say_no(d, not_there_words(n, r.reference.dog_body) + ".");
    }
    say_coat_first(d, r);
    if (c.asked.against) {
        say_against(d, r);
    }
    if (!c.asked.beside.empty()) {
        say_terms(d, c.asked.beside, r, o.explain);
        d.open();
    }
    if (c.zones.size() == 1) {
        say_one_zone(d, c, r, o);
    } else {
        say_zones(d, c, r, o);
    }
    d.show(place_rows(c, r, o));
    d.open({}, false);
    d.say("How sure: " + how_sure(r.reference.dog_body.zones[c.zones.front().zone].why) +
          ", and so are the rules that sort the kit's blades.");
    return d;
}

document document_of(const terms_asked& t, const lookup_request& r, const print_options& o) {
    document d{t.all.front()->title};
    if (never_of_this_coat(r, t)) {
        say_no(d, std::string(refusal_words(refusal::jacket_consent)) + ".");
    } else if (const never_rule* n = never_of(r, t)) {
        say_no(d, "never " + n->text + ". " + n->instead);
    }
    say_coat_first(d, r);
    if (t.open != nullptr) {
        d.say(coat_open_words(t) + ".", 2);
    }
    say_terms(d, t.all, r, o.explain);
    return d;
}

document document_of(const tools_asked& t, const lookup_request& r, const print_options& o) {
    document d{"What " + r.text + " means"};
    if (never_of_this_coat(r, terms_asked{t.beside})) {
        say_no(d, std::string(refusal_words(refusal::jacket_consent)) + ".");
    } else if (const never_rule* n = never_of(r, t)) {
        say_no(d, "never " + n->text + ". " + n->instead);
    }
    if (!t.beside.empty()) {
        say_coat_first(d, r);
    }
    if (t.same && t.all.size() == 1) {
        const question& q = t.all.front();
        d.say("The same twice: " +
              (q.what == question::form::of_length ? show(q.wanted, o.units)
                                                   : held_words(q.tool, o.units)) +
              ".");
    }
    say_terms(d, t.beside, r, o.explain);
    return d;
}

document document_of(const comparison& c, const lookup_request& r, const print_options& o) {
    std::vector<std::string> names;
    for (const lookup_answer& a : c.all) {
        names.push_back(asked_name(a, o.units));
    }
    document d{joined(names, " and ")};
    say_coat_first(d, r);
    if (c.otherwise.empty()) {
        d.say(which_is_longer(c, names, o.units), 2);
    } else {
        d.say("It depends on the coat: " + left_by_others(c, names) + ". By what is stated " +
                  which_is_longer(c, names, o.units),
              2);
    }
    say_differences(d, c, r, o.units);
    if (typed_table t = leaves_beside(c, o); !t.rows.empty()) {
        d.open("With the lay they leave, combed out:", false);
        d.show(std::move(t));
    }
    d.open({}, false);
    d.say(
        "A blade's number is a name: the higher it is, the shorter the hair. How sure: stated "
        "lengths common practice, no source; what the lay adds our guess.");
    return d;
}

}  // namespace pelage::io
