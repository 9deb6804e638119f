#include "data/toml.hpp"

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

#include <fmt/format.h>
#include <toml++/toml.h>

#include <pelage/base/length_text.hpp>

namespace pelage::io {

namespace {

spot begin_of(const toml::source_region& r) {
    // an implicit table or an empty file may have no position of its own
    return {std::max<unsigned>(1, r.begin.line), std::max<unsigned>(1, r.begin.column)};
}

node convert(const toml::node& from);

void convert_members(const toml::table& from, node& to) {
    // the parser keeps keys sorted by name; rules count in the order in which they are written
    std::vector<std::pair<spot, toml::table::const_iterator>> order;
    order.reserve(from.size());
    for (auto at = from.begin(); at != from.end(); ++at) {
        order.emplace_back(begin_of(at->first.source()), at);
    }
    std::sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
        return std::tie(a.first.line, a.first.column) < std::tie(b.first.line, b.first.column);
    });
    to.members.reserve(from.size());
    for (const auto& [where, at] : order) {
        to.members.push_back({std::string(at->first.str()), where, convert(at->second)});
    }
}

void convert_day(const toml::date& d, node& to) {
    to.kind = node_kind::day;
    to.day =
        date{std::chrono::year{d.year} / std::chrono::month{d.month} / std::chrono::day{d.day}};
}

node convert(const toml::node& from) {
    node to;
    to.at = begin_of(from.source());
    if (const auto* table = from.as_table()) {
        convert_members(*table, to);
    } else if (const auto* list = from.as_array()) {
        to.kind = node_kind::list;
        to.items.reserve(list->size());
        for (const toml::node& item : *list) {
            to.items.push_back(convert(item));
        }
    } else if (const auto* text = from.as_string()) {
        to.kind = node_kind::text;
        to.text = text->get();
    } else if (const auto* whole = from.as_integer()) {
        to.kind = node_kind::whole;
        to.whole = whole->get();
    } else if (const auto* real = from.as_floating_point()) {
        to.kind = node_kind::real;
        to.real = real->get();
    } else if (const auto* truth = from.as_boolean()) {
        to.kind = node_kind::truth;
        to.truth = truth->get();
    } else if (const auto* day = from.as_date()) {
        convert_day(day->get(), to);
    } else {
        to.kind = node_kind::other;
        to.text = from.is_time() ? "a time of day" : "a date with a time";
    }
    return to;
}

constexpr int deepest_nest = 16;

/// Follows a text through its strings and comments and counts how deep keys and brackets nest. Exact
/// as far as the text is TOML, and the parser reads no further than that.
class depth_check {
  public:
    explicit depth_check(std::string_view text) : text_(text) {}

    /// The index at which the nesting gets too deep; nothing if it doesn't.
    std::optional<std::size_t> run() {
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (c == '"' || c == '\'') {
                skip_string(c);
            } else if (c == '#') {
                at_ = std::min(text_.find('\n', at_), text_.size());
            } else {
                count(c);
                if (dots_ > deepest_nest || brackets_ > deepest_nest) {
                    return at_;
                }
                ++at_;
            }
        }
        return std::nullopt;
    }

  private:
    void count(char c) {
        switch (c) {
            case '.':
                ++dots_;
                break;
            case '[':
            case '{':
                ++brackets_;
                dots_ = 0;
                break;
            case ']':
            case '}':
                brackets_ = std::max(0, brackets_ - 1);
                dots_ = 0;
                break;
            case '=':
            case ',':
            case '\n':
                dots_ = 0;
                break;
            default:
                break;
        }
    }

    [[nodiscard]] bool is_at(std::string_view mark) const {
        return text_.substr(at_, mark.size()) == mark;
    }

    void skip_string(char quote) {
        const std::string three(3, quote);
        const bool lines = is_at(three);
        const std::string_view end = std::string_view(three).substr(0, lines ? 3 : 1);
        at_ += end.size();
        while (at_ < text_.size() && !(text_[at_] == quote && is_at(end)) &&
               (lines || text_[at_] != '\n')) {
            at_ += text_[at_] == '\\' && quote == '"' ? 2 : 1;
        }
        at_ += end.size();
        // one or two quotes may stand right before the closing three
        for (int more = 0; lines && more < 2 && at_ < text_.size() && text_[at_] == quote; ++more) {
            ++at_;
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    int dots_ = 0;
    int brackets_ = 0;
};

spot position_of(std::string_view text, std::size_t at) {
    const std::string_view before = text.substr(0, at);
    const auto line = std::count(before.begin(), before.end(), '\n');
    const auto start = line == 0 ? 0 : before.rfind('\n') + 1;
    return {static_cast<unsigned>(line) + 1,
            static_cast<unsigned>(characters(before.substr(start))) + 1};
}

bool is_utf16(std::string_view text) {
    const auto starts = [&](std::string_view mark) { return text.substr(0, 2) == mark; };
    return starts("\xFF\xFE") || starts("\xFE\xFF") ||
           (text.size() > 3 && text[0] != '\0' && text[1] == '\0' && text[3] == '\0');
}

std::string_view line_of(std::string_view text, unsigned number) {
    for (unsigned n = 1; n < number && !text.empty(); ++n) {
        text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
    }
    return text.substr(0, text.find('\n'));
}

constexpr std::string_view line_blanks = " \t\r";

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// "10.11.2026", "10/11/2026"
bool is_day_of_some_kind(std::string_view s) {
    return s.size() >= 6 && s.find_first_not_of("0123456789./-") == std::string_view::npos &&
           s.find_first_of("./-") != s.find_last_of("./-");
}

/// What a value without quotes was to be.
std::string right_value(std::string_view key, std::string_view value) {
    constexpr std::array<std::string_view, 8> truths{"yes", "no",   "on",    "off",
                                                     "Yes", "True", "False", "No"};
    if (std::find(truths.begin(), truths.end(), value) != truths.end()) {
        return "write true or false, without quotes";
    }
    if (is_day_of_some_kind(value)) {
        return "a day stands year first: write it like " + std::string(key) + " = 2026-11-25";
    }
    if (!value.empty() && is_letter(value.front())) {
        return "put text in straight quotes: " + escaped(key, 40) + " = \"" +
               escaped(value.substr(0, value.find(" #")), 40) + "\"";
    }
    return {};
}

/// What people who don't know TOML most likely meant by a line; empty if it can't be told.
std::string hint_for(std::string_view line, std::string_view complaint) {
    for (const std::string_view curly :
         {"\xE2\x80\x9C", "\xE2\x80\x9D", "\xE2\x80\x9E", "\xE2\x80\x98", "\xE2\x80\x99"}) {
        if (line.find(curly) != std::string_view::npos &&
            line.find('"') == std::string_view::npos) {
            return "the quotes here are curly ones: write straight ones, \"";
        }
    }
    line = detail::trimmed(line, line_blanks);
    if (line.starts_with("//")) {
        return "a comment begins with #";
    }
    if (complaint.find("cannot redefine") != std::string_view::npos &&
        line.substr(0, line.find('=')).find("format") != std::string_view::npos) {
        return "format = 1 stands in a file once, and a file holds one dog, sheet or salon: put "
               "the "
               "second into a file of its own";
    }
    if (std::count(line.begin(), line.end(), '"') % 2 == 1) {
        return "a closing quote is missing in this line";
    }
    const auto sign = line.find('=');
    if (sign == std::string_view::npos) {
        return {};
    }
    const std::string_view key = detail::trimmed(line.substr(0, sign), line_blanks);
    if (key.find(' ') != std::string_view::npos && key.find('"') == std::string_view::npos) {
        return "put a name of several words in quotes: \"" + escaped(key, 40) + "\" = ...";
    }
    return right_value(key, detail::trimmed(line.substr(sign + 1), line_blanks));
}

/// What the library complains of, and the way out of it where the line itself tells none.
struct complaint {
    std::string_view theirs;
    const char* ours;
    const char* cure;
};
constexpr std::array<complaint, 8> complaints{{
    {"utf-8", "letters that aren't UTF-8", "save the file as UTF-8"},
    {"cannot redefine", "what stands in the file already", "write it once"},
    {"control characters", "a text that doesn't end, or a control character in it",
     "end it with a straight quote, and take out what can't be seen"},
    {"parsing date", "no such day", "write it like 2026-11-25"},
    {"parsing time", "no such time", "write it like 09:30"},
    {"floating-point", "a number no one can read", "write it like 9.5"},
    {"integer", "a number no one can read", "write it like 12"},
    {"", "a line that can't be read",
     "a line is a key, = and a value, and text stands in straight quotes"},
}};

const complaint& known_as(std::string_view theirs) {
    return *std::find_if(complaints.begin(), complaints.end(), [&](const complaint& c) {
        return theirs.find(c.theirs) != std::string_view::npos;
    });
}

std::string in_our_words(std::string_view theirs) {
    return known_as(theirs).ours;
}

std::string cure_for(std::string_view theirs) {
    return known_as(theirs).cure;
}

}  // namespace

std::optional<node> parse_toml(std::string_view text, faults& out) {
    if (is_utf16(text)) {
        out.add({1, 1}, errc::syntax,
                "this file is in UTF-16; found two bytes a letter; save it as UTF-8");
        return std::nullopt;
    }
    if (const auto deep = depth_check(text).run()) {
        out.add(position_of(text, *deep), errc::syntax,
                fmt::format("nested too deep; found more than {} levels; no file here needs more "
                            "than 4",
                            deepest_nest));
        return std::nullopt;
    }
    try {
        return convert(toml::parse(text, out.file()));
    } catch (const toml::parse_error& e) {
        const spot at = begin_of(e.source());
        const std::string hint = hint_for(line_of(text, at.line), e.description());
        out.add(at, errc::syntax,
                "not TOML: " + in_our_words(e.description()) + "; found \"" +
                    escaped(detail::trimmed(line_of(text, at.line), line_blanks), 60) + "\"; " +
                    (hint.empty() ? cure_for(e.description()) : hint) +
                    "; the rest of the file was not read");
    }
    return std::nullopt;
}

}  // namespace pelage::io
