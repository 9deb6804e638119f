// The record of a dog: a file of JSON Lines beside the dog's own file, to which `pelage log` only appends.
//
// dogs/rosie.toml has dogs/rosie.record.jsonl. A line is one entry (trade/log_entry.hpp) as a JSON object,
// `format` 1 first and `crc32` last: eight hexadecimal digits, the CRC-32 of ISO 3309 (that of gzip, PNG and
// zlib) of all bytes of the line before `,"crc32":`. A line is written in one go, under a lock against
// other writers, and has reached the disk, file and folder, before anything is said to be recorded. A last
// line without its end is what a writer left who was stopped halfway; nobody was told that it is recorded.
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/log_entry.hpp>

namespace pelage::io {

/// Where the record of the dog of that file is: "dogs/rosie.record.jsonl" of "dogs/rosie.toml".
[[nodiscard]] std::string record_path(const std::string& dog_file);

/// A record as read.
struct dog_record {
    std::string file;                ///< its path
    bool there = false;              ///< the file is there
    std::vector<log_entry> entries;  ///< those that are sound, in the order of the file
    std::vector<unsigned> lines;     ///< of each, from 1
    /// Damaged lines (which are not counted), entries missing or there twice, places that nobody knows:
    /// with file and line. A file that isn't an ordinary one, or can't be read: errc::io.
    diagnostics faults;
    std::size_t torn = 0;  ///< bytes of a last line that was never finished
    unsigned next = 1;     ///< the number of the next entry
    bool damaged = false;  ///< any of `faults` is of a line that can't be counted, or is missing
};

/// Reads the record in `path`; one that isn't there has no entries. Never throws but for memory: what is
/// wrong is in `faults`. `dog` is the id its entries must have.
[[nodiscard]] dog_record read_record(const std::string& path, const std::string& dog,
                                     const reference_data& c);

/// Reads the record beside the dog's file, if there is one, and adds it to the dog; gives what is wrong
/// in it.
diagnostics add_record_beside(dog& d, const reference_data& c);

/// The same as read_record from its bytes.
[[nodiscard]] dog_record record_of(std::string_view bytes, const std::string& file,
                                   const std::string& dog, const reference_data& c);

/// The entry as its line, with its end.
[[nodiscard]] std::string line_of(const log_entry& e, const std::string& dog);

/// What was done, and on disk.
struct recorded_entry {
    log_entry entry;        ///< with its number
    std::string set_aside;  ///< the file that a torn last line was moved to; empty: there was none
};

/// A line of the text of a JSON object that has no checksum yet: with one, and its end. Empty if it is no
/// object.
[[nodiscard]] std::string with_checksum(std::string object);

/// Appends the entry that `make` gives when it is shown what is there, under the lock. Returns once it is on
/// disk; throws error(io), with nothing recorded, where that can't be had, and passes on what `make`
/// throws. `path` may be no link.
recorded_entry append_to_record(const std::string& path, const std::string& dog,
                                const reference_data& c,
                                const std::function<log_entry(const dog_record&)>& make);

}  // namespace pelage::io
