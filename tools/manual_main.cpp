// Writes the manual's pages into a folder, at the build: manual_main FOLDER DAY.
#include <fstream>
#include <iostream>

#include "manual.hpp"

int main(int argc, char** argv) {
    if (argc != 3) {
        std::cerr << "manual_main FOLDER DAY\n";
        return 2;
    }
    for (const auto& page : pelage::cli::manual(argv[2])) {
        std::ofstream to(std::string(argv[1]) + "/" + page.file, std::ios::binary);
        if (!(to << page.text << std::flush)) {
            std::cerr << "cannot write " << page.file << "\n";
            return 4;
        }
    }
    return 0;
}
