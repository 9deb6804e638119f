#include "answers/picture_svg.hpp"

#include <cmath>
#include <initializer_list>

#include <pelage/base/length_text.hpp>

#include "answers/chart.hpp"
#include "answers/markup.hpp"
#include "answers/picture_hatching.hpp"
#include "answers/picture_labels.hpp"

namespace pelage::io {

namespace {

/// Numbers one after another, no more between them than is needed.
std::string in_a_row(std::initializer_list<double> all) {
    std::string out;
    for (const double v : all) {
        const std::string n = whole(v);
        out += (out.empty() || n.front() == '-' ? "" : " ") + n;
    }
    return out;
}

drawn_point rounded(const drawn_point& p) {
    return {std::round(p.x), std::round(p.y)};
}

constexpr std::string_view plain_style =
    ".pd{font-family:Helvetica,Arial,sans-serif;width:100%;height:auto;display:block}"
    ".pd text{text-anchor:middle;fill:#1a1a1a}"
    ".pd-z{stroke:#fff;stroke-width:2;stroke-linejoin:round}"
    ".pd-p{fill:#fbfaf6;stroke:#8a8a86}"
    ".pd-l1{fill:none;stroke:#6a6a66;stroke-width:4;stroke-linecap:round}"
    ".pd-l2{fill:none;stroke:#6a6a66;stroke-width:2.6;stroke-linecap:round}"
    ".pd-hg{display:none}"
    ".pd-w{fill:#1a1a1a;stroke:#1a1a1a;stroke-width:9;stroke-linejoin:round}"
    ".pd-wb{fill:none;stroke:#1a1a1a;stroke-width:34;stroke-dasharray:3 7}"
    ".pd-wd{fill:#fff;stroke:#1a1a1a;stroke-width:4}.pd-w1{fill:none;stroke:#"
    "fff;stroke-width:3.4}"
    ".pd-m{fill:#fff;stroke:#1a1a1a;stroke-width:7;stroke-linejoin:round}"
    ".pd-mx{fill:none;stroke:#1a1a1a;stroke-width:2.6;stroke-linecap:round}"
    ".pd-my{fill:#1a1a1a}"
    ".pd-bd{fill:#1a1a1a;stroke:#fff;stroke-width:4}.pd .pd-bt{fill:#fff}"
    ".pd-te{fill:#fff;stroke:#1a1a1a;stroke-width:3}"
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
    ".pd-d,.pd-dh{stroke:#1a1a1a;stroke-width:11;stroke-linecap:round}"
    ".pd-dh{stroke:#fff;stroke-width:16}"
    ".pd-th,.pd .pd-th{stroke-width:40}"
    ".pd .pd-n{font-size:26px}"
    ".pd .pd-x{font-size:32px;font-weight:bold}"
    ".pd .pd-c{font-size:24px;text-anchor:start;white-space:pre}"
    ".pd .pd-o{fill:#1a1a1a}"
    ".pd .pd-h{font-size:34px;font-weight:bold}"
    "@media screen{.pd-q{fill:#fff}}"
    "@media screen and (prefers-color-scheme:dark){.pd .pd-o{fill:#e9e7e0}.pd-r{stroke:#d5d3cc}"
    ".pd-rw{stroke:#1d1d1b}.pd-p{fill:#3a3a37}.pd-l1,.pd-l2{stroke:#c9c7c0}"
    ".pd-w{fill:#f4f2ec;stroke:#f4f2ec}.pd-w1{stroke:#1d1d1b}.pd-e{stroke:#c9c7c0}.pd-f{"
    "fill:#55554f}.pd-g{fill:#45443f;stroke:#"
    "c9c7c0}"
    ".pd-q{fill:#1d1d1b}.pd-k{stroke:#c9c7c0}}"
    "@media "
    "print{.pd-dh{stroke-width:26}.pd-aw,.pd-bw{stroke-width:15}.pd-w1{stroke:none}.pd-q{fill:none}"
    ".pd-p{fill:#fff}.pd-z{stroke:#000}.pd-l1{stroke:#000}"
    ".pd-r{stroke:#000}.pd .pd-n,.pd .pd-x,.pd .pd-c,.pd .pd-h{fill:#000}";

}  // namespace

std::string whole(double v) {
    return std::to_string(std::lround(v));
}

std::string path_data(const drawn_path& p, bool closed) {
    drawn_point at = rounded(p.front().from);
    std::string out = "M" + in_a_row({at.x, at.y});
    for (const drawn_curve& c : p) {
        const drawn_point one = rounded(c.out);
        const drawn_point other = rounded(c.in);
        const drawn_point to = rounded(c.to);
        out += "c" + in_a_row({one.x - at.x, one.y - at.y, other.x - at.x, other.y - at.y,
                               to.x - at.x, to.y - at.y});
        at = to;
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
    std::string out = "<style>" + std::string(plain_style) + hatching_style(o.shades.size()) +
                      ".pd-z{fill:#fff}}";
    out += "@media screen{";
    for (std::size_t i = 0; i < o.shades.size(); ++i) {
        out += ".pd-s" + std::to_string(i) + "{fill:" + o.shades[i].colour + "}";
    }
    return out + "}</style>\n";
}

namespace {

constexpr double key_width = 720.0;

polygon box_about(double x, double y, double width, double height) {
    return {{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}};
}

/// The scale as a row of boxes with the lengths between them.
void add_scale(const outline& o, length_unit u, picture_part& to) {
    const double wide = (key_width - 40.0) / static_cast<double>(o.shades.size());
    to.drawn += text_at("pd-n pd-o", key_width / 2.0, 36.0,
                        u == length_unit::mm ? "length left, in mm" : "length left, in inches");
    for (std::size_t i = 0; i < o.shades.size(); ++i) {
        const double x = 20.0 + wide * static_cast<double>(i);
        to.drawn += path_of(shade_class(i),
                            "M" + whole(x) + " 50h" + whole(wide) + "v44h-" + whole(wide) + "Z") +
                    hatched(i, o.shades.size(), {box_about(x, 50.0, wide, 44.0)});
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
    /// The first row is there.
    sign_rows(picture_part& to, double y) : to_(to), y_(y) {}
    /// `sign` draws it from there.
    template <class Sign>
    void add(std::string_view text, Sign sign) {
        const double width = 70.0 + text_width(text, name_size, false) + 34.0;
        if (x_ > left && x_ + width > key_width) {
            x_ = left;
            y_ += 50.0;
        }
        to_.drawn += sign(x_, y_);
        to_.drawn += text_at("pd-n pd-o", x_ + 70.0 + text_width(text, name_size, false) / 2.0,
                             y_ + 8.0, text);
        to_.words += std::string(to_.words.empty() ? "" : "; ") + std::string(text);
        x_ += width;
    }
    [[nodiscard]] double bottom() const { return to_.words.empty() ? y_ - 40.0 : y_ + 34.0; }

  private:
    static constexpr double left = 20.0;
    picture_part& to_;
    double x_ = left;
    double y_;
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

std::string tender_at(const drawn_point& p) {
    return path_of("pd-dh pd-th", "M" + in_a_row({p.x, p.y}) + "h0") +
           path_of("pd-te", "M" + in_a_row({p.x, p.y}) + "m0-11l12 20h-24z");
}

namespace {

/// A box with signs all over it.
std::string sample(std::string_view shown_by, filled_with what, double x, double y) {
    return path_of(shown_by, box_at(x, y)) + filled(what, {box_about(x, y - 18.0, 56.0, 36.0)});
}

/// Of lines: the way of the clipper, blends, set lines.
void add_lines(const signs_used& used, sign_rows& to) {
    if (used.stroke) {
        to.add("way of the clipper", [](double x, double y) {
            return path_of("pd-aw", arrow_at(x, y)) + path_of("pd-a", arrow_at(x, y));
        });
    }
    if (used.blended) {
        to.add("blend", [](double x, double y) {
            return path_of("pd-bw", dash_at(x, y)) + path_of("pd-b", dash_at(x, y));
        });
    }
    if (used.line) {
        to.add("set line: the step stays", [](double x, double y) {
            return path_of("pd-bw", dash_at(x, y)) + path_of("pd-s", dash_at(x, y));
        });
    }
}

/// Of places.
void add_places(const signs_used& used, sign_rows& to) {
    const auto add = [&](bool there, std::string_view text, std::string_view shown_by,
                         filled_with what) {
        if (there) {
            to.add(text, [&](double x, double y) { return sample(shown_by, what, x, y); });
        }
    };
    add(used.combed, "mat: comb out", "pd-m", filled_with::rings);
    add(used.clipped, "mat: clip off", "pd-m", filled_with::crosses);
    add(used.mat, "mat: leave it in", "pd-m", filled_with::lozenges);
    if (used.later) {
        to.add("another day, then left so",
               [](double x, double y) { return path_of("pd-z pd-p", box_at(x, y)); });
    }
    add(used.left, "leave", "pd-z pd-p", filled_with::dots);
    add(used.ask, "ask first", "pd-z pd-p", filled_with::questions);
    add(used.carded, "dead hair out, nothing cut", "pd-z pd-p", filled_with::rakes);
    add(used.sore, "! don't touch", "pd-w", filled_with::net);
    if (used.beside) {
        to.add("blades, scissors off this edge", [](double x, double y) {
            return path_of("pd-wb", dash_at(x, y)) + path_of("pd-e", dash_at(x, y));
        });
    }
    const auto add_sign = [&](bool there, std::string_view text, std::string_view sign) {
        if (there) {
            to.add(text, [&](double x, double y) {
                return text_at("pd-x pd-o", x + 28.0, y + 10.0, std::string(sign));
            });
        }
    };
    add_sign(used.differs, "not alike", "\u2260");
    add_sign(used.alike, "alike; all else isn't", "=");
    if (used.round) {
        to.add("go round what is there", [](double x, double y) {
            return warning_at({x + 28.0, y});
        });
    }
    if (used.tender) {
        to.add("hates to be touched there", [](double x, double y) {
            return tender_at({x + 28.0, y});
        });
    }
}

}  // namespace

picture_part key_of(const outline& o, const signs_used& used, length_unit u,
                    const std::string& note) {
    picture_part p;
    p.title = "key";
    if (used.length) {
        add_scale(o, u, p);
    }
    sign_rows rows(p, used.length ? 170.0 : 34.0);
    add_lines(used, rows);
    add_places(used, rows);
    p.width = key_width;
    p.height = rows.bottom();
    for (const std::string& line : lines_within(note, p.width - 40.0, name_size, false)) {
        p.drawn += text_at("pd-n pd-o", p.width / 2.0, p.height + 20.0, line);
        p.height += 34.0;
    }
    p.words = note +
              (used.length ? " Light is short, dark is long; the figures tell the length. " : " ") +
              p.words;
    return p;
}

}  // namespace pelage::io
