// From what a person types to a dog's parents.
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/model/mix.hpp>

#include "model/mix_reading.hpp"

namespace pelage {

using namespace mix_words;

namespace {

/// What crosses what, down to single dogs.
class parser {
  public:
    explicit parser(word_stream& words) : w_(words) {}

    /// The whole text.
    maybe whole() {
        if (w_.now().kind == token_kind::end) {
            w_.fail(w_.now(), errc::missing,
                    "no breed is named; write it like \"poodle x beagle\"");
            return std::nullopt;
        }
        maybe m = a_mix();
        if (!m) {
            return m;
        }
        if (w_.now().kind != token_kind::end) {
            w_.fail(
                w_.now(), errc::syntax,
                "the mix ends before this; found " + in_quotes(w_.now().raw) +
                    (w_.now().kind == token_kind::close ? "; leave it out, or write \"(\" before"
                                                        : "; write \"x\" between two dogs"));
            return std::nullopt;
        }
        return m;
    }

    /// Nothing where it can't be gone on.
    maybe a_mix() {
        std::optional<token> sign;
        if (w_.at_generation()) {
            sign = w_.take();
        }
        const token begin = w_.now();
        maybe first = a_dog();
        if (!first) {
            return first;
        }
        maybe result = first;
        if (w_.now().kind == token_kind::by) {
            const token by = w_.take();
            maybe second = a_dog();
            if (!second) {
                return second;
            }
            if (w_.now().kind == token_kind::by) {
                w_.fail(w_.now(), errc::ambiguous,
                        "three dogs: which two first? write (" + as_part(first->dog) + " x " +
                            as_part(second->dog) + ") x ... or " + as_part(first->dog) + " x (" +
                            as_part(second->dog) + " x ...)");
                return std::nullopt;
            }
            const bool unclear = sign && generation_of(sign->raw) != generation::f1 &&
                                 (named_cross_bare(*first) || named_cross_bare(*second));
            if (unclear) {
                w_.fail(*sign, errc::ambiguous,
                        "of what is it " + in_quotes(sign->raw) +
                            "? found a cross on one side of the " +
                            "\"x\"; put brackets around what belongs together");
                return std::nullopt;
            }
            result = crossed(first->dog, second->dog, by);
        }
        if (!result) {
            return result;
        }
        if (!sign && w_.at_generation()) {
            sign = w_.take();
        }
        return sign ? of_generation(*sign, *result, begin) : result;
    }

  private:
    static bool named_cross_bare(const parsed& p) { return p.bare && p.parents; }

    maybe crossed(const bred& a, const bred& b, const token& at) {
        try {
            return parsed{cross(a, b), std::pair{a, b}};
        } catch (const error& e) {
            w_.fail(at, e.code(), e.what());
            return std::nullopt;
        }
    }

    maybe of_generation(const token& sign, const parsed& of, const token& at) {
        const auto g = generation_of(sign.raw);
        if (!g) {
            w_.fail(sign, errc::unknown,
                    "no generation is called so here; found " + in_quotes(sign.raw) +
                        "; known are F1, F1b, F1bb, F2, F2b and F3; write others out: "
                        "\"(poodle x beagle) x poodle\"");
            return std::nullopt;
        }
        const std::string called(generation_names[static_cast<std::size_t>(*g)]);
        if (!of.parents) {
            w_.fail(sign, errc::missing,
                    in_quotes(called) + " is of a cross" +
                        (of.stood_in ? " whose parents are named"
                                     : "; found " + in_quotes(of.dog.text)) +
                        "; write it like \"" + called + " poodle x beagle" +
                        (goes_back(*g) ? " to poodle\"" : "\""));
            return std::nullopt;
        }
        std::optional<bred> back;
        if (w_.at_word("back")) {
            w_.take();
        }
        if (w_.at_word("to")) {
            const token to = w_.take();
            maybe d = a_dog();
            if (!d) {
                return d;
            }
            back = parent_meant(*of.parents, d->dog);
            if (!back || !goes_back(*g)) {
                w_.fail(to, back ? errc::conflict : errc::unknown,
                        back ? in_quotes(called) +
                                   " is no backcross; found \"to\" after it; leave it "
                                   "out, or write F1b"
                             : "a backcross goes to one of the two parents; found " +
                                   in_quotes(d->dog.text) + "; write \"to " +
                                   as_part(of.parents->first) + "\" or \"to " +
                                   as_part(of.parents->second) + "\"");
                return std::nullopt;
            }
        } else if (goes_back(*g)) {
            w_.fail(sign, errc::ambiguous,
                    in_quotes(called) + ": back to which parent? write \"" + called + " " +
                        of.dog.text + " to " + as_part(of.parents->first) + "\" or \"" + called +
                        " " + of.dog.text + " to " + as_part(of.parents->second) + "\"");
            return std::nullopt;
        }
        return mix_words::of_generation(w_, *g, of, back, at);
    }

    maybe a_dog() {
        if (w_.now().kind == token_kind::open) {
            return in_brackets();
        }
        if (w_.at_generation()) {
            w_.fail(w_.now(), errc::syntax,
                    "a generation stands before a whole cross; found " + in_quotes(w_.now().raw) +
                        " in its middle; put brackets around it and its dogs");
            return std::nullopt;
        }
        if (w_.at_word("genotype")) {
            return dog_by_genotype(w_);
        }
        if (w_.now().kind != token_kind::word || w_.at_word("to") || w_.at_word("back")) {
            w_.fail(w_.now(), errc::missing,
                    "a dog is missing here; found " +
                        (w_.now().kind == token_kind::end ? "the end" : in_quotes(w_.now().raw)) +
                        "; write a breed, such as \"poodle\"");
            return std::nullopt;
        }
        return dog_by_name(w_);
    }

    maybe in_brackets() {
        const token open = w_.take();
        if (++brackets_ > deepest_brackets) {
            w_.fail(open, errc::range,
                    "brackets inside brackets too deep; right are at most " +
                        std::to_string(deepest_brackets));
            return std::nullopt;
        }
        maybe inside = a_mix();
        --brackets_;
        if (!inside) {
            return inside;
        }
        if (w_.now().kind != token_kind::close) {
            w_.fail(open, errc::syntax,
                    "a bracket is not closed; found " +
                        (w_.now().kind == token_kind::end ? "the end" : in_quotes(w_.now().raw)) +
                        "; write \")\" after the cross");
            return std::nullopt;
        }
        w_.take();
        inside->bare = false;
        return inside;
    }

    word_stream& w_;
    int brackets_ = 0;
};

}  // namespace

maybe mix_words::mix_of(const named_cross& c, const heredity& h) {
    word_stream w(c.mix, h);
    w.inner = true;
    maybe m = parser(w).a_mix();
    return w.wrong.empty() ? m : std::nullopt;
}

mix read_mix(std::string_view text, const heredity& h) {
    word_stream w(text, h);
    maybe m;
    if (text.size() > longest_text) {
        w.fail({}, errc::range,
               "too long to be a mix; found " + std::to_string(text.size()) +
                   " bytes; right are at most " + std::to_string(longest_text));
    } else {
        m = parser(w).whole();
    }
    if (!w.wrong.empty()) {
        throw bad_input(std::move(w.wrong));
    }
    return {m->dog, std::move(w.notes)};
}

bool is_mix_name(std::string_view s) {
    constexpr std::array<std::string_view, 5> own{"x", "cross", "to", "back", "genotype"};
    if (s.empty() || s.find("\u00d7") != std::string_view::npos) {
        return false;
    }
    while (true) {
        const auto blank = s.find(' ');
        const std::string_view word = s.substr(0, blank);
        const bool letters = std::all_of(word.begin(), word.end(), [](char c) {
            return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80U;
        });
        if (word.empty() || !letters || std::find(own.begin(), own.end(), word) != own.end()) {
            return false;
        }
        if (blank == std::string_view::npos) {
            return true;
        }
        s.remove_prefix(blank + 1);
    }
}

bool sounds_like_mix(std::string_view text, const heredity& h) {
    const std::vector<token> all = lexer(text.substr(0, longest_text)).run();
    std::string words;
    for (const token& t : all) {
        if (t.kind == token_kind::by) {
            return true;
        }
        words += t.kind == token_kind::word ? (words.empty() ? "" : " ") + t.raw : "";
    }
    const token& first = all.front();
    if (first.kind == token_kind::open ||
        (first.kind == token_kind::word &&
         (like_generation(first.raw) || lower(first.raw) == "genotype"))) {
        return true;
    }
    const std::string name = written_out(h, plain_name(words));
    if (!breeds_called(h, name).empty() || cross_called(h, name) != nullptr ||
        asked_of(h, name) != nullptr) {
        return true;
    }
    // blades and lengths have digits, and a comb says so; the rest may be a breed misspelt
    const bool tool = name.find_first_of("0123456789#") != std::string::npos ||
                      within(name, "comb") || within(name, "blade") || name.size() < 3;
    return !tool && (breeds_with(h, name).size() > 1 || !breed_in(h, name).empty() ||
                     !nearest_name(name, every_name(h)).empty());
}

}  // namespace pelage
