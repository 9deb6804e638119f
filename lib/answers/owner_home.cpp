// The owner's page: when to come back, and how to brush until then.
#include <algorithm>
#include <cmath>

#include <pelage/model/dog_record.hpp>

#include "answers/owner_view.hpp"
#include "answers/plan_parts.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/strip.hpp"

namespace pelage::io {

namespace {

/// Where it is brushed first, and where not.
class brushed_places : protected owner_view {
  public:
    explicit brushed_places(const owner_view& v) : owner_view(v) {}

  protected:
    /// Nothing to brush there for now: sore, clipped off with a mat, or its mat still in.
    [[nodiscard]] bool rests(const zone_plan& z) const {
        return bared_by_record(*this, z.at) || z.hurt || z.came == outcome::clipped_under ||
               z.came == outcome::goes_along || z.came == outcome::stuck;
    }
    /// A mat was clipped off there, by the plan or by today's record.
    [[nodiscard]] bool was_felted(const zone_plan& z) const {
        return z.came == outcome::clipped_under || bared_by_record(*this, z.at);
    }
    /// Too short to brush through: a soft brush or a cloth.
    [[nodiscard]] bool bare(const zone_plan& z) const {
        return z.leaves && z.leaves->best < r_.rules.refusal.soft_brush.best;
    }
    [[nodiscard]] bool hated(const place& p) const {
        const auto& all = r_.patient.sensitive;
        return std::any_of(all.begin(), all.end(), [&](const std::string& word) {
            const selection* meant = top_.parts().find(word);
            return meant != nullptr &&
                   std::any_of(meant->places.begin(), meant->places.end(),
                               [&](const place& one) { return share_side(one, p); });
        });
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

    /// Adds a place by its name, once and at most so many; both sides of a pair as one unless one rests.
    void put(const zone_plan& z, std::size_t most, strings& names) const {
        if (rests(z) || hated(z.at) || names.size() >= most) {
            return;
        }
        const bool one_rests = std::any_of(
            g_.zones.begin(), g_.zones.end(),
            [&](const zone_plan& other) { return other.at.zone == z.at.zone && rests(other); });
        const std::string t = title(plain_, one_rests ? z.at : place{z.at.zone, side::both});
        if (std::find(names.begin(), names.end(), t) == names.end()) {
            names.push_back(t);
        }
    }
    /// The places that mat first as they are left today.
    void soonest(std::size_t most, strings& names) const {
        if (r_.booked != nullptr && !r_.booked->whole) {
            return;  // nothing was cut: where it mats first isn't reckoned
        }
        if (m_.ahead == nullptr || !mats_by_length(coat_)) {
            return;
        }
        for (const zone_forecast& f : m_.ahead->zones) {
            const auto z = std::find_if(g_.zones.begin(), g_.zones.end(),
                                        [&](const zone_plan& one) { return one.at == f.at; });
            const bool jacket = z != g_.zones.end() && z->how.kind == tool_kind::fingers;
            if (z != g_.zones.end() && !bare(*z) && !jacket) {
                put(*z, most, names);
            }
        }
    }
    /// The places to look at first: where mats were combed out today, then the first to mat.
    [[nodiscard]] strings first_places(std::size_t most) const {
        strings names;
        for (const zone_plan& z : g_.zones) {
            if ((z.mat && z.combed_out) || matted_by_record(*this, z.at)) {
                put(z, most, names);
            }
        }
        soonest(most, names);
        return names;
    }
};

class return_part : brushed_places {
  public:
    using brushed_places::brushed_places;

    void say() {
        page_section& s = add("Your next visit");
        if (!m_.when) {
            const bool part = r_.booked != nullptr && !r_.booked->whole;
            const std::string what =
                part ? r_.booked->title
                     : listed(o_.today ? kinds_logged(r_.patient, *o_.today) : strings{});
            if (!what.empty()) {
                s.says.push_back("Today's visit (" + what +
                                 ") does not move the day of the next full groom.");
            }
            return;
        }
        if (g_.bath_waits()) {
            s.says.emplace_back(
                "Please come back as soon as what stops us today is settled. This groom is only "
                "begun, and a mat that stays gets tighter.");
            return;
        }
        const bool on_record = o_.today && !kinds_logged(r_.patient, *o_.today).empty();
        if (in_visits(g_) && (m_.moment != owner_moment::after || !on_record)) {
            s.says.emplace_back(
                "We set the day of the next visit when the vet has said yes, and the one after it "
                "then.");
            return;
        }
        const return_date& b = *m_.when;
        const std::string date_by = come_by_date(b.next_visit, o_);
        const std::string by = date_by + assumed() + ".";
        if (const auto on = promised_day(r_, o_)) {
            s.says.push_back("We promised you " + with_weekday(*on) +
                             (is_too_late(*on, b, o_) ? ". That is later than this coat should "
                                                        "wait. Please come back by "
                                                      : ". If you can't, please come by ") +
                             (r_.patient.brushing_said ? date_by + "." : by));
        } else {
            s.says.push_back("Please come back by " + by);
        }
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
        if (!those([](const zone_plan& z) { return z.hurt.has_value(); }).empty()) {
            s.says.emplace_back("For the sore skin, come when the vet says.");
        }
        if (const std::string jacket = jacket_in_brief(g_, r_); !jacket.empty()) {
            s.says.push_back(jacket);
        }
        better_habit(b);
    }

  private:
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
        if (!mats_by_length(coat_)) {
            return {};
        }
        if (d.brushing_said) {
            return better(*m_.when) == nullptr ? ""
                   : d.brushed.how_often == habit::none || !d.brushed.to_skin
                       ? ", if no one brushes down to the skin"
                       : ", if you brush as you do now";
        }
        return counted(d.brushed) == habit::none ? ", even if no one brushes at home"
                                                 : ", if you brush " + often(counted(d.brushed)) +
                                                       " down to the skin: we took that as given";
    }
    /// The least more of brushing that would win a later day; null where none does.
    [[nodiscard]] const habit_forecast* better(const return_date& b) const {
        if (m_.ahead == nullptr || !mats_by_length(coat_)) {
            return nullptr;
        }
        const auto& all = m_.ahead->habits;
        const auto at = std::find_if(all.begin(), all.end(), [&](const habit_forecast& h) {
            return h.habit.how_often > counted(r_.patient.brushed) &&
                   h.habit.how_often >= habit::two_or_three &&
                   h.when.next_visit > b.next_visit + day(6.0);
        });
        return at == all.end() ? nullptr : &*at;
    }
    /// What a little more brushing would win.
    void better_habit(const return_date& b) {
        if (const habit_forecast* h = better(b)) {
            const bool asked =
                h->habit.how_often == std::max(wanted(), counted(r_.patient.brushed));
            page_.sections.back().says.push_back(
                "If you brush " + often(h->habit.how_often) + (asked ? ", as we ask below" : "") +
                ", down to the skin, the next visit may wait until " +
                come_by_date(h->when.next_visit, o_) + ".");
        }
    }
};

class brushing_part : brushed_places {
  public:
    using brushed_places::brushed_places;

    void say() {
        brushing();
        brush_shy();
    }

  private:
    /// What not to brush, and what only in small steps.
    void spare(page_section& s) const {
        if (std::any_of(g_.cautions.begin(), g_.cautions.end(), [](const caution_line& c) {
                return c.what.when == caution_when::nearly_bare;
            })) {
            s.says.emplace_back(
                "So short, the hair keeps out neither cold nor sun: a dog coat in the cold, shade "
                "in the heat.");
        }
        const zone_list bare = those([&](const zone_plan& z) { return was_felted(z); });
        const zone_list sore = those([](const zone_plan& z) { return z.hurt.has_value(); });
        const zone_list matted = those([&](const zone_plan& z) {
            return z.came == outcome::stuck && mat_at(r_.patient, z.at) != nullptr;
        });
        const zone_list shy = those([&](const zone_plan& z) {
            return hated(z.at) && !rests(z) && zone_of(z).where != group::prep;
        });
        if (!bare.empty()) {
            s.says.push_back("Mats come off short here: " + named(bare) +
                             ". Let the skin rest some days, till it is calm. Once the hair is " +
                             long_as(r_.rules.refusal.soft_brush.best) +
                             ", use a soft brush every few days.");
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

    void brushing() {
        page_section& s = add("Brushing at home");
        const habit want = std::max(wanted(), counted(r_.patient.brushed));
        const strings where = first_places(4);
        if (all_bare()) {
            s.says.push_back(
                "It is short now: a soft brush or a cloth, with the hair, is enough. From " +
                long_as(r_.rules.refusal.soft_brush.best) + " on do as below.");
        }
        const bool more = !r_.patient.brushing_said && counted(r_.patient.brushed) < want;
        s.says.push_back(
            (r_.patient.coat_change && mats_by_length(coat_)
                 ? "The adult coat comes in now and mats fast. Brush "
             : more ? "Better still, brush "
                    : "Brush ") +
            often(want) +
            (bears_less(r_.patient) ? ", a few minutes at a time." : ", for ten minutes or so.") +
            (where.empty() ? ""
                           : " Start where mats start on this dog: " + listed(where) +
                                 ". Then do the rest."));
        spare(s);
        s.how = lines_as::steps;
        if (coat_.id == coat_class::double_short) {
            s.lines = {"Take a rubber brush.",
                       "Go with the hair, from neck to tail, then down the legs. Light hand.",
                       "Stop when no more loose hair comes, or where the skin turns pink.",
                       "Feel for lumps, scabs and sore spots as you go."};
        } else if (coat_.id == coat_class::smooth) {
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

    /// Whatever was clipped of the coat is too short to brush through.
    [[nodiscard]] bool all_bare() const {
        return std::all_of(g_.zones.begin(), g_.zones.end(), [&](const zone_plan& z) {
            return zone_of(z).where == group::prep || z.hurt || bare(z);
        });
    }

    void brush_shy() {
        page_section& s = add("If it does not like the brush");
        s.beside = true;
        s.says.emplace_back(
            "Small steps, once a day, and stop while it is still calm. Give a "
            "treat each time. If it pulls away, go back a week.");
        // what was felted rests first
        const bool rest = std::any_of(g_.zones.begin(), g_.zones.end(),
                                      [&](const zone_plan& z) { return was_felted(z); });
        const auto week = [&](int n) {
            const std::string w = "Week " + std::to_string(n);
            const double from = 7.0 * (n - (rest ? 0 : 1));
            return o_.today ? w + ", from " + short_day(plus(*o_.today, day(from))) : w;
        };
        const std::string touchy = sensitive();
        s.lines = {week(1) + ": it sniffs the brush. Touch its " + easy_place() + " with it.",
                   week(2) + ": three strokes where it minds least.",
                   week(3) + ": one minute, and " +
                       (legs_are_easy() ? "on to the legs." : "a little further each day."),
                   week(4) + ": one stroke " +
                       (touchy.empty() ? "where it minds most" : "at the " + touchy) +
                       ", then rest."};
        if (const habit_forecast* none = unbrushed()) {
            s.says.push_back(
                "No one brushes it through in these weeks. In that case come sooner: by " +
                come_by_date(none->when.next_visit, o_) + ".");
        }
    }
    /// If the weeks of learning leave it unbrushed, where that brings its day forward; else null.
    [[nodiscard]] const habit_forecast* unbrushed() const {
        if (m_.ahead == nullptr || !m_.when || !mats_by_length(coat_)) {
            return nullptr;
        }
        for (const habit_forecast& h : m_.ahead->habits) {
            if (h.habit.how_often == habit::none && h.when.next_visit < m_.when->next_visit) {
                return &h;
            }
        }
        return nullptr;
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
            const selection* meant = top_.parts().find(word);
            if (words.size() < 2 && meant != nullptr) {
                words.push_back(meant->places.size() == 1 ? title(plain_, meant->places.front())
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
};

}  // namespace

void say_home(const owner_view& v) {
    return_part(v).say();
    brushing_part(v).say();
}

}  // namespace pelage::io
