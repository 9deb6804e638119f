#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

#include <pelage/sheets/check.hpp>
#include <pelage/sheets/rank.hpp>
#include <pelage/trade/upkeep.hpp>

#include "planner/candidates.hpp"
#include "planner/plan_again.hpp"
#include "planner/targets.hpp"

namespace pelage {

namespace {

/// Adds a place to the first of the reasons from `first` on that is the same but for its places.
template <class Same>
void add_to(std::vector<sheet_objection>& all, std::size_t first, sheet_objection reason,
            std::size_t zone, Same same) {
    const auto at = std::find_if(all.begin() + static_cast<std::ptrdiff_t>(first), all.end(), same);
    (at == all.end() ? all.emplace_back(std::move(reason)) : *at).where.push_back({zone, {}});
}

/// The kit as if every blade were back from sharpening; the same if none is out.
kit all_back(const kit& k, const std::optional<date>& today) {
    kit whole = k;
    for (kit_blade& b : whole.blades) {
        if (b.count > 0 && !at_hand(b, today)) {
            b.out = false;
            b.out_until.reset();
        }
    }
    return whole;
}

class trial_maker {
  public:
    trial_maker(const plan_request& r, const days& wait)
        : r_(r), wait_(wait), top_(r.reference, r.rules, r.tools, r.today) {
        whole_kit_ = all_back(r.tools, r.today);
        for (const kit_blade& b : r.tools.blades) {
            if (b.count > 0 && !at_hand(b, r.today)) {
                out_.push_back(b.spec.id);
            }
        }
        own_ = r.patient.style.empty() ? nullptr : &r.sheet;
    }

    ranked_sheet try_one(const style& s) {
        ranked_sheet t;
        t.sheet = &s;
        t.own = own_ != nullptr && own_->id == s.id;
        t.for_mix = names_mix(s, r_.patient.mix, r_.reference.genes);
        dog patient = r_.patient;
        assume_upkeep(patient, s);
        if (!t.own && !s.adjustable) {
            patient.body_length.reset();
        }
        plan_request ask = ask_again(r_, patient, s);
        ask.top = &top_;
        ask.reasons = false;
        t.plan = make_plan(ask);
        coat_fits(t);
        if (t.plan.question) {
            t.against.push_back({objected::unsigned_jacket});
            return t;
        }
        if (!t.plan.stop.empty()) {
            t.against.push_back({objected::felted});
            return t;
        }
        stuck(t);
        misses(t, ask);
        t.when = back_of(ask, t.plan);
        brushing_holds(t, patient);
        far_from_own(t);
        replaced(t, ask);
        return t;
    }

  private:
    void coat_fits(ranked_sheet& t) const {
        const std::vector<coat_class> coats = coats_for(*t.sheet, r_.reference);
        const coat_class own = r_.patient.coat.value();
        if (!coats.empty() && std::find(coats.begin(), coats.end(), own) == coats.end()) {
            t.against.push_back({objected::other_coat});
        }
    }

    static void stuck(ranked_sheet& t) {
        const std::size_t first = t.against.size();
        for (const std::size_t i : t.plan.stuck) {
            add_to(t.against, first, {objected::nothing_allowed}, i, [&](const sheet_objection& o) {
                return cause_of(t, o) == t.plan.zones[i].why.what;
            });
        }
    }
    static cause cause_of(const ranked_sheet& t, const sheet_objection& o) {
        return t.plan.zones[o.where.front().zone].why.what;
    }

    /// Whether some setup at hand comes within the tolerance and is allowed: then the plan misses the
    /// wish because that is cheaper, and the sheet can be had.
    [[nodiscard]] bool reachable(const zone_plan& z, const plan_request& ask) const {
        const coat_class k = r_.patient.coat.value();
        const zone_situation at(ask, coat_of(r_.reference, k), z, z.combed_out);
        for (std::size_t i = 0; i < top_.setups().size(); ++i) {
            const setup& s = top_.setups()[i];
            if (s.kind != tool_kind::clip) {
                continue;
            }
            const candidate c = cell_for(at, s, top_.leaves(i, k), false);
            if (c.offered && c.no.what == barrier::kind::none &&
                within(c.leaves.best, *z.target, z.tolerated)) {
                return true;
            }
        }
        return false;
    }

    void misses(ranked_sheet& t, const plan_request& ask) const {
        sheet_objection carded{objected::carded};
        sheet_objection mats{objected::clipped_under};
        sheet_objection no_tool{objected::no_tool};
        std::vector<std::size_t> hair;
        for (std::size_t i = 0; i < t.plan.zones.size(); ++i) {
            const zone_plan& z = t.plan.zones[i];
            const instruction wish = wish_at(*t.sheet, z.at);
            if (z.how_finished == finish::card && wish.how && clips(*wish.how)) {
                carded.where.push_back({i, {}});
            }
            if (r_.reference.dog_body.zones[z.at.zone].where == group::prep || !z.leaves) {
                continue;
            }
            const auto aim = z.target ? z.target : wish.target;
            const bool off = aim && !within(z.leaves->best, *aim, tolerance_of(z, *aim));
            if (z.came == outcome::clipped_under && wish.how == finish::leave) {
                mats.where.push_back({i, {}});
            } else if (z.came == outcome::clipped_under && off) {
                mats.where.push_back({i, aim});
            } else if (z.came == outcome::hair_shorter && off) {
                hair.push_back(i);
            } else if (z.came == outcome::off_target && !reachable(z, ask)) {
                no_tool.where.push_back({i, aim});
            }
        }
        add(t, std::move(carded));
        add(t, std::move(mats));
        too_short_to_leave(t);
        const std::size_t first = t.against.size();
        for (const std::size_t i : hair) {
            add_to(t.against, first, {objected::hair_shorter}, i, [&](const sheet_objection& o) {
                return same_hair(t.plan.zones[o.where.front().zone], t.plan.zones[i]);
            });
        }
        add(t, std::move(no_tool));
    }
    /// Whether the plan says the same of today's hair in two places: what is at the wish already, or how
    /// far it is from it and for how many days.
    static bool same_hair(const zone_plan& a, const zone_plan& b) {
        const auto waits = [](const zone_plan& z) {
            const hair_wait w = z.why.wait.value_or(hair_wait{});
            return std::tuple{w.never, std::lround(in_days(w.early)), std::lround(in_days(w.late))};
        };
        const bool alike = a.why.what == b.why.what && a.tidied == b.tidied && a.now == b.now;
        return alike && (a.why.what != cause::hair_below_wish ||
                         (a.target == b.target && waits(a) == waits(b)));
    }
    static void add(ranked_sheet& t, sheet_objection o) {
        if (!o.where.empty()) {
            t.against.push_back(std::move(o));
        }
    }

    /// Hair that the sheet leaves, where its standard wants it longer than it is or than anybody knows.
    void too_short_to_leave(ranked_sheet& t) const {
        const std::size_t first = t.against.size();
        for (const limit& l : t.sheet->limits) {
            const selection* whom = l.low ? top_.parts().find(l.whom) : nullptr;
            for (std::size_t i = 0; whom != nullptr && i < t.plan.zones.size(); ++i) {
                const zone_plan& z = t.plan.zones[i];
                const bool here = std::any_of(whom->places.begin(), whom->places.end(),
                                              [&](const place& p) { return p.zone == z.at.zone; });
                if (here && wish_at(*t.sheet, z.at).how == finish::leave &&
                    (!z.now || *z.now < *l.low)) {
                    sheet_objection short_of{objected::below_standard};
                    short_of.now = z.now;
                    short_of.least = l.low;
                    add_to(t.against, first, short_of, i, [&](const sheet_objection& o) {
                        return o.now == short_of.now && o.least == short_of.least;
                    });
                }
            }
        }
    }

    [[nodiscard]] instruction wish_at(const style& s, const place& p) const {
        plan_request ask = ask_again(r_, r_.patient, s);
        ask.top = &top_;
        return instruction_for(ask, p);
    }
    [[nodiscard]] length tolerance_of(const zone_plan& z, const length& aim) const {
        const bool head = r_.reference.dog_body.zones[z.at.zone].where == group::head;
        return z.target ? z.tolerated : tolerance(aim, head, r_.rules.prices);
    }

    void brushing_holds(ranked_sheet& t, const dog& patient) const {
        if (t.when->next_visit >= wait_) {
            return;
        }
        sheet_objection ends{objected::brushing_ends};
        ends.holds = t.when->next_visit;
        ends.wait = wait_;
        ends.in_vain = patient.brushed.how_often != habit::none && !patient.brushed.to_skin;
        t.against.push_back(std::move(ends));
    }

    void far_from_own(ranked_sheet& t) const {
        if (own_ == nullptr) {
            return;
        }
        double sum = 0.0;
        int n = 0;
        const coat& c = coat_of(r_.reference, r_.patient.coat.value());
        for (const zone_plan& z : t.plan.zones) {
            if (r_.reference.dog_body.zones[z.at.zone].where == group::prep) {
                continue;
            }
            const auto a = length_on(wish_at(*own_, z.at), c, r_.reference, r_.rules.cut);
            const auto b = length_on(wish_at(*t.sheet, z.at), c, r_.reference, r_.rules.cut);
            if (a && b) {
                sum += in_mm(gap(*a, *b));
                ++n;
            }
        }
        // of a few zones it would say nothing of the dog
        const bool enough = 2 * n >= static_cast<int>(t.plan.zones.size());
        t.away = enough ? std::optional{mm(sum / n)} : std::nullopt;
    }

    /// What is used because a blade is out: against the plan with it back.
    void replaced(ranked_sheet& t, const plan_request& ask) const {
        if (out_.empty()) {
            return;
        }
        plan_request with{ask.reference, ask.rules, whole_kit_, ask.patient, ask.sheet, ask.today};
        with.asked = ask.asked;
        with.length_wish = ask.length_wish;
        with.reasons = false;
        const groom whole = make_plan(with);
        for (std::size_t i = 0; i < t.plan.zones.size(); ++i) {
            const zone_plan& z = t.plan.zones[i];
            const auto then = std::find_if(whole.zones.begin(), whole.zones.end(),
                                           [&](const zone_plan& o) { return o.at == z.at; });
            if (then == whole.zones.end() || then->how.kind != tool_kind::clip || !then->leaves ||
                !z.leaves || std::find(out_.begin(), out_.end(), then->how.tool.id) == out_.end()) {
                continue;
            }
            const std::string& out = then->how.tool.id;
            const auto at =
                std::find_if(t.instead.begin(), t.instead.end(), [&](const tool_instead& one) {
                    return one.out == out && title(one.instead) == title(z.how);
                });
            if (at == t.instead.end()) {
                t.instead.push_back({out, z.how, {i}, *then->leaves, *z.leaves});
            } else {
                at->where.push_back(i);
            }
        }
    }

    const plan_request& r_;
    days wait_;
    kit_setups top_;
    kit whole_kit_;
    std::vector<std::string> out_;
    const style* own_ = nullptr;
};

}  // namespace

bool ranked_sheet::carried_but_for_hair() const {
    return plan.stop.empty() && !against.empty() &&
           std::all_of(against.begin(), against.end(), [](const sheet_objection& o) {
               return o.what() == objection::mats || o.why == objected::hair_shorter;
           });
}

bool ranked_sheet::wrong_coat() const {
    return std::any_of(against.begin(), against.end(),
                       [](const sheet_objection& o) { return o.what() == objection::coat; });
}

bool names_mix(const style& s, const std::string& mix, const heredity& h) {
    if (mix.empty()) {
        return false;
    }
    const auto made_of = [&](const std::string& text) {
        std::map<std::size_t, double> from;
        const pelage::mix m = read_mix(text, h);
        for (const ancestry& a : m.dog.from) {
            from[a.breed] += a.share;
        }
        return from;
    };
    const auto alike = [](const std::map<std::size_t, double>& a,
                          const std::map<std::size_t, double>& b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const auto& x, const auto& y) {
            return x.first == y.first && std::abs(x.second - y.second) < 1e-9;
        });
    };
    try {
        const auto asked = made_of(mix);
        return std::any_of(s.mixes.begin(), s.mixes.end(), [&](const std::string& one) {
            try {
                return alike(made_of(one), asked);
            } catch (const bad_input&) {
                return one == mix;
            }
        });
    } catch (const bad_input&) {
        return std::find(s.mixes.begin(), s.mixes.end(), mix) != s.mixes.end();
    }
}

std::vector<ranked_sheet> rank_sheets(const plan_request& r, const std::vector<style>& sheets,
                                      const days& wait) {
    trial_maker make(r, wait);
    std::vector<ranked_sheet> all;
    all.reserve(sheets.size());
    for (const style& s : sheets) {
        all.push_back(make.try_one(s));
    }
    const auto key = [](const ranked_sheet& t) {
        const double waits = t.when ? in_days(t.when->next_visit) : 0.0;
        const bool between = !t.carried() && !t.carried_but_for_hair();
        const int how = t.carried() ? 0 : t.carried_but_for_hair() ? 1 : t.wrong_coat() ? 3 : 2;
        return std::tuple{
            how,
            between ? t.against.size() : 0,
            !t.own,
            t.away ? in_hundredths(*t.away) : std::numeric_limits<std::int32_t>::max(),
            !t.for_mix,
            -waits,
            in_mmin(t.takes()),
            t.sheet->id};
    };
    std::stable_sort(all.begin(), all.end(),
                     [&](const ranked_sheet& a, const ranked_sheet& b) { return key(a) < key(b); });
    return all;
}

}  // namespace pelage
