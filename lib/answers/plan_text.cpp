// A plan as text.
#include <algorithm>
#include <cmath>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/alternatives_text.hpp"
#include "answers/blade_heat.hpp"
#include "answers/blends_text.hpp"
#include "answers/first_lines.hpp"
#include "answers/layout.hpp"
#include "answers/plan_basis.hpp"
#include "answers/words/chance.hpp"
#include "answers/words/consent.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

class plan_writer {
  public:
    plan_writer(const groom& g, const beside& b, const plan_request& r, const print_options& o,
                const mixed_coat* unseen)
        : g_(g), beside_(b), r_(r), o_(o), unseen_(unseen) {}

    [[nodiscard]] std::string all(const std::optional<return_date>& when) {
        document first;
        say_alert(first, r_.patient);
        out_ += text_of(first, o_.units, o_.width);
        if (g_.question) {
            say("",
                "No: a double coat is carded, not clipped, unless its owner agrees in writing. It "
                "may grow back slowly or changed, or not at all.",
                0);
        }
        say("", heading(), 2);
        document below;
        say_note(below, r_.patient);
        if (unseen_ != nullptr) {
            say_unseen(below, *unseen_, r_, o_);
        }
        out_ += text_of(below, o_.units, o_.width);
        if (g_.stopped()) {
            stop();
            cautions();
            return out_;
        }
        if (g_.question) {
            question();
            return out_;
        }
        not_clipped_as_a_rule();
        work_list(list::before_bath);
        work_list(list::after_bath);
        section("Heat, by running minutes", heat_text(g_, r_, o_));
        left_alone();
        stuck();
        if (o_.zones) {
            out_ += "\nZones\n" + laid_out(zone_table(), o_.width);
        }
        cautions();
        consents();
        asks();
        if (when) {
            out_ += "\nBack\n";
            say("  ", when_in_words(*when, g_, r_, o_), 2);
            if (!g_.stuck.empty()) {
                say("  ",
                    "Not counted: what is not done yet (" + listed(titles_of(g_.stuck)) + ").", 2);
            }
        }
        section("After the mats: how it grows back", grow_back_text(beside_, g_, r_, o_));
        section("Other ways, if the owner agrees", other_ways_text(beside_, g_, r_, o_, when));
        notes();
        if (o_.explain) {
            explain(when);
        }
        return out_;
    }

  private:
    void section(std::string_view heading, const std::string& lines) {
        if (!lines.empty()) {
            out_ += "\n" + std::string(heading) + "\n" + lines;
        }
    }
    void say(std::string_view first, std::string_view text, std::size_t indent) {
        out_ += wrapped(first, text, indent, o_.width);
    }
    [[nodiscard]] const zone& zone_of(std::size_t i) const {
        return r_.reference.dog_body.zones[g_.zones[i].at.zone];
    }
    [[nodiscard]] std::string title_of(std::size_t i) const {
        return title(r_.reference.dog_body, g_.zones[i].at);
    }

    [[nodiscard]] std::vector<std::string> titles_of(const std::vector<std::size_t>& which) const {
        return titles(r_.reference.dog_body, places_of(which));
    }
    [[nodiscard]] std::vector<place> places_of(const std::vector<std::size_t>& which) const {
        std::vector<place> out;
        for (const std::size_t i : which) {
            out.push_back(g_.zones[i].at);
        }
        return out;
    }

    [[nodiscard]] std::string heading() const {
        const dog& d = r_.patient;
        std::string s = (d.name.empty() ? "A dog" : d.name) + ": " + r_.sheet.title;
        s += ", " + coat_of(r_.reference, *d.coat).title + ", " + std::string(name(d.size));
        s += d.invented ? ". An invented dog for trying things out." : ".";
        return s;
    }

    void stop() {
        out_ += "\nSTOP\n";
        if (!g_.stop.empty()) {
            say("  ",
                "felted to the skin: " + listed(titles(r_.reference.dog_body, g_.stop)) +
                    ". A veterinarian decides how this coat comes off.",
                2);
        }
        for (const stop_sign s : g_.signs) {
            const stop_rule& rule = r_.reference.stops[static_cast<std::size_t>(s)];
            say("  ", rule.seen + ". " + rule.act + because(rule.why), 2);
        }
        if (!r_.patient.health.empty()) {
            say("  ", "Told of its health: " + r_.patient.health + ".", 2);
        }
        say("  ", "Nothing is planned: a veterinarian sees this dog first.", 2);
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
            say("", c.said_first, 2);
        }
    }

    /// A double coat that was to be clipped: what of it, and how the owner agrees.
    void question() {
        say("  the sheet clips: ", in_parts(titles_of(g_.question->asked)), 4);
        consents();
        out_ += "\n";
        const style* fits = find(r_.reference.styles, g_.question->instead);
        say("",
            fits == nullptr
                ? "No sheet of the reference fits this coat: card it out."
                : "In its place: " + fits->title + " (--style " + fits->id + "). " + fits->text,
            0);
    }

    /// The basis in brackets, under --explain.
    [[nodiscard]] std::string because(const evidence& e) const {
        return o_.explain ? " [" + basis_words(e) + "]" : std::string{};
    }

    [[nodiscard]] std::string leaves_of(const block& b) const {
        const auto& first = left_in(b, g_.zones[b.zones.front()]);
        if (!first || b.how.kind != tool_kind::clip) {
            return {};
        }
        const bool alike = std::all_of(b.zones.begin(), b.zones.end(), [&](std::size_t i) {
            const auto& here = left_in(b, g_.zones[i]);
            return here && *here == *first;
        });
        return alike ? ", leaves " + show(*first, o_.units) : std::string{};
    }

    /// "muzzle 25 mm, skull 32 mm" for scissors, "neck, back" for clippers.
    [[nodiscard]] std::string zones_of(const block& b) const {
        const bool aimed = b.how.kind == tool_kind::scissors || b.how.kind == tool_kind::thinners;
        std::string s;
        std::vector<std::size_t> alike;
        for (std::size_t n = 0; n < b.zones.size(); ++n) {
            const std::size_t i = b.zones[n];
            alike.push_back(i);
            const bool last = n + 1 == b.zones.size();
            if (!last && (!aimed || same_target(i, b.zones[n + 1]))) {
                continue;
            }
            for (const std::string& t : titles_of(alike)) {
                s += (s.empty() ? "" : ", ") + t;
            }
            if (const auto to = aim_of(i); aimed && to) {
                s += " " + show(*to, o_.units);
            }
            alike.clear();
        }
        return s;
    }
    /// What a hand tool is aimed at: the wish, or today's hair where that is only tidied.
    [[nodiscard]] std::optional<length> aim_of(std::size_t i) const {
        const auto& leaves = g_.zones[i].leaves;
        return leaves ? std::optional{leaves->best} : std::nullopt;
    }
    [[nodiscard]] bool same_target(std::size_t a, std::size_t b) const {
        const auto x = aim_of(a);
        const auto y = aim_of(b);
        return x && y && in_hundredths(*x) == in_hundredths(*y);
    }

    [[nodiscard]] static std::string verb(const block& b) {
        if (b.off) {
            return ", to be finished after the bath";
        }
        switch (b.done) {
            case finish::comb_then_scissor:
                return ", then scissor to shape";
            case finish::thin:
            case finish::card:
            case finish::hand_strip:
            case finish::clip:
            case finish::scissor:
            case finish::leave:
                break;
        }
        return {};
    }

    /// Which way to go: in a few words each once, or in full with the zones under --explain.
    void sweeps(const block& b) {
        if (b.how.kind != tool_kind::clip) {
            return;
        }
        std::vector<std::string> seen;
        for (const std::size_t i : b.zones) {
            const zone& z = zone_of(i);
            std::string s = in_full() ? in_pairs(b, i) + " " + z.stroke : z.sweep;
            if (std::find(seen.begin(), seen.end(), s) == seen.end()) {
                seen.push_back(std::move(s));
            }
        }
        const bool turned = b.how.way == direction::against_lay;
        say(turned ? "     go against: " : "     stroke: ", joined(seen, "; "), 7);
    }

    /// How to hold the skin where it is thin or folds and the blade comes near it.
    void holds(const block& b) {
        // 6.4 mm: longer ones keep their distance from a fold (assumption)
        const bool far = b.how.over || in_mm(b.how.tool.stated.best) > 6.4;
        if (b.how.kind != tool_kind::clip || (b.how.over && !in_full())) {
            return;
        }
        std::vector<std::string> seen;
        for (const std::size_t i : b.zones) {
            const zone& z = zone_of(i);
            // a long blade's gaps catch webs and folds
            const bool near = !far || in_full() || z.has(zone_use::web);
            std::string s = in_pairs(b, i) + ", " + z.hold;
            if (near && !z.hold.empty() && z.cover != skin::firm &&
                (seen.empty() || seen.back() != s)) {
                seen.push_back(std::move(s));
            }
        }
        if (!seen.empty()) {
            say("     skin: ", joined(seen, "; "), 7);
        }
    }

    /// The title of a zone of a block; of the pair where both sides are in it.
    [[nodiscard]] std::string in_pairs(const block& b, std::size_t i) const {
        const place& p = g_.zones[i].at;
        const bool both = std::count_if(b.zones.begin(), b.zones.end(), [&](std::size_t n) {
                              return g_.zones[n].at.zone == p.zone;
                          }) > 1;
        return both ? title(r_.reference.dog_body, place{p.zone, side::both}) : title_of(i);
    }

    [[nodiscard]] bool in_full() const { return o_.explain || o_.trainee; }

    /// For a trainee: why this tool in these places, and what gets hurt there.
    void why(const block& b) {
        if (!o_.trainee) {
            return;
        }
        for (const std::string& s : why_lines(beside_, b.zones, g_, r_, o_)) {
            say("     why: ", s, 7);
        }
        std::vector<std::string> hazards;
        for (const std::size_t i : b.zones) {
            std::string s = in_pairs(b, i) + ", " + zone_of(i).hazard;
            if (!zone_of(i).hazard.empty() && (hazards.empty() || hazards.back() != s)) {
                hazards.push_back(std::move(s));
            }
        }
        if (!hazards.empty()) {
            say("     mind: ", joined(hazards, "; "), 7);
        }
    }

    /// When the blade is due to be felt and oiled before the block ends.
    void runs_hot(const block& b) {
        const std::int64_t every =
            std::max<std::int64_t>(1, in_mmin(r_.rules.refusal.oil_after.best));
        const auto times_due = [&](const work& w) { return (in_mmin(w) - 1) / every; };
        if (times_due(b.running) > times_due(b.running_before)) {
            say("     ",
                "about " + detail::fixed(in_minutes(b.running), 0) +
                    " min on this blade: feel and oil it on the way",
                7);
        }
    }

    /// "matted-area" as it is said.
    static std::string spoken(std::string_view id) {
        std::string text{id};
        std::replace(text.begin(), text.end(), '-', ' ');
        return text;
    }

    /// " at the tail", " behind the ears": some titles say where by themselves.
    static std::string at_the(const std::string& title) {
        const bool itself = title.starts_with("behind ") || title.starts_with("under ");
        return (itself ? " " : " at the ") + title;
    }

    void block_line(const block& b, int number) {
        const std::string s = title(b.how) + verb(b) + leaves_of(b) + ": " + zones_of(b);
        say(padded(std::to_string(number), 3, true) + "  ", s, 5);
        if (b.how.over && number_of_comb_ == 0) {
            number_of_comb_ = number;
            say("     ",
                "seat the comb; if it drops off, the " + b.how.tool.id + " cuts to the skin", 7);
        }
        sweeps(b);
        holds(b);
        runs_hot(b);
        why(b);
        remarks(b);
    }

    /// What is said of single places of a block, places of which the same is said together.
    void remarks(const block& b) {
        std::vector<std::pair<std::string, std::vector<std::size_t>>> all;
        const auto add = [&](const std::string& text, std::size_t i) {
            const auto at = std::find_if(all.begin(), all.end(),
                                         [&](const auto& r) { return r.first == text; });
            (at == all.end() ? all.emplace_back(text, std::vector<std::size_t>{}) : *at)
                .second.push_back(i);
        };
        for (const std::size_t i : b.zones) {
            const zone_plan& z = g_.zones[i];
            if (b.off) {
                add(z.mat ? std::string(in_words(*z.mat)) + ", clipped off" : why_of(z), i);
                continue;
            }
            if (z.off_by && (z.came == outcome::clipped_under || z.came == outcome::taken_down)) {
                add("once more, for what the bath raised", i);
                continue;
            }
            if (z.came == outcome::off_target || z.came == outcome::beyond_reach ||
                z.came == outcome::clipped_under || z.came == outcome::goes_along || z.tidied ||
                (z.why && z.blade_wish)) {
                add(why_of(z), i);
            }
            if (!z.note.empty()) {
                add(z.note, i);
            }
            for (const skin_finding& f : z.around) {
                add(go_around_words(z, f, r_.rules.refusal, o_.units), i);
            }
            if (!z.beside_hurt.empty()) {
                add("keep off the edge towards the " +
                        listed(titles(r_.reference.dog_body, z.beside_hurt)),
                    i);
            }
        }
        for (const auto& [text, where] : all) {
            say("     ", listed(titles_of(where)) + ": " + text, 7);
        }
    }

    /// After the bath nothing but the head is left to do once the head is begun.
    [[nodiscard]] bool head_is_last() const {
        bool begun = false;
        bool last = true;
        for (const block& b : g_.blocks) {
            if (b.when == list::before_bath) {
                continue;
            }
            for (const std::size_t i : b.zones) {
                const bool head = zone_of(i).where == group::head;
                last = last && (head || !begun);
                begun = begun || head;
            }
        }
        return begun && last;
    }

    /// How deep a mat lies isn't known: tried first, and what more there is beneath would change.
    void trials() {
        std::vector<std::size_t> unknown;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (g_.zones[i].trial) {
                unknown.push_back(i);
            }
        }
        if (unknown.empty()) {
            return;
        }
        const zone_plan& first = g_.zones[unknown.front()];
        const setup& tried = first.off_by ? *first.off_by : first.how;
        const length share = mm(r_.rules.refusal.under_mat_share.best);
        std::string more;
        // only where a longer blade may go bare at all
        const bool firm = std::all_of(unknown.begin(), unknown.end(), [&](std::size_t i) {
            return zone_of(i).where != group::prep && zone_of(i).cover == skin::firm;
        });
        for (const setup& s : setups_of(r_.tools, r_.today, r_.rules.cut)) {
            const bool next = firm && s.kind == tool_kind::clip && !s.over &&
                              s.way == direction::with_lay && s.tool.cut == teeth::full &&
                              s.tool.stated.best > tried.tool.stated.best &&
                              s.tool.stated.best <= r_.rules.refusal.under_mat_longest.best;
            if (next) {
                more = "; measure what lies beneath: from " +
                       show(mm(std::ceil(in_mm(s.tool.stated.best) / in_mm(share) * 10.0) / 10.0),
                            o_.units) +
                       " on a " + held(s) + " may go under";
            }
        }
        say(padded(std::to_string(++line_), 3, true) + "  ",
            "try " + held(tried) +
                " flat under the edge of each mat: " + listed(titles_of(unknown)) +
                "; if it won't pass, stop: a veterinarian decides" + more,
            5);
    }

    void work_list(list when) {
        const bool before = when == list::before_bath;
        const work total = before ? g_.before : g_.after;
        const bool waits = !before && g_.bath_waits();
        out_ += before  ? "\nBefore the bath"
                : waits ? "\nNo bath while a mat is in. Once it is out, after the bath"
                        : "\nAfter the bath, on a clean, dry, combed-out coat";
        const bool work_there = in_mmin(total) > 0;
        out_ += work_there ? ", about " + detail::fixed(in_minutes(total), 0) + " min\n" : "\n";
        if (o_.trainee) {
            say("     why: ",
                before ? "mats come out dry, since wet fibres grip one another harder; prep "
                         "leaves dirty hair to a blade that isn't the finish blade"
                       : "dirty or damp coat blunts a blade within minutes and bends under it: the "
                         "finish is cut on a clean, dry, combed-out coat" +
                             std::string(head_is_last()
                                             ? "; the head last, when the rest gives its measure"
                                             : ""),
                7);
        }
        if (before) {
            if (const std::string fleas = flea_bath_words(g_, r_.reference.dog_body);
                !fleas.empty()) {
                say(padded(std::to_string(++line_), 3, true) + "  ", fleas, 5);
            }
            say(padded(std::to_string(++line_), 3, true) + "  ",
                "look the dog over: skin, ears, eyes, feet; comb check down to the skin", 5);
            trials();
            for (const combing_out& c : g_.combed) {
                say(padded(std::to_string(++line_), 3, true) + "  ",
                    "comb out the " + spoken(name(c.grade)) + at_the(title_of(c.zone)) +
                        ", about " + std::to_string(std::lround(in_minutes(c.takes))) + " min",
                    5);
                if (o_.trainee) {
                    say("     why: ",
                        "within the " +
                            detail::fixed(in_minutes(comb_out_budget(r_.patient, r_.rules.refusal)),
                                          0) +
                            " min this dog is combed out for: the hair stays",
                        7);
                }
            }
        }
        for (const block& b : g_.blocks) {
            if (b.when == when) {
                block_line(b, ++line_);
            }
        }
        out_ += blend_lines(g_, r_, when, o_);
    }

    [[nodiscard]] std::string why_of(const zone_plan& z) const {
        return cause_words(r_, z, o_.units);
    }

    void left_alone() {
        std::string text;
        std::vector<std::pair<std::string, std::vector<std::size_t>>> by_reason;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            if (z.came == outcome::skin_left || (z.came == outcome::hair_shorter && !z.tidied) ||
                (z.came == outcome::left_by_sheet && z.withheld)) {
                const std::string why = why_of(z);
                const auto at = std::find_if(by_reason.begin(), by_reason.end(),
                                             [&](const auto& one) { return one.first == why; });
                (at == by_reason.end() ? by_reason.emplace_back(why, std::vector<std::size_t>{})
                                       : *at)
                    .second.push_back(i);
            }
        }
        for (const auto& [why, which] : by_reason) {
            text += wrapped("  ", listed(titles_of(which)) + ": " + why, 4, o_.width);
        }
        std::vector<std::size_t> by_sheet;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (g_.zones[i].came == outcome::left_by_sheet && !g_.zones[i].withheld) {
                by_sheet.push_back(i);
            }
        }
        if (!by_sheet.empty()) {
            text += wrapped("  as the sheet says: ", listed(titles_of(by_sheet)), 4, o_.width);
        }
        if (!text.empty()) {
            out_ += "\nLeave\n" + text;
        }
    }

    void stuck() { section("Not to be done as asked", stuck_text(beside_, g_, r_, o_)); }

    void cautions() {
        if (g_.cautions.empty()) {
            return;
        }
        out_ += "\nCautions\n";
        for (const caution_line& c : g_.cautions) {
            const std::string where =
                c.where.empty() ? "" : in_parts(titles(r_.reference.dog_body, c.where)) + ": ";
            // a caution for the owner speaks to the owner: say whom its "your" means
            const std::string whom = c.what.who == "owner" ? "For the owner: " : "";
            say("  ! ", whom + where + c.what.text + because(c.what.why), 4);
        }
    }

    /// All of the places; a part of the dog that is among them as a whole by its own name.
    [[nodiscard]] std::string in_parts(std::vector<std::string> names) const {
        for (const group part : {group::body, group::legs, group::head}) {
            std::vector<std::size_t> of_it;
            for (std::size_t i = 0; i < g_.zones.size(); ++i) {
                if (zone_of(i).where == part) {
                    of_it.push_back(i);
                }
            }
            const std::vector<std::string> own = titles_of(of_it);
            const auto named = [&](const std::string& t) {
                return std::find(names.begin(), names.end(), t) != names.end();
            };
            if (own.size() > 1 && std::all_of(own.begin(), own.end(), named)) {
                *std::find(names.begin(), names.end(), own.front()) = name(part);
                std::erase_if(names, [&](const std::string& t) {
                    return std::find(own.begin(), own.end(), t) != own.end();
                });
            }
        }
        return listed(names);
    }

    void consents() {
        if (g_.consents.empty()) {
            return;
        }
        out_ += "\nThe owner agrees in writing\n";
        for (const consent& c : g_.consents) {
            say(c.given ? "  agreed: " : "  ask: ",
                consent_words(c, g_, r_) +
                    (c.given ? "" : " (once signed: --consent " + c.id + ")"),
                7);
        }
    }

    void asks() {
        if (g_.asks.empty()) {
            return;
        }
        out_ += "\nAsk the owner\n";
        for (const uneven_pair& one : g_.asks) {
            say("  ", ask_words(one, r_.reference.dog_body, o_.units), 4);
        }
    }

    void notes() {
        out_ += "\nTaken as given\n";
        for (const plan_note& n : g_.notes) {
            say("  ", note_words(n, r_, o_.units), 4);
        }
        if (!r_.patient.health.empty()) {
            say("  ",
                "no advice is held for what was told of its health: the cautions are those of any "
                "dog that ails; ask its owner or veterinarian what it needs",
                4);
        }
        say("  ",
            o_.explain
                ? "a range in brackets is what the length may come out at"
                : (g_.blends.empty() ? "minutes, " : "minutes, widths of blends, ") +
                      std::string("growth and what the lay adds are our guesses until you "
                                  "measure; a range in brackets is what a length may come out "
                                  "at; --explain tells more"),
            4);
    }

    [[nodiscard]] table zone_table() const {
        table t;
        t.head = {"zone", "wish", "leaves", "off", "how"};
        t.numbers = {false, true, false, true, false};
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            const std::string off =
                z.target && z.leaves ? number(gap(z.leaves->best, *z.target)) : "";
            const std::string how = z.came == outcome::stuck ? "-" : title(z.how);
            const std::string why = why_of(z);
            t.rows.push_back({title_of(i), z.target ? show(*z.target, o_.units) : "",
                              z.leaves ? show(*z.leaves, o_.units) : "", off == "0" ? "" : off,
                              how + (why.empty() ? "" : "; " + why)});
        }
        return t;
    }

    /// How sure it is that no plan costs less.
    [[nodiscard]] std::string proof_in_words() const {
        const proof& p = g_.choice.sure;
        const double bound = static_cast<double>(p.bound) / 1000.0;
        std::string text = "the cheapest there is";
        if (!p.optimal) {
            // rounded up: "within" must hold
            const double gap = std::ceil((in_minutes(g_.choice.cost) - bound) * 10.0) / 10.0;
            text = "not proven: within " + detail::fixed(gap, 1) +
                   " min of the cheapest (no plan under " + detail::fixed(bound, 2) + " min)";
        }
        return text + "; parts of the search bounded: " + std::to_string(p.nodes) +
               ", zones with ties: " + std::to_string(p.ties);
    }

    void explain(const std::optional<return_date>& when) {
        out_ += "\nWhy so\n";
        say("  ",
            "Cost " + detail::fixed(in_minutes(g_.choice.cost), 2) +
                " min (work, misses, pick-ups, steps): " + proof_in_words() + ".",
            2);
        const figure<double>& lay = lay_of(r_.reference, r_.rules, *r_.patient.coat);
        say("  lay of the coat: ", detail::fixed(lay.best, 0) + " degrees, " + basis_words(lay.why),
            4);
        say("  minutes: ", basis_words(r_.rules.prices.scissor.why), 4);
        explain_order();
        out_ += "\nWhat it stands on\n";
        for (const stands_on& one : what_it_stands_on(g_, when, r_, o_)) {
            say("  ", one.text + ": " + basis_words(one.why), 4);
        }
        section("Why this", why_text(beside_, g_, r_, o_));
        section("Without it", without_text(beside_, g_, r_, o_));
        out_ += "\nNot used\n";
        refusals();
    }

    void explain_order() {
        const auto taking_up = [](const list_order& o) {
            return detail::fixed(static_cast<double>(o.cost.pick_ups) / 1000.0, 2) + " min";
        };
        const bool proven = g_.order_before.proven && g_.order_after.proven;
        say("  order: ",
            "blades and combs are taken up in " + taking_up(g_.order_before) + " before and " +
                taking_up(g_.order_after) + " after the bath; where that leaves it open the " +
                "head comes last, then body, legs, tail, feet, then neighbour by neighbour; " +
                (proven ? "no order is better" : "too long a list to prove it the best order"),
            4);
        const price_rules& p = r_.rules.prices;
        say("  feel and oil a blade every " +
                detail::fixed(in_minutes(r_.rules.refusal.oil_after.best), 0) + " min: ",
            basis_words(r_.rules.refusal.oil_after.why), 4);
        if (!r_.patient.mats.empty()) {
            const refusal_rules& rules = r_.rules.refusal;
            const bool least = comb_out_budget(r_.patient, rules) < rules.comb_out_limit.low;
            say("  combing out ends after " +
                    detail::fixed(in_minutes(comb_out_budget(r_.patient, rules)), 0) + " min: ",
                basis_words(least ? rules.comb_out_frail.why : rules.comb_out_limit.why), 4);
        }
        if (!g_.blends.empty()) {
            say("  blends: ",
                show(mm(10.0), o_.units) + " wide for each " +
                    show(mm(10.0 * p.blend_slope.best), o_.units) + " of step, at most " +
                    detail::fixed(100.0 * p.blend_room.best, 0) +
                    " % of the seam's length, by what leaves the middle; " +
                    basis_words(p.blend_slope.why),
                4);
        }
    }

    /// What was refused and why; places of which the same is true together.
    void refusals() {
        std::vector<std::pair<std::string, std::vector<std::size_t>>> all;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            for (const std::string& text : refusals_of(i)) {
                const auto at = std::find_if(all.begin(), all.end(),
                                             [&](const auto& one) { return one.first == text; });
                (at == all.end() ? all.emplace_back(text, std::vector<std::size_t>{}) : *at)
                    .second.push_back(i);
            }
        }
        for (const auto& [text, which] : all) {
            say("  ", in_parts(titles_of(which)) + ", not " + text, 4);
        }
    }
    /// "blade 40, with the lay and 2 more: so short a blade ...", one for each reason.
    [[nodiscard]] std::vector<std::string> refusals_of(std::size_t i) const {
        std::vector<std::pair<std::string, std::vector<std::string>>> by_reason;
        for (const refused_setup& f : g_.zones[i].refused) {
            const std::string why = bar_words(f, g_.zones[i], o_.units);
            const auto at = std::find_if(by_reason.begin(), by_reason.end(),
                                         [&](const auto& one) { return one.first == why; });
            (at == by_reason.end() ? by_reason.emplace_back(why, std::vector<std::string>{}) : *at)
                .second.push_back(refused_title(f));
        }
        std::vector<std::string> out;
        for (const auto& [why, those] : by_reason) {
            const std::size_t shown = std::min<std::size_t>(those.size(), 2);
            std::string some = listed({those.begin(), those.begin() + static_cast<long>(shown)});
            some += those.size() > shown ? " and " + std::to_string(those.size() - shown) + " more"
                                         : "";
            out.push_back(some + ": " + why);
        }
        return out;
    }

    const groom& g_;
    const beside& beside_;
    const plan_request& r_;
    const print_options& o_;
    const mixed_coat* unseen_;
    std::string out_;
    int line_ = 0;
    int number_of_comb_ = 0;
};

}  // namespace

std::string text_of(const groom& g, const std::optional<return_date>& when, const plan_request& r,
                    const print_options& o, const beside& b, const mixed_coat* unseen) {
    return plan_writer(g, b, r, o, unseen).all(when);
}

}  // namespace pelage::io
