// What `log` does, a function each: the visits are in cmd_log_visit.cpp, the records in cmd_log_records.cpp.
#pragma once

#include <string>
#include <vector>

#include "log_options.hpp"
#include "resolve_arguments.hpp"

namespace pelage::cli {

/// A visit, appended to the record at `path`.
[[nodiscard]] reply added(log_options& o, const workplace& w, const dog& d, const std::string& path,
                          const surroundings& around, faults& f);
/// log --undo: the last entry, taken back by one more.
[[nodiscard]] reply taken_back(const log_options& o, const workplace& w, const dog& d,
                               const std::string& path, const surroundings& around);
/// log --show: the last entries.
[[nodiscard]] reply shown(const workplace& w, const dog& d, const std::string& path,
                          const surroundings& around);
/// log --export: all of some dogs.
[[nodiscard]] reply exported(const log_options& o, const workplace& w,
                             const std::vector<const dog*>& dogs, const surroundings& around);
/// log --against-sheet: what was left against what was to be.
[[nodiscard]] reply against_sheet(const workplace& w, const std::vector<const dog*>& asked,
                                  const surroundings& around);
/// log --check: whether the records of a salon are sound.
[[nodiscard]] reply audited(const log_options& o, const workplace& w);

}  // namespace pelage::cli
