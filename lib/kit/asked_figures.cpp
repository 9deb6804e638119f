// Words of a card with figures or days in them, asked about: which of the glossary's wordings they are.
#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/phrase.hpp>

#include "kit/asked_card.hpp"

namespace pelage::asking {

namespace {

constexpr std::string_view a_figure = "n";
constexpr std::string_view a_day = "d";
constexpr std::string_view any_words = "w";
constexpr std::string_view some_places = "p";

bool begins_with_figure(const std::string& low) {
    return !low.empty() && low.front() >= '0' && low.front() <= '9';
}

bool named_day(std::string_view low) {
    constexpr std::array<std::string_view, 7> days{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
    return std::find(days.begin(), days.end(), low) != days.end();
}

bool named_month(std::string_view low) {
    constexpr std::array<std::string_view, 12> months{"jan", "feb", "mar", "apr", "may", "jun",
                                                      "jul", "aug", "sep", "oct", "nov", "dec"};
    return std::find(months.begin(), months.end(), low) != months.end();
}

/// "Thu 17 Dec 2026", "17 Dec": how many words the day at `at` takes; 0 where none begins there.
std::size_t day_at(const std::vector<token>& all, std::size_t at) {
    std::size_t next = at;
    next += next < all.size() && named_day(all[next].low) ? 1 : 0;
    if (next + 1 >= all.size() || !begins_with_figure(all[next].low) ||
        !named_month(all[next + 1].low)) {
        return 0;
    }
    next += 2;
    next += next < all.size() && all[next].low.size() == 4 && begins_with_figure(all[next].low);
    return next - at;
}

/// The words with figures and days as such: "leaves n to n mm"; several figures in a row are one. A unit may stand
/// right behind its figure.
std::vector<std::string> with_figures_as_such(const std::vector<token>& all) {
    std::vector<std::string> out;
    for (std::size_t at = 0; at < all.size();) {
        if (const std::size_t took = day_at(all, at); took > 0) {
            out.emplace_back(a_day);
            at += took;
            continue;
        }
        const std::string& low = all[at].low;
        if (begins_with_figure(low)) {
            if (out.empty() || out.back() != a_figure) {
                out.emplace_back(a_figure);
            }
            const auto behind = low.find_first_not_of("0123456789./");
            if (behind != std::string::npos) {
                out.push_back(low.substr(behind));
            }
        } else {
            out.push_back(low);
        }
        ++at;
    }
    return out;
}

using words = std::vector<std::string>;

/// Reads words as one of the glossary's wordings.
class wording_reader {
  public:
    wording_reader(const vocabulary& known, const lookup_request& r) : known_(known), r_(r) {}

    /// Whether the words from `first` are those of the wording from `of`.
    [[nodiscard]] bool reads_as(words::const_iterator first, words::const_iterator last,
                                words::const_iterator of, words::const_iterator end) const {
        if (of == end || first == last) {
            return of == end && first == last;
        }
        if (*of != any_words && *of != some_places) {
            return *first == *of && reads_as(first + 1, last, of + 1, end);
        }
        for (auto next = first + 1; next <= last; ++next) {
            if ((*of == any_words || places(first, next)) && reads_as(next, last, of + 1, end)) {
                return true;
            }
            if (next == last) {
                break;
            }
        }
        return false;
    }

  private:
    [[nodiscard]] bool places(words::const_iterator first, words::const_iterator last) const {
        std::string text;
        for (auto at = first; at != last; ++at) {
            if (*at == a_figure || *at == a_day) {
                return false;
            }
            text += *at + " ";
        }
        const std::vector<piece> all = known_.pieces(tokens_of(text), r_);
        return std::all_of(all.begin(), all.end(), [](const piece& p) {
            return of_kind(p, piece_kind::place) || of_kind(p, piece_kind::joining) ||
                   of_kind(p, piece_kind::filler);
        });
    }

    const vocabulary& known_;
    const lookup_request& r_;
};

words wording_of(const std::string& said) {
    words out;
    for (const token& t : tokens_of(said)) {
        out.push_back(t.low);
    }
    return out;
}

/// Whether more than one text reads as it.
bool is_open(const words& wording) {
    return std::any_of(wording.begin(), wording.end(),
                       [](const std::string& w) { return w == any_words || w == some_places; });
}

/// Whether all words of the wording that stand for themselves are there: places are looked for only then.
bool may_read_as(const words& asked, const words& wording) {
    return std::all_of(wording.begin(), wording.end(), [&](const std::string& w) {
        return w == any_words || w == some_places ||
               std::find(asked.begin(), asked.end(), w) != asked.end();
    });
}

}  // namespace

std::optional<card_asked> about_figures(const vocabulary& known, const lookup_request& r) {
    const words asked = with_figures_as_such(tokens_of(r.text));
    const bool a_term =
        known.terms().find(r.text) != nullptr || known.terms().asked(r.text) != nullptr;
    const wording_reader reader(known, r);
    for (const card_line& l : words_of(r).lines) {
        for (const std::string& said : l.said) {
            const words wording = wording_of(said);
            if (!(a_term && is_open(wording)) && may_read_as(asked, wording) &&
                reader.reads_as(asked.begin(), asked.end(), wording.begin(), wording.end())) {
                return card_asked{std::string(detail::trimmed(r.text)), {}, {}, {&l}};
            }
        }
    }
    return std::nullopt;
}

}  // namespace pelage::asking
