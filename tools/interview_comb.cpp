// What the comb finds, part by part: one key where it finds nothing.
#include <algorithm>
#include <array>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/trade/body_part.hpp>
#include <pelage/trade/place_words.hpp>

#include "intake_talk.hpp"

namespace pelage::cli {

namespace {

/// The parts in the order of a comb, and what they are called here.
/// The part a zone is felt with: the tail's base with the tail, though it comes down with the body.
part felt_with(const zone& z) {
    return z.where == group::tail ? part::tail : part_of(z);
}

constexpr std::array<std::pair<part, const char*>, 6> walk{{{part::body, "body"},
                                                            {part::legs, "legs and feet"},
                                                            {part::tail, "tail"},
                                                            {part::prep, "underneath, and pads"},
                                                            {part::ears, "ears"},
                                                            {part::head, "head"}}};

constexpr const char* whole_part = "0";

class comb_check {
  public:
    explicit comb_check(intake_state& s) : s_(s), body_(s.about.known.dog_body), places_(body_) {}

    void all() {
        s_.ask.say("Now with the comb down to the skin, part by part.");
        s_.ask.say("Enter: nothing found there; t tangle, m mat, a matted area, p pelt; s skin;");
        s_.ask.say(". nothing more anywhere; c that mat is combed out whatever the plan says");
        for (const auto& [which, called] : walk) {
            if (!one_part(which, called)) {
                break;
            }
        }
        s_.d.comb_checked = true;
        s_.d.combed_on = s_.about.today;
    }

  private:
    /// Whether there are more.
    bool one_part(part which, const std::string& called) {
        std::optional<selection> last;
        while (true) {
            const char k = s_.ask.key("part", "  " + called, last ? "\ntmaps.c" : "\ntmaps.");
            if (k == '\n' || k == '.') {
                return k == '\n';
            }
            if (k == 'c') {
                comb_out(*last);
                last.reset();
            } else if (k == 's') {
                skin(which);
                last.reset();
            } else {
                last = mat(which, static_cast<mat_grade>(std::string_view("tmap").find(k)));
            }
        }
    }

    [[nodiscard]] std::vector<named_choice> zones_of(part which) const {
        std::vector<named_choice> out;
        for (const zone& z : body_.zones) {
            if (felt_with(z) == which) {
                out.push_back({z.id, z.title == z.id ? "" : z.title, {}});
            }
        }
        return out;
    }

    /// A zone of the part by number or beginning, or any place by its word.
    [[nodiscard]] std::string meant(const std::vector<named_choice>& zones,
                                    const std::string& text) const {
        if (text == whole_part) {
            return text;
        }
        if (const auto n = chosen(zones, text)) {
            return zones[*n].name;
        }
        return places_.find(text) != nullptr ? text : "";
    }

    [[nodiscard]] std::string where_fault(const std::vector<named_choice>& zones,
                                          const std::string& text) const {
        if (!meant(zones, text).empty()) {
            return {};
        }
        if (text.empty() || beginning_so(zones, text).size() > 1) {
            return choice_complaint("place", zones, text);
        }
        const auto why = places_.about(text);
        return why.wrong + "; found \"" + text + "\"" + why.right;
    }

    selection where(part which) {
        const auto zones = zones_of(which);
        std::string list = "    0 all of it";
        for (std::size_t i = 0; i < zones.size(); ++i) {
            list += ", " + std::to_string(i + 1) + " " +
                    (zones[i].title.empty() ? zones[i].name : zones[i].title);
        }
        s_.ask.say(list);
        const std::string text = s_.ask.pick(
            "where", "    where", [&](const std::string& t) { return where_fault(zones, t); },
            [&](const std::string& t) { return beginning_so(zones, t); },
            [&](const std::string& t) { return t == whole_part || whole_number(zones.size(), t); },
            [&](const std::string& t) { return meant(zones, t); });
        if (text == whole_part) {
            return whole(which);
        }
        selection out = *places_.find(text);
        if (!out.sided && out.places.size() == 1 && body_.zones[out.places.front().zone].paired) {
            const char k = s_.ask.key("side", "    side: l left, r right, b both", "lrb");
            out.places.front().which = k == 'l' ? side::left : k == 'r' ? side::right : side::both;
        }
        return out;
    }

    [[nodiscard]] selection whole(part which) const {
        selection out;
        out.how = reach::part;
        for (std::size_t z = 0; z < body_.zones.size(); ++z) {
            if (felt_with(body_.zones[z]) == which) {
                out.places.push_back({z, side::both});
            }
        }
        return out;
    }

    /// Where the mat is, if combing it out is anybody's choice.
    std::optional<selection> mat(part which, mat_grade grade) {
        const selection at = where(which);
        mat_finding m;
        m.grade = grade;
        m.seen = s_.about.today;
        s_.ask.say("    free hair between skin and mat: 1 to 9 mm, 9 for more; 0 felted to the");
        const char hair = s_.ask.key("free-hair", "    skin; Enter not measured", "\n0123456789?");
        m.to_skin = hair == '0';
        if (hair >= '1' && hair <= '9') {
            m.free_hair = mm(static_cast<double>(hair - '0'));
        }
        if (!m.to_skin) {
            m.comb_passes = s_.ask.yes("comb-passes", "    does the tip of a comb pass beneath");
        }
        lay_finding(s_.d.mats, at, m, [](const mat_finding&) { return true; });
        noted(std::string(in_words(grade)), at);
        const bool may = grade != mat_grade::pelt && !m.to_skin &&
                         std::none_of(at.places.begin(), at.places.end(), [&](const place& p) {
                             return body_.zones[p.zone].has(zone_use::never_demat);
                         });
        return may ? std::optional{at} : std::nullopt;
    }

    void comb_out(const selection& at) {
        for (mat_finding& m : s_.d.mats) {
            const bool there = std::any_of(at.places.begin(), at.places.end(),
                                           [&](const place& p) { return p == m.at; });
            m.comb_out = m.comb_out || there;
        }
    }

    void skin(part which) {
        skin_finding f;
        f.state = s_.ask.one_of<skin_state>("skin", "    skin", skin_state_names);
        const selection at = where(which);
        if (f.state == skin_state::lump) {
            const std::string across =
                s_.ask.line("lump", "    how large, as 10 mm (Enter: not measured)",
                            [](const std::string& text) {
                                const parsed_length l = parse_length(text);
                                return text.empty() || l.ok() ? std::string{} : complaint(l, text);
                            });
            f.size = across.empty() ? std::nullopt : std::optional{parse_length(across).value};
            f.known = s_.ask.yes("vet", "    has a vet seen it");
        }
        lay_finding(s_.d.skin, at, f, [&](const skin_finding& o) {
            return o.state == f.state && (f.state != skin_state::lump || o.size == f.size);
        });
        noted("skin " + std::string(name(f.state)), at);
    }

    void noted(const std::string& what, const selection& at) {
        s_.ask.say("    noted: " + what + ", " + listed(titles(body_, at.places)));
    }

    intake_state& s_;
    const body& body_;
    part_index places_;
};

/// A finding of the file, as it is asked about.
struct old_finding {
    std::string text;
    std::function<void()> take_up;
};

std::vector<old_finding> on_file(intake_state& s) {
    const dog& before = *s.about.on_file;
    const body& b = s.about.known.dog_body;
    std::vector<old_finding> out;
    for (const mat_finding& m : before.mats) {
        out.push_back({std::string(in_words(m.grade)) + ", " + title(b, m.at), [&s, m] {
                           mat_finding still = m;
                           still.filed = false;  // seen again today
                           still.seen = m.seen ? s.about.today : m.seen;
                           s.d.mats.push_back(still);
                       }});
    }
    for (const skin_finding& f : before.skin) {
        out.push_back({in_words(f, f.size ? show(*f.size) : "") + ", " + title(b, f.at),
                       [&s, f] { s.d.skin.push_back(f); }});
    }
    return out;
}

}  // namespace

void ask_still_there(intake_state& s) {
    const auto before = on_file(s);
    s.d.mats.clear();
    s.d.skin.clear();
    if (before.empty()) {
        return;
    }
    std::vector<std::string> names;
    for (const old_finding& f : before) {
        names.push_back(f.text);
    }
    s.ask.say("Found before, by its file: " + joined(names, "; ") + ".");
    const char k = s.ask.key("still", "Still there: y all, n none, o one by one", "yno");
    for (const old_finding& f : before) {
        if (k == 'y' || (k == 'o' && s.ask.yes("still-one", "  " + f.text))) {
            f.take_up();
        }
    }
}

void ask_comb(intake_state& s) {
    comb_check(s).all();
}

}  // namespace pelage::cli
