// A class of coat that was asked about, as a document.
#include <pelage/answers/kit.hpp>
#include <pelage/trade/term.hpp>

#include "answers/words/asked.hpp"

namespace pelage::io {

namespace {

/// How it is known that a jacket is carded, and of a double one that clipped short it may not grow back.
std::string said_first_sure(const coat& k, const lookup_request& r) {
    const term* lost = find(words_of(r).terms, "coat-loss");
    return "what is done with it, " + how_sure(k.jacket_why) +
           (double_coated(k.id) && lost != nullptr
                ? "; that it may not grow back, " + how_sure(lost->why)
                : "");
}

}  // namespace

document document_of(const coat_asked& c, const lookup_request& r, const print_options& o) {
    const coat& k = coat_of(r.reference, c.coat);
    document d{k.title};
    d.say_of(k.title + ": ", k.look + ".");
    if (c.said != nullptr) {
        d.say(c.said->text, 2);
        d.say_of("how sure: ", how_sure(c.said->why), 2);
    }
    if (!k.said_first.empty()) {
        d.say(k.said_first, 2);
        d.say_of("how sure: ", said_first_sure(k, r), 2);
    }
    const length stops = longest_terminal(k).best;
    if (k.kind == cycle::resting) {
        d.say("Its hair stops at about " + show(stops, o.units) + " (" +
              std::string(in_words(longest_terminal(k).why.how)) + ").");
    } else {
        d.say(c.coat == coat_class::wire ? "The coat keeps growing."
              : k.feathers ? "Its feathering keeps growing; its jacket stops at about " +
                                 show(k.terminal.best, o.units) + " (" +
                                 std::string(in_words(k.terminal.why.how)) + ")."
                           : "Its hair keeps growing.");
    }
    d.say(k.matting_prone ? "Past about " + show(k.matting_prone->best, o.units) +
                                " it mats, sooner where it isn't brushed to the skin (" +
                                std::string(in_words(k.matting_prone->why.how)) + ")."
          : k.feathers ? "Its jacket doesn't mat by length; its feathering does, past about " +
                             show(k.feathers->matting_prone.best, o.units) + " (" +
                             how_sure(k.feathers->matting_prone.why) + ")."
                       : "No length is held to mat it (common practice, no source).");
    d.say("What the kit leaves on it: pelage lookup --all --coat " + std::string(name(c.coat)) +
          ".");
    d.say("Style sheets: pelage sheet list. How it is brushed: pelage lookup 'line brushing'.");
    return d;
}

}  // namespace pelage::io
