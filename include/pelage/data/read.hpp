// Reading what people write: salon, kit, style sheet, dog. Every fault is told at once, with its
// position and what would be right. The parser stays inside lib.
//
// What holds for every file: TOML with format = 1; a fault of syntax ends the reading of its file, all
// others are told together, sorted, at most 1000 of a file; positions count from 1, columns in
// characters, 1:1 where something is missing from the file as a whole; keys and brackets nest 16 deep
// at most; texts have at most 2000 characters; days lie from 1990 to 2199.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/kit.hpp>
#include <pelage/trade/style.hpp>

namespace pelage::io {

/// A file's name (as it stands in messages) and its text (UTF-8).
struct document_text {
    std::string name;  ///< for messages
    std::string text;  ///< what it says
};

/// Reads the whole file. Throws error(io) when it can't be read, is no ordinary file or is larger
/// than 1 MB; a text that isn't UTF-8 is left to the parser to refuse.
[[nodiscard]] document_text read_text(const std::string& path);

/// The paths of the *.toml files of a folder in the order of their names, hidden ones left out. Throws
/// error(io) when it can't be read.
[[nodiscard]] std::vector<std::string> toml_files(const std::string& folder);

/// A style sheet; names resolve against `c`: its blades are the reference's. A length outside the
/// sheet's own [[limit]] is a fault, and so is a blade etched longer than it. Throws bad_input with
/// every fault.
[[nodiscard]] style read_style(const document_text& d, const reference_data& c);

/// Whether what is told of a dog's health says that nothing ails it: "none", "healthy".
[[nodiscard]] bool says_well(const std::string& health);

/// A dog. Its style, if it names one, must be one of `styles`. Throws bad_input with every fault.
[[nodiscard]] dog read_dog(const document_text& d, const reference_data& c,
                           const std::vector<style>& styles);

/// A salon file: title, kit, overrides of the rules; sheets and dogs are not in it. A blade is one of
/// the reference or has stated length and teeth of its own; a measured length more than four times
/// off what is etched is taken for a slip (assumption). Throws bad_input with every fault.
[[nodiscard]] salon_files read_salon(const document_text& d, const reference_data& c);

/// A kit: a salon file of which only the kit is wanted. Throws bad_input with every fault.
[[nodiscard]] kit read_kit(const document_text& d, const reference_data& c);

/// The salon in folder `dir`: salon.toml, styles/*.toml, dogs/*.toml with the records beside them, in
/// the order of their names; the reference's own sheets are there too, a salon's of the same id wins.
/// Every fault of every file is collected into one bad_input, files that can't be read and lines of
/// records that can't be counted among them; sheets and dogs may name the kit's own blades; error(io)
/// where the folder or salon.toml can't be read.
[[nodiscard]] salon_files read_salon_folder(const std::string& dir, const reference_data& c);

/// A dog's file or a style sheet of a salon that can't be used, and why; or a record of which some lines
/// can't be counted.
struct unsound_file {
    std::string file;        ///< its path
    std::string id;          ///< as far as it could be read; empty if not
    bool is_dog = false;     ///< otherwise a style sheet
    std::string extends;     ///< of a sheet: its parent's id
    diagnostics faults;      ///< empty where it is a sheet whose parent is unsound
    bool is_record = false;  ///< a record: the rest of it counts
};

/// The same for who needs but some of it: dogs and sheets with faults are left out of the salon and told
/// in `unsound`. Of two with one id the first stays. Where salon.toml itself is faulty or a folder can't
/// be read, every fault of every file is thrown as above.
[[nodiscard]] salon_files read_salon_folder(const std::string& dir, const reference_data& c,
                                            std::vector<unsound_file>& unsound);

}  // namespace pelage::io
