#include "planner/obstacles.hpp"

#include <algorithm>
#include <array>

#include "planner/candidates.hpp"
#include "planner/mats.hpp"

namespace pelage {

std::string_view name(const broken_rule& r) {
    if (r.what == obstacle::refused) {
        return name(r.no);
    }
    constexpr std::array<std::string_view, 16> names{"",
                                                     name(refusal::under_mat_too_long),
                                                     "free-hair-unknown",
                                                     "not-in-kit",
                                                     "pelt-combed-out",
                                                     "never-combed-out",
                                                     "comb-out-limit",
                                                     "comb-out-limit",
                                                     "not-in-kit",
                                                     "odd-measure",
                                                     "too-short",
                                                     "direction",
                                                     "not-in-kit",
                                                     "held-mat",
                                                     "biter-combed-out",
                                                     "teats"};
    return names[static_cast<std::size_t>(r.what)];
}

namespace ways {

namespace {

bool names(const remedy_set& f, remedy_kind how) {
    return std::any_of(f.by.begin(), f.by.end(),
                       [&](const remedy_step& w) { return w.how == how; });
}
bool names(const infeasible_zone& c, remedy_kind how) {
    return std::any_of(c.frees.begin(), c.frees.end(),
                       [&](const remedy_set& f) { return names(f, how); });
}

broken_rule rule_of(obstacle what, bool at_hand = false) {
    return {what, {}, at_hand, {}, {}};
}
broken_rule rule_of(refusal no) {
    return {obstacle::refused, no, false, {}, {}};
}

class obstacle_finder {
  public:
    obstacle_finder(const plan_request& r, const zone_plan& z)
        : r_(r), z_(z), mat_(z.combed_out ? nullptr : mat_at(r.patient, z.at)) {}

    void add_to(infeasible_zone& c) const;

  private:
    [[nodiscard]] std::vector<broken_rule> rules_of_mat(const infeasible_zone& c) const;
    [[nodiscard]] broken_rule rule_against(const remedy_set& f) const;
    [[nodiscard]] std::optional<refusal> refused_now(const setup& s) const;

    const plan_request& r_;
    const zone_plan& z_;
    const mat_finding* mat_;
};

/// What stands in the way of going under a mat and of combing it out.
std::vector<broken_rule> obstacle_finder::rules_of_mat(const infeasible_zone& c) const {
    std::vector<broken_rule> out;
    const bool a_blade = names(c, remedy_kind::blade) || names(c, remedy_kind::measure_tool);
    if (mat_->to_skin) {
        return {rule_of(refusal::mat_to_skin)};
    }
    if (!z_.around.empty()) {
        out.push_back(rule_of(refusal::mat_over_lump));
    } else if (mat_->free_hair) {
        out.push_back(rule_of(obstacle::none_short_enough, a_blade));
    } else if (!mat_->comb_passes) {
        out.push_back(rule_of(obstacle::hair_unknown));
    } else {
        out.push_back(rule_of(obstacle::none_passes, a_blade));
    }
    const auto takes = comb_out_work(mat_->grade, r_.patient.size, r_.rules.prices);
    const work most = comb_out_budget(r_.patient, r_.rules.refusal);
    const zone& where = r_.reference.dog_body.zones[z_.at.zone];
    if (!takes) {
        out.push_back(rule_of(obstacle::pelt));
    } else if (where.has(zone_use::never_demat)) {
        out.push_back(rule_of(obstacle::never_combed_out));
    } else if (!may_comb_out(*mat_, where, false, r_.rules.refusal)) {
        out.push_back(rule_of(obstacle::not_held));
    } else if (!may_be_combed(r_, z_.at, *mat_, false)) {
        out.push_back(rule_of(obstacle::may_bite));
    } else if (*takes > most) {
        out.push_back({obstacle::over_limit, {}, false, *takes, most});
    } else if (std::any_of(c.frees.begin(), c.frees.end(), [](const remedy_set& f) {
                   return f.by.size() == 1 && f.by.front().how == remedy_kind::comb_out;
               })) {
        out.push_back(rule_of(obstacle::no_time_left));
    } else if (names(c, remedy_kind::blade) || names(c, remedy_kind::comb)) {
        out.push_back(rule_of(obstacle::not_at_hand));
    }
    return out;
}

/// The hard rule against a setup as things stand.
std::optional<refusal> obstacle_finder::refused_now(const setup& s) const {
    const zone_situation at(r_, coat_of(r_.reference, *r_.patient.coat), z_, false);
    return refuse(s, at.today, r_.rules.refusal, r_.rules.cut);
}

/// What stands in the way of a setup that those things would free, where there is no mat.
broken_rule obstacle_finder::rule_against(const remedy_set& f) const {
    const auto named = [&](remedy_kind how) { return names(f, how); };
    if (named(remedy_kind::blade) || named(remedy_kind::comb)) {
        return rule_of(obstacle::not_at_hand);
    }
    if (named(remedy_kind::measure_tool)) {
        return rule_of(obstacle::odd_measure);
    }
    if (const auto no = f.then ? refused_now(*f.then) : std::nullopt) {
        return rule_of(*no);
    }
    return rule_of(named(remedy_kind::shorter) ? obstacle::too_short : obstacle::other_direction);
}

void obstacle_finder::add_to(infeasible_zone& c) const {
    const auto add = [&](const broken_rule& rule) {
        const bool known = std::any_of(c.rules.begin(), c.rules.end(), [&](const broken_rule& one) {
            return name(one) == name(rule);
        });
        if (!known) {
            c.rules.push_back(rule);
        }
    };
    if (z_.hurt) {
        add(rule_of(refusal::skin_found));
    }
    if (z_.why.what == cause::teats) {
        add(rule_of(obstacle::teats));
        return;
    }
    for (const remedy_set& f : c.frees) {
        const auto no =
            names(f, remedy_kind::consent) && f.then ? refused_now(*f.then) : std::nullopt;
        if (no) {
            add(rule_of(*no));
        }
    }
    if (mat_ != nullptr) {
        for (const broken_rule& rule : rules_of_mat(c)) {
            add(rule);
        }
    } else if (!z_.hurt) {
        for (const remedy_set& f : c.frees) {
            add(rule_against(f));
        }
    }
    if (z_.how_finished == finish::hand_strip && r_.patient.thin_or_old) {
        add(rule_of(refusal::thin_plucked));
    }
    if (c.rules.empty()) {
        add(rule_of(obstacle::no_tool_allowed));
    }
}

}  // namespace

void add_obstacles(infeasible_zone& c, const plan_request& r, const zone_plan& z) {
    obstacle_finder(r, z).add_to(c);
}

}  // namespace ways

}  // namespace pelage
