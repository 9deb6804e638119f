// A plan as a document: for the groomer, or for a trainee with why.
#include <algorithm>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/blade_heat.hpp"
#include "answers/blends.hpp"
#include "answers/first_lines.hpp"
#include "answers/grouped.hpp"
#include "answers/lines.hpp"
#include "answers/plan_explain.hpp"
#include "answers/plan_steps.hpp"
#include "answers/ways.hpp"
#include "answers/words/chance.hpp"
#include "answers/words/consent.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/service.hpp"
#include "answers/words/tool.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

class plan_page {
  public:
    plan_page(const groom& g, const beside& b, const plan_request& r, const print_options& o)
        : g_(g), beside_(b), r_(r), o_(o), places_(g, r) {
        page_.name = r.patient.name.empty() ? "A dog" : r.patient.name;
        page_.title = page_.name + (o.trainee ? ": the plan, and why" : ": the plan");
    }

    document all(const std::optional<return_date>& when, const mixed_coat* unseen) {
        first_lines(unseen);
        if (g_.stopped()) {
            stop();
            cautions();
        } else if (g_.question) {
            question();
        } else {
            not_clipped_as_a_rule();
            booked();
            work();
            page_.tell("Booked with it", other_steps());
            page_.tell("Heat, by running minutes", heat(g_, r_));
            page_.tell("Leave", left_alone());
            page_.tell("Not to be done as asked", stuck_places(beside_, g_, r_, o_));
            zone_table();
            cautions();
            consents();
            asks();
            back_by(when);
            page_.tell("After the mats: how it grows back", growing_back(beside_, g_, r_, o_));
            page_.tell("Other ways, if the owner agrees", other_ways(beside_, g_, r_, o_, when));
            notes();
            if (o_.explain) {
                say_why(page_, g_, when, r_, o_, beside_);
            }
        }
        return std::move(page_);
    }

  private:
    void first_lines(const mixed_coat* unseen) {
        say_alert(page_, r_.patient);
        if (g_.question) {
            page_.say(
                "No: a double coat is carded, not clipped, unless its owner agrees in writing. It "
                "may grow back slowly or changed, or not at all.");
        }
        const dog& d = r_.patient;
        page_.say(page_.name + ": " + r_.sheet.title + ", " + coat_of(r_.reference, *d.coat).title +
                      ", " + std::string(name(d.size)) +
                      (d.invented ? ". An invented dog for trying things out." : "."),
                  2);
        say_note(page_, d);
        if (unseen != nullptr) {
            say_unseen(page_, *unseen, r_, o_);
        }
    }

    /// The basis in brackets, under --explain.
    [[nodiscard]] std::string because(const evidence& e) const {
        return o_.explain ? " [" + basis_words(e) + "]" : std::string{};
    }

    void stop() {
        page_.open("STOP");
        const auto say = [&](std::string text) {
            page_.add({line_as::caution, std::move(text), {}, 2, 2});
        };
        if (!g_.stop.empty()) {
            say("felted to the skin: " + listed(titles(r_.reference.dog_body, g_.stop)) +
                ". A veterinarian decides how this coat comes off.");
        }
        for (const stop_sign s : g_.signs) {
            const stop_rule& rule = r_.reference.stops[static_cast<std::size_t>(s)];
            say(rule.seen + ". " + rule.act + because(rule.why));
        }
        if (!r_.patient.health.empty()) {
            say("Told of its health: " + r_.patient.health + ".");
        }
        say("Nothing is planned: a veterinarian sees this dog first.");
    }

    /// A coat that is only carded by custom and that this plan clips, a double one apart: its owner has
    /// agreed.
    void not_clipped_as_a_rule() {
        const coat& c = coat_of(r_.reference, *r_.patient.coat);
        const bool clipped = std::any_of(g_.zones.begin(), g_.zones.end(), [&](const zone_plan& z) {
            return z.how.kind == tool_kind::clip && !z.mat &&
                   r_.reference.dog_body.zones[z.at.zone].has(zone_use::jacket);
        });
        if (clipped && c.jacket == jacket_finish::card && !double_coated(c.id)) {
            page_.say(c.said_first, 2);
        }
    }

    /// What it is booked for, where that was said, and the minutes of the whole appointment.
    void booked() {
        const service& s =
            r_.booked != nullptr ? *r_.booked : service_of(r_.reference, service_kind::full);
        if (r_.booked != nullptr) {
            page_.say_of("Booked: ", s.title + ": " + s.text + ".");
            const bool strips = std::any_of(
                g_.zones.begin(), g_.zones.end(),
                [](const zone_plan& z) { return z.how_finished == finish::hand_strip; });
            if (s.kind == service_kind::hand_strip && !strips) {
                page_.say(
                    "The sheet strips nothing by hand: below is what it does say. Sheets for "
                    "wire coats strip: pelage sheet list.",
                    2);
            }
            if (!s.has(service_step::before_bath) && !r_.patient.mats.empty()) {
                page_.say(
                    "It carries mats, which this booking doesn't touch: offer a full groom, "
                    "or a bath and brush, soon.",
                    2);
            }
        }
        if (!g_.bath_waits()) {
            page_.say(appointment_words(appointment_of(r_, g_, s)), 2);
        }
    }
    /// Steps of a booking that the lists of a plan don't hold, each as the trade does it (common practice).
    [[nodiscard]] std::vector<line> other_steps() const {
        std::vector<line> out;
        for (const service_step s :
             booked_in_part() ? r_.booked->steps : std::vector<service_step>{}) {
            const std::string text = step_work_words(s);
            if (!text.empty()) {
                out.push_back(item(text));
            }
        }
        return out;
    }
    [[nodiscard]] bool booked_in_part() const { return r_.booked != nullptr && !r_.booked->whole; }

    /// A double coat that was to be clipped: what of it, and how the owner agrees.
    void question() {
        page_.item_of("the sheet clips: ", places_.in_parts(places_.titles_of(g_.question->asked)));
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
            if (nothing && booked_in_part()) {
                continue;
            }
            page_.open(heading_of(when));
            if (o_.trainee) {
                page_.add(step_detail(why_then(when), "why: "));
            }
            for (const plan_step& s : steps) {
                if (s.when == when) {
                    add(s);
                }
            }
            for (line& l : blends(g_, r_, when, o_.units)) {
                page_.add(std::move(l));
            }
        }
    }
    void add(const plan_step& s) {
        const std::string n = std::to_string(s.number);
        page_.add({line_as::step, s.in_a_line(),
                   std::string(n.size() < 3 ? 3 - n.size() : 0, ' ') + n + "  ", 0, 5});
        for (const step_note& one : s.notes) {
            page_.add(step_detail(one.text, one.lead));
        }
    }
    [[nodiscard]] std::string heading_of(list when) const {
        const pelage::work total = when == list::before_bath ? g_.before : g_.after;
        const bool bathed = r_.booked == nullptr || r_.booked->has(service_step::bath);
        const std::string text =
            when == list::before_bath ? (bathed ? "Before the bath" : "At the table")
            : !bathed                 ? "Then, on a clean, dry, combed-out coat"
            : g_.bath_waits()         ? "No bath while a mat is in. Once it is out, after the bath"
                                      : "After the bath, on a clean, dry, combed-out coat";
        return in_mmin(total) > 0 ? text + ", about " + detail::fixed(in_minutes(total), 0) + " min"
                                  : text;
    }
    /// Why this list is done then.
    [[nodiscard]] std::string why_then(list when) const {
        return when == list::before_bath
                   ? "mats come out dry, since wet fibres grip one another harder; prep "
                     "leaves dirty hair to a blade that isn't the finish blade"
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

    /// Places that are left, by why.
    [[nodiscard]] std::vector<line> left_alone() const {
        grouped<std::string> by_reason;
        zone_list by_sheet;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            const bool sheet = z.came == outcome::left_by_sheet;
            if (z.came == outcome::skin_left || (z.came == outcome::hair_shorter && !z.tidied) ||
                (sheet && z.withheld)) {
                by_reason.add(cause_words(r_, z, o_.units), i);
            } else if (sheet && (r_.booked == nullptr || r_.booked->does(z.at.zone))) {
                by_sheet.push_back(i);
            }
        }
        std::vector<line> out;
        for (const auto& [why, which] : by_reason.all()) {
            out.push_back(item(places_.listed_of(which) + ": " + why));
        }
        if (!by_sheet.empty()) {
            out.push_back(item(places_.listed_of(by_sheet), "as the sheet says: "));
        }
        if (booked_in_part()) {
            out.push_back(item("all that isn't booked"));
        }
        return out;
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
                                : places_.in_parts(titles(r_.reference.dog_body, c.where)) + ": ";
            // a caution for the owner speaks to the owner: say whom its "your" means
            const std::string whom = c.what.who == "owner" ? "For the owner: " : "";
            all.push_back(
                {line_as::caution, whom + where + c.what.text + because(c.what.why), "! ", 2, 4});
        }
        const caution* usual = find(r_.reference.cautions, "local-rules");
        if (all.empty() && booked_in_part() && usual != nullptr) {
            // nothing is clipped, and still hands are laid on a dog
            all.push_back({line_as::caution, usual->text + because(usual->why), "! ", 2, 4});
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
        page_.tell("The owner agrees in writing", std::move(all));
    }

    void asks() {
        std::vector<line> all;
        for (const uneven_pair& one : g_.asks) {
            all.push_back(item(ask_words(one, r_.reference.dog_body, o_.units)));
        }
        page_.tell("Ask the owner", std::move(all));
    }

    void back_by(const std::optional<return_date>& when) {
        if (when) {
            page_.tell("Back", {sentence(when_in_words(*when, g_, r_, o_))});
            if (!g_.stuck.empty()) {
                page_.add(sentence("Not counted: what is not done yet (" +
                                   places_.listed_of(g_.stuck) + ")."));
            }
        } else if (booked_in_part()) {
            page_.tell("Back",
                       {sentence("Not reckoned from this visit, which is no full groom: pelage "
                                 "regrow tells by the last one.")});
        }
    }

    void notes() {
        page_.open("Taken as given");
        for (const plan_note& n : g_.notes) {
            page_.item(note_words(n, r_, o_.units));
        }
        if (!r_.patient.health.empty()) {
            page_.item(
                "no advice is held for what was told of its health: the cautions are those of any "
                "dog that ails; ask its owner or veterinarian what it needs");
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
    document page_;
};

}  // namespace

document document_of(const groom& g, const std::optional<return_date>& when, const plan_request& r,
                     const print_options& o, const beside& b, const mixed_coat* unseen) {
    return plan_page(g, b, r, o).all(when, unseen);
}

}  // namespace pelage::io
