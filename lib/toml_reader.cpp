#include "toml_reader.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include <fmt/format.h>
#include <toml++/toml.h>

namespace pelage::io {

namespace {

spot begin_of(const toml::source_region& r) {
    // an implicit table or an empty file may have no position of its own
    return {std::max<unsigned>(1, r.begin.line), std::max<unsigned>(1, r.begin.column)};
}

node convert(const toml::node& from);

void convert_members(const toml::table& from, node& to) {
    to.members.reserve(from.size());
    for (auto&& [key, value] : from) {
        to.members.push_back({std::string(key.str()), begin_of(key.source()), convert(value)});
    }
    // the parser keeps keys sorted by name; rules count in the order in which they are written
    std::sort(to.members.begin(), to.members.end(), [](const member& a, const member& b) {
        return std::tie(a.at.line, a.at.column) < std::tie(b.at.line, b.at.column);
    });
}

void convert_day(const toml::date& d, node& to) {
    to.kind = node_kind::day;
    to.day = date{std::chrono::year{d.year} / std::chrono::month{d.month} /
                  std::chrono::day{d.day}};
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

constexpr int deepest = 16;

/// Follows a text through its strings and comments and counts how deep keys and brackets nest. Exact
/// as far as the text is TOML, and the parser reads no further than that.
class depth_check {
  public:
    explicit depth_check(std::string_view text) : text_(text) {}

    /// Where the nesting gets too deep; nothing if it doesn't.
    std::optional<spot> run() {
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (c == '"' || c == '\'') {
                skip_string(c);
            } else if (c == '#') {
                skip_to(text_.find('\n', at_));
            } else {
                count(c);
                step();
            }
            if (dots_ > deepest || brackets_ > deepest) {
                return here_;
            }
        }
        return std::nullopt;
    }

  private:
    void count(char c) {
        if (c == '.') {
            ++dots_;
        } else if (c == '[' || c == '{') {
            ++brackets_;
            dots_ = 0;
        } else if (c == ']' || c == '}') {
            brackets_ = std::max(0, brackets_ - 1);
            dots_ = 0;
        } else if (c == '=' || c == ',' || c == '\n') {
            dots_ = 0;
        }
    }

    void step() {
        if (at_ >= text_.size()) {
            return;
        }
        const auto c = static_cast<unsigned char>(text_[at_++]);
        if (c == '\n') {
            ++here_.line;
            here_.column = 1;
        } else if ((c & 0xC0U) != 0x80U) {  // the later bytes of a character have no column
            ++here_.column;
        }
    }

    void skip_to(std::size_t end) {
        while (at_ < std::min(end, text_.size())) {
            step();
        }
    }

    void skip_string(char quote) {
        const std::string three(3, quote);
        if (text_.substr(at_, 3) != three) {
            step();
            while (at_ < text_.size() && text_[at_] != quote && text_[at_] != '\n') {
                skip_to(at_ + (text_[at_] == '\\' && quote == '"' ? 2 : 1));
            }
            step();
            return;
        }
        skip_to(at_ + 3);
        while (at_ < text_.size() && text_.substr(at_, 3) != three) {
            skip_to(at_ + (text_[at_] == '\\' && quote == '"' ? 2 : 1));
        }
        skip_to(at_ + 3);
        for (int more = 0; more < 2 && at_ < text_.size() && text_[at_] == quote; ++more) {
            step();  // one or two quotes may stand right before the closing three
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    spot here_;
    int dots_ = 0;
    int brackets_ = 0;
};

}  // namespace

std::optional<node> parse_toml(std::string_view text, faults& out) {
    if (const auto deep = depth_check(text).run()) {
        out.add(*deep, errc::syntax,
                fmt::format("nested too deep; found more than {} levels; no file here needs more "
                            "than 4",
                            deepest));
        return std::nullopt;
    }
    try {
        return convert(toml::parse(text, out.file()));
    } catch (const toml::parse_error& e) {
        out.add(begin_of(e.source()), errc::syntax,
                "not TOML: " + escaped(e.description(), 200) +
                    "; the rest of the file was not read");
    }
    return std::nullopt;
}

}  // namespace pelage::io
