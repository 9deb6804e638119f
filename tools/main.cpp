// The process: arguments, clock, environment and streams. Nothing below this file touches them.
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <iostream>
#include <optional>
#include <thread>

#include <sys/ioctl.h>
#include <termios.h>
#include <unistd.h>

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

/// Keys as they are pressed, unseen, an interrupt as a key, so that the terminal is never left so; or
/// lines as ever, which is what the terminal had first.
void one_key(bool wanted) {
    static const std::optional<termios> first = [] {
        termios t{};
        return tcgetattr(STDIN_FILENO, &t) == 0 ? std::optional{t} : std::nullopt;
    }();
    if (!first) {
        return;
    }
    termios t = *first;
    if (wanted) {
        t.c_lflag &= ~static_cast<tcflag_t>(ICANON | ECHO | ISIG);
        t.c_cc[VMIN] = 1;
        t.c_cc[VTIME] = 0;
    }
    (void)tcsetattr(STDIN_FILENO, TCSADRAIN, &t);
}

/// Of the terminal that is printed to: 80 where there is none, and no more than that, since longer lines
/// read badly; 32 at least.
std::size_t columns() {
    winsize w{};
    constexpr std::size_t usual = 80;
    constexpr std::size_t least = 32;
    if (isatty(STDOUT_FILENO) != 1 || ioctl(STDOUT_FILENO, TIOCGWINSZ, &w) != 0 || w.ws_col == 0) {
        return usual;
    }
    return std::clamp<std::size_t>(w.ws_col, least, usual);
}

}  // namespace

int main(int argc, char** argv) {
    std::ios::sync_with_stdio(false);
    const char* salon = std::getenv("PELAGE_SALON");
    const std::vector<std::string> args(argv + (argc > 0 ? 1 : 0), argv + argc);
    return pelage::cli::run(args,
                            {local_day(), salon != nullptr ? salon : "", &std::cin,
                             std::max(1U, std::thread::hardware_concurrency()),
                             isatty(STDIN_FILENO) == 1, one_key, columns()},
                            std::cout, std::cerr);
}
