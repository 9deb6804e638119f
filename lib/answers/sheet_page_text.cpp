// A sheet as one page for the wall, a document: what is left where, with what, and why.
#include <algorithm>

#include <pelage/answers/sheets.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/planner/appointment.hpp>

#include "answers/sheet_page_places.hpp"
#include "answers/words/consent.hpp"
#include "answers/words/sheet.hpp"
#include "answers/words/tolerance.hpp"
#include "answers/words/tool.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

class page_writer {
  public:
    page_writer(const style& s, const groom& g, const plan_request& r, const print_options& o)
        : s_(s),
          g_(g),
          r_(r),
          o_(o),
          parts_(r.reference.dog_body),
          places_(places_of(s, r.reference.dog_body, parts_)) {}

    document all() {
        heading();
        look();
        upkeep();
        say_places(out_, places_, g_, r_, o_);
        reasons();
        limits();
        seasons();
        say(guessed() ? "Lengths, and minutes by the plan: " : "Lengths: ",
            basis_words(s_.why) + ". Of hair combed out and dry." +
                (s_.adjustable ? " " + show(*s_.adjustable, o_.units) +
                                     " may be asked for otherwise (--length)."
                               : ""));
        if (o_.explain) {
            sure();
        }
        return std::move(out_);
    }

  private:
    void say(std::string lead, std::string text) { out_.say_of(std::move(lead), std::move(text)); }

    void heading() {
        std::string head = s_.title + " (" + s_.id + "), version " + std::to_string(s_.version);
        head += s_.dated ? ", " + in_words(*s_.dated) : "";
        head += s_.approved_by.empty() ? ". Not approved by anybody yet."
                                       : ". Approved by: " + s_.approved_by + ".";
        say("", head);
        if (!s_.text.empty()) {
            say("", s_.text);
        }
        std::vector<std::string> coats;
        for (const coat_class k : coats_for(s_, r_.reference)) {
            coats.emplace_back(name(k));
        }
        std::string whom = coats.empty() ? "any coat" : listed(coats) + " coats";
        whom += s_.mixes.empty() ? "" : "; " + listed(s_.mixes);
        say("For: ", whom);
        if (!s_.line.empty()) {
            say("Extends: ", listed(s_.line));
        }
        if (!s_.front_desk.empty()) {
            say("At the front desk: ", s_.front_desk);
        }
    }

    void look() {
        std::vector<std::string> words;
        const auto add = [&](const char* what, const std::string& text) {
            if (!text.empty()) {
                words.push_back(std::string(what) + " " + text);
            }
        };
        add("feet", s_.feet);
        add("face", s_.face);
        add("ears", s_.ears);
        add("tail", s_.tail);
        add("topknot", s_.topknot);
        std::string text;
        for (const std::string& w : words) {
            text += (text.empty() ? "" : "; ") + w;
        }
        if (!text.empty()) {
            say("Look: ", text);
        }
    }

    void upkeep() {
        std::vector<std::string> parts;
        if (!s_.upkeep.empty()) {
            parts.push_back("brushed " + s_.upkeep);
        }
        if (s_.longest_interval) {
            parts.push_back("back after at most " +
                            detail::fixed(in_days(*s_.longest_interval), 0) + " days");
        }
        if (!parts.empty()) {
            say("At home: ", listed(parts));
        }
        consents();
        minutes();
    }

    /// What is agreed before such a dog is groomed, by the plan.
    void consents() {
        for (const consent& c : g_.consents) {
            const auto& asked = s_.consent;
            const bool by_sheet = std::find(asked.begin(), asked.end(), c.id) != asked.end();
            say("The owner signs: ", consent_words(c, g_, r_) + " (" + c.id +
                                         (by_sheet ? ")" : "; the sheet doesn't ask for it)"));
        }
    }

    /// Whether its lengths are a guess, as the plan's minutes are: said once, at the end.
    [[nodiscard]] bool guessed() const { return s_.why.how == basis::assumption; }

    void minutes() {
        std::vector<std::string> minutes;
        for (std::size_t k = 0; k < size_names.size(); ++k) {
            if (s_.takes.by_size[k]) {
                minutes.push_back(std::string(size_names[k]) + " " +
                                  detail::whole_minutes(*s_.takes.by_size[k]));
            }
        }
        const std::string ours = detail::whole_minutes(whole_by_plan(g_, r_)) +
                                 " by the plan for a " + std::string(name(r_.patient.size)) +
                                 " dog, " + detail::whole_minutes(g_.before + g_.after) +
                                 " of them to clip and finish" + (guessed() ? "" : " (our guess)");
        say("Minutes, look to handing back: ",
            minutes.empty() ? ours
                            : listed(minutes) + " (" + basis_words(s_.takes.why) + "); " + ours);
    }

    void reasons() {
        std::vector<std::pair<std::string, std::string>> lines;
        const auto add = [&](const std::string& text, const std::string& where) {
            const auto at = std::find_if(lines.begin(), lines.end(),
                                         [&](const auto& l) { return l.first == text; });
            if (at == lines.end()) {
                lines.emplace_back(text, where);
            } else {
                at->second += ", " + where;
            }
        };
        for (const sheet_place& p : places_) {
            const std::string where = title(r_.reference.dog_body, p.at);
            if (!p.asked.note.empty()) {
                add(p.asked.note, where);
            }
            if (!p.asked.why.empty()) {
                add("why: " + p.asked.why, where);
            }
            if (o_.explain && p.asked.known) {
                add(basis_words(*p.asked.known), where);
            }
        }
        for (const auto& [text, where] : lines) {
            say("", where + ": " + text);
        }
        for (const sheet_seam& s : s_.seams) {
            say("", s.a + " and " + s.b + " meet in a " + std::string(name(s.kind)) +
                        (s.why.empty() ? "" : ": " + s.why));
        }
    }

    void limits() {
        for (std::size_t i = 0; i < s_.limits.size(); ++i) {
            std::string whom = s_.limits[i].whom;
            const limit& l = s_.limits[i];
            while (i + 1 < s_.limits.size() && s_.limits[i + 1].low == l.low &&
                   s_.limits[i + 1].high == l.high && s_.limits[i + 1].why == l.why) {
                whom += ", " + s_.limits[++i].whom;
            }
            say("Limit: ", whom + " " + span_words(l, o_.units) + " (" + basis_words(l.why) + ")");
        }
    }

    void seasons() {
        for (const season& one : s_.seasons) {
            say("", season_words(one, o_.units));
        }
    }

    /// What stands behind the page.
    void sure() {
        out_.open("How sure", false);
        out_.item(tolerance_words(r_.rules.prices, o_.units));
        out_.item("minutes by the plan: " +
                  std::string(in_words(r_.rules.prices.pick_up_blade.why.how)));
        for (std::size_t how = 0; how < basis_names.size(); ++how) {
            std::vector<std::string> tools;
            for (const block& b : g_.blocks) {
                const bool so =
                    b.how.kind == tool_kind::clip &&
                    stated_length(b.how, r_.rules.cut).why.how == static_cast<basis>(how);
                const std::string tool = so ? held_words(b.how, o_.units) : std::string{};
                if (so && std::find(tools.begin(), tools.end(), tool) == tools.end()) {
                    tools.push_back(tool);
                }
            }
            if (!tools.empty()) {
                out_.item("stated length of " + listed(tools) + ": " +
                          std::string(in_words(static_cast<basis>(how))));
            }
        }
    }

    const style& s_;
    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    part_index parts_;
    std::vector<sheet_place> places_;
    document out_{s_.title};
};

}  // namespace

document sheet_page(const style& s, const groom& g, const plan_request& r, const print_options& o) {
    return page_writer(s, g, r, o).all();
}

}  // namespace pelage::io
