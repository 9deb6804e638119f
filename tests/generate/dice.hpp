// Chance for generators: the same throws on every machine. The distributions of <random> are not, their
// results differ between libraries; the engine is, the standard fixes it.
#pragma once

#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

#include <pelage/base/units.hpp>

namespace generate {

class dice {
  public:
    explicit dice(std::uint64_t seed) : engine_(seed) {}

    /// 0 to n - 1; n > 0. The bias of the remainder is below n / 2^64.
    int roll(int n) { return static_cast<int>(engine_() % static_cast<std::uint64_t>(n)); }
    bool one_in(int n) { return roll(n) == 0; }
    /// True in `per_cent` of 100.
    bool luck(int per_cent) { return roll(100) < per_cent; }
    /// Low to below high, evenly.
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(engine_() >> 11U) * 0x1p-53;
    }
    /// A length from low to high mm, both included, at 0.01 mm.
    pelage::length hair(double low, double high) {
        const int steps = static_cast<int>(std::lround((high - low) * 100.0));
        return pelage::mm(low + roll(steps + 1) / 100.0);
    }
    template <class T>
    const T& one_of(const std::vector<T>& all) {
        return all[static_cast<std::size_t>(roll(static_cast<int>(all.size())))];
    }

  private:
    std::mt19937_64 engine_;
};

}  // namespace generate
