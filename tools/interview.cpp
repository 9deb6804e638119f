#include "interview.hpp"

#include <algorithm>
#include <array>
#include <istream>
#include <ostream>
#include <utility>

#include <pelage/base/error.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/data/write_dog.hpp>

namespace pelage::cli {

namespace {

constexpr std::string_view letters = "abcdefghijklmnoprstuvwxyz";  // without q, which quits

/// Lengths one names by a look, by key 1 to 9 (mm).
constexpr std::array<double, 9> looks{5, 10, 15, 20, 30, 40, 50, 70, 100};

std::string shown_key(char c) {
    return c == '\n' ? "Enter" : std::string(1, c);
}

bool control(char c) {
    return static_cast<unsigned char>(c) < 0x20U || c == 0x7F;
}

class talk {
  public:
    talk(asker& a, const reference_data& c, const std::vector<style>& styles,
         const std::optional<date>& today)
        : ask_(a), known_(c), styles_(styles), today_(today) {}

    dog all() {
        ask_.say(
            "One key an answer; q ends it and writes nothing. Names, dates and notes are "
            "typed and end in Enter.");
        who();
        stop_list();
        if (dog_.signs.empty()) {
            whole_dog();
            home();
            lengths();
            hates();
            alerts();
            zones();
        } else {
            ask_.say("A veterinarian sees this dog first; nothing more is asked.");
        }
        return std::move(dog_);
    }

  private:
    template <std::size_t n>
    std::size_t one_of(const std::string& question, const std::array<std::string_view, n>& names) {
        std::string text = question + ":";
        std::string keys;
        for (std::size_t i = 0; i < n; ++i) {
            keys += static_cast<char>('1' + static_cast<int>(i));
            text += std::string(" ") + keys.back() + " " + std::string(names[i]);
        }
        return static_cast<std::size_t>(ask_.key(text, keys) - '1');
    }

    void who() {
        dog_.name = ask_.line("What is it called", [](const std::string& s) {
            return s.empty()         ? "a dog has a name"
                   : s.size() > 200U ? "that is more than a name"
                                     : "";
        });
        dog_.id = io::dog_id(dog_.name);
        dog_.size = static_cast<dog_size>(one_of("How big", size_names));
        dog_.coat = static_cast<coat_class>(one_of("Its coat, as you see it", coat_names));
        style_wanted();
        const std::size_t age = one_of("How old", life_stage_names);
        dog_.age = static_cast<life_stage>(age);
        dog_.health =
            ask_.line("What ails it, in a few words (Enter: nothing)", [](const std::string& s) {
                return s == "none" || s == "no" ? "if nothing does, only Enter" : "";
            });
    }

    void style_wanted() {
        std::string keys;
        for (std::size_t i = 0; i < std::min(styles_.size(), letters.size()); ++i) {
            keys += letters[i];
            ask_.say(std::string("  ") + letters[i] + "  " + styles_[i].title);
        }
        const char k = ask_.key("The style asked for", keys);
        dog_.style = styles_[keys.find(k)].id;
    }

    void stop_list() {
        std::string keys = "\n";
        for (std::size_t i = 0; i < known_.stops.size(); ++i) {
            keys += letters[i];
            ask_.say(std::string("  ") + letters[i] + "  " + known_.stops[i].seen);
        }
        while (true) {
            const char k = ask_.key("Any of these (Enter: none, or no more)", keys);
            if (k == '\n') {
                return;
            }
            const stop_rule& rule = known_.stops[letters.find(k)];
            ask_.say("  STOP. " + rule.act);
            if (std::find(dog_.signs.begin(), dog_.signs.end(), rule.sign) == dog_.signs.end()) {
                dog_.signs.push_back(rule.sign);
            }
        }
    }

    void whole_dog() {
        dog_.thin_or_old = ask_.yes("Skin thin, wrinkled or dried out");
        dog_.pink_skin = ask_.yes("White or pink skin");
        if (dog_.pink_skin || dog_.thin_or_old) {
            dog_.out = static_cast<outdoors>(one_of("In the sun", outdoors_names));
        }
        if (dog_.age == life_stage::young) {
            dog_.coat_change = ask_.yes("Adult coat coming in");
        }
        if (dog_.coat && double_coated(*dog_.coat)) {
            dog_.shedding = ask_.yes("In shed");
        }
    }

    void home() {
        constexpr std::array<std::string_view, 5> often{
            "not at all", "weekly", "two or three times a week", "every other day", "daily"};
        dog_.brushed.how_often = static_cast<habit>(one_of("Brushed at home", often));
        dog_.brushed.to_skin =
            dog_.brushed.how_often != habit::none &&
            ask_.yes("Does the brush reach the skin (a comb passes at the root)");
        dog_.brushing_said = true;
        const std::string day =
            ask_.line("Day of the last full groom, as 2026-09-30 (Enter: not known)",
                      [&](const std::string& s) {
                          const auto d = parse_date(s);
                          return s.empty()                ? ""
                                 : !d                     ? "no such day"
                                 : !is_near(*d)           ? "a day from 1990 on is needed"
                                 : today_ && *d > *today_ ? "that is still to come"
                                                          : "";
                      });
        if (const auto d = parse_date(day)) {
            dog_.visits.push_back({*d, "full", {}});
        }
    }

    void lengths() {
        std::string scale;
        for (std::size_t i = 0; i < looks.size(); ++i) {
            scale += (i == 0 ? "" : " ") + std::to_string(i + 1) + ":" + detail::fixed(looks[i], 0);
        }
        ask_.say("Today's hair, combed out, about (mm): " + scale + "; Enter: not known");
        for (const char* whom : {"body", "legs", "tail", "feet", "head", "ear"}) {
            const char k = ask_.key(std::string("  ") + whom, "\n123456789");
            if (k != '\n') {
                dog_.now.push_back({whom, mm(looks[static_cast<std::size_t>(k - '1')])});
            }
        }
    }

    void hates() {
        const std::array<std::pair<char, const char*>, 7> parts{{{'b', "body"},
                                                                 {'l', "legs"},
                                                                 {'t', "tail"},
                                                                 {'f', "feet"},
                                                                 {'h', "head"},
                                                                 {'e', "ear"},
                                                                 {'m', "muzzle"}}};
        while (true) {
            const char k = ask_.key(
                "Hates to have touched: b body, l legs, t tail, f feet, h head, "
                "e ears, m muzzle (Enter: nothing, or no more)",
                "\nbltfhem");
            if (k == '\n') {
                return;
            }
            const auto at = std::find_if(parts.begin(), parts.end(),
                                         [&](const auto& one) { return one.first == k; });
            const std::string word = at->second;
            if (std::find(dog_.sensitive.begin(), dog_.sensitive.end(), word) ==
                dog_.sensitive.end()) {
                dog_.sensitive.push_back(word);
            }
        }
    }

    /// What is told before anything else.
    void alerts() {
        constexpr std::string_view keys = "\nbfsam2";
        while (true) {
            const char k = ask_.key(
                "Alerts: b bites, f faints, s seizures, a allergic, m muzzle, 2 two people (Enter: "
                "none, or no more)",
                keys);
            if (k == '\n') {
                return;
            }
            alert one{static_cast<alert_kind>(keys.find(k) - 1), {}};
            if (one.what == alert_kind::allergic) {
                one.to = ask_.line("    allergic to what", [](const std::string& s) {
                    return s.empty() ? "a word for it is needed" : "";
                });
            }
            add_alert(dog_.alerts, one);
        }
    }

    // ---- zone by zone ----

    void zones() {
        ask_.say(
            "Now with the comb down to the skin, from neck to pads. Enter: fine; t tangle, m "
            "mat, a matted area, p pelt; s skin; . all the rest is fine");
        const auto& all = known_.dog_body.zones;
        for (std::size_t z = 0; z < all.size();) {
            const char k = ask_.key("  " + all[z].title, "\ntmaps.");
            if (k == '.') {
                break;
            }
            if (k == '\n') {
                ++z;
            } else if (k == 's') {
                skin_at(z);
            } else {
                mat_at(z, static_cast<mat_grade>(std::string_view("tmap").find(k)));
            }
        }
        dog_.comb_checked = true;
    }

    place which(std::size_t z) {
        if (!known_.dog_body.zones[z].paired) {
            return {z, side::both};
        }
        const char k = ask_.key("    side: l left, r right, b both", "lrb");
        return {z, k == 'l' ? side::left : k == 'r' ? side::right : side::both};
    }

    static bool meet(const place& a, const place& b) {
        return a.zone == b.zone &&
               (a.which == side::both || b.which == side::both || a.which == b.which);
    }

    void mat_at(std::size_t z, mat_grade grade) {
        mat_finding m;
        m.grade = grade;
        m.at = which(z);
        const char hair = ask_.key(
            "    free hair between skin and mat: 1 to 9 mm, 9 for more, 0 "
            "felted to the skin, ? not measured",
            "0123456789?");
        m.to_skin = hair == '0';
        if (hair >= '1' && hair <= '9') {
            m.free_hair = mm(static_cast<double>(hair - '0'));
        }
        if (!m.to_skin) {
            m.comb_passes = ask_.yes("    does the tip of a comb pass beneath");
        }
        const bool may = grade != mat_grade::pelt && !m.to_skin &&
                         !known_.dog_body.zones[z].has(zone_use::never_demat);
        if (may) {
            m.comb_out = ask_.yes("    combed out whatever the plan says");
        }
        // the later word on a place stands
        std::erase_if(dog_.mats, [&](const mat_finding& o) { return meet(o.at, m.at); });
        dog_.mats.push_back(m);
        ask_.say("    noted: " + std::string(in_words(grade)) + "; anything else there, or Enter");
    }

    void skin_at(std::size_t z) {
        skin_finding f;
        f.at = which(z);
        f.state = static_cast<skin_state>(one_of("    skin", skin_state_names));
        if (f.state == skin_state::lump) {
            const std::string across = ask_.line(
                "    how large, as 10 mm (Enter: not measured)", [](const std::string& s) {
                    const parsed_length l = parse_length(s);
                    return s.empty() || l.ok() ? std::string{} : complaint(l, s);
                });
            f.size = across.empty() ? std::nullopt : std::optional{parse_length(across).value};
            f.known = ask_.yes("    has a vet seen it");
        }
        std::erase_if(dog_.skin, [&](const skin_finding& o) {
            return o.state == f.state && f.state != skin_state::lump && meet(o.at, f.at);
        });
        dog_.skin.push_back(f);
        ask_.say("    noted: skin " + std::string(name(f.state)) +
                 "; anything else there, or Enter");
    }

    asker& ask_;
    const reference_data& known_;
    const std::vector<style>& styles_;
    std::optional<date> today_;
    dog dog_;
};

}  // namespace

void asker::wants_key(bool key) {
    if (one_key_) {
        one_key_(key);
    }
}

void asker::say(const std::string& text) {
    out_ << text << "\n";
}

char asker::key(const std::string& question, std::string_view keys) {
    while (true) {
        out_ << question << "? " << std::flush;
        wants_key(true);
        char c = '\n';
        const bool got = static_cast<bool>(in_.get(c)) && c != '\x04' && c != '\x03';
        wants_key(false);
        if (!got) {
            out_ << "\n";
            throw error(errc::io, "the answers ended before the last question; nothing is written");
        }
        c = c == '\r' ? '\n' : c;
        out_ << (control(c) ? "" : std::string(1, c)) << "\n";
        if (keys.find(c) != std::string_view::npos) {
            // by a pipe a key may stand on a line of its own
            line_open_ = keys_on_lines_ && !one_key_ && c != '\n';
            return c;
        }
        if (c == 'q') {
            throw error(errc::refused, "ended by q; nothing is written");
        }
        std::string all;
        for (const char k : keys) {
            all += (all.empty() ? "" : " ") + shown_key(k);
        }
        out_ << "  one of: " << all << "\n";
    }
}

bool asker::yes(const std::string& question) {
    return key(question + " (y or n)", "yn") == 'y';
}

std::string asker::line(const std::string& question,
                        const std::function<std::string(const std::string&)>& fault) {
    while (true) {
        out_ << question << ": " << std::flush;
        std::string text;
        if (std::exchange(line_open_, false) && in_.peek() == '\n') {
            in_.ignore();
        }
        if (!std::getline(in_, text)) {
            out_ << "\n";
            throw error(errc::io, "the answers ended before the last question; nothing is written");
        }
        if (!text.empty() && text.back() == '\r') {
            text.pop_back();
        }
        text = std::string(detail::trimmed(text));
        const std::string wrong = !is_plain_line(text)
                                      ? "a line of plain text in UTF-8 is needed, without control "
                                        "characters, of 2000 at most"
                                  : fault ? fault(text)
                                          : std::string{};
        if (wrong.empty()) {
            return text;
        }
        out_ << "  " << wrong << "\n";
    }
}

dog interview(asker& a, const reference_data& c, const std::vector<style>& styles,
              const std::optional<date>& today) {
    return talk(a, c, styles, today).all();
}

}  // namespace pelage::cli
