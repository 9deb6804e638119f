// Two sheets side by side on the dog that both were planned for.
#include <algorithm>
#include <utility>
#include <vector>

#include <pelage/answers/illustrated.hpp>
#include <pelage/answers/picture.hpp>
#include <pelage/answers/sheets.hpp>

#include "answers/picture_view.hpp"

namespace pelage::io {

namespace {

using place_pairs = std::vector<std::pair<pictured_place*, pictured_place*>>;

/// The places that both have, and of these the unlike ones.
std::pair<place_pairs, place_pairs> places_of_both(picture_request& one, picture_request& other) {
    const auto told = [](const pictured_place& o) {
        return o.leaves ? in_hundredths(*o.leaves) : -1;
    };
    place_pairs alike;
    place_pairs unlike;
    for (pictured_place& p : one.places) {
        const auto q = std::find_if(other.places.begin(), other.places.end(),
                                    [&](const pictured_place& o) { return o.at == p.at; });
        if (q != other.places.end()) {
            (q->as != p.as || told(*q) != told(p) ? unlike : alike).emplace_back(&p, &*q);
        }
    }
    return {std::move(alike), std::move(unlike)};
}

/// Marks what the two have otherwise; where that is most of it, what they have alike: a sign on each place tells
/// nothing.
void mark_the_few(picture_request& one, picture_request& other) {
    const auto [alike, unlike] = places_of_both(one, other);
    const bool mostly_unlike = unlike.size() > 2 * alike.size();
    for (const auto& [p, q] : mostly_unlike ? alike : unlike) {
        (mostly_unlike ? p->alike : p->differs) = true;
        (mostly_unlike ? q->alike : q->differs) = true;
    }
}

/// The dog as a sheet leaves it, each view under the sheet's name.
std::vector<drawing> captioned(std::vector<drawing> of, const std::string& whose, coat_class c) {
    for (drawing& d : of) {
        d.caption = whose + ", left on a " + std::string(name(c)) + " coat, " + d.caption;
    }
    return of;
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
    const body& b = first.reference.dog_body;
    picture_request one = picture_of(c.of_first.plan, first, o, u);
    picture_request other = picture_of(c.of_second.plan, second, o, u);
    mark_the_few(one, other);
    prepared_dog ready(o, one.look, b);
    signs_used used;
    const dog_picture left = picture_of(one, o, b, ready, false, used);
    const dog_picture right = picture_of(other, o, b, ready, false, used);
    const coat_class coat = *first.patient.coat;
    const auto views_a = captioned(more_drawings_of(left), c.first->title, coat);
    const auto views_b = captioned(more_drawings_of(right), c.second->title, coat);
    section views;
    const auto show = [&](const drawing& d) { views.blocks.emplace_back(d); };
    show(views_a[0]);
    show(views_b[0]);
    if (left.parts[1].drawn == right.parts[1].drawn) {
        // from below they are alike: once, beside the key
        show(captioned(more_drawings_of(left), "both", coat)[1]);
    } else {
        show(views_a[1]);
        show(views_b[1]);
    }
    // the key explains both, and has the style
    dog_picture key{{right.parts.back()}, "What the signs mean"};
    key.style = right.style;
    drawing explained = drawings_of(key).front();
    explained.caption = right.parts.back().title;
    show(explained);
    page.sections.push_back(std::move(views));
    return page;
}

}  // namespace pelage::io
