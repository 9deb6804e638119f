// Where what may go, and where it never goes; what goes under a mat and under a comb.
#include <algorithm>
#include <iterator>
#include <map>
#include <set>

#include "kit/lookup_where.hpp"
#include "kit/quiz_parts.hpp"

namespace pelage {

namespace {

class of_places {
  public:
    of_places(quiz_list& to, const quiz_drawer& d) : to_(to), d_(d), r_(d.asked) {}

    void all() {
        const auto& zones = r_.reference.dog_body.zones;
        for (std::size_t z = 0; z < zones.size(); ++z) {
            if (!zones[z].has(zone_use::scissors_only)) {
                if (!zones[z].has(zone_use::pads)) {  // hair between pads has no lay
                    ways(z);
                }
                nevers(z);
            }
        }
        under_mats();
        blades_under_combs();
    }

  private:
    enum class judged { may, never, depends };

    /// Whether `s` may go there however a sheet asks for the place.
    [[nodiscard]] judged judge(const setup& s, std::size_t z, std::optional<no_go>& why) const {
        why = refused_there(d_.asking(d_.whole, {{z, side::both}}), s);
        if (why && why->why != no_go::cause::rule) {
            return judged::depends;  // on custom, which is no reason to learn
        }
        for (int how = 0; how < 8; ++how) {
            zone_today t;
            t.where = &r_.reference.dog_body.zones[z];
            t.clean = (how & 1) != 0;
            t.show = (how & 2) != 0;
            t.pattern = (how & 4) != 0;
            if (refuse(s, t, r_.rules.refusal, r_.rules.cut).has_value() != why.has_value()) {
                return judged::depends;
            }
        }
        return why ? judged::never : judged::may;
    }

    [[nodiscard]] quiz_question about_zone(std::size_t z, quiz_topic topic, quiz_asks asks) const {
        quiz_question q;
        q.topic = topic;
        q.asks = asks;
        q.zone = z;
        const zone& at = r_.reference.dog_body.zones[z];
        q.known = at.prep_blades.empty() ? at.why : at.prep_why;
        return q;
    }

    /// One blade for each way in which a blade may go there.
    void ways(std::size_t z) {
        using may = use_there::may;
        std::map<may, std::vector<std::pair<setup, use_there>>> by_use;
        for (setup s : d_.bare) {
            if (s.way != direction::with_lay) {
                continue;
            }
            use_there there;
            const judged with = judge(s, z, there.no);
            if (with == judged::may) {
                s.way = direction::against_lay;
                const judged against = judge(s, z, there.no);
                if (against == judged::depends) {
                    continue;
                }
                // a short one against the lay is some breeds' pattern, and no answer to learn
                if (against == judged::may &&
                    detail::how_short(s.tool) != detail::shortness::longer) {
                    continue;
                }
                there.use = against == judged::may ? may::both_ways : may::with_lay_only;
            } else if (with == judged::never) {
                there.use = may::not_at_all;
            } else {
                continue;
            }
            s.way = direction::with_lay;
            by_use[there.use].emplace_back(s, there);
        }
        const std::string& id = r_.reference.dog_body.zones[z].id;
        for (const may use : {may::both_ways, may::with_lay_only, may::not_at_all}) {
            const auto& some = by_use[use];
            if (some.empty()) {
                continue;
            }
            const auto& [tool, there] = one_of(some, id);
            quiz_question q = about_zone(z, quiz_topic::ways, quiz_asks::which_way);
            q.tool = tool;
            q.there = there;
            q.right = {use};
            for (const may o : {may::both_ways, may::with_lay_only, may::not_at_all}) {
                if (o != use) {
                    q.wrong.push_back({o});
                }
            }
            to_.add(std::move(q), {"way", id, held(tool)});
        }
    }

    /// Which may go there, and for each reason which never does.
    void nevers(std::size_t z) {
        std::vector<quiz_option> may;
        std::vector<quiz_option> never;
        std::vector<no_go> reasons;
        for (const setup& s : d_.bare) {
            std::optional<no_go> why;
            const judged j = s.way == direction::with_lay ? judge(s, z, why) : judged::depends;
            if (j == judged::may) {
                may.push_back({s});
            } else if (j == judged::never) {
                never.push_back({s, why, {}});
                if (std::none_of(reasons.begin(), reasons.end(),
                                 [&](const no_go& n) { return n.same_cause(*why); })) {
                    reasons.push_back(*why);
                }
            }
        }
        const std::string& id = r_.reference.dog_body.zones[z].id;
        const auto ask = [&](quiz_asks asks, const quiz_option& right, auto wrong) {
            quiz_question q = about_zone(z, quiz_topic::nevers, asks);
            q.right = right;
            q.wrong = std::move(wrong);
            const bool goes = asks == quiz_asks::may_go;
            to_.add(std::move(q), {goes ? "may" : "not", id, held(std::get<setup>(right.says))});
        };
        if (!may.empty()) {
            ask(quiz_asks::may_go, first_choice(may, z), never);
        }
        for (const no_go& why : reasons) {
            std::vector<quiz_option> some;
            std::copy_if(never.begin(), never.end(), std::back_inserter(some),
                         [&](const quiz_option& o) { return o.no->same_cause(why); });
            ask(quiz_asks::never_goes, one_of(some, id), may);
        }
    }

    /// What is mostly taken there, or one of them: nobody learns a bare 40 where a 10 is usual.
    [[nodiscard]] const quiz_option& first_choice(const std::vector<quiz_option>& may,
                                                  std::size_t z) const {
        const zone& at = r_.reference.dog_body.zones[z];
        for (const std::string& usual : at.prep_blades) {
            const auto is = std::find_if(may.begin(), may.end(), [&](const quiz_option& o) {
                return std::get<setup>(o.says).tool.id == usual;
            });
            if (is != may.end()) {
                return *is;
            }
        }
        return one_of(may, at.id);
    }

    /// What is tried under a mat of which nobody knows the depth, and what never is.
    void under_mats() {
        zone firm;
        firm.uses = static_cast<std::uint32_t>(zone_use::skip_teeth);
        mat_finding mat;
        mat.grade = mat_grade::mat;
        zone_today t;
        t.where = &firm;
        t.mat = &mat;
        std::vector<setup> may;
        std::vector<quiz_option> never;
        for (const auto* some : {&d_.bare, &d_.combed}) {
            for (const setup& s : *some) {
                if (s.way != direction::with_lay) {
                    continue;
                }
                if (const auto no = refuse(s, t, r_.rules.refusal, r_.rules.cut)) {
                    never.push_back({s, no_go{no_go::cause::rule, *no, {}, {}, true}, {}});
                } else {
                    may.push_back(s);
                }
            }
        }
        // one thing for each reason first
        std::set<refusal> seen;
        std::stable_partition(never.begin(), never.end(),
                              [&](const quiz_option& o) { return seen.insert(o.no->rule).second; });
        for (const setup& s : may) {
            quiz_question q;
            q.topic = quiz_topic::nevers;
            q.asks = quiz_asks::under_mat;
            q.right = {s};
            // a shorter blade isn't too long for it, whatever the rule that leaves it out is called
            std::copy_if(never.begin(), never.end(), std::back_inserter(q.wrong),
                         [&](const quiz_option& o) {
                             return stated_length(std::get<setup>(o.says), r_.rules.cut).best >
                                    s.tool.stated.best;
                         });
            q.known = r_.rules.refusal.safe_blade.why;
            to_.add(std::move(q), {"under-mat", held(s)});
        }
    }

    /// The blade under a comb, of which the first comb is asked about.
    void blades_under_combs() {
        std::set<std::string> told;
        for (const setup& s : d_.combed) {
            if (!told.insert(s.tool.id).second) {
                continue;
            }
            quiz_question q;
            q.topic = quiz_topic::combs;
            q.asks = quiz_asks::under_comb;
            q.tool = s;
            q.right = {bare(s.tool, direction::with_lay)};
            zone firm;
            zone_today t;
            t.where = &firm;
            for (const setup& b : d_.bare) {
                const setup on = combed(*s.over, b.tool, direction::with_lay);
                const auto no = refuse(on, t, r_.rules.refusal, r_.rules.cut);
                // another reason than its length or its teeth is no lesson of this question
                const bool plain = detail::how_short(b.tool) == detail::shortness::longer ||
                                   b.tool.cut == teeth::skip;
                if (b.way == direction::with_lay && no && plain) {
                    q.wrong.push_back({b, no_go{no_go::cause::rule, *no, {}, {}, true}, {}});
                }
            }
            q.known = r_.rules.cut.comb_stated_over.why;
            to_.add(std::move(q), {"under", s.tool.id});
        }
    }

    quiz_list& to_;
    const quiz_drawer& d_;
    const quiz_request& r_;
};

}  // namespace

void add_places(quiz_list& to, const quiz_drawer& d) {
    of_places(to, d).all();
}

}  // namespace pelage
