// The owner's page: a vet's word before the groom, and when to call one after it.
#include <algorithm>

#include <pelage/model/refusal.hpp>

#include "answers/owner_view.hpp"

namespace pelage::io {

namespace {

class vet_part : owner_view {
  public:
    explicit vet_part(const owner_view& v) : owner_view(v) {}

    /// A dog too frail for one long sitting that is felted over much of it; one that is not well.
    void first() {
        const bool first = std::any_of(g_.cautions.begin(), g_.cautions.end(), [](const auto& c) {
            return c.what.when == caution_when::frail_felted;
        });
        if (m_.moment == owner_moment::after) {
            return;
        }
        if (first) {
            add("A vet first")
                .says.emplace_back(
                    "Please have a vet see your dog before we groom it. It is much for one visit: "
                    "we will need two or more, the mats first. We set the days when the vet has "
                    "said yes.");
        } else if (ails(r_.patient) && g_.planned()) {
            add("A vet's word first")
                .says.emplace_back(
                    "Your dog is not well. Please ask your vet if we may groom it now.");
        }
        if (told_of(r_.patient, ailment_kind::diabetes)) {
            add("Its meals and insulin")
                .says.emplace_back(
                    "Please tell us when your dog eats and gets its insulin, so that neither is "
                    "late.");
        }
    }

    void when_to_call() {
        page_section& s = add("Call a vet if");
        strings lines;
        const auto has = [&](caution_when w) {
            return std::any_of(g_.cautions.begin(), g_.cautions.end(),
                               [&](const caution_line& c) { return c.what.when == w; });
        };
        if (watched(false) || bared_by_record(*this, false)) {
            lines.emplace_back(
                "an ear swells or feels hot, or the head won't stop shaking: the same day. "
                "Blood rushes back when tight mats come off");
        }
        if (watched(true) || bared_by_record(*this, true)) {
            lines.emplace_back(
                "the tail swells or feels hot: the same day. Blood rushes back when tight mats "
                "come off");
        }
        lines.emplace_back("the skin is sore, wet or smells, or is still red after two days");
        lines.emplace_back("it licks or rubs one spot again and again, limps, or won't eat");
        if (!g_.fleas.empty()) {
            lines.emplace_back(
                "you don't know yet what your dog and your home are treated with: it had fleas");
        }
        if (tender(r_.patient) || ails(r_.patient)) {
            lines.emplace_back("it seems weak, coughs or breathes hard: the same day");
        }
        if (has(caution_when::double_jacket_clipped)) {
            lines.emplace_back(
                "the hair has not come back in three to four months. In some dogs it is slow");
        }
        if (has(caution_when::sun) || has(caution_when::sun_hours)) {
            lines.emplace_back(
                "the skin burns. Pale skin with short hair needs shade. Ask the "
                "vet before you use a cream");
        }
        if (std::any_of(g_.zones.begin(), g_.zones.end(),
                        [](const zone_plan& z) { return z.hurt.has_value(); })) {
            const bool wet = std::any_of(g_.zones.begin(), g_.zones.end(), [](const zone_plan& z) {
                return z.hurt == skin_state::wet;
            });
            lines.emplace_back(std::string("no vet has yet seen what we left alone: ") +
                               (wet ? "today or tomorrow" : "this week"));
        }
        if (has(caution_when::ear_trouble)) {
            lines.emplace_back(
                "no vet has yet looked into the ears: this week. Put nothing in them until then");
        }
        if (has(caution_when::nail)) {
            lines.emplace_back("no vet has yet seen the bad nail: today or tomorrow");
        }
        if (has(caution_when::lump_new)) {
            lines.emplace_back("no vet has yet seen the lump we felt: soon");
        }
        for (const std::string& l : lines) {
            s.lines.push_back(sentence_case(l) + ".");
        }
    }

  private:
    /// Whether tight mats came off the tail, or else off an ear.
    [[nodiscard]] bool watched(bool tail) const {
        return std::any_of(g_.cautions.begin(), g_.cautions.end(), [&](const caution_line& c) {
            return c.what.when == caution_when::matted_ears_or_tail &&
                   std::any_of(c.where.begin(), c.where.end(), [&](const place& p) {
                       const zone& z = r_.reference.dog_body.zones[p.zone];
                       return (z.where == group::tail) == tail;
                   });
        });
    }
};

}  // namespace

void say_vet_first(const owner_view& v) {
    vet_part(v).first();
}

void say_when_to_call_vet(const owner_view& v) {
    vet_part(v).when_to_call();
}

}  // namespace pelage::io
