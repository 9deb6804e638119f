#include "intake_answers.hpp"

#include <filesystem>
#include <ostream>
#include <sstream>

#include <pelage/base/error.hpp>
#include <pelage/data/read.hpp>

#include "part_file.hpp"

namespace pelage::cli {

namespace {

namespace fs = std::filesystem;

constexpr const char* first_line = "pelage intake 1, not finished";
constexpr const char* nobody = "-";

[[noreturn]] void none_of_ours(const std::string& file, int line, const std::string& found) {
    throw error(errc::syntax, file + ":" + std::to_string(line) +
                                  ":1: no intake that was broken off; found \"" + found +
                                  "\"; move it away, and the intake begins anew");
}

}  // namespace

std::string answers_path(const std::string& dog_file) {
    return fs::path(dog_file).replace_extension(".intake").string();
}

intake_answers kept_answers(const std::string& file, const std::string& dog,
                            const std::optional<date>& today) {
    intake_answers out{file, dog, today, {}};
    std::error_code failed;
    if (!fs::exists(fs::symlink_status(file, failed))) {
        return out;
    }
    const std::string text = io::read_text(file).text;
    std::istringstream lines(text.substr(0, text.rfind('\n') + 1));
    std::string line;
    int n = 0;
    while (std::getline(lines, line)) {
        ++n;
        const auto tab = line.find('\t');
        const std::string left = line.substr(0, tab);
        const std::string right = tab == std::string::npos ? "" : line.substr(tab + 1);
        if (n == 1 ? line != first_line : tab == std::string::npos) {
            none_of_ours(file, n, line.substr(0, 60));
        }
        if (left == "day") {
            out.begun = parse_date(right);
        } else if (left == "dog") {
            if (right != (dog.empty() ? nobody : dog)) {
                throw error(errc::conflict,
                            file + ": holds an intake of " +
                                (right == nobody ? "a new dog" : "\"" + right + "\"") +
                                " that isn't finished; finish it, or move the file away");
            }
        } else if (n > 1) {
            out.all.push_back({left, right});
        }
    }
    return out;
}

void keep(const intake_answers& a) {
    if (a.file.empty()) {
        return;
    }
    write_file(a.file, [&](std::ostream& out) {
        out << first_line << "\nday\t" << (a.begun ? iso(*a.begun) : "") << "\ndog\t"
            << (a.dog.empty() ? nobody : a.dog) << "\n";
        for (const intake_answer& one : a.all) {
            out << one.question << "\t" << one.text << "\n";
        }
    });
}

void forget(const intake_answers& a) {
    std::error_code gone;
    if (!a.file.empty()) {
        fs::remove(a.file, gone);
    }
}

}  // namespace pelage::cli
