// One target, pelage_TARGET, as libFuzzer calls it.
#include <cstddef>
#include <cstdint>

#include "fuzz/targets.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    fuzz::run(fuzz::pelage_TARGET, {bytes, bytes + size});
    return 0;
}
