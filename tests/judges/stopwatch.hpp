// Time by two clocks: the one on the wall, and the one that stands still while others have the processor.
#pragma once

#include <chrono>
#include <ctime>

namespace judges {

struct seconds_spent {
    double wall = 0;
    double processor = 0;
};

/// Runs from its making on, in this thread.
class stopwatch {
  public:
    [[nodiscard]] seconds_spent read() const {
        return {std::chrono::duration<double>(std::chrono::steady_clock::now() - wall_).count(),
                processor() - processor_};
    }

  private:
    static double processor() {
        timespec t{};
        clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
        return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_nsec) * 1e-9;
    }

    std::chrono::steady_clock::time_point wall_ = std::chrono::steady_clock::now();
    double processor_ = processor();
};

}  // namespace judges
