// A single dog of a mix: by its name or by its genes.
#include <algorithm>
#include <array>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>

#include "model/mix_reading.hpp"

namespace pelage::mix_words {

namespace {

std::string stranger(const heredity& h, const std::string& name, const std::string& words) {
    constexpr std::size_t most = 6;
    std::string text = "no breed is called so; found " + in_quotes(words);
    if (words.find_first_of("+&") != std::string::npos) {
        return text + "; write x between the parents, as in \"poodle x beagle\"";
    }
    std::vector<std::string> some = breeds_with(h, name);
    if (some.size() > 1) {
        const std::size_t more = some.size() > most ? some.size() - most : 0;
        some.resize(some.size() - more);
        return text + "; which? there is " + one_of(in_quotes(some)) +
               (more > 0 ? " and " + std::to_string(more) + " more" : "");
    }
    // a slip seldom takes the first letter: with another one it is another dog
    std::vector<std::string> alike = every_name(h);
    std::erase_if(alike, [&](const std::string& n) {
        return n.empty() || name.empty() || n.front() != name.front();
    });
    text += did_you_mean(name, alike);
    if (text.find("did you mean") == std::string::npos) {
        const std::string inside = breed_in(h, name);
        text += inside.empty() ? "; write a breed, as in \"poodle x beagle\""
                               : "; did you mean " + in_quotes(inside) + "?";
    }
    return text;
}

maybe cross_or_stranger(word_stream& w, const token& first, const std::string& name,
                        const std::string& words) {
    // the mix of a name is made of breeds: a name in it would lead in circles
    if (const named_cross* c = w.inner ? nullptr : cross_called(w.known(), name)) {
        const maybe m = mix_of(*c, w.known());
        if (m && m->parents) {
            w.note(name + ": taken as a first cross, " + m->dog.text + ".");
            parsed out = *m;
            out.bare = true;
            return out;
        }
    }
    if (const asked_breed* a = asked_of(w.known(), name)) {
        w.fail(
            first, errc::ambiguous,
            a->wrong + "; found " + in_quotes(words) + (a->right.empty() ? "" : "; " + a->right));
        return w.stand_in();
    }
    w.fail(first, errc::unknown, stranger(w.known(), name, words));
    return w.stand_in();
}

bool one_locus(word_stream& w, const token& t, std::array<std::optional<int>, 3>& carried) {
    const auto slash = t.raw.find('/');
    const auto a = allele_called(std::string_view(t.raw).substr(0, slash));
    const auto b = allele_called(std::string_view(t.raw).substr(slash + 1));
    if (!a || !b || (a->at && b->at && *a->at != *b->at)) {
        w.fail(t, errc::unknown,
               "not two alleles of one locus; found " + in_quotes(t.raw) +
                   "; L and l (or Lh1 to Lh5), F and f, C and c are known; " + right_genotype);
        return false;
    }
    if (!a->at && !b->at) {
        w.fail(t, errc::ambiguous,
               "N/N could be any locus; found " + in_quotes(t.raw) + "; write L/L, f/f or c/c");
        return false;
    }
    const auto l = static_cast<std::size_t>(a->at ? *a->at : *b->at);
    if (carried[l]) {
        w.fail(t, errc::duplicate,
               "the same locus twice; found " + in_quotes(t.raw) + " again; name each once");
        return false;
    }
    carried[l] = (a->variant ? 1 : 0) + (b->variant ? 1 : 0);
    return true;
}

}  // namespace

maybe dog_by_name(word_stream& w) {
    const token first = w.now();
    std::string words;
    while (w.now().kind == token_kind::word && !w.at_generation() && !w.at_word("to") &&
           !w.at_word("back") && !w.at_word("genotype")) {
        words += (words.empty() ? "" : " ") + w.take().raw;
    }
    const std::string name = written_out(w.known(), plain_name(words));
    const std::vector<named_breed> found = breeds_called(w.known(), name);
    if (found.empty()) {
        return cross_or_stranger(w, first, name, words);
    }
    const breed& one = w.known().breeds[found.front().index];
    const bool alike = std::all_of(found.begin(), found.end(), [&](const named_breed& n) {
        return same_coat(one, w.known().breeds[n.index]);
    });
    std::vector<std::string> names;
    for (const named_breed& n : found) {
        names.push_back(n.text);
    }
    if (!alike) {
        w.fail(
            first, errc::ambiguous,
            in_quotes(words) + " means dogs of different coats; write " + one_of(in_quotes(names)));
        return w.stand_in(found.front().index);
    }
    if (found.size() > 1) {
        w.note(name + ": " + one_of(names) + ", the coat counts as the same.");
        return parsed{of_breed(w.known(), found.front().index, name), std::nullopt, true};
    }
    if (!one.sizes.empty() && !found.front().sized) {
        w.note(one.id + ": " + one_of(one.sizes) + ", the coat is the same.");
    }
    return parsed{of_breed(w.known(), found.front().index, found.front().text), std::nullopt, true};
}

maybe dog_by_genotype(word_stream& w) {
    const token begin = w.take();
    std::array<std::optional<int>, 3> carried;
    std::string text = "genotype";
    bool sound = true;
    while (w.now().kind == token_kind::word && w.now().raw.find('/') != std::string::npos) {
        const token t = w.take();
        text += " " + t.raw;
        sound = one_locus(w, t, carried) && sound;
    }
    if (!sound) {
        return w.stand_in();
    }
    genotype<double> g;
    for (std::size_t l = 0; l < carried.size(); ++l) {
        if (!carried[l]) {
            w.fail(begin, errc::missing,
                   "a genotype needs all three loci; found none for " +
                       std::string(name(static_cast<locus>(l))) + "; " + right_genotype);
            return w.stand_in();
        }
        g.at[l] = surely<double>(*carried[l]);
    }
    return parsed{bred{g, {}, 0, text}, std::nullopt, true};
}

}  // namespace pelage::mix_words
