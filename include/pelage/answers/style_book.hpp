// The style sheets of a salon as one book: an index, each sheet on a page of its own with the dog drawn, what
// its kit leaves, and the words of the trade.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/trade/outline.hpp>
#include <pelage/trade/term.hpp>

namespace pelage::io {

/// A sheet and the dog of no name that it is shown on.
struct book_sheet {
    style sheet;  ///< as it is today
    dog patient;  ///< of no name, on a coat the sheet is for
};

/// What a book is made of. It borrows all but its sheets.
struct style_book {
    std::string title;                 ///< stands on its first page
    const reference_data& reference;   ///< what the library knows
    const parameters& rules;           ///< figures, the salon's own among them
    const kit& tools;                  ///< the kit it is cut with
    const outline& drawn;              ///< what dogs are drawn from
    const glossary& words;             ///< words of the trade
    std::optional<date> today{};       ///< none: not known
    std::vector<book_sheet> sheets{};  ///< in the order of their pages
};

/// The book. `ladders` stand behind its sheets: what the kit leaves on their coats.
[[nodiscard]] document document_of(const style_book& b, std::vector<document> ladders,
                                   const print_options& o);
/// Its sheets.
[[nodiscard]] std::string json_of(const style_book& b);

}  // namespace pelage::io
