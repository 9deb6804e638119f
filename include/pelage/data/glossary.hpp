// The words of the trade, read from reference/glossary.toml.
#pragma once

#include <pelage/data/read.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/term.hpp>

namespace pelage::io {

/// The embedded glossary, read on first use: only a look-up needs it. A fault in it is our own.
[[nodiscard]] const glossary& trade_words();

/// A glossary of the zones and sources of `c`. Throws bad_input with every fault.
[[nodiscard]] glossary read_glossary(const document_text& d, const reference_data& c);

}  // namespace pelage::io
