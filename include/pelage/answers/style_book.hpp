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
    style sheet;
    dog patient;
};

/// What a book is made of. It borrows all but its sheets.
struct style_book {
    std::string title;
    const reference_data& reference;
    const parameters& rules;
    const kit& tools;
    const outline& drawn;
    const glossary& words;
    std::optional<date> today{};
    std::vector<book_sheet> sheets{};
};

/// The book. `ladders` stand behind its sheets: what the kit leaves on their coats.
[[nodiscard]] document document_of(const style_book& b, std::vector<document> ladders,
                                   const print_options& o);
/// Its sheets.
[[nodiscard]] std::string json_of(const style_book& b);

}  // namespace pelage::io
