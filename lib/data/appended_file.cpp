#include "data/appended_file.hpp"

#include <cerrno>
#include <chrono>
#include <thread>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <pelage/base/error.hpp>
#include <pelage/data/disk_reason.hpp>

#include "data/faults.hpp"

namespace pelage::io {

namespace {

constexpr off_t largest_record = 16'000'000;
constexpr mode_t usual = 0666;  // less the umask
constexpr std::chrono::milliseconds patience{10'000};
constexpr std::chrono::milliseconds reader_patience{1'000};

[[noreturn]] void fail(std::string_view what, const std::string& path, const std::string& reason) {
    throw error(errc::io, "can't " + std::string(what) + " " + shown(path) + ": " + reason);
}

/// A call that a signal may have interrupted, made again.
template <class Call>
auto patiently(Call call) {
    auto result = call();
    while (result < 0 && errno == EINTR) {
        result = call();
    }
    return result;
}

/// A descriptor that is closed at the end.
class closing {
  public:
    explicit closing(int file) : file_(file) {}
    closing(const closing&) = delete;
    closing& operator=(const closing&) = delete;
    ~closing() { (void)close(file_); }

  private:
    int file_;
};

struct stat status_of(int file, std::string_view what, const std::string& path) {
    struct stat is {};
    if (fstat(file, &is) != 0) {
        fail(what, path, disk_reason(errno));
    }
    if (!S_ISREG(is.st_mode)) {
        fail(what, path, S_ISDIR(is.st_mode) ? "it is a folder" : "it is no ordinary file");
    }
    return is;
}

/// Locks the whole file; whether it could be had in time. A system without such locks has no second
/// writer that would heed them.
bool lock(int file, short kind, std::chrono::milliseconds wait) {
    std::chrono::milliseconds waited{0};
    std::chrono::milliseconds pause{1};
    while (true) {
        struct flock what {};
        what.l_type = kind;
        what.l_whence = SEEK_SET;
        if (patiently([&] { return fcntl(file, F_OFD_SETLK, &what); }) == 0 ||
            (errno != EAGAIN && errno != EACCES)) {
            return true;
        }
        if (waited >= wait) {
            return false;
        }
        waited += pause;
        std::this_thread::sleep_for(pause);
        pause = std::min(2 * pause, std::chrono::milliseconds{50});
    }
}

std::string all_of(int file, std::string_view what, const std::string& path) {
    const off_t size = status_of(file, what, path).st_size;
    if (size > largest_record) {
        fail(what, path, "it is larger than 16 MB, and no record is");
    }
    std::string out(static_cast<std::size_t>(size), '\0');
    std::size_t at = 0;
    while (at < out.size()) {
        const ssize_t got = patiently(
            [&] { return pread(file, out.data() + at, out.size() - at, static_cast<off_t>(at)); });
        if (got < 0) {
            fail(what, path, disk_reason(errno));
        }
        if (got == 0) {
            break;
        }
        at += static_cast<std::size_t>(got);
    }
    out.resize(at);
    return out;
}

/// The name of a new file, or its going, is on disk only with its folder. The number of what went wrong,
/// or 0.
int sync_folder_of(const std::string& path) {
    const auto slash = path.rfind('/');
    const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
    const int dir =
        patiently([&] { return open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); });
    if (dir < 0) {
        return errno;
    }
    const closing at_end(dir);
    return patiently([&] { return fsync(dir); }) == 0 ? 0 : errno;
}

/// Writes all in one go. The number of what went wrong, or 0.
int write_all(int file, std::string_view bytes) {
    const ssize_t wrote = patiently([&] { return write(file, bytes.data(), bytes.size()); });
    return wrote < 0 ? errno : static_cast<std::size_t>(wrote) == bytes.size() ? 0 : ENOSPC;
}

/// Whether the name still leads to the open file: somebody may have put another in its place.
bool still_there(int file, const std::string& path) {
    struct stat open_one {};
    struct stat named {};
    return fstat(file, &open_one) == 0 && lstat(path.c_str(), &named) == 0 &&
           open_one.st_dev == named.st_dev && open_one.st_ino == named.st_ino;
}

}  // namespace

appended_file::appended_file(const std::string& path) : path_(path) {
    constexpr std::string_view what = "write to the record";
    constexpr int flags =
        O_RDWR | O_APPEND | O_CREAT | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK | O_NOCTTY;
    for (int tries = 0; tries < 100; ++tries) {
        file_ = patiently([&] { return open(path.c_str(), flags, usual); });
        if (file_ < 0) {
            fail(what, path, disk_reason(errno));
        }
        try {
            (void)status_of(file_, what, path);
            if (!lock(file_, F_WRLCK, patience)) {
                fail(what, path, "another program has held it for ten seconds; try again");
            }
        } catch (...) {
            (void)close(file_);
            throw;
        }
        if (still_there(file_, path)) {
            return;
        }
        (void)close(file_);
    }
    fail(what, path, "another file is put in its place again and again");
}

appended_file::~appended_file() {
    (void)close(file_);
}

std::string appended_file::bytes() const {
    return all_of(file_, "read the record", path_);
}

void appended_file::cut_to(std::size_t size) {
    if (patiently([&] { return ftruncate(file_, static_cast<off_t>(size)); }) != 0 ||
        patiently([&] { return fsync(file_); }) != 0) {
        fail("take a torn line out of the record", path_,
             disk_reason(errno) + "; nothing is recorded");
    }
}

void appended_file::take_back(std::size_t size, std::string_view what, int number) {
    const bool cut = patiently([&] { return ftruncate(file_, static_cast<off_t>(size)); }) == 0;
    (void)patiently([&] { return fsync(file_); });
    fail(what, path_,
         disk_reason(number) +
             (cut ? "; nothing is recorded"
                  : "; nor can what was begun be taken out again: look with --show "
                    "before you log it once more"));
}

void appended_file::append(std::string_view bytes) {
    const auto size = static_cast<std::size_t>(status_of(file_, "read the record", path_).st_size);
    if (const int wrong = write_all(file_, bytes); wrong != 0) {
        take_back(size, "write to the record", wrong);
    }
    if (patiently([&] { return fsync(file_); }) != 0) {
        take_back(size, "bring to disk the record", errno);
    }
    // always, since whoever made the file may have been stopped before this
    if (const int wrong = sync_folder_of(path_); wrong != 0) {
        take_back(size, "bring to disk the folder of the record", wrong);
    }
}

std::optional<std::string> read_ordinary_file(const std::string& path) {
    constexpr std::string_view what = "read the record";
    const int file = patiently([&] {
        return open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK | O_NOCTTY);
    });
    if (file < 0 && (errno == ENOENT || errno == ENOTDIR)) {
        return std::nullopt;
    }
    if (file < 0) {
        fail(what, path, disk_reason(errno));
    }
    const closing at_end(file);
    (void)status_of(file, what, path);
    (void)lock(file, F_RDLCK, reader_patience);  // who waits longer reads what there is
    return all_of(file, what, path);
}

void write_new_file(const std::string& path, std::string_view bytes) {
    constexpr std::string_view what = "set a torn line aside in";
    const int file = patiently([&] {
        return open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, usual);
    });
    if (file < 0) {
        fail(what, path, disk_reason(errno));
    }
    const closing at_end(file);
    int wrong = write_all(file, bytes);
    wrong = wrong == 0 && patiently([&] { return fsync(file); }) != 0 ? errno : wrong;
    wrong = wrong == 0 ? sync_folder_of(path) : wrong;
    if (wrong != 0) {
        (void)unlink(path.c_str());
        fail(what, path, disk_reason(wrong) + "; nothing is recorded");
    }
}

}  // namespace pelage::io
