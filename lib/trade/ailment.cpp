#include <algorithm>
#include <array>
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
    return out;
}

bool says(const std::string& pattern, const std::string& word) {
    return pattern.back() == '*' ? word.starts_with(pattern.substr(0, pattern.size() - 1))
                                 : word == pattern;
}

bool denies(const std::string& word) {
    constexpr std::array<std::string_view, 9> all{"no",  "not",    "never", "isnt", "without",
                                                  "nor", "doesnt", "hasnt", "wasnt"};
    return std::find(all.begin(), all.end(), word) != all.end();
}

/// One piece, and which of its words something was made of.
class piece {
  public:
    explicit piece(const strings& words) : words_(words), used_(words.size(), false) {}

    /// Whether the phrase stands in it, undenied.
    bool tells(const std::string& phrase) {
        const strings asked = split(phrase);
        bool found = false;
        for (std::size_t i = 0; i + asked.size() <= words_.size(); ++i) {
            // a denial covers what follows it in its piece: "no longer pregnant", "not blind or deaf"
            const auto before = words_.begin() + static_cast<std::ptrdiff_t>(i);
            bool here = denies(asked.front()) || std::none_of(words_.begin(), before, denies);
            for (std::size_t n = 0; here && n < asked.size(); ++n) {
                here = says(asked[n], words_[i + n]);
            }
            for (std::size_t n = 0; here && n < asked.size(); ++n) {
                used_[i + n] = true;
            }
            found = found || here;
        }
        return found;
    }

    /// Whether it says more than what was found and words that say nothing of their own.
    [[nodiscard]] bool leaves(const strings& beside) const {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            const bool number = words_[i].find_first_not_of("0123456789") == std::string::npos;
            if (!used_[i] && !number &&
                std::find(beside.begin(), beside.end(), words_[i]) == beside.end()) {
                return true;
            }
        }
        return false;
    }

  private:
    static strings split(const std::string& phrase) {
        strings out{{}};
        for (const char c : phrase) {
            if (c == ' ') {
                out.emplace_back();
            } else {
                out.back() += c;
            }
        }
        return out;
    }

    const strings& words_;
    std::vector<bool> used_;
};

void add(health_told& to, const ailment& a) {
    if (!to.has(a.kind)) {
        to.known.push_back(a.kind);
    }
    to.unwell = to.unwell || a.unwell;
}

bool tells_any(piece& of, const ailment& a) {
    bool found = false;
    for (const std::string& phrase : a.words) {
        found = of.tells(phrase) || found;
    }
    return found;
}

}  // namespace

health_told read_health(std::string_view text, std::string_view note, const ailments& by) {
    health_told out;
    for (const strings& words : pieces_of(text)) {
        piece one(words);
        bool ails = false;
        for (const ailment& a : by.all) {
            if (tells_any(one, a)) {
                add(out, a);
                ails = ails || a.unwell;
            }
        }
        out.more = out.more || (!ails && one.leaves(by.beside));
    }
    out.more = out.more || (!text.empty() && out.known.empty());
    for (const strings& words : pieces_of(note)) {
        piece one(words);
        for (const ailment& a : by.all) {
            const bool young = a.kind == ailment_kind::young;
            const bool reckoned = a.unwell || a.kind == ailment_kind::senses;
            if ((young || reckoned) && tells_any(one, a)) {
                young ? add(out, a) : void(out.in_note = true);
            }
        }
    }
    return out;
}

}  // namespace pelage
