// What is left on a coat, and what leaves it in place of another.
#include <algorithm>
#include <iterator>

#include <pelage/planner/kit_setups.hpp>

#include "kit/lookup_near.hpp"
#include "kit/quiz_parts.hpp"

namespace pelage {

namespace {

/// The kit while that blade is away; the combs on it go with it.
kit without(kit k, const std::string& blade) {
    std::erase_if(k.blades, [&](const kit_blade& b) { return b.spec.id == blade; });
    return k;
}

class of_lengths {
  public:
    of_lengths(quiz_list& to, const quiz_drawer& d) : to_(to), d_(d), r_(d.asked) {}

    void all() {
        for (const coat& c : r_.reference.coats) {
            if (c.jacket == jacket_finish::clip) {
                lengths(c);
                substitutes(c);
                combs_for(c);
            }
        }
    }

  private:
    [[nodiscard]] double lay(coat_class c) const { return lay_of(r_.reference, r_.rules, c).best; }
    [[nodiscard]] finished leaves(const setup& s, coat_class c) const {
        return cut_length(s, lay(c), r_.rules.cut);
    }

    /// Whether a plan would take the one length for the other.
    [[nodiscard]] bool near_enough(const length& wanted, const length& l) const {
        return gap(l, wanted) <= tolerance(wanted, false, r_.rules.prices);
    }

    /// By so much that nobody has to weigh hundredths of a guess.
    [[nodiscard]] bool clearly_off(const length& wanted, const length& l) const {
        constexpr double share = 1.5;  // of what a plan takes for the same; our choice
        return gap(l, wanted) > share * tolerance(wanted, false, r_.rules.prices);
    }
    /// Whether one of these is nearer than `right` to what the comb is called by: else its name is the answer.
    template <class Is>
    [[nodiscard]] static bool misleads(const std::vector<quiz_option>& wrong, Is nearer) {
        return std::any_of(wrong.begin(), wrong.end(), nearer);
    }

    /// Whether what is left reads like the tool's own name: who reads the question reads the answer.
    [[nodiscard]] static bool answers_itself(const rung& g) {
        return g.how.over && !read_apart(g.leaves.best, g.how.over->stated.best);
    }

    /// A setup and what it leaves of a coat.
    [[nodiscard]] quiz_option option_of(const setup& s, coat_class c) const {
        quiz_option o{s, {}, {}};
        o.leaves = leaves(s, c);
        return o;
    }

    /// What may go wherever that coat is clipped, or on its firm parts.
    [[nodiscard]] std::vector<rung> usual_rungs(const coat& c) const {
        lookup_request ask = d_.asking(d_.whole);
        ask.coat = c.id;
        const ladder l = whole_ladder(ask);
        std::vector<rung> out;
        for (const rung& g : l.rungs) {
            const bool there = g.whole_coat || (g.where && l.places[*g.where].firm_skin_only);
            if (there && g.how.tool.etched != "50" && g.leaves.best <= longest_terminal(c).best) {
                out.push_back(g);
            }
        }
        return out;
    }

    [[nodiscard]] std::vector<known_figure> basis_of(const setup& s, const coat& c) const {
        return {{lookup_figure::stated_length, stated_length(s, r_.rules.cut).why},
                s.over
                    ? known_figure{lookup_figure::lay_of_combs, r_.rules.cut.comb_share.why}
                    : known_figure{lookup_figure::lay_of_blades, r_.rules.cut.blade_long_share.why},
                {lookup_figure::lay_angle, lay_of(r_.reference, r_.rules, c.id).why}};
    }

    void lengths(const coat& c) {
        const auto rungs = usual_rungs(c);
        std::vector<length> all;
        for (const rung& g : rungs) {
            all.push_back(g.leaves.best);
        }
        for (const rung& g : rungs) {
            if (answers_itself(g)) {
                continue;
            }
            const bool with = g.how.way == direction::with_lay;
            setup turned = g.how;
            turned.way = direction::with_lay;
            const finished lain = leaves(turned, c.id);
            if (!with && near_enough(lain.best, g.leaves.best)) {
                continue;  // the way makes no difference that a plan would mind
            }
            quiz_question q;
            q.topic = with ? quiz_topic::lengths : quiz_topic::ways;
            q.asks = with ? quiz_asks::left_by : quiz_asks::against;
            q.tool = g.how;
            q.coat = c.id;
            if (!with) {
                q.with = lain;
            }
            q.right = {g.leaves.best, {}, g.leaves};
            q.wrong = with ? beside_left(g, c.id, all) : shorter_than(lain.best, g.leaves, all);
            q.sure = basis_of(g.how, c);
            const auto nearer = [&](const quiz_option& o) {
                const length& called = g.how.over->stated.best;
                return gap(std::get<length>(o.says), called) <= gap(g.leaves.best, called);
            };
            if (with && g.how.over && !misleads(q.wrong, nearer)) {
                continue;
            }
            to_.add(std::move(q),
                    {held(g.how), std::string(name(g.how.way)), std::string(name(c.id))});
        }
    }

    /// The range that no plan would tell from what is left.
    [[nodiscard]] finished widened(const finished& f) const {
        const length near = tolerance(f.best, false, r_.rules.prices);
        return {shorter(f.low, f.best - near), f.best, longer(f.high, f.best + near)};
    }
    /// Lengths that aren't left; of a comb first what it would leave if its teeth lifted no hair.
    [[nodiscard]] std::vector<quiz_option> beside_left(const rung& g, coat_class c,
                                                       const std::vector<length>& all) const {
        const finished near = widened(g.leaves);
        std::vector<quiz_option> out = other_lengths(near, all);
        if (g.how.over) {
            setup lying = g.how;
            lying.over.reset();
            lying.tool.stated = stated_length(g.how, r_.rules.cut);
            const auto beyond = other_lengths(near, {leaves(lying, c).best});
            out.insert(out.begin(), beyond.begin(), beyond.end());
        }
        return out;
    }
    /// Lengths that aren't left against the lay, and shorter than with it; none where there aren't enough: nobody
    /// thinks of longer ones.
    [[nodiscard]] std::vector<quiz_option> shorter_than(const length& lain, const finished& left,
                                                        const std::vector<length>& all) const {
        std::vector<length> below;
        std::copy_if(all.begin(), all.end(), std::back_inserter(below),
                     [&](const length& l) { return l < lain; });
        std::vector<quiz_option> out = other_lengths(widened(left), below);
        constexpr std::size_t enough = 2;
        return out.size() < enough ? std::vector<quiz_option>{} : out;
    }

    /// "7" and "7F": the name alone tells that the one stands in for the other.
    [[nodiscard]] static bool same_number(const blade& a, const blade& b) {
        const auto number = [](const std::string& etched) {
            return etched.substr(0, etched.find_first_not_of("0123456789"));
        };
        return number(a.etched) == number(b.etched);
    }

    void substitutes(const coat& c) {
        for (const rung& g : usual_rungs(c)) {
            if (g.how.over || g.how.way != direction::with_lay) {
                continue;
            }
            const kit rest = without(r_.tools, g.how.tool.id);
            const auto near =
                others(d_.asking(rest), g.how, g.leaves.best, c.id, direction::with_lay);
            const auto best = std::find_if(near.begin(), near.end(), [](const near_setup& n) {
                return n.at_hand && !n.why_not;
            });
            if (best == near.end() ||
                (!best->how.over && same_number(best->how.tool, g.how.tool))) {
                continue;
            }
            quiz_question q;
            q.topic = quiz_topic::substitutes;
            q.asks = quiz_asks::in_place_of;
            q.tool = g.how;
            q.coat = c.id;
            q.with = g.leaves;
            q.right = option_of(best->how, c.id);
            q.zone = firm_and_flat();  // skip teeth go nowhere else
            q.wrong = beyond_tolerance(rest, g.leaves.best, c.id);
            // the only comb among blades would tell that it is the answer
            std::stable_partition(q.wrong.begin(), q.wrong.end(), [&](const quiz_option& o) {
                return std::get<setup>(o.says).over.has_value() == best->how.over.has_value();
            });
            q.sure = basis_of(g.how, c);
            to_.add(std::move(q), {held(g.how), std::string(name(c.id))});
        }
    }

    /// The back, or else the first zone where skip teeth may go.
    [[nodiscard]] std::size_t firm_and_flat() const {
        const auto& zones = r_.reference.dog_body.zones;
        const auto is = [&](const zone& z) { return z.id == "back"; };
        const auto may = [](const zone& z) { return z.has(zone_use::skip_teeth); };
        auto at = std::find_if(zones.begin(), zones.end(), is);
        if (at == zones.end() || !may(*at)) {
            at = std::find_if(zones.begin(), zones.end(), may);
        }
        return static_cast<std::size_t>(at - zones.begin());
    }

    /// What of the kit leaves with the lay what no plan would take for `wanted`; nearest first.
    [[nodiscard]] std::vector<quiz_option> beyond_tolerance(const kit& k, const length& wanted,
                                                            coat_class c) const {
        std::vector<quiz_option> out;
        for (const setup& s : setups_of(k, r_.today, r_.rules.cut)) {
            if (s.kind == tool_kind::clip && s.way == direction::with_lay &&
                s.tool.etched != "50" && clearly_off(wanted, leaves(s, c).best)) {
                out.push_back(option_of(s, c));
            }
        }
        std::stable_sort(out.begin(), out.end(), [&](const quiz_option& a, const quiz_option& b) {
            return gap(a.leaves->best, wanted) < gap(b.leaves->best, wanted);
        });
        return out;
    }

    /// Which comb comes nearest to what one of them leaves.
    void combs_for(const coat& c) {
        for (const setup& s : d_.combed) {
            const finished left = leaves(s, c.id);
            const bool as_named = !read_apart(left.best, s.over->stated.best);
            if (s.way != direction::with_lay || left.best > longest_terminal(c).best || as_named) {
                continue;
            }
            quiz_question q;
            q.topic = quiz_topic::combs;
            q.asks = quiz_asks::nearest_comb;
            q.coat = c.id;
            q.wanted = left.best;
            q.tool = s;
            q.right = option_of(s, c.id);
            for (const setup& o : d_.combed) {
                if (o.way == direction::with_lay && o.tool.id == s.tool.id &&
                    read_apart(leaves(o, c.id).best, left.best)) {
                    q.wrong.push_back(option_of(o, c.id));
                }
            }
            std::stable_sort(
                q.wrong.begin(), q.wrong.end(), [&](const quiz_option& a, const quiz_option& b) {
                    return gap(a.leaves->best, left.best) < gap(b.leaves->best, left.best);
                });
            // a comb that is called nearer to it and leaves more is what one takes by mistake
            const auto trap = [&](const quiz_option& o) {
                return gap(std::get<setup>(o.says).over->stated.best, left.best) <=
                       gap(s.over->stated.best, left.best);
            };
            if (!misleads(q.wrong, trap)) {
                continue;
            }
            std::stable_partition(q.wrong.begin(), q.wrong.end(), trap);
            constexpr std::size_t shown = 3;  // that it stands among them
            q.wrong.resize(std::min(q.wrong.size(), shown));
            q.sure = basis_of(s, c);
            to_.add(std::move(q), {held(s), std::string(name(c.id))});
        }
    }

    quiz_list& to_;
    const quiz_drawer& d_;
    const quiz_request& r_;
};

}  // namespace

void add_lengths(quiz_list& to, const quiz_drawer& d) {
    of_lengths(to, d).all();
}

}  // namespace pelage
