// The embedded reference and the invented salon, read on first use.
#include <algorithm>

#include <fmt/format.h>

#include <pelage/data/embedded.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/data/reference.hpp>

#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

constexpr std::string_view demo = "reference/demo/";
constexpr std::string_view drawing = "reference/outline.toml";

std::vector<document_text> embedded(const std::function<bool(std::string_view)>& wanted) {
    std::vector<document_text> out;
    for (const embedded_file& f : embedded_reference()) {
        if (wanted(f.path)) {
            out.push_back({std::string(f.path), std::string(f.text)});
        }
    }
    return out;
}

std::vector<document_text> demo_files(std::string_view folder) {
    return embedded([&](std::string_view path) {
        return path.starts_with(demo) && path.substr(demo.size()).starts_with(folder);
    });
}

/// What is embedded was checked before the release: a fault in it is ours.
[[noreturn]] void our_fault(const bad_input& wrong) {
    const diagnostic& d = wrong.all().front();
    throw error(errc::internal, fmt::format("the embedded data has {} faults, first {}:{}:{}: {}",
                                            wrong.all().size(), d.file, d.line, d.column, d.text));
}

reference_data read_embedded() {
    try {
        // the drawing is read by itself, by who draws
        return read_reference(embedded(
            [](std::string_view path) { return !path.starts_with(demo) && path != drawing; }));
    } catch (const bad_input& wrong) {
        our_fault(wrong);
    }
}

salon_files read_demo() {
    const auto files = demo_files("salon.toml");
    if (files.empty()) {
        throw error(errc::internal, "the embedded data has no demo salon");
    }
    try {
        std::vector<unsound_file> unsound;
        salon_files s = assemble_salon(files.front(), demo_files("styles/"), demo_files("dogs/"),
                                       reference(), unsound);
        if (!unsound.empty()) {
            throw bad_input(unsound.front().faults);
        }
        return s;
    } catch (const bad_input& wrong) {
        our_fault(wrong);
    }
}

outline read_embedded_outline() {
    const auto files = embedded([](std::string_view path) { return path == drawing; });
    if (files.empty()) {
        throw error(errc::internal, "the embedded data has no outline of a dog");
    }
    try {
        return read_outline(files.front(), reference());
    } catch (const bad_input& wrong) {
        our_fault(wrong);
    }
}

}  // namespace

const outline& dog_outline() {
    static const outline drawn = read_embedded_outline();
    return drawn;
}

const reference_data& reference() {
    static const reference_data book = read_embedded();
    return book;
}

const salon_files& demo_salon() {
    static const salon_files shop = read_demo();
    return shop;
}

}  // namespace pelage::io
