// How the dog is: the stop list, what ails it, skin, brushing, hair today, what it hates, alerts, a note.
#include <algorithm>
#include <array>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/data/read.hpp>
#include <pelage/model/hair_today.hpp>
#include <pelage/trade/place_words.hpp>

#include "intake_talk.hpp"

namespace pelage::cli {

namespace {

constexpr std::string_view letters = "abcdefghijklmnoprstuvwxyz";  // without q, which breaks off

std::vector<std::string> pieces(const std::string& text) {
    std::vector<std::string> out(1);
    for (const char c : text) {
        if (c == ',' || c == ';') {
            out.emplace_back();
        } else {
            out.back() += c;
        }
    }
    for (std::string& one : out) {
        one = std::string(detail::trimmed(one));
    }
    std::erase(out, "");
    return out;
}

std::string place_fault(const part_index& parts, const std::string& word) {
    if (parts.find(word) != nullptr) {
        return {};
    }
    const auto why = parts.about(word);
    return why.wrong + "; found \"" + word + "\"" + why.right;
}

/// The places that the last of several words begins, each behind what was typed before it.
completion places_begin(const part_index& parts) {
    return [&parts](const std::string& text) {
        const auto comma = text.find_last_of(",;");
        const std::size_t from = comma == std::string::npos ? 0 : comma + 1;
        const std::string last{detail::trimmed(std::string_view(text).substr(from))};
        const std::string before = text.substr(0, from) + (from == 0 ? "" : " ");
        std::vector<std::string> out;
        for (const std::string& word : parts.words()) {
            if (!last.empty() && word.starts_with(last)) {
                out.push_back(before + word);
            }
        }
        return out;
    };
}

struct told_hair {
    std::vector<hair_now> lengths;
    std::vector<std::string> wrong;
};

told_hair hair_in(const std::string& text, const part_index& parts) {
    told_hair out;
    for (const std::string& one : pieces(text)) {
        const auto digit = one.find_first_of("0123456789.");
        const std::string whom{detail::trimmed(one.substr(0, digit))};
        if (digit == std::string::npos || whom.empty()) {
            out.wrong.push_back("a place and its length are needed; found \"" + one +
                                "\"; write it like body 40 mm");
            continue;
        }
        const parsed_length l = parse_length(one.substr(digit));
        for (const std::string& wrong :
             {place_fault(parts, whom), l.ok() ? "" : complaint(l, one.substr(digit))}) {
            if (!wrong.empty()) {
                out.wrong.push_back(wrong);
            }
        }
        const selection* meant = parts.find(whom);
        const bool twice = std::any_of(out.lengths.begin(), out.lengths.end(), [&](const auto& h) {
            const selection* other = parts.find(h.whom);
            return meant != nullptr && other != nullptr && other->places == meant->places;
        });
        if (twice) {
            out.wrong.push_back("the same place twice; found \"" + one + "\"; say it once");
        }
        out.lengths.push_back({whom, l.value});
    }
    return out;
}

std::string hair_fault(const std::string& text, const intake_state& s, const part_index& parts) {
    told_hair told = hair_in(text, parts);
    if (!told.wrong.empty()) {
        return joined(told.wrong, "\n  ");
    }
    dog with;
    with.now = told.lengths;
    with.mats = s.d.mats;
    for (const mat_beyond_hair& m : mats_beyond_hair(parts, with)) {
        const mat_finding& found = with.mats[m.mat];
        return "more free hair under a mat than hair; found " + show(*found.free_hair) +
               " under it at the " + title(s.about.known.dog_body, found.at) +
               ", where the hair is " + show(m.now) + "; measure again";
    }
    return {};
}

void say_on_file(intake_state& s, const std::string& what) {
    if (!what.empty()) {
        s.ask.say("On file: " + what + ".");
    }
}

std::string kept_words(const std::string& on_file) {
    return on_file.empty() ? "Enter: nothing" : "Enter: so it is, - nothing";
}

}  // namespace

void ask_stop_list(intake_state& s) {
    const auto& stops = s.about.known.stops;
    std::string keys = "\n";
    for (std::size_t i = 0; i < stops.size(); ++i) {
        keys += letters[i];
        s.ask.say(std::string("  ") + letters[i] + "  " + stops[i].seen);
    }
    while (true) {
        const char k = s.ask.key("stop", "Any of these (Enter: none, or no more)", keys);
        if (k == '\n') {
            return;
        }
        const stop_rule& rule = stops[letters.find(k)];
        s.ask.say("  STOP. " + rule.act);
        if (std::find(s.d.signs.begin(), s.d.signs.end(), rule.sign) == s.d.signs.end()) {
            s.d.signs.push_back(rule.sign);
        }
    }
}

void ask_health(intake_state& s) {
    const std::string text =
        s.ask.line("health", "What ails it, in a few words (" + kept_words(s.d.health) + ")",
                   [&](const std::string& typed) {
                       const bool skin = read_health(typed, "", s.about.known.told_health).of_skin;
                       return io::says_well(typed) ? "if nothing does, only Enter"
                              : skin ? "what the skin shows comes below, with its place"
                                     : "";
                   });
    if (text.empty()) {
        return;
    }
    if (text == "-") {
        s.d.health.clear();
        return;
    }
    // an itch is told and looked at; who bears less is combed out for a shorter time, and its owner signs
    if (s.ask.yes(
            "bears-less",
            "Does it bear less for that: heart, breath, fits, pain, weak or in a vet's care")) {
        s.d.health = text;
    } else {
        s.d.note += (s.d.note.empty() ? "" : "; ") + ("told: " + text);
        s.ask.say("  Kept as a note. Look there with the comb; what the skin shows comes below.");
    }
}

void ask_skin_and_coat(intake_state& s) {
    s.d.thin_or_old = s.ask.yes("thin", "Skin thin, wrinkled or dried out");
    s.d.pink_skin = s.ask.yes("pink", "White or pink skin");
    if (s.d.pink_skin || s.d.thin_or_old) {
        s.d.out = s.ask.one_of<outdoors>("sun", "In the sun", outdoors_names);
    }
    s.d.coat_change = s.d.age == life_stage::young && s.ask.yes("change", "Adult coat coming in");
    s.d.shedding = s.d.coat && double_coated(*s.d.coat) && s.ask.yes("shed", "In shed");
}

void ask_brushing(intake_state& s) {
    constexpr std::array<std::string_view, 5> often{
        "not at all", "weekly", "two or three times a week", "every other day", "daily"};
    s.d.brushed.how_often = s.ask.one_of<habit>("brushed", "Brushed at home", often);
    s.d.brushed.to_skin =
        s.d.brushed.how_often != habit::none &&
        s.ask.yes("to-skin", "Does the brush reach the skin: a comb passes at the root");
    s.d.brushing_said = true;
}

namespace {

/// "5 weeks ago" is no day, but which one it is can be told.
std::string day_complaint(const std::string& typed, const std::optional<date>& today) {
    constexpr std::string_view ago = " ago";
    const auto n = typed.ends_with(ago) ? parse_wait(typed.substr(0, typed.size() - ago.size()))
                                        : std::nullopt;
    return n && today ? "the day is needed: \"" + typed + "\" is " +
                            iso(*today - std::chrono::days{*n}) + ", if that is right"
                      : std::string("no such day; write it like 2026-09-30");
}

}  // namespace

void ask_last_groom(intake_state& s) {
    const std::string day = s.ask.line(
        "groomed", "Last full groom, as 2026-09-30 (Enter: not known)",
        [&](const std::string& typed) {
            const auto d = parse_date(typed);
            const auto& today = s.about.today;
            const bool twice = d && std::any_of(s.d.visits.begin(), s.d.visits.end(), [&](auto& v) {
                                   return v.on == *d && v.kind == "full";
                               });
            return typed.empty()          ? std::string{}
                   : !d                   ? day_complaint(typed, today)
                   : !is_near(*d)         ? std::string("a day from 1990 on is needed")
                   : today && *d > *today ? std::string("that is still to come")
                   : twice                ? std::string("that visit is on file already")
                                          : std::string{};
        });
    if (const auto d = parse_date(day)) {
        s.d.visits.push_back({*d, "full", {}});
    }
}

void ask_hair(intake_state& s) {
    const part_index parts(s.about.known.dog_body);
    const dog* before = s.about.by_record;
    const bool known = before != nullptr && (!before->now.empty() || !before->told.empty() ||
                                             !before->measured.empty() || !before->visits.empty());
    if (before != nullptr && !before->now.empty()) {
        std::vector<std::string> words;
        for (const hair_now& h : before->now) {
            words.push_back(h.whom + " " + show(h.is));
        }
        s.ask.say("On file, of no day: " + joined(words, ", ") + ". What you say takes its place.");
    }
    s.ask.say("Today's hair, combed out and dry, where you measured it; several with a comma.");
    const std::string text = s.ask.line(
        "hair",
        std::string("As body 40 mm, ears 25 mm (Enter: ") +
            (known ? "as on file and record)" : "not measured)"),
        [&](const std::string& typed) { return hair_fault(typed, s, parts); }, places_begin(parts));
    const auto lengths = hair_in(text, parts).lengths;
    if (lengths.empty()) {
        return;
    }
    s.d.now.clear();
    s.d.told.clear();
    for (const hair_now& h : lengths) {
        if (s.about.today) {  // what was measured today is longer next month
            s.d.told.push_back({*s.about.today, h.whom, h.is, true});
        } else {
            s.d.now.push_back(h);
        }
    }
}

void ask_hates(intake_state& s) {
    const part_index parts(s.about.known.dog_body);
    const std::string before = joined(s.d.sensitive, ", ");
    say_on_file(s, before);
    const std::string text = s.ask.line(
        "hates",
        "Hates to have touched, as feet, left ear (" + kept_words(joined(s.d.sensitive, ", ")) +
            ")",
        [&](const std::string& typed) {
            std::vector<std::string> wrong;
            for (const std::string& one :
                 typed == "-" ? std::vector<std::string>{} : pieces(typed)) {
                wrong.push_back(place_fault(parts, one));
            }
            std::erase(wrong, "");
            return joined(wrong, "\n  ");
        },
        places_begin(parts));
    if (!text.empty()) {
        s.d.sensitive.clear();
    }
    for (const std::string& one : text == "-" ? std::vector<std::string>{} : pieces(text)) {
        if (std::find(s.d.sensitive.begin(), s.d.sensitive.end(), one) == s.d.sensitive.end()) {
            s.d.sensitive.push_back(one);
        }
    }
}

void ask_alerts(intake_state& s) {
    constexpr std::string_view keys = "\nbfsam2-";
    const std::string before =
        s.d.alerts.empty() ? ""
                           : " On file: " + joined(titles(s.d.alerts), ", ") + "; - none of them.";
    s.ask.say("b bites, f faints, s seizures, a allergic, m muzzle, 2 two people." + before);
    while (true) {
        const char k = s.ask.key("alert", "Alerts (Enter: none, or no more)", keys);
        if (k == '\n') {
            return;
        }
        if (k == '-') {
            s.d.alerts.clear();
            continue;
        }
        alert one{static_cast<alert_kind>(keys.find(k) - 1), {}};
        if (one.what == alert_kind::allergic) {
            one.to = s.ask.line("allergic", "  Allergic to what", [](const std::string& typed) {
                return typed.empty() ? "a word for it is needed" : "";
            });
        }
        add_alert(s.d.alerts, one);
    }
}

void ask_note(intake_state& s) {
    const std::string text =
        s.ask.line("note", std::string("A note for the groomer (") +
                               (s.d.note.empty() ? "Enter: none)" : "Enter: as it is, - none)"));
    if (!text.empty()) {
        s.d.note = text == "-"                      ? ""
                   : s.d.note.starts_with("told: ") ? s.d.note + "; " + text
                                                    : text;
    }
}

}  // namespace pelage::cli
