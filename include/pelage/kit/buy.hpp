// Which few blades and combs to buy so that most of what the salon's sheets ask for can be cut.
//
// A target is what one sheet asks of one zone on one coat. It is met where some setup leaves the length
// within tolerance and no rule refuses it there: the plan's own judgement. solver/cover.hpp chooses.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/money.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/solver/cover.hpp>
#include <pelage/trade/groomer.hpp>
#include <pelage/trade/setup.hpp>

namespace pelage {

/// Something that may be bought.
struct ware {
    std::optional<blade> as_blade{};  ///< either this
    std::optional<comb> as_comb{};    ///< or this
    std::vector<std::string>
        fits{};                    ///< comb: blades it fits over; empty: the kit's own under combs
    std::optional<money> price{};  ///< of one; none: nobody said
    /// "blade 7F", "comb 13 mm".
    [[nodiscard]] std::string title() const {
        return as_blade ? "blade " + as_blade->id : "comb " + as_comb->id;
    }
};

/// What one sheet asks of one zone on one coat.
struct sheet_target {
    std::size_t sheet = 0;               ///< index into the request's sheets
    coat_class coat = coat_class::wavy;  ///< on which
    std::size_t zone = 0;                ///< index into body::zones
    std::optional<length> wanted;  ///< none: one of the zone's customary blades, whatever it leaves
    length tolerated{};            ///< how far off it may be
    std::optional<std::string> blade{};     ///< where the sheet names a blade
    lay_choice way = lay_choice::with_lay;  ///< in which direction
    int weight = 10;                        ///< the zone's, in tenths
    std::string season{};  ///< the season of the sheet that asks it; empty: the sheet as it is
};

/// At how many places dogs are groomed at one time.
struct places_at_once {
    /// What places are counted by.
    enum class by { nobody, tables, groomers };
    by how = by::nobody;             ///< what it is counted by; nobody: nothing says, one is taken
    int number = 1;                  ///< at least 1
    std::vector<std::string> who{};  ///< ids of the tables, or names of the groomers
};
/// The kit's tables; without any the most groomers that have hours on one day of the week, the first such
/// day from Sunday on.
[[nodiscard]] places_at_once places_in(const kit& k, const std::vector<groomer>& all);

/// What is asked of the sheets and a kit. Everything is borrowed for the call.
struct shopping_request {
    const reference_data& reference;   ///< what the library knows
    const parameters& rules;           ///< figures, the salon's own among them
    const kit& own;                    ///< what is there costs nothing
    const std::vector<style>& sheets;  ///< what is to be cut by them
    std::vector<ware> wares{};         ///< in the order in which equals are preferred
    std::size_t most = 5;              ///< so many things at most
    std::optional<date> today{};       ///< none: nothing is out for sharpening
    places_at_once places{};           ///< each is counted to have one of what is bought
};

/// A target with every setup of a kit that meets it.
struct judged_target {
    sheet_target what;                     ///< what is asked
    std::vector<std::size_t> met_by{};     ///< indices into the setups judged
    std::optional<std::size_t> nearest{};  ///< where none does: the nearest allowed one
    length off{};                          ///< and how far it is off
};

/// Every target of the sheets that is cut with a blade or a comb, on every coat each sheet is for (all
/// of them where it names none), judged on `setups`; and what each of a sheet's seasons asks otherwise. The owner's consents that a sheet needs count as
/// given, today's hair as long enough, the dog as sound.
[[nodiscard]] std::vector<judged_target> judge_targets(const reference_data& reference,
                                                       const parameters& rules, const kit& tools,
                                                       const std::vector<style>& sheets,
                                                       const std::vector<setup>& setups);

/// The reference's blades and combs that the kit hasn't: those in common use, no surgical, wide, toe or
/// adjustable ones.
[[nodiscard]] std::vector<ware> usual_wares(const reference_data& reference, const kit& own);
/// What a kit file lists, as a catalogue: without what the other kit has already.
[[nodiscard]] std::vector<ware> wares_of(const kit& offered, const kit& own);

/// The best purchase of so many things.
struct purchase {
    cover_choice choice;                ///< the solver's
    std::vector<std::size_t> bought{};  ///< indices into the request's wares, rising
};

/// What one thing of the last purchase is for.
struct use_of {
    std::size_t ware = 0;           ///< index into the request's wares
    std::int64_t lost_without = 0;  ///< weight no longer met if it were left out of the purchase
    std::vector<std::size_t> serves{};  ///< targets that only it adds, as indices into `targets`
};

/// What the last purchase comes to, one of each for each place.
struct shopping_cost {
    money sum{};                          ///< of what has a price
    std::vector<std::size_t> unpriced{};  ///< the wares without one
    bool one_currency = true;             ///< else nothing is added up
};
[[nodiscard]] shopping_cost cost_of(const purchase& p, const shopping_request& r);

/// What to buy.
struct shopping {
    std::vector<judged_target> targets;  ///< judged on the setups of own kit and wares together
    std::vector<setup> setups;           ///< all that could be held, if everything were bought
    std::int64_t whole = 0;              ///< weight of all targets
    std::int64_t reachable = 0;          ///< met if everything offered were bought
    std::vector<purchase> curve;         ///< the best purchase of 0, 1, ... things
    std::vector<use_of> uses;            ///< of the last purchase
    std::vector<std::size_t> never{};    ///< targets that nothing offered meets
};

/// The problem that the request means, its targets in the order of judge_targets.
[[nodiscard]] cover_problem problem_of(const shopping_request& r,
                                       const std::vector<judged_target>& targets,
                                       const std::vector<setup>& setups);

/// Works it out. Throws error(range) if more than most_items wares are offered.
[[nodiscard]] shopping what_to_buy(const shopping_request& r);

}  // namespace pelage
