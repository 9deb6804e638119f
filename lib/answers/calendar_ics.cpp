// A calendar as iCalendar (RFC 5545): a whole day each, lines folded at 75 octets, CRLF.
#include <algorithm>
#include <cstdint>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/ics.hpp"

namespace pelage::io {

namespace {

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
    const std::string about = first + "About " + detail::whole_minutes(v.takes) + " min" + why(v) +
                              "." + (d.invented ? " An invented dog for trying things out." : "");
    return ics::whole_day({who_of(d) + "-visit-" + std::to_string(number), v.on,
                           who + ": " + std::string(name(v.what)), about},
                          today);
}

}  // namespace

std::string ics_of(const calendar& c, const calendar_request& r) {
    std::string out = ics::opening();
    std::size_t number = static_cast<std::size_t>(
        std::count_if(r.work.patient.visits.begin(), r.work.patient.visits.end(),
                      [&](const visit& v) { return v.on <= r.today; }));
    for (const calendar_visit& v : c.visits) {
        out += event_of(v, ++number, r.work.patient, r.today);
    }
    return out + ics::closing();
}

}  // namespace pelage::io
