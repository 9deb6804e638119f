// Style sheets as files, read one by one for their faults.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/data/read.hpp>

namespace pelage::io {

/// A sheet's file as read.
struct sheet_file {
    std::string file;            ///< its path
    std::optional<style> sheet;  ///< none: it, or a sheet it extends, is faulty
    diagnostics faults;          ///< of this file alone
    bool parent_faulty = false;  ///< nothing wrong here, but a sheet it extends is
    std::string parent{};        ///< the id of the sheet it extends; empty if none
};

/// The sheets of `files`. One may extend another of them, of `beside` (which are read for that alone),
/// or of `others`; `tools`, if any, holds blades of the salon's own.
[[nodiscard]] std::vector<sheet_file> read_sheet_files(const std::vector<document_text>& files,
                                                       const std::vector<document_text>& beside,
                                                       const reference_data& c,
                                                       const std::vector<style>& others,
                                                       const kit* tools = nullptr);

/// The sheets of the *.toml files of a folder in the order of their names, hidden ones left out; one may
/// extend another of them or of the reference. Throws bad_input with every fault of every file, and
/// error(io) if the folder can't be read or holds none.
[[nodiscard]] std::vector<style> read_sheet_folder(const std::string& dir, const reference_data& c,
                                                   const kit* tools = nullptr);

}  // namespace pelage::io
