// Private to lib: the diary's rooms and prices, and dogs put into them one by one.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>
#include <vector>

#include <pelage/solver/diary.hpp>

#include "solver/diary_path.hpp"

namespace pelage::planning {

using minutes_by_day = std::vector<std::int64_t>;

inline constexpr std::int64_t price_unit = 1024;  ///< of a price on a thousandth of a minute

/// The prices on minutes: of a day, and of a groomer's day for dogs that go to that one alone.
struct prices {
    std::vector<double> day;
    std::vector<std::vector<double>> own;
};

class office {
  public:
    explicit office(const diary_problem& p)
        : p_(p),
          days_(static_cast<std::size_t>(p.last) + 1),
          path_(p),
          room_(days_, 0),
          blame_(p.dogs.size()) {
        for (std::size_t d = 0; d < days_; ++d) {
            for (const auto& one : p.hours) {
                room_[d] += in_mmin(one[d]);
            }
            room_[d] = p.tables.empty() ? room_[d] : std::min(room_[d], in_mmin(p.tables[d]));
        }
        free_ = all_room();
        scratch_.full.resize(days_);
        scratch_.between.resize(days_);
    }

    /// The bound at some prices, and what each day then holds beside its room.
    struct priced {
        std::int64_t bound = 0;
        minutes_by_day over;
        std::vector<minutes_by_day> own_over;
    };
    [[nodiscard]] priced price(const prices& at);
    [[nodiscard]] diary place(const prices& at);
    void better(diary& d, const prices& at, double share);

  private:
    struct left_over {
        std::vector<minutes_by_day> hours;
        minutes_by_day tables;
        minutes_by_day most;  ///< the most any groomer has

        void take(std::size_t groomer, std::size_t day, std::int64_t takes) {
            std::int64_t& mine = hours[groomer][day];
            const bool was_most = mine == most[day];
            mine -= takes;
            tables[day] -= takes;
            most[day] = std::max(most[day], mine);
            for (std::size_t g = 0; was_most && takes > 0 && g < hours.size(); ++g) {
                most[day] = g == 0 ? hours[g][day] : std::max(most[day], hours[g][day]);
            }
        }
    };
    [[nodiscard]] static bool fits(const left_over& left, const diary_dog& d, std::size_t day,
                                   std::int64_t takes) {
        const std::int64_t has = d.groomer ? left.hours[*d.groomer][day] : left.most[day];
        return has >= takes && left.tables[day] >= takes;
    }
    [[nodiscard]] bool can(const diary_dog& d, std::size_t day) const {
        return day >= d.cannot.size() || !d.cannot[day];
    }
    template <class Fits>
    void price_days(const diary_dog& d, const prices& at, double share, Fits fits);
    [[nodiscard]] std::optional<std::size_t> groomer(const left_over& left, const diary_dog& d,
                                                     std::size_t day, std::int64_t takes) const;
    [[nodiscard]] lapse_reason reason(const diary_dog& d, int due) const;
    void put(left_over& left, std::size_t dog, const dog_path& path, diary& out) const;
    [[nodiscard]] std::int64_t true_cost(const diary_dog& d, const dog_path& path) const;
    [[nodiscard]] left_over all_room() const;

    const diary_problem& p_;
    std::size_t days_;
    path_search path_;
    minutes_by_day room_;
    left_over free_;  ///< with nothing in it yet
    day_prices scratch_;
    std::vector<std::int64_t> alone_;  ///< what each dog's visits cost with the salon to itself
    std::vector<std::int64_t> blame_;  ///< how much dearer it came out so far: such dogs go first
};

}  // namespace pelage::planning
