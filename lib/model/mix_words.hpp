// Private to lib: the words of a mix: tokens, generations, breeds by any of their names, alleles.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/model/mix.hpp>

namespace pelage::mix_words {

constexpr std::size_t longest_text = 2000;
constexpr int deepest_brackets = 64;

enum class token_kind { word, open, close, by, end };

struct token {
    token_kind kind = token_kind::end;
    std::string raw;
    unsigned column = 1;  ///< in characters, from 1
};

[[nodiscard]] std::string lower(std::string_view s);

/// A name as the reference writes it: lower case, blanks for hyphens, no full stops.
[[nodiscard]] std::string plain_name(std::string_view s);

class lexer {
  public:
    explicit lexer(std::string_view text) : text_(text) {}

    std::vector<token> run() {
        constexpr std::string_view times = "\u00d7";
        while (at_ < text_.size()) {
            const char c = text_[at_];
            const std::string_view rest = text_.substr(at_);
            if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
                flush();
                step(1);
            } else if (c == '(' || c == ')') {
                flush();
                add(c == '(' ? token_kind::open : token_kind::close, std::string(1, c), column_);
                step(1);
            } else if (rest.substr(0, times.size()) == times) {
                flush();
                add(token_kind::by, std::string(times), column_);
                step(times.size());
            } else {
                word_start_ = word_.empty() ? column_ : word_start_;
                word_ += c;
                step(1);
            }
        }
        flush();
        add(token_kind::end, {}, column_);
        return std::move(all_);
    }

  private:
    void step(std::size_t bytes) {
        // bytes that continue a character don't count
        for (std::size_t i = 0; i < bytes; ++i) {
            column_ += (static_cast<unsigned char>(text_[at_ + i]) & 0xC0U) != 0x80U ? 1U : 0U;
        }
        at_ += bytes;
    }
    void add(token_kind k, std::string raw, unsigned column) {
        all_.push_back({k, std::move(raw), column});
    }
    void flush() {
        if (word_.empty()) {
            return;
        }
        const std::string low = lower(word_);
        add(low == "x" || low == "cross" ? token_kind::by : token_kind::word, word_, word_start_);
        word_.clear();
    }

    std::string_view text_;
    std::size_t at_ = 0;
    unsigned column_ = 1;
    std::string word_;
    unsigned word_start_ = 1;
    std::vector<token> all_;
};

enum class generation { f1, f1b, f1bb, f2, f2b, f3 };
constexpr std::array<std::string_view, 6> generation_names{"F1", "F1b", "F1bb", "F2", "F2b", "F3"};

[[nodiscard]] bool goes_back(generation g);

/// Whether a word looks like a generation, known or not: F and a digit.
[[nodiscard]] bool like_generation(std::string_view s);

[[nodiscard]] std::optional<generation> generation_of(std::string_view word);

[[nodiscard]] std::string in_quotes(std::string_view s);

[[nodiscard]] std::vector<std::string> in_quotes(std::vector<std::string> names);

/// A breed under one of its names.
struct named_breed {
    std::size_t index = 0;
    std::string text;
    bool sized = false;
};

[[nodiscard]] std::vector<std::string> own_names(const breed& b);

/// What stands before `name` in `whole`: "toy" before "poodle"; nothing if it doesn't end so.
[[nodiscard]] std::string_view word_before(std::string_view whole, std::string_view name);

[[nodiscard]] std::vector<named_breed> breeds_called(const heredity& h, std::string_view name);

/// The name with its short words written out: "mini schnauzer" is a "miniature schnauzer".
[[nodiscard]] std::string written_out(const heredity& h, const std::string& name);

[[nodiscard]] const named_cross* cross_called(const heredity& h, const std::string& name);

[[nodiscard]] std::vector<std::string> every_name(const heredity& h);

/// What is asked back instead of a breed; null if it isn't such a word.
[[nodiscard]] const asked_breed* asked_of(const heredity& h, std::string_view name);

/// Whether `part` stands in `name` as whole words.
[[nodiscard]] bool within(std::string_view name, std::string_view part);

/// Breeds with that word in their name, for "terrier".
[[nodiscard]] std::vector<std::string> breeds_with(const heredity& h, const std::string& word);

/// A breed within a longer name: "poodle" in "big poodle"; the longest.
[[nodiscard]] std::string breed_in(const heredity& h, const std::string& name);

[[nodiscard]] bool same_coat(const breed& a, const breed& b);

/// Which locus an allele's letter belongs to, and whether it is the counted variant.
struct allele {
    std::optional<locus> at;
    bool variant = false;
};

[[nodiscard]] std::optional<allele> allele_called(std::string_view s);

constexpr const char* right_genotype = "write it like \"genotype l/l F/f C/c\"";

}  // namespace pelage::mix_words
