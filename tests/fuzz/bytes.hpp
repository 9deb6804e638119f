// Bytes as choices, for targets that make something of them.
#pragma once

#include <cstddef>
#include <string>

namespace fuzz {

/// Bytes taken one after another; 0 once they are used up.
class bytes {
  public:
    explicit bytes(const std::string& all) : all_(all) {}
    [[nodiscard]] bool ended() const { return at_ >= all_.size(); }
    unsigned take() { return ended() ? 0U : static_cast<unsigned char>(all_[at_++]); }
    unsigned take(unsigned below) { return take() % below; }
    /// Low to high, both included, in 65,535 steps.
    double between(double low, double high) {
        const unsigned coarse = take();
        return low + (high - low) * (coarse * 256U + take()) / 65'535.0;
    }

  private:
    const std::string& all_;
    std::size_t at_ = 0;
};

}  // namespace fuzz
