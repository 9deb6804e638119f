// Private to lib: what the makers of the quiz's questions share: one file for what is left, one for places,
// one for sheets.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pelage/kit/quiz.hpp>

namespace pelage {

/// The kit's setups that clip, everything of it taken to be there; a 50 is never asked about.
struct quiz_drawer {
    explicit quiz_drawer(const quiz_request& r);

    /// A question of the look-up about that kit, without its text.
    [[nodiscard]] lookup_request asking(const kit& k, std::vector<place> where = {}) const;

    const quiz_request& asked;
    kit whole;
    std::vector<setup> bare{};
    std::vector<setup> combed{};
};

/// Questions as they are made.
class quiz_list {
  public:
    /// Adds the question, its key made of these words, if it has wrong answers enough.
    void add(quiz_question q, const std::vector<std::string>& about);
    [[nodiscard]] std::vector<quiz_question> all() && { return std::move(all_); }

  private:
    std::vector<quiz_question> all_;
};

/// Whether two lengths are told apart by who reads them, in either unit.
[[nodiscard]] bool read_apart(const length& a, const length& b);

/// The lengths that can't be meant where `right` is left, nearest first, each read apart from it and from
/// one another in either unit.
[[nodiscard]] std::vector<quiz_option> other_lengths(const finished& right,
                                                     std::vector<length> all);

/// One of so many, the same for the same text.
template <class One>
[[nodiscard]] const One& one_of(const std::vector<One>& all, std::string_view text) {
    std::size_t sum = 0;
    for (const char c : text) {
        sum = sum * 31 + static_cast<unsigned char>(c);
    }
    return all[sum % all.size()];
}

/// What is left on a coat: lengths, ways, substitutes, combs.
void add_lengths(quiz_list& to, const quiz_drawer& d);
/// Where what may go, under mats and under combs.
void add_places(quiz_list& to, const quiz_drawer& d);
/// What the sheets ask for.
void add_sheets(quiz_list& to, const quiz_drawer& d);

}  // namespace pelage
