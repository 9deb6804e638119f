#include "interview.hpp"

#include <algorithm>
#include <array>

#include <pelage/base/phrase.hpp>

namespace pelage::cli {

namespace {

constexpr const char* how =
    "One key an answer; < goes back, q breaks off and keeps what was answered. Of names type the "
    "number or "
    "the beginning. Lines end in Enter.";

void whole_dog(intake_state& s) {
    ask_skin_and_coat(s);
    ask_brushing(s);
    ask_last_groom(s);
}

void new_dog(intake_state& s) {
    ask_name(s);
    ask_breed(s);
    ask_coat(s);
    ask_size(s);
    ask_sheet(s);
    ask_age(s);
    ask_weight(s);
    ask_health(s);
    ask_stop_list(s);
    if (!s.d.signs.empty()) {
        return;
    }
    whole_dog(s);
    ask_hates(s);
    ask_alerts(s);
    ask_comb(s);
    ask_hair(s);
    ask_note(s);
}

// ---- a dog with a file ----

void another_coat(intake_state& s) {
    ask_coat(s);
    ask_sheet(s);
}

/// What may be new about a dog one knows, each by its key.
struct change {
    char key;
    const char* what;
    void (*ask)(intake_state&);
};
constexpr std::array<change, 12> changes{{{'b', "breed", ask_breed},
                                          {'c', "coat", another_coat},
                                          {'s', "sheet", ask_sheet},
                                          {'z', "size", ask_size},
                                          {'a', "age", ask_age},
                                          {'i', "what ails it", ask_health},
                                          {'k', "skin, sun, shed", ask_skin_and_coat},
                                          {'h', "brushing at home", ask_brushing},
                                          {'g', "last groom", ask_last_groom},
                                          {'t', "touch", ask_hates},
                                          {'l', "alerts", ask_alerts},
                                          {'n', "note", ask_note}}};

void say_known(intake_state& s) {
    const dog& d = *s.about.by_record;
    std::vector<std::string> all{std::string(name(d.size))};
    const auto add = [&](const std::string& text) {
        if (!text.empty()) {
            all.push_back(text);
        }
    };
    add(d.mix);
    add(d.coat ? std::string(name(*d.coat)) + " coat" : "");
    add(d.style);
    add(d.age ? std::string(name(*d.age)) : "");
    add(d.brushing_said ? title(d.brushed) : "");
    add(d.health);
    const auto last = std::max_element(d.visits.begin(), d.visits.end(),
                                       [](const visit& a, const visit& b) { return a.on < b.on; });
    add(last == d.visits.end() ? "" : "last visit " + iso(last->on));
    s.ask.say(d.name + " by its file: " + joined(all, ", ") + "." +
              (d.alerts.empty() ? "" : " ALERT: " + joined(titles(d.alerts), "; ") + "."));
}

void known_dog(intake_state& s) {
    say_known(s);
    s.d.signs.clear();
    if (!s.d.coat) {
        another_coat(s);  // the mix let it be guessed till now
    } else if (s.d.style.empty()) {
        ask_sheet(s);
    }
    ask_stop_list(s);
    if (!s.d.signs.empty()) {
        return;
    }
    ask_weight(s);
    ask_still_there(s);
    ask_comb(s);
    ask_hair(s);
    std::string keys = "\n";
    std::vector<std::string> names;
    for (const change& c : changes) {
        keys += c.key;
        names.push_back(std::string(1, c.key) + " " + c.what);
    }
    s.ask.say("What else may be new: " + joined(names, ", ") + ".");
    while (true) {
        const char k = s.ask.key("new", "Anything new about it (Enter: nothing, or no more)", keys);
        if (k == '\n') {
            return;
        }
        std::find_if(changes.begin(), changes.end(), [&](const change& c) {
            return c.key == k;
        })->ask(s);
    }
}

intake_result asked_once(intake_talk& t, const intake_matter& about) {
    intake_result out{about.on_file != nullptr ? *about.on_file : dog{}, about.weighed};
    intake_state s{t, about, out.patient, out.weighed};
    t.say(how);
    if (about.on_file != nullptr) {
        known_dog(s);
    } else {
        new_dog(s);
    }
    out.patient.heard =
        read_health(out.patient.health, out.patient.note, about.known.told_health, out.patient.mix);
    if (!out.patient.signs.empty()) {
        t.say("A veterinarian sees this dog first; nothing more is asked.");
    }
    return out;
}

}  // namespace

void interview(asker& a, intake_answers& kept, const intake_matter& about,
               const std::function<void(const intake_result&)>& finish) {
    a.can_be_corrected();
    while (true) {
        intake_talk t(a, kept);
        try {
            return finish(asked_once(t, about));
        } catch (const step_back&) {
            if (kept.all.empty()) {
                a.say("  This is the first question.");
            } else {
                kept.all.pop_back();
                keep(kept);
            }
        }
    }
}

}  // namespace pelage::cli
