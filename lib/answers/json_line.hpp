// Private to lib: JSON in one line, written straight to its text. For answers by the hundred
// thousand, and for what others have in common with them; the rest is put together as values and written by
// the JSON library.
#pragma once

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <string>
#include <string_view>

namespace pelage::io {

/// Writes commas where they belong. Texts must be UTF-8; what isn't allowed in them is escaped.
class json_line {
  public:
    explicit json_line(std::string& out) : out_(out) {}

    json_line& begin(char bracket) {
        separate();
        out_ += bracket;
        comma_ = false;
        return *this;
    }
    json_line& end(char bracket) {
        out_ += bracket;
        comma_ = true;
        return *this;
    }
    /// `k` as it stands: keys are ours and need no escaping.
    json_line& key(std::string_view k) {
        if (k.size() > short_text) {
            separate();
            out_ += '"';
            out_ += k;
            out_ += "\":";
        } else {
            // in one piece: a roster's line has some three hundred keys
            std::array<char, short_text + 4> piece;
            char* end = opened(piece.data());
            end = std::copy(k.begin(), k.end(), end);
            *end++ = '"';
            *end++ = ':';
            out_.append(piece.data(), static_cast<std::size_t>(end - piece.data()));
        }
        comma_ = false;
        return *this;
    }
    json_line& text(std::string_view s) {
        if (short_and_plain(s)) {
            return *this;
        }
        separate();
        out_ += '"';
        std::size_t plain = 0;
        for (std::size_t i = 0; i < s.size(); ++i) {
            const char c = s[i];
            if (static_cast<unsigned char>(c) < 0x20U || c == '"' || c == '\\') {
                out_ += s.substr(plain, i - plain);
                escape(c);
                plain = i + 1;
            }
        }
        out_ += s.substr(plain);
        out_ += '"';
        comma_ = true;
        return *this;
    }
    json_line& whole(std::int64_t v) {
        separate();
        digits(v);
        comma_ = true;
        return *this;
    }
    /// `v` parts of which `parts` (10, 100, 1000) make one: 950 hundredths are 9.5, 900 are 9.0.
    json_line& decimal(std::int64_t v, std::int64_t parts) {
        separate();
        if (v < 0) {
            out_ += '-';
            v = -v;
        }
        digits(v / parts);
        std::int64_t rest = v % parts;
        out_ += rest == 0 ? ".0" : ".";
        for (std::int64_t place = parts / 10; rest != 0; place /= 10) {
            out_ += static_cast<char>('0' + rest / place);
            rest %= place;
        }
        comma_ = true;
        return *this;
    }
    json_line& truth(bool v) {
        separate();
        out_ += v ? "true" : "false";
        comma_ = true;
        return *this;
    }

  private:
    static constexpr std::size_t short_text = 60;

    /// A comma if there must be one, and the quote before a text.
    char* opened(char* to) const {
        *to = ',';
        to += comma_ ? 1 : 0;
        *to++ = '"';
        return to;
    }
    /// Writes a text that is short and needs no escaping; false if it isn't one.
    bool short_and_plain(std::string_view s) {
        if (s.size() > short_text) {
            return false;
        }
        std::array<char, short_text + 4> piece;
        char* end = opened(piece.data());
        for (const char c : s) {
            if (static_cast<unsigned char>(c) < 0x20U || c == '"' || c == '\\') {
                return false;
            }
            *end++ = c;
        }
        *end++ = '"';
        out_.append(piece.data(), static_cast<std::size_t>(end - piece.data()));
        comma_ = true;
        return true;
    }
    void separate() {
        if (comma_) {
            out_ += ',';
        }
    }
    void digits(std::int64_t v) {
        char buffer[20];
        const char* const end = std::to_chars(buffer, buffer + sizeof buffer, v).ptr;
        out_.append(buffer, static_cast<std::size_t>(end - buffer));
    }
    void escape(char c) {
        constexpr std::string_view hex = "0123456789abcdef";
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out_ += '\\';
            out_ += c;
        } else {
            out_ += "\\u00";
            out_ += hex[byte >> 4U];
            out_ += hex[byte & 15U];
        }
    }

    std::string& out_;
    bool comma_ = false;
};

}  // namespace pelage::io
