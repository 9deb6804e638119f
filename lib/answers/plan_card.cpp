// A plan as a card, to be read at arm's length: what to hold, where, what it leaves.
#include <algorithm>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/planner/appointment.hpp>

#include "answers/blends.hpp"
#include "answers/card_bath.hpp"
#include "answers/card_cautions.hpp"
#include "answers/card_left.hpp"
#include "answers/card_refused.hpp"
#include "answers/card_step.hpp"
#include "answers/card_today.hpp"
#include "answers/choices.hpp"
#include "answers/first_lines.hpp"
#include "answers/layout.hpp"
#include "answers/lines.hpp"
#include "answers/plan_parts.hpp"
#include "answers/plan_steps.hpp"
#include "answers/under_mats.hpp"
#include "answers/ways.hpp"
#include "answers/words/chance.hpp"
#include "answers/words/consent.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/places.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/service.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/strip.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

constexpr std::size_t beside_number = 4;  // columns that a step's number takes
std::string numbered(int number) {
    const std::string n = std::to_string(number);
    return std::string(n.size() < 2 ? 2 - n.size() : 0, ' ') + n + "  ";
}

std::string no_advice(const dog& d) {
    if (d.heard && d.heard->denied && d.heard->known.empty()) {
        return " Ask whether anything ails it; until then it is treated as unwell.";
    }
    const bool none = !d.heard || d.heard->known.empty();
    return std::string(" Held here for ") + (none ? "it" : "part of it") +
           ": only what any unwell dog needs.";
}

class card_page {
  public:
    card_page(const groom& g, const beside& b, const plan_request& r, const print_options& o)
        : g_(g), beside_(b), r_(r), o_(o), places_(g, r), cautions_(g, r) {
        page_.name = r.patient.name.empty() ? "A dog" : r.patient.name;
        page_.title = page_.name + ": " + r.sheet.title;
    }

    document all(const std::optional<return_date>& when, const mixed_coat* unseen) {
        head(unseen);
        if (g_.stopped()) {
            page_.tell("STOP", stop_lines(g_, r_, o_), false);
            cautions_.say_rest(page_);
            return std::move(page_);
        }
        if (std::string rule = not_clipped_as_a_rule(g_, r_); !rule.empty()) {
            page_.say(std::move(rule), 2);
        }
        for (line& l : booking_lines(g_, r_, true)) {
            page_.add(std::move(l));
        }
        for (const caution_line& c : g_.cautions) {
            if (first_of_all(c)) {
                if (std::string text = of_whole_dog(c); !text.empty()) {
                    page_.caution(std::move(text));
                }
            }
        }
        if (std::string text = today_only(steps_of(g_, r_, o_, beside_), g_, r_); !text.empty()) {
            page_.caution(std::move(text));
        }
        stuck();
        say_left(page_, g_, r_, o_, cautions_);
        agree(when);
        notes();
        before_work();
        work();
        auto n = static_cast<int>(steps_of(g_, r_, o_, beside_).size());
        for (const line& l : booked_steps(g_, r_)) {
            page_.add({line_as::step, l.text, numbered(++n), 0, beside_number});
        }
        cautions_.say_rest(page_);
        back(when);
        return std::move(page_);
    }

  private:
    void head(const mixed_coat* unseen) {
        const dog& d = r_.patient;
        say_alert(page_, d);
        if (!d.health.empty() && !g_.stopped()) {
            page_.say_of("HEALTH: ", d.health + "." + (told_more(d) ? no_advice(d) : ""));
        }
        const std::string coat = coat_of(r_.reference, *d.coat).title;
        // "Smooth coat, tidied" says it already
        const bool said = r_.sheet.title.find(coat.substr(1)) != std::string::npos;
        std::string text = (said ? "" : coat + ", ") + std::string(name(d.size));
        if (g_.planned() && !g_.bath_waits()) {
            const appointment a = appointment_of(r_, g_, booked_service(r_));
            const std::string steps = detail::whole_minutes(a.by_steps());
            text += "; about " + detail::whole_minutes(a.total()) + " min" +
                    (a.by_sheet ? " by its sheet (its steps: " + steps + ")" : "") +
                    broken_up(g_, r_, a.total());
        }
        text += d.invented ? ". Invented." : ".";
        constexpr std::size_t long_title = 60;  // a lead is never broken
        if (columns(page_.title) > long_title) {
            page_.say(page_.title + ", " + text, 2);
        } else {
            page_.add({line_as::headed, std::move(text), page_.title + ", ", 0, 2});
        }
        say_note(page_, d);
        if (unseen != nullptr) {
            say_unseen_in_brief(page_, *unseen, r_);
        }
    }

    /// What is in the way of places, and what would help, a line each.
    void stuck() {
        for (std::string& text : stuck_in_brief(beside_, g_, r_, o_)) {
            page_.add({line_as::item, std::move(text), "Not done: ", 0, 2});
        }
    }

    /// Of one that a veterinarian sees before it is groomed that isn't said twice.
    [[nodiscard]] std::string of_whole_dog(const caution_line& c) const {
        const auto ill =
            std::find_if(g_.cautions.begin(), g_.cautions.end(),
                         [](const caution_line& l) { return l.what.when == caution_when::ill; });
        if (!in_visits(g_) || ill == g_.cautions.end()) {
            return c.what.brief;
        }
        const std::string& rests = ill->what.brief;
        return c.what.when == caution_when::ill ? std::string{}
               : c.what.when == caution_when::frail_felted
                   ? c.what.brief + rests.substr(rests.find("; "))
                   : c.what.brief;
    }

    /// What the hand must know of the whole dog before it takes anything up.
    void before_work() {
        cautions_.told(
            caution_when::much_off);  // no work of this visit's minutes: in the whole plan
        for (std::string& text :
             cautions_.of_the_dog(places_of_steps(), wont_pass_in_brief(g_, r_, o_.units))) {
            page_.add({line_as::caution, std::move(text), "! ", 0, 2});
        }
    }

    /// Of each step that is told, in their order.
    [[nodiscard]] std::vector<zone_list> places_of_steps() const {
        std::vector<zone_list> out;
        zone_list combed;
        for (const combing_out& one : g_.combed) {
            combed.push_back(one.zone);
        }
        out.push_back(std::move(combed));
        for (const list when : {list::before_bath, list::after_bath}) {
            for (const block& b : g_.blocks) {
                if (b.when == when && (when == list::before_bath || !another_day())) {
                    out.push_back(b.zones);
                }
            }
        }
        return out;
    }
    [[nodiscard]] bool another_day() const { return goes_on_another_day(g_); }

    void work() {
        const std::vector<plan_step> steps = steps_of(g_, r_, o_, beside_);
        page_.open({}, false);
        bool nails = !booked_in_part(r_);  // not told yet
        for (const list when : {list::before_bath, list::after_bath}) {
            if (when == list::after_bath) {
                cautions_.second_time();
                const between_visits then = between_lists(g_, r_, cautions_);
                if (another_day() && nails) {  // what needs no bath isn't put off
                    nails = false;
                    between(with_nails({}, {}));
                }
                if (!then.ends_here.empty()) {
                    page_.open(then.ends_here, false);
                }
                if (!then.text.empty()) {
                    nails = nails && !nails_before_bath();
                    between(nails_before_bath() ? with_nails({}, "; " + then.text)
                            : another_day()     ? then.text + steps_later(steps)
                                                : then.text);
                }
                if (another_day()) {
                    return;
                }
            }
            const block* last = nullptr;
            bool blended = false;
            for (const plan_step& s : steps) {
                if (s.when == when) {
                    if (!blended && basket_off(s, g_, r_)) {
                        blended = true;
                        blend(when);
                    }
                    step(s, last);
                    last = s.of;
                }
            }
            if (!blended) {
                blend(when);
            }
            if (when == list::after_bath && nails) {
                between(with_nails({}, {}));
            }
        }
    }

    void blend(list when) {
        const bool turned = way_ == direction::against_lay;
        const std::string text = blends_in_brief(g_, r_, when, turned, o_.units);
        if (!text.empty()) {
            between(text);
            way_ =
                turned ? std::nullopt : way_;  // the blends said theirs: what follows says its own
        }
    }

    void step(const plan_step& s, const block* last) {
        const std::string lead = numbered(s.number);
        if (s.of == nullptr) {
            std::string does = s.does;
            if (!s.combs.empty()) {
                does += ": " + joined(cautions_.briefs_of(caution_when::combing_out), "; ") +
                        (combs_by_a_lump(g_) ? "; find the lump first, comb away from it" : "");
            }
            page_.add({line_as::step, does, lead, 0, beside_number});
            warn(cautions_.beneath(s.combs));
            return;
        }
        const setup& how = s.of->how;
        card_step c = card_step_of(*s.of, last, way_, g_, r_, o_.units);
        const auto belly = std::find(c.where.begin(), c.where.end(), "belly");
        if (belly != c.where.end()) {  // it stands beside its place
            const std::string felt_for = cautions_.on_belly(s.of->zones);
            *belly += felt_for.empty() ? "" : " (" + felt_for + ")";
        }
        std::string minded = cautions_.beneath(s.of->zones);
        way_ = how.kind == tool_kind::clip ? how.way : way_;
        page_.add({line_as::step, c.in_a_line(), lead, 0, beside_number});
        for (const std::string& text : c.exceptions) {
            beneath(text);
        }
        // what is clipped again after the bath is outlined then
        constexpr std::string_view tops = "tops only";
        constexpr std::string_view outlined = ", then scissor the outline";
        const auto outline = minded.find(std::string(tops) + std::string(outlined));
        if (!minded.empty() && once_more(*s.of, g_)) {
            const bool feet = goes_over(*s.of, group::feet, g_, r_);
            auto all = feet ? cautions_.briefs_of(caution_when::feet_by_blade)
                            : std::vector<std::string>{};
            all.insert(all.begin(), as_before());
            minded = joined(all, "; ");
        } else if (const std::string freed = freed_before(*s.of, g_, r_); !freed.empty()) {
            minded = freed + ": " + as_before() + (minded.empty() ? "" : "; " + minded);
        } else if (s.of->off && !another_day() && outline != std::string::npos) {
            minded.erase(outline + tops.size(), outlined.size());
        }
        warn(std::move(minded));
    }
    [[nodiscard]] std::string as_before() const {
        return bath_for(r_.patient.skin) == bath_care::none ? "as the first time"
                                                            : "as before the bath";
    }
    /// What is minded at the places that a step is the first to go over.
    void warn(std::string text) {
        if (!text.empty()) {
            page_.add({line_as::caution, std::move(text), "! ", beside_number, beside_number + 2});
        }
    }
    /// A line below a step, under its words.
    void beneath(const std::string& text) {
        page_.add({line_as::detail, text, {}, beside_number, beside_number + 2});
    }
    /// The same, of no step: before what follows, or after all of them.
    void between(const std::string& text) {
        page_.add({line_as::between, text, " -  ", 0, beside_number});
    }
    /// A nail that bleeds spoils no finished foot, and what ears are cleaned with is washed out (practice).
    [[nodiscard]] bool nails_before_bath() const {
        return bathed_between(r_) && !booked_in_part(r_) && !g_.bath_waits() && !in_visits(g_) &&
               !stays_dry(r_);
    }
    /// And the nails, and the ears where they may be cleaned.
    [[nodiscard]] std::string with_nails(std::string text, const std::string& after) const {
        text += text.empty() ? "" : "; ";
        const std::string nails = nails_today(g_, r_);
        if (sore_ear(g_, r_)) {
            return text + nails + after;
        }
        // behind "the feet are sore" ears would read as sore, too
        return text + (nails == "nails" ? "nails, ears" : "ears; " + nails) + after;
    }

    /// What nobody has agreed to yet, and what only the owner can say.
    void agree(const std::optional<return_date>& when) {
        std::vector<std::string> open;
        for (const consent& c : g_.consents) {
            if (!c.given) {
                open.push_back(consent_in_brief(c, g_, r_, o_.units) + " (" + c.id + ")");
            }
        }
        if (!open.empty()) {
            page_.add({line_as::box, joined(open, "; "), "Sign first: ", 0, 2});
        }
        choose(when);
    }

    /// While the owner has still to agree: whole ways, to tick one before the first stroke. What is only asked
    /// stands where there are none.
    void choose(const std::optional<return_date>& when) {
        const bool open = std::any_of(g_.consents.begin(), g_.consents.end(), [](const consent& c) {
            return !c.given && c.what != consent_for::frail;
        });
        std::vector<line> ways =
            open ? choices_in_brief(g_, beside_, when, r_, o_) : std::vector<line>{};
        for (line& l : ask_lines(g_, r_, o_.units, !ways.empty())) {
            page_.add({line_as::item, std::move(l.text), "Ask: ", 0, 2});
        }
        if (!ways.empty()) {
            page_.open("The owner chooses; planned: 1 (--way 2: another)", false);
            for (line& l : ways) {
                page_.add(std::move(l));
            }
            page_.open({}, false);
        }
    }

    /// Of what was taken as given that by which the work goes.
    void notes() {
        using kind = plan_note::kind;
        for (const plan_note& n : g_.notes) {
            if (n.what == kind::other_coat || n.what == kind::hair_by_record ||
                n.what == kind::mats_dealt || n.what == kind::mats_undated ||
                n.what == kind::tracks) {
                page_.add({line_as::item, note_words(n, r_, o_.units), "Note: ", 0, 2});
            }
        }
    }

    /// When the dog is back: a day by sound hair alone. What isn't done yet, hurt skin and what is left for teats
    /// don't count (after_groom); of teats it is said where they are left.
    void back(const std::optional<return_date>& when) {
        if (const std::string_view none = no_day_yet(g_); !none.empty()) {
            page_.say("Back: " + std::string(none) + ".", 2);
        } else if (booked_in_part(r_)) {
            page_.say(full_groom_in_brief(when, r_, o_), 2);
        } else if (when) {
            page_.say(when_in_brief(*when, g_, r_, o_) + strip_in_brief(g_, r_) +
                          (g_.stuck.empty() ? "" : " What is not done yet isn't counted.") +
                          (any_hurt(g_) ? " Hurt skin: when the vet says." : ""),
                      2);
        }
    }

    const groom& g_;
    const beside& beside_;
    const plan_request& r_;
    const print_options& o_;
    place_words places_;
    card_cautions cautions_;
    std::optional<direction> way_{};  ///< that of the step before
    document page_;
};

}  // namespace

document card_of(const groom& g, const std::optional<return_date>& when, const plan_request& r,
                 const print_options& o, const beside& b, const mixed_coat* unseen) {
    if (g.question) {
        return refused_card(g, r, unseen);
    }
    return card_page(g, b, r, o).all(when, unseen);
}

}  // namespace pelage::io
