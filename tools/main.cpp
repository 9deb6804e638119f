// The process: arguments, clock, environment and streams. Nothing below this file touches them.
#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <ctime>
#include <iostream>
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

/// The terminal as it was first, where a signal handler can see it.
termios first_terminal{};

bool has_terminal() {
    static const bool known = tcgetattr(STDIN_FILENO, &first_terminal) == 0;
    return known;
}

/// Only what a signal handler may call: the terminal is given back before the process ends by it.
extern "C" void give_back(int signal) {
    (void)tcsetattr(STDIN_FILENO, TCSANOW, &first_terminal);
    (void)std::signal(signal, SIG_DFL);
    (void)raise(signal);
}

/// Whether signals that end the process give the terminal back first; what is ignored stays so, as nohup asks.
void guard_terminal(bool on) {
    for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT}) {
        if (std::signal(signal, on ? give_back : SIG_DFL) == SIG_IGN) {
            (void)std::signal(signal, SIG_IGN);
        }
    }
}

/// Keys as they are pressed, unseen, an interrupt as a key, so that the terminal is never left so; or
/// lines as ever, which is what the terminal had first.
void one_key(bool wanted) {
    if (!has_terminal()) {
        return;
    }
    termios t = first_terminal;
    if (wanted) {
        guard_terminal(true);
        t.c_lflag &= ~static_cast<tcflag_t>(ICANON | ECHO | ISIG);
        t.c_cc[VMIN] = 1;
        t.c_cc[VTIME] = 0;
    }
    (void)tcsetattr(STDIN_FILENO, TCSADRAIN, &t);
    if (!wanted) {
        guard_terminal(false);
    }
}

/// Of the terminal that is printed to, or what COLUMNS says where there is none; else 80, and no more than that,
/// since longer lines read badly; 32 at least.
std::size_t columns() {
    winsize w{};
    constexpr std::size_t usual = 80;
    constexpr std::size_t least = 32;
    if (isatty(STDOUT_FILENO) == 1 && ioctl(STDOUT_FILENO, TIOCGWINSZ, &w) == 0 && w.ws_col > 0) {
        return std::clamp<std::size_t>(w.ws_col, least, usual);
    }
    const char* said = std::getenv("COLUMNS");  // POSIX: the width that is preferred
    std::size_t asked = 0;
    for (const char* c = said; c != nullptr && *c >= '0' && *c <= '9' && asked < usual; ++c) {
        asked = asked * 10 + static_cast<std::size_t>(*c - '0');
    }
    return asked == 0 ? usual : std::clamp(asked, least, usual);
}

/// Nobody said NO_COLOR, and the terminal isn't one that only takes plain text.
bool colour() {
    const char* no = std::getenv("NO_COLOR");
    const char* term = std::getenv("TERM");
    return isatty(STDOUT_FILENO) == 1 && (no == nullptr || *no == '\0') && term != nullptr &&
           std::string_view(term) != "dumb";
}

}  // namespace

int main(int argc, char** argv) {
    std::ios::sync_with_stdio(false);
    const char* salon = std::getenv("PELAGE_SALON");
    const std::vector<std::string> args(argv + (argc > 0 ? 1 : 0), argv + argc);
    return pelage::cli::run(
        args,
        {local_day(), salon != nullptr ? salon : "", &std::cin,
         std::max(1U, std::thread::hardware_concurrency()), isatty(STDIN_FILENO) == 1, one_key,
         columns(), colour(), isatty(STDERR_FILENO) == 1 && isatty(STDOUT_FILENO) != 1},
        std::cout, std::cerr);
}
