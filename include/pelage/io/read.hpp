// Reading what people write: salon, kit, style sheet, dog. Every fault is told at once, with its
// position and what would be right. The parser stays inside lib.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pelage/catalogue.hpp>
#include <pelage/dog.hpp>
#include <pelage/error.hpp>
#include <pelage/kit.hpp>
#include <pelage/style.hpp>

namespace pelage::io {

/// A file's name (as it stands in messages) and its text (UTF-8).
struct document_text {
    std::string name;
    std::string text;
};

/// Reads the whole file. Throws error(io) when it can't be read, is no ordinary file or is larger
/// than 1 MB; a text that isn't UTF-8 is left to the parser to refuse.
[[nodiscard]] document_text slurp(const std::string& path);

/// A style sheet; names resolve against `c`. Throws bad_input with every fault.
[[nodiscard]] style read_style(const document_text& d, const catalogue& c);

/// A dog. Its style must be one of `styles`. Throws bad_input with every fault.
[[nodiscard]] dog read_dog(const document_text& d, const catalogue& c,
                           const std::vector<style>& styles);

/// A salon file: title, kit, overrides of the rules; sheets and dogs are not in it. Throws
/// bad_input with every fault.
[[nodiscard]] salon read_salon(const document_text& d, const catalogue& c);

/// A kit: a salon file of which only the kit is wanted. Throws bad_input with every fault.
[[nodiscard]] kit read_kit(const document_text& d, const catalogue& c);

/// The salon in folder `dir`: salon.toml, styles/*.toml, dogs/*.toml, in the order of their names;
/// the reference's own sheets are there too, a salon's of the same id wins. Every fault of every
/// file is collected into one bad_input; error(io) where the folder or salon.toml can't be read.
[[nodiscard]] salon read_salon_folder(const std::string& dir, const catalogue& c);

}  // namespace pelage::io
