// What strangers write into files.
#include <exception>
#include <sstream>

#include <pelage/answers/sheets.hpp>
#include <pelage/data/record_file.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/data/salon_file.hpp>
#include <pelage/data/write_dog.hpp>
#include <pelage/kit/buy.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/model/hair_by_record.hpp>
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

void record(const std::string& text) {
    const reference_data& c = io::reference();
    std::istringstream lines(text);
    std::string summed;
    for (std::string line; std::getline(lines, line);) {
        summed += io::with_checksum(line);
    }
    (void)io::record_of(text, "r", "rosie", c);
    const io::dog_record read = io::record_of(summed, "r", "rosie", c);
    // what is read can be written, and comes to the same
    [&]() noexcept {
        for (const log_entry& e : read.entries) {
            const auto again = io::record_of(io::line_of(e, "rosie"), "r", "rosie", c);
            if (again.entries.size() != 1 || !(again.entries.front() == e)) {
                std::terminate();
            }
        }
    }();
    pelage::dog d;
    d.coat = coat_class::wavy;
    add_record(d, read.entries);
    (void)with_hair_by_record(d, c, c.rules, date{std::chrono::days{20'800}});
}

void salon(const std::string& text) {
    (void)io::read_salon({"salon.toml", text}, io::reference());
}

void offers(const std::string& text) {
    const reference_data& c = io::reference();
    const io::document_text offered{"offers.toml", text};
    std::vector<ware> wares = wares_of(io::read_kit(offered, c), io::demo_salon().tools);
    io::add_prices(wares, offered, c);
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
