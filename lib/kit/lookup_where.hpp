// Private to lib: where a setup may be used, on a dog with no findings.
#pragma once

#include <optional>

#include <pelage/kit/lookup.hpp>

namespace pelage {

/// How a sheet may ask for a zone: as it comes, clean, clean in show finish, or of a pattern breed.
enum class asked_as { plain, clean, show, pattern };

/// Whether the rules let a setup be used in a zone that is asked for so.
[[nodiscard]] bool allowed_as(const lookup_request& r, const setup& s, const zone& z, asked_as how);

/// Whether the zone is one that a blade or comb is taken to at all: prep zones have their own list.
[[nodiscard]] bool goes_on(const setup& s, const zone& z);

/// Where a setup that may not go everywhere may go.
[[nodiscard]] where_it_may places_of(const lookup_request& r, const setup& s);

/// Why a setup may not be used in the zones asked about: the first reason there is. Without zones: on the
/// firm, flat parts of the coat.
[[nodiscard]] std::optional<no_go> refused_there(const lookup_request& r, const setup& s);

/// Whether it may be used in the places asked about; nothing where none is. Nobody takes a blade to what is
/// scissored: the rest of such a place is judged without it.
[[nodiscard]] std::optional<use_there> judged_there(const lookup_request& r, const setup& s);

/// The setup, moved that way over the coat.
[[nodiscard]] setup turned(setup s, direction d);

}  // namespace pelage
