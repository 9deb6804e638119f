// The generations of a cross: F1b, F2 and so on.
#include <algorithm>

#include "model/mix_reading.hpp"

namespace pelage::mix_words {

namespace {

parsed bred_from(const bred& a, const bred& b) {
    return {cross(a, b), std::pair{a, b}};
}

parsed bred_by(generation g, const parsed& of, const std::optional<bred>& back) {
    switch (g) {
        case generation::f1:
            break;
        case generation::f1b:
            return bred_from(of.dog, *back);
        case generation::f1bb:
            return bred_from(cross(of.dog, *back), *back);
        case generation::f2:
            return bred_from(of.dog, of.dog);
        case generation::f2b:
            return bred_from(of.dog, cross(of.dog, *back));
        case generation::f3: {
            bred f2 = cross(of.dog, of.dog);
            f2.text = "F2 " + of.dog.text;
            return bred_from(f2, f2);
        }
    }
    return {of.dog, of.parents};
}

}  // namespace

/// The parent that `said` names: of the same breeds, with the same genes.
std::optional<bred> parent_meant(const std::pair<bred, bred>& parents, const bred& said) {
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

maybe of_generation(word_stream& w, generation g, const parsed& of, const std::optional<bred>& back,
                    const token& at) {
    const std::string called(generation_names[static_cast<std::size_t>(g)]);
    try {
        parsed out = bred_by(g, of, back);
        if (g != generation::f1) {
            w.note(called + " is read as " + out.dog.text +
                   (g == generation::f2b
                        ? ", as most use it (from memory); who means F2 x " + as_part(*back) +
                              " writes \"(F2 " + of.dog.text + ") x " + as_part(*back) + "\"."
                        : "."));
            // by its name again: written out, generations of generations grow without end
            out.dog.text = called + " " + of.dog.text + (back ? " to " + as_part(*back) : "");
        }
        return out;
    } catch (const error& e) {
        w.fail(at, e.code(), e.what());
        return std::nullopt;
    }
}

}  // namespace pelage::mix_words
