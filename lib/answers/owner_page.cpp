// What the owner's page says. Short sentences and common words: tests hold its reading ease.
#include <algorithm>

#include <pelage/data/glossary.hpp>

#include "answers/layout.hpp"
#include "answers/owner_question.hpp"
#include "answers/owner_view.hpp"

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
    zone_list hidden;
    std::copy_if(which.begin(), which.end(), std::back_inserter(hidden),
                 [&](std::size_t i) { return zone_of(i).where == group::prep; });
    for (std::string& one : places_.each_of(hidden)) {
        parts.push_back(std::move(one));
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
            say_consents(*this);
        } else {
            say_vet_first(*this);
            if (m_.moment != owner_moment::after) {
                say_asked(*this);
                say_today(*this);
            } else {
                say_done(*this);
            }
            if (m_.moment != owner_moment::before) {
                say_home(*this);
                say_when_to_call_vet(*this);
            }
            if (m_.moment != owner_moment::after) {
                say_consents(*this);
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
