// A dog's file, written from what an intake found.
#pragma once

#include <string>

#include <pelage/trade/dog.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage::io {

/// The dog as a file of the kind that read_dog takes: all that an intake asks. Departures from the
/// sheet, measurements, days off and events are not among it; neither is what a visit left.
[[nodiscard]] std::string dog_file(const dog& d, const body& b);

/// An id made of a name: "bella-luna" of "Bella, Luna"; "dog" where no letter of it can stand in an id.
[[nodiscard]] std::string dog_id(const std::string& name);

}  // namespace pelage::io
