// The owner's page: what could be done today, and why.
#include <algorithm>

#include "answers/owner_view.hpp"
#include "answers/plan_parts.hpp"
#include "answers/words/skin.hpp"
#include "planner/mats.hpp"

namespace pelage::io {

namespace {

class today_part : owner_view {
  public:
    explicit today_part(const owner_view& v) : owner_view(v), told_(told_of_places(v)) {}

    void say() {
        page_section& s = add(in_visits(g_) ? "What we can do once a vet has seen it, and why"
                                            : "What we can do today, and why");
        grouped<std::string> by_text;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (!told_[i].empty()) {
                by_text.add(told_[i], i);
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
        say_choices(*this);
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
        const bool short_hair =
            coat_.id == coat_class::smooth || coat_.id == coat_class::double_short;
        return !by_comb || short_hair ? "All of it."
               : r_.patient.comb_checked && r_.today && r_.patient.combed_on == r_.today
                   ? "All of it. A fine comb went through the coat down to the skin."
                   : "All of it, if a fine comb goes through down to the "
                     "skin. We check that first.";
    }
    /// What holds for the visit whatever is cut.
    void of_the_visit(strings& lines) const {
        if (may_bite(r_.patient)) {
            const bool face =
                std::any_of(g_.zones.begin(), g_.zones.end(), [&](const zone_plan& z) {
                    return z.how.kind != tool_kind::none && zone_of(z).where == group::head;
                });
            lines.push_back("It may wear a basket muzzle with us." +
                            std::string(face ? " Its face comes last, or stays as it is." : ""));
        }
        if (leaves_mats(r_)) {
            lines.emplace_back("We felt mats. They need a full groom soon.");
        }
        const bool stripped = std::any_of(g_.zones.begin(), g_.zones.end(), [](const zone_plan& z) {
            return z.how.kind == tool_kind::fingers;
        });
        if (stripped && r_.booked != nullptr && !r_.booked->has(service_step::bath)) {
            lines.emplace_back(
                "No bath today: a stripped coat is bathed some days before or after.");
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
                by_text.add(gone_around(g_.zones[i], f), i);
            }
        }
        for (const auto& [text, where] : by_text.all()) {
            out.push_back(sentence_case(named(where)) + ": " + text);
        }
        return out;
    }
    [[nodiscard]] std::string gone_around(const zone_plan& z, const skin_finding& f) const {
        const bool lump = f.state == skin_state::lump;
        const auto over = hair_over(z, r_.rules.refusal);
        const std::string what = !lump ? "a scab" : f.known ? "the lump you know of" : "a lump";
        return what + (f.size ? ", " + long_as(*f.size) : "") + ". We go around it: " +
               (over && lump && !shaved_about(z, r_.rules.refusal)
                    ? "about " + long_as(*over) + " of hair stays over it."
                    : "a tuft stays as it is.") +
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
                const bool as_asked = g_.zones[i].combed_out || told_[i].empty();
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

    strings told_;  ///< of each place that isn't simply as asked
};

}  // namespace

void say_today(const owner_view& v) {
    today_part(v).say();
}

}  // namespace pelage::io
