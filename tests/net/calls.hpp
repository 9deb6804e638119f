// What the library calls of the net draw on, and how a line of what one gave is written.
#pragma once

#include <cstdio>
#include <optional>
#include <string>
#include <utility>

#include <pelage/base/date.hpp>
#include <pelage/base/units.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/trade/setup.hpp>
#include <pelage/trade/zone.hpp>

namespace net {

using namespace pelage;

inline const reference_data& known() {
    return io::reference();
}
inline const salon_files& demo() {
    return io::demo_salon();
}
inline const parameters& rules() {
    return demo().rules;
}
inline date day_of(const char* iso) {
    return parse_date(iso).value();
}
inline const date today = day_of("2026-11-25");

/// One line: the call and what it gave.
class line {
  public:
    explicit line(std::string call) : text_(std::move(call)) {}
    line(const line&) = delete;
    line& operator=(const line&) = delete;
    ~line() { std::puts(text_.c_str()); }

    line& operator<<(double v) {
        char buffer[32];
        std::snprintf(buffer, sizeof buffer, " %.6g", v);
        text_ += buffer;
        return *this;
    }
    line& operator<<(const char* id) { return *this << std::string(id); }
    line& operator<<(const std::string& id) {
        text_ += " " + (id.empty() ? "-" : id);
        return *this;
    }
    line& operator<<(const length& v) { return *this << in_mm(v); }
    line& operator<<(const days& v) { return *this << in_days(v); }
    line& operator<<(const work& v) { return *this << static_cast<double>(in_mmin(v)); }
    line& operator<<(const date& v) { return *this << iso(v); }
    line& operator<<(const finished& v) { return *this << v.low << v.best << v.high; }
    line& operator<<(const place& v) { return number(v.zone) << static_cast<double>(v.which); }
    line& operator<<(const setup& s) {
        number(s.kind);
        return s.kind != tool_kind::clip
                   ? *this
                   : (*this << s.tool.id << (s.over ? s.over->id : std::string())).number(s.way);
    }
    line& operator<<(const return_date& b) {
        return (*this << b.next_visit << b.even_odds << b.full_groom << b.fine.value_or(-1.0)
                      << static_cast<double>(b.by_brushing.size()))
            .number(b.reason);
    }
    template <class T>
    line& operator<<(const std::optional<T>& v) {
        return v ? *this << *v : *this << "-";
    }
    /// Of an enumerator, a count, a yes or no.
    template <class T>
    line& number(T v) {
        return *this << static_cast<double>(v);
    }

  private:
    std::string text_;
};

/// Rules, models, words and readers, in calls_models.cpp.
void calls_without_a_dog();

}  // namespace net
