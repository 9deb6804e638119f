// All records of a salon looked at.
#pragma once

#include <optional>
#include <string>

#include <pelage/answers/record.hpp>

namespace pelage::cli {

/// Every record in the salon's folder `dogs`: damaged are lines that aren't what was written, entries
/// missing or there twice, files that can't be read; doubtful are torn last lines, what was set aside,
/// places that nobody knows, days after today, lengths and tools that the coat, the record or the kit speaks
/// against, records without a dog's file. Throws as the reader of a salon does.
[[nodiscard]] io::record_audit audit_records(const std::string& salon, const reference_data& c,
                                             const std::optional<date>& today);

}  // namespace pelage::cli
