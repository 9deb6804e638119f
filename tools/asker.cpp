#include "asker.hpp"

#include <algorithm>
#include <istream>
#include <ostream>
#include <utility>

#include <pelage/base/error.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

#include "printable.hpp"

namespace pelage::cli {

namespace {

constexpr char enter = '\n';
constexpr char interrupt = '\x03';
constexpr char end_of_input = '\x04';
constexpr char clear_line = '\x15';
constexpr char escape = '\x1b';

bool control(char c) {
    return static_cast<unsigned char>(c) < 0x20U || c == 0x7F;
}

/// The key that takes a letter back, as terminals send it.
bool takes_back(char c) {
    return c == 0x7F || c == '\b';
}

std::string shown_key(char c) {
    return c == enter ? "Enter" : std::string(1, c);
}

/// The text without its last character, which may be of several bytes.
void take_back(std::string& text) {
    while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0x80U) {
        text.pop_back();
    }
    if (!text.empty()) {
        text.pop_back();
    }
}

/// What all of them begin with.
std::string common_beginning(const std::vector<std::string>& all) {
    std::string out = all.empty() ? "" : all.front();
    for (const std::string& one : all) {
        const auto differ = std::mismatch(out.begin(), out.end(), one.begin(), one.end());
        out.erase(differ.first, out.end());
    }
    return out;
}

}  // namespace

void asker::wants_key(bool key) {
    if (one_key_) {
        one_key_(key);
    }
}

void asker::say(const std::string& text) {
    out_ << printable(text) << "\n";
}

void asker::ended(bool by_q) {
    if (corrected_) {
        throw break_off{!by_q && !interrupted_};
    }
    throw by_q ? error(errc::refused, "ended by q; nothing is written")
               : error(errc::io, "the answers ended before the last question; nothing is written");
}

bool asker::leaves(char c) {
    interrupted_ = c == interrupt;
    return interrupted_ || c == end_of_input;
}

bool asker::next_key(char& c) {
    if (lines_) {
        if (rest_.empty() && !next_line(rest_)) {
            return false;
        }
        c = rest_.empty() ? enter : rest_.front();
        rest_.erase(0, 1);
        return true;
    }
    wants_key(true);
    bool got = static_cast<bool>(in_.get(c));
    while (got && c == escape) {
        skip_sequence();
        got = static_cast<bool>(in_.get(c));
    }
    wants_key(false);
    c = c == '\r' ? enter : c;
    return got && !leaves(c);
}

std::optional<char> asker::key_by_name(char c, std::string_view keys,
                                       const std::vector<std::string>& names) {
    std::string word(1, c);
    const auto begins = [&](const std::string& n) { return n.starts_with(word); };
    if (std::none_of(names.begin(), names.end(), begins)) {
        return std::nullopt;
    }
    while (lines_ ? !rest_.empty() : true) {
        if (!next_key(c) || c == enter) {
            break;
        }
        word += c;
    }
    const auto is = std::find(names.begin(), names.end(), word);
    if (is != names.end()) {
        return keys[static_cast<std::size_t>(is - names.begin())];
    }
    return std::count_if(names.begin(), names.end(), begins) == 1
               ? std::optional{keys[static_cast<std::size_t>(
                     std::find_if(names.begin(), names.end(), begins) - names.begin())]}
               : std::nullopt;
}

char asker::key(const std::string& question, std::string_view keys,
                const std::vector<std::string>& names) {
    while (true) {
        out_ << question << "? " << std::flush;
        char c = enter;
        if (!next_key(c)) {
            out_ << "\n";
            ended(false);
        }
        out_ << (control(c) ? "" : printable(std::string(1, c))) << "\n";
        if (keys.find(c) != std::string_view::npos) {
            return c;
        }
        if (const auto meant = key_by_name(c, keys, names)) {
            return *meant;
        }
        if (c == 'q') {
            ended(true);
        }
        if (corrected_ && (c == '<' || takes_back(c))) {
            throw step_back{};
        }
        rest_.clear();
        std::vector<std::string> all;
        for (const char k : keys) {
            all.push_back(shown_key(k));
        }
        out_ << "  one of: " << joined(all, " ") << "\n";
    }
}

bool asker::yes(const std::string& question) {
    if (lines_ && rest_.empty()) {
        out_ << question << " (y or n)? " << std::flush;
        if (!next_line(rest_)) {
            out_ << "\n";
            ended(false);
        }
        rest_ = rest_ == "yes" ? "y" : rest_ == "no" ? "n" : rest_;
        if (const char c = rest_.empty() ? enter : rest_.front(); c == 'y' || c == 'n') {
            rest_.erase(0, 1);
            out_ << c << "\n";
            return c == 'y';
        }
        out_ << "\n";
    }
    return key(question + " (y or n)", "yn") == 'y';
}

bool asker::next_line(std::string& text) {
    text.clear();
    if (!rest_.empty()) {
        text = std::exchange(rest_, {});
    } else if (!std::getline(in_, text)) {
        return false;
    }
    if (!text.empty() && text.back() == '\r') {
        text.pop_back();
    }
    text = std::string(detail::trimmed(text));
    return true;
}

/// An arrow or another key that sends several bytes: none of them is a letter or an answer.
void asker::skip_sequence() {
    if (in_.peek() != '[' && in_.peek() != 'O') {
        return;
    }
    char c = enter;
    in_.get(c);
    if (in_.peek() == '[') {  // a console's F1 to F5 begin with two
        in_.get(c);
    }
    constexpr char last_within = '?';  // what stands between is from the blank to here
    while (in_.get(c) && c >= ' ' && c <= last_within) {
    }
}

/// What fits, on a line of its own, and the question again.
void asker::show_fitting(const std::string& question, const std::string& text,
                         const std::vector<std::string>& fit) {
    constexpr std::size_t most = 20;
    std::vector<std::string> shown(
        fit.begin(), fit.begin() + static_cast<std::ptrdiff_t>(std::min(fit.size(), most)));
    if (fit.size() > most) {
        shown.push_back("and " + std::to_string(fit.size() - most) + " more");
    }
    out_ << "\n  " << (fit.empty() ? "nothing begins so" : joined(shown, ", ")) << "\n"
         << question << ": " << text;
}

/// Completes as far as all that fits is alike; shows it where that is no further.
void asker::complete(const std::string& question, std::string& text, const completion& begins) {
    const std::vector<std::string> fit = begins(text);
    const std::string longer = common_beginning(fit);
    if (longer.size() > text.size() && longer.starts_with(text)) {
        out_ << longer.substr(text.size());
        text = longer;
    } else if (fit.size() == 1) {
        out_ << std::string(text.size(), '\b') << longer;  // begun within the name
        text = longer;
    } else {
        show_fitting(question, text, fit);
    }
}

/// A key that isn't a letter; whether it was one.
bool asker::editing_key(char c, const std::string& question, std::string& text,
                        const completion& begins) {
    if (c == escape) {
        skip_sequence();
    } else if (c == clear_line) {
        for (; !text.empty(); take_back(text)) {
            out_ << "\b \b";
        }
    } else if (c == '\t' && begins) {
        complete(question, text, begins);
    } else if (takes_back(c)) {
        if (text.empty()) {
            throw step_back{};
        }
        take_back(text);
        out_ << "\b \b";
    } else {
        return control(c);
    }
    return true;
}

/// A line typed key by key; whether it was ended.
bool asker::typed_line(const std::string& question, std::string& text, const completion& begins,
                       const std::function<bool(const std::string&)>& at_once) {
    text.clear();
    for (char c = enter; in_.get(c) && !leaves(c); out_ << std::flush) {
        if (c == enter || c == '\r') {
            return true;
        }
        if (editing_key(c, question, text, begins)) {
            continue;
        }
        text += c;
        out_ << c;
        if (text == "<") {
            throw step_back{};
        }
        if (at_once && at_once(text)) {
            return true;
        }
    }
    return false;
}

bool asker::read_line(const std::string& question, std::string& text, const completion& begins,
                      const std::function<bool(const std::string&)>& at_once) {
    if (!corrected_ || lines_) {
        const bool got = next_line(text);
        constexpr std::size_t shown = 100;
        out_ << (lines_ && corrected_ ? printable(text, shown) + "\n" : "");
        return got;
    }
    wants_key(true);
    try {
        const bool got = typed_line(question, text, begins, at_once);
        wants_key(false);
        out_ << "\n";
        text = std::string(detail::trimmed(text));
        return got;
    } catch (const step_back&) {
        wants_key(false);
        out_ << "\n";
        throw;
    }
}

std::string asker::line(const std::string& question,
                        const std::function<std::string(const std::string&)>& fault,
                        const completion& begins,
                        const std::function<bool(const std::string&)>& at_once) {
    while (true) {
        out_ << question << ": " << std::flush;
        std::string text;
        if (!read_line(question, text, begins, at_once)) {
            out_ << "\n";
            ended(false);
        }
        if (corrected_ && text == "<") {
            throw step_back{};
        }
        if (corrected_ && text == "q") {
            ended(true);
        }
        const std::string wrong = !is_plain_line(text)
                                      ? "a line of plain text in UTF-8 is needed, without control "
                                        "characters, of 2000 at most"
                                  : fault ? fault(text)
                                          : std::string{};
        if (wrong.empty()) {
            return text;
        }
        out_ << "  " << printable(wrong) << "\n";
    }
}

}  // namespace pelage::cli
