// Private to lib: the list of what is wrong in one file, and texts of strangers made fit to print.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/base/error.hpp>

namespace pelage::io {

/// A position in a text; both count from 1, columns in characters.
struct spot {
    unsigned line = 1;
    unsigned column = 1;
    friend bool operator==(const spot&, const spot&) = default;
};

/// How a file is written, and so how what would be right is shown.
enum class notation { toml, json_text };

/// The faults of one file.
class faults {
  public:
    /// More than this in one file are not listed.
    static constexpr std::size_t most = 1000;

    explicit faults(std::string file, notation n = notation::toml)
        : file_(std::move(file)), how_(n) {}

    /// `text` reads: what is wrong; what was found; what would be right.
    void add(const spot& at, errc code, std::string text);
    /// The fault of a word that isn't one of `names`: with the nearest of them, or all if few.
    /// `what` says what is wrong: "unknown zone".
    void add_unknown(const spot& at, std::string_view what, std::string_view word,
                     const std::vector<std::string>& names);

    /// How a key is given a value that stands in quotes or brackets: `size = "small"`, and in JSON
    /// `"size": "small"`.
    [[nodiscard]] std::string setting(std::string_view key, std::string_view value) const;
    /// How a table is called: `[now]`.
    [[nodiscard]] std::string heading(std::string_view key) const;
    /// How a table (or, with `many`, a list of tables) is begun: `[now] with its keys below`.
    [[nodiscard]] std::string table(std::string_view path, std::string_view key, bool many) const;
    /// A day as it would be written.
    [[nodiscard]] std::string_view day() const;

    [[nodiscard]] const std::string& file() const { return file_; }
    [[nodiscard]] bool none() const { return all_.empty(); }
    [[nodiscard]] std::size_t count() const { return all_.size(); }
    /// Moves the faults to the end of `to`.
    void move_to(diagnostics& to);

  private:
    std::string file_;
    notation how_;
    diagnostics all_;
    std::size_t looked_up_ = 0;
};

/// `s` (UTF-8) with control characters and marks that turn the direction of writing escaped, cut
/// after `most` characters.
[[nodiscard]] std::string escaped(std::string_view s, std::size_t most);

/// `s` for a message: in quotes, escaped, cut after 60 characters.
[[nodiscard]] std::string shown(std::string_view s);

/// How many characters (code points) `s` has.
[[nodiscard]] std::size_t characters(std::string_view s);

/// Whether `s` holds a control character or a mark that turns the direction of writing; line breaks
/// and tabs are let through where `lines`.
[[nodiscard]] bool has_control(std::string_view s, bool lines);

}  // namespace pelage::io
