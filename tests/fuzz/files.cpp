// What strangers write into files.
#include <sstream>

#include <pelage/answers/sheets.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/data/write_dog.hpp>
#include <pelage/roster/roster.hpp>

#include "fuzz/targets.hpp"

using namespace pelage;

namespace fuzz {

void run(target reads, const std::string& text) {
    try {
        reads(text);
    } catch (const error& e) {
        if (e.code() == errc::internal) {
            throw;
        }
    }
}

void dog(const std::string& text) {
    const reference_data& c = io::reference();
    const pelage::dog d = io::read_dog({"dog.toml", text}, c, c.styles);
    // what is written of a dog can be read again
    [&]() noexcept {
        (void)io::read_dog({"again.toml", io::dog_file(d, c.dog_body)}, c, c.styles);
    }();
}

void sheet(const std::string& text) {
    const reference_data& c = io::reference();
    for (const io::sheet_file& read :
         io::read_sheet_files({{"sheet.toml", text}}, {}, c, c.styles)) {
        if (read.sheet) {
            (void)doubts_about(*read.sheet, c, c.rules);
        }
    }
}

void salon(const std::string& text) {
    (void)io::read_salon({"salon.toml", text}, io::reference());
}

void roster(const std::string& text) {
    const reference_data& c = io::reference();
    std::istringstream in(text);
    std::ostringstream out;
    const pelage::roster_count n = io::plan_roster(
        in, out, {c, c.rules, io::demo_salon().tools, c.styles, parse_date("2026-11-26")});
    if (n.failed != 0) {
        throw error(errc::internal, out.str());
    }
}

}  // namespace fuzz
