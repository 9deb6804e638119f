// The owner's page: what is said of each place that doesn't come out simply as asked, and why.
#include <algorithm>

#include "answers/owner_view.hpp"
#include "planner/mats.hpp"

namespace pelage::io {

namespace {

class place_part : owner_view {
  public:
    explicit place_part(const owner_view& v) : owner_view(v) {}

    [[nodiscard]] strings all() const {
        strings out;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            out.push_back(told(i));
        }
        return out;
    }

  private:
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

std::vector<std::string> told_of_places(const owner_view& v) {
    return place_part(v).all();
}

}  // namespace pelage::io
