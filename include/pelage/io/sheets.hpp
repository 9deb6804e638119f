// Style sheets as files: read one by one for their faults, checked, shown, compared, and begun.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <pelage/any_sheet.hpp>
#include <pelage/io/read.hpp>
#include <pelage/io/write.hpp>
#include <pelage/sheet_check.hpp>
#include <pelage/sheet_compare.hpp>

namespace pelage::io {

/// A sheet's file as read.
struct sheet_file {
    std::string file;
    std::optional<style> sheet;  ///< none: it, or a sheet it extends, is faulty
    diagnostics faults;          ///< of this file alone
    bool parent_faulty = false;  ///< nothing wrong here, but a sheet it extends is
    std::string parent{};        ///< the id of the sheet it extends; empty if none
};

/// The sheets of `files`. One may extend another of them, of `beside` (which are read for that alone),
/// or of `others`; `tools`, if any, holds blades of the salon's own.
[[nodiscard]] std::vector<sheet_file> read_sheet_files(const std::vector<document_text>& files,
                                                       const std::vector<document_text>& beside,
                                                       const catalogue& c,
                                                       const std::vector<style>& others,
                                                       const kit* tools = nullptr);

/// The sheets of the *.toml files of a folder in the order of their names, hidden ones left out; one may
/// extend another of them or of the reference. Throws bad_input with every fault of every file, and
/// error(io) if the folder can't be read or holds none.
[[nodiscard]] std::vector<style> read_sheet_folder(const std::string& dir, const catalogue& c,
                                                   const kit* tools = nullptr);

/// A sheet's file with what is doubtful about it.
struct checked_sheet {
    sheet_file read;
    std::vector<sheet_warning> doubts{};
    std::vector<sheet_warning> broken{};  ///< limits of another sheet, where that was asked
};

/// One doubt in words: what is doubtful; what was found; what would be right.
[[nodiscard]] std::string doubt_words(const sheet_warning& w, const catalogue& c,
                                      length_unit u = length_unit::mm);

/// What `sheet check` found: every fault and doubt with its position, then a count.
[[nodiscard]] std::string text_of(const std::vector<checked_sheet>& all, const catalogue& c,
                                  const print_options& o);
[[nodiscard]] std::string json_of(const std::vector<checked_sheet>& all, const catalogue& c);

/// A sheet as a page: what every hand needs. `g` is its plan for the dog in `r`.
[[nodiscard]] std::string sheet_page(const style& s, const groom& g, const groom_request& r,
                                     const print_options& o);
[[nodiscard]] std::string sheet_json(const style& s, const groom& g, const groom_request& r);

/// A sheet in a list, and why it is in it.
struct listed_sheet {
    const style* sheet = nullptr;
    double chance = 1.0;    ///< that such a dog has a coat of the sheet
    bool for_mix = false;   ///< it names the mix
    bool for_coat = false;  ///< it names a coat the mix may come to
};

/// The sheets by how well they suit a mix: those that name it first, then by the chance of their
/// coats, then by id.
[[nodiscard]] std::vector<listed_sheet> sheets_for(const std::vector<style>& all,
                                                   const expected_coat& mix, const catalogue& c);
/// All sheets as a list; with `mix`, how they suit it.
[[nodiscard]] std::string list_text(const std::vector<listed_sheet>& all, const expected_coat* mix,
                                    const catalogue& c, const print_options& o);
[[nodiscard]] std::string list_json(const std::vector<listed_sheet>& all, const expected_coat* mix,
                                    const catalogue& c);

/// Whether `s` can be the id of a sheet.
[[nodiscard]] bool sheet_id(const std::string& s);

/// A sheet's file to begin with: every key with what it is for. It reads and checks clean. `coat` is
/// written if it is there; `hair` is what the lengths are made for.
[[nodiscard]] std::string new_sheet(const std::string& id, std::optional<coat_class> coat,
                                    coat_class hair, const std::string& mix,
                                    const std::optional<date>& today);

/// Two sheets beside one another.
[[nodiscard]] std::string text_of(const sheet_comparison& c, const groom_request& r,
                                  const print_options& o);
[[nodiscard]] std::string json_of(const sheet_comparison& c, const groom_request& r);

/// Which sheets a dog can carry.
[[nodiscard]] std::string text_of(const std::vector<sheet_trial>& all, const groom_request& r,
                                  const days& wait, const print_options& o);
[[nodiscard]] std::string json_of(const std::vector<sheet_trial>& all, const groom_request& r,
                                  const days& wait, const print_options& o);

}  // namespace pelage::io
