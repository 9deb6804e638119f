// Answers about records: what was recorded, the last entries, all of them for others, and an audit.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/data/record_file.hpp>
#include <pelage/kit/tool_check.hpp>
#include <pelage/model/entry_check.hpp>
#include <pelage/sheets/kept.hpp>

namespace pelage::io {

/// A dog's record, for an answer.
struct record_of_dog {
    std::string id;     ///< of the dog
    std::string name;   ///< of the dog
    dog_record read{};  ///< what its file holds
};

/// An entry just recorded: what it says, where it is, how it is taken back. `b` names its places;
/// `undo` is the call that takes it back again.
[[nodiscard]] document recorded_document(const record_of_dog& of, const recorded_entry& e,
                                         const body& b, const std::string& undo,
                                         const print_options& o);
[[nodiscard]] std::string recorded_json(const record_of_dog& of, const recorded_entry& e);

/// The last entries that hold, at most `most`; `b` names their places.
[[nodiscard]] document record_document(const record_of_dog& of, std::size_t most, const body& b,
                                       const print_options& o);

/// Every visit of those records as one table, with what became of each entry.
[[nodiscard]] document export_document(const std::vector<record_of_dog>& all);
/// Every entry, as its line says it.
[[nodiscard]] std::string export_json(const std::vector<record_of_dog>& all);

/// What speaks against a length of an entry, without its place: "longer than hair of a wire coat gets
/// there, 90 mm at most (our guess)". `d` is the dog it is of.
[[nodiscard]] std::string doubt_words(const length_doubt& l, const dog& d, const reference_data& c,
                                      length_unit u);
/// What speaks against a tool, what was found and what would be right.
[[nodiscard]] std::string doubt_words(const tool_doubt& t);

/// What was really left against the sheet, for people by groomer, part and tool, for programs as one table.
[[nodiscard]] document document_of(const kept_lengths& k, const print_options& o);
[[nodiscard]] std::string json_of(const kept_lengths& k);

/// What an audit found in a salon's records.
struct record_audit {
    std::size_t files = 0;    ///< how many records there are
    std::size_t entries = 0;  ///< how many entries, all records together
    diagnostics damaged;      ///< entries lost or not as they were written
    diagnostics doubtful;     ///< nothing is lost: looked at when there is time
};
[[nodiscard]] document document_of(const record_audit& a);
[[nodiscard]] std::string json_of(const record_audit& a);

}  // namespace pelage::io
