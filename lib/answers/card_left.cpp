#include "answers/card_left.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/plan_parts.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/skin.hpp"

namespace pelage::io {

namespace {

class left_writer {
  public:
    left_writer(document& page, const groom& g, const plan_request& r, const print_options& o,
                card_cautions& cautions)
        : page_(page), g_(g), r_(r), o_(o), cautions_(cautions), places_(g, r) {}

    void all() {
        as_it_is(cause::hair_below_wish, "Leave, too short yet: ");
        as_it_is(cause::hair_at_wish, "Leave, near the wish as it is: ");
        constexpr std::size_t long_list = 120;  // columns; nobody looks for a place in it
        for (const line& l : left_lines(g_, r_, o_.units, false)) {
            if (booked_in_part(r_) && l.lead.empty() && l.text == not_booked) {
                continue;  // what is booked stands above
            }
            const bool rest = !l.lead.empty() && l.text.size() > long_list;
            if (l.as != line_as::caution) {
                // who reads in haste takes "leave left ..." for a side
                page_.add({line_as::item, rest ? "all else" : l.text,
                           "Leave: " + (rest ? "" : l.lead), 0, 2});
            }
        }
        dont_touch();
        go_around();
    }

    void hurt() { dont_touch(); }

  private:
    /// "shoulders, legs 35 mm (42 to 45 mm wanted, near enough in 10 to 20 days)": what is left for today's length, in one line.
    void as_it_is(cause why, std::string lead) {
        grouped<hair_told> by;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            if (left_for_its_length(z) && z.why.what == why) {
                by.add(hair_told_of(z, o_.units), i);
            }
        }
        std::vector<std::string> all;
        for (const auto& [alike, where] : by.all()) {
            std::vector<const zone_plan*> zones;
            for (const std::size_t i : where) {
                zones.push_back(&g_.zones[i]);
            }
            all.push_back(joined(places_.by_part(where), ", ") + " " +
                          hair_in_brief(zones, o_.units));
        }
        if (!all.empty()) {
            page_.add({line_as::item, joined(all, "; "), std::move(lead), 0, 2});
        }
    }

    void dont_touch() {
        grouped<std::string> hurt;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (g_.zones[i].came == outcome::skin_left) {
                hurt.add(sore_in_brief(g_.zones[i]), i);
            }
        }
        if (hurt.empty()) {
            return;
        }
        zone_list beside;
        for (const block& b : g_.blocks) {
            for (const std::size_t i : b.zones) {
                if (!g_.zones[i].beside_hurt.empty() &&
                    std::find(beside.begin(), beside.end(), i) == beside.end()) {
                    beside.push_back(i);
                }
            }
        }
        std::sort(beside.begin(), beside.end());
        std::vector<std::string> all;
        for (const auto& [why, where] : hurt.all()) {
            all.push_back(joined(places_.by_part(where), ", ") + " (" + why + ")");
        }
        std::string text = joined(all, ", ");
        if (!beside.empty()) {
            text += ", nor the edge towards it of " + joined(places_.titles_of(beside), ", ");
        }
        if (const caution* c = find(r_.reference.cautions, "skin-finding")) {
            text += "; " + told_of_it(c->brief);
            cautions_.told(*c);
        }
        page_.add({line_as::caution, std::move(text), "Don't touch by any tool: ", 0, 2});
    }

    /// Where skin is broken or wet the urgent word stands below, and the lesser one isn't said beside it.
    [[nodiscard]] std::string told_of_it(const std::string& brief) const {
        const bool urgent =
            !g_.stopped() &&
            std::any_of(g_.cautions.begin(), g_.cautions.end(), [](const caution_line& l) {
                return l.what.when == caution_when::open_skin;
            });
        const bool red = std::any_of(g_.zones.begin(), g_.zones.end(), [](const zone_plan& z) {
            return z.came == outcome::skin_left && z.hurt == skin_state::irritated;
        });
        return !urgent ? brief
               : red   ? brief + " for the red skin"
                       : brief.substr(0, brief.find(','));
    }

    /// Lumps and scabs: felt for before anything is taken up.
    void go_around() {
        grouped<std::string> by;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            for (const skin_finding& f : g_.zones[i].around) {
                const bool scab = f.state == skin_state::scab;
                const caution* c = scab || !f.known
                                       ? find(r_.reference.cautions, scab ? "scab" : "lump-new")
                                       : nullptr;
                by.add(around_in_brief(g_.zones[i], f, r_.rules.refusal, o_.units) +
                           (c == nullptr ? "" : ": " + c->brief),
                       i);
                if (c != nullptr) {
                    cautions_.told(*c);
                }
            }
        }
        for (const auto& [text, where] : by.all()) {
            page_.add({line_as::caution, joined(places_.by_part(where), ", ") + ": " + text,
                       "Go around: ", 0, 2});
        }
    }

    document& page_;
    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    card_cautions& cautions_;
    place_words places_;
};

}  // namespace

void say_hurt(document& page, const groom& g, const plan_request& r, const print_options& o,
              card_cautions& cautions) {
    left_writer(page, g, r, o, cautions).hurt();
}

void say_left(document& page, const groom& g, const plan_request& r, const print_options& o,
              card_cautions& cautions) {
    left_writer(page, g, r, o, cautions).all();
}

}  // namespace pelage::io
