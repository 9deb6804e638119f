// Private to lib: a mix while it is read: its words, how far, and what was wrong with them.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/model/mix.hpp>

#include "model/mix_words.hpp"

namespace pelage::mix_words {

/// A dog with its parents, where the text names them.
struct parsed {
    bred dog;
    std::optional<std::pair<bred, bred>> parents{};
    bool bare = false;      ///< a name, without brackets
    bool stood_in = false;  ///< in the place of a dog that wasn't understood
};
/// Nothing where it can't be gone on.
using maybe = std::optional<parsed>;

/// The words of a mix one after the other. Faults and notes are collected.
class word_stream {
  public:
    word_stream(std::string_view text, const heredity& h) : h_(h), all_(lexer(text).run()) {}

    /// Within the mix of a named cross: a name in it would lead in circles.
    bool inner = false;
    diagnostics wrong{};
    std::vector<std::string> notes{};

    [[nodiscard]] const heredity& known() const { return h_; }
    void fail(const token& at, errc code, std::string text) {
        wrong.push_back({only_a_name() ? "" : "the mix", 0, at.column, code, std::move(text)});
    }
    /// One name and nothing else: where in it the fault is needn't be told.
    [[nodiscard]] bool only_a_name() const {
        const bool words = std::all_of(all_.begin(), all_.end(), [](const token& t) {
            return t.kind == token_kind::word || t.kind == token_kind::end;
        });
        return words && !like_generation(all_.front().raw) && lower(all_.front().raw) != "genotype";
    }
    void note(std::string text) {
        if (std::find(notes.begin(), notes.end(), text) == notes.end()) {
            notes.push_back(std::move(text));
        }
    }
    [[nodiscard]] const token& now() const { return all_[next_]; }
    token take() { return all_[next_ + 1 < all_.size() ? next_++ : next_]; }
    [[nodiscard]] bool at_word(std::string_view w) const {
        return now().kind == token_kind::word && lower(now().raw) == w;
    }
    [[nodiscard]] bool at_generation() const {
        return now().kind == token_kind::word && like_generation(now().raw);
    }
    /// Goes on after a fault, so that the next is told too.
    [[nodiscard]] maybe stand_in(std::size_t breed = 0) const {
        return h_.breeds.empty() ? std::nullopt
                                 : maybe{parsed{of_breed(h_, breed), {}, false, true}};
    }

  private:
    const heredity& h_;
    std::vector<token> all_;
    std::size_t next_ = 0;
};

/// A breed or a cross by its name; the words are next.
[[nodiscard]] maybe dog_by_name(word_stream& w);
/// A dog by its genes; the word "genotype" is next.
[[nodiscard]] maybe dog_by_genotype(word_stream& w);
/// The parent that `said` names: of the same breeds, with the same genes.
[[nodiscard]] std::optional<bred> parent_meant(const std::pair<bred, bred>& parents,
                                               const bred& said);
/// The generation of a cross, given `back` to a parent where it is one that goes back; its faults are told at
/// `at`.
[[nodiscard]] maybe of_generation(word_stream& w, generation g, const parsed& of,
                                  const std::optional<bred>& back, const token& at);
/// The mix of a named cross.
[[nodiscard]] maybe mix_of(const named_cross& c, const heredity& h);

}  // namespace pelage::mix_words
