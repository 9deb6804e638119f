// Two sheets side by side on the dog that both were planned for.
#include <utility>
#include <vector>

#include <pelage/answers/illustrated.hpp>
#include <pelage/answers/picture.hpp>
#include <pelage/answers/sheets.hpp>

namespace pelage::io {

namespace {

/// The dog as a sheet leaves it, each view under the sheet's name.
std::vector<drawing> drawn(const style& s, const groom& g, const plan_request& r, const outline& o,
                           length_unit u) {
    std::vector<drawing> out =
        more_drawings_of(picture_of(picture_of(g, r, o, u), o, r.reference.dog_body, false));
    for (drawing& d : out) {
        d.caption =
            s.title + ", left on a " + std::string(name(*r.patient.coat)) + " coat, " + d.caption;
    }
    return out;
}

}  // namespace

document with_dog_drawn(document page, const dog_picture& p, coat_class c) {
    if (!page.sections.empty()) {
        page.sections.front().blocks.emplace_back(line{
            line_as::paragraph, "Drawn with what is left on a " + std::string(name(c)) + " coat."});
    }
    return with_views(std::move(page), p);
}

document with_dogs_drawn(document page, const sheet_comparison& c, const plan_request& first,
                         const plan_request& second, const outline& o, length_unit u) {
    const std::vector<drawing> a = drawn(*c.first, c.of_first.plan, first, o, u);
    const std::vector<drawing> b = drawn(*c.second, c.of_second.plan, second, o, u);
    section views;
    for (std::size_t i = 0; i < a.size() && i < b.size(); ++i) {
        views.blocks.emplace_back(a[i]);  // two in a row stand side by side on a page
        views.blocks.emplace_back(b[i]);
    }
    views.blocks.emplace_back(key_drawing(o, u));
    page.sections.push_back(std::move(views));
    return page;
}

}  // namespace pelage::io
