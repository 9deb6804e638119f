#include "model/mix_words.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>

namespace pelage::mix_words {

std::string lower(std::string_view s) {
    std::string out{s};
    for (char& c : out) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    }
    return out;
}

std::string plain_name(std::string_view s) {
    std::string out;
    for (const char c : lower(s)) {
        if (c == '-' || c == '_') {
            out += ' ';
        } else if (c != '.') {
            out += c;
        }
    }
    return out;
}

bool goes_back(generation g) {
    return g == generation::f1b || g == generation::f1bb || g == generation::f2b;
}

bool like_generation(std::string_view s) {
    return s.size() >= 2 && (s[0] == 'F' || s[0] == 'f') && s[1] >= '0' && s[1] <= '9';
}

std::optional<generation> generation_of(std::string_view word) {
    for (std::size_t i = 0; i < generation_names.size(); ++i) {
        if (lower(word) == lower(generation_names[i])) {
            return static_cast<generation>(i);
        }
    }
    return std::nullopt;
}

std::string in_quotes(std::string_view s) {
    constexpr std::size_t most = 60;
    return "\"" + std::string(s.substr(0, most)) + (s.size() > most ? "..." : "") + "\"";
}

std::vector<std::string> in_quotes(std::vector<std::string> names) {
    for (std::string& n : names) {
        n = in_quotes(n);
    }
    return names;
}

std::vector<std::string> own_names(const breed& b) {
    std::vector<std::string> all{b.id};
    all.insert(all.end(), b.also.begin(), b.also.end());
    return all;
}

std::string_view word_before(std::string_view whole, std::string_view name) {
    const bool longer = whole.size() > name.size() + 1 && whole.ends_with(name) &&
                        whole[whole.size() - name.size() - 1] == ' ';
    return longer ? whole.substr(0, whole.size() - name.size() - 1) : std::string_view{};
}

std::vector<named_breed> breeds_called(const heredity& h, std::string_view name) {
    std::vector<named_breed> found;
    for (std::size_t i = 0; i < h.breeds.size(); ++i) {
        const breed& b = h.breeds[i];
        std::string_view size;
        const auto called = [&](std::string_view n) {
            size = word_before(name, n);
            return name == n || (!size.empty() &&
                                 std::find(b.sizes.begin(), b.sizes.end(), size) != b.sizes.end());
        };
        if (called(b.id) || std::any_of(b.also.begin(), b.also.end(), called)) {
            found.push_back(
                {i, size.empty() ? b.id : std::string(size) + " " + b.id, !size.empty()});
        }
    }
    return found;
}

std::string written_out(const heredity& h, const std::string& name) {
    std::string out;
    for (std::size_t at = 0; at < name.size();) {
        const std::size_t end = std::min(name.find(' ', at), name.size());
        const std::string word = name.substr(at, end - at);
        const auto s = std::find_if(h.shorts.begin(), h.shorts.end(),
                                    [&](const short_word& one) { return one.word == word; });
        out += (at == 0 ? "" : " ") + (s == h.shorts.end() ? word : s->means);
        at = end + 1;
    }
    return out;
}

const named_cross* cross_called(const heredity& h, const std::string& name) {
    const auto at = std::find_if(h.crosses.begin(), h.crosses.end(),
                                 [&](const named_cross& c) { return c.id == name; });
    return at == h.crosses.end() ? nullptr : &*at;
}

std::vector<std::string> every_name(const heredity& h) {
    std::vector<std::string> all;
    for (const breed& b : h.breeds) {
        for (const std::string& n : own_names(b)) {
            all.push_back(n);
            for (const std::string& s : b.sizes) {
                all.push_back(s + " " + n);
            }
        }
    }
    for (const named_cross& c : h.crosses) {
        all.push_back(c.id);
    }
    return all;
}

const asked_breed* asked_of(const heredity& h, std::string_view name) {
    for (const asked_breed& a : h.asked) {
        if (std::find(a.words.begin(), a.words.end(), name) != a.words.end()) {
            return &a;
        }
    }
    const auto ends_so = [&](const asked_breed& a) {
        return std::any_of(a.endings.begin(), a.endings.end(), [&](const std::string& end) {
            return name.size() > end.size() && name.ends_with(end);
        });
    };
    const auto at = std::find_if(h.asked.begin(), h.asked.end(), ends_so);
    // a cross that is known, misspelt, is told by its name
    return at == h.asked.end() || !nearest_name(name, every_name(h)).empty() ? nullptr : &*at;
}

bool within(std::string_view name, std::string_view part) {
    const std::string padded = " " + std::string(name) + " ";
    return padded.find(" " + std::string(part) + " ") != std::string::npos;
}

std::vector<std::string> breeds_with(const heredity& h, const std::string& word) {
    std::vector<std::string> some;
    for (const breed& b : h.breeds) {
        if (within(b.id, word)) {
            some.push_back(b.id);
        }
    }
    return some;
}

std::string breed_in(const heredity& h, const std::string& name) {
    std::string longest;
    for (const std::string& n : every_name(h)) {
        if (n.size() > longest.size() && within(name, n)) {
            longest = n;
        }
    }
    return longest;
}

bool same_coat(const breed& a, const breed& b) {
    for (std::size_t l = 0; l < a.frequency.size(); ++l) {
        if (std::abs(a.frequency[l].best - b.frequency[l].best) > 1e-12) {
            return false;
        }
    }
    return a.coat == b.coat;
}

std::optional<allele> allele_called(std::string_view s) {
    if (s.size() == 3 && s.substr(0, 2) == "Lh" && s[2] >= '1' && s[2] <= '5') {
        return allele{locus::long_hair, true};
    }
    if (s == "l" || s == "L") {
        return allele{locus::long_hair, s == "l"};
    }
    if (s == "F" || s == "f") {
        return allele{locus::furnishings, s == "F"};
    }
    if (s == "C" || s == "c") {
        return allele{locus::curl, s == "C"};
    }
    if (s == "N") {
        return allele{std::nullopt, false};
    }
    return std::nullopt;
}

}  // namespace pelage::mix_words
