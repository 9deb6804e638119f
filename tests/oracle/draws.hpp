// Random cases that are the same on every machine: the engine is fixed by the standard, the
// distributions of the standard library are not.
#pragma once

#include <cmath>
#include <random>

namespace oracle {

class draws {
  public:
    explicit draws(unsigned seed) : engine_(seed) {}

    /// Evenly between `low` and `high`.
    double between(double low, double high) {
        return low + static_cast<double>(engine_() >> 11U) * 0x1p-53 * (high - low);
    }

    /// A whole number from `low` to `high`, both included.
    int whole(int low, int high) {
        return low + static_cast<int>(between(0.0, static_cast<double>(high - low + 1)));
    }

    /// Standard normal (Marsaglia's polar method).
    double normal() {
        if (spare_) {
            spare_ = false;
            return kept_;
        }
        double x = 0.0;
        double y = 0.0;
        double s = 0.0;
        do {
            x = between(-1.0, 1.0);
            y = between(-1.0, 1.0);
            s = x * x + y * y;
        } while (s >= 1.0 || s == 0.0);
        const double scale = std::sqrt(-2.0 * std::log(s) / s);
        kept_ = y * scale;
        spare_ = true;
        return x * scale;
    }

  private:
    std::mt19937_64 engine_;
    double kept_ = 0.0;
    bool spare_ = false;
};

}  // namespace oracle
