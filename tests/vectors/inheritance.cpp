// Genes and types of coat of a mix.
#include <pelage/data/reference.hpp>
#include <pelage/model/mix.hpp>

#include "quantities.hpp"

namespace chk {

namespace {

using namespace pelage;

genotype<double> genes_of_mix(const std::string& text) {
    return read_mix(text, io::reference().genes).dog.genes;
}

/// Chance of furnished or bare with that many copies of curl, whatever the length.
double joint(const genotype<double>& g, bool furnished, int curl) {
    double sum = 0.0;
    for (int l = 0; l <= 2; ++l) {
        sum += chance_of({l, furnished, curl}, g);
    }
    return sum;
}

answers coat_genes(givens& given) {
    const genotype<double> g = genes_of_mix(given.word("mix"));
    const copies<double>& f = g[locus::furnishings];
    const copies<double>& c = g[locus::curl];
    return {{"long", plain(g[locus::long_hair].two)},
            {"furnished", plain(f.one + f.two)},
            {"two-curl", plain(c.two)},
            {"one-curl", plain(c.one)},
            {"no-curl", plain(c.none)},
            {"furnished-two-curl", plain(joint(g, true, 2))},
            {"furnished-one-curl", plain(joint(g, true, 1))},
            {"furnished-no-curl", plain(joint(g, true, 0))},
            {"bare-two-curl", plain(joint(g, false, 2))},
            {"bare-one-curl", plain(joint(g, false, 1))},
            {"bare-no-curl", plain(joint(g, false, 0))},
            {"furnished-long-curly", plain(chance_of({2, true, 2}, g))},
            {"furnished-long-wavy", plain(chance_of({2, true, 1}, g))},
            {"bare-long-straight", plain(chance_of({2, false, 0}, g))}};
}

/// The type that is certain; a fault of the case if none is.
answers certain_type(const std::string& text) {
    const auto types = types_of(genes_of_mix(text));
    for (std::size_t t = 0; t < types.size(); ++t) {
        if (types[t] >= 1.0) {
            return {{"type", std::string(coat_type_names[t])}};
        }
    }
    throw bad_case("no type is certain for '" + text + "'");
}

answers coat_type_of(givens& given) {
    return certain_type("genotype " + given.word("genotype"));
}

answers breed_type(givens& given) {
    return certain_type(given.word("breed"));
}

}  // namespace

void add_inheritance(std::map<std::string, quantity>& to) {
    to["coat-genes"] = coat_genes;
    to["coat-type"] = coat_type_of;
    to["breed-type"] = breed_type;
}

}  // namespace chk
