// Private to lib: one dog's cheapest visits under given prices of the days.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include <pelage/solver/diary.hpp>

namespace pelage::planning {

inline constexpr std::int64_t no_way = std::numeric_limits<std::int64_t>::max() / 4;

/// What a visit on each day costs, in thousandths of a minute; no_way: there can be none.
struct day_prices {
    std::vector<std::int64_t> full;
    std::vector<std::int64_t> between;
};

/// A visit of a path.
struct stop {
    int on = 0;
    bool full = true;
};

/// The path: its cost, its visits, and the day from which nothing could be found.
struct dog_path {
    std::int64_t cost = 0;
    std::vector<stop> stops;
    std::optional<int> lapse;
};

/// What a clock of that dog that runs out on day `due` and is never met costs: more than coming at the
/// very end and all visits left out.
[[nodiscard]] std::int64_t lapse_price(const diary_problem& p, const diary_dog& d, int due);

/// What the lateness of a visit costs.
[[nodiscard]] std::int64_t late_price(const diary_problem& p, int late_full, int late_between);

/// A dog's clocks as they run: before its first visit of the diary, or since its last visits.
struct running_clocks {
    int full = 0;        ///< the day of the last full groom
    int visit = 0;       ///< and of the last visit
    bool begun = false;  ///< a visit of the diary began them; else the dog's own dues hold
};
/// As they run on day 0.
[[nodiscard]] running_clocks clocks_before(const diary_dog& d);
[[nodiscard]] running_clocks clocks_after(const running_clocks& c, const stop& s);
/// When the full groom is due, the sooner of the other clocks where there is one, the sooner of all.
[[nodiscard]] int due_full(const diary_dog& d, const running_clocks& c);
[[nodiscard]] std::optional<int> due_between(const diary_dog& d, const running_clocks& c);
[[nodiscard]] int due_first(const diary_dog& d, const running_clocks& c);

/// What has run of a full groom's interval by the last day, as its share of all visits in it, less those
/// done: without it a visit put off beyond the last day would be one saved.
[[nodiscard]] std::int64_t end_price(const diary_problem& p, const diary_dog& d,
                                     const running_clocks& c);

/// Shortest paths over (day of the last full groom, day of the last visit), both counted from day 0. The
/// tables are kept from dog to dog.
class path_search {
  public:
    explicit path_search(const diary_problem& p);

    /// The cheapest; of several that with the earliest days, then full grooms.
    [[nodiscard]] dog_path run(const diary_dog& d, const day_prices& prices);

  private:
    /// Days on which something can be, and what it costs; what is known of W from there on.
    struct open_day {
        int on;
        std::int64_t full;
        std::int64_t between;
    };
    /// The last full groom and the last visit, and which rows of the table they are.
    struct state {
        running_clocks clocks;
        std::size_t row;
        std::size_t column;
    };
    struct choice {
        std::int64_t cost = no_way;
        std::size_t at = 0;  ///< of the open days
        bool full = true;
        bool lapsed = false;
    };
    [[nodiscard]] state after(const state& s, const choice& c) const;
    [[nodiscard]] std::int64_t cost(const state& s);
    [[nodiscard]] choice best(const state& s);

    const diary_problem& p_;
    std::int64_t late_full_;
    std::int64_t late_between_;
    const diary_dog* dog_ = nullptr;
    std::vector<open_day> open_;
    std::vector<std::size_t> from_;  ///< by day: the first open day from it on
    std::vector<std::int64_t> known_;
};

}  // namespace pelage::planning
