// From what a person types to a dog's parents.
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/model/mix.hpp>

#include "model/mix_words.hpp"

namespace pelage {

using namespace mix_words;

namespace {

class parser {
  public:
    parser(std::string_view text, const heredity& h)
        : h_(h), all_(lexer(text).run()), length_(text.size()) {}

    mix run() {
        if (length_ > longest_text) {
            fail(all_.front(), errc::range,
                 "too long to be a mix; found " + std::to_string(length_) +
                     " bytes; right are at "
                     "most " +
                     std::to_string(longest_text));
        } else {
            whole();
        }
        if (!wrong_.empty()) {
            throw bad_input(std::move(wrong_));
        }
        return std::move(read_);
    }

  private:
    /// A dog with its parents, where the text names them.
    struct parsed {
        bred dog;
        std::optional<std::pair<bred, bred>> parents{};
        bool bare = false;  ///< a name, without brackets
    };
    using maybe = std::optional<parsed>;

    void fail(const token& at, errc code, std::string text) {
        wrong_.push_back({"the mix", 0, at.column, code, std::move(text)});
    }
    [[nodiscard]] const token& now() const { return all_[next_]; }
    token take() { return all_[next_ + 1 < all_.size() ? next_++ : next_]; }
    [[nodiscard]] bool at_word(std::string_view w) const {
        return now().kind == token_kind::word && lower(now().raw) == w;
    }
    [[nodiscard]] bool at_generation() const {
        return now().kind == token_kind::word && like_generation(now().raw);
    }
    void note(std::string text) {
        if (std::find(read_.notes.begin(), read_.notes.end(), text) == read_.notes.end()) {
            read_.notes.push_back(std::move(text));
        }
    }

    void whole() {
        if (now().kind == token_kind::end) {
            fail(now(), errc::missing, "no breed is named; write it like \"poodle x beagle\"");
            return;
        }
        const maybe m = a_mix();
        if (!m) {
            return;
        }
        if (now().kind != token_kind::end) {
            fail(now(), errc::syntax,
                 "the mix ends before this; found " + in_quotes(now().raw) +
                     (now().kind == token_kind::close ? "; leave it out, or write \"(\" before"
                                                      : "; write \"x\" between two dogs"));
            return;
        }
        read_.dog = m->dog;
    }

    /// Nothing where it can't be gone on.
    maybe a_mix() {
        std::optional<token> sign;
        if (at_generation()) {
            sign = take();
        }
        const token begin = now();
        maybe first = a_dog();
        if (!first) {
            return first;
        }
        maybe result = first;
        if (now().kind == token_kind::by) {
            const token by = take();
            maybe second = a_dog();
            if (!second) {
                return second;
            }
            if (now().kind == token_kind::by) {
                fail(now(), errc::ambiguous,
                     "three dogs: which two first? write (" + as_part(first->dog) + " x " +
                         as_part(second->dog) + ") x ... or " + as_part(first->dog) + " x (" +
                         as_part(second->dog) + " x ...)");
                return std::nullopt;
            }
            const bool unclear = sign && generation_of(sign->raw) != generation::f1 &&
                                 (named_cross_bare(*first) || named_cross_bare(*second));
            if (unclear) {
                fail(*sign, errc::ambiguous,
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
        if (!sign && at_generation()) {
            sign = take();
        }
        return sign ? of_generation(*sign, *result, begin) : result;
    }

    static bool named_cross_bare(const parsed& p) { return p.bare && p.parents; }

    maybe crossed(const bred& a, const bred& b, const token& at) {
        try {
            return parsed{cross(a, b), std::pair{a, b}};
        } catch (const error& e) {
            fail(at, e.code(), e.what());
            return std::nullopt;
        }
    }

    maybe of_generation(const token& sign, const parsed& of, const token& at) {
        const auto g = generation_of(sign.raw);
        if (!g) {
            fail(sign, errc::unknown,
                 "no generation is called so here; found " + in_quotes(sign.raw) +
                     "; known are F1, F1b, F1bb, F2, F2b and F3; write others out: "
                     "\"(poodle x beagle) x poodle\"");
            return std::nullopt;
        }
        const std::string called(generation_names[static_cast<std::size_t>(*g)]);
        if (!of.parents) {
            fail(sign, errc::missing,
                 in_quotes(called) + " is of a cross; found " + in_quotes(of.dog.text) +
                     "; write it like \"" + called + " poodle x beagle" +
                     (goes_back(*g) ? " to poodle\"" : "\""));
            return std::nullopt;
        }
        std::optional<bred> back;
        if (at_word("back")) {
            take();
        }
        if (at_word("to")) {
            const token to = take();
            maybe d = a_dog();
            if (!d) {
                return d;
            }
            back = parent_meant(*of.parents, d->dog);
            if (!back || !goes_back(*g)) {
                fail(to, back ? errc::conflict : errc::unknown,
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
            fail(sign, errc::ambiguous,
                 in_quotes(called) + ": back to which parent? write \"" + called + " " +
                     of.dog.text + " to " + as_part(of.parents->first) + "\" or \"" + called + " " +
                     of.dog.text + " to " + as_part(of.parents->second) + "\"");
            return std::nullopt;
        }
        return generation_bred(*g, of, back, at);
    }

    /// The parent that `said` names: of the same breeds, with the same genes.
    static std::optional<bred> parent_meant(const std::pair<bred, bred>& parents,
                                            const bred& said) {
        const auto same = [&](const bred& p) {
            return p.genes == said.genes &&
                   std::equal(p.from.begin(), p.from.end(), said.from.begin(), said.from.end(),
                              [](const ancestry& a, const ancestry& b) {
                                  return a.breed == b.breed && !(a.share < b.share) &&
                                         !(b.share < a.share);
                              });
        };
        return same(parents.first)    ? std::optional{parents.first}
               : same(parents.second) ? std::optional{parents.second}
                                      : std::nullopt;
    }

    maybe generation_bred(generation g, const parsed& of, const std::optional<bred>& back,
                          const token& at) {
        const std::string called(generation_names[static_cast<std::size_t>(g)]);
        try {
            parsed out{of.dog, of.parents};
            switch (g) {
                case generation::f1:
                    break;
                case generation::f1b:
                    out = bred_from(of.dog, *back);
                    break;
                case generation::f1bb:
                    out = bred_from(cross(of.dog, *back), *back);
                    break;
                case generation::f2:
                    out = bred_from(of.dog, of.dog);
                    break;
                case generation::f2b:
                    out = bred_from(of.dog, cross(of.dog, *back));
                    break;
                case generation::f3: {
                    bred f2 = cross(of.dog, of.dog);
                    f2.text = "F2 " + of.dog.text;
                    out = bred_from(f2, f2);
                    break;
                }
            }
            if (g != generation::f1) {
                note(called + " is read as " + out.dog.text +
                     (g == generation::f2b
                          ? ", as most use it (from memory); who means F2 x " + as_part(*back) +
                                " writes \"(F2 " + of.dog.text + ") x " + as_part(*back) + "\"."
                          : "."));
                // by its name again: written out, generations of generations grow without end
                out.dog.text = called + " " + of.dog.text + (back ? " to " + as_part(*back) : "");
            }
            return out;
        } catch (const error& e) {
            fail(at, e.code(), e.what());
            return std::nullopt;
        }
    }

    static parsed bred_from(const bred& a, const bred& b) { return {cross(a, b), std::pair{a, b}}; }

    maybe a_dog() {
        if (now().kind == token_kind::open) {
            return in_brackets();
        }
        if (at_generation()) {
            fail(now(), errc::syntax,
                 "a generation stands before a whole cross; found " + in_quotes(now().raw) +
                     " in its middle; put brackets around it and its dogs");
            return std::nullopt;
        }
        if (at_word("genotype")) {
            return by_hand();
        }
        if (now().kind != token_kind::word || at_word("to") || at_word("back")) {
            fail(now(), errc::missing,
                 "a dog is missing here; found " +
                     (now().kind == token_kind::end ? "the end" : in_quotes(now().raw)) +
                     "; write a breed, such as \"poodle\"");
            return std::nullopt;
        }
        return by_name();
    }

    maybe in_brackets() {
        const token open = take();
        if (++brackets_ > deepest_brackets) {
            fail(open, errc::range,
                 "brackets inside brackets too deep; right are at most " +
                     std::to_string(deepest_brackets));
            return std::nullopt;
        }
        maybe inside = a_mix();
        --brackets_;
        if (!inside) {
            return inside;
        }
        if (now().kind != token_kind::close) {
            fail(open, errc::syntax,
                 "a bracket is not closed; found " +
                     (now().kind == token_kind::end ? "the end" : in_quotes(now().raw)) +
                     "; write \")\" after the cross");
            return std::nullopt;
        }
        take();
        inside->bare = false;
        return inside;
    }

    maybe by_name() {
        const token first = now();
        std::string words;
        while (now().kind == token_kind::word && !at_generation() && !at_word("to") &&
               !at_word("back") && !at_word("genotype")) {
            words += (words.empty() ? "" : " ") + take().raw;
        }
        const std::string name = written_out(h_, plain_name(words));
        const std::vector<named_breed> found = breeds_called(h_, name);
        if (found.empty()) {
            return cross_or_stranger(first, name, words);
        }
        const breed& one = h_.breeds[found.front().index];
        const bool alike = std::all_of(found.begin(), found.end(), [&](const named_breed& n) {
            return same_coat(one, h_.breeds[n.index]);
        });
        std::vector<std::string> names;
        for (const named_breed& n : found) {
            names.push_back(n.text);
        }
        if (!alike) {
            fail(first, errc::ambiguous,
                 in_quotes(words) + " means dogs of different coats; write " +
                     one_of(in_quotes(names)));
            return stand_in(found.front().index);
        }
        if (found.size() > 1) {
            note(name + ": " + one_of(names) + ", the coat counts as the same.");
            return parsed{of_breed(h_, found.front().index, name), std::nullopt, true};
        }
        if (!one.sizes.empty() && !found.front().sized) {
            note(one.id + ": " + one_of(one.sizes) + ", the coat is the same.");
        }
        return parsed{of_breed(h_, found.front().index, found.front().text), std::nullopt, true};
    }

    /// Goes on after a fault, so that the next is told too.
    maybe stand_in(std::size_t index) {
        return h_.breeds.empty() ? std::nullopt : maybe{parsed{of_breed(h_, index)}};
    }

    maybe cross_or_stranger(const token& first, const std::string& name, const std::string& words) {
        // the mix of a name is made of breeds: a name in it would lead in circles
        if (const named_cross* c = inner_ ? nullptr : cross_called(h_, name)) {
            parser inner(c->mix, h_);
            inner.inner_ = true;
            const maybe m = inner.a_mix();
            if (m && inner.wrong_.empty() && m->parents) {
                note(name + ": taken as a first cross, " + m->dog.text + ".");
                parsed out = *m;
                out.bare = true;
                return out;
            }
        }
        if (const asked_breed* a = asked_of(h_, name)) {
            fail(first, errc::ambiguous,
                 a->wrong + "; found " + in_quotes(words) +
                     (a->right.empty() ? "" : "; " + a->right));
            return stand_in(0);
        }
        fail(first, errc::unknown, stranger(name, words));
        return stand_in(0);
    }

    [[nodiscard]] std::string stranger(const std::string& name, const std::string& words) const {
        constexpr std::size_t most = 6;
        std::string text = "no breed is called so; found " + in_quotes(words);
        if (words.find_first_of("+&") != std::string::npos) {
            return text + "; write x between the parents, as in \"poodle x beagle\"";
        }
        std::vector<std::string> some = breeds_with(h_, name);
        if (some.size() > 1) {
            const std::size_t more = some.size() > most ? some.size() - most : 0;
            some.resize(some.size() - more);
            return text + "; which? there is " + one_of(in_quotes(some)) +
                   (more > 0 ? " and " + std::to_string(more) + " more" : "");
        }
        // a slip seldom takes the first letter: with another one it is another dog
        std::vector<std::string> alike = every_name(h_);
        std::erase_if(alike, [&](const std::string& n) {
            return n.empty() || name.empty() || n.front() != name.front();
        });
        text += did_you_mean(name, alike);
        if (text.find("did you mean") == std::string::npos) {
            const std::string inside = breed_in(h_, name);
            text += inside.empty() ? "; write a breed, as in \"poodle x beagle\""
                                   : "; did you mean " + in_quotes(inside) + "?";
        }
        return text;
    }

    maybe by_hand() {
        const token begin = take();
        std::array<std::optional<int>, 3> carried;
        std::string text = "genotype";
        bool sound = true;
        while (now().kind == token_kind::word && now().raw.find('/') != std::string::npos) {
            const token t = take();
            text += " " + t.raw;
            sound = one_locus(t, carried) && sound;
        }
        if (!sound) {
            return stand_in(0);
        }
        genotype<double> g;
        for (std::size_t l = 0; l < carried.size(); ++l) {
            if (!carried[l]) {
                fail(begin, errc::missing,
                     "a genotype needs all three loci; found none for " +
                         std::string(name(static_cast<locus>(l))) + "; " + right_genotype);
                return stand_in(0);
            }
            g.at[l] = surely<double>(*carried[l]);
        }
        return parsed{bred{g, {}, 0, text}, std::nullopt, true};
    }

    bool one_locus(const token& t, std::array<std::optional<int>, 3>& carried) {
        const auto slash = t.raw.find('/');
        const auto a = allele_called(std::string_view(t.raw).substr(0, slash));
        const auto b = allele_called(std::string_view(t.raw).substr(slash + 1));
        if (!a || !b || (a->at && b->at && *a->at != *b->at)) {
            fail(t, errc::unknown,
                 "not two alleles of one locus; found " + in_quotes(t.raw) +
                     "; L and l (or Lh1 to Lh5), F and f, C and c are known; " + right_genotype);
            return false;
        }
        if (!a->at && !b->at) {
            fail(t, errc::ambiguous,
                 "N/N could be any locus; found " + in_quotes(t.raw) + "; write L/L, f/f or c/c");
            return false;
        }
        const auto l = static_cast<std::size_t>(a->at ? *a->at : *b->at);
        if (carried[l]) {
            fail(t, errc::duplicate,
                 "the same locus twice; found " + in_quotes(t.raw) + " again; name each once");
            return false;
        }
        carried[l] = (a->variant ? 1 : 0) + (b->variant ? 1 : 0);
        return true;
    }

    const heredity& h_;
    std::vector<token> all_;
    std::size_t length_;
    std::size_t next_ = 0;
    int brackets_ = 0;
    bool inner_ = false;  ///< reading the mix of a named cross
    diagnostics wrong_;
    mix read_;
};

}  // namespace

mix read_mix(std::string_view text, const heredity& h) {
    return parser(text, h).run();
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
