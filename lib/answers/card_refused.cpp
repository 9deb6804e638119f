#include "answers/card_refused.hpp"

#include <pelage/base/phrase.hpp>

#include "answers/first_lines.hpp"
#include "answers/layout.hpp"
#include "answers/plan_parts.hpp"
#include "answers/words/chance.hpp"
#include "answers/words/places.hpp"

namespace pelage::io {

document refused_card(const groom& g, const plan_request& r, const mixed_coat* unseen) {
    document page;
    page.name = r.patient.name.empty() ? "A dog" : r.patient.name;
    page.title = page.name + ": " + r.sheet.title;
    say_alert(page, r.patient);
    std::vector<std::string> ids;
    for (const consent& c : g.consents) {
        if (!c.given) {
            ids.push_back(kept_together("--consent " + c.id));
        }
    }
    page.add({line_as::caution,
              "No: a double coat is carded, not clipped, unless its owner agrees in writing" +
                  (ids.empty() ? "" : " (" + joined(ids, ", ") + ")") +
                  ": it may grow back slowly or changed, or not at all.",
              {},
              0,
              2});
    const std::string what = joined(place_words(g, r).by_part(g.question->asked), ", ");
    page.say(page.name + ": " + r.sheet.title +
                 (r.patient.departures.empty() ? " would clip " : ", asked to clip ") + what + ".",
             2);
    if (unseen != nullptr) {
        say_unseen_in_brief(page, *unseen, r);
    }
    const style* fits = find(r.reference.styles, g.question->instead);
    if (fits != nullptr) {  // what is drawn and planned on the page
        page.title = page.name + ": " + fits->title + ", in place of " + r.sheet.title;
    }
    page.say(fits == nullptr ? "No sheet of the reference fits this coat: card it out."
                             : "In its place: " + fits->title + " (" +
                                   kept_together("--style " + fits->id) + ").",
             2);
    return page;
}

}  // namespace pelage::io
