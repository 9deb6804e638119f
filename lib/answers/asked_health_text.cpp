// What ails a dog and what a card says in short, as the look-up tells it.
#include <pelage/answers/kit.hpp>

#include "answers/words/asked.hpp"

namespace pelage::io {

document document_of(const health_asked& h, const lookup_request& r, const print_options& o) {
    document d{h.said};
    for (const stop_rule* s : h.stops) {
        d.say_of("STOP. " + s->seen + ": ", s->act + " (" + how_sure(s->why) + ")");
    }
    std::string lead = h.said + ": ";
    for (const caution* c : h.all) {
        d.say_of(lead, c->text + " (" + how_sure(c->why) + ")");
        lead.clear();
    }
    if (!h.stops.empty()) {
        d.say("Before a groom, in a plan: --sign " + std::string(name(h.stops.front()->sign)) + ".",
              2);
    } else {
        d.say("In a plan: --health '" + h.said + "'.", 2);
    }
    if (!h.beside.empty()) {
        d.append(document_of(terms_asked{h.beside}, r, o));
    }
    return d;
}

document document_of(const card_asked& c, const lookup_request& /*r*/, const print_options& /*o*/) {
    document d{c.said};
    for (const card_line* l : c.figures) {
        // "our words for it": what it means here, nobody else need say so
        const bool own = l->why.how == basis::practice && l->why.note.starts_with("our word");
        d.say_of(c.said + ": ",
                 behind_colon(l->text) + " (" + (own ? l->why.note : how_sure(l->why)) + ")");
        return d;
    }
    d.say(c.all.empty() ? "What ends a groom, or lets none begin:" : "On a card, in short:");
    for (const caution* one : c.all) {
        d.say_of(one->brief + ": ", one->text + " (" + how_sure(one->why) + ")");
    }
    for (const stop_rule* s : c.stops) {
        d.say_of(s->seen + ": ", s->act + " (" + how_sure(s->why) + ")");
    }
    return d;
}

}  // namespace pelage::io
