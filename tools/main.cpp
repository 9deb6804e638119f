// The process: arguments, clock, environment and streams. Nothing below this file touches them.
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <iostream>
#include <thread>

#include "cli.hpp"

namespace {

pelage::date local_day() {
    const std::time_t now = std::time(nullptr);
    std::tm here{};
    localtime_r(&now, &here);
    return std::chrono::sys_days{
        std::chrono::year_month_day{std::chrono::year{here.tm_year + 1900},
                                    std::chrono::month{static_cast<unsigned>(here.tm_mon) + 1},
                                    std::chrono::day{static_cast<unsigned>(here.tm_mday)}}};
}

}  // namespace

int main(int argc, char** argv) {
    std::ios::sync_with_stdio(false);
    const char* salon = std::getenv("PELAGE_SALON");
    const std::vector<std::string> args(argv + (argc > 0 ? 1 : 0), argv + argc);
    return pelage::cli::run(args,
                            {local_day(), salon != nullptr ? salon : "", &std::cin,
                             std::max(1U, std::thread::hardware_concurrency())},
                            std::cout, std::cerr);
}
