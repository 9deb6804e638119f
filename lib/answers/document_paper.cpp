#include "answers/document_paper.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

namespace pelage::io {

namespace {

// as the style has them (document_style.cpp): measured on paper, rounded to the safe side
constexpr double sheet_wide = 184.0;  // mm
constexpr double sheet_high = 267.0;
constexpr double caption_high = 6.0;
constexpr double title_high = 11.0;

/// Letters of a size.
struct letters {
    std::string_view called;
    double line_high;  ///< mm
    double in_a_line;
};
constexpr std::array<letters, 3> sizes{
    {{"", 4.75, 90.0}, {"tight", 4.36, 102.0}, {"tight tighter", 3.82, 110.0}}};

/// How many lines high, with the air around it.
double lines_of(const line& l, double in_a_line) {
    const bool bold = l.as == line_as::caution || l.as == line_as::between;
    const double air = l.as == line_as::between ? 0.9 : bold ? 0.3 : 0.15;
    const double letters = static_cast<double>(l.lead.size() + l.text.size()) * (bold ? 1.1 : 1.0);
    return std::ceil(std::max(1.0, letters / (in_a_line - 3.0))) + air;
}

double lines_of(const typed_table& t, double in_a_line) {
    if (t.whom == shown_to::programs || t.head.empty()) {
        return 0.0;
    }
    const double column = in_a_line / static_cast<double>(t.head.size());
    double out = 1.6;
    for (const auto& cells : t.rows) {
        double most = 1.0;
        for (const cell& c : cells) {
            const auto* text = std::get_if<std::string>(&c.value);
            const std::size_t said =
                c.said.empty() && text != nullptr ? text->size() : c.said.size();
            most = std::max(most, std::ceil(static_cast<double>(said) / (1.4 * column)));
        }
        out += most + 0.3;
    }
    return out;
}

/// How high all but the views is, in mm.
double words_high(const document& d, const letters& as) {
    double lines = d.foot.empty() ? 0.0 : 2.0;
    for (const section& s : d.sections) {
        lines += s.heading.empty() ? 0.0 : s.heading == "STOP" ? 3.5 : 1.8;
        for (const auto& block : s.blocks) {
            if (const auto* l = std::get_if<line>(&block)) {
                lines += lines_of(*l, as.in_a_line);
            } else if (const auto* t = std::get_if<typed_table>(&block)) {
                lines += lines_of(*t, as.in_a_line);
            }
        }
    }
    return title_high + lines * as.line_high;
}

/// How high they are on all of the sheet's width, in mm.
double rows_high(const std::vector<std::vector<const drawing*>>& rows) {
    double high = 0.0;
    for (const auto& row : rows) {
        double most = 0.0;
        for (const drawing* one : row) {
            most = std::max(most, size_of(*one).height);
        }
        high += most;
    }
    return high * sheet_wide / widest_of(rows);
}

/// The share of the width at which the letters of two views in a row are as small as may be on paper.
double least_share(const section& s) {
    constexpr double letter =
        26.0;  // of a place's label, in units of the drawing (picture_svg.cpp)
    constexpr double least_points = 6.5;  // assumption: smaller nobody reads beside a dog
    constexpr double points_a_mm = 72.0 / 25.4;
    return least_points / (letter * sheet_wide / widest_of(rows_of(s)) * points_a_mm);
}

const section* views_of(const document& d) {
    const auto at = std::find_if(d.sections.begin(), d.sections.end(), [](const section& s) {
        return !s.blocks.empty() && only_drawings(s) && !std::get<drawing>(s.blocks.front()).chart;
    });
    return at == d.sections.end() ? nullptr : &*at;
}

}  // namespace

drawn_size size_of(const drawing& d) {
    const std::string_view box = "viewBox=\"0 0 ";
    const auto at = d.svg.find(box);
    if (at == std::string::npos) {
        return {};
    }
    char* rest = nullptr;
    const double width = std::strtod(d.svg.c_str() + at + box.size(), &rest);
    return {width, std::strtod(rest, nullptr)};
}

double widest_of(const std::vector<std::vector<const drawing*>>& rows) {
    double out = 1.0;
    for (const auto& row : rows) {
        out = std::max(out, width_of(row));
    }
    return out;
}

std::vector<std::vector<const drawing*>> rows_apart(const section& s) {
    std::vector<std::vector<const drawing*>> rows = rows_of(s);
    if (!rows.empty() && rows.front().size() == 2) {
        const drawing* second = rows.front().back();
        rows.front().pop_back();
        rows.insert(rows.begin() + 1, {second});
    }
    return rows;
}

double width_of(const std::vector<const drawing*>& row) {
    double out = 0.0;
    for (const drawing* one : row) {
        out += size_of(*one).width;
    }
    return out;
}

std::vector<std::vector<const drawing*>> rows_of(const section& s) {
    std::vector<std::vector<const drawing*>> out;
    for (const auto& block : s.blocks) {
        const auto& one = std::get<drawing>(block);
        if (one.svg.empty()) {
            continue;
        }
        if (out.empty() || out.back().size() == 2) {
            out.emplace_back();
        }
        out.back().push_back(&one);
    }
    return out;
}

bool only_drawings(const section& s) {
    return std::all_of(s.blocks.begin(), s.blocks.end(),
                       [](const auto& block) { return std::holds_alternative<drawing>(block); });
}

paper_size on_paper_of(const document& d) {
    if (d.small) {
        return {"small"};
    }
    const section* views = views_of(d);
    if (views == nullptr) {
        constexpr double over = 1.35;  // of a sheet: it goes over its end in any size
        for (const letters& one : sizes) {
            if (words_high(d, one) <= sheet_high) {
                return {std::string(one.called)};
            }
        }
        const bool near_by = words_high(d, sizes[0]) <= over * sheet_high;
        return {std::string(near_by ? sizes.back().called : sizes.front().called)};
    }
    constexpr double at_ease = 0.9;
    const double least = least_share(*views);
    const auto rows = rows_of(*views);
    const double high = rows_high(rows);
    double share = 1.0;
    for (const letters& one : sizes) {
        const double left =
            sheet_high - words_high(d, one) - caption_high * static_cast<double>(rows.size());
        share = std::min(1.0, left / high);
        if (share >= at_ease || (&one == &sizes.back() && share >= least)) {
            return {std::string(one.called), share};
        }
    }
    // over the end of the sheet in any size: at ease, then, and the views large on one of their own
    const auto apart = rows_apart(*views);
    const double left = sheet_high - 2.0 * caption_high * static_cast<double>(apart.size());
    return {{}, std::min(1.0, left / rows_high(apart)), true};
}

}  // namespace pelage::io
