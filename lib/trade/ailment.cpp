#include <algorithm>
#include <array>
#include <bitset>
#include <cstddef>

#include <pelage/trade/ailment.hpp>

namespace pelage {

namespace {

using strings = std::vector<std::string>;

/// Words, lower case, in pieces between commas, stops and "and".
std::vector<strings> pieces_of(std::string_view text) {
    std::vector<strings> out{{}};
    std::string word;
    const auto end_word = [&] {
        if (word == "and" || word == "with" || word == "but") {
            out.emplace_back();
        } else if (!word.empty()) {
            out.back().push_back(word);
        }
        word.clear();
    };
    for (const char c : text) {
        const bool upper = c >= 'A' && c <= 'Z';
        const bool of_word =
            upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (c & 0x80) != 0;
        if (of_word) {
            word += upper ? static_cast<char>(c - 'A' + 'a') : c;
        } else if (c != '\'') {
            end_word();
            if (c != ' ' && c != '-') {
                out.emplace_back();
            }
        }
    }
    end_word();
    std::erase_if(out, [](const strings& piece) { return piece.empty(); });
    return out;
}

bool says(std::string_view pattern, std::string_view word) {
    return pattern.back() == '*' ? word.starts_with(pattern.substr(0, pattern.size() - 1))
                                 : word == pattern;
}

bool denies(std::string_view word) {
    constexpr std::array<std::string_view, 9> all{"no",  "not",    "never", "isnt", "without",
                                                  "nor", "doesnt", "hasnt", "wasnt"};
    return std::find(all.begin(), all.end(), word) != all.end();
}

/// The first word of a phrase.
std::string_view first_of(std::string_view phrase) {
    return phrase.substr(0, phrase.find(' '));
}

/// One piece, and which of its words something was made of.
class piece {
  public:
    explicit piece(const strings& words)
        : words_(words),
          denied_(static_cast<std::size_t>(std::find_if(words.begin(), words.end(), denies) -
                                           words.begin())),
          used_(words.size(), false) {
        for (const std::string& word : words) {
            begins_.set(static_cast<unsigned char>(word.front()));
        }
    }

    /// Whether the phrase stands in it, undenied.
    bool tells(std::string_view phrase) {
        // most phrases begin with a letter that no word here begins with
        if (phrase.empty() || !begins_.test(static_cast<unsigned char>(phrase.front()))) {
            return false;
        }
        bool found = false;
        for (std::size_t i = 0; i < words_.size(); ++i) {
            const std::size_t long_so = stands_at(i, phrase);
            // a denial covers what follows it in its piece: "no longer pregnant", "not blind or deaf"
            if (long_so > 0 && (i <= denied_ || denies(first_of(phrase)))) {
                std::fill_n(used_.begin() + static_cast<std::ptrdiff_t>(i), long_so, true);
                found = true;
            }
        }
        return found;
    }

    /// Passes over words that say nothing of their own, and numbers.
    void pass(const strings& beside) {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            const bool number = words_[i].find_first_not_of("0123456789") == std::string::npos;
            used_[i] = used_[i] || number ||
                       std::find(beside.begin(), beside.end(), words_[i]) != beside.end();
        }
    }
    /// Whether it begins by denying something.
    [[nodiscard]] bool denies_all() const { return denied_ == 0; }
    /// Whether it says more than what was found and passed over.
    [[nodiscard]] bool leaves() const {
        return std::find(used_.begin(), used_.end(), false) != used_.end();
    }

  private:
    /// How many words the phrase has if they stand from the `i`-th on, 0 if they don't.
    [[nodiscard]] std::size_t stands_at(std::size_t i, std::string_view phrase) const {
        std::size_t n = 0;
        while (!phrase.empty()) {
            const std::string_view asked = first_of(phrase);
            if (i + n >= words_.size() || !says(asked, words_[i + n])) {
                return 0;
            }
            ++n;
            phrase.remove_prefix(std::min(asked.size() + 1, phrase.size()));
        }
        return n;
    }

    const strings& words_;
    std::size_t denied_;  ///< what stands behind this word is denied
    std::vector<bool> used_;
    std::bitset<256> begins_;  ///< first letters of its words
};

void add(health_told& to, const ailment& a) {
    if (!to.has(a.kind)) {
        to.known.push_back(a.kind);
    }
    to.unwell = to.unwell || a.unwell;
}

bool tells_one(piece& of, const strings& phrases) {
    bool found = false;
    for (const std::string& phrase : phrases) {
        found = of.tells(phrase) || found;
    }
    return found;
}

/// "spayed ten days ago", and not "spayed two years ago".
bool operated_lately(piece& of, const operation_words& by) {
    return tells_one(of, by.what) && tells_one(of, by.lately) && !tells_one(of, by.long_ago);
}

void add_signs(piece& of, const ailments& by, health_told& to) {
    const auto add_once = [](stop_sign s, std::vector<stop_sign>& all) {
        if (std::find(all.begin(), all.end(), s) == all.end()) {
            all.push_back(s);
        }
    };
    for (const sign_words& s : by.signs) {
        if (tells_one(of, s.told)) {
            add_once(s.sign, to.signs);
        }
        if (tells_one(of, s.seen)) {
            add_once(s.sign, to.seen);
        }
    }
}

/// "not pregnant", "no seizures, not blind": each piece denies an ailment that is known, and says nothing else.
bool only_denied(std::string_view text, const ailments& by) {
    const std::vector<strings> all = pieces_of(text);
    return !all.empty() && std::all_of(all.begin(), all.end(), [&](const strings& words) {
        if (!piece(words).denies_all()) {
            return false;
        }
        const strings rest(words.begin() + 1, words.end());
        piece told(rest);
        bool known = false;
        for (const ailment& a : by.all) {
            known = tells_one(told, a.words) || known;
        }
        for (const sign_words& one : by.signs) {
            known = tells_one(told, one.told) || known;
        }
        told.pass(by.beside);
        told.pass({"longer", "more"});
        return known && !told.leaves();
    });
}

}  // namespace

health_told read_health(std::string_view text, std::string_view note, const ailments& by,
                        std::string_view mix) {
    health_told out;
    for (const strings& words : pieces_of(text)) {
        piece one(words);
        bool unwell = false;
        for (const ailment& a : by.all) {
            if (tells_one(one, a.words)) {
                add(out, a);
                unwell = unwell || a.unwell;
            }
        }
        out.of_skin =
            tells_one(one, by.of_skin) || operated_lately(one, by.operations) || out.of_skin;
        add_signs(one, by, out);
        one.pass(by.beside);
        if (unwell) {
            one.pass(by.how_bad);
        }
        out.more = out.more || one.leaves();
    }
    out.denied = only_denied(text, by);
    out.more =
        out.more || (!text.empty() && out.known.empty() && !out.of_skin && out.signs.empty());
    for (const strings& words : pieces_of(note)) {
        piece one(words);
        for (const ailment& a : by.all) {
            const bool young = a.kind == ailment_kind::young;
            const bool reckoned =
                a.unwell || a.kind == ailment_kind::blind || a.kind == ailment_kind::deaf;
            if ((young || reckoned) && tells_one(one, a.words)) {
                out.in_note = out.in_note || !young;
                if (young) {
                    add(out, a);
                }
            }
        }
    }
    const bool crossed = mix.find(" x ") != std::string_view::npos;
    for (const strings& words : crossed ? std::vector<strings>{} : pieces_of(mix)) {
        piece one(words);
        for (const ailment& a : by.all) {
            if (a.kind == ailment_kind::flat_face && tells_one(one, a.words)) {
                add(out, a);
            }
        }
    }
    return out;
}

}  // namespace pelage
