#include "answers/block_notes.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/lines.hpp"
#include "answers/ways.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

using strings = std::vector<std::string>;

/// Nobody lifts a dog by what hurts, nor has it stand on two legs.
bool sore(const dog& d) {
    return std::any_of(d.skin.begin(), d.skin.end(), [](const skin_finding& f) {
        return care_for(f.state, false) == skin_care::left_alone;
    });
}

/// How to hold the skin of this dog there.
const std::string& hold_of(const zone& z, const dog& d) {
    return (never_lifted(d) || sore(d)) && !z.hold_frail.empty() ? z.hold_frail : z.hold;
}

/// Adds `text` unless it was the last.
void add_new(strings& all, std::string text) {
    if (all.empty() || all.back() != text) {
        all.push_back(std::move(text));
    }
}

/// The notes below one block.
class block_notes {
  public:
    block_notes(const block& b, const told_plan& of)
        : b_(b), g_(of.plan), r_(of.request), o_(of.print), beside_(of.near), places_(g_, r_) {}

    std::vector<step_note> all(bool first_comb) {
        if (first_comb) {
            say(note_about::comb_seat, {},
                "seat the comb; if it drops off, the " + b_.how.tool.id + " cuts to the skin");
        }
        if (o_.trainee) {
            why();
            place_by_place();
        } else {
            strokes();
            skin_held();
        }
        runs_hot();
        single_places();
        return std::move(out_);
    }

  private:
    void say(note_about what, std::string lead, std::string text) {
        out_.push_back({what, std::move(lead), std::move(text)});
    }
    [[nodiscard]] bool in_full() const { return o_.explain; }

    /// Which way to go: in a few words each once, or in full with the zones.
    void strokes() {
        if (b_.how.kind != tool_kind::clip) {
            return;
        }
        const bool turned = b_.how.way == direction::against_lay;
        strings seen;
        for (const std::size_t i : b_.zones) {
            const zone& z = places_.zone_of(i);
            const std::string& way = turned ? z.against : in_full() ? z.stroke : z.sweep;
            std::string s = in_full() ? places_.in_pairs(b_.zones, i) + " " + way : way;
            if (std::find(seen.begin(), seen.end(), s) == seen.end()) {
                seen.push_back(std::move(s));
            }
        }
        say(note_about::stroke, turned ? "go against: " : "stroke: ", joined(seen, "; "));
    }

    /// How to hold the skin where it is thin or folds and the blade comes near it.
    void skin_held() {
        // 6.4 mm: longer ones keep their distance from a fold (assumption)
        const bool far = b_.how.over || in_mm(b_.how.tool.stated.best) > 6.4;
        if (b_.how.kind != tool_kind::clip || (b_.how.over && !in_full())) {
            return;
        }
        strings seen;
        for (const std::size_t i : b_.zones) {
            const zone& z = places_.zone_of(i);
            // a long blade's gaps catch webs and folds
            const bool near = !far || in_full() || z.has(zone_use::web);
            if (near && !z.hold.empty() && z.cover != skin::firm) {
                add_new(seen, places_.in_pairs(b_.zones, i) + ", " + hold_of(z, r_.patient));
            }
        }
        if (!seen.empty()) {
            say(note_about::skin, "skin: ", joined(seen, "; "));
        }
    }

    /// When the blade is due to be felt and oiled before the block ends.
    void runs_hot() {
        const std::int64_t every =
            std::max<std::int64_t>(1, in_mmin(r_.rules.refusal.oil_after.best));
        const auto times_due = [&](const work& w) { return (in_mmin(w) - 1) / every; };
        if (times_due(b_.running) > times_due(b_.running_before)) {
            say(note_about::heat, {},
                "about " + detail::whole_minutes(b_.running) +
                    " min on this blade: feel and oil it on the way");
        }
    }

    /// Why this tool in these places.
    void why() {
        for (std::string& s : reasons_in_words(beside_, b_.zones, g_, r_, o_)) {
            say(note_about::reason, "why: ", std::move(s));
        }
    }

    /// A block a place for who learns: which way to go, how to hold, what gets hurt there.
    void place_by_place() {
        strings seen;
        for (const std::size_t i : b_.zones) {
            const zone& z = places_.zone_of(i);
            std::string where = places_.in_pairs(b_.zones, i);
            if (std::find(seen.begin(), seen.end(), where) != seen.end()) {
                continue;
            }
            seen.push_back(where);
            strings said;
            if (std::string way = way_of(z); !way.empty()) {
                said.push_back(std::move(way));
            }
            if (by_hand_or_clipper() && !hold_of(z, r_.patient).empty()) {
                said.push_back(sentence_case(hold_of(z, r_.patient)));
            }
            if (!z.hazard.empty()) {
                said.push_back("Mind: " + z.hazard);
            }
            if (!said.empty()) {
                say(note_about::stroke, where + ": ", joined(said, ". "));
            }
        }
    }

    [[nodiscard]] bool by_hand_or_clipper() const {
        const tool_kind k = b_.how.kind;
        return k == tool_kind::clip || k == tool_kind::scissors || k == tool_kind::thinners;
    }
    /// Which way to go; of scissors only where the place says how they run.
    [[nodiscard]] std::string way_of(const zone& z) const {
        const bool scissored = z.has(zone_use::scissors_only);  // so is its stroke
        if (b_.how.kind != tool_kind::clip) {
            return by_hand_or_clipper() && scissored ? z.stroke : std::string{};
        }
        return b_.how.way == direction::against_lay ? "go against: " + z.against
               : scissored                          ? z.sweep
                                                    : z.stroke;
    }

    /// What is said of single places of the block, places of which the same is said together.
    void single_places() {
        grouped<std::string> all;
        for (const std::size_t i : b_.zones) {
            for (const std::string& text : said_of(i)) {
                all.add(text, i);
            }
        }
        for (const auto& [text, where] : all.all()) {
            say(note_about::places, {}, places_.listed_of(where) + ": " + text);
        }
    }

    [[nodiscard]] strings said_of(std::size_t i) const {
        const zone_plan& z = g_.zones[i];
        const auto cause = [&] { return cause_words(r_, z, o_.units); };
        if (b_.off) {
            return {z.mat ? std::string(in_words(*z.mat)) + ", clipped off" : cause()};
        }
        if (z.off_by && (z.came == outcome::clipped_under || z.came == outcome::taken_down)) {
            return {std::string(once_more_words(r_))};
        }
        strings out;
        if (z.came == outcome::off_target || z.came == outcome::beyond_reach ||
            z.came == outcome::clipped_under || z.came == outcome::goes_along || z.tidied ||
            (z.why && z.blade_wish)) {
            if (std::string text = cause(); !text.empty()) {
                out.push_back(std::move(text));
            }
        }
        if (!z.note.empty() && z.came != outcome::goes_along) {
            out.push_back(z.note);
        }
        for (const skin_finding& f : z.around) {
            out.push_back(go_around_words(z, f, r_.rules.refusal, o_.units));
        }
        if (!z.beside_hurt.empty()) {
            const std::string hurt = listed(titles(r_.reference.dog_body, z.beside_hurt));
            const std::string_view skin = hurt.starts_with("under ") ? "skin " : "";
            out.push_back("keep off the edge towards the " + std::string(skin) + hurt);
        }
        return out;
    }

    const block& b_;
    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    const beside& beside_;
    place_words places_;
    std::vector<step_note> out_;
};

}  // namespace

std::vector<step_note> notes_below(const block& b, bool first_comb, const told_plan& of) {
    return block_notes(b, of).all(first_comb);
}

}  // namespace pelage::io
