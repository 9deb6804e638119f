// A program that reads the data the library carries.
#include <pelage/data/embedded.hpp>

int main() {
    for (const pelage::io::embedded_file& file : pelage::io::embedded_reference()) {
        if (file.path == "reference/sources.toml") {
            return file.text.empty() ? 1 : 0;
        }
    }
    return 1;
}
