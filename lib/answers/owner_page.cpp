// What the owner's page says. Short sentences and common words: tests hold its reading ease.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/model/refusal.hpp>

#include "answers/alternatives_text.hpp"
#include "answers/layout.hpp"
#include "answers/owner_page_parts.hpp"
#include "answers/owner_question.hpp"
#include "answers/words/consent.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/when.hpp"
#include "planner/targets.hpp"

namespace pelage::io {

namespace {

using strings = std::vector<std::string>;
using places = std::vector<std::size_t>;

std::string sentence_case(std::string s) {
    if (!s.empty() && s.front() >= 'a' && s.front() <= 'z') {
        s.front() = static_cast<char>(s.front() - 32);
    }
    return s;
}

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

class page_maker {
  public:
    page_maker(const owner_matter& m, const print_options& o)
        : m_(m),
          g_(m.plan),
          r_(m.asked),
          o_(o),
          coat_(coat_of(r_.reference, *r_.patient.coat)),
          ready_(r_),
          wishes_(r_, ready_) {
        page_.name = short_name(r_.patient.name);
    }

    owner_page made() {
        page_.title = page_.name + ": " +
                      (g_.stopped()  ? "a vet first"
                       : g_.question ? "before we clip"
                                     : "today's groom");
        if (o_.today) {
            page_.title += ", " + in_words(*o_.today);
        }
        if (g_.stopped()) {
            stopped();
        } else if (g_.question) {
            say_question(page_, g_, r_);
            agree();
        } else {
            asked();
            today();
            back_then();
            brushing();
            brush_shy();
            vet();
            agree();
        }
        page_.from = whose();
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
        return std::move(page_);
    }

  private:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }
    [[nodiscard]] const zone& zone_of(std::size_t i) const { return zone_of(g_.zones[i]); }
    [[nodiscard]] std::string title_of(std::size_t i) const {
        return title(r_.reference.dog_body, g_.zones[i].at);
    }
    [[nodiscard]] std::string long_as(const length& l) const { return show(l, o_.units); }
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
    /// What the owner told that the owner should see written down. That a dog bites, or how it is held,
    /// is for the groomer's pages.
    [[nodiscard]] strings told_alerts() const {
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
    /// The dog as it stands in a sentence.
    [[nodiscard]] std::string who() const {
        return r_.patient.name.empty() ? "your dog" : page_.name;
    }
    page_section& add(std::string heading) {
        page_.sections.push_back({std::move(heading), {}, {}, lines_as::bullets, false});
        return page_.sections.back();
    }

    template <class Holds>
    [[nodiscard]] places those(Holds holds) const {
        places out;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (holds(g_.zones[i])) {
                out.push_back(i);
            }
        }
        return out;
    }

    /// What the dates on this page mean.
    [[nodiscard]] std::string days_and_weeks() const {
        const bool weeks = m_.grow_back != nullptr && !m_.grow_back->empty();
        return weeks ? "In 8 of 10 such dogs the hair is back in those weeks. "
                     : "Days are what such coats mostly do. ";
    }

    /// A few places by name, many by the parts of the dog.
    [[nodiscard]] std::string named(const places& which) const {
        strings names;
        for (const std::size_t i : which) {
            names.push_back(title_of(i));
        }
        if (names.size() <= 4) {
            return listed(names);
        }
        strings parts;
        for (const group one : {group::body, group::legs, group::tail, group::feet, group::head}) {
            if (std::any_of(which.begin(), which.end(),
                            [&](std::size_t i) { return zone_of(i).where == one; })) {
                parts.emplace_back(name(one));
            }
        }
        if (std::any_of(which.begin(), which.end(),
                        [&](std::size_t i) { return zone_of(i).where == group::prep; })) {
            parts.emplace_back("hidden folds");
        }
        return listed(parts);
    }

    // ---- stopped ----

    void stopped() {
        page_section& why = add("Why we stopped");
        why.says.push_back("We did not groom " + who() +
                           " today. We saw something that a vet should look at first.");
        if (!g_.stop.empty()) {
            why.lines.push_back("The coat is felted tight to the skin here: " +
                                listed(titles(r_.reference.dog_body, g_.stop)) +
                                ". It can hide sores, and it can't come off safely on our table.");
        }
        for (const stop_sign s : g_.signs) {
            why.lines.push_back(r_.reference.stops[static_cast<std::size_t>(s)].seen + ".");
        }
        if (const places sore = those([](const zone_plan& z) {
                return (z.hurt && !z.edge_of_hurt) || !z.around.empty();
            });
            !sore.empty()) {
            why.lines.push_back("The skin is sore or odd here: " + named(sore) + ".");
        }
        strings told = told_alerts();
        if (!r_.patient.health.empty()) {
            told.insert(told.begin(), r_.patient.health);
        }
        if (!told.empty()) {
            why.lines.push_back("You told us: " + joined(told, "; ") + ".");
        }
        page_section& now = add("What to do now");
        now.how = lines_as::steps;
        const bool now_not_today = std::any_of(g_.signs.begin(), g_.signs.end(), at_once);
        now.lines = {"Call a vet now and say what you read here. " +
                         std::string(now_not_today ? "Then go at once." : "Ask to be seen today."),
                     "Keep " + who() + " quiet, not too warm and not too cold."};
        const bool beneath = !g_.stop.empty() ||
                             !those([](const zone_plan& z) { return z.mat.has_value(); }).empty();
        if (beneath || !now_not_today) {
            now.lines.emplace_back(
                "Don't cut, pull or wash the coat at home. Skin lies closer than you think.");
        }
        now.lines.emplace_back("Call us when the vet is happy. We will make a new plan then.");
        page_section& kind = add("Please know");
        kind.says = {std::string("This can happen to any dog. ") +
                     (beneath ? "Felt and sores grow near the skin, where no one can see them. "
                              : "It can come on fast. ") +
                     "You did the right thing when you came."};
    }

    // ---- what was asked ----

    void asked() {
        page_section& s = add("What you asked for");
        const std::array<std::pair<const char*, part>, 6> parts{{{"body", part::body},
                                                                 {"legs", part::legs},
                                                                 {"tail", part::tail},
                                                                 {"feet", part::feet},
                                                                 {"head", part::head},
                                                                 {"ears", part::ears}}};
        std::vector<std::pair<std::int32_t, strings>> by_length;
        const auto put = [&](std::int32_t l, const std::string& whom) {
            const auto at = std::find_if(by_length.begin(), by_length.end(),
                                         [&](const auto& one) { return one.first == l; });
            strings& names =
                (at == by_length.end() ? by_length.emplace_back(l, strings{}) : *at).second;
            if (std::find(names.begin(), names.end(), whom) == names.end()) {
                names.push_back(whom);
            }
        };
        std::vector<std::pair<std::int32_t, std::string>> apart;
        for (const auto& [name, which] : parts) {
            const auto l = most_asked(which);
            if (!l) {
                continue;
            }
            put(*l, name);
            for (std::size_t i = 0; i < g_.zones.size(); ++i) {
                const auto own = wished(i);
                if (part_of(zone_of(i)) == which && own && far_apart(in_hundredths(*own), *l)) {
                    apart.emplace_back(in_hundredths(*own), zone_of(i).title);
                }
            }
        }
        for (const auto& [l, whom] : apart) {
            put(l, whom);
        }
        std::string text = r_.sheet.title;
        for (std::size_t n = 0; n < by_length.size(); ++n) {
            text += (n == 0 ? ": " : "; ") + listed(by_length[n].second) + " " +
                    long_as(mm(by_length[n].first / 100.0));
        }
        s.says.push_back(text + ".");
        if (const strings told = told_alerts(); !told.empty()) {
            s.says.push_back("You told us: " + listed(told) + ".");
        }
    }

    /// The parts an owner speaks of.
    enum class part { body, legs, tail, feet, head, ears, other };
    static part part_of(const zone& z) {
        switch (z.where) {
            case group::body:
                return part::body;
            case group::legs:
                return part::legs;
            case group::tail:
                return z.has(zone_use::tail_band) ? part::other : part::tail;
            case group::feet:
                return part::feet;
            case group::head:
                return z.has(zone_use::ear_leather) ? part::ears
                       : z.edge_of.empty()          ? part::head
                                                    : part::other;
            case group::prep:
                break;
        }
        return part::other;
    }
    /// So unlike that an owner would call it another length: a beard on a short head.
    static bool far_apart(std::int32_t a, std::int32_t b) {
        return std::max(a, b) > 2 * std::min(a, b);
    }

    /// What the owner wished of a place, before mats, skin or a missing signature came between.
    [[nodiscard]] std::optional<length> wished(std::size_t i) const {
        const zone_plan& z = g_.zones[i];
        if (z.target && z.came != outcome::goes_along) {
            return z.target;
        }
        const instruction said = wishes_.at(z.at);
        const finish how = said.how.value_or(finish::clip);
        const bool cut = how == finish::clip || how == finish::comb_then_scissor ||
                         how == finish::scissor || how == finish::thin;
        return cut ? said.target : std::nullopt;
    }

    /// The length that most of a part is asked to be, in hundredths.
    [[nodiscard]] std::optional<std::int32_t> most_asked(part which) const {
        constexpr std::int32_t none = -1;
        std::map<std::int32_t, work> by_length;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (part_of(zone_of(i)) == which) {  // what is left or combed has no length
                const auto l = wished(i);
                by_length[l ? in_hundredths(*l) : none] += zone_of(i).clip_time.best;
            }
        }
        const auto most =
            std::max_element(by_length.begin(), by_length.end(),
                             [](const auto& a, const auto& b) { return a.second < b.second; });
        return most == by_length.end() || most->first == none ? std::nullopt
                                                              : std::optional{most->first};
    }

    // ---- what could be done ----

    void today() {
        page_section& s = add("What we can do today, and why");
        std::vector<std::pair<std::string, places>> by_text;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (const std::string text = told(i); !text.empty()) {
                const auto at = std::find_if(by_text.begin(), by_text.end(),
                                             [&](const auto& one) { return one.first == text; });
                (at == by_text.end() ? by_text.emplace_back(text, places{}) : *at)
                    .second.push_back(i);
            }
        }
        const strings skin = on_the_skin();
        if (by_text.empty()) {
            s.says.push_back(r_.patient.comb_checked
                                 ? "All of it. A fine comb went through the coat down to the skin."
                                 : "All of it, if a fine comb goes through down to the skin. We "
                                   "check that first.");
            s.lines = skin;
            return;
        }
        s.says.push_back(how_much() + (found_mats()
                                           ? " We found mats. They grow near the skin, under "
                                             "hair that looks fine, and it can take only days."
                                           : " Here it is not quite as you asked:"));
        constexpr std::size_t most = 6;
        for (std::size_t n = 0; n < std::min(by_text.size(), most); ++n) {
            s.lines.push_back(sentence_case(named(by_text[n].second)) + ": " + by_text[n].first);
        }
        if (by_text.size() > most) {
            s.lines.emplace_back("There is a little more. Ask us and we will show you.");
        }
        s.lines.insert(s.lines.end(), skin.begin(), skin.end());
        choice();
    }

    /// What the skin shows that leaves no place: fleas, lumps, scabs.
    [[nodiscard]] strings on_the_skin() const {
        strings out;
        if (!g_.fleas.empty()) {
            out.push_back("We saw fleas (" + listed(titles(r_.reference.dog_body, g_.fleas)) +
                          "). A flea bath comes first. Ask a vet what to give at home.");
        }
        std::vector<std::pair<std::string, places>> by_text;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            for (const skin_finding& f : g_.zones[i].around) {
                const std::string text = gone_around(f);
                const auto at = std::find_if(by_text.begin(), by_text.end(),
                                             [&](const auto& one) { return one.first == text; });
                (at == by_text.end() ? by_text.emplace_back(text, places{}) : *at)
                    .second.push_back(i);
            }
        }
        for (const auto& [text, where] : by_text) {
            out.push_back(sentence_case(named(where)) + ": " + text);
        }
        return out;
    }
    [[nodiscard]] std::string gone_around(const skin_finding& f) const {
        const bool lump = f.state == skin_state::lump;
        const std::string what = !lump ? "a scab" : f.known ? "the lump you know of" : "a lump";
        return what + (f.size ? ", " + long_as(*f.size) : "") +
               ". We go around it and leave the hair there a bit longer." +
               (lump && !f.known ? " Please show it to a vet." : "");
    }

    /// How much of the wish comes true, by the clipping time of what it is about: mats combed out, and
    /// those in places that are clipped short anyway, cost nothing of it.
    [[nodiscard]] std::string how_much() const {
        work all{};
        work missed{};
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (zone_of(i).where != group::prep) {
                all += zone_of(i).clip_time.best;
                const bool as_asked = g_.zones[i].combed_out || told(i).empty();
                missed += as_asked ? work{} : zone_of(i).clip_time.best;
            }
        }
        const bool unhurt = those([](const zone_plan& z) { return z.hurt.has_value(); }).empty();
        if (missed == work{} && g_.stuck.empty() && unhurt) {
            return "All of it.";
        }
        return in_mmin(missed) * 2 < in_mmin(all) ? "Most of it." : "Part of it.";
    }

    [[nodiscard]] bool found_mats() const {
        return std::any_of(g_.zones.begin(), g_.zones.end(),
                           [](const zone_plan& z) { return z.mat.has_value(); });
    }

    /// What is said of a place that isn't simply as asked; empty if it is.
    [[nodiscard]] std::string told(std::size_t i) const {
        const zone_plan& z = g_.zones[i];
        if (z.combed_out) {
            return "we comb the knots out by hand, and the hair stays.";
        }
        switch (z.came) {
            case outcome::clipped_under:
                return clipped(i);
            case outcome::skin_left:
                return z.edge_of_hurt
                           ? "it belongs to skin that is sore or odd. We leave it alone too."
                           : "the skin is sore or odd here. We leave it alone until a vet has seen "
                             "it.";
            case outcome::hair_shorter:
                return short_of(z)
                           ? "the hair is " + long_as(*z.now) +
                                 " now. It has to grow before it can be " + long_as(*z.target) + "."
                           : std::string{};
            case outcome::stuck:
                return stuck(i);
            case outcome::off_target:
                return "it will be " + long_as(z.leaves->best) + " and not " + long_as(*z.target) +
                       (z.nearer ? ". It can be " + long_as(*z.nearer) + " if you ask us."
                                 : ". That is the nearest our tools and this style allow.");
            case outcome::goes_along:
                return "it is cut back with the ear beneath, so that no long fringe hangs from a "
                       "short ear.";
            case outcome::taken_down:
                return "the sound hair comes down with what is matted, so that your dog isn't left "
                       "in "
                       "patches.";
            case outcome::beyond_reach:
                return "it will be " + long_as(z.leaves->best) + ", or as short as " +
                       long_as(z.leaves->low) + ". You asked for " + long_as(*z.target) +
                       ". We have no better tool for it today. Tell us if you mind.";
            case outcome::as_wished:
            case outcome::left_by_sheet:
                break;
        }
        if (mat_clipped_off(z)) {
            return "a mat comes off before the bath. It will be as long as you asked.";
        }
        return carded(i);
    }
    static bool short_of(const zone_plan& z) {
        return z.now && z.target && in_hundredths(*z.now) < in_hundredths(*z.target - z.tolerated);
    }
    /// Why a place can't be done, and what will be done about it, in plain words.
    [[nodiscard]] std::string stuck(std::size_t i) const {
        const mat_finding* m = mat_at(r_.patient, g_.zones[i].at);
        const std::string why = m == nullptr ? "we can't do it today as it was asked."
                                : m->free_hair || m->comb_passes
                                    ? "the mat sits too close to the skin for any blade we have."
                                    : "we can't tell yet how close to the skin the mat sits.";
        return why + (m == nullptr ? "" : " We leave it today.") + remedy_set(i);
    }
    /// What would free it, as far as that was worked out.
    [[nodiscard]] std::string remedy_set(std::size_t i) const {
        if (m_.stuck == nullptr) {
            return {};
        }
        const auto at = std::find_if(m_.stuck->begin(), m_.stuck->end(),
                                     [&](const infeasible_zone& c) { return c.zone == i; });
        if (at == m_.stuck->end()) {
            return {};
        }
        const auto does = [&](remedy_kind how) {
            return std::any_of(at->frees.begin(), at->frees.end(), [&](const auto& f) {
                return f.by.size() == 1 && f.by.front().how == how;
            });
        };
        return at->veterinarian              ? " A vet should see it."
               : does(remedy_kind::comb_out) ? " We can comb it out at another visit."
               : does(remedy_kind::blade) || does(remedy_kind::comb)
                   ? " We need a tool that we lack today. Ask us when we have it."
                   : "";
    }
    /// Whether the time for combing out wouldn't have done for this one, too.
    [[nodiscard]] bool no_time_for(const zone_plan& z) const {
        const auto takes = comb_out_work(*z.mat, r_.patient.size, r_.rules.prices);
        work spent{};
        for (const combing_out& c : g_.combed) {
            spent += c.takes;
        }
        return takes && spent + *takes > comb_out_budget(r_.patient, r_.rules.refusal);
    }
    [[nodiscard]] std::string clipped(std::size_t i) const {
        const zone_plan& z = g_.zones[i];
        const bool never = zone_of(i).has(zone_use::never_demat);
        if (zone_of(i).where == group::prep && never) {
            return "we clip the mat off. The skin is thin here, so no one should comb mats out.";
        }
        const std::string left =
            !z.leaves ? ""
            : z.trial ? " We try to clip it off. About " + long_as(z.leaves->best) +
                            " is left then. If no blade passes, a vet must decide."
                      : " We clip it off, and about " + long_as(z.leaves->best) + " is left.";
        return (z.mat == mat_grade::pelt ? "the hair is felted like cloth. A comb would only hurt."
                : never                  ? "no one should comb mats out where skin is so thin."
                : no_time_for(z)
                    ? "to comb out all its mats in one visit is more than your dog should bear."
                    : "we found a mat.") +
               left;
    }
    [[nodiscard]] std::string carded(std::size_t i) const {
        const zone_plan& z = g_.zones[i];
        const auto how = wishes_.at(z.at).how.value_or(finish::clip);
        const bool cut =
            how == finish::clip || how == finish::comb_then_scissor || how == finish::scissor;
        return cut && z.how.kind == tool_kind::carder
                   ? "we comb the dead hair out and don't clip. A thick coat that is clipped may "
                     "grow back slow or patchy."
                   : std::string{};
    }

    /// The ways to grow back, for the owner to choose.
    void choice() {
        if (m_.grow_back == nullptr || m_.grow_back->empty()) {
            return;
        }
        const auto& all = *m_.grow_back;
        const auto back = [&](const regrowth_option& w) {
            return "back at " + long_as(w.to) + " " + weeks_in_words(w.back_in[0], w.back_in[2]);
        };
        strings choices;
        for (const regrowth_option& w : all) {
            if (!gains_nothing(w)) {
                choices.push_back(
                    w.how == grow_back::keep_long
                        ? "Keep the rest long. What is short shows until it has grown: " + back(w) +
                              "."
                        : "Take the " + named(w.down) + " down to about " +
                              even_in_words(w, o_.units) +
                              " too, so that it all grows back even: " + back(w) + ".");
            }
        }
        if (choices.size() == 1) {
            page_.sections.back().lines.push_back("It grows: it will be " + back(all.front()) +
                                                  ".");
            return;
        }
        page_section& s = add("While it grows back: please choose");
        s.how = lines_as::boxes;
        s.lines = std::move(choices);
    }

    /// Whether a way before it comes to the same lengths in the same weeks and takes less coat off.
    [[nodiscard]] bool gains_nothing(const regrowth_option& w) const {
        const auto same = [&](const regrowth_option& other) {
            return other.how != grow_back::keep_long &&
                   even_in_words(other, o_.units) == even_in_words(w, o_.units) &&
                   long_as(other.to) == long_as(w.to) &&
                   weeks_in_words(other.back_in[0], other.back_in[2]) ==
                       weeks_in_words(w.back_in[0], w.back_in[2]);
        };
        for (const regrowth_option& other : *m_.grow_back) {
            if (&other == &w) {
                return false;
            }
            if (w.how != grow_back::keep_long && same(other)) {
                return true;
            }
        }
        return false;
    }

    // ---- when back ----

    void back_then() {
        page_section& s = add("Your next visit");
        if (!m_.when) {
            return;
        }
        const return_date& b = *m_.when;
        s.says.push_back("Please come back by " + come_by_date(b.next_visit, o_) + assumed() + ".");
        if (!mats_by_length(coat_)) {
            s.says.push_back(unmatting());
        } else {
            strings soon;
            soonest(3, soon);
            for (std::string& text : owner_dates(b, held_names(b, g_, r_), soon, r_, o_)) {
                s.says.push_back(std::move(text));
            }
        }
        if (!g_.stuck.empty()) {
            s.says.push_back("That leaves out what is not done yet: " + named(g_.stuck) + ".");
        }
        better_habit(b);
    }

    /// What is said of a coat that doesn't mat as it grows; not that of one that came with mats.
    [[nodiscard]] std::string unmatting() const {
        const bool matted = !r_.patient.mats.empty();
        const std::string begun = matted ? "" : "This coat does not mat as it gets long. But ";
        const std::string coat = matted ? "this coat" : "it";
        return sentence_case(
            begun + (double_coated(coat_.id)
                         ? "dead hair packs in " + coat + ", so it wants combing out by then."
                         : coat + " should not go longer without a good brush and a look at its "
                                  "skin."));
    }
    /// What the date takes for granted of brushing, where nobody said.
    [[nodiscard]] std::string assumed() const {
        const dog& d = r_.patient;
        if (d.brushing_said || !mats_by_length(coat_)) {
            return {};
        }
        return counted(d.brushed) == habit::none ? ", even if no one brushes at home"
                                                 : ", if you brush " + often(counted(d.brushed)) +
                                                       " down to the skin: we took that as given";
    }
    /// What a little more brushing would win.
    void better_habit(const return_date& b) {
        if (m_.ahead == nullptr || !mats_by_length(coat_)) {
            return;
        }
        for (const habit_forecast& h : m_.ahead->habits) {
            const bool more = h.habit.how_often > counted(r_.patient.brushed);
            if (more && h.habit.how_often >= habit::two_or_three &&
                h.when.next_visit > b.next_visit + day(6.0)) {
                page_.sections.back().says.push_back("If you brush " + often(h.habit.how_often) +
                                                     ", down to the skin, it may wait until " +
                                                     come_by_date(h.when.next_visit, o_) + ".");
                return;
            }
        }
    }
    static std::string often(habit h) {
        switch (h) {
            case habit::none:
            case habit::weekly:
                return "once a week";
            case habit::two_or_three:
                return "two or three times a week";
            case habit::every_other_day:
                return "every second day";
            case habit::daily:
                break;
        }
        return "each day";
    }

    // ---- brushing ----

    /// Nothing to brush there for now: sore, clipped off with a mat, or its mat still in.
    [[nodiscard]] static bool rests(const zone_plan& z) {
        return z.hurt || z.came == outcome::clipped_under || z.came == outcome::goes_along ||
               z.came == outcome::stuck;
    }
    [[nodiscard]] bool hated(const place& p) const {
        const auto& all = r_.patient.sensitive;
        return std::any_of(all.begin(), all.end(), [&](const std::string& word) {
            const selection* meant = ready_.top().parts().find(word);
            return meant != nullptr &&
                   std::any_of(meant->places.begin(), meant->places.end(),
                               [&](const place& one) { return share_side(one, p); });
        });
    }

    /// Adds a place by its name, once and at most so many; both sides of a pair as one unless one rests.
    void put(const zone_plan& z, std::size_t most, strings& names) const {
        const body& b = r_.reference.dog_body;
        if (rests(z) || hated(z.at) || names.size() >= most) {
            return;
        }
        const bool one_rests = std::any_of(
            g_.zones.begin(), g_.zones.end(),
            [&](const zone_plan& other) { return other.at.zone == z.at.zone && rests(other); });
        const std::string t = title(b, one_rests ? z.at : place{z.at.zone, side::both});
        if (std::find(names.begin(), names.end(), t) == names.end()) {
            names.push_back(t);
        }
    }
    /// The places that mat first as they are left today.
    void soonest(std::size_t most, strings& names) const {
        if (m_.ahead == nullptr || !mats_by_length(coat_)) {
            return;
        }
        for (const zone_forecast& f : m_.ahead->zones) {
            const auto z = std::find_if(g_.zones.begin(), g_.zones.end(),
                                        [&](const zone_plan& one) { return one.at == f.at; });
            if (z != g_.zones.end()) {
                put(*z, most, names);
            }
        }
    }
    /// The places to look at first: where mats were combed out today, then the first to mat.
    [[nodiscard]] strings first_places(std::size_t most) const {
        strings names;
        for (const zone_plan& z : g_.zones) {
            if (z.mat && z.combed_out) {
                put(z, most, names);
            }
        }
        soonest(most, names);
        return names;
    }

    /// What not to brush, and what only in small steps.
    void spare(page_section& s) const {
        const places bare =
            those([](const zone_plan& z) { return z.came == outcome::clipped_under; });
        const places sore = those([](const zone_plan& z) { return z.hurt.has_value(); });
        const places matted = those([&](const zone_plan& z) {
            return z.came == outcome::stuck && mat_at(r_.patient, z.at) != nullptr;
        });
        const places shy = those([&](const zone_plan& z) {
            return hated(z.at) && !rests(z) && zone_of(z).where != group::prep;
        });
        if (!bare.empty()) {
            s.says.push_back("Let these rest till the hair is back: " + named(bare) + ".");
        }
        if (!sore.empty()) {
            s.says.push_back("Keep off these till a vet has seen them: " + named(sore) + ".");
        }
        if (!matted.empty()) {
            s.says.push_back("Leave the mats here to us: " + named(matted) + ".");
        }
        if (!shy.empty()) {
            s.says.push_back("Last, and in small steps: " + named(shy) + ".");
        }
    }

    /// How often such a coat wants it: common practice (long daily, curly every other day or at the
    /// least two or three times a week, short weekly).
    [[nodiscard]] habit wanted() const {
        if (!mats_by_length(coat_)) {
            return habit::weekly;
        }
        const length most = r_.rules.matting.daily_only_above.best;
        const bool long_one = std::any_of(g_.zones.begin(), g_.zones.end(), [&](const auto& z) {
            return z.leaves && z.leaves->best > most;
        });
        return long_one || r_.patient.coat_change ? habit::daily : habit::two_or_three;
    }

    void brushing() {
        page_section& s = add("Brushing at home");
        const habit want = std::max(wanted(), counted(r_.patient.brushed));
        const strings where = first_places(4);
        s.says.push_back(
            (r_.patient.coat_change && mats_by_length(coat_)
                 ? "The adult coat comes in now and mats fast. Brush "
                 : "Brush ") +
            often(want) +
            (bears_less(r_.patient) ? ", a few minutes at a time." : ", for ten minutes or so.") +
            (where.empty() ? ""
                           : " Start where mats start on this dog: " + listed(where) +
                                 ". Then do the rest."));
        spare(s);
        s.how = lines_as::steps;
        if (coat_.id == coat_class::smooth) {
            s.lines = {"Take a soft brush or a rubber one.",
                       "Go with the hair, from neck to tail, then down the legs.",
                       "Feel for lumps, scabs and sore spots as you go."};
        } else {
            s.lines = {"Mist the hair with water or a coat spray. Dry hair breaks.",
                       "Lift it with one hand. Brush it down in lines a finger wide.",
                       "Go line by line, each time from the skin to the tip.",
                       "Last, take a comb. It must slide from the skin to the tip. Only then is it "
                       "done."};
            s.lines.emplace_back(mats_by_length(coat_)
                                     ? "If the comb stops, hold the hair at the skin and tease the "
                                       "knot from its tip. Never wash a knot: it gets tight."
                                     : "Get the soft coat beneath out. It is what packs.");
        }
        s.beside = true;
    }

    void brush_shy() {
        page_section& s = add("If it does not like the brush");
        s.beside = true;
        s.says.emplace_back(
            "Small steps, once a day, and stop while it is still calm. Give a "
            "treat each time. If it pulls away, go back a week.");
        const auto week = [&](int n) {
            const std::string w = "Week " + std::to_string(n);
            return o_.today ? w + ", from " + short_day(plus(*o_.today, day(7.0 * (n - 1)))) : w;
        };
        const std::string touchy = sensitive();
        s.lines = {week(1) + ": it sniffs the brush. Touch its " + easy_place() + " with it.",
                   week(2) + ": three strokes where it minds least.",
                   week(3) + ": one minute, and " +
                       (legs_are_easy() ? "on to the legs." : "a little further each day."),
                   week(4) + ": one stroke " +
                       (touchy.empty() ? "where it minds most" : "at the " + touchy) +
                       ", then rest."};
    }
    [[nodiscard]] bool easy(const zone_plan& z) const { return !rests(z) && !hated(z.at); }
    /// Where the brush may touch first: sound, not just clipped off, and not hated.
    [[nodiscard]] std::string easy_place() const {
        for (const char* id : {"back", "shoulder", "chest", "rump"}) {
            if (std::none_of(g_.zones.begin(), g_.zones.end(),
                             [&](const zone_plan& z) { return zone_of(z).id == id && !easy(z); })) {
                return id;
            }
        }
        return "side";
    }
    [[nodiscard]] bool legs_are_easy() const {
        return std::all_of(g_.zones.begin(), g_.zones.end(), [&](const zone_plan& z) {
            return zone_of(z).where != group::legs || easy(z);
        });
    }
    [[nodiscard]] std::string sensitive() const {
        if (r_.patient.sensitive.empty()) {
            return {};
        }
        strings words;
        for (const std::string& word : r_.patient.sensitive) {
            const selection* meant = ready_.top().parts().find(word);
            if (words.size() < 2 && meant != nullptr) {
                words.push_back(meant->places.size() == 1
                                    ? title(r_.reference.dog_body, meant->places.front())
                                    : word);
            }
        }
        return listed(words);
    }
    /// "26 November", "3 December".
    static std::string short_day(const date& d) {
        const std::string full = in_words(d);
        return full.substr(0, full.rfind(' '));
    }

    // ---- after the groom ----

    void vet() {
        page_section& s = add("Call a vet if");
        strings lines;
        const auto has = [&](caution_when w) {
            return std::any_of(g_.cautions.begin(), g_.cautions.end(),
                               [&](const caution_line& c) { return c.what.when == w; });
        };
        if (has(caution_when::matted_ears_or_tail)) {
            lines.emplace_back(
                "an ear or the tail swells or feels hot, or the head won't stop "
                "shaking: the same day. Blood rushes back when tight mats come off");
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
            lines.emplace_back("no vet has yet seen what we left alone: this week");
        }
        if (has(caution_when::lump_new)) {
            lines.emplace_back("no vet has yet seen the lump we felt: soon");
        }
        for (const std::string& l : lines) {
            s.lines.push_back(sentence_case(l) + ".");
        }
    }

    // ---- consent ----

    [[nodiscard]] std::string plainly(const consent& c) const {
        if (c.id == "clip-down") {
            const std::string where = shorter_by_mats(g_, r_);
            return "Mats may be clipped off short. " +
                   (where.empty() ? "" : "These come out shorter than you asked: " + where + ". ") +
                   "Skin under mats can be red, bruised or sore "
                   "and may get a nick. Sores can come to light. The dog may feel odd for a while.";
        }
        if (c.id == "frail-dog") {
            return "My dog is old, ill or has thin skin. It may tire or get hurt more easily. "
                   "You stop when it has had enough, even if the groom is not done.";
        }
        if (c.id == "show-blades") {
            return "You may use very short blades on the face and feet. The skin may get red.";
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
        if (g_.consents.empty()) {
            return;
        }
        strings agreed;
        strings open;
        for (const consent& c : g_.consents) {
            (c.given ? agreed : open).push_back(plainly(c));
        }
        if (!agreed.empty()) {
            add("You have agreed to this").lines = agreed;
        }
        if (open.empty()) {
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

    const owner_matter& m_;
    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    const coat& coat_;
    ready_kit ready_;
    wishes_by_place wishes_;
    owner_page page_;
};

}  // namespace

owner_page page_of(const owner_matter& m, const print_options& o) {
    return page_maker(m, o).made();
}

}  // namespace pelage::io
