#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

#include <pelage/any_sheet.hpp>
#include <pelage/phrase.hpp>
#include <pelage/sheet_check.hpp>
#include <pelage/text.hpp>
#include <pelage/upkeep.hpp>

#include "groom_again.hpp"
#include "groom_cells.hpp"
#include "groom_wish.hpp"
#include "words_plan.hpp"

namespace pelage {

namespace {

/// "back, ribs and 3 more".
std::string some(const std::vector<std::string>& places) {
    constexpr std::size_t most = 3;
    std::string text;
    for (std::size_t i = 0; i < places.size() && i < most; ++i) {
        text += (i == 0 ? "" : ", ") + places[i];
    }
    return places.size() > most ? text + " and " + std::to_string(places.size() - most) + " more"
                                : text;
}

std::string coats_of_sheet(const style& s, const catalogue& c) {
    std::vector<std::string> names;
    for (const coat_class k : coats_for(s, c)) {
        names.emplace_back(name(k));
    }
    return one_of(names);
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
    trial_maker(const groom_request& r, const days& wait)
        : r_(r), wait_(wait), top_(r.reference, r.rules, r.tools, r.today) {
        whole_kit_ = all_back(r.tools, r.today);
        for (const kit_blade& b : r.tools.blades) {
            if (b.count > 0 && !at_hand(b, r.today)) {
                out_.push_back(b.spec.id);
            }
        }
        own_ = r.patient.style.empty() ? nullptr : &r.sheet;
    }

    sheet_trial try_one(const style& s) {
        sheet_trial t;
        t.sheet = &s;
        t.own = own_ != nullptr && own_->id == s.id;
        t.for_mix = names_mix(s, r_.patient.mix, r_.reference.genes);
        dog patient = r_.patient;
        assume_upkeep(patient, s);
        if (!t.own && !s.adjustable) {
            patient.body_length.reset();
        }
        groom_request ask = ask_again(r_, patient, s);
        ask.top = &top_;
        ask.reasons = false;
        t.plan = plan_groom(ask);
        coat_fits(t);
        if (t.plan.question) {
            t.against.push_back({objection::skin_or_rules,
                                 "a double coat is not clipped without its owner's consent"});
            return t;
        }
        if (!t.plan.stop.empty()) {
            t.against.push_back(
                {objection::mats, "felted to the skin at the " +
                                      some(titles(r_.reference.dog_body, t.plan.stop)) +
                                      ": a veterinarian's"});
            return t;
        }
        if (!t.plan.stuck.empty()) {
            ask.reasons = true;
            const groom why = plan_groom(ask);
            stuck(t, why);
        }
        misses(t, ask);
        t.when = back_of(ask, t.plan);
        brushing_holds(t, patient);
        far_from_own(t);
        replaced(t, ask);
        return t;
    }

  private:
    [[nodiscard]] std::string title_of(const zone_plan& z) const {
        return title(r_.reference.dog_body, z.at);
    }

    void coat_fits(sheet_trial& t) const {
        const std::vector<coat_class> coats = coats_for(*t.sheet, r_.reference);
        const coat_class own = r_.patient.coat.value();
        if (!coats.empty() && std::find(coats.begin(), coats.end(), own) == coats.end()) {
            t.against.push_back(
                {objection::coat, "it is for a " + coats_of_sheet(*t.sheet, r_.reference) +
                                      " coat, this one is " + std::string(name(own))});
        }
    }

    void stuck(sheet_trial& t, const groom& why) const {
        std::map<std::string, std::vector<std::string>> by_reason;
        for (const std::size_t i : why.stuck) {
            by_reason[io::cause_words(r_, why.zones[i], length_unit::mm)].push_back(
                title_of(why.zones[i]));
        }
        for (const auto& [reason, places] : by_reason) {
            t.against.push_back({objection::skin_or_rules,
                                 some(places) + ": nothing may be done (" + reason + ")"});
        }
    }

    /// Whether some setup at hand comes within the tolerance and is allowed: then the plan misses the
    /// wish because that is cheaper, and the sheet can be had.
    [[nodiscard]] bool reachable(const zone_plan& z, const groom_request& ask) const {
        const coat_class k = r_.patient.coat.value();
        const zone_case at(ask, coat_of(r_.reference, k), z, z.combed_out);
        for (std::size_t i = 0; i < top_.setups().size(); ++i) {
            const setup& s = top_.setups()[i];
            if (s.kind != tool_kind::clip) {
                continue;
            }
            const cell c = cell_for(at, s, top_.leaves(i, k), false);
            if (c.offered && c.no.what == bar::kind::none &&
                within(c.leaves.best, *z.target, z.tolerated)) {
                return true;
            }
        }
        return false;
    }

    void misses(sheet_trial& t, const groom_request& ask) const {
        std::vector<std::string> mats;
        std::map<std::string, std::vector<std::string>> hair;
        std::vector<std::string> kit_misses;
        std::vector<std::string> carded;
        for (const zone_plan& z : t.plan.zones) {
            const bool prep = r_.reference.dog_body.zones[z.at.zone].where == group::prep;
            const instruction wish = wish_at(*t.sheet, z.at);
            const bool clip_wished =
                wish.how == finish::clip || wish.how == finish::comb_then_scissor;
            if (z.how_finished == finish::card && clip_wished) {
                carded.push_back(title_of(z));
            }
            if (prep || !z.leaves) {
                continue;
            }
            const auto aim = z.target ? z.target : wish.target;
            const bool off = aim && !within(z.leaves->best, *aim, tolerance_of(z, *aim));
            const bool left = wish.how == finish::leave;
            if (z.came == outcome::clipped_under && left) {
                mats.push_back(title_of(z) + " " + show(z.leaves->best) +
                               ", which the sheet leaves");
            } else if (z.came == outcome::clipped_under && off) {
                mats.push_back(title_of(z) + " " + show(z.leaves->best) + " instead of " +
                               show(*aim));
            } else if (z.came == outcome::hair_shorter && off) {
                hair[io::cause_words(r_, z, length_unit::mm)].push_back(title_of(z));
            } else if (z.came == outcome::off_target && !reachable(z, ask)) {
                kit_misses.push_back(title_of(z) + " " + show(z.leaves->best) + " instead of " +
                                     show(*aim));
            }
        }
        add(t, objection::skin_or_rules, "jacket not to be clipped without consent: ", carded);
        add(t, objection::mats, "mats come off under the wish: ", mats);
        too_short_to_leave(t);
        for (const auto& [why, places] : hair) {
            t.against.push_back({objection::hair, some(places) + ": " + why});
        }
        add(t, objection::kit, "nothing at hand comes near enough: ", kit_misses);
    }
    static void add(sheet_trial& t, objection what, const std::string& first,
                    const std::vector<std::string>& places) {
        if (!places.empty()) {
            t.against.push_back({what, first + some(places)});
        }
    }

    /// Hair that the sheet leaves, where its standard wants it longer than it is or than anybody knows.
    void too_short_to_leave(sheet_trial& t) const {
        std::map<std::string, std::vector<std::string>> by_reason;
        for (const limit& l : t.sheet->limits) {
            const selection* whom = l.low ? top_.parts().find(l.whom) : nullptr;
            for (const zone_plan& z : t.plan.zones) {
                const bool here = whom != nullptr &&
                                  std::any_of(whom->places.begin(), whom->places.end(),
                                              [&](const place& p) { return p.zone == z.at.zone; });
                if (here && wish_at(*t.sheet, z.at).how == finish::leave &&
                    (!z.now || *z.now < *l.low)) {
                    by_reason[(z.now ? "today's hair is " + show(*z.now)
                                     : std::string("today's hair isn't recorded")) +
                              ", the sheet's standard wants at least " + show(*l.low)]
                        .push_back(title_of(z));
                }
            }
        }
        for (const auto& [why, places] : by_reason) {
            t.against.push_back({objection::hair, some(places) + ": " + why});
        }
    }

    [[nodiscard]] instruction wish_at(const style& s, const place& p) const {
        groom_request ask = ask_again(r_, r_.patient, s);
        ask.top = &top_;
        return instruction_for(ask, p);
    }
    [[nodiscard]] length tolerance_of(const zone_plan& z, const length& aim) const {
        const bool head = r_.reference.dog_body.zones[z.at.zone].where == group::head;
        return z.target ? z.tolerated : tolerance(aim, head, r_.rules.prices);
    }

    void brushing_holds(sheet_trial& t, const dog& patient) const {
        if (t.when->full_groom >= wait_) {
            return;
        }
        const auto in = static_cast<int>(in_days(t.when->full_groom));
        const brushing& b = patient.brushed;
        const bool in_vain = b.how_often != habit::none && !b.to_skin;
        t.against.push_back(
            {objection::brushing, brushing_of(patient) + (in_vain ? ", which counts as none" : "") +
                                      ", it holds until day " + std::to_string(in) + ", not day " +
                                      detail::fixed(in_days(wait_), 0)});
    }

    void far_from_own(sheet_trial& t) const {
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
    void replaced(sheet_trial& t, const groom_request& ask) const {
        if (out_.empty()) {
            return;
        }
        groom_request with{ask.reference, ask.rules, whole_kit_, ask.patient, ask.sheet, ask.today};
        with.asked = ask.asked;
        with.length_wish = ask.length_wish;
        with.reasons = false;
        const groom whole = plan_groom(with);
        for (const zone_plan& z : t.plan.zones) {
            const auto then = std::find_if(whole.zones.begin(), whole.zones.end(),
                                           [&](const zone_plan& o) { return o.at == z.at; });
            if (then == whole.zones.end() || then->how.kind != tool_kind::clip || !then->leaves ||
                !z.leaves || std::find(out_.begin(), out_.end(), then->how.tool.id) == out_.end()) {
                continue;
            }
            const std::string out = "blade " + then->how.tool.id;
            const auto at =
                std::find_if(t.instead.begin(), t.instead.end(), [&](const tool_instead& one) {
                    return one.out == out && one.instead == title(z.how);
                });
            if (at == t.instead.end()) {
                t.instead.push_back({out, title(z.how), {title_of(z)}, *then->leaves, *z.leaves});
            } else {
                at->where.push_back(title_of(z));
            }
        }
    }

    const groom_request& r_;
    days wait_;
    worktop top_;
    kit whole_kit_;
    std::vector<std::string> out_;
    const style* own_ = nullptr;
};

}  // namespace

bool sheet_trial::carried_but_for_hair() const {
    return plan.stop.empty() && !against.empty() &&
           std::all_of(against.begin(), against.end(), [](const sheet_objection& o) {
               return o.what == objection::mats || o.what == objection::hair;
           });
}

bool sheet_trial::wrong_coat() const {
    return std::any_of(against.begin(), against.end(),
                       [](const sheet_objection& o) { return o.what == objection::coat; });
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

std::vector<sheet_trial> try_sheets(const groom_request& r, const std::vector<style>& sheets,
                                    const days& wait) {
    trial_maker make(r, wait);
    std::vector<sheet_trial> all;
    all.reserve(sheets.size());
    for (const style& s : sheets) {
        all.push_back(make.try_one(s));
    }
    const auto key = [](const sheet_trial& t) {
        const double waits = t.when ? in_days(t.when->full_groom) : 0.0;
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
                     [&](const sheet_trial& a, const sheet_trial& b) { return key(a) < key(b); });
    return all;
}

}  // namespace pelage
