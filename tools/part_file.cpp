#include "part_file.hpp"

#include <array>
#include <cerrno>
#include <csignal>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <pelage/base/error.hpp>
#include <pelage/data/disk_reason.hpp>

namespace pelage::cli {

namespace {

namespace fs = std::filesystem;

/// The part being written, where a signal handler can see it; empty if there is none.
std::array<char, 4096> part_now{};
constexpr std::array<int, 4> endings{SIGINT, SIGTERM, SIGHUP, SIGQUIT};

/// Only what a signal handler may call.
extern "C" void remove_part(int signal) {
    if (part_now.front() != '\0') {
        (void)unlink(part_now.data());
    }
    (void)std::signal(signal, SIG_DFL);
    (void)raise(signal);
}

/// Removes the part at the end of its life, unless it was put in its place, and when a signal ends the
/// process before.
class part_guard {
  public:
    explicit part_guard(const std::string& part) : part_(part) {
        if (part.size() < part_now.size()) {
            std::copy(part.begin(), part.end(), part_now.begin());
            for (std::size_t i = 0; i < endings.size(); ++i) {
                before_[i] = std::signal(endings[i], remove_part);
                if (before_[i] == SIG_IGN) {  // as nohup asks
                    (void)std::signal(endings[i], SIG_IGN);
                }
            }
            armed_ = true;
        }
    }
    part_guard(const part_guard&) = delete;
    part_guard& operator=(const part_guard&) = delete;
    ~part_guard() {
        std::error_code ignored;
        if (!placed_) {
            fs::remove(part_, ignored);
        }
        if (armed_) {
            for (std::size_t i = 0; i < endings.size(); ++i) {
                (void)std::signal(endings[i], before_[i]);
            }
            part_now.fill('\0');
        }
    }
    void placed() { placed_ = true; }

  private:
    std::string part_;
    std::array<void (*)(int), endings.size()> before_{};
    bool armed_ = false;
    bool placed_ = false;
};

/// Makes a file beside `file` that nobody else has, with that mode. The name holds the process, so that
/// what others left behind is in nobody's way.
fs::path fresh_part(const std::string& path, const fs::path& file, mode_t mode) {
    for (int n = 0; n < 1000; ++n) {
        fs::path part = file;
        part += ".part" + std::to_string(getpid()) + "-" + std::to_string(n);
        const int made = open(part.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        if (made >= 0) {
            (void)close(made);
            return part;
        }
        if (errno != EEXIST) {
            cannot_write(path, io::disk_reason(errno));
        }
    }
    cannot_write(path, "a thousand files of that name are being written");
}

/// Where the file really is, and that it is one to write over.
fs::path place_of(const std::string& path) {
    std::error_code failed;
    fs::path file = path;
    if (fs::is_symlink(fs::symlink_status(file, failed))) {
        file = fs::canonical(path, failed);
        if (failed) {
            cannot_write(path, "the link leads nowhere");
        }
    }
    const fs::file_status is = fs::status(file, failed);
    if (fs::is_directory(is)) {
        cannot_write(path, "it is a folder");
    }
    if (fs::exists(is) && !fs::is_regular_file(is)) {
        cannot_write(path, "it is no ordinary file");
    }
    constexpr fs::perms any_write =
        fs::perms::owner_write | fs::perms::group_write | fs::perms::others_write;
    if (fs::exists(is) && (is.permissions() & any_write) == fs::perms::none) {
        cannot_write(path, "it is write-protected");
    }
    return file;
}

}  // namespace

void cannot_write(const std::string& path, const std::string& why) {
    throw error(errc::io, "cannot write \"" + path + "\": " + why);
}

void write_file(const std::string& path, const std::function<void(std::ostream&)>& write) {
    const fs::path file = place_of(path);
    struct stat is {};
    const bool there = stat(file.c_str(), &is) == 0;
    constexpr mode_t usual = 0666;  // less the umask
    const fs::path part = fresh_part(path, file, usual);
    part_guard guard(part.string());
    if (there) {
        (void)chmod(part.c_str(), is.st_mode & 07777U);
    }
    std::ofstream out(part, std::ios::binary);
    write(out);
    errno = 0;
    out.close();
    if (!out) {
        cannot_write(path, io::disk_reason(errno != 0 ? errno : ENOSPC));
    }
    std::error_code failed;
    fs::rename(part, file, failed);
    if (failed) {
        cannot_write(path, io::disk_reason(failed.value()));
    }
    guard.placed();
}

}  // namespace pelage::cli
