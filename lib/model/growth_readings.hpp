// Private to lib: a dog's file and record read for what they say of its growth and of its mats.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/model/growth_record.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

/// The cut a place was last given before a measurement, as far as it is known.
struct last_cut {
    const visit* on = nullptr;   ///< null: none in the record
    std::optional<length> left;  ///< none: the record doesn't say

    friend bool operator==(const last_cut& a, const last_cut& b) {
        return a.on == b.on && a.left == b.left;
    }
};

/// Whether any visit on record looked for mats.
[[nodiscard]] bool looked_for_mats(const dog& d);

/// Reads one dog's record. Borrows all of it.
class growth_readings {
  public:
    growth_readings(const dog& d, const reference_data& c, const parameters& r,
                    const std::optional<date>& today);

    /// Each measurement counted or left out.
    void sort_into(learned_rate& to) const;
    /// The visits that looked for mats, as far as length tells what they found; the newest.
    [[nodiscard]] std::vector<counted_check> checks() const;
    /// The places of a measurement that counts.
    [[nodiscard]] std::vector<place> places_of(const counted_measurement& m) const {
        return single_places(dog_.measured[m.which].whom);
    }

  private:
    void keep_newest(learned_rate& to) const;
    [[nodiscard]] length expected(const last_cut& cut, const measurement& m) const;
    [[nodiscard]] const visit* brushed_before(const date& on, bool full) const;
    [[nodiscard]] std::optional<counted_check> check_at(const visit& v) const;
    [[nodiscard]] bool mats_at(const visit& v, const place& p) const;
    [[nodiscard]] const selection& meant(const std::string& whom) const;
    [[nodiscard]] std::vector<place> single_places(const std::string& whom) const;
    [[nodiscard]] std::optional<length> left_at(const visit& v, const place& p) const;
    [[nodiscard]] bool may_have_cut(const visit& v, const place& p) const;
    [[nodiscard]] last_cut cut_before(const place& p, const date& on) const;
    [[nodiscard]] std::optional<last_cut> common_cut(const std::vector<place>& places,
                                                     const date& on) const;
    [[nodiscard]] std::optional<left_out_because> why_not(const measurement& m,
                                                          const std::optional<last_cut>& cut) const;

    const dog& dog_;
    const reference_data& reference_;
    const parameters& rules_;
    const std::optional<date>& today_;
    std::optional<part_index> parts_;
    std::vector<const visit*> visits_;  ///< by date
};

}  // namespace pelage
