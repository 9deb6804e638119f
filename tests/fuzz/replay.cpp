// TARGET FILE...: every file given to a target, each also cut short at eight places.
#include <algorithm>
#include <fstream>
#include <iostream>
#include <iterator>

#include "fuzz/targets.hpp"

int main(int argc, char** argv) {
    const std::string name = argc > 1 ? argv[1] : "";
    const auto* const at =
        std::find_if(fuzz::targets.begin(), fuzz::targets.end(),
                     [&](const fuzz::named_target& t) { return t.name == name; });
    if (at == fuzz::targets.end() || argc < 3) {
        std::cerr << "replay: TARGET FILE...\n";
        return 2;
    }
    for (int i = 2; i < argc; ++i) {
        std::ifstream in(argv[i], std::ios::binary);
        if (!in) {
            std::cerr << "replay: can't read " << argv[i] << "\n";
            return 2;
        }
        const std::string text{std::istreambuf_iterator<char>(in), {}};
        std::cout << argv[i] << std::endl;  // the last one named is the one that ends it
        for (std::size_t part = 1; part <= 8; ++part) {
            fuzz::run(at->reads, text.substr(0, text.size() * part / 8));
        }
    }
}
