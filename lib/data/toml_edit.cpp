#include "data/toml_edit.hpp"

#include <algorithm>

#include <pelage/base/length_text.hpp>

namespace pelage::io {

namespace {

constexpr std::string_view blanks = " \t\r";

std::string_view trimmed_line(std::string_view s) {
    return detail::trimmed(s.substr(0, s.find('\n')), blanks);
}

/// Past the text in quotes that begins at `at`.
std::size_t past_quotes(std::string_view s, std::size_t at) {
    const char quote = s[at];
    const std::string three(3, quote);
    const bool long_one = s.substr(at, 3) == three;
    std::size_t i = at + (long_one ? 3 : 1);
    while (i < s.size()) {
        if (s[i] == '\\' && quote == '"') {
            i += 2;
        } else if (long_one ? s.substr(i, 3) == three : s[i] == quote || s[i] == '\n') {
            return std::min(s.size(), i + (long_one ? 3 : 1));
        } else {
            ++i;
        }
    }
    return s.size();
}

std::size_t past_line(std::string_view s, std::size_t at) {
    const auto end = s.find('\n', at);
    return end == std::string_view::npos ? s.size() : end + 1;
}

/// Where the value that begins at `at` ends: at the end of its line or a comment, outside of brackets.
std::size_t past_value(std::string_view s, std::size_t at) {
    int open = 0;
    std::size_t i = at;
    while (i < s.size()) {
        const char c = s[i];
        if (c == '"' || c == '\'') {
            i = past_quotes(s, i);
            continue;
        }
        if (open == 0 && (c == '\n' || c == '#')) {
            break;
        }
        if (c == '#') {
            i = past_line(s, i);
            continue;
        }
        open += c == '[' || c == '{' ? 1 : c == ']' || c == '}' ? -1 : 0;
        ++i;
    }
    return i;
}

/// The name in a heading's brackets, with one dot and no blanks between its parts.
std::string heading_name(std::string_view line) {
    std::string out;
    for (const char c : line.substr(0, line.find(']'))) {
        if (c != '[' && blanks.find(c) == std::string_view::npos) {
            out += c;
        }
    }
    return out;
}

}  // namespace

toml_edit::toml_edit(std::string_view text) {
    if (text.find("\r\n") != std::string_view::npos) {
        end_ = "\r\n";
    }
    split(text);
}

void toml_edit::split(std::string_view text) {
    std::string section;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t line_end = past_line(text, at);
        const std::string_view line = trimmed_line(text.substr(at, line_end - at));
        item i;
        std::size_t end = line_end;
        const auto equals =
            line.empty() || line.front() == '#' ? std::string_view::npos : text.find('=', at);
        if (!line.empty() && line.front() == '[') {
            i.what = kind::heading;
            section = i.name = heading_name(line);
        } else if (equals < line_end) {
            i.what = kind::pair;
            i.name = detail::trimmed(text.substr(at, equals - at), blanks);
            const std::size_t from =
                std::min(text.find_first_not_of(blanks, equals + 1), text.size());
            const std::size_t value_end = past_value(text, from);
            const std::string_view value =
                detail::trimmed(text.substr(from, value_end - from), blanks);
            i.from = from - at;
            i.length = value.size();
            end = past_line(text, value_end);
        }
        i.section = section;
        i.text = text.substr(at, end - at);
        items_.push_back(std::move(i));
        at = end;
    }
    if (!items_.empty() && items_.back().text.back() != '\n') {
        items_.back().text += end_;
    }
}

toml_edit::item* toml_edit::top(std::string_view key) {
    const auto at = std::find_if(items_.begin(), items_.end(), [&](const item& i) {
        return i.what == kind::pair && i.section.empty() && i.name == key;
    });
    return at == items_.end() ? nullptr : &*at;
}

std::string toml_edit::value_of(std::string_view key) const {
    for (const item& i : items_) {
        if (i.what == kind::pair && i.section.empty() && i.name == key) {
            return i.text.substr(i.from, i.length);
        }
    }
    return {};
}

void toml_edit::set(std::string_view key, const std::string& value) {
    if (item* there = top(key)) {
        there->text.replace(there->from, there->length, value);
        there->length = value.size();
        return;
    }
    item line;
    line.what = kind::pair;
    line.name = key;
    line.text = line.name + " = ";
    line.from = line.text.size();
    line.length = value.size();
    line.text += value + end_;
    const auto last = std::find_if(items_.rbegin(), items_.rend(), [](const item& i) {
        return i.what == kind::pair && i.section.empty();
    });
    items_.insert(last.base(), std::move(line));
}

void toml_edit::remove(std::string_view key) {
    std::erase_if(items_, [&](const item& i) {
        return i.what == kind::pair && i.section.empty() && i.name == key;
    });
}

bool toml_edit::of_table(const item& i, std::string_view name) const {
    const auto begins = [&](const std::string& s) {
        return s == name || s.starts_with(std::string(name) + ".");
    };
    return begins(i.section) || (i.what == kind::pair && i.section.empty() && begins(i.name));
}

void toml_edit::replace_tables(std::string_view name, const std::string& block) {
    const auto first = std::find_if(items_.begin(), items_.end(), [&](const item& i) {
        return i.what == kind::heading && of_table(i, name);
    });
    item whole;
    whole.section = name;
    for (const char c : block) {
        whole.text += c == '\n' ? end_ : std::string(1, c);
    }
    const bool there = first != items_.end();
    auto mark = there ? first - items_.begin() : 0;
    std::vector<item> kept;
    for (std::size_t n = 0; n < items_.size(); ++n) {
        if (there && static_cast<std::ptrdiff_t>(n) == mark && !block.empty()) {
            kept.push_back(whole);
        }
        const item& i = items_[n];
        const bool other = i.what == kind::other;
        const bool blank_again = other && trimmed_line(i.text).empty() && !kept.empty() &&
                                 trimmed_line(kept.back().text).empty();
        if (!of_table(i, name) || (other && !blank_again)) {
            kept.push_back(i);
        }
    }
    if (!there && !block.empty()) {
        if (!kept.empty()) {
            whole.text = end_ + whole.text;
        }
        kept.push_back(whole);
    }
    items_ = std::move(kept);
}

std::string toml_edit::text() const {
    std::string out;
    for (const item& i : items_) {
        out += i.text;
    }
    return out;
}

}  // namespace pelage::io
