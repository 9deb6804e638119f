// A TOML text changed in a few of its lines: every other line, comments and their order stay as they are,
// byte for byte. It knows no meaning: whoever changes a file so reads it again and looks.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace pelage::io {

class toml_edit {
  public:
    explicit toml_edit(std::string_view text);

    /// The value of a key above the first heading, as it is written; empty if there is none.
    [[nodiscard]] std::string value_of(std::string_view key) const;
    /// Puts `value` (as it is written) in place of what the key has, or writes the line below the others
    /// above the first heading.
    void set(std::string_view key, const std::string& value);
    /// Takes the key away, with the line it is on.
    void remove(std::string_view key);
    /// Puts `block` (headings and all, or nothing) in place of every table of that name, however it was
    /// written; comments on lines of their own stay. Without one the block goes to the end.
    void replace_tables(std::string_view name, const std::string& block);

    [[nodiscard]] std::string text() const;

  private:
    enum class kind { other, heading, pair };
    struct item {
        kind what = kind::other;
        std::string text;        ///< whole lines
        std::string name;        ///< of a heading or key
        std::string section;     ///< the heading it is under; empty: none
        std::size_t from = 0;    ///< of a pair: where in `text` its value begins
        std::size_t length = 0;  ///< of the value
    };

    void split(std::string_view text);
    [[nodiscard]] item* top(std::string_view key);
    [[nodiscard]] bool of_table(const item& i, std::string_view name) const;

    std::vector<item> items_;
    std::string end_ = "\n";  ///< as the text ends its lines
};

}  // namespace pelage::io
