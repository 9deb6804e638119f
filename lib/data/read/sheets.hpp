// Private to lib: sheets that may extend one another, each read after its parent.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "data/read/readers.hpp"

namespace pelage::io {

/// One sheet as read.
struct read_sheet {
    placed<style> sheet;  ///< as far as it could be read
    bool sound = false;   ///< without a fault, and so is every parent
};

/// Makes the page a sheet is read on.
using page_maker = std::function<page(faults&)>;

/// Reads sheets in the order given, a parent before its children wherever it stands. A parent is one
/// of these, or else one of `others` (which a sheet of the same id may extend, too). A sheet whose
/// parent is faulty is read without it and not judged against it. `after`, if any, sees each sheet that
/// is sound so far. The faults are left in `texts`.
[[nodiscard]] std::vector<read_sheet> read_sheets(
    std::vector<parsed_text>& texts, const std::vector<style>& others, const page_maker& make,
    const std::function<void(placed<style>&, page&)>& after = {});

}  // namespace pelage::io
