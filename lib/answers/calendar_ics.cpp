// A calendar as iCalendar (RFC 5545): a whole day each, lines folded at 75 octets, CRLF.
#include <algorithm>
#include <cstdint>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>

namespace pelage::io {

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

std::string clock(due what) {
    switch (what) {
        case due::matting:
            return "the coat's length";
        case due::held:
            return "brushing out what is kept long";
        case due::tidy:
            return "face, feet and pads";
        case due::usual:
            return "the usual interval";
        case due::event:
            break;
    }
    return "the event";
}

std::string why(const calendar_visit& v) {
    std::string s;
    for (const due_clock& d : v.due) {
        if (d.what != due::event) {
            s +=
                "; " + clock(d.what) + (d.by < v.on ? " was due by " : " due by ") + in_words(d.by);
        }
    }
    if (v.fresh) {
        s += "; fresh for " + (v.fresh->name.empty() ? "" : v.fresh->name + " on ") +
             in_words(v.fresh->on);
    }
    return s;
}

/// FNV-1a, 64 bits: the same on every machine.
std::string short_of(const std::string& text) {
    std::uint64_t h = 0xCBF29CE484222325U;
    for (const char c : text) {
        h = (h ^ static_cast<unsigned char>(c)) * 0x100000001B3U;
    }
    std::string out;
    for (int i = 0; i < 16; ++i) {
        out.insert(out.begin(), "0123456789abcdef"[h >> (4U * static_cast<unsigned>(i)) & 15U]);
    }
    return out;
}

/// A dog's id, or what is known of one without a file.
std::string who_of(const dog& d) {
    if (!d.id.empty()) {
        return d.id;
    }
    std::string all = d.name + "|" + d.mix + "|" + d.style + "|" + std::string(name(d.size)) + "|" +
                      (d.coat ? std::string(name(*d.coat)) : "");
    for (const hair_now& h : d.now) {
        all += "|" + h.whom + " " + std::to_string(in_hundredths(h.is));
    }
    return "dog-" + short_of(all);
}

/// The appointment's own name however its day moves: how many visits of the dog came before it.
std::string event_of(const calendar_visit& v, std::size_t number, const dog& d, const date& today) {
    const std::string who = d.name.empty() ? "Dog" : d.name;
    const std::string first =
        d.alerts.empty() ? "" : "ALERT: " + joined(titles(d.alerts), "; ") + ". ";
    const std::string about = first + "About " + detail::fixed(in_minutes(v.takes), 0) + " min" +
                              why(v) + "." +
                              (d.invented ? " An invented dog for trying things out." : "");
    return content_line("BEGIN:VEVENT") +
           content_line("UID:" + who_of(d) + "-visit-" + std::to_string(number) + "@pelage") +
           content_line("SEQUENCE:" + std::to_string((today - first_day).count())) +
           content_line("DTSTAMP:" + basic(today) + "T000000Z") +
           content_line("DTSTART;VALUE=DATE:" + basic(v.on)) +
           content_line("DTEND;VALUE=DATE:" + basic(v.on + std::chrono::days{1})) +
           content_line("SUMMARY:" + escaped(who + ": " + std::string(name(v.what)))) +
           content_line("DESCRIPTION:" + escaped(about)) + content_line("TRANSP:TRANSPARENT") +
           content_line("END:VEVENT");
}

}  // namespace

std::string ics_of(const calendar& c, const calendar_request& r) {
    std::string out = content_line("BEGIN:VCALENDAR") + content_line("VERSION:2.0") +
                      content_line("PRODID:-//pelage//calendar//EN") +
                      content_line("CALSCALE:GREGORIAN");
    std::size_t number = static_cast<std::size_t>(
        std::count_if(r.work.patient.visits.begin(), r.work.patient.visits.end(),
                      [&](const visit& v) { return v.on <= r.today; }));
    for (const calendar_visit& v : c.visits) {
        out += event_of(v, ++number, r.work.patient, r.today);
    }
    return out + content_line("END:VCALENDAR");
}

}  // namespace pelage::io
