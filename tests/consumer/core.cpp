// A program that knows the core alone: units from a header, one function from the archive.
#include <cmath>

#include <pelage/base/stats.hpp>
#include <pelage/base/units.hpp>
#include <pelage/base/version.hpp>

// What CMake or pkg-config found is what the header says.
#ifdef CONSUMER_FOUND
static_assert(PELAGE_VERSION_NUMBER == CONSUMER_FOUND);
#endif

int main() {
    const pelage::length grown = pelage::mm(9.0) + pelage::mm_per_day(0.25) * pelage::day(16.0);
    // 1.959963984540054: the 97.5 % point of the normal distribution, as any printed table has it.
    const double z = pelage::normal_quantile(0.975);
    return pelage::in_mm(grown) == 13.0 && std::abs(z - 1.959963984540054) < 1e-12 ? 0 : 1;
}
