// A document as one page of HTML, to be read on a screen or printed on A4.
#include <algorithm>
#include <cmath>
#include <numeric>

#include <pelage/answers/document.hpp>

#include "answers/document_cells.hpp"
#include "answers/document_paper.hpp"
#include "answers/document_style.hpp"
#include "answers/markup.hpp"

namespace pelage::io {

namespace {

/// The list that a line belongs to; empty if to none.
std::string_view list_of(line_as as) {
    switch (as) {
        case line_as::item:
            return "<ul class=\"plain\">";
        case line_as::bullet:
            return "<ul>";
        case line_as::step:
            return "<ol>";
        case line_as::box:
            return "<ul class=\"boxes\">";
        case line_as::copied:
            return "<pre>";
        case line_as::paragraph:
        case line_as::detail:
        case line_as::between:
        case line_as::notice:
        case line_as::headed:
        case line_as::caution:
            break;
    }
    return {};
}

/// A date of numbers isn't broken at its hyphens; a box to tick is drawn.
std::string unbroken(const std::string& safe) {
    if (safe.starts_with(tick_box)) {
        return "<span class=\"tick\"></span><span class=\"hid\">to tick</span>" +
               safe.substr(tick_box.size());
    }
    std::string out;
    const auto digit = [&](std::size_t i) { return safe[i] >= '0' && safe[i] <= '9'; };
    const auto is_date = [&](std::size_t i) {
        constexpr std::string_view form = "0000-00-00";
        for (std::size_t k = 0; k < form.size(); ++k) {
            if (i + k >= safe.size() || (form[k] == '0' ? !digit(i + k) : safe[i + k] != '-')) {
                return false;
            }
        }
        return true;
    };
    for (std::size_t i = 0; i < safe.size(); ++i) {
        if (is_date(i)) {
            out += "<span class=\"d\">" + safe.substr(i, 10) + "</span>";
            i += 9;
        } else {
            out += safe[i];
        }
    }
    return out;
}

/// What must be known first, in a paragraph of its own.
bool is_alert(const std::string& lead) {
    return lead == "ALERT: " || lead == "HEALTH: ";
}

/// The word before a text; marks of lists and cautions are made by the style.
std::string lead_of(const line& l) {
    const std::size_t from = std::min(l.lead.find_first_not_of(' '), l.lead.size());
    const std::size_t end = l.lead.find_last_not_of(' ');
    const bool words = std::any_of(l.lead.begin(), l.lead.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    });
    return words && end != std::string::npos
               ? "<b>" + markup_safe(l.lead.substr(from, end + 1 - from)) + "</b> "
               : "";
}

/// What heads a column: one of words at the end says which they are, others without a head have one for who
/// hears the page.
std::string head_of(const typed_table& t, std::size_t i) {
    return !t.head[i].empty()       ? unbroken(markup_safe(t.head[i]))
           : i + 1 == t.head.size() ? "which"
                                    : "<span class=\"hid\">mark</span>";
}

/// In which order its columns stand: what a choice is comes behind its box, before its figures.
std::vector<std::size_t> order_of(const typed_table& t) {
    std::vector<std::size_t> order(t.head.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const bool ticked = t.head.size() > 1 && t.head.back().empty() && !t.rows.empty() &&
                        shown(t.rows.front().front(), length_unit::mm).starts_with(tick_box);
    if (ticked) {
        std::rotate(order.begin() + 1, order.end() - 1, order.end());
    }
    return order;
}

std::string html_of(const typed_table& t, length_unit u) {
    constexpr std::size_t few = 3;          // columns that a telephone is wide enough for
    constexpr std::size_t short_text = 18;  // isn't broken
    const auto right = [&](std::size_t i) { return i < t.numbers.size() && t.numbers[i]; };
    const bool many = t.head.size() > few;
    const std::vector<std::size_t> order = order_of(t);
    const bool ways = order.size() > 1 && order[1] + 1 == order.size();  // told by their last cell
    std::string out =
        std::string(many ? (ways ? "<table class=\"many ways\">" : "<table class=\"many\">")
                         : "<table>") +
        "\n<thead><tr>";
    for (const std::size_t i : order) {
        out += (right(i) ? "<th class=\"n\">" : "<th>") + head_of(t, i) + "</th>";
    }
    out += "</tr>\n</thead>\n<tbody>\n";
    for (const auto& cells : t.rows) {
        out += "<tr>";
        for (const std::size_t i : order) {
            const std::string text = shown(cells[i], u);
            const std::string how = right(i)                    ? " class=\"n\""
                                    : text.size() <= short_text ? " class=\"d\""
                                                                : "";
            const bool headed = many && i > 0 && !t.head[i].empty() && !text.empty();
            out += "<td" + how +
                   (headed ? " data-h=\"" + markup_safe(t.head[i]) + "\"" : std::string{}) + ">" +
                   unbroken(markup_safe(text)) + "</td>";
            // told in one line they are words of a sentence
            out += many && i != order.back() ? " " : "";
        }
        out += "</tr>\n";
    }
    return out + "</tbody>\n</table>\n";
}

/// A section's lines and tables, lists opened and closed around them.
class section_page {
  public:
    section_page(length_unit u, const paper_size& paper) : u_(u), paper_(paper) {}

    [[nodiscard]] std::string of(const section& s) {
        if (only_drawings(s) && views_in(s) > 0) {
            return views_of(s);
        }
        flows_ = s.blocks.size() > 30;  // over the end of a sheet
        for (const auto& block : s.blocks) {
            if (const auto* l = std::get_if<line>(&block)) {
                flows_ = flows_ || l->as == line_as::step;
                add(*l);
            } else if (const auto* f = std::get_if<drawing>(&block)) {
                add(*f);
            } else if (std::get<typed_table>(block).whom != shown_to::programs) {
                within({});
                out_ += html_of(std::get<typed_table>(block), u_);
                flows_ = true;
            }
        }
        within({});
        const std::string begins =
            s.id.empty() ? "<section" : "<section id=\"" + markup_safe(s.id) + "\"";
        const std::string kinds = std::string(flows_ || !s.id.empty() ? " flows" : "") +
                                  (s.id.empty() ? "" : " page") +
                                  (s.heading == "STOP" ? " stop" : "");
        return out_.empty() && s.heading.empty()
                   ? ""
                   : begins + (kinds.empty() ? "" : " class=\"" + kinds.substr(1) + "\"") + ">\n" +
                         (s.heading.empty() ? "" : "<h2>" + markup_safe(s.heading) + "</h2>\n") +
                         out_ + "</section>\n";
    }

  private:
    void end_item() {
        out_ += in_item_ ? "</li>\n" : "";
        in_item_ = false;
    }
    void within(std::string_view list) {
        end_item();
        if (list != open_) {
            out_ += open_.empty()      ? ""
                    : open_ == "<ol>"  ? "</ol>\n"
                    : open_ == "<pre>" ? "</pre>\n"
                                       : "</ul>\n";
            out_ += list.empty() ? "" : std::string(list) + "\n";
            open_ = list;
        }
    }
    void add(const line& l) {
        const std::string text =
            (l.as == line_as::headed || l.as == line_as::between ? "" : lead_of(l)) +
            (l.to.empty()
                 ? markup_safe(l.text)
                 : "<a href=\"#" + markup_safe(l.to) + "\">" + markup_safe(l.text) + "</a>");
        if (l.as == line_as::detail && in_item_) {
            out_ += "<br><span class=\"under\">" + text + "</span>";
            return;
        }
        within(list_of(l.as));
        if (open_ == "<pre>") {
            out_ += text + "\n";
        } else if (!open_.empty()) {
            out_ += item_of(l) + text;
            in_item_ = true;
        } else {
            out_ += (l.as == line_as::between                       ? "<p class=\"between\">"
                     : l.as == line_as::notice                      ? "<p class=\"caution mild\">"
                     : l.as == line_as::caution || is_alert(l.lead) ? "<p class=\"caution\">"
                                                                    : "<p>") +
                    text + "</p>\n";
        }
    }
    static std::string figure_of(const drawing& f, const std::string& how) {
        return "<figure" + how + ">" + f.svg +
               (f.caption.empty() ? ""
                                  : "<figcaption>" + markup_safe(f.caption) + "</figcaption>") +
               "</figure>\n";
    }
    void add(const drawing& f) {
        if (!f.svg.empty()) {
            within({});
            out_ += figure_of(f, f.chart ? " class=\"chart\"" : "");
        }
    }
    /// Views, two in a row, all on one scale; on a sheet of their own the sides one below the other.
    [[nodiscard]] std::string views_of(const section& s) const {
        const auto rows = rows_of(s);
        const double widest = widest_of(rows);
        const double widest_apart = widest_of(rows_apart(s));
        const auto percent = [](double of, double all) {
            return std::to_string(std::lround(100.0 * of / all)) + "%";
        };
        std::string out =
            paper_.own_sheet ? "<section class=\"views own\"" : "<section class=\"views\"";
        const long share = std::lround(100.0 * paper_.views_share);
        out += share < 100 ? " style=\"--on-paper:" + std::to_string(share) + "%\">\n" : ">\n";
        for (const auto& row : rows) {
            std::string style =
                width_of(row) < widest ? "max-width:" + percent(width_of(row), widest) : "";
            if (paper_.own_sheet) {
                style += (style.empty() ? "--w:" : ";--w:") + percent(width_of(row), widest_apart);
            }
            out += "<div class=\"row\"" + (style.empty() ? "" : " style=\"" + style + "\"") + ">\n";
            for (const drawing* f : row) {
                const double width = size_of(*f).width;
                out += figure_of(
                    *f, " style=\"flex:" + std::to_string(std::lround(width)) + " 1 0" +
                            (paper_.own_sheet ? ";--w:" + percent(width, widest_apart) : "") +
                            "\"");
            }
            out += "</div>\n";
        }
        return out + "</section>\n";
    }
    static std::ptrdiff_t views_in(const section& s) {
        return std::count_if(s.blocks.begin(), s.blocks.end(), [](const auto& block) {
            return std::holds_alternative<drawing>(block) && !std::get<drawing>(block).chart;
        });
    }
    /// A step that has its number keeps it: lists go on from one another.
    static std::string item_of(const line& l) {
        const std::size_t from = l.lead.find_first_not_of(' ');
        return l.as != line_as::step || from == std::string::npos
                   ? "<li>"
                   : "<li value=\"" + l.lead.substr(from, l.lead.find(' ', from) - from) + "\">";
    }

    length_unit u_;
    paper_size paper_;
    std::string out_;
    std::string_view open_;  ///< the list that is open
    bool in_item_ = false;
    bool flows_ = false;
};

/// One section of views: a page about one dog, not a book of sheets.
bool of_one_dog(const document& d) {
    return std::count_if(d.sections.begin(), d.sections.end(), [](const section& s) {
               return !s.blocks.empty() && only_drawings(s);
           }) == 1;
}

/// How the page's style is to know it.
std::string classes_of(const document& d, const std::string& size) {
    const std::string_view one = of_one_dog(d) ? "one-dog" : "";
    return size + (size.empty() || one.empty() ? "" : " ") + std::string(one);
}

}  // namespace

namespace {

/// What stands at the foot of each sheet of paper: of whom it is, and which sheet. All but plain letters by
/// their numbers, so that no name ends the style.
std::string sheet_foot(const std::string& title) {
    std::string safe;
    for (const char c : text_safe(title)) {
        const auto byte = static_cast<unsigned char>(c);
        const bool plain = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') ||
                           (c >= 'A' && c <= 'Z') || c == ' ' || c == ',' || c == '.' ||
                           byte >= 0x80U;
        constexpr std::string_view digits = "0123456789abcdef";
        safe += plain ? std::string(1, c)
                      : std::string("\\") + digits[byte >> 4U] + digits[byte & 15U] + " ";
    }
    return "@page{@bottom-right{content:\"" + safe +
           "   \" counter(page) \" of \" counter(pages);font:8pt sans-serif}}";
}

}  // namespace

std::string html_of(const document& d, length_unit u) {
    const paper_size paper = on_paper_of(d);
    const std::string size = classes_of(d, paper.called);
    std::string out =
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
        "'unsafe-inline'\">\n"
        "<meta name=\"viewport\" content=\"width=device-width\">\n<title>" +
        markup_safe(d.title) + "</title>\n<style>\n" + page_style(d.small) + sheet_foot(d.title) +
        "\n</style>\n</head>\n" + (size.empty() ? "<body>" : "<body class=\"" + size + "\">") +
        "\n<main>\n<h1>" + (d.name.empty() ? "" : "<bdi>" + markup_safe(d.name) + "</bdi>") +
        markup_safe(d.title.substr(d.name.size())) + "</h1>\n";
    bool open = false;
    std::string own;
    for (const section& s : d.sections) {
        if (paper.own_sheet && !s.blocks.empty() && only_drawings(s)) {
            own += section_page(u, paper).of(s);  // behind the words; a screen shows them first
            continue;
        }
        if (s.beside != open) {
            out += s.beside ? "<div class=\"pair\">\n" : "</div>\n";
            open = s.beside;
        }
        out += section_page(u, paper).of(s);
    }
    out += (open ? "</div>\n" : "") + own;
    if (d.sign) {
        out += "<div class=\"sign\"><div>Name</div><div>Date</div><div>Signed</div></div>\n";
    }
    return out + (d.foot.empty() ? "" : "<footer>" + markup_safe(d.foot) + "</footer>\n") +
           "</main>\n</body>\n</html>\n";
}

}  // namespace pelage::io
