// The owner's page: what could be done today, and why.
#include <algorithm>

#include "answers/choices.hpp"
#include "answers/owner_view.hpp"
#include "answers/plan_parts.hpp"
#include "planner/mats.hpp"

namespace pelage::io {

namespace {

/// The ways to grow back.
class choice_part : owner_view {
  public:
    explicit choice_part(const owner_view& v) : owner_view(v) {}

    /// The ways to grow back, for the owner to choose.
    void say() {
        if (m_.grow_back == nullptr || m_.grow_back->empty()) {
            return;
        }
        const auto& all = *m_.grow_back;
        const auto back = [&](const regrowth_option& w) { return back_in_words(w, o_.units); };
        strings choices;
        for (const regrowth_option& w : all) {
            if (!gains_nothing(w)) {
                std::string text =
                    w.how == grow_back::keep_long
                        ? "Keep the rest long. What is short shows until it has grown: " + back(w) +
                              "."
                        : "Take the " + named(w.down) + " down to about " +
                              even_in_words(w, o_.units) +
                              (is_even(w) ? " too, so that it all grows back even: "
                                          : " too, so that the difference shows less: ") +
                              back(w) + ".";
                if (std::find(choices.begin(), choices.end(), text) == choices.end()) {
                    choices.push_back(std::move(text));
                }
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

  private:
    /// Whether what was matted and what goes down with it come out at one length.
    [[nodiscard]] bool is_even(const regrowth_option& w) const {
        const std::string even = even_in_words(w, o_.units);
        return std::all_of(w.plan.zones.begin(), w.plan.zones.end(), [&](const zone_plan& z) {
            const bool with_it = std::any_of(w.down.begin(), w.down.end(), [&](std::size_t i) {
                return zone_of(i).where == zone_of(z).where;
            });
            return z.came != outcome::clipped_under || !with_it || !z.leaves ||
                   zone_of(z).where == group::prep || show(z.leaves->best, o_.units) == even;
        });
    }
    /// Whether a way before it comes to the same lengths in the same weeks and takes less coat off.
    [[nodiscard]] bool gains_nothing(const regrowth_option& w) const {
        const auto same = [&](const regrowth_option& other) {
            return other.how != grow_back::keep_long &&
                   even_in_words(other, o_.units) == even_in_words(w, o_.units) &&
                   back_in_words(other, o_.units) == back_in_words(w, o_.units);
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
};

class today_part : owner_view {
  public:
    explicit today_part(const owner_view& v) : owner_view(v) {}

    void say() {
        page_section& s = add(in_visits(g_) ? "What we can do once a vet has seen it, and why"
                                            : "What we can do today, and why");
        grouped<std::string> by_text;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (const std::string text = told(i); !text.empty()) {
                by_text.add(text, i);
            }
        }
        strings skin = on_the_skin();
        of_the_visit(skin);
        if (by_text.empty()) {
            s.says.push_back(all_of_it());
            s.lines = skin;
            return;
        }
        s.says.push_back(how_much() + (found_mats()
                                           ? " We found mats. They grow near the skin, under "
                                             "hair that looks fine, and it can take only days."
                                           : " Here it is not quite as you asked:"));
        constexpr std::size_t most = 6;
        const auto& all = by_text.all();
        for (std::size_t n = 0; n < std::min(all.size(), most); ++n) {
            s.lines.push_back(sentence_case(named(all[n].second)) + ": " + all[n].first);
        }
        if (all.size() > most) {
            s.lines.emplace_back("There is a little more. Ask us and we will show you.");
        }
        s.lines.insert(s.lines.end(), skin.begin(), skin.end());
        choice_part(*this).say();
        by_the_kit();
        uneven();
    }

  private:
    /// The bath that was booked waits for a veterinarian's word.
    [[nodiscard]] bool booked_bath_waits() const {
        return r_.booked != nullptr && r_.booked->has(service_step::bath) &&
               bath_for(r_.patient.skin) == bath_care::none;
    }
    /// Where nothing is otherwise than asked.
    [[nodiscard]] std::string all_of_it() const {
        if (booked_bath_waits()) {
            return "Not the bath. The rest of it.";
        }
        const bool by_comb = r_.booked == nullptr || r_.booked->has(service_step::bath) ||
                             r_.booked->has(service_step::brush);
        return !by_comb ? "All of it."
               : r_.patient.comb_checked
                   ? "All of it. A fine comb went through the coat down to the skin."
                   : "All of it, if a fine comb goes through down to the "
                     "skin. We check that first.";
    }
    /// What holds for the visit whatever is cut.
    void of_the_visit(strings& lines) const {
        if (may_bite(r_.patient)) {
            lines.emplace_back(
                "It may wear a basket muzzle with us. Its face comes last, or stays as it is.");
        }
        if (leaves_mats(r_)) {
            lines.emplace_back("We felt mats. They need a full groom soon.");
        }
    }
    /// Whether a way to grow back takes the other side down, too: it is chosen there.
    [[nodiscard]] bool offered_above(std::size_t zone) const {
        return m_.grow_back != nullptr &&
               std::any_of(m_.grow_back->begin(), m_.grow_back->end(), [&](const auto& w) {
                   return std::any_of(w.down.begin(), w.down.end(),
                                      [&](std::size_t i) { return g_.zones[i].at.zone == zone; });
               });
    }
    /// Where the kit falls short and nobody has agreed yet: the ways that the card shows.
    void by_the_kit() {
        if (m_.ways == nullptr || !owner_chooses(g_) || m_.moment == owner_moment::after) {
            return;
        }
        strings lines = lengths_to_choose(g_, *m_.ways, m_.when, r_, o_);
        if (!lines.empty()) {
            page_section& s = add("Not the length agreed: please choose");
            s.how = lines_as::boxes;
            s.lines = std::move(lines);
        }
    }
    /// Pairs that come out uneven: the owner chooses, as the card asks.
    void uneven() {
        for (const uneven_pair& p : g_.asks) {
            if (!p.hurt && offered_above(p.zone)) {
                continue;
            }
            const body& b = r_.reference.dog_body;
            const bool left_longer = !p.left || (p.right && *p.left > *p.right);
            const std::string other = title(b, {p.zone, left_longer ? side::right : side::left});
            const auto said = [&](const std::optional<length>& l) {
                return l ? long_as(*l) : std::string("as it is");
            };
            page_section& s = add(sentence_case(title(b, {p.zone, side::both})) +
                                  " will be uneven: please choose");
            s.how = lines_as::boxes;
            s.lines.push_back("Fine: left " + said(p.left) + ", right " + said(p.right) + ".");
            s.lines.push_back(p.hurt ? "Leave the " + other + " as it is, too."
                                     : "Both at " + long_as(shorter(*p.left, *p.right)) + ".");
        }
    }

    /// What the skin shows that leaves no place: fleas, lumps, scabs.
    [[nodiscard]] strings on_the_skin() const {
        strings out;
        if (!g_.fleas.empty()) {
            out.push_back(
                "We saw fleas (" + places_or_whole(plain_, g_.fleas) + ")." +
                (bath_for(r_.patient.skin) == bath_care::none ? "" : " A flea bath comes first.") +
                " Ask a vet what to give at home.");
        }
        if (stays_dry(r_)) {
            out.emplace_back(
                "No bath today, as the skin is open or wet. Ask a vet when a bath is fine.");
        }
        grouped<std::string> by_text;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            for (const skin_finding& f : g_.zones[i].around) {
                by_text.add(gone_around(f), i);
            }
        }
        for (const auto& [text, where] : by_text.all()) {
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
        if (g_.bath_waits() && g_.after > work{}) {
            return "Only a start today. A mat stays in, and there is no bath over a mat. The rest "
                   "comes "
                   "once it is out.";
        }
        if (booked_bath_waits()) {
            return "Not the bath.";
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
        if (z.why.what == cause::teats) {
            return "we leave it, so that nothing comes near the teats.";
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
                return std::string(
                           "the sound hair comes down with what is matted, so that your dog isn't "
                           "left in patches") +
                       (may_keep_long(m_) ? ", unless you choose otherwise below." : ".");
            case outcome::beyond_reach:
                return "it will be " + long_as(z.leaves->best) +
                       (long_as(least_so(z)) == long_as(z.leaves->best)
                            ? ""
                            : ", or as short as " + long_as(least_so(z))) +
                       ". You asked for " + long_as(*z.target) +
                       (z.why.what == cause::as_its_part && !told_of_kit(z)
                            ? ". So it matches what is round it. Tell us if you mind."
                            : ". We have no better tool for it today. Tell us if you mind.");
            case outcome::as_wished:
            case outcome::left_by_sheet:
                break;
        }
        if (mat_clipped_off(z)) {
            return "a mat comes off before the bath. It will be as long as you asked.";
        }
        return carded(i);
    }
    /// How short places that come out so may be: one sentence for all of them.
    [[nodiscard]] length least_so(const zone_plan& z) const {
        length least = z.leaves->low;
        for (const zone_plan& other : g_.zones) {
            if (other.came == outcome::beyond_reach &&
                long_as(other.leaves->best) == long_as(z.leaves->best)) {
                least = shorter(least, other.leaves->low);
            }
        }
        return least;
    }
    /// Whether a place of the same length and wish is told to lack a tool: one sentence for both.
    [[nodiscard]] bool told_of_kit(const zone_plan& z) const {
        return std::any_of(g_.zones.begin(), g_.zones.end(), [&](const zone_plan& other) {
            return other.came == outcome::beyond_reach && other.why.what != cause::as_its_part &&
                   long_as(*other.target) == long_as(*z.target) &&
                   long_as(other.leaves->best) == long_as(z.leaves->best);
        });
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
        return cuts(how) && z.how.kind == tool_kind::carder
                   ? "we comb the dead hair out and don't clip. A thick coat that is clipped may "
                     "grow back slow or patchy."
                   : std::string{};
    }
};

}  // namespace

bool may_keep_long(const owner_matter& m) {
    return m.grow_back != nullptr && m.grow_back->size() > 1 && m.moment != owner_moment::after &&
           std::any_of(m.grow_back->begin(), m.grow_back->end(),
                       [](const regrowth_option& w) { return w.how == grow_back::keep_long; }) &&
           !m.plan.down.empty();
}

void say_today(const owner_view& v) {
    today_part(v).say();
}

}  // namespace pelage::io
