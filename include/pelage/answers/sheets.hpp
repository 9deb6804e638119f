// Answers about style sheets: checked, shown, listed, compared, tried on a dog, and one begun.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <pelage/answers/picture.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/data/sheet_files.hpp>
#include <pelage/sheets/check.hpp>
#include <pelage/sheets/compare.hpp>
#include <pelage/sheets/rank.hpp>
#include <pelage/trade/outline.hpp>

namespace pelage::io {

/// A sheet's file with what is doubtful about it.
struct checked_sheet {
    sheet_file read;                      ///< the file, and its faults
    std::vector<sheet_warning> doubts{};  ///< what else there is to say
    std::vector<sheet_warning> broken{};  ///< limits of another sheet, where that was asked
};

/// What a sheet is, for who meets its name on a card: its text, how it is known and where all of it is told.
[[nodiscard]] document sheet_in_brief(const style& s);

/// One doubt in words: what is doubtful; what was found; what would be right.
[[nodiscard]] std::string doubt_words(const sheet_warning& w, const reference_data& c,
                                      length_unit u = length_unit::mm);

/// What `sheet check` found: every fault and doubt with its position, then a count.
[[nodiscard]] document document_of(const std::vector<checked_sheet>& all, const reference_data& c,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const std::vector<checked_sheet>& all, const reference_data& c);

/// A sheet as a page: what every hand needs. `g` is its plan for the dog in `r`.
[[nodiscard]] document sheet_page(const style& s, const groom& g, const plan_request& r,
                                  const print_options& o);
[[nodiscard]] std::string sheet_json(const style& s, const groom& g, const plan_request& r);

/// A sheet in a list, and why it is in it.
struct listed_sheet {
    const style* sheet = nullptr;  ///< never none
    double chance = 1.0;           ///< that such a dog has a coat of the sheet
    bool for_mix = false;          ///< it names the mix
    bool for_coat = false;         ///< it names a coat the mix may come to
};

/// The sheets by how well they suit a mix: those that name it first, then by the chance of their
/// coats, then by id.
[[nodiscard]] std::vector<listed_sheet> sheets_for(const std::vector<style>& all,
                                                   const expected_coat& mix,
                                                   const reference_data& c);
/// All sheets as a list; with `mix`, how they suit it.
[[nodiscard]] document sheet_list(const std::vector<listed_sheet>& all, const expected_coat* mix,
                                  const reference_data& c);
[[nodiscard]] std::string list_json(const std::vector<listed_sheet>& all, const expected_coat* mix,
                                    const reference_data& c);

/// Whether `s` can be the id of a sheet.
[[nodiscard]] bool sheet_id(const std::string& s);

/// A sheet's file to begin with: every key with what it is for. It reads and checks clean. `coat` is
/// written if it is there; `hair` is what the lengths are made for.
[[nodiscard]] std::string new_sheet(const std::string& id, std::optional<coat_class> coat,
                                    coat_class hair, const std::string& mix,
                                    const std::optional<date>& today);

/// Two sheets beside one another.
[[nodiscard]] document document_of(const sheet_comparison& c, const plan_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const sheet_comparison& c, const plan_request& r);
/// The page of a sheet with the dog drawn as the sheet leaves it; `p` is of a dog of that coat.
[[nodiscard]] document with_dog_drawn(document page, const dog_picture& p, coat_class c);
/// `page` with the dog drawn twice behind it, side by side: as the first sheet leaves it and as the second;
/// `first` and `second` are what was compared.
[[nodiscard]] document with_dogs_drawn(document page, const sheet_comparison& c,
                                       const plan_request& first, const plan_request& second,
                                       const outline& o, length_unit u);

/// Which sheets a dog can carry.
[[nodiscard]] document document_of(const std::vector<ranked_sheet>& all, const plan_request& r,
                                   const days& wait, const print_options& o);
[[nodiscard]] std::string json_of(const std::vector<ranked_sheet>& all, const plan_request& r,
                                  const days& wait, const print_options& o);

}  // namespace pelage::io
