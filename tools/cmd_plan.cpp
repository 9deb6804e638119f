#include <algorithm>
#include <sstream>

#include <pelage/answers/illustrated.hpp>
#include <pelage/answers/owner_page.hpp>
#include <pelage/answers/picture.hpp>
#include <pelage/answers/ways_to_choose.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/forecast/longest_coat.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/planner/alternatives.hpp>

#include "asked_groom.hpp"
#include "asker.hpp"
#include "plan_options.hpp"

namespace pelage::cli {

namespace {

constexpr introduction about{
    "plan", "what to do with a dog, in working order",
    "pelage plan biscuit --zones\n"
    "pelage plan --coat wavy --style one-length --now 'body 40 mm'\n"
    "pelage plan --mix 'F1b poodle x labrador to poodle' --style one-length\n"
    "pelage plan --coat curly --style lamb --size small --format json\n"
    "pelage plan bramble --any-sheet\n"
    "pelage plan biscuit --back-in 6w\n"
    "pelage plan bramble --for owner --format html -o bramble.html\n"
    "pelage plan --ask -o dogs/moss.toml\n"
    "pelage plan rosie --salon my-salon --ask\n"
    "pelage plan --coat curly --style lamb --mat 'left ear pelt 5 mm' --age old\n"
    "pelage plan --roster dogs.jsonl --jobs 2 -o plans.jsonl\n",
    "DOG is a file (a name ending in .toml) or the id of a dog of the salon.\n"
    "A roster is JSON Lines: a dog a line, the keys of a dog's file; - reads standard\n"
    "input. Each line is answered by one line of JSON, a faulty one by its faults.\n"
    "--ask keeps what is answered as it comes (dogs/moss.intake) until the dog's file\n"
    "is written: < goes back, q or an interrupt breaks off and ends with 1, and the\n"
    "same call goes on. Of a DOG only what is new is asked, and changed in its file.\n"
    "By a pipe each line is an answer.\n"
    "A dog of one breed (--mix, or mix in its file) is drawn with that breed's ears\n"
    "and tail. What an owner agrees to (--consent) is clip-down, clip-jacket,\n"
    "frail-dog, other-length, show-blades or sun-short; the card names what it wants.\n",
    "text, json, html, csv, svg; a roster: JSON Lines"};

/// What is read at the table; tables and all that is asked beyond it are the whole plan.
io::plan_told told_as(const plan_options& o, const workplace& w) {
    const bool card = !o.full && !o.zones && !w.print.explain && !w.print.trainee && !w.csv;
    return card ? io::plan_told::card : io::plan_told::whole;
}

reply longest_coat(const asked_groom& a, const plan_request& r, const groom& g, const days& wished,
                   io::plan_told as) {
    const longest_coat_answer b = back_in(r, g, wished);
    if (a.w.json) {
        return {io::json_of(b, r, a.w.print), b.holds ? done : answer_is_no};
    }
    io::document page = io::document_of(b, r, a.w.print, as);
    if (!b.holds) {
        // shorter than its owner asked for is for the owner to say: the work stays as it was ordered
        page.say("The plan as ordered, without that wait:");
        const auto when = std::optional{back_of(a, r, g)};
        const beside by = beside_plan(r, g, a.w.print.explain);
        page.append(as == io::plan_told::card ? io::card_of(g, when, r, a.w.print, by)
                                              : io::document_of(g, when, r, a.w.print, by));
    }
    return {a.w.written(std::move(page)), b.holds ? done : answer_is_no};
}

bool for_owner(const plan_options& o) {
    return o.reader == "owner" || o.reader == "consent" || o.reader == "home";
}

/// Beside a page to take home on a day of which nothing is on record: it is of the groom that was planned.
std::string not_logged(const io::owner_matter& m, const plan_request& r) {
    const visit* last = nullptr;
    for (const visit& v : r.patient.visits) {
        if (v.logged && r.today && v.on <= *r.today && (last == nullptr || last->on <= v.on)) {
            last = &v;
        }
    }
    const bool today_s = last != nullptr && last->on == *r.today;
    return m.moment == io::owner_moment::after && r.today && !today_s && !r.patient.id.empty()
               ? "pelage: note: nothing is logged for " + iso(*r.today) +
                     ": this page is of a groom as planned for that day" +
                     (last == nullptr ? "" : "; the last on record is of " + iso(last->on)) + "\n"
               : "";
}

/// The page for the owner: to sign before the groom, to take home after it, or both.
reply owners_page(const plan_options& o, const asked_groom& a, const plan_request& r,
                  const groom& g) {
    io::owner_matter m{g, r, std::nullopt, nullptr, nullptr, {}};
    m.moment = o.reader == "consent" ? io::owner_moment::before
               : o.reader == "home"  ? io::owner_moment::after
                                     : io::owner_moment::both;
    if (a.w.own) {
        m.from = a.w.own->card;
    }
    if (m.moment == io::owner_moment::after) {
        for (const visit& v : r.patient.visits) {
            m.from.groomer = v.logged && v.on == r.today && !v.who.empty() ? v.who : m.from.groomer;
        }
    }
    if (!o.groomer.empty()) {
        m.from.groomer = o.groomer;
    }
    forecast ahead;
    std::vector<regrowth_option> grow_back;
    std::vector<infeasible_zone> stuck;
    std::vector<other_way> ways;
    if (g.planned()) {
        ahead = forecast_of(r, g, false);
        over_all_coats(a, r, g, ahead);
        grow_back = ways_to_grow_back(r, g);
        // what was logged today, not what a plan would still do
        const auto logged =
            r.today ? kinds_logged(r.patient, *r.today) : std::vector<std::string>{};
        const bool other = !logged.empty() && logged.front() != "full";
        const bool in_part = other || (r.booked != nullptr && !r.booked->whole);
        m.when = in_part ? std::nullopt : std::optional{ahead.when};
        m.ahead = other ? nullptr : &ahead;
        m.grow_back = &grow_back;
        stuck = g.stuck.empty() ? stuck : infeasible_zones(r, g);
        m.stuck = &stuck;
        ways = io::owner_chooses(g) ? other_ways(r, g) : ways;
        for (other_way& w : ways) {
            w.when = back_of(a, r, w.plan);
        }
        m.ways = &ways;
    }
    return {a.w.json ? io::owner_json(m, a.w.print) : a.w.written(io::document_of(m, a.w.print)),
            code_of(g, r), not_logged(m, r)};
}

/// The dog drawn.
io::dog_picture picture(const asked_groom& a, const plan_request& r, const groom& g) {
    const outline& o = io::dog_outline();
    return picture_of(io::picture_of(g, r, o, a.w.print.units), o, r.reference.dog_body);
}

/// What its owner is asked first is drawn as what is offered in its place, where there is that.
io::dog_picture picture_asked_first(const asked_groom& a, const plan_request& r, const groom& g) {
    const auto instead = instead_of(r, g);
    if (!instead) {
        return picture(a, r, g);
    }
    const plan_request ask{r.reference,     r.rules, r.tools, instead->patient,
                           *instead->sheet, r.today, r.asked};
    io::dog_picture out = picture(a, ask, make_plan(ask));
    out.title += ", in place of " + r.sheet.title;
    return out;
}

/// A card as it stands in text.
std::vector<std::string> lines_of(const io::document& card, length_unit u) {
    std::istringstream text(io::text_of(card, u));
    std::vector<std::string> out;
    for (std::string line; std::getline(text, line);) {
        out.push_back(std::move(line));
    }
    return out;
}

/// Of a visit that is no full groom: what its last one says of the next; nothing where none is on record.
std::optional<return_date> by_last_full_groom(const asked_groom& a, plan_request r) {
    if (r.patient.visits.empty()) {
        return std::nullopt;
    }
    r.booked = nullptr;
    const groom whole = make_plan(r);
    return whole.planned() ? std::optional{back_of(a, r, whole)} : std::nullopt;
}

/// What the owner ticked: its plan, and the line that says so. The plan itself where nothing was said.
std::pair<groom, std::string> as_chosen(const plan_options& o, const asked_groom& a,
                                        const plan_request& r, groom g) {
    if (o.way.empty() ||
        !g.planned()) {  // a dog that goes to a veterinarian is told so, whatever was chosen
        return {std::move(g), {}};
    }
    if (r.booked != nullptr && !r.booked->whole) {
        throw error(errc::refused,
                    "--way: what is booked is part of a groom, which has no ways to "
                    "choose of; leave one out");
    }
    const auto when = std::optional{back_of(a, r, g)};
    std::vector<io::chosen_way> all =
        io::ways_to_choose(g, beside_plan(r, g, false), when, r, a.w.print.units);
    if (all.empty()) {
        throw error(errc::refused,
                    "--way: the card of this dog offers no ways to choose of; leave it out");
    }
    faults f;
    const auto n =
        whole_in("--way", o.way, 1, static_cast<unsigned>(all.size()), "write --way 2", f);
    f.throw_if_any();
    io::chosen_way& chosen = all[*n - 1];
    return {std::move(chosen.plan), "Way " + std::to_string(*n) + " of " +
                                        std::to_string(all.size()) +
                                        ", as the owner chose: " + chosen.what + "."};
}

/// The plan with the dog drawn behind what stands first.
reply plan_one(const plan_options& o, const surroundings& around) {
    faults f;
    if (!is_plain_line(o.groomer)) {
        f.say(errc::syntax,
              "--groomer: a line of plain text in UTF-8; found \"" + o.groomer + "\"");
    }
    const auto wished = o.back_in.empty() ? std::nullopt : wait_in("--back-in", o.back_in, f);
    (void)choice_in("--for", o.reader, {"owner", "consent", "home", "trainee"}, f);
    asked_groom a(o, o.dog, around, f, o.service);
    a.w.print.trainee = o.reader == "trainee";
    a.w.print.zones = o.zones;
    const plan_request r = a.request_of();
    const auto [g, chosen] = as_chosen(o, a, r, make_plan(r));
    if (wished && g.planned()) {
        return longest_coat(a, r, g, *wished, told_as(o, a.w));
    }
    if (for_owner(o)) {
        return owners_page(o, a, r, g);
    }
    if (g.question && a.w.svg) {
        return {svg_of(picture_asked_first(a, r, g)), code_of(g, r)};
    }
    if (g.question && !a.w.json) {
        const auto seen = a.unseen(r, g);
        io::document page = asked_first(a, r, g, pointer(seen), told_as(o, a.w));
        return {a.w.written(a.w.html ? io::with_views(std::move(page), picture_asked_first(a, r, g))
                                     : std::move(page)),
                answer_is_no};
    }
    const bool in_part = r.booked != nullptr && !r.booked->whole;
    const std::optional<return_date> when =
        g.planned() && !in_part ? std::optional{back_of(a, r, g)} : std::nullopt;
    const std::optional<return_date> full = in_part ? by_last_full_groom(a, r) : when;
    // once chosen nothing else is weighed beside it
    beside b = in_part || !chosen.empty() ? beside{} : beside_plan(r, g, a.w.print.explain);
    for (other_way& w : b.ways) {
        w.when = back_of(a, r, w.plan);
    }
    if (a.w.print.trainee && !a.w.print.explain && chosen.empty()) {
        b.why = reasons_why(r, g);
    }
    const auto unseen = a.unseen(r, g);
    const mixed_coat* u = pointer(unseen);
    if (a.w.json) {
        return {io::json_of(g, when, r, a.w.print, b, u), code_of(g, r)};
    }
    if (a.w.svg) {
        const io::document card = io::on_paper(io::card_of(g, full, r, a.w.print, b, u));
        return {svg_of(picture(a, r, g), lines_of(card, a.w.print.units)), code_of(g, r)};
    }
    io::document page = told_as(o, a.w) == io::plan_told::card
                            ? io::card_of(g, full, r, a.w.print, b, u)
                            : io::document_of(g, full, r, a.w.print, b, u);
    if (!chosen.empty()) {
        auto& first = page.sections.front().blocks;
        first.insert(first.begin(), io::line{io::line_as::paragraph, chosen, {}, 0, 2});
    }
    return {a.w.written(a.w.html ? io::with_views(io::on_paper(std::move(page)), picture(a, r, g))
                                 : std::move(page)),
            code_of(g, r)};
}

reply plan(plan_options& o, const surroundings& around) {
    if (!o.roster.empty()) {
        o.has = {false, false};
        return roster(o, around);
    }
    if (o.any_sheet) {
        o.has.csv = false;
        return any_sheet(o, around);
    }
    o.has.no_ics = "ics is for a calendar; write regrow DOG --weeks 26 --format ics";
    o.has.csv = !for_owner(o);
    o.has.svg = !for_owner(o) && o.back_in.empty();
    if (o.ask) {
        const auto asked = ask_for_dog(o, around);
        if (!asked) {
            return {{}, answer_is_no};
        }
        o.dog.dog = *asked;
        o.output.clear();  // it named the dog's file
    }
    return plan_one(o, around);
}

}  // namespace

plan_options::plan_options(CLI::App& a) : common_options(a) {
    excludes(app, "--roster",
             {"dog", heading::dog, heading::found, "--any-sheet", "--back-in", "--ask", "--for",
              "--way", "--zones", "--units", "--explain"});
    excludes(app, "--any-sheet", {"--style", "--ask", "--for", "--way", "--zones", "--service"});
    excludes(app, "--back-in", {"--for", "--way", "--zones"});
    // the intake asks for them, and writes what is answered
    excludes(
        app, "--ask",
        {heading::found, "--coat", "--mix", "--style", "--size", "--brush", "--now", "--groomed"});
    needs(app, "--jobs", "--roster");
    needs(app, "--from", "--roster");
    needs(app, "--groomer", "--for");
    drop(app, {"--cannot", "--event"});
}

void add_plan(CLI::App& root, task& chosen) {
    add_command<plan_options>(root, chosen, about, plan);
}

}  // namespace pelage::cli
