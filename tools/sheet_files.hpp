// The style sheets that the words of `sheet` name: files, folders and ids.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/data/read.hpp>

#include "resolve_arguments.hpp"

namespace pelage::cli {

/// The sheets' files that were asked for, the others beside them, and the salon's kit where a path is
/// its folder.
struct asked_files {
    std::vector<io::document_text> files{};
    std::vector<io::document_text> beside{};
    std::optional<kit> tools{};
};

/// Reads them; `paths` are files and folders. Throws error(io) where one can't be read.
[[nodiscard]] asked_files files_at(const std::vector<std::string>& paths, const reference_data& c);

/// The sheets in force as they are written, without a season.
[[nodiscard]] std::vector<style> plain_sheets(const workplace& w);

/// The salon's own sheets, those that aren't the reference's; none where no salon is named.
[[nodiscard]] std::vector<style> own_sheets(const workplace& w);

/// A sheet by id or file. Throws bad_input with its faults, or told in `f`, after `option`.
[[nodiscard]] std::optional<style> sheet_called(const std::string& name,
                                                const std::vector<style>& all, const workplace& w,
                                                const std::string& option, faults& f);

}  // namespace pelage::cli
