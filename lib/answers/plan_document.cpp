// A plan as a document: for the groomer, or for a trainee with why.
#include <algorithm>
#include <utility>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/blade_heat.hpp"
#include "answers/blends.hpp"
#include "answers/card_cautions.hpp"
#include "answers/card_left.hpp"
#include "answers/choices.hpp"
#include "answers/first_lines.hpp"
#include "answers/lines.hpp"
#include "answers/plan_explain.hpp"
#include "answers/plan_parts.hpp"
#include "answers/plan_steps.hpp"
#include "answers/ways.hpp"
#include "answers/words/chance.hpp"
#include "answers/words/consent.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/service.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/tool.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

class plan_page {
  public:
    plan_page(const groom& g, const beside& b, const plan_request& r, const print_options& o)
        : g_(g), beside_(b), r_(r), o_(o), places_(g, r), cautions_(g, r) {
        page_.name = r.patient.name.empty() ? "A dog" : r.patient.name;
        page_.title = page_.name + (o.trainee ? ": the plan, and why" : ": the plan");
    }

    document all(const std::optional<return_date>& when, const mixed_coat* unseen) {
        first_lines(unseen);
        if (g_.stopped()) {
            page_.tell("STOP", stop_lines(g_, r_, o_));
            cautions();
        } else if (g_.question) {
            question();
        } else {
            if (std::string rule = not_clipped_as_a_rule(g_, r_); !rule.empty()) {
                page_.say(std::move(rule), 2);
            }
            booked();
            before_all();
            page_.tell("Not to be done as asked", stuck_places(beside_, g_, r_, o_));
            page_.tell("Leave", as_items(left_lines(g_, r_, o_.units)));
            consents();
            auto t = choices(g_, beside_, when, r_, o_);
            page_.tell("Ask the owner", ask_lines(g_, r_, o_.units, t.has_value()));
            if (t) {
                page_.open("The owner chooses before the first stroke");
                page_.show(std::move(*t));
            }
            work();
            if (!booked_in_part(r_) && !sore_limbs(g_, r_).empty()) {
                page_.say(sentence_case(nails_today(g_, r_)) + ".", 2);
            }
            booked_with_it();
            page_.tell("Heat, by running minutes", heat(g_, r_));
            zone_table();
            cautions();
            back_by(when);
            page_.tell("After the mats: how it grows back", growing_back(beside_, g_, r_, o_));
            page_.tell("Other ways, if the owner agrees", other_ways(beside_, g_, r_, o_, when));
            notes();
            if (o_.explain) {
                say_why(page_, g_, booked_in_part(r_) ? std::nullopt : when, r_, o_, beside_);
            }
        }
        return std::move(page_);
    }

  private:
    void first_lines(const mixed_coat* unseen) {
        say_alert(page_, r_.patient);
        if (g_.question) {
            page_.add({line_as::caution,
                       "No: a double coat is carded, not clipped, unless its owner agrees in "
                       "writing. It may grow back slowly or changed, or not at all.",
                       {},
                       0,
                       0});
        }
        const dog& d = r_.patient;
        if (!d.health.empty() && !g_.stopped()) {
            page_.say_of("HEALTH: ", d.health + ".");
        }
        page_.say(page_.name + ": " + r_.sheet.title + ", " + coat_of(r_.reference, *d.coat).title +
                      ", " + std::string(name(d.size)) +
                      (d.invented ? ". An invented dog for trying things out." : "."),
                  2);
        say_note(page_, d);
        if (unseen != nullptr) {
            say_unseen(page_, *unseen, r_, o_);
        }
    }

    /// What it is booked for, where that was said, and the minutes of the whole appointment.
    void booked() {
        for (line& l : booking_lines(g_, r_)) {
            page_.add(std::move(l));
        }
        if (!g_.bath_waits()) {
            const appointment a = appointment_of(r_, g_, booked_service(r_));
            page_.say(appointment_words(a, broken_up(g_, r_, a.total())), 2);
        }
    }

    /// A double coat that was to be clipped: what of it, and how the owner agrees.
    void question() {
        page_.item_of(
            r_.patient.departures.empty() ? "the sheet would clip: " : "asked to be clipped: ",
            joined(places_.by_part(g_.question->asked), ", "));
        consents();
        page_.open();
        const style* fits = find(r_.reference.styles, g_.question->instead);
        page_.say(fits == nullptr ? "No sheet of the reference fits this coat: card it out."
                                  : "In its place: " + fits->title + " (--style " + fits->id +
                                        "). " + fits->text);
    }

    /// The working list, before the bath and after it.
    void work() {
        const std::vector<plan_step> steps = steps_of(g_, r_, o_, beside_);
        for (const list when : {list::before_bath, list::after_bath}) {
            const bool nothing = std::none_of(steps.begin(), steps.end(),
                                              [&](const plan_step& s) { return s.when == when; });
            if (nothing && booked_in_part(r_)) {
                continue;
            }
            page_.open(heading_of(when));
            if (when == list::after_bath && bathed_between(r_) && !g_.bath_waits()) {
                how_bathed();
            }
            if (o_.trainee) {
                page_.add(step_detail(why_then(when), "why: "));
            }
            std::vector<line> joins = blends(g_, r_, when, o_.units);
            const auto blend_now = [&] {
                for (line& l : std::exchange(joins, {})) {
                    page_.add(std::move(l));
                }
            };
            for (const plan_step& s : steps) {
                if (s.when == when) {
                    if (basket_off(s, g_, r_)) {
                        blend_now();
                    }
                    add(s);
                }
            }
            blend_now();
        }
    }
    void booked_with_it() {
        std::size_t n = steps_of(g_, r_, o_, beside_).size();
        std::vector<line> all = booked_steps(g_, r_);
        for (line& l : all) {
            const std::string number = std::to_string(++n);
            l = {line_as::step, std::move(l.text),
                 std::string(number.size() < 3 ? 3 - number.size() : 0, ' ') + number + "  ", 0, 5};
        }
        page_.tell("Booked with it", std::move(all));
    }
    /// What hurt skin makes of the bath.
    void how_bathed() {
        if (std::string dry = no_bath_words(r_); !dry.empty()) {
            page_.add(step_detail(std::move(dry), {}));
        } else if (std::string gently = gently_words(r_); !gently.empty()) {
            page_.add(step_detail("the bath" + gently, {}));
        }
    }
    void add(const plan_step& s) {
        const std::string n = std::to_string(s.number);
        page_.add({line_as::step, s.in_a_line(),
                   std::string(n.size() < 3 ? 3 - n.size() : 0, ' ') + n + "  ", 0, 5});
        for (const std::string& text : minded(s)) {
            page_.add({line_as::caution, text, "! ", 5, 7});
        }
        for (const step_note& one : s.notes) {
            page_.add(step_detail(one.text, one.lead));
        }
    }
    /// What is minded at the places that a step is the first to go over, in brief as on the card.
    [[nodiscard]] std::vector<std::string> minded(const plan_step& s) {
        if (s.of != nullptr) {
            std::string text = cautions_.beneath(s.of->zones);
            return text.empty() ? std::vector<std::string>{} : std::vector{std::move(text)};
        }
        if (s.combs.empty()) {
            return {};
        }
        std::vector<std::string> out{joined(cautions_.briefs_of(caution_when::combing_out), "; ")};
        if (std::string text = cautions_.beneath(s.combs); !text.empty()) {
            out.push_back(std::move(text));
        }
        return out;
    }
    /// The gravest, of the whole dog, and hurt skin: before anything else is read.
    void before_all() {
        for (const caution_line& c : g_.cautions) {
            if (first_of_all(c)) {
                page_.caution(c.what.brief);
            }
        }
        say_hurt(page_, g_, r_, o_, cautions_);
    }
    [[nodiscard]] std::string heading_of(list when) const {
        const pelage::work total = when == list::before_bath ? g_.before : g_.after;
        const bool bathed = bathed_between(r_);
        const bool visits = in_visits(g_);
        const std::string text =
            when == list::before_bath ? (!g_.fleas.empty() && !visits && !stays_dry(r_)
                                             ? "The flea bath, and what comes before the finish"
                                         : visits ? "The first visit, or as much of it as it bears"
                                         : !bathed || stays_dry(r_) ? "At the table"
                                                                    : "Before the bath")
            : !bathed                 ? "Then, on a clean, dry, combed-out coat"
            : stays_dry(r_) && !g_.bath_waits()
                ? "No bath today; then, away from the hurt skin, on a dry, combed-out coat"
            : g_.bath_waits() ? "No bath while a mat is in. Once it is out, after the bath"
            : visits          ? "Another day, after the bath, on a clean, dry, combed-out coat"
                              : "After the bath, on a clean, dry, combed-out coat";
        return in_mmin(total) > 0 ? text + ", about " + detail::whole_minutes(total) + " min"
                                  : text;
    }
    /// Why this list is done then.
    [[nodiscard]] std::string why_then(list when) const {
        return when == list::before_bath
                   ? "mats come out dry, since wet fibres grip one another harder; prep "
                     "leaves dirty hair to a blade that isn't the finish blade"
               : stays_dry(r_)
                   ? "no water runs over hurt skin, so the coat is brushed and combed through "
                     "dry: a blade dulls sooner in it"
                   : "dirty or damp coat blunts a blade within minutes and bends under it: the "
                     "finish is cut on a clean, dry, combed-out coat" +
                         std::string(head_is_last()
                                         ? "; the head last, when the rest gives its measure"
                                         : "");
    }
    /// After the bath nothing but the head is left to do once the head is begun.
    [[nodiscard]] bool head_is_last() const {
        bool begun = false;
        bool last = true;
        for (const block& b : g_.blocks) {
            for (const std::size_t i : b.when == list::before_bath ? zone_list{} : b.zones) {
                const bool head = places_.zone_of(i).where == group::head;
                last = last && (head || !begun);
                begun = begun || head;
            }
        }
        return begun && last;
    }

    static std::vector<line> as_items(std::vector<line> lines) {
        for (line& l : lines) {
            l.as = line_as::item;
        }
        return lines;
    }

    /// Zone by zone: for people where they ask for it.
    void zone_table() {
        typed_table t{{"zone", "wish", "leaves", "off", "how"}};
        t.numbers = {false, true, false, true, false};
        t.whom = o_.zones ? shown_to::all : shown_to::programs;
        for (const zone_plan& z : g_.zones) {
            const std::string why = cause_words(r_, z, o_.units);
            auto& row = t.rows.emplace_back();
            row.emplace_back(title(r_.reference.dog_body, z.at));
            row.push_back(z.target ? cell(*z.target) : cell());
            row.push_back(z.leaves ? cell(*z.leaves) : cell());
            row.push_back(off_cell(z));
            const bool stuck = z.came == outcome::stuck;
            const std::string how = stuck ? "-" : title_words(z.how, o_.units);
            const std::string said = how + (why.empty() ? "" : "; " + why);
            row.emplace_back(stuck ? why : said, said);
        }
        page_.open(o_.zones ? "Zones" : "", o_.zones);
        page_.show(std::move(t));
    }
    /// How far it is from the wish, without the unit; nothing where that can't be seen.
    [[nodiscard]] cell off_cell(const zone_plan& z) const {
        const length off = z.target && z.leaves ? gap(z.leaves->best, *z.target) : length{};
        const std::string said = number(off);
        return said == "0" ? cell()
                           : cell(off, o_.units == length_unit::mm ? said : fraction_of_inch(off));
    }

    void cautions() {
        std::vector<line> all;
        for (const caution_line& c : g_.cautions) {
            const std::string where =
                c.where.empty() ? ""
                : c.what.when == caution_when::fleas
                    ? places_or_whole(r_.reference.dog_body, c.where) + ": "
                    : places_.in_parts(titles(r_.reference.dog_body, c.where)) + ": ";
            // a caution for the owner speaks to the owner: say whom its "your" means
            const std::string whom = c.what.who == "owner" ? "For the owner: " : "";
            all.push_back({line_as::caution, whom + where + c.what.text + because(c.what.why, o_),
                           "! ", 2, 4});
            all.back().as = c.what.danger > 2 ? line_as::notice : line_as::caution;
        }
        const caution* usual = find(r_.reference.cautions, "local-rules");
        if (all.empty() && booked_in_part(r_) && usual != nullptr) {
            // nothing is clipped, and still hands are laid on a dog
            all.push_back({line_as::caution, usual->text + because(usual->why, o_), "! ", 2, 4});
            all.back().as = usual->danger > 2 ? line_as::notice : line_as::caution;
        }
        page_.tell("Cautions", std::move(all));
    }

    void consents() {
        std::vector<line> all;
        for (const consent& c : g_.consents) {
            const std::string text = consent_words(c, g_, r_);
            all.push_back(c.given
                              ? item(text, "agreed: ", 7)
                              : line{line_as::box, text + " (once signed: --consent " + c.id + ")",
                                     "ask: ", 2, 7});
        }
        const bool open = std::any_of(g_.consents.begin(), g_.consents.end(),
                                      [](const consent& c) { return !c.given; });
        page_.tell(open ? "Sign first" : "The owner agreed in writing", std::move(all));
    }

    void back_by(const std::optional<return_date>& when) {
        if (const std::string_view none = no_day_yet(g_); !none.empty()) {
            page_.tell("Back", {sentence(sentence_case(std::string(none)) + ".")});
        } else if (booked_in_part(r_)) {
            page_.tell("Back", {sentence(full_groom_in_brief(when, r_, o_))});
        } else if (when) {
            page_.tell("Back", {sentence(when_in_words(*when, g_, r_, o_))});
            if (!g_.stuck.empty()) {
                page_.add(sentence("Not counted: what is not done yet (" +
                                   places_.listed_of(g_.stuck) + ")."));
            }
            if (any_hurt(g_)) {
                page_.add(sentence(
                    "Places left for hurt skin set no date: they are done when the veterinarian "
                    "says."));
            }
        }
    }

    void notes() {
        page_.open("Taken as given");
        for (const plan_note& n : g_.notes) {
            page_.item(note_words(n, r_, o_.units));
        }
        if (told_more(r_.patient)) {
            page_.item(
                "no advice is held for " +
                std::string(r_.patient.heard && !r_.patient.heard->known.empty() ? "all" : "what") +
                " that was told of its health: the cautions are those of any dog that ails; ask "
                "its owner or veterinarian what it needs");
        }
        page_.item(
            o_.explain
                ? "a range in brackets is what the length may come out at"
                : (g_.blends.empty() ? "minutes, " : "minutes, widths of blends, ") +
                      std::string("growth and what the lay adds are our guesses until you "
                                  "measure; a range in brackets is what a length may come out "
                                  "at; --explain tells more"));
    }

    const groom& g_;
    const beside& beside_;
    const plan_request& r_;
    const print_options& o_;
    place_words places_;
    card_cautions cautions_;
    document page_;
};

}  // namespace

document document_of(const groom& g, const std::optional<return_date>& when, const plan_request& r,
                     const print_options& o, const beside& b, const mixed_coat* unseen) {
    return plan_page(g, b, r, o).all(when, unseen);
}

}  // namespace pelage::io
