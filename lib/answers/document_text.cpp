// A document as text in columns of a terminal.
#include <array>
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

constexpr std::size_t least_bar = 10;  // columns in which a bar still tells something
constexpr std::size_t most_bar = 34;

std::string bar_text(const text_bar& b, std::size_t width) {
    const auto marks = [&](double share) {
        const auto n = static_cast<std::size_t>(std::lround(share * static_cast<double>(width)));
        return std::min(width, share > 0.0 ? std::max<std::size_t>(1, n) : n);
    };
    const std::size_t strong = marks(b.strong);
    return std::string(strong, '=') + std::string(std::max(strong, marks(b.light)) - strong, '-');
}

/// What is left of so many columns beside a table whose cells all stand on one line.
std::size_t room_beside(const table& t, std::size_t width) {
    std::size_t needs = t.indent;
    for (std::size_t i = 0; i < t.head.size(); ++i) {
        std::size_t widest = columns(t.head[i]);
        for (const auto& row : t.rows) {
            widest = std::max(widest, columns(row[i]));
        }
        needs += widest + 2;
    }
    return width > needs ? width - needs : 0;
}

/// Whether one row of it is chosen by a pen, told by its last cell.
bool to_tick(const table& t) {
    return t.head.back().empty() && !t.rows.empty() && t.rows.front().front().starts_with(tick_box);
}

/// Whether what a choice is would be a narrow column of many lines beside its figures.
bool too_narrow_to_tick(const table& t, std::size_t width) {
    constexpr std::size_t least = 20;
    table figures = t;
    for (auto& row : figures.rows) {
        row.back() = std::string(std::min(columns(row.back()), least), 'x');
    }
    return to_tick(t) && room_beside(figures, width) == 0;
}

/// A table too wide for the screen: a row a paragraph, each cell behind what heads its column.
std::string row_by_row(const table& t, const std::vector<text_bar>& bars, std::size_t width) {
    constexpr std::size_t indent = 4;
    std::string out;
    for (std::size_t r = 0; r < t.rows.size(); ++r) {
        const auto& row = t.rows[r];
        std::string text;
        const bool ticked = to_tick(t);  // what it is comes behind its box
        for (std::size_t i = 0; i < row.size() - (ticked ? 1 : 0); ++i) {
            const bool headed = i > 0 && i < t.head.size() && !t.head[i].empty();
            if (!row[i].empty()) {
                const bool first = text.empty() || text.ends_with(": ");
                text += (first ? "" : "; ") + (headed ? t.head[i] + " " : "") + row[i];
            }
            if (i == 0 && ticked) {
                text += " " + row.back() + ": ";
            }
        }
        out += wrapped("  ", text, indent, width);
        if (r < bars.size() && width >= indent + least_bar) {
            out += std::string(indent, ' ') + bar_text(bars[r], width - indent) + "\n";
        }
    }
    return out;
}

/// Bars before the last column, as long as there is room.
void add_bars(table& to, const typed_table& t, std::size_t width) {
    const std::size_t room = std::min(most_bar, room_beside(to, width));
    if (t.bars.empty() || room < std::max(least_bar, columns(t.bars_head))) {
        return;
    }
    const auto before_last = [](auto& all, auto one) { all.insert(all.end() - 1, std::move(one)); };
    before_last(to.head, t.bars_head);
    for (std::size_t i = 0; i < to.rows.size(); ++i) {
        before_last(to.rows[i], bar_text(t.bars[i], room));
    }
    if (!to.numbers.empty()) {
        to.numbers.insert(to.numbers.end() - 1, false);
    }
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
    if (fits(out, width) && !too_narrow_to_tick(out, width)) {
        add_bars(out, t, width);
        return laid_out(out, width);
    }
    return row_by_row(out, t.bars, width);
}

/// A box to tick that is as short as `room`, as it stands; empty of any other line.
std::string short_box(const line& l, std::size_t room) {
    const std::string text = l.lead + l.text;
    return l.as == line_as::box && l.lead.starts_with(tick_box) && columns(text) <= room
               ? text
               : std::string{};
}

/// Boxes to tick stand beside one another where the last line has room: `out` ends with a box, or nothing is added.
bool put_beside(std::string& out, const line& l, const line* before, std::size_t width) {
    constexpr std::string_view gap = "   ";
    if (before == nullptr || before->indent != l.indent || short_box(*before, width).empty()) {
        return false;
    }
    const std::size_t begun = out.rfind('\n', out.size() - 2) + 1;  // 0 of the first line
    const std::size_t taken = columns(out.substr(begun, out.size() - 1 - begun));
    const std::string text = short_box(l, width);
    if (text.empty() || taken + gap.size() + columns(text) > width) {
        return false;
    }
    out.pop_back();
    out += std::string(gap) + text + "\n";
    return true;
}

std::string text_of(const section& s, length_unit u, std::size_t width) {
    constexpr std::size_t long_word = 12;  // a lead that leaves less room is broken like its text
    std::string out = s.heading.empty() ? "" : wrapped("", s.heading, 2, width);
    int step = 0;
    const line* before = nullptr;
    for (const auto& block : s.blocks) {
        const auto* l = std::get_if<line>(&block);
        const bool beside = l != nullptr && put_beside(out, *l, before, width);
        before = l;
        if (beside) {
            continue;
        }
        if (l != nullptr) {
            const std::string lead =
                l->as == line_as::step && l->lead.empty() ? std::to_string(++step) + ". " : l->lead;
            const std::string blank(l->indent, ' ');
            out += l->as == line_as::copied ? blank + lead + l->text + "\n"
                   : columns(blank + lead) + long_word <= width
                       ? wrapped(blank + lead, l->text, l->hang, width)
                       : wrapped(blank, lead + l->text, l->hang, width);
        } else if (const auto* t = std::get_if<typed_table>(&block);
                   t != nullptr && t->whom != shown_to::programs) {
            out += laid_out(*t, u, width);
        } else if (const auto* f = std::get_if<drawing>(&block)) {
            out += f->text;
        }
    }
    return out;
}

}  // namespace

namespace {

/// What an owner fills in: beside one another where that fits.
std::string lines_to_sign(std::size_t width) {
    constexpr std::array<std::string_view, 3> all{
        "  Name ______________________", "  Date ____________", "  Signed __________________"};
    std::string one;
    std::string below;
    for (const std::string_view part : all) {
        one += part;
        below += std::string(part) + "\n";
    }
    return columns(one) <= width ? one + "\n" : below;
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
            [](const work& w) { return detail::whole_minutes(w) + " min"; },
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
        out += "\n" + lines_to_sign(width);
    }
    return d.foot.empty() ? out : out + "\n" + wrapped("", d.foot, 0, width);
}

}  // namespace pelage::io
