// Answers about a kit: the ladder, the check, a test patch, what to buy. Each as a document and as JSON.
#pragma once

#include <string>

#include <pelage/answers/document.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/kit/asked.hpp>
#include <pelage/kit/buy.hpp>
#include <pelage/kit/check.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/kit/place_card.hpp>
#include <pelage/kit/test_patch.hpp>

namespace pelage::io {

/// A place as a card: where it is, its skin, how to hold it, which way, with what, never what.
[[nodiscard]] document document_of(const place_card& c, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const place_card& c, const lookup_request& r);

/// Words of the trade.
[[nodiscard]] document document_of(const terms_asked& t, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const terms_asked& t, const lookup_request& r);

/// What carries a comb.
[[nodiscard]] document document_of(const carrying_answer& a, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const carrying_answer& a, const lookup_request& r);

/// The words of the trade, or what is never done.
[[nodiscard]] document document_of(const list_asked& l, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const list_asked& l, const lookup_request& r);

/// What stands before an answer about tools: a no, the words said beside them, that it was one thing twice.
[[nodiscard]] document document_of(const tools_asked& t, const lookup_request& r,
                                   const print_options& o);

/// An answer about tools, as JSON, with the words that were said beside them.
[[nodiscard]] std::string json_with(const std::string& tools, const tools_asked& asked,
                                    const lookup_request& r);

/// A class of coat.
[[nodiscard]] document document_of(const coat_asked& c, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const coat_asked& c, const lookup_request& r);

/// What ails a dog.
[[nodiscard]] document document_of(const health_asked& h, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const health_asked& h, const lookup_request& r);
/// What a card says in short, told whole.
[[nodiscard]] document document_of(const card_asked& c, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const card_asked& c, const lookup_request& r);

/// Tools side by side.
[[nodiscard]] document document_of(const comparison& c, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const comparison& c, const lookup_request& r);

/// What is asked back, and what was meant perhaps: the text of an error.
[[nodiscard]] std::string text_of(const asked_back& a);
[[nodiscard]] std::string text_of(const strangers& s);

/// The whole ladder of a kit on a coat; as CSV one line a setup.
[[nodiscard]] document document_of(const ladder& l, const lookup_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const ladder& l, const lookup_request& r);

/// A kit checked.
[[nodiscard]] document document_of(const kit_check& c, const kit_check_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const kit_check& c, const kit_check_request& r);

/// Why a test patch is refused; `l.refused` holds.
[[nodiscard]] std::string refusal_text(const calibration& l, const test_patch& r, length_unit u);
/// A test patch that isn't refused: what it sets, and what that changes.
[[nodiscard]] document document_of(const calibration& l, const test_patch& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const calibration& l, const test_patch& r);

/// What to buy.
[[nodiscard]] document document_of(const shopping& s, const shopping_request& r,
                                   const print_options& o);
[[nodiscard]] std::string json_of(const shopping& s, const shopping_request& r);

}  // namespace pelage::io
