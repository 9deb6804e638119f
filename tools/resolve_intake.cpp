// What the intake found, from the words of options.
#include <algorithm>

#include <utf8proc.h>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/trade/place_words.hpp>

#include "asker.hpp"
#include "resolve_arguments.hpp"
#include "resolve_mats.hpp"
#include "resolve_words.hpp"
#include "words_said.hpp"

namespace pelage::cli {

namespace {

constexpr const char* skin_example =
    "; write it like 'left flank irritated', 'left ribs lump 10 mm known' or 'rump fleas'";

/// What follows "lump": its size, and whether a vet knows it. Whether all of it was understood.
bool lump_words(const strings& words, std::size_t from, skin_finding& f) {
    for (std::size_t i = from; i < words.size();) {
        if (words[i] == "known" || words[i] == "new") {
            f.known = words[i] == "known";
            ++i;
            continue;
        }
        std::size_t took = 0;
        for (std::size_t n = std::min<std::size_t>(3, words.size() - i); n > 0 && took == 0; --n) {
            const parsed_length l = parse_length(phrase(words, i, i + n));
            if (l.ok() && !f.size) {
                f.size = l.value;
                took = n;
            }
        }
        if (took == 0) {
            return false;
        }
        i += took;
    }
    return true;
}

/// A finding as it was said.
struct said_skin {
    selection whom;
    skin_finding what;
    std::string word;
};

std::optional<said_skin> skin_said(const std::string& text, const workplace& w, faults& f) {
    strings words = split(text);
    std::replace(words.begin(), words.end(), std::string("red"), std::string("irritated"));
    // a hot spot is wet, sore skin
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        if (words[i] == "hot" && words[i + 1].starts_with("spot")) {
            words[i] = "wet";
            words.erase(words.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        }
    }
    const auto state = std::find_if(words.begin(), words.end(), [](const std::string& one) {
        return std::find(skin_words.begin(), skin_words.end(), one) != skin_words.end();
    });
    const auto at = static_cast<std::size_t>(state - words.begin());
    if (state == words.end() || at == 0) {
        const bool place =
            part_index(w.reference.dog_body).find(phrase(words, 0, words.size())) != nullptr;
        f.say(errc::syntax, "--skin: a zone and what is seen (" +
                                joined(words_of(skin_words), ", ") + ") are needed; found \"" +
                                text + "\"" +
                                (words.empty() ? std::string{}
                                 : place       ? ", but not what is seen there"
                                               : did_you_mean(words.back(), words_of(skin_words))) +
                                skin_example);
        return std::nullopt;
    }
    skin_finding found;
    found.state = skin_state_at(static_cast<std::size_t>(
        std::find(skin_words.begin(), skin_words.end(), *state) - skin_words.begin()));
    const auto where = places_called("--skin", phrase(words, 0, at), w.reference.dog_body, f);
    const bool lump = found.state == skin_state::lump;
    if (lump ? !lump_words(words, at + 1, found) : at + 1 != words.size()) {
        f.say(errc::syntax, "--skin: not understood; found \"" + text + "\"" +
                                (lump ? "" : ", but only a lump has a size or is known") +
                                skin_example);
        return std::nullopt;
    }
    return where ? std::optional{said_skin{*where, found, phrase(words, 0, at)}} : std::nullopt;
}

void apply_skin(const intake_options& o, const workplace& w, dog& d, faults& f) {
    const std::vector<skin_finding> before = d.skin;
    for (const std::string& text : o.skin) {
        if (const auto said = skin_said(text, w, f)) {
            // it takes the place of the file's; of lumps several may be said of one place
            const skin_finding& now = said->what;
            lay_finding(d.skin, found_on(w.reference.dog_body, said->whom), now,
                        [&](const skin_finding& one) {
                            const bool of_the_file =
                                std::find(before.begin(), before.end(), one) != before.end();
                            return one.state == now.state &&
                                   (now.state != skin_state::lump || of_the_file ||
                                    (one.size == now.size && one.known == now.known));
                        });
        }
    }
}

void apply_alerts(const intake_options& o, dog& d, faults& f) {
    for (const std::string& text : o.alerts) {
        const auto a = parse_alert(text);
        if (!a) {
            f.say(errc::unknown, "--alert: " + alert_complaint(text));
        } else if (!is_plain_line(text)) {
            f.say(errc::syntax, "--alert: a line of plain text in UTF-8; found \"" + text + "\"");
        } else {
            add_alert(d.alerts, *a);
        }
    }
}

/// "puppy" is young.
std::string stage_meant(const std::string& said) {
    const auto one_of_these = [&](const strings& words) {
        return std::find(words.begin(), words.end(), said) != words.end();
    };
    const bool young = one_of_these({"puppy", "pup", "young dog"});
    const bool old = one_of_these({"senior", "elderly", "old dog", "frail"});
    return young ? "young" : old ? "old" : said;
}

void apply_sensitive(const intake_options& o, const workplace& w, dog& d, faults& f) {
    for (const std::string& word : o.sensitive) {
        if (places_called("--sensitive", word, w.reference.dog_body, f) &&
            std::find(d.sensitive.begin(), d.sensitive.end(), word) == d.sensitive.end()) {
            d.sensitive.push_back(word);
        }
    }
}

}  // namespace

std::optional<skin_told> skin_in(const std::string& text, const workplace& w, faults& f) {
    const auto said = skin_said(text, w, f);
    return said ? std::optional{skin_told{said->word, said->what}} : std::nullopt;
}

bool is_plain_line(const std::string& s) {
    const auto* at = reinterpret_cast<const utf8proc_uint8_t*>(s.data());
    auto left = static_cast<utf8proc_ssize_t>(s.size());
    while (left > 0) {
        utf8proc_int32_t c = 0;
        const utf8proc_ssize_t took = utf8proc_iterate(at, left, &c);
        const bool turns = (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
        if (took <= 0 || turns || c == 0x2028 || c == 0x2029 ||
            utf8proc_category(c) == UTF8PROC_CATEGORY_CC) {
            return false;
        }
        at += took;
        left -= took;
    }
    return s.size() <= 2000;
}

void apply_intake(const intake_options& o, bool hair_said, const workplace& w, dog& d, faults& f) {
    apply_mats(o, w, d, f);
    check_free_hair(o, hair_said, w, d, f);
    apply_skin(o, w, d, f);
    apply_sensitive(o, w, d, f);
    apply_alerts(o, d, f);
    for (const std::string& text : o.signs) {
        if (const auto s = named<stop_sign>("--sign", text, stop_sign_names, f)) {
            d.signs.push_back(*s);
        }
    }
    if (!o.age.empty()) {
        d.age = named<life_stage>("--age", stage_meant(o.age), life_stage_names, f);
    }
    if (!o.outdoors.empty()) {
        d.out = named<outdoors>("--outdoors", o.outdoors, outdoors_names, f);
    }
    if (!is_plain_line(o.health)) {
        f.say(errc::syntax, "--health: a line of plain text in UTF-8; found \"" + o.health + "\"");
    } else if (io::says_well(o.health)) {
        f.say(errc::conflict,
              "--health says what ails the dog; found \"" + o.health + "\"; leave it out");
    } else if (!o.health.empty()) {
        d.health = o.health;
    }
    d.heard = read_health(d.health, d.note, w.reference.told_health, d.mix);
    if (d.heard->of_skin && d.skin.empty()) {
        f.say(errc::ambiguous, "--health: where is it? found \"" + d.health +
                                   "\"; what the skin shows is told with its place, so that "
                                   "nothing goes near it: --skin 'belly stitches', --skin 'left "
                                   "foreleg bandage', --skin 'rump fleas'; healed by now: leave it "
                                   "out");
    }
    d.coat_change = d.coat_change || o.coat_change;
    d.shedding = d.shedding || o.shedding;
    d.thin_or_old = d.thin_or_old || o.thin_skin;
    d.pink_skin = d.pink_skin || o.pink_skin;
}

}  // namespace pelage::cli
