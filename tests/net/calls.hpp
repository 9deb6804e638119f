// What the library calls of the net draw on, and how a line of what one gave is written.
#pragma once

#include <cstdint>
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

/// Where lines go that are only summed; null: to standard output.
inline std::string* summed_up = nullptr;

/// Sums the lines that are written while it lives, and writes how many they were and their sum (FNV-1a, 64 bits).
class summed {
  public:
    static inline bool whole = false;  ///< writes the lines themselves, too
    static inline std::string
        only{};  ///< of all that is drawn by chance this alone; empty: everything

    explicit summed(std::string what) : what_(std::move(what)) { summed_up = &text_; }
    summed(const summed&) = delete;
    summed& operator=(const summed&) = delete;
    /// Whether the group is to be written; what isn't writes no sum either.
    [[nodiscard]] bool wanted() const { return only.empty() || only == what_; }
    ~summed() {
        summed_up = nullptr;
        if (!wanted()) {
            return;
        }
        std::uint64_t sum = 14'695'981'039'346'656'037U;
        long lines = 0;
        for (const char c : text_) {
            sum = (sum ^ static_cast<unsigned char>(c)) * 1'099'511'628'211U;
            lines += c == '\n' ? 1 : 0;
        }
        std::printf("%s%s %ld lines %016llx\n", whole ? text_.c_str() : "", what_.c_str(), lines,
                    static_cast<unsigned long long>(sum));
    }

  private:
    std::string what_;
    std::string text_;
};

/// One line: the call and what it gave.
class line {
  public:
    explicit line(std::string call) : text_(std::move(call)) {}
    line(const line&) = delete;
    line& operator=(const line&) = delete;
    ~line() {
        if (summed_up != nullptr) {
            *summed_up += text_ + "\n";
        } else {
            std::puts(text_.c_str());
        }
    }

    line& operator<<(double v) {
        char buffer[32];
        std::snprintf(buffer, sizeof buffer, " %.6g", v);
        text_ += buffer;
        return *this;
    }
    /// To nine digits: what is integrated numerically holds so many on every machine.
    line& exact(double v) {
        char buffer[32];
        std::snprintf(buffer, sizeof buffer, " %.9g", v);
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
/// What is drawn by chance, in calls_by_chance.cpp.
void calls_by_chance();

}  // namespace net
