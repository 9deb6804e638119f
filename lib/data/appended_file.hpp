// Private to lib: a file that several processes append to, and that loses nothing when one of them, or the
// machine, stops at any moment.
//
// Opening locks it against other writers until the object goes (an open file description's lock, which ends
// with the process however it ends). append() is one write() of all of it, then fsync() of the file and of
// its folder; where any of these fails the file is cut back to what it was, under the lock, and
// error(io) is thrown. All calls throw error(io) where the system says no.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace pelage::io {

class appended_file {
  public:
    /// Makes the file if there is none. Refuses links, and what is no ordinary file.
    explicit appended_file(const std::string& path);
    appended_file(const appended_file&) = delete;
    appended_file& operator=(const appended_file&) = delete;
    ~appended_file();

    [[nodiscard]] std::string bytes() const;
    /// Cuts it to its first bytes; on disk when it returns.
    void cut_to(std::size_t size);
    /// `bytes` at its end, on disk when it returns.
    void append(std::string_view bytes);

  private:
    [[noreturn]] void take_back(std::size_t size, std::string_view what, int number);

    std::string path_;
    int file_ = -1;
};

/// The bytes of an ordinary file, not while somebody writes to it; nothing if there is none. Throws
/// error(io) for links and whatever is no ordinary file, or larger than 16 MB.
[[nodiscard]] std::optional<std::string> read_ordinary_file(const std::string& path);

/// A new file with those bytes, on disk when it returns. Throws error(io) if there is one.
void write_new_file(const std::string& path, std::string_view bytes);

}  // namespace pelage::io
