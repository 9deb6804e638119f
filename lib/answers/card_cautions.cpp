#include "answers/card_cautions.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/plan_parts.hpp"
#include "answers/words/consent.hpp"

namespace pelage::io {

namespace {

bool any_caution(const groom& g, caution_when w) {
    return std::any_of(g.cautions.begin(), g.cautions.end(),
                       [w](const caution_line& l) { return l.what.when == w; });
}

/// Whom it is for, and whether it is nearly every dog's.
bool of_a_place(const caution_line& c) {
    return !c.what.usual && c.what.who != "owner" && !c.where.empty();
}

}  // namespace

bool first_of_all(const caution_line& c) {
    return !c.what.usual && c.where.empty() && c.what.danger == 1;
}

card_cautions::card_cautions(const groom& g, const plan_request& r)
    : g_(g),
      r_(r),
      said_(g.cautions.size()),
      told_at_(g.cautions.size()),
      above_(g.cautions.size()) {}

void card_cautions::told(caution_when w) {
    told_.push_back(w);
}

void card_cautions::told(const caution& c) {
    told_themselves_.push_back(c.id);
}

std::vector<std::string> card_cautions::briefs_of(caution_when w) const {
    std::vector<std::string> out;
    for (const caution_line& c : g_.cautions) {
        if (c.what.when == w) {
            out.push_back(c.what.brief);
        }
    }
    return out;
}

/// What stands above already, or in the step that it is about.
bool card_cautions::told_already(std::size_t k) const {
    const caution_line& c = g_.cautions[k];
    const caution_when w = c.what.when;
    if (g_.stopped()) {  // "a veterinarian sees this dog first" stands above
        return said_[k] || w == caution_when::stop || w == caution_when::skin_finding;
    }
    // mats stand before the bath in the list of steps
    const bool in_a_step = (w == caution_when::combing_out && !g_.combed.empty()) ||
                           (w == caution_when::against_short && steps_show(c)) ||
                           (w == caution_when::mat_in_bath && g_.before > work{});
    const bool in_more_words = w == caution_when::sun && any_caution(g_, caution_when::sun_hours);
    const auto to_agree = [&](consent_for what) {
        return std::any_of(g_.consents.begin(), g_.consents.end(),
                           [&](const consent& one) { return one.what == what && !one.given; });
    };
    // "may come back slowly" is what is agreed to
    const bool asked = (w == caution_when::wire_clipped && to_agree(consent_for::strip_jacket)) ||
                       (w == caution_when::double_jacket_clipped && c.what.danger == 2 &&
                        (to_agree(consent_for::double_jacket) ||
                         (bares_double_coat(g_) && to_agree(consent_for::mats_off))));
    return said_[k] || in_a_step || asked || in_more_words || first_of_all(c) ||
           std::find(told_.begin(), told_.end(), w) != told_.end() ||
           std::find(told_themselves_.begin(), told_themselves_.end(), c.what.id) !=
               told_themselves_.end();
}

/// Whether a step of today goes over its places: those of another day aren't on the card.
bool card_cautions::steps_show(const caution_line& c) const {
    const bool today_alone = g_.bath_waits() || in_visits(g_);
    const zone_list where = zones_of(c);
    return std::any_of(g_.blocks.begin(), g_.blocks.end(), [&](const block& b) {
        return (b.when == list::before_bath || !today_alone) && !b.off &&
               std::any_of(b.zones.begin(), b.zones.end(), [&](std::size_t i) {
                   return std::find(where.begin(), where.end(), i) != where.end();
               });
    });
}

zone_list card_cautions::zones_of(const caution_line& c) const {
    zone_list which;
    for (std::size_t i = 0; i < g_.zones.size(); ++i) {
        if (std::find(c.where.begin(), c.where.end(), g_.zones[i].at) != c.where.end()) {
            which.push_back(i);
        }
    }
    return which;
}

std::string card_cautions::where_of(const caution_line& c) const {
    if (c.what.when == caution_when::fleas) {
        return places_or_whole(r_.reference.dog_body, c.where) + ": ";
    }
    // hurt skin is on places that no plan need have
    const place_words places(g_, r_);
    const zone_list which = zones_of(c);
    return (which.size() == c.where.size()
                ? joined(places.by_part(which), ", ")
                : places.in_parts(titles(r_.reference.dog_body, c.where))) +
           ": ";
}

namespace {

bool hated(caution_when w) {
    return w == caution_when::sensitive || w == caution_when::sensitive_limb;
}
/// How any mat is clipped off, wherever it is.
bool of_every_mat(const caution& c) {
    return c.when == caution_when::clip_under && c.who != "owner" && c.zones.empty();
}

}  // namespace

/// Whether a step would have to say again what one before it said.
bool card_cautions::at_many(std::size_t k, const std::vector<zone_list>& steps) const {
    const caution& c = g_.cautions[k].what;
    if (of_every_mat(c)) {
        return true;
    }
    if (!hated(c.when) && c.when != caution_when::muzzled) {
        return false;
    }
    zone_list told;
    int times = 0;
    for (const zone_list& step : steps) {
        bool fresh = false;
        for (const std::size_t i : zones_of(g_.cautions[k])) {
            const bool here = std::find(step.begin(), step.end(), i) != step.end();
            if (here && (hated(c.when) || std::find(told.begin(), told.end(), i) == told.end())) {
                fresh = true;
                told.push_back(i);
            }
        }
        times += fresh ? 1 : 0;
    }
    return times > 1;
}

/// What is left there for the dog's sake must not be bathed with a mat in it.
std::string card_cautions::mat_left_in(std::size_t k) const {
    const zone_list where = zones_of(g_.cautions[k]);
    const bool matted = std::any_of(where.begin(), where.end(),
                                    [&](std::size_t i) { return g_.zones[i].mat.has_value(); });
    return hated(g_.cautions[k].what.when) && matted ? "; a mat left in: no bath" : "";
}

bool card_cautions::at_none(std::size_t k, const std::vector<zone_list>& steps) const {
    const zone_list where = zones_of(g_.cautions[k]);
    return std::none_of(steps.begin(), steps.end(), [&](const zone_list& step) {
        return std::any_of(where.begin(), where.end(), [&](std::size_t i) {
            return std::find(step.begin(), step.end(), i) != step.end();
        });
    });
}

std::vector<std::string> card_cautions::of_the_dog(const std::vector<zone_list>& steps,
                                                   const std::string& wont_pass) {
    std::vector<std::string> out;
    for (std::size_t k = 0; k < g_.cautions.size(); ++k) {
        const caution_line& c = g_.cautions[k];
        const bool whole = c.where.empty() || c.what.when == caution_when::fleas;
        if (!told_already(k) && !c.what.usual && c.what.who != "owner" && whole) {
            out.push_back(c.what.brief);
            said_[k] = true;
        } else if (!told_already(k) && of_a_place(c) && c.what.danger == 1 && at_none(k, steps)) {
            out.push_back(where_of(c) +
                          c.what.brief);  // else it would stand behind all of today's work
            said_[k] = true;
        } else if (!told_already(k) && of_a_place(c) && at_many(k, steps)) {
            out.push_back(of_every_mat(c.what) ? "mats off: " + c.what.brief +
                                                     (wont_pass.empty() ? "" : "; " + wont_pass)
                                               : where_of(c) + c.what.brief + mat_left_in(k));
            said_[k] = true;
            above_[k] = true;
        }
    }
    return out;
}

namespace {

/// Of dewclaws and teats under a mat; of lids and lips it isn't.
bool of_what_is_felt_for(const caution& c) {
    const auto at = [&](std::string_view zone) {
        return std::find(c.zones.begin(), c.zones.end(), zone) != c.zones.end();
    };
    return c.when == caution_when::clip_under && !c.zones.empty() && !at("eyebrow") &&
           !at("muzzle");
}

/// Dewclaws, toes, teats and legs are where they are.
bool names_its_place(const caution& c) {
    return c.when == caution_when::mat_on_limb || c.when == caution_when::feet_by_blade ||
           c.when == caution_when::bare_blade || of_what_is_felt_for(c);
}

/// Of a place with and without a mat in it the same may be minded, of one of them more.
void leave_out_what_others_say(std::vector<std::string>& all) {
    for (auto one = all.begin(); one != all.end();) {
        const bool said = std::any_of(all.begin(), all.end(), [&](const std::string& other) {
            return &other != &*one && other.starts_with(*one) && (other != *one || &other < &*one);
        });
        one = said ? all.erase(one) : one + 1;
    }
}

/// What of a brief is said again: what is done, not what else may come of it.
std::string told_once_more(const std::string& brief) {
    return brief.substr(0, brief.find(';'));
}

}  // namespace

zone_list card_cautions::not_told(std::size_t k, const zone_list& step) const {
    zone_list out;
    if (above_[k]) {
        return out;
    }
    for (const std::size_t i : zones_of(g_.cautions[k])) {
        const bool here = std::find(step.begin(), step.end(), i) != step.end();
        // a muzzle that was combed out is hated to be scissored, too
        const bool told = !hated(g_.cautions[k].what.when) &&
                          std::find(told_at_[k].begin(), told_at_[k].end(), i) != told_at_[k].end();
        if (here && !told) {
            out.push_back(i);
        }
    }
    return out;
}

std::string card_cautions::on_belly(const zone_list& step) {
    for (std::size_t k = 0; k < g_.cautions.size(); ++k) {
        const zone_list here =
            g_.cautions[k].what.when == caution_when::bare_blade ? not_told(k, step) : zone_list{};
        const bool there = std::any_of(here.begin(), here.end(), [&](std::size_t i) {
            return r_.reference.dog_body.zones[g_.zones[i].at.zone].id == "belly";
        });
        if (there) {
            told_at_[k].insert(told_at_[k].end(), here.begin(), here.end());
            said_[k] = true;
            return g_.cautions[k].what.brief;
        }
    }
    return {};
}

std::string card_cautions::beneath(const zone_list& step) {
    const place_words places(g_, r_);
    grouped<std::string> by;
    for (std::size_t k = 0; k < g_.cautions.size(); ++k) {
        const caution_line& c = g_.cautions[k];
        const bool held_off = c.what.when == caution_when::open_skin ||
                              c.what.when == caution_when::red_skin ||  // of the bath
                              c.what.when == caution_when::fleas;       // of the whole dog
        const bool before = said_[k];
        said_[k] = false;
        const bool elsewhere = told_already(k);
        said_[k] = before;
        if (elsewhere || !of_a_place(c) || held_off) {
            continue;
        }
        const zone_list here = not_told(k, step);
        if (!here.empty()) {
            // the same places as the step's need no name, nor do those that the words name
            by.add(here.size() == step.size() || names_its_place(c.what)
                       ? std::string{}
                       : joined(places.by_part(here), ", ") + ": ",
                   k);
            told_at_[k].insert(told_at_[k].end(), here.begin(), here.end());
        }
    }
    std::vector<std::string> out;
    std::size_t unnamed = 0;
    for (const auto& [where, which] : by.all()) {
        std::vector<std::string> all;
        for (const std::size_t k : which) {
            const std::string& brief = g_.cautions[k].what.brief;
            all.push_back(said_[k] ? told_once_more(brief) : brief + mat_left_in(k));
            said_[k] = true;
        }
        leave_out_what_others_say(all);
        // behind the name of a place it would be read as of that place
        const auto at =
            where.empty() ? out.begin() + static_cast<std::ptrdiff_t>(unnamed++) : out.end();
        out.insert(at, where + joined(all, "; "));
    }
    return joined(out, "; ");
}

void card_cautions::second_time() {
    for (std::size_t k = 0; k < g_.cautions.size(); ++k) {
        const caution& c = g_.cautions[k].what;
        if (of_what_is_felt_for(c) || c.when == caution_when::feet_by_blade ||
            c.when == caution_when::bare_blade) {
            told_at_[k].clear();
        }
    }
}

void card_cautions::say_to_owner(document& page) {
    std::vector<std::string> all;
    int gravest = 5;
    for (std::size_t k = 0; k < g_.cautions.size(); ++k) {
        const caution_line& c = g_.cautions[k];
        if (!told_already(k) && !c.what.usual && c.what.who == "owner") {
            all.push_back(c.what.brief);
            gravest = std::min(gravest, c.what.danger);
        }
    }
    if (!all.empty()) {
        page.add({gravest > 2 ? line_as::notice : line_as::caution, joined(all, "; "),
                  "Tell the owner: ", 0, 2});
    }
}

void card_cautions::say_rest(document& page) {
    grouped<std::string> by;
    std::vector<std::string> usual;
    for (std::size_t k = 0; k < g_.cautions.size(); ++k) {
        const caution_line& c = g_.cautions[k];
        if (told_already(k) || c.what.who == "owner") {
            continue;  // the owner's usual ones stand on the page they take home
        }
        if (c.what.usual) {
            usual.push_back(c.what.brief);
        } else {
            by.add(c.where.empty() ? std::string{} : where_of(c), k);
        }
    }
    for (const auto& [where, which] : by.all()) {
        std::vector<std::string> all;
        for (const std::size_t k : which) {
            all.push_back(g_.cautions[k].what.brief);
        }
        page.add({line_as::caution, where + joined(all, "; "), "! ", 0, 2});
    }
    say_to_owner(page);
    const caution* rules = find(r_.reference.cautions, "local-rules");
    if (usual.empty() && rules != nullptr) {
        // nothing is clipped, and still hands are laid on a dog
        usual.push_back(rules->brief);
    }
    page.add({line_as::notice, joined(usual, ", ") + ".", "As ever: ", 0, 2});
}

}  // namespace pelage::io
