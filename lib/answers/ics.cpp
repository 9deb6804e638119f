#include "answers/ics.hpp"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <string_view>
#include <system_error>

#include <pelage/answers/calendar_file.hpp>

namespace pelage::io::ics {

namespace {

/// A later calendar has a higher SEQUENCE (RFC 5545, 3.8.7.4): the days since then and two digits for
/// those of one day.
constexpr date first_day{std::chrono::days{18262}};  // 2020-01-01
constexpr std::int64_t of_one_day = 100;

constexpr std::string_view sequence = "\r\nSEQUENCE:";

/// Calls `see` with the number of each SEQUENCE and where its digits begin and end.
template <class See>
void each_sequence(std::string_view calendar, See see) {
    for (std::size_t at = calendar.find(sequence); at != std::string_view::npos;
         at = calendar.find(sequence, at + 1)) {
        const std::size_t from = at + sequence.size();
        const std::size_t end = std::min(calendar.find('\r', from), calendar.size());
        std::int64_t n = 0;
        const auto read = std::from_chars(calendar.data() + from, calendar.data() + end, n);
        if (read.ec == std::errc() && read.ptr == calendar.data() + end) {
            see(n, from, end);
        }
    }
}

std::int64_t highest_of(std::string_view calendar) {
    std::int64_t most = -1;
    each_sequence(calendar,
                  [&](std::int64_t n, std::size_t, std::size_t) { most = std::max(most, n); });
    return most;
}

/// Every SEQUENCE as that number.
std::string numbered(std::string_view calendar, std::int64_t n) {
    std::string out;
    std::size_t done = 0;
    each_sequence(calendar, [&](std::int64_t, std::size_t from, std::size_t end) {
        out += std::string(calendar.substr(done, from - done)) + std::to_string(n);
        done = end;
    });
    return out + std::string(calendar.substr(done));
}

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
           content_line("SEQUENCE:" + std::to_string((today - first_day).count() * of_one_day)) +
           content_line("DTSTAMP:" + basic(today) + "T000000Z") +
           content_line("DTSTART;VALUE=DATE:" + basic(e.on)) +
           content_line("DTEND;VALUE=DATE:" + basic(e.on + std::chrono::days{1})) +
           content_line("SUMMARY:" + escaped(e.summary)) +
           content_line("DESCRIPTION:" + escaped(e.about)) + content_line("TRANSP:TRANSPARENT") +
           content_line("END:VEVENT");
}

}  // namespace pelage::io::ics

namespace pelage::io {

std::string in_place_of(std::string calendar, std::string_view before) {
    const std::int64_t was = ics::highest_of(before);
    if (!before.starts_with("BEGIN:VCALENDAR") || was < ics::highest_of(calendar)) {
        return calendar;
    }
    const std::string same = ics::numbered(calendar, was);
    return same == before ? same : ics::numbered(calendar, was + 1);
}

}  // namespace pelage::io
