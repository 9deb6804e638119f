// The owner's page where a clip is asked of a double coat and nobody has agreed to it.
#include "answers/owner_question.hpp"

#include <pelage/base/phrase.hpp>
#include <pelage/trade/zone.hpp>

#include "answers/words/places.hpp"

namespace pelage::io {

namespace {

void what_instead(page_section& s, const groom& tidy, const body& b) {
    std::vector<std::size_t> carded;
    std::vector<place> trimmed;
    std::vector<place> prepared;
    bool mats = false;
    for (std::size_t i = 0; i < tidy.zones.size(); ++i) {
        const zone_plan& z = tidy.zones[i];
        mats = mats || z.mat;
        if (z.mat || z.how.kind == tool_kind::none || z.came == outcome::stuck) {
            continue;
        }
        if (z.how.kind == tool_kind::carder) {
            carded.push_back(i);
        } else if (b.zones[z.at.zone].where == group::prep) {
            prepared.push_back(z.at);
        } else {
            trimmed.push_back(z.at);
        }
    }
    s.lines.emplace_back("A bath, and a good dry.");
    if (!carded.empty()) {
        s.lines.push_back("The loose soft hair combed out: " +
                          listed(place_words(tidy, b).parts_of(carded)) + ".");
    }
    if (!trimmed.empty()) {
        s.lines.push_back("A light trim: " + listed(titles(b, trimmed)) + ".");
    }
    if (!prepared.empty()) {
        s.lines.push_back("Clipped short to keep it clean: " + listed(titles(b, prepared)) + ".");
    }
    if (mats) {
        s.lines.emplace_back("Mats come out or off all the same.");
    }
}

}  // namespace

void say_question(owner_page& page, const groom& g, const plan_request& r, const body& plain) {
    const std::string who = r.patient.name.empty() ? "your dog" : page.name;
    page_section why;
    why.heading = "Why we ask first";
    why.says = {"You asked for this: " + r.sheet.title + ".",
                "But " + who + " has a double coat: long hair on top, soft wool beneath.",
                "If we clip it, it may grow back slow, in patches or not the same. That can take "
                "months, in some dogs up to two years.",
                "So we did not clip it."};
    page.sections.push_back(std::move(why));
    if (const auto instead = instead_of(r, g)) {
        const plan_request ask{r.reference,      r.rules,         r.tools,
                               instead->patient, *instead->sheet, r.today};
        page_section what;
        what.heading = "What we can do in its place";
        what_instead(what, make_plan(ask), plain);
        page.sections.push_back(std::move(what));
    }
    page_section kind;
    kind.heading = "Please know";
    kind.says = {"It is fine to ask. It is your dog, and the choice is yours.",
                 "We want you to know this before, not after."};
    page.sections.push_back(std::move(kind));
}

}  // namespace pelage::io
