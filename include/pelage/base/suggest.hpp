// The name a person probably meant.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace pelage {

/// Edits (insert, delete, replace, swap of neighbours) between two words, letter case ignored.
[[nodiscard]] inline std::size_t edits(std::string_view a, std::string_view b) {
    const auto low = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) {
        for (std::size_t j = 0; j <= b.size(); ++j) {
            if (i == 0 || j == 0) {
                d[i][j] = i + j;
                continue;
            }
            const bool same = low(a[i - 1]) == low(b[j - 1]);
            d[i][j] =
                std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + (same ? 0 : 1)});
            if (i > 1 && j > 1 && low(a[i - 1]) == low(b[j - 2]) &&
                low(a[i - 2]) == low(b[j - 1])) {
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
            }
        }
    }
    return d[a.size()][b.size()];
}

/// The nearest of `names` to `word`: at most 2 edits (1 for words of up to 4 letters), or the only
/// name that begins with it; empty if none. The first in order wins a tie.
[[nodiscard]] inline std::string nearest_name(std::string_view word,
                                              const std::vector<std::string>& names) {
    const std::size_t most = word.size() <= 4 ? 1 : 2;
    std::size_t best = most + 1;
    std::string found;
    for (const std::string& n : names) {
        if (n.size() > word.size() + most || word.size() > n.size() + most) {
            continue;
        }
        const std::size_t e = edits(word, n);
        if (e < best) {
            best = e;
            found = n;
        }
    }
    if (!found.empty() || word.size() < 3) {
        return found;
    }
    for (const std::string& n : names) {
        if (n.size() > word.size() && n.starts_with(word)) {
            if (!found.empty() && found != n) {
                return {};
            }
            found = n;
        }
    }
    return found;
}

/// "; did you mean \"muzzle\"?" or nothing.
[[nodiscard]] inline std::string did_you_mean(std::string_view word,
                                              const std::vector<std::string>& names) {
    const std::string n = nearest_name(word, names);
    return n.empty() ? n : "; did you mean \"" + n + "\"?";
}

}  // namespace pelage
