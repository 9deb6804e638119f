// A picture of a dog: its views and their key, as one file and as drawings of a page.
#include "answers/words/picture.hpp"

#include <algorithm>

#include <pelage/answers/picture.hpp>

#include "answers/chart.hpp"
#include "answers/markup.hpp"
#include "answers/picture_view.hpp"

namespace pelage::io {

namespace {

std::string opened(double width, double height, const std::string& title, const std::string& words,
                   bool file) {
    const std::string size = whole(width) + " " + whole(height);
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"pd\" role=\"img\" viewBox=\"0 0 " +
           size + "\"" +
           (file ? " width=\"" + whole(width) + "\" height=\"" + whole(height) + "\"" : "") +
           "><title>" + markup_safe(title) + "</title>" +
           (words.empty() ? "" : "<desc>" + markup_safe(words) + "</desc>") + "\n";
}

}  // namespace

dog_picture picture_of(const picture_request& p, const outline& o, const body& b,
                       prepared_dog& ready, bool both_sides, signs_used& used) {
    dog_picture out;
    out.title = p.title;
    out.alerts = p.alerts;
    out.stop = p.stop;
    out.when = p.when;
    out.style = picture_style(o);
    std::vector<laid_view> laid;
    for (prepared_view& v : ready.views) {
        if (both_sides || v.view.from != drawn_side::right) {
            laid.push_back(laid_out({v.view, v, p, o, b}, v.labels));
        }
    }
    match_arrows(laid);
    for (const laid_view& v : laid) {
        out.parts.push_back(view_drawn(v, used));
    }
    out.parts.push_back(key_of(o, used, p.units, map_words()));
    return out;
}

dog_picture picture_of(const picture_request& p, const outline& o, const body& b, bool both_sides) {
    signs_used used;
    prepared_dog ready(o, p.look, b);
    return picture_of(p, o, b, ready, both_sides, used);
}

std::string svg_of(const dog_picture& p, const std::vector<std::string>& card) {
    constexpr double head_size = 34.0;
    constexpr double between = 20.0;
    double width = 0.0;
    for (const picture_part& one : p.parts) {
        width = std::max(width, one.width);
    }
    std::string body;
    double y = 2.0;
    for (const std::string& one : lines_within(p.title, width - 20.0, head_size, true)) {
        y += 40.0;
        body += text_at("pd-h pd-o", width / 2.0, y, one);
    }
    y += 18.0;
    if (!p.stop.empty()) {
        const double high = 2.2 * head_size;
        body += "<rect class=\"pd-bd\" x=\"10\" y=\"" + whole(y) + "\" width=\"" +
                whole(width - 20.0) + "\" height=\"" + whole(high) + "\"/>\n" +
                text_at("pd-h pd-bt", width / 2.0, y + high * 0.65, p.stop);
        y += high + 12.0;
    }
    if (!p.alerts.empty()) {
        std::string text;
        for (const std::string& a : p.alerts) {
            text += (text.empty() ? "! " : "; ") + a;
        }
        for (const std::string& line : lines_within(text, width - 20.0, figure_size, true)) {
            body += text_at("pd-x pd-o", width / 2.0, y + 24.0, line);
            y += 40.0;
        }
        y += 10.0;
    }
    std::string words;
    for (const picture_part& one : p.parts) {
        const bool key = p.chart || &one == &p.parts.back();  // it says itself what it is
        body += key ? "" : text_at("pd-n pd-o", width / 2.0, y + 20.0, one.title);
        y += key ? 0.0 : 30.0;
        body += "<g transform=\"translate(" + whole((width - one.width) / 2.0) + " " + whole(y) +
                ")\">\n" + one.drawn + "</g>\n";
        y += one.height + between;
        words += (words.empty() ? "" : " ") + one.title + ": " + one.words;
    }
    for (const std::string& l : card) {
        y += 32.0;
        body += text_at("pd-c pd-o", 20.0, y, l);
    }
    y += card.empty() ? 0.0 : 30.0;
    return opened(width, y, p.title, words, true) + p.style +
           "<rect class=\"pd-q\" width=\"100%\" height=\"100%\"/>\n" + body + "</svg>\n";
}

namespace {

drawing drawing_of(const dog_picture& p, const picture_part& one, const std::string& style) {
    const bool alone = p.parts.size() == 1;  // the page is headed as it is
    const bool of_a_view = one.title.starts_with("from ");
    const std::string title = p.title + (alone ? "" : ", " + one.title);
    return {opened(one.width, one.height, title, one.words, false) + style + one.drawn + "</svg>\n",
            alone ? "" : one.title + (p.when.empty() || !of_a_view ? "" : "; " + p.when),
            {},
            p.chart};
}

}  // namespace

std::vector<drawing> drawings_of(const dog_picture& p) {
    std::vector<drawing> out;
    for (const picture_part& one : p.parts) {
        out.push_back(drawing_of(p, one, out.empty() ? p.style : ""));
    }
    return out;
}

std::vector<drawing> more_drawings_of(const dog_picture& p) {
    return {drawing_of(p, p.parts[0], ""), drawing_of(p, p.parts[1], "")};
}

drawing key_drawing(const outline& o, length_unit u) {
    const dog_picture page{{key_of(o, signs_used::all(), u, map_words())}, "Key to the dogs drawn"};
    return drawing_of(page, page.parts.front(), picture_style(o));
}

}  // namespace pelage::io
