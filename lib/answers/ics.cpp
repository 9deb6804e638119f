#include "answers/ics.hpp"

#include <algorithm>

namespace pelage::io::ics {

namespace {

/// A later calendar has a higher SEQUENCE (RFC 5545, 3.8.7.4): days since then.
constexpr date first_day{std::chrono::days{18262}};  // 2020-01-01

/// YYYYMMDD (RFC 5545, 3.3.4).
std::string basic(const date& d) {
    std::string s = iso(d);
    s.erase(std::remove(s.begin(), s.end(), '-'), s.end());
    return s;
}

/// TEXT (RFC 5545, 3.3.11): backslash, semicolon, comma and line ends escaped; other control characters
/// are not allowed and go.
std::string escaped(const std::string& text) {
    std::string out;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '\\' || c == ';' || c == ',') {
            out += '\\';
            out += c;
        } else if (c == '\n') {
            out += "\\n";
        } else if (byte >= 0x20U && byte != 0x7FU) {
            out += c;
        }
    }
    return out;
}

/// A content line (RFC 5545, 3.1): at most 75 octets before each break, none inside a character.
std::string content_line(const std::string& text) {
    std::string out;
    std::size_t at = 0;
    std::size_t room = 75;
    while (text.size() - at > room) {
        std::size_t end = at + room;
        while (end > at + 1 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
            --end;
        }
        out += text.substr(at, end - at) + "\r\n ";
        at = end;
        room = 74;  // the blank takes one
    }
    return out + text.substr(at) + "\r\n";
}

}  // namespace

std::string opening() {
    return content_line("BEGIN:VCALENDAR") + content_line("VERSION:2.0") +
           content_line("PRODID:-//pelage//calendar//EN") + content_line("CALSCALE:GREGORIAN");
}

std::string closing() {
    return content_line("END:VCALENDAR");
}

std::string whole_day(const event& e, const date& today) {
    return content_line("BEGIN:VEVENT") + content_line("UID:" + e.id + "@pelage") +
           content_line("SEQUENCE:" + std::to_string((today - first_day).count())) +
           content_line("DTSTAMP:" + basic(today) + "T000000Z") +
           content_line("DTSTART;VALUE=DATE:" + basic(e.on)) +
           content_line("DTEND;VALUE=DATE:" + basic(e.on + std::chrono::days{1})) +
           content_line("SUMMARY:" + escaped(e.summary)) +
           content_line("DESCRIPTION:" + escaped(e.about)) + content_line("TRANSP:TRANSPARENT") +
           content_line("END:VEVENT");
}

}  // namespace pelage::io::ics
