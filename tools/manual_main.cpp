// Writes the manual's pages into a folder, at the build: manual_main FOLDER DAY SCHEMAS.
#include <exception>
#include <fstream>
#include <iostream>

#include "manual.hpp"

int main(int argc, char** argv) try {
    if (argc != 4) {
        std::cerr << "manual_main FOLDER DAY SCHEMAS\n";
        return 2;
    }
    auto pages = pelage::cli::manual(argv[2]);
    pages.push_back(pelage::cli::manual_of_files(argv[2], argv[3]));
    for (const auto& page : pages) {
        std::ofstream to(std::string(argv[1]) + "/" + page.file, std::ios::binary);
        if (!(to << page.text << std::flush)) {
            std::cerr << "cannot write " << page.file << "\n";
            return 4;
        }
    }
    return 0;
} catch (const std::exception& e) {
    std::cerr << e.what() << "\n";
    return 4;
}
