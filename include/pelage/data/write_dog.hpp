// A dog's file, written from what an intake found, or changed where it found something else.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/data/read.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/kit.hpp>
#include <pelage/trade/weight.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage::io {

/// The dog as a file of the kind that read_dog takes: all that an intake asks. Departures from the
/// sheet, measurements, days off and events are not among it; neither is what a visit left.
[[nodiscard]] std::string dog_file(const dog& d, const body& b);

/// A dog's file of which only that is changed in which `after` differs from `before`, which is what `text`
/// reads as: every other line, comments and their order stay. Of visits only those added behind the others
/// count. Who takes it reads it again: a file may be written so that it comes out as something else.
[[nodiscard]] std::string updated_dog_file(const std::string& text, const dog& before,
                                           const dog& after, const body& b);

/// Reads a dog of a salon again, which may name that kit's own blades; otherwise as read_dog (read.hpp).
[[nodiscard]] dog read_dog_of_salon(const document_text& d, const reference_data& c,
                                    const std::vector<style>& styles, const kit& drawer);

/// What a dog's file says it weighs; nothing where it doesn't.
[[nodiscard]] std::optional<weight> weight_in_file(const std::string& text);
/// The file with that weight in place of what it says.
[[nodiscard]] std::string with_weight(const std::string& text, const weight& w);

/// An id made of a name: "bella-luna" of "Bella, Luna"; "dog" where no letter of it can stand in an id.
[[nodiscard]] std::string dog_id(const std::string& name);

}  // namespace pelage::io
