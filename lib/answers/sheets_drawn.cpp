// Two sheets side by side on the dog that both were planned for.
#include <utility>

#include <pelage/answers/picture.hpp>
#include <pelage/answers/sheets.hpp>

namespace pelage::io {

namespace {

section drawn(const style& s, const groom& g, const plan_request& r, const outline& o,
              length_unit u) {
    section out;
    out.heading = s.title;
    out.beside = true;
    const dog_picture picture = picture_of(picture_of(g, r, o, u), o, r.reference.dog_body);
    for (drawing& d : more_drawings_of(picture)) {
        out.blocks.emplace_back(std::move(d));
    }
    return out;
}

}  // namespace

document with_dogs_drawn(document page, const sheet_comparison& c, const plan_request& first,
                         const plan_request& second, const outline& o, length_unit u) {
    page.sections.push_back(drawn(*c.first, c.of_first.plan, first, o, u));
    page.sections.push_back(drawn(*c.second, c.of_second.plan, second, o, u));
    section key;
    key.blocks.emplace_back(key_drawing(o, u));
    page.sections.push_back(std::move(key));
    return page;
}

}  // namespace pelage::io
