// A document as text in columns of a terminal.
#include <cmath>

#include <pelage/answers/document.hpp>

#include "answers/document_cells.hpp"
#include "answers/layout.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

template <class... F>
struct one_for_each : F... {
    using F::operator()...;
};

/// A table too wide for the screen: a row a paragraph, each cell behind what heads its column.
std::string row_by_row(const table& t, std::size_t width) {
    std::string out;
    for (const auto& row : t.rows) {
        std::string text;
        for (std::size_t i = 0; i < row.size(); ++i) {
            const bool headed = i > 0 && i < t.head.size() && !t.head[i].empty();
            if (!row[i].empty()) {
                text += (text.empty() ? "" : "; ") + (headed ? t.head[i] + " " : "") + row[i];
            }
        }
        out += wrapped("  ", text, 4, width);
    }
    return out;
}

std::string laid_out(const typed_table& t, length_unit u, std::size_t width) {
    if (t.narrow) {
        std::string lines;
        for (const auto& row : t.rows) {
            std::string text;
            for (std::size_t i = 0; i < row.size(); ++i) {
                text += (i == 0 ? "" : i == 1 ? ": " : "; ") + shown(row[i], u);
            }
            lines += wrapped("  ", text, 4, width);
        }
        return lines;
    }
    table out;
    out.head = t.head;
    out.numbers = t.numbers;
    for (const auto& row : t.rows) {
        std::vector<std::string>& to = out.rows.emplace_back();
        for (const cell& c : row) {
            to.push_back(shown(c, u));
        }
    }
    constexpr std::size_t usual = 80;
    return width >= usual || fits(out, width) ? laid_out(out, width) : row_by_row(out, width);
}

std::string text_of(const section& s, length_unit u, std::size_t width) {
    std::string out = s.heading.empty() ? "" : wrapped("", s.heading, 0, width);
    int step = 0;
    for (const auto& block : s.blocks) {
        if (const auto* l = std::get_if<line>(&block)) {
            const std::string lead =
                l->as == line_as::step && l->lead.empty() ? std::to_string(++step) + ". " : l->lead;
            const std::string first = std::string(l->indent, ' ') + lead;
            out += l->as == line_as::copied ? first + l->text + "\n"
                                            : wrapped(first, l->text, l->hang, width);
        } else if (const auto* t = std::get_if<typed_table>(&block);
                   t != nullptr && t->whom != shown_to::programs) {
            out += laid_out(*t, u, width);
        }
    }
    return out;
}

}  // namespace

std::string shown(const cell& c, length_unit u) {
    if (!c.said.empty()) {
        return c.said;
    }
    return std::visit(
        one_for_each{
            [](std::monostate) { return std::string{}; },
            [](const std::string& s) { return s; },
            [](std::int64_t n) { return std::to_string(n); },
            [u](const length& l) { return show(l, u); },
            [u](const finished& f) { return show(f, u); },
            [](const work& w) { return detail::fixed(in_minutes(w), 0) + " min"; },
            [](const days& d) {
                return is_never(d) ? "never" : detail::fixed(std::floor(in_days(d)), 0) + " days";
            },
            [](const date& d) { return iso(d); },
            [](const percentage& s) {
                const std::int64_t tenths = s.whole == 0 ? 0 : s.part * 1000 / s.whole;
                return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " %";
            },
            [](const likelihood& l) { return odds(l.p); },
        },
        c.value);
}

std::string text_of(const document& d, length_unit u, std::size_t width) {
    std::string out = d.titled ? wrapped("", d.title, 2, width) : "";
    for (const section& s : d.sections) {
        const std::string text = text_of(s, u, width);
        out += s.apart && !out.empty() && !text.empty() ? "\n" + text : text;
    }
    if (d.sign) {
        out += "\n  Name ______________________  Date ____________  Signed __________________\n";
    }
    return d.foot.empty() ? out : out + "\n" + wrapped("", d.foot, 0, width);
}

}  // namespace pelage::io
