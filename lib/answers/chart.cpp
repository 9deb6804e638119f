#include "answers/chart.hpp"

#include <algorithm>
#include <cmath>

#include "answers/markup.hpp"
#include "answers/picture_hatching.hpp"
#include "answers/picture_svg.hpp"

namespace pelage::io {

std::string chart_style() {
    // grid, rule, line, dashes, ink, hollow, band, cleared, dim, marked, hatching
    return "<style>.pd .pd-st{text-anchor:start}.pd .pd-en{text-anchor:end}"
           ".pd-gr{fill:none;stroke:#dcdad2;stroke-width:1.5}"
           ".pd-ru{fill:none;stroke:#5a5a58;stroke-width:2.5}"
           ".pd-ln{fill:none;stroke:#1a1a1a;stroke-width:4;stroke-linecap:round;"
           "stroke-linejoin:round}"
           ".pd-da{fill:none;stroke:#1a1a1a;stroke-width:2.5;stroke-dasharray:9 7}"
           ".pd-in{fill:#1a1a1a}"
           ".pd-ho{fill:#fff;stroke:#1a1a1a;stroke-width:3.5;stroke-linejoin:round}"
           ".pd-bn{fill:#1a1a1a;fill-opacity:.22}"
           ".pd-cl{fill:#fff}"
           ".pd-dm{fill:#dddcd6;stroke:#fff;stroke-width:3;stroke-linejoin:round}"
           ".pd-mk{fill:#fbfaf6;stroke:#1a1a1a;stroke-width:6;stroke-linejoin:round}"
           ".pd-sg{fill:none;stroke:#1a1a1a;stroke-width:11;stroke-linecap:round}"
           ".pd-wt{stroke-width:4}"
           ".pd-ba{fill:url(#pd-slant)}.pd-sl{fill:none;stroke:#1a1a1a;stroke-width:2}"
           "@media screen and (prefers-color-scheme:dark){.pd-gr{stroke:#45443f}"
           ".pd-sg{stroke:#f4f2ec}.pd-mk{fill:#2b2b28;stroke:#e9e7e0}"
           ".pd-ru{stroke:#b5b3ac}.pd-ln,.pd-da,.pd-sl{stroke:#e9e7e0}"
           ".pd-in,.pd-bn{fill:#e9e7e0}.pd-ho{fill:#1d1d1b;stroke:#e9e7e0}"
           ".pd-dm{fill:#55554f;stroke:#1d1d1b}.pd-cl{fill:#1d1d1b}}</style>\n"
           "<defs><pattern id=\"pd-slant\" width=\"12\" height=\"12\" "
           "patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">"
           "<path class=\"pd-sl\" d=\"M6 0V12\"/></pattern></defs>\n";
}

text_box chart::box_of(double x, double y, std::string_view text, stands how, bool bold) {
    const double size = bold ? figure_size : name_size;
    const double wide = text_width(text, size, bold);
    const double high = std::ceil(size * 1.2);
    const double left = how == stands::left ? x : how == stands::right ? x - wide : x - wide / 2.0;
    return {left, y - high / 2.0, wide, high, std::string(text)};
}

bool chart::covers(const text_box& b) const {
    return std::any_of(texts_.begin(), texts_.end(),
                       [&](const text_box& t) { return overlap(t, b); });
}

void chart::text(double x, double y, std::string_view text, stands how, bool bold) {
    if (text.empty()) {
        return;
    }
    const text_box b = box_of(x, y, text, how, bold);
    const std::string side = how == stands::left ? " pd-st" : how == stands::right ? " pd-en" : "";
    out_ += text_at((bold ? "pd-x pd-o" : "pd-n pd-o") + side, x, b.top + b.height * 0.78, text);
    texts_.push_back(b);
}

void chart::path(std::string_view shown_by, const std::string& data) {
    out_ += data.empty() ? "" : path_of(shown_by, data);
}

void chart::line(std::string_view shown_by, drawn_point from, drawn_point to) {
    path(shown_by,
         "M" + whole(from.x) + " " + whole(from.y) + "L" + whole(to.x) + " " + whole(to.y));
}

void chart::rect(std::string_view shown_by, const text_box& b, double round) {
    out_ += "<rect class=\"" + std::string(shown_by) + "\" x=\"" + whole(b.left) + "\" y=\"" +
            whole(b.top) + "\" width=\"" + whole(std::max(1.0, b.width)) + "\" height=\"" +
            whole(b.height) + (round > 0.0 ? "\" rx=\"" + whole(round) : "") + "\"/>\n";
}

void chart::dot(std::string_view shown_by, double x, double y, double radius) {
    out_ += "<circle class=\"" + std::string(shown_by) + "\" cx=\"" + whole(x) + "\" cy=\"" +
            whole(y) + "\" r=\"" + whole(radius) + "\"/>\n";
}

void chart::open_window(const text_box& b) {
    const std::string size = whole(b.width) + "\" height=\"" + whole(b.height);
    out_ += "<svg x=\"" + whole(b.left) + "\" y=\"" + whole(b.top) + "\" width=\"" + size +
            "\" viewBox=\"" + whole(b.left) + " " + whole(b.top) + " " + whole(b.width) + " " +
            whole(b.height) + "\">\n";
}

picture_part chart::finish(std::string title, std::string words, double height, double width) {
    return {std::move(title),  std::move(words), std::ceil(width),
            std::ceil(height), std::move(out_),  std::move(texts_)};
}

double length_axis::of(double mm) const {
    const auto scaled = [this](double v) { return by_root ? std::sqrt(std::max(0.0, v)) : v; };
    const double share = (scaled(mm) - scaled(from)) / (scaled(to) - scaled(from));
    return at + reach * std::clamp(share, 0.0, 1.0);
}

void add_shades(chart& to, const outline& o, const length_axis& a, double beside, double thick,
                bool upright) {
    double begin = a.at;
    for (std::size_t i = 0; i < o.shades.size(); ++i) {
        const double end = o.shades[i].below ? a.of(*o.shades[i].below) : a.at + a.reach;
        const double low = std::min(begin, end);
        const double long_side = std::abs(end - begin);
        if (long_side >= 1.0) {
            const text_box b = upright ? text_box{beside, low, thick, long_side, {}}
                                       : text_box{low, beside, long_side, thick, {}};
            to.rect(shade_class(i), b);
            to.add(hatched(i, o.shades.size(),
                           {{{b.left, b.top},
                             {b.left + b.width, b.top},
                             {b.left + b.width, b.top + b.height},
                             {b.left, b.top + b.height}}}));
        }
        begin = end;
    }
}

namespace {

/// A word in pieces no wider than `most`, none cut inside a character.
std::vector<std::string> pieces_of(std::string_view word, double most, double size, bool bold) {
    std::vector<std::string> out{""};
    for (std::size_t at = 0; at < word.size();) {
        std::size_t end = at + 1;
        while (end < word.size() && (static_cast<unsigned char>(word[end]) & 0xC0U) == 0x80U) {
            ++end;
        }
        const std::string one{word.substr(at, end - at)};
        if (!out.back().empty() && text_width(out.back() + one, size, bold) > most) {
            out.emplace_back();
        }
        out.back() += one;
        at = end;
    }
    return out;
}

}  // namespace

std::vector<std::string> lines_within(std::string_view text, double most, double size, bool bold) {
    std::vector<std::string> out{""};
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        for (const std::string& piece : pieces_of(text.substr(at, end - at), most, size, bold)) {
            const std::string longer = out.back() + (out.back().empty() ? "" : " ") + piece;
            if (!out.back().empty() && text_width(longer, size, bold) > most) {
                out.push_back(piece);
            } else {
                out.back() = longer;
            }
        }
        at = end + 1;
    }
    return out;
}

}  // namespace pelage::io
