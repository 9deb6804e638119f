#include "answers/picture_svg.hpp"

#include <array>
#include <cmath>

#include <pelage/base/length_text.hpp>

#include "answers/chart.hpp"
#include "answers/markup.hpp"
#include "answers/picture_labels.hpp"

namespace pelage::io {

namespace {

std::string pair_of(const drawn_point& p) {
    return whole(p.x) + " " + whole(p.y);
}

/// Hatching of a shade: the longer the hair, the more ink, and no two in a row slant alike.
std::string hatching(std::size_t i, std::size_t of) {
    constexpr std::array<int, 4> slants{45, 0, 135, 90};
    const double share = static_cast<double>(i) / static_cast<double>(of - 1);
    const double apart = 20.0 - 10.0 * share;
    const double ink = apart * 0.86 * share;
    const std::string d = detail::fixed(apart, 1);
    return "<pattern id=\"pd-h" + std::to_string(i) + "\" width=\"" + d + "\" height=\"" + d +
           "\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(" +
           std::to_string(slants[i % slants.size()]) + ")\"><path d=\"M0 0H" + d + "V" + d +
           "H0Z\" fill=\"#fff\"/><path d=\"M" + detail::fixed(apart / 2.0, 1) + " 0V" + d +
           "\" stroke=\"#000\" stroke-width=\"" + detail::fixed(ink, 1) + "\"/></pattern>";
}

constexpr std::string_view plain_style =
    ".pd{font-family:Helvetica,Arial,sans-serif;width:100%;height:auto;display:block}"
    ".pd text{text-anchor:middle;fill:#1a1a1a}"
    ".pd-z{stroke:#fff;stroke-width:2;stroke-linejoin:round}"
    ".pd-p{fill:#fbfaf6;stroke:#8a8a86}"
    ".pd-l{fill:url(#pd-dots);stroke:#8a8a86}"
    ".pd-l0{fill:#fbfaf6}.pd-l1{fill:#6a6a66}"
    ".pd-w{fill:url(#pd-cross);stroke:#1a1a1a;stroke-width:9;stroke-linejoin:round}"
    ".pd-wb{fill:none;stroke:#1a1a1a;stroke-width:34;stroke-dasharray:3 7}"
    ".pd-wd{fill:#fff;stroke:#1a1a1a;stroke-width:4}.pd-w0{fill:#fff}.pd-w1{fill:none;stroke:#"
    "1a1a1a;stroke-width:3.4}"
    ".pd-m{fill:url(#pd-knots);stroke:#1a1a1a;stroke-width:4}"
    ".pd-e{fill:none;stroke:#3a3a38;stroke-width:3;stroke-linejoin:round;stroke-linecap:round}"
    ".pd-k{fill:#1a1a1a;stroke:#1a1a1a;stroke-width:2.5;stroke-linecap:round}"
    ".pd-y{fill:none;stroke:#1a1a1a;stroke-width:3;stroke-linecap:round}"
    ".pd-f{fill:#cfcfca}"
    ".pd-g{fill:#f1efe8;stroke:#3a3a38;stroke-width:3}"
    ".pd-bw{fill:none;stroke:#fff;stroke-width:8}"
    ".pd-b{fill:none;stroke:#1a1a1a;stroke-width:4;stroke-dasharray:5 9;stroke-linecap:round}"
    ".pd-s{fill:none;stroke:#1a1a1a;stroke-width:5}"
    ".pd-aw{fill:none;stroke:#fff;stroke-width:8;stroke-linecap:round;stroke-linejoin:round}"
    ".pd-a{fill:none;stroke:#1a1a1a;stroke-width:3.5;stroke-linecap:round;stroke-linejoin:round}"
    ".pd-t{fill:#fff;fill-opacity:.88}"
    ".pd-r{fill:none;stroke:#3a3a38;stroke-width:2}"
    ".pd-rw{fill:none;stroke:#fff;stroke-opacity:.7;stroke-width:5}"
    ".pd-d{fill:#1a1a1a;stroke:#fff;stroke-width:3.5}"
    ".pd .pd-n{font-size:26px}"
    ".pd .pd-x{font-size:32px;font-weight:bold}"
    ".pd .pd-c{font-size:24px;text-anchor:start;white-space:pre}"
    ".pd .pd-o{fill:#1a1a1a}"
    ".pd .pd-h{font-size:34px;font-weight:bold}"
    "@media screen{.pd-q{fill:#fff}}"
    "@media screen and (prefers-color-scheme:dark){.pd .pd-o{fill:#e9e7e0}.pd-r{stroke:#d5d3cc}"
    ".pd-rw{stroke:#1d1d1b}.pd-p,.pd-l0{fill:#3a3a37}.pd-l1{fill:#c9c7c0}"
    ".pd-w{stroke:#f4f2ec}.pd-w0{fill:#1d1d1b}.pd-w1{stroke:#f4f2ec}.pd-e{stroke:#c9c7c0}.pd-f{"
    "fill:#55554f}.pd-g{fill:#45443f;stroke:#"
    "c9c7c0}"
    ".pd-q{fill:#1d1d1b}.pd-k{stroke:#c9c7c0}}"
    "@media print{.pd-q{fill:none}.pd-p,.pd-l{stroke:#000}.pd-l0{fill:#fff}.pd-l1{fill:#000}"
    ".pd-r{stroke:#000}.pd .pd-n,.pd .pd-x,.pd .pd-c,.pd .pd-h{fill:#000}";

}  // namespace

std::string whole(double v) {
    return std::to_string(std::lround(v));
}

std::string path_data(const drawn_path& p, bool closed) {
    std::string out = "M" + pair_of(p.front().from);
    for (const drawn_curve& c : p) {
        out += "C" + pair_of(c.out) + " " + pair_of(c.in) + " " + pair_of(c.to);
    }
    return closed ? out + "Z" : out;
}

std::string path_data(const std::vector<drawn_path>& all, bool closed) {
    std::string out;
    for (const drawn_path& p : all) {
        out += path_data(p, closed);
    }
    return out;
}

std::string path_of(std::string_view shown_by, const std::string& data) {
    return "<path class=\"" + std::string(shown_by) + "\" d=\"" + data + "\"/>\n";
}

std::string text_at(std::string_view shown_by, double x, double y, std::string_view text) {
    return "<text class=\"" + std::string(shown_by) + "\" x=\"" + whole(x) + "\" y=\"" + whole(y) +
           "\">" + markup_safe(text) + "</text>\n";
}

std::string arrow_data(const drawn_point& middle, const drawn_point& way, double size,
                       double head) {
    const double norm = std::hypot(way.x, way.y);
    const drawn_point along{way.x / norm, way.y / norm};
    const double half = size * 0.42;
    const drawn_point tip{middle.x + half * along.x, middle.y + half * along.y};
    const auto barb = [&](double turned) {
        return "L" + whole(tip.x - head * along.x - turned * head * 0.8 * along.y) + " " +
               whole(tip.y - head * along.y + turned * head * 0.8 * along.x);
    };
    const std::string end = whole(tip.x) + " " + whole(tip.y);
    return "M" + whole(middle.x - half * along.x) + " " + whole(middle.y - half * along.y) + "L" +
           end + barb(1.0) + "M" + end + barb(-1.0);
}

std::string shade_class(std::size_t shade) {
    return "pd-z pd-s" + std::to_string(shade);
}

std::string picture_style(const outline& o) {
    std::string out = "<style>" + std::string(plain_style);
    for (std::size_t i = 0; i < o.shades.size(); ++i) {
        const std::string n = std::to_string(i);
        out += ".pd-s" + n + "{fill:url(#pd-h" + n + ");stroke:#000}";
    }
    out += "}@media screen{";
    for (std::size_t i = 0; i < o.shades.size(); ++i) {
        out += ".pd-s" + std::to_string(i) + "{fill:" + o.shades[i].colour + "}";
    }
    out += "}</style>\n<defs>";
    for (std::size_t i = 0; i < o.shades.size(); ++i) {
        out += hatching(i, o.shades.size());
    }
    return out +
           "<pattern id=\"pd-dots\" width=\"14\" height=\"14\" patternUnits=\"userSpaceOnUse\">"
           "<path class=\"pd-l0\" d=\"M0 0H14V14H0Z\"/><circle class=\"pd-l1\" cx=\"7\" cy=\"7\" "
           "r=\"1.8\"/></pattern>"
           "<pattern id=\"pd-cross\" width=\"12\" height=\"12\" patternUnits=\"userSpaceOnUse\" "
           "patternTransform=\"rotate(45)\"><path class=\"pd-w0\" d=\"M0 0H12V12H0Z\"/>"
           "<path class=\"pd-w1\" d=\"M6 0V12M0 6H12\"/></pattern>"
           "<pattern id=\"pd-knots\" width=\"18\" height=\"18\" patternUnits=\"userSpaceOnUse\">"
           "<path d=\"M4 4L14 14M14 4L4 14\" stroke=\"#fff\" stroke-width=\"5\"/>"
           "<path d=\"M4 4L14 14M14 4L4 14\" stroke=\"#1a1a1a\" stroke-width=\"2.4\"/></pattern>"
           "</defs>\n";
}

namespace {

/// The scale as a row of boxes with the lengths between them.
void add_scale(const outline& o, length_unit u, picture_part& to) {
    constexpr double wide = 110.0;
    to.drawn += text_at("pd-n pd-o", 470.0, 36.0,
                        u == length_unit::mm ? "length left, in mm" : "length left, in inches");
    for (std::size_t i = 0; i < o.shades.size(); ++i) {
        const double x = 30.0 + wide * static_cast<double>(i);
        to.drawn += path_of(shade_class(i), "M" + whole(x) + " 50h110v44h-110Z");
        if (o.shades[i].below) {
            const length& l = *o.shades[i].below;
            to.drawn += text_at("pd-n pd-o", x + wide, 124.0,
                                u == length_unit::mm ? number(l) : fraction_of_inch(l));
        }
    }
}

/// A sign with its meaning.
class sign_rows {
  public:
    explicit sign_rows(picture_part& to) : to_(to) {}
    /// `sign` draws it from there.
    template <class Sign>
    void add(std::string_view text, Sign sign) {
        const double width = 70.0 + text_width(text, name_size, false) + 40.0;
        if (x_ > 30.0 && x_ + width > 940.0) {
            x_ = 30.0;
            y_ += 52.0;
        }
        to_.drawn += sign(x_, y_);
        to_.drawn += text_at("pd-n pd-o", x_ + 70.0 + text_width(text, name_size, false) / 2.0,
                             y_ + 8.0, text);
        to_.words += std::string(to_.words.empty() ? "" : "; ") + std::string(text);
        x_ += width;
    }
    [[nodiscard]] double bottom() const { return y_ + 34.0; }

  private:
    picture_part& to_;
    double x_ = 30.0;
    double y_ = 174.0;
};

std::string box_at(double x, double y) {
    return "M" + whole(x) + " " + whole(y - 18.0) + "h56v36h-56Z";
}
std::string arrow_at(double x, double y) {
    return "M" + whole(x) + " " + whole(y) + "h56m-12 -10l12 10l-12 10";
}
std::string dash_at(double x, double y) {
    return "M" + whole(x) + " " + whole(y) + "h56";
}

}  // namespace

std::string warning_at(const drawn_point& p) {
    return "<circle class=\"pd-wd\" cx=\"" + whole(p.x) + "\" cy=\"" + whole(p.y) +
           "\" r=\"19\"/>\n" + text_at("pd-x", p.x, p.y + 11.0, "!");
}

picture_part key_of(const outline& o, const signs_used& used, length_unit u,
                    const std::string& note) {
    picture_part p;
    p.title = "key";
    add_scale(o, u, p);
    sign_rows rows(p);
    if (used.stroke) {
        rows.add("way of the clipper", [](double x, double y) {
            return path_of("pd-aw", arrow_at(x, y)) + path_of("pd-a", arrow_at(x, y));
        });
    }
    if (used.blended) {
        rows.add("blend", [](double x, double y) {
            return path_of("pd-bw", dash_at(x, y)) + path_of("pd-b", dash_at(x, y));
        });
    }
    if (used.line) {
        rows.add("set line", [](double x, double y) {
            return path_of("pd-bw", dash_at(x, y)) + path_of("pd-s", dash_at(x, y));
        });
    }
    if (used.mat) {
        rows.add("mat", [](double x, double y) {
            return path_of("pd-z pd-p", box_at(x, y)) + path_of("pd-m", box_at(x, y));
        });
    }
    if (used.left) {
        rows.add("leave", [](double x, double y) { return path_of("pd-z pd-l", box_at(x, y)); });
    }
    if (used.carded) {
        rows.add("dead hair out, no length cut",
                 [](double x, double y) { return path_of("pd-z pd-p", box_at(x, y)); });
    }
    if (used.sore) {
        rows.add("! don't touch, nor the edge towards it",
                 [](double x, double y) { return path_of("pd-w", box_at(x, y)); });
    }
    if (used.round) {
        rows.add("go round what is there", [](double x, double y) {
            return warning_at({x + 28.0, y});
        });
    }
    p.width = 940.0;
    p.height = rows.bottom();
    for (const std::string& line : lines_within(note, p.width - 60.0, name_size, false)) {
        p.drawn += text_at("pd-n pd-o", p.width / 2.0, p.height + 20.0, line);
        p.height += 34.0;
    }
    p.words = note + " Light is short, dark is long; the figures tell the length. " + p.words;
    return p;
}

}  // namespace pelage::io
