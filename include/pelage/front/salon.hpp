// One object that is the salon: its kit, sheets and dogs, and what can be asked of them.
#pragma once

#include <iosfwd>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/front/answers.hpp>
#include <pelage/roster/count.hpp>

namespace pelage {

namespace detail {
struct salon_state;
}

/// What a plan may be asked with.
struct plan_options {
    std::string sheet{};             ///< id of a sheet in place of the dog's own
    std::optional<date> today{};     ///< day of the groom; without it no blade counts as back from
                                     ///< sharpening, no season is laid on, and days aren't dated
    std::optional<double> chance{};  ///< for the return date, over 0 and below 1; none: 9 in 10
    std::optional<length> body_length{};  ///< in place of the sheet's adjustable length (mm)
};

/// What a roster may be asked with.
struct roster_options {
    std::optional<date> today{};     ///< none: days aren't dated
    std::optional<double> chance{};  ///< for return dates, over 0 and below 1; none: 9 in 10
    unsigned jobs = 1;               ///< threads, 1 to 256
};

/// A salon. It never changes; copies share what was read, and so do its answers. What is wrong with a
/// question is thrown as an error that names what was found and what would be right.
class salon {
  public:
    /// The salon in a folder: salon.toml, styles/ and dogs/. Throws bad_input with every fault of every
    /// file, error(io) where it can't be read.
    [[nodiscard]] static salon open(const std::string& folder);
    /// The invented salon that the library carries.
    [[nodiscard]] static salon embedded();

    salon(const salon&) = default;  // no move: what is moved from stays whole
    salon& operator=(const salon&) = default;
    ~salon() = default;

    [[nodiscard]] std::string title() const;           ///< as people call it
    [[nodiscard]] bool invented() const;               ///< demo data
    [[nodiscard]] std::vector<dog_card> dogs() const;  ///< in the order of their files
    /// Throws error(unknown), with a near miss.
    [[nodiscard]] dog_card dog(std::string_view id) const;
    /// A dog that isn't in the salon's folder: the text of a dog's file, `name` for messages. Throws
    /// bad_input with every fault.
    [[nodiscard]] dog_card read_dog(const std::string& toml, const std::string& name = "dog") const;
    /// The salon's sheets and, of other ids, the reference's.
    [[nodiscard]] std::vector<sheet_card> sheets() const;

    /// Throws error(missing) where the dog's coat or sheet isn't said, error(unknown) for a sheet that
    /// isn't there, error(range) and error(conflict) for options that can't hold.
    [[nodiscard]] pelage::plan plan(const dog_card& d, const plan_options& o = {}) const;
    /// plan(d, o).return_date()
    [[nodiscard]] return_day return_date(const dog_card& d, const plan_options& o = {}) const;
    /// The visits after the groom of `today`, for 4 to 52 weeks. Throws as plan() and return_date() do.
    [[nodiscard]] visit_calendar calendar(const dog_card& d, const date& today, int weeks = 26,
                                          const plan_options& o = {}) const;
    /// One dog a line in, one plan a line out, both JSON Lines. Throws error(io).
    roster_count roster(std::istream& in, std::ostream& out, const roster_options& o = {}) const;

    /// "7F", "9mm", "13 mm comb over 10"; on all coats if none is named. Throws error(unknown) with a near
    /// miss, error(ambiguous) where it could mean two things.
    [[nodiscard]] tool_lookup lookup(const std::string& text, std::optional<coat_class> coat = {},
                                     std::optional<date> today = {}) const;
    /// Everything its kit leaves on that coat; without `today` nothing is out for sharpening.
    [[nodiscard]] kit_ladder ladder(coat_class coat, std::optional<date> today = {}) const;
    /// What is unsafe, mislabelled, out, missing or idle in its kit; without `today` nothing is out.
    [[nodiscard]] kit_report check_kit(std::optional<date> today = {}) const;

  private:
    explicit salon(std::shared_ptr<const detail::salon_state> has) : has_(std::move(has)) {}
    std::shared_ptr<const detail::salon_state> has_;
};

}  // namespace pelage
