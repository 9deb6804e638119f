#include "progress.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace pelage::cli {

namespace {
constexpr std::chrono::milliseconds often{500};
constexpr const char* line_away = "\r\x1b[K";
}  // namespace

std::string progress_words(std::uint64_t lines, double seconds, std::uint64_t whole) {
    const double rate = static_cast<double>(lines) / seconds;
    std::string text = std::to_string(lines) + (lines == 1 ? " line, " : " lines, ") +
                       std::to_string(std::llround(rate)) + " a second";
    if (whole > lines && rate > 0.0) {
        text += ", " + std::to_string(std::llround(static_cast<double>(whole - lines) / rate)) +
                " s left";
    }
    return text;
}

told_lines::~told_lines() {
    if (told_) {
        err_ << line_away << std::flush;
    }
}

told_lines::int_type told_lines::overflow(int_type c) {
    if (traits_type::eq_int_type(c, traits_type::eof())) {
        return traits_type::not_eof(c);
    }
    const char one = traits_type::to_char_type(c);
    return xsputn(&one, 1) == 1 ? c : traits_type::eof();
}

std::streamsize told_lines::xsputn(const char* text, std::streamsize n) {
    lines_ += static_cast<std::uint64_t>(std::count(text, text + n, '\n'));
    tell();
    return to_.write(text, n) ? n : 0;
}

int told_lines::sync() {
    return to_.flush() ? 0 : -1;
}

void told_lines::tell() {
    const auto now = std::chrono::steady_clock::now();
    if (now - last_ >= often) {
        last_ = now;
        told_ = true;
        const double seconds = std::chrono::duration<double>(now - begun_).count();
        err_ << line_away << progress_words(lines_, seconds, whole_) << std::flush;
    }
}

told_steps::~told_steps() {
    if (told_) {
        err_ << line_away << std::flush;
    }
}

void told_steps::tell(const std::string& what) {
    const auto now = std::chrono::steady_clock::now();
    if (now - last_ < often) {
        return;
    }
    last_ = now;
    told_ = true;
    const double seconds = std::chrono::duration<double>(now - begun_).count();
    err_ << line_away << what << ", " << std::llround(seconds) << " s so far" << std::flush;
}

}  // namespace pelage::cli
