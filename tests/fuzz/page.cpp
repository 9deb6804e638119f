// Documents made of any bytes: what is written of them fits its width, is whole as a page and comes back as a table.
#include <algorithm>
#include <array>
#include <exception>
#include <iostream>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/answers/document.hpp>

#include "answers/layout.hpp"
#include "fuzz/bytes.hpp"
#include "fuzz/targets.hpp"

using namespace pelage;

namespace fuzz {

namespace {

/// A few words of letters and of what a page, a table or a terminal could take for more; no word is longer than a
/// line.
std::string words_of(bytes& b) {
    constexpr std::array<std::string_view, 16> parts{
        "a", "comb", "<b>", "&amp;",  "\"",     "'",       "=1+1",     "-",
        "@", ",",    "; ",  "\u00bd", "\u72ac", "e\u0301", "</title>", "]]>"};
    std::string out;
    for (unsigned n = b.take(12); n > 0; --n) {
        for (unsigned k = 1 + b.take(3); k > 0; --k) {
            out += parts[b.take(static_cast<unsigned>(parts.size()))];
        }
        out += n > 1 ? " " : "";
    }
    return out;
}

io::typed_table table_of(bytes& b) {
    io::typed_table t;
    const unsigned columns = 1 + b.take(5);
    for (unsigned c = 0; c < columns; ++c) {
        t.head.push_back("h" + std::to_string(c));
        t.numbers.push_back(b.take(3) == 0);
    }
    for (unsigned r = b.take(6); r > 0; --r) {
        auto& row = t.rows.emplace_back();
        for (unsigned c = 0; c < columns; ++c) {
            row.push_back(t.numbers[c] || b.take(4) == 0
                              ? io::cell(static_cast<std::int64_t>(b.take()))
                              : io::cell(words_of(b)));
        }
    }
    t.narrow = b.take(6) == 0;
    return t;
}

io::document document_of(bytes& b) {
    io::document d;
    d.title = words_of(b);
    d.titled = b.take(2) == 0;
    d.sign = b.take(5) == 0;
    while (!b.ended()) {
        switch (b.take(4)) {
            case 0:
                d.open(words_of(b), b.take(2) == 0);
                break;
            case 1:
                d.show(table_of(b));
                break;
            default: {
                const auto as = static_cast<io::line_as>(b.take(11));
                if (as != io::line_as::copied) {  // which is never broken
                    d.add({as, words_of(b), b.take(3) == 0 ? "Lead: " : "", b.take(5), b.take(9)});
                }
            }
        }
    }
    return d;
}

/// Ends the program with what doesn't hold.
void must(bool holds, const std::string& what) {
    if (!holds) {
        std::cerr << what << '\n';
        std::terminate();
    }
}

/// Every element that begins ends, in the order of its beginning.
void whole(const std::string& page) {
    static const std::set<std::string, std::less<>> alone{"meta", "br",  "hr",  "img",     "input",
                                                          "link", "col", "wbr", "!doctype"};
    std::vector<std::string> open;
    for (std::size_t at = page.find('<'); at != std::string::npos; at = page.find('<', at)) {
        const std::size_t end = page.find('>', at);
        must(end != std::string::npos, "an element has no end");
        const bool ends = page[at + 1] == '/';
        std::size_t stop = page.find_first_of(" \n/>", at + (ends ? 2 : 1));
        std::string name = page.substr(at + (ends ? 2 : 1), stop - at - (ends ? 2 : 1));
        std::transform(name.begin(), name.end(), name.begin(),
                       [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
        if (ends) {
            must(!open.empty() && open.back() == name, "what ends hasn't begun: " + name);
            open.pop_back();
        } else if (alone.count(name) == 0 && page[end - 1] != '/') {
            open.push_back(name);
        }
        at = end;
        if (!ends && name == "style") {
            at = page.find("</style", at);
            must(at != std::string::npos, "a style has no end");
        }
    }
    must(open.empty(), "an element doesn't end");
}

/// The cells of RFC 4180, line by line.
std::vector<std::vector<std::string>> cells_of(const std::string& csv) {
    std::vector<std::vector<std::string>> out(1);
    out.back().emplace_back();
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char c = csv[i];
        std::string& cell = out.back().back();
        if (quoted) {
            const bool twice = c == '"' && i + 1 < csv.size() && csv[i + 1] == '"';
            quoted = c != '"' || twice;
            i += twice ? 1 : 0;
            cell += quoted ? std::string(1, c) : "";
        } else if (c == '"') {
            must(cell.empty(), "a quote in a cell: " + cell);
            quoted = true;
        } else if (c == ',') {
            out.back().emplace_back();
        } else if (c == '\n') {
            out.emplace_back();
            out.back().emplace_back();
        } else if (c != '\r') {
            cell += c;
        }
    }
    must(!quoted, "a quote has no end");
    return out;
}

}  // namespace

void page(const std::string& text) {
    bytes b(text);
    const std::size_t width = 32 + b.take(89);
    const io::document d = document_of(b);
    [&]() noexcept {
        const std::string out = io::text_of(d, length_unit::mm, width);
        for (std::size_t at = 0; at < out.size();) {
            const std::size_t end = std::min(out.find('\n', at), out.size());
            must(io::columns(out.substr(at, end - at)) <= width,
                 "over " + std::to_string(width) + ": " + out.substr(at, end - at));
            at = end + 1;
        }
        whole(io::html_of(d));
        for (const auto& row : cells_of(io::csv_of(d))) {
            for (const std::string& cell : row) {
                // no spreadsheet takes it for a formula
                must(cell.empty() ||
                         std::string_view("=+@\t").find(cell.front()) == std::string_view::npos,
                     "a spreadsheet takes it for a formula: " + cell);
            }
        }
    }();
}

}  // namespace fuzz
