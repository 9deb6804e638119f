// A sheet's page: what is left in each place, within what, and with what of the kit.
#include "answers/sheet_page_places.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include <pelage/base/phrase.hpp>

#include "answers/words/plan.hpp"
#include "answers/words/sheet.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

class places_writer {
  public:
    places_writer(document& to, const std::vector<sheet_place>& places, const groom& g,
                  const plan_request& r, const print_options& o)
        : out_(to), places_(places), g_(g), r_(r), o_(o) {}

    void all() {
        std::vector<std::pair<std::string, std::string>> lines;
        for (const sheet_place& p : places_) {
            const std::string in = between(p);
            std::string what = aim(p) + (in.empty() ? "" : ", within " + in);
            const std::string tool = how(p);
            what += tool.empty() || tool == what ? "" : ": " + tool;
            const std::string where = title(r_.reference.dog_body, p.at);
            const auto same = std::find_if(lines.begin(), lines.end(),
                                           [&](const auto& l) { return l.first == what; });
            if (same == lines.end()) {
                lines.emplace_back(std::move(what), where);
            } else {
                same->second += ", " + where;
            }
        }
        out_.open();
        out_.say_of("Leave, and with what of the kit: ", r_.tools.title);
        out_.show(table());
        for (const auto& [what, where] : lines) {
            out_.item(what);
            out_.add({line_as::detail, where, {}, 6, 6});
        }
        std::string prep;
        for (const zone& z : r_.reference.dog_body.zones) {
            const bool here =
                std::any_of(places_.begin(), places_.end(), [&](const sheet_place& p) {
                    return &r_.reference.dog_body.zones[p.at.zone] == &z;
                });
            if (z.where == group::prep && !here && !z.prep_blades.empty()) {
                prep += (prep.empty() ? "" : ", ") + z.title + " " + z.prep_blades.front();
            }
        }
        if (!prep.empty()) {
            out_.say_of("Prep by blade, with the lay: ", prep);
        }
        out_.open();
    }

  private:
    /// With what a place is done: by the plan where there is one.
    [[nodiscard]] std::string how(const sheet_place& p) const {
        const auto z = std::find_if(g_.zones.begin(), g_.zones.end(), [&](const zone_plan& one) {
            return one.at.zone == p.at.zone &&
                   (one.at.which == p.at.which || one.at.which == side::both ||
                    p.at.which == side::both);
        });
        if (z == g_.zones.end()) {
            return {};
        }
        if (z->came == outcome::stuck) {
            return "not to be done: " + cause_words(r_, *z, o_.units);
        }
        std::string text = title_words(z->how, o_.units);
        if (z->how.kind == tool_kind::clip && z->how_finished == finish::comb_then_scissor) {
            text += ", then scissor";
        }
        if (z->how_finished == finish::card || z->how_finished == finish::leave) {
            const std::string done{name(z->how_finished)};
            return !z->why || z->came == outcome::left_by_sheet
                       ? done
                       : done + ": " + cause_words(r_, *z, o_.units);
        }
        if (z->blade_wish && z->how.kind == tool_kind::clip && z->how.tool.id != *z->blade_wish) {
            text += " (in place of blade " + *z->blade_wish + ")";
        }
        if (z->came == outcome::off_target && z->leaves) {
            text += ", leaves " + show(z->leaves->best, o_.units) + ": " +
                    cause_words(r_, *z, o_.units);
        } else if (z->leaves && z->how.kind == tool_kind::clip && p.asked.target &&
                   gap(z->leaves->best, *p.asked.target) >= mm(1.0)) {
            text += ", leaves " + show(z->leaves->best, o_.units) + " on a " +
                    std::string(name(*r_.patient.coat)) + " coat";  // as it is drawn
        }
        return text;
    }

    [[nodiscard]] std::string aim(const sheet_place& p) const {
        const instruction& i = p.asked;
        if (i.how == finish::leave || i.how == finish::card) {
            return "as it is";
        }
        if (i.target) {
            return show(*i.target, o_.units);
        }
        return i.blade ? "blade " + *i.blade : "";
    }

    /// From the shortest to the longest that counts as wished.
    [[nodiscard]] std::optional<std::pair<length, length>> bounds(const sheet_place& p) const {
        const auto l =
            length_on(p.asked, coat_of(r_.reference, *r_.patient.coat), r_.reference, r_.rules.cut);
        if (!l) {
            return std::nullopt;
        }
        const bool head = r_.reference.dog_body.zones[p.at.zone].where == group::head;
        const length t = p.asked.tolerance.value_or(tolerance(*l, head, r_.rules.prices));
        return std::pair{*l - t, *l + t};
    }

    [[nodiscard]] std::string between(const sheet_place& p) const {
        const auto b = bounds(p);
        return b ? bare_number(b->first, o_.units) + " to " + bare_number(b->second, o_.units) : "";
    }

    /// The places one by one, for a spreadsheet.
    [[nodiscard]] typed_table table() const {
        typed_table t{{"zone", "wished", "shortest", "longest", "with", "note", "why"}};
        t.whom = shown_to::programs;
        for (const sheet_place& p : places_) {
            const auto b = bounds(p);
            const std::string tool = how(p);
            t.rows.push_back({title(r_.reference.dog_body, p.at), aim(p),
                              b ? cell(b->first) : cell{}, b ? cell(b->second) : cell{},
                              tool.empty() ? aim(p) : tool, p.asked.note, p.asked.why});
        }
        return t;
    }

    document& out_;
    const std::vector<sheet_place>& places_;
    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
};

}  // namespace

void say_places(document& to, const std::vector<sheet_place>& places, const groom& g,
                const plan_request& r, const print_options& o) {
    places_writer(to, places, g, r, o).all();
}

}  // namespace pelage::io
