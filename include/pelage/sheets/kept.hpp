// What was really left against the sheet: by groomer, by part of the dog, by tool.
//
// Only lengths that somebody measured count: what went as planned was looked at by nobody. A visit gives a
// row one number, the middle one of its differences (left less wished) at the places of that row, so that
// many places of one dog on one day don't pass for many visits. Of n visits whose differences were drawn
// alike, the k-th smallest and the k-th largest hold the middle one of all such visits with the chance
// 1 - 2 P(Binomial(n, 1/2) < k), whatever they are spread like (the sign test turned round): the interval is
// the narrowest such pair that is right in all rows together at the chance asked, each row's share of what may
// go wrong being the same (Bonferroni). Where visits are too few for any pair there is none, and nothing is
// claimed; nor is it where the interval holds zero.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/model/reference_data.hpp>
#include <pelage/trade/log_entry.hpp>

namespace pelage {

/// What is asked. Borrowed for the call.
struct kept_request {
    const reference_data& reference;  ///< what the library knows
    const parameters& rules;          ///< figures, the salon's own among them
    const kit& tools;                 ///< the kit
    const std::vector<style>&
        styles;          ///< as their files have them: each visit by the season of its day
    chance asked = 0.9;  ///< that nothing claimed is chance, over 0 and below 1
};

/// A dog of the salon, and the entries of its record that hold.
struct kept_dog {
    const dog* who = nullptr;        ///< not null
    std::vector<log_entry> entries;  ///< of its record
};

/// By what the visits are put together.
enum class kept_by { groomer, part, tool };
inline constexpr std::array<std::string_view, 3> kept_by_names{"groomer", "part", "tool"};
[[nodiscard]] constexpr std::string_view name(kept_by k) {
    return kept_by_names[static_cast<std::size_t>(k)];
}

/// One groomer, part or tool.
struct kept_row {
    kept_by by = kept_by::groomer;  ///< what the row is of
    std::string what;        ///< the groomer's name, the part, the tool without its direction
    std::size_t visits = 0;  ///< with lengths that count
    std::size_t dogs = 0;    ///< so many different ones
    length
        middle{};  ///< of the visits' differences: over 0 where more was left than the sheet wants (mm)
    std::optional<std::pair<length, length>> between{};  ///< none: too few visits

    /// It is more than chance that it leaves longer (or shorter) than the sheet.
    [[nodiscard]] bool claimed() const {
        return between && (between->first > length{} || between->second < length{});
    }
};

/// The answer.
struct kept_lengths {
    chance asked = 0.9;          ///< that all intervals hold together
    std::size_t visits = 0;      ///< with lengths that count
    std::size_t dogs = 0;        ///< likewise
    std::size_t unsaid = 0;      ///< visits of the coat of which nobody measured what was left
    std::size_t enough = 0;      ///< visits from which a row may claim something
    std::vector<kept_row> rows;  ///< by groomer, part, tool; of each the most visits first
};

/// Dogs without a coat or without a sheet among `styles` are passed over; so are places where the sheet
/// wishes no length.
[[nodiscard]] kept_lengths kept_lengths_of(const kept_request& r, const std::vector<kept_dog>& all);

/// The k of the interval for `n` differences at that chance, from 1; nothing where n is too small.
[[nodiscard]] std::optional<std::size_t> interval_rank(std::size_t n, chance asked);

}  // namespace pelage
