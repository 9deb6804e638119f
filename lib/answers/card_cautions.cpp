#include "answers/card_cautions.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/words/places.hpp"

namespace pelage::io {

namespace {

class card_cautions {
  public:
    card_cautions(const groom& g, const plan_request& r, const std::vector<caution_when>& told)
        : g_(g), r_(r), told_(told), places_(g, r) {}

    /// Those special to this dog, what is said of the same places together; what the owner is told, and
    /// the usual ones, in one line each.
    void say(document& page) const {
        grouped<std::string> special;
        std::vector<std::string> of_the_dog;
        std::vector<std::string> to_owner;
        std::vector<std::string> usual;
        int told_gravest = 5;
        for (std::size_t i = 0; i < g_.cautions.size(); ++i) {
            const caution_line& c = g_.cautions[i];
            if (told_already(c)) {
                continue;
            }
            if (c.what.usual) {
                if (c.what.who != "owner") {  // theirs stand on the page they take home
                    usual.push_back(c.what.brief);
                }
            } else if (c.what.who == "owner") {
                to_owner.push_back(c.what.brief);
                told_gravest = std::min(told_gravest, c.what.danger);
            } else if (c.where.empty()) {
                of_the_dog.push_back(c.what.brief);
            } else {
                special.add(where_of(c), i);
            }
        }
        for (const auto& [where, which] : special.all()) {
            page.add({line_as::caution, where + said_of(which), "! ", 0, 2});
        }
        for (std::string& text : of_the_dog) {
            page.add({line_as::caution, std::move(text), "! ", 0, 2});
        }
        if (!to_owner.empty()) {
            page.add({told_gravest > 2 ? line_as::notice : line_as::caution, joined(to_owner, "; "),
                      "Tell the owner: ", 0, 2});
        }
        const caution* rules = find(r_.reference.cautions, "local-rules");
        if (usual.empty() && rules != nullptr) {
            // nothing is clipped, and still hands are laid on a dog
            usual.push_back(rules->brief);
        }
        page.add({line_as::notice, joined(usual, ", ") + ".", "As ever: ", 0, 2});
    }

  private:
    /// What stands above already, or in the step that it is about.
    [[nodiscard]] bool told_already(const caution_line& c) const {
        const caution_when w = c.what.when;
        const bool in_a_step = (w == caution_when::combing_out && !g_.combed.empty()) ||
                               w == caution_when::against_short;
        const bool in_more_words =
            w == caution_when::sun &&
            std::any_of(g_.cautions.begin(), g_.cautions.end(), [](const caution_line& l) {
                return l.what.when == caution_when::sun_hours;
            });
        const bool asked =
            w == caution_when::wire_clipped &&
            std::any_of(g_.consents.begin(), g_.consents.end(), [](const consent& k) {
                return k.what == consent_for::strip_jacket && !k.given;
            });
        if (g_.stopped()) {  // "a veterinarian sees this dog first" stands above
            return w == caution_when::stop || w == caution_when::skin_finding;
        }
        return in_a_step || asked || in_more_words || first_of_all(c) ||
               std::find(told_.begin(), told_.end(), w) != told_.end();
    }
    [[nodiscard]] std::string where_of(const caution_line& c) const {
        zone_list which;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (std::find(c.where.begin(), c.where.end(), g_.zones[i].at) != c.where.end()) {
                which.push_back(i);
            }
        }
        if (c.what.when == caution_when::fleas) {
            return places_or_whole(r_.reference.dog_body, c.where) + ": ";
        }
        // hurt skin is on places that no plan need have
        return (which.size() == c.where.size()
                    ? joined(places_.by_part(which), ", ")
                    : places_.in_parts(titles(r_.reference.dog_body, c.where))) +
               ": ";
    }
    [[nodiscard]] std::string said_of(const std::vector<std::size_t>& which) const {
        std::vector<std::string> here;
        for (const std::size_t i : which) {
            here.push_back(g_.cautions[i].what.brief);
        }
        return joined(here, "; ");
    }

    const groom& g_;
    const plan_request& r_;
    const std::vector<caution_when>& told_;
    place_words places_;
};

}  // namespace

bool first_of_all(const caution_line& c) {
    return !c.what.usual && c.where.empty() && c.what.danger == 1;
}

void say_cautions(document& page, const groom& g, const plan_request& r,
                  const std::vector<caution_when>& told) {
    card_cautions(g, r, told).say(page);
}

}  // namespace pelage::io
