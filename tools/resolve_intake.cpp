// What the intake found, from the words of options.
#include <algorithm>

#include <utf8proc.h>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/model/hair_today.hpp>
#include <pelage/trade/place_words.hpp>

#include "asker.hpp"
#include "resolve_arguments.hpp"
#include "resolve_words.hpp"

namespace pelage::cli {

namespace {

using strings = std::vector<std::string>;

/// The words of a text; colons and commas between them don't matter.
strings split(const std::string& text) {
    strings out(1);
    for (const char c : text) {
        if (c == ' ' || c == '\t' || c == ':' || c == ',' || c == ';') {
            out.emplace_back();
        } else {
            out.back() += c;
        }
    }
    std::erase(out, "");
    return out;
}

/// Words `from` to `to`, that one left out, as one text.
std::string phrase(const strings& words, std::size_t from, std::size_t to) {
    std::string out;
    for (std::size_t i = from; i < to; ++i) {
        out += (out.empty() ? "" : " ") + words[i];
    }
    return out;
}

/// Reads what follows the grade of a mat: its free hair, "to the skin", "comb passes", "comb out".
class mat_words {
  public:
    mat_words(const strings& words, std::size_t from) : words_(words), at_(from) {}

    /// Whether all of it was understood.
    bool read(mat_finding& m) {
        while (at_ < words_.size()) {
            if (take({"to", "the", "skin"}) || take({"to", "skin"})) {
                m.to_skin = true;
            } else if (take({"comb", "passes"})) {
                m.comb_passes = true;
            } else if (take({"comb", "out"})) {
                m.comb_out = true;
            } else if (!take_length(m)) {
                return false;
            }
        }
        return true;
    }

    /// Whether it is a length that no blade finds, where it wasn't understood.
    [[nodiscard]] bool too_short() const {
        for (std::size_t n = 1; n <= 3 && at_ + n <= words_.size(); ++n) {
            const parsed_length l = parse_length(phrase(words_, at_, at_ + n));
            const bool one = l.ok() || l.fault == length_fault::out_of_range;
            if (one && l.value < least_told()) {
                return true;
            }
        }
        return false;
    }

  private:
    static length least_told() { return mm(0.1); }  // shorter is no hair that a blade finds
    bool take(const strings& what) {
        if (at_ + what.size() > words_.size() ||
            !std::equal(what.begin(), what.end(),
                        words_.begin() + static_cast<std::ptrdiff_t>(at_))) {
            return false;
        }
        at_ += what.size();
        return true;
    }
    /// "5 mm", "5mm", "1/4 in", with or without "free" and "hair" behind it; the most words first.
    bool take_length(mat_finding& m) {
        for (std::size_t n = 3; n > 0; --n) {
            if (at_ + n > words_.size() || m.free_hair) {
                continue;
            }
            const parsed_length l = parse_length(phrase(words_, at_, at_ + n));
            if (l.ok() && l.value >= least_told()) {
                m.free_hair = l.value;
                at_ += n;
                (void)take({"free"});
                (void)take({"hair"});
                return true;
            }
        }
        return false;
    }

    const strings& words_;
    std::size_t at_;
};

/// The longest run of words that names a place; empty if none does.
std::string place_within(const strings& all, const body& b) {
    const part_index parts(b);
    for (std::size_t n = all.size(); n > 0; --n) {
        for (std::size_t at = 0; at + n <= all.size(); ++at) {
            if (const std::string one = phrase(all, at, at + n); parts.find(one) != nullptr) {
                return one;
            }
        }
    }
    return {};
}

/// Where the place was understood, and how bad the mat is wasn't said: what each grade means.
std::string grade_asked(const std::string& text, const std::string& where) {
    return "--mat: how bad is it there? found \"" + text + "\", of which \"" + where +
           "\" is understood; a tangle still combs out, a mat doesn't, a matted-area is many, a "
           "pelt is one sheet; write it like '" +
           where + " mat 3 mm', with the free hair under it, or '" + where + " pelt to the skin'";
}

constexpr const char* mat_example =
    "; write it like 'left ear pelt 5 mm', 'tail tangle comb out', 'back pelt to the skin' or "
    "'neck matted-area 6 mm comb passes'";

/// Moves a length that stands before the grade behind it, "ears 5 mm mat" to "ears mat 5 mm"; where the
/// grade stands then.
std::size_t length_behind(strings& words, std::size_t grade) {
    for (std::size_t n = 2; n > 0 && grade < words.size(); --n) {
        if (grade > n && parse_length(phrase(words, grade - n, grade)).ok()) {
            const auto from = words.begin() + static_cast<std::ptrdiff_t>(grade - n);
            std::rotate(from, words.begin() + static_cast<std::ptrdiff_t>(grade),
                        words.begin() + static_cast<std::ptrdiff_t>(grade) + 1);
            return grade - n;
        }
    }
    return grade;
}

/// A mat as it was said.
struct said_mat {
    std::string text;
    selection whom;
    mat_finding what;
};

std::optional<said_mat> mat_said(const std::string& text, const workplace& w, faults& f) {
    strings words = split(text);
    std::replace(words.begin(), words.end(), std::string("pelted"), std::string("pelt"));
    std::replace(words.begin(), words.end(), std::string("felted"), std::string("pelt"));
    // "matted area" is one word here
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        if (words[i] == "matted" && words[i + 1] == "area") {
            words[i] = "matted-area";
            words.erase(words.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        }
    }
    const auto grade = std::find_if(words.begin(), words.end(), [](const std::string& one) {
        return std::find(mat_names.begin(), mat_names.end(), one) != mat_names.end();
    });
    const auto at = length_behind(words, static_cast<std::size_t>(grade - words.begin()));
    const std::string understood =
        at == words.size() ? place_within(words, w.reference.dog_body) : "";
    if (!understood.empty()) {
        f.say(errc::syntax, grade_asked(text, understood));
        return std::nullopt;
    }
    if (at == words.size() || at == 0) {
        f.say(errc::syntax, "--mat: a zone and how bad it is (" +
                                joined(words_of(mat_names), ", ") + ") are needed; found \"" +
                                text + "\"" + mat_example);
        return std::nullopt;
    }
    said_mat said{text, {}, {}};
    mat_finding& m = said.what;
    m.grade = static_cast<mat_grade>(std::find(mat_names.begin(), mat_names.end(), words[at]) -
                                     mat_names.begin());
    const auto where = places_called("--mat", phrase(words, 0, at), w.reference.dog_body, f);
    mat_words rest(words, at + 1);
    if (!rest.read(m)) {
        f.say(rest.too_short() ? errc::range : errc::syntax,
              rest.too_short() ? "--mat: free hair is told from 0.1 mm on; found \"" + text +
                                     "\"; where there is less, write 'to the skin'"
                               : "--mat: not understood; found \"" + text + "\"" + mat_example);
        return std::nullopt;
    }
    if (m.to_skin && (m.free_hair || m.comb_passes)) {
        f.say(errc::conflict,
              "--mat: felted to the skin leaves no free hair and no way for a comb; "
              "found \"" +
                  text + "\"; leave one out");
        return std::nullopt;
    }
    if (m.comb_out && (m.grade == mat_grade::pelt || m.to_skin)) {
        f.say(errc::conflict,
              "--mat: a pelt, or what is felted to the skin, is never combed out; "
              "found \"" +
                  text + "\"");
        return std::nullopt;
    }
    if (!where) {
        return std::nullopt;
    }
    said.whom = *where;
    return said;
}

void apply_mats(const intake_options& o, const workplace& w, dog& d, faults& f) {
    std::vector<said_mat> said;
    for (const std::string& text : o.mats) {
        auto m = mat_said(text, w, f);
        if (!m) {
            continue;
        }
        if (std::any_of(said.begin(), said.end(),
                        [&](const said_mat& one) { return clash(one.whom, m->whom); })) {
            f.say(errc::duplicate, "--mat: two mats in one place; found \"" + text +
                                       "\" after another there; say the worse one");
            continue;
        }
        said.push_back(std::move(*m));
    }
    // what is said of a narrower word stands
    std::stable_sort(said.begin(), said.end(),
                     [](const said_mat& a, const said_mat& b) { return wider(a.whom, b.whom); });
    for (const said_mat& m : said) {
        lay_finding(d.mats, m.whom, m.what, [](const mat_finding&) { return true; });
    }
}

/// What an option says of the hair may fight what a file says of a mat, and the other way round.
void check_free_hair(const intake_options& o, bool hair_said, const workplace& w, const dog& d,
                     faults& f) {
    if (o.mats.empty() && !hair_said) {
        return;
    }
    const body& b = w.reference.dog_body;
    for (const mat_beyond_hair& m : mats_beyond_hair(part_index(b), d)) {
        const mat_finding& found = d.mats[m.mat];
        f.say(errc::conflict, std::string(o.mats.empty() ? "--now" : "--mat") +
                                  ": more free hair under a mat than hair today; found " +
                                  show(*found.free_hair) + " under it at the " +
                                  title(b, found.at) + ", where the hair is " + show(m.now) +
                                  "; measure again");
        return;
    }
}

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
            lay_finding(d.skin, said->whom, now, [&](const skin_finding& one) {
                const bool of_the_file =
                    std::find(before.begin(), before.end(), one) != before.end();
                return one.state == now.state && (now.state != skin_state::lump || of_the_file ||
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
    d.heard = read_health(d.health, d.note, w.reference.told_health);
    d.coat_change = d.coat_change || o.coat_change;
    d.shedding = d.shedding || o.shedding;
    d.thin_or_old = d.thin_or_old || o.thin_skin;
    d.pink_skin = d.pink_skin || o.pink_skin;
}

}  // namespace pelage::cli
