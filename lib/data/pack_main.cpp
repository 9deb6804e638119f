// Runs when the library is built: parses the files of the reference and writes their trees, packed,
// as one C++ file. Usage: pack_reference OUT ROOT FILE...; a fault of syntax stops the build.
#include <fstream>
#include <iterator>
#include <string>

#include "data/packed_tree.hpp"

int main(int argc, char** argv) {
    using namespace pelage::io;
    if (argc < 3) {
        return 2;
    }
    std::string out =
        "// Generated from reference/ by lib/data/pack_main.cpp; do not edit.\n"
        "#include \"data/packed_tree.hpp\"\n\n"
        "namespace pelage::io {\n\nconst std::vector<packed_file>& packed_reference() {\n"
        "    static const std::vector<packed_file> files{\n";
    for (int i = 3; i < argc; ++i) {
        std::ifstream in(std::string(argv[2]) + "/" + argv[i], std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(in), {}};
        faults wrong(argv[i]);
        const auto tree = parse_toml(text, wrong);
        if (!in || !tree) {
            return 1;
        }
        out +=
            std::string("        {\"") + argv[i] + "\", R\"tree~(" + packed(*tree) + ")tree~\"},\n";
    }
    out += "    };\n    return files;\n}\n\n}  // namespace pelage::io\n";
    std::ofstream file(argv[1], std::ios::binary);
    file << out;
    file.close();
    return file ? 0 : 1;
}
