// Loaded before libc: makes system calls on records fail, stop halfway or kill the process, so that a test
// can see what is left. FAILING="write:half-kill,fsync:EIO:2": which call, what happens, at which of them
// (the first). Calls on other files are left alone; fsync also counts on folders.
#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>

#include <dlfcn.h>
#include <sys/stat.h>
#include <unistd.h>

namespace {

template <class F>
F real(const char* name) {
    void* found = dlsym(RTLD_NEXT, name);
    F out{};
    std::memcpy(&out, &found, sizeof out);
    return out;
}

/// Whether the descriptor is a record, or a folder where `folders` count.
bool counts(int file, bool folders) {
    struct stat is {};
    if (fstat(file, &is) == 0 && S_ISDIR(is.st_mode)) {
        return folders;
    }
    char path[4096];
    const std::string name = "/proc/self/fd/" + std::to_string(file);
    const ssize_t n = readlink(name.c_str(), path, sizeof path);
    return n > 0 &&
           std::string(path, static_cast<std::size_t>(n)).find(".record.") != std::string::npos;
}

/// What is to happen at this call; empty: what always does.
std::string action_at(const char* call, int& calls) {
    const char* all = std::getenv("FAILING");
    std::string text = all == nullptr ? "" : all;
    ++calls;
    while (!text.empty()) {
        const std::string one = text.substr(0, text.find(','));
        text.erase(0, one.size() + 1);
        const std::size_t first = one.find(':');
        const std::size_t second = one.find(':', first + 1);
        const int nth = second == std::string::npos ? 1 : std::atoi(one.c_str() + second + 1);
        if (one.substr(0, first) == call && (nth == calls || nth == 0)) {
            return one.substr(first + 1, second - first - 1);
        }
    }
    return {};
}

[[noreturn]] void die() {
    (void)kill(getpid(), SIGKILL);
    std::abort();
}

/// Sets the error that the action names; whether it names one.
bool fails(const std::string& action) {
    errno = action == "ENOSPC" ? ENOSPC : action == "EIO" ? EIO : action == "EROFS" ? EROFS : 0;
    if (action == "kill") {
        die();
    }
    return errno != 0;
}

int simple(const std::string& action, int (*call)(int), int file) {
    if (fails(action)) {
        return -1;
    }
    const int result = call(file);
    if (action == "after-kill") {
        die();
    }
    return result;
}

}  // namespace

extern "C" {

ssize_t write(int file, const void* bytes, size_t size) {
    static const auto call = real<ssize_t (*)(int, const void*, size_t)>("write");
    static int calls = 0;
    const std::string action = counts(file, false) ? action_at("write", calls) : "";
    if (fails(action)) {
        return -1;
    }
    const bool half = action == "half" || action == "half-kill";
    const ssize_t wrote = call(file, bytes, half ? size / 2 : size);
    if (action == "half-kill" || action == "after-kill") {
        die();
    }
    return wrote;
}

int fsync(int file) {
    static const auto call = real<int (*)(int)>("fsync");
    static int calls = 0;
    return simple(counts(file, true) ? action_at("fsync", calls) : "", call, file);
}

int ftruncate(int file, off_t size) {
    static const auto call = real<int (*)(int, off_t)>("ftruncate");
    static int calls = 0;
    const std::string action = counts(file, false) ? action_at("ftruncate", calls) : "";
    if (fails(action)) {
        return -1;
    }
    const int result = call(file, size);
    if (action == "after-kill") {
        die();
    }
    return result;
}

int rename(const char* from, const char* to) {
    static const auto call = real<int (*)(const char*, const char*)>("rename");
    static int calls = 0;
    if (fails(action_at("rename", calls))) {
        return -1;
    }
    return call(from, to);
}

}  // extern "C"
