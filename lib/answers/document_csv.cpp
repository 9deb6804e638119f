// The tables of a document as CSV (RFC 4180).
#include <algorithm>

#include <pelage/answers/document.hpp>
#include <pelage/model/growth.hpp>

#include "answers/document_cells.hpp"

namespace pelage::io {

namespace {

/// A text that a spreadsheet would take for a formula is kept from being one: what begins with = + - @, a tab
/// or a carriage return stands behind an apostrophe, unless all of it is a number ("-23", "+2.5").
std::string harmless(const std::string& text) {
    const bool number =
        text.size() > 1 && text.find_first_not_of("0123456789.", 1) == std::string::npos;
    const bool formula = text.find_first_of("=+-@\t\r") == 0 &&
                         !(number && (text.front() == '+' || text.front() == '-'));
    return formula ? "'" + text : text;
}

/// A field: in quotes where it has to be.
std::string field(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) {
        return text;
    }
    std::string out = "\"";
    for (const char c : text) {
        out += c == '"' ? "\"\"" : std::string(1, c);
    }
    return out + '"';
}

std::string number_of(const length& l, length_unit u) {
    return u == length_unit::mm ? detail::fixed(in_mm(l), 2) : detail::fixed(in_mm(l) / 25.4, 4);
}

/// What the numbers of a column are; empty where they need no unit, or there are none.
std::string unit_of(const cell_value& v, length_unit u) {
    if (std::holds_alternative<length>(v) || std::holds_alternative<finished>(v)) {
        return u == length_unit::mm ? "mm" : "in";
    }
    return std::holds_alternative<work>(v)         ? "min"
           : std::holds_alternative<days>(v)       ? "days"
           : std::holds_alternative<percentage>(v) ? "percent"
                                                   : "";
}

/// A number without its unit, a text as it is, or harmless.
std::string bare(const cell& c, length_unit u) {
    if (const auto* text = std::get_if<std::string>(&c.value)) {
        return harmless(*text);
    }
    if (const auto* l = std::get_if<length>(&c.value)) {
        return number_of(*l, u);
    }
    if (const auto* w = std::get_if<work>(&c.value)) {
        return detail::fixed(in_minutes(*w), 1);
    }
    if (const auto* d = std::get_if<days>(&c.value)) {
        return is_never(*d) ? "never" : detail::fixed(in_days(*d), 1);
    }
    if (const auto* s = std::get_if<percentage>(&c.value)) {
        const std::string text = shown(cell(*s), u);
        return text.substr(0, text.find(' '));
    }
    if (const auto* l = std::get_if<likelihood>(&c.value)) {
        return detail::fixed(l->p, 3);
    }
    return shown(cell(c.value), u);
}

/// "with the lay" and "mm": "with_the_lay_mm".
std::string head_of(const std::string& head, const std::string& part, const std::string& unit) {
    std::string out;
    for (const std::string& word : {head, part, unit}) {
        out += (out.empty() || word.empty() ? "" : "_") + word;
    }
    std::replace(out.begin(), out.end(), ' ', '_');
    return out;
}

std::string csv_of(const typed_table& t, length_unit u) {
    std::vector<std::vector<std::string>> lines(t.rows.size() + 1);
    for (std::size_t i = 0; i < t.head.size(); ++i) {
        const auto some = std::find_if(t.rows.begin(), t.rows.end(), [&](const auto& row) {
            return i < row.size() && !unit_of(row[i].value, u).empty();
        });
        const cell_value kind = some == t.rows.end() ? cell_value{} : (*some)[i].value;
        const bool range = std::holds_alternative<finished>(kind);
        for (const char* part : {"low", "best", "high"}) {
            if (range || part == std::string("best")) {
                lines.front().push_back(head_of(t.head[i], range ? part : "", unit_of(kind, u)));
            }
        }
        for (std::size_t n = 0; n < t.rows.size(); ++n) {
            const cell& c = i < t.rows[n].size() ? t.rows[n][i] : cell{};
            const auto* f = std::get_if<finished>(&c.value);
            if (!range) {
                lines[n + 1].push_back(bare(c, u));
            } else if (f == nullptr) {
                lines[n + 1].insert(lines[n + 1].end(), {"", bare(c, u), ""});
            } else {
                lines[n + 1].insert(
                    lines[n + 1].end(),
                    {number_of(f->low, u), number_of(f->best, u), number_of(f->high, u)});
            }
        }
    }
    std::string out;
    for (const auto& one : lines) {
        for (std::size_t i = 0; i < one.size(); ++i) {
            out += (i == 0 ? "" : ",") + field(one[i]);
        }
        out += "\r\n";
    }
    return out;
}

}  // namespace

std::string csv_of(const document& d, length_unit u) {
    std::string out;
    for (const section& s : d.sections) {
        for (const auto& block : s.blocks) {
            const auto* t = std::get_if<typed_table>(&block);
            if (t != nullptr && t->whom != shown_to::people) {
                out += (out.empty() ? "" : "\r\n") + csv_of(*t, u);
            }
        }
    }
    return out;
}

}  // namespace pelage::io
