// What the owner's page says. Short sentences and common words: tests hold its reading ease.
#include <algorithm>
#include <cmath>

#include <pelage/data/glossary.hpp>
#include <pelage/model/refusal.hpp>

#include "answers/layout.hpp"
#include "answers/owner_question.hpp"
#include "answers/owner_view.hpp"
#include "answers/words/consent.hpp"

namespace pelage::io {

owner_view::strings owner_view::told_alerts() const {
    strings out;
    for (const alert& a : r_.patient.alerts) {
        if (a.what == alert_kind::faints) {
            out.emplace_back("it faints");
        } else if (a.what == alert_kind::seizures) {
            out.emplace_back("it has seizures");
        } else if (a.what == alert_kind::allergic) {
            out.push_back("it can't bear " + a.to);
        }
    }
    return out;
}

std::string owner_view::named(const zone_list& which) const {
    constexpr std::size_t few = 4;
    if (which.size() <= few) {
        return listed(places_.each_of(which));
    }
    strings parts;
    for (const group part : {group::body, group::legs, group::tail, group::feet, group::head}) {
        const auto here = static_cast<std::size_t>(std::count_if(
            which.begin(), which.end(), [&](std::size_t i) { return zone_of(i).where == part; }));
        const std::string whole{name(part)};
        // the tail's base alone, gone down with the body, is no tail
        if (here > 0 && !(part == group::tail && here < places_.all_of(part).size())) {
            parts.push_back(here * 2 >= places_.all_of(part).size() ? whole
                                                                    : "some of the " + whole);
        }
    }
    if (std::any_of(which.begin(), which.end(),
                    [&](std::size_t i) { return zone_of(i).where == group::prep; })) {
        parts.emplace_back("hidden folds");
    }
    return listed(parts);
}

namespace {

/// A name fit for one line of a page; cut between characters.
std::string short_name(const std::string& name) {
    constexpr std::size_t most = 40;
    if (name.empty()) {
        return "Your dog";
    }
    constexpr std::size_t most_bytes = 3 * most;  // marks that take no column don't make it longer
    if (columns(name) <= most && name.size() <= most_bytes) {
        return name;
    }
    std::size_t end = most;
    while (end > 0 && (static_cast<unsigned char>(name[end]) & 0xC0U) == 0x80U) {
        --end;
    }
    return name.substr(0, end) + "...";
}

/// The page from its title to its foot; what stands between is told by the parts.
class page_maker : owner_view {
  public:
    explicit page_maker(const owner_view& v) : owner_view(v) {}

    void make() {
        page_.name = short_name(r_.patient.name);
        page_.title = page_.name + ": " +
                      (g_.stopped()                        ? "a vet first"
                       : g_.question                       ? "before we clip"
                       : m_.moment == owner_moment::before ? "before the groom"
                       : m_.moment == owner_moment::after  ? "to take home"
                                                           : "today's groom");
        if (o_.today) {
            page_.title += ", " + in_words(*o_.today);
        }
        if (g_.stopped()) {
            say_stopped(*this);
        } else if (g_.question) {
            say_question(page_, g_, r_, plain_);
            agree();
        } else {
            vet_first();
            if (m_.moment != owner_moment::after) {
                say_asked(*this);
                say_today(*this);
            } else {
                say_done(*this);
            }
            if (m_.moment != owner_moment::before) {
                say_home(*this);
                vet();
            }
            if (m_.moment != owner_moment::after) {
                agree();
            }
        }
        page_.from = whose();
        foot();
    }

  private:
    void foot() {
        page_.foot = r_.patient.invented ? "An invented dog, for trying things out. " : "";
        page_.foot += g_.planned() ? days_and_weeks() : "";
        page_.foot += "The rules of this place and a vet's word come first.";
        if (o_.explain && g_.planned()) {
            page_.foot += " How sure: growth of the coat, " + basis_words(coat_.rate.why);
            if (const figure<length>* prone = prone_of(coat_, r_.rules.matting)) {
                page_.foot += "; length at which it mats, " + basis_words(prone->why);
            }
            page_.foot += "; how to brush and the weeks, common practice, no source.";
        }
    }
    /// "Salon Foo, telephone 0123. Groomer: Ann.": what of it is given.
    [[nodiscard]] std::string whose() const {
        const salon_card& c = m_.from;
        std::string text = c.name;
        text +=
            c.telephone.empty() ? "" : (text.empty() ? "Telephone " : ", telephone ") + c.telephone;
        text += text.empty() ? "" : ".";
        text +=
            c.groomer.empty() ? "" : (text.empty() ? "" : " ") + ("Groomer: " + c.groomer + ".");
        return text;
    }
    /// What the dates on this page mean.
    [[nodiscard]] std::string days_and_weeks() const {
        const bool weeks =
            m_.moment != owner_moment::after && m_.grow_back != nullptr && !m_.grow_back->empty();
        return weeks ? "In 8 of 10 such dogs the hair is back in those weeks. "
                     : "Days are what such coats mostly do. ";
    }

    /// A dog too frail for one long sitting that is felted over much of it; one that is not well.
    void vet_first() {
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
    }

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

    void vet() {
        page_section& s = add("Call a vet if");
        strings lines;
        const auto has = [&](caution_when w) {
            return std::any_of(g_.cautions.begin(), g_.cautions.end(),
                               [&](const caution_line& c) { return c.what.when == w; });
        };
        if (watched(false) || matted_by_record(*this, false)) {
            lines.emplace_back(
                "an ear swells or feels hot, or the head won't stop shaking: the same day. "
                "Blood rushes back when tight mats come off");
        }
        if (watched(true) || matted_by_record(*this, true)) {
            lines.emplace_back(
                "the tail swells or feels hot: the same day. Blood rushes back when tight mats "
                "come off");
        }
        lines.emplace_back("the skin is sore, wet or smells, or is still red after two days");
        lines.emplace_back("it licks or rubs one spot again and again, limps, or won't eat");
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
        if (has(caution_when::lump_new)) {
            lines.emplace_back("no vet has yet seen the lump we felt: soon");
        }
        for (const std::string& l : lines) {
            s.lines.push_back(sentence_case(l) + ".");
        }
    }

    [[nodiscard]] std::string plainly(const consent& c) const {
        if (c.id == "clip-down") {
            const std::string all = shorter_by_mats(g_, plain_);
            const std::string where = may_keep_long(m_) ? shorter_by_mats(g_, plain_, true) : all;
            const std::string more =
                where == all ? ""
                             : "; if the sound hair comes down too, as you choose above: " + all;
            return "Mats may be clipped off short. " +
                   (where.empty()
                        ? ""
                        : "These come out shorter than you asked: " + where + more + ". ") +
                   "Skin under mats can be red, bruised or sore "
                   "and may get a nick. Sores can come to light. The dog may feel odd for a while.";
        }
        if (c.id == "frail-dog") {
            return std::string(only_with_young(r_.patient)
                                   ? "My dog is pregnant or has puppies to feed."
                                   : "My dog is old, ill or has thin skin.") +
                   " It may tire or get hurt more easily. "
                   "You stop when it has had enough, even if the groom is not done.";
        }
        if (c.id == "show-blades") {
            return "You may use very short blades on the face and feet. The skin may get red.";
        }
        if (c.id == "sun-short") {
            return "My dog is out in the sun most of the day. Where its skin is pale it may burn "
                   "under short hair. You may cut it so short all the same. If not, we leave it " +
                   show(r_.rules.refusal.sun_length.best, o_.units) + " there.";
        }
        if (c.id == "clip-jacket") {
            const bool doubled = double_coated(coat_.id);
            return doubled
                       ? "You may clip the thick coat. It may grow back slow, patchy or not the "
                         "same."
                       : "You may clip the coat and not strip it by hand. It may turn soft "
                         "and pale, and stay so.";
        }
        return sentence_case(consent_words(c, g_, r_)) + ".";
    }

    void agree() {
        strings agreed;
        strings open;
        for (const consent& c : g_.consents) {
            (c.given ? agreed : open).push_back(plainly(c));
        }
        if (!agreed.empty()) {
            add("You have agreed to this").lines = agreed;
        }
        if (open.empty()) {
            if (m_.moment == owner_moment::before) {
                add("Please read and sign")
                    .says.emplace_back(agreed.empty()
                                           ? "This is what we will do."
                                           : "This is what we will do, with what you agreed to.");
                page_.sign = true;
            }
            return;
        }
        page_section& s = add("Please read and sign");
        s.how = lines_as::boxes;
        s.lines = open;
        s.says.emplace_back(
            "Tick what you agree to. No is fine: we find another way. We stop if it "
            "hurts.");
        page_.sign = true;
    }
};

}  // namespace

owner_page page_of(const owner_matter& m, const print_options& o) {
    owner_page page;
    const ready_kit ready(m.asked);
    const wishes_by_place wishes(m.asked, ready);
    const body plain = plain_body(m.asked.reference.dog_body, trade_words());
    page_maker({m, o, wishes, ready.top(), plain, page}).make();
    return page;
}

}  // namespace pelage::io
