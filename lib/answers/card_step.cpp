#include "answers/card_step.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/layout.hpp"
#include "answers/under_mats.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

using strings = std::vector<std::string>;

class step_writer {
  public:
    step_writer(const block& b, std::optional<direction> said, const groom& g,
                const plan_request& r, length_unit u)
        : b_(b), said_(said), g_(g), r_(r), u_(u), places_(g, r) {}

    card_step of(const block* last) {
        card_step out;
        out.hold = hold(last);
        out.leaves = b_.how.kind == tool_kind::clip ? leaves() : "";
        find_exceptions(out);
        out.where = aimed() ? by_aim() : named(b_.zones);
        strings apart;
        for (const exception& e : exceptions_) {
            if (!e.told) {
                apart.push_back(joined(e.names, ", ") + ": " + e.text);
            }
        }
        below(out, std::move(apart));
        short_against(out);
        if (b_.how.kind == tool_kind::fingers) {
            out.all_of_it += (out.all_of_it.empty() ? "" : "; ") +
                             std::string(
                                 "what is ripe, a few hairs at a time; what holds stays; "
                                 "pink: stop");
        }
        if (b_.how.kind == tool_kind::carder) {
            const bool soft = b_.how.called == "rubber curry";
            const std::string minded =
                sheds() ? (soft ? "" : "not over bone or thin skin")
                : soft  ? "lightly; pink: stop"
                        : "short light strokes, not over bone or thin skin; pink: stop";
            out.all_of_it += (out.all_of_it.empty() || minded.empty() ? "" : "; ") + minded;
        }
        strings on_the_way;
        runs_hot(on_the_way);
        below(out, std::move(on_the_way));
        if (b_.how.kind == tool_kind::clip && !b_.how.over && skips(b_.how.tool)) {
            out.all_of_it += (out.all_of_it.empty() ? "" : "; ") +
                             std::string("skip teeth: on firm, flat skin only");
        }
        return out;
    }

  private:
    struct exception {
        std::string text;
        strings names;
        bool told = false;  ///< beside the name of its place
    };

    /// A line of its own, of all these.
    static void below(card_step& out, strings said) {
        if (!said.empty()) {
            out.exceptions.push_back(joined(said, "; "));
        }
    }
    /// How a shedding coat is carded stands above, before any tool.
    [[nodiscard]] bool sheds() const {
        return std::any_of(g_.cautions.begin(), g_.cautions.end(), [](const caution_line& c) {
            return c.what.when == caution_when::shedding;
        });
    }

    /// The places by parts; what is said of one alone stands beside its name.
    [[nodiscard]] strings named(const zone_list& zones) {
        strings names = places_.by_part(zones);
        for (exception& e : exceptions_) {
            const auto at = e.names.size() == 1 && !e.told
                                ? std::find(names.begin(), names.end(), e.names.front())
                                : names.end();
            if (at != names.end()) {
                *at += " (" + e.text + ")";
                e.told = true;
            }
        }
        return names;
    }
    /// What stays in the hand is named in short; the way is said where it isn't that of the step before.
    [[nodiscard]] std::string hold(const block* last) const {
        if (b_.how.kind != tool_kind::clip) {
            return title_words(b_.how, u_) + (b_.off ? "" : then_words(b_, r_));
        }
        if (last != nullptr && b_.done == finish::comb_then_scissor && !b_.off &&
            held(last->how) == held(b_.how) && last->how.way == b_.how.way) {
            return (b_.how.over ? "comb " + comb_words(b_.how.over->id, u_)
                                : held_words(b_.how, u_)) +
                   " again, then scissor";
        }
        return (b_.how.over ? "comb " + comb_words(b_.how.over->id, u_) + " over " + b_.how.tool.id
                            : held_words(b_.how, u_)) +
               (said_ == b_.how.way ? "" : ", " + std::string(name(b_.how.way))) +
               (b_.off ? "" : then_words(b_, r_));
    }
    [[nodiscard]] bool aimed() const {
        return b_.how.kind == tool_kind::scissors || b_.how.kind == tool_kind::thinners;
    }
    /// What the clipper leaves, from where it leaves least to where most; nothing where the comb's own name
    /// says it.
    [[nodiscard]] std::string leaves() const {
        std::optional<ends> best;
        std::optional<ends> all;
        const auto widen = [](std::optional<ends>& e, const length& low, const length& high) {
            e = e ? ends{shorter(e->low, low), longer(e->high, high)} : ends{low, high};
        };
        for (const std::size_t i : b_.zones) {
            if (const auto& left = left_in(b_, g_.zones[i])) {
                const ends e = ends_in_brief(*left);
                widen(best, left->best, left->best);
                widen(all, e.low, e.high);
            }
        }
        if (!best) {
            return {};
        }
        if (std::string apart = few_apart(*all); !apart.empty()) {
            return apart;
        }
        const std::string low = show(best->low, u_);
        const std::string spread = bare(all->low) + " to ";
        if (low != show(best->high, u_)) {
            return spread + show(all->high, u_);
        }
        if (show(all->low, u_) != show(all->high, u_)) {
            return "about " + low + " (" + kept_together(spread + bare(all->high)) + ")";
        }
        const bool named = b_.how.over && comb_words(b_.how.over->id, u_) == low;
        return named ? "" : low;
    }
    /// "about 3 mm (1.5 to 4; pads 1.5 mm)": where a few places of many are left at another length and the range of all
    /// would hide what the others are. Nothing where it wouldn't.
    [[nodiscard]] std::string few_apart(const ends& all) const {
        grouped<std::string> by;
        for (const std::size_t i : b_.zones) {
            if (const auto& left = left_in(b_, g_.zones[i])) {
                by.add(show(left->best, u_), i);
            }
        }
        if (by.all().size() < 2 || all.high <= 2.0 * all.low) {
            return {};
        }
        const auto usual = std::max_element(
            by.all().begin(), by.all().end(),
            [](const auto& a, const auto& b) { return a.second.size() < b.second.size(); });
        ends e = ends_in_brief(*left_in(b_, g_.zones[usual->second.front()]));
        for (const std::size_t i : usual->second) {
            const ends one = ends_in_brief(*left_in(b_, g_.zones[i]));
            e = {shorter(e.low, one.low), longer(e.high, one.high)};
        }
        std::string apart;
        std::size_t told = 0;
        for (const auto& [left, where] : by.all()) {
            if (left != usual->first) {
                const strings names = places_.by_part(where);
                told += names.size();
                apart += "; " + joined(names, ", ") + " " + left;
            }
        }
        constexpr std::size_t few = 2;  // places: more aren't told apart at a look
        return told > few || bare(e.low) == bare(e.high)
                   ? std::string{}
                   : "about " + usual->first + " (" +
                         kept_together(bare(e.low) + " to " + bare(e.high)) + apart + ")";
    }
    [[nodiscard]] std::string bare(const length& l) const {
        return u_ == length_unit::mm ? number(l) : fraction_of_inch(l);
    }
    /// "25 mm skirt, muzzle", "38 mm tail": places that are aimed at one length, together.
    [[nodiscard]] strings by_aim() {
        grouped<std::string> by;
        for (const std::size_t i : b_.zones) {
            const auto& left = g_.zones[i].leaves;
            by.add(left ? show(left->best, u_) : std::string{}, i);
        }
        strings out;
        for (const auto& [aim, where] : by.all()) {
            strings names = named(where);
            // a place behind a bracket is read as of it
            std::stable_partition(names.begin(), names.end(), [](const std::string& one) {
                return one.find(" (") == std::string::npos ||
                       one.find(" (not ") != std::string::npos;
            });
            // "3 mm ear", "edges" below: a length isn't read beside another place
            const std::string first = aim + (aim.empty() ? "" : " ") + names.front();
            const std::size_t end = std::min(first.find(" ("), first.size());
            names.front() = kept_together(first.substr(0, end)) + first.substr(end);
            out.push_back(joined(names, ", "));
        }
        return {joined(out, "; ")};
    }

    /// A bare blade that is due to be felt before its places are done; a comb keeps a warm one off the skin.
    void runs_hot(strings& out) const {
        const work due = r_.rules.refusal.oil_after.best;
        if (b_.how.kind == tool_kind::clip && !b_.how.over && b_.running > due + due) {
            out.push_back("by then about " + detail::whole_minutes(b_.running) +
                          " min on this blade: feel it often, cool it every " +
                          detail::whole_minutes(due) + " min");
        }
    }

    /// What is minded of a short blade against the lay.
    void short_against(card_step& out) const {
        for (const caution_line& c : g_.cautions) {
            const bool here = std::any_of(b_.zones.begin(), b_.zones.end(), [&](std::size_t i) {
                return std::find(c.where.begin(), c.where.end(), g_.zones[i].at) != c.where.end();
            });
            if (c.what.when == caution_when::against_short && here && !b_.off &&
                b_.how.kind == tool_kind::clip) {
                out.hold += " (" + c.what.brief + ")";
            }
        }
    }

    void find_exceptions(card_step& out) {
        grouped<std::string> by;
        for (const std::size_t i : b_.zones) {
            for (const std::string& text : said_of(g_.zones[i])) {
                by.add(text, i);
            }
        }
        for (const auto& [text, where] : by.all()) {
            if (where.size() == b_.zones.size()) {
                // behind the last place it would be read as of that alone
                const bool of_all = b_.zones.size() > 1 && detail::is_digit(text.front());
                out.all_of_it +=
                    (out.all_of_it.empty() ? "" : "; ") + std::string(of_all ? "all " : "") + text;
            } else {
                exceptions_.push_back({text, places_.by_part(where)});
            }
        }
    }
    [[nodiscard]] strings said_of(const zone_plan& z) const {
        strings out;
        if (std::string text = cause(z); !text.empty()) {
            out.push_back(std::move(text));
        }
        // the hand is at the step by then, not at the top of the card
        for (const skin_finding& f : z.around) {
            const auto over = hair_over(z, r_.rules.refusal);
            const bool by_hand = over && !shaved_about(z, r_.rules.refusal);
            out.emplace_back(f.state == skin_state::scab ? "round the scab"
                             : by_hand ? "round the lump, over it about " + show(*over, u_) +
                                             " by scissors over a comb"
                                       : "round the lump");
        }
        if (!z.beside_hurt.empty()) {
            out.emplace_back("short of the sore edge");
        }
        if (b_.off) {
            return out;
        }
        if (aimed() && r_.reference.dog_body.zones[z.at.zone].id == "eyebrow") {
            out.emplace_back("points off the eye");
        }
        if (aimed() && beside_felted_ear(z)) {
            out.emplace_back("only along your finger");
        }
        if (!z.note.empty() && z.came != outcome::goes_along) {
            out.push_back(z.off_by ? "again: " + z.note : z.note);
        }
        return out;
    }
    /// What is tried next there; of all mats alike it stands above.
    [[nodiscard]] std::string if_it_sticks(const zone_plan& z) const {
        const bool apart = b_.when == list::before_bath && next_blades(g_, r_, u_).all().size() > 1;
        const std::string next = apart ? next_blade(r_, z, u_) : "";
        return !apart ? "" : "; won't pass: " + (next.empty() ? "nothing else" : next);
    }
    /// The edge of an ear that mats came off: the leather is felt beneath the hair before the points go there.
    [[nodiscard]] bool beside_felted_ear(const zone_plan& z) const {
        const auto& zones = r_.reference.dog_body.zones;
        return zones[z.at.zone].id == "ear-edge" &&
               std::any_of(g_.zones.begin(), g_.zones.end(), [&](const zone_plan& ear) {
                   return zones[ear.at.zone].id == "ear" && ear.mat && !ear.combed_out &&
                          (ear.at.which == z.at.which || ear.at.which == side::both ||
                           z.at.which == side::both);
               });
    }
    [[nodiscard]] std::string cause(const zone_plan& z) const {
        if (b_.off && z.mat) {  // how it comes off stands above
            return std::string(in_words(*z.mat)) + if_it_sticks(z);
        }
        if (b_.off) {
            return {};  // beside mats, down to their length: who signs it is told why
        }
        if (z.off_by && (z.came == outcome::clipped_under || z.came == outcome::taken_down)) {
            return std::string(once_more_words(r_));
        }
        switch (z.why.what) {
            case cause::mat_off:
                return std::string(in_words(*z.mat)) + if_it_sticks(z);
            case cause::missed:
                return in_hand(z) ? "" : missed_in_brief(z, u_);
            case cause::as_its_part:
            case cause::goes_along:  // its length stands in the line
            case cause::scissored:
                return {};
            case cause::hair_at_wish:
            case cause::hair_below_wish:
                return z.tidied ? "only what stands out" : "";
            default:
                return cause_words(r_, z, u_);
        }
    }

    /// A millimetre by scissors is no miss that a hand could mend.
    [[nodiscard]] static bool in_hand(const zone_plan& z) {
        return z.how.kind == tool_kind::scissors && z.leaves && z.target &&
               z.leaves->best > *z.target && z.leaves->best - *z.target <= mm(1.0);
    }

    const block& b_;
    std::optional<direction> said_;
    const groom& g_;
    const plan_request& r_;
    length_unit u_;
    place_words places_;
    std::vector<exception> exceptions_;
};

}  // namespace

std::string card_step::in_a_line() const {
    const bool short_one = leaves.find('(') == std::string::npos;  // a range is read in one line
    return hold +
           (leaves.empty() ? "" : ", leaves " + (short_one ? kept_together(leaves) : leaves)) +
           ": " + joined(where, ", ") + (all_of_it.empty() ? "" : " (" + all_of_it + ")");
}

card_step card_step_of(const block& b, const block* last, std::optional<direction> said,
                       const groom& g, const plan_request& r, length_unit u) {
    return step_writer(b, said, g, r, u).of(last);
}

bool once_more(const block& b, const groom& g) {
    return b.when == list::after_bath &&
           std::all_of(b.zones.begin(), b.zones.end(),
                       [&](std::size_t i) { return g.zones[i].off_by.has_value(); });
}

bool combs_by_a_lump(const groom& g) {
    return std::any_of(g.combed.begin(), g.combed.end(), [&](const combing_out& one) {
        const auto& around = g.zones[one.zone].around;
        return std::any_of(around.begin(), around.end(),
                           [](const skin_finding& f) { return f.state == skin_state::lump; });
    });
}

bool goes_over(const block& b, group part, const groom& g, const plan_request& r) {
    return std::any_of(b.zones.begin(), b.zones.end(), [&](std::size_t i) {
        return r.reference.dog_body.zones[g.zones[i].at.zone].where == part;
    });
}

}  // namespace pelage::io
