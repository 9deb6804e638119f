#include "resolve_mats.hpp"

#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/model/hair_today.hpp>
#include <pelage/trade/place_words.hpp>

#include "resolve_words.hpp"
#include "words_said.hpp"

namespace pelage::cli {

namespace {

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
    said.whom = found_on(w.reference.dog_body, *where);
    return said;
}

}  // namespace

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

}  // namespace pelage::cli
