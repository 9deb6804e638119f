#include "judges/process.hpp"

#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <system_error>

#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace judges {

namespace {

using steady = std::chrono::steady_clock;

void must(int failed, const char* what) {
    if (failed != 0) {
        throw std::system_error(failed, std::generic_category(), what);
    }
}

double seconds(const timeval& t) {
    return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) * 1e-6;
}

/// What the child is given: files for its output, and no signal blocked.
class orders {
  public:
    explicit orders(const std::filesystem::path& output) {
        must(posix_spawn_file_actions_init(&files_), "posix_spawn_file_actions_init");
        must(posix_spawnattr_init(&how_), "posix_spawnattr_init");
        constexpr int mode = 0644;
        must(posix_spawn_file_actions_addopen(&files_, 0, "/dev/null", O_RDONLY, 0), "stdin");
        must(posix_spawn_file_actions_addopen(&files_, 1, output.c_str(),
                                              O_WRONLY | O_CREAT | O_TRUNC, mode),
             "stdout");
        must(posix_spawn_file_actions_adddup2(&files_, 1, 2), "stderr");
        sigset_t none;
        sigemptyset(&none);
        must(posix_spawnattr_setsigmask(&how_, &none), "posix_spawnattr_setsigmask");
        must(posix_spawnattr_setflags(&how_, POSIX_SPAWN_SETSIGMASK), "posix_spawnattr_setflags");
    }
    ~orders() {
        posix_spawn_file_actions_destroy(&files_);
        posix_spawnattr_destroy(&how_);
    }
    orders(const orders&) = delete;
    orders& operator=(const orders&) = delete;

    /// The child's id, or -1 if there is no such program.
    [[nodiscard]] pid_t start(std::vector<std::string> words) const {
        std::vector<char*> arguments;
        for (std::string& w : words) {
            arguments.push_back(w.data());
        }
        arguments.push_back(nullptr);
        pid_t child = -1;
        const int failed =
            posix_spawnp(&child, arguments.front(), &files_, &how_, arguments.data(), environ);
        if (failed == ENOENT) {
            return -1;
        }
        must(failed, "posix_spawnp");
        return child;
    }

  private:
    posix_spawn_file_actions_t files_{};
    posix_spawnattr_t how_{};
};

/// Holds the signal that a child has ended, so that it can be waited for with a limit.
class children_held {
  public:
    children_held() {
        sigemptyset(&child_);
        sigaddset(&child_, SIGCHLD);
        sigprocmask(SIG_BLOCK, &child_, &before_);
    }
    ~children_held() { sigprocmask(SIG_SETMASK, &before_, nullptr); }
    children_held(const children_held&) = delete;
    children_held& operator=(const children_held&) = delete;

    void wait(std::chrono::nanoseconds most) const {
        timespec t{};
        t.tv_sec = std::chrono::duration_cast<std::chrono::seconds>(most).count();
        t.tv_nsec = (most - std::chrono::seconds(t.tv_sec)).count();
        sigtimedwait(&child_, nullptr, &t);
    }

  private:
    sigset_t child_{};
    sigset_t before_{};
};

}  // namespace

scratch::scratch() {
    std::string name = (std::filesystem::temp_directory_path() / "pelage-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) {
        throw std::system_error(errno, std::generic_category(), "mkdtemp");
    }
    path_ = name;
}

scratch::~scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

ended run(const std::vector<std::string>& words, const std::filesystem::path& output,
          double most_seconds) {
    const children_held held;
    const orders given(output);
    const stopwatch clock;
    const auto limit = steady::now() + std::chrono::duration_cast<steady::duration>(
                                           std::chrono::duration<double>(most_seconds));
    const pid_t child = given.start(words);
    ended e;
    if (child < 0) {
        e.in_time = true;
        e.status = 127;
        return e;
    }
    int status = 0;
    rusage used{};
    e.in_time = true;
    while (wait4(child, &status, WNOHANG, &used) == 0) {
        const auto left = limit - steady::now();
        if (left <= left.zero()) {
            e.in_time = false;
            kill(child, SIGKILL);
            wait4(child, &status, 0, &used);
            break;
        }
        held.wait(left);
    }
    e.spent = {clock.read().wall, seconds(used.ru_utime) + seconds(used.ru_stime)};
    e.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return e;
}

}  // namespace judges
