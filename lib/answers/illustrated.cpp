// A page with its picture.
#include <algorithm>

#include <pelage/answers/illustrated.hpp>

namespace pelage::io {

namespace {

/// Headed, and of boxes to tick.
bool to_tick(const section& s) {
    return !s.heading.empty() && std::any_of(s.blocks.begin(), s.blocks.end(), [](const auto& b) {
        const auto* l = std::get_if<line>(&b);
        return l != nullptr && l->as == line_as::box;
    });
}

}  // namespace

document illustrated(document page, const dog_picture& p) {
    if (page.sections.empty()) {
        page.open();
    }
    auto& blocks = page.sections.front().blocks;
    auto at = std::find_if(blocks.begin(), blocks.end(), [](const auto& block) {
        return std::holds_alternative<typed_table>(block);
    });
    for (drawing& d : drawings_of(p)) {
        at = blocks.insert(at, std::move(d)) + 1;
    }
    return page;
}

document with_views(document page, const dog_picture& p) {
    section views;
    for (drawing& d : drawings_of(p)) {
        views.blocks.emplace_back(std::move(d));
    }
    // what stops all of it is read before anything else
    const auto stop = std::find_if(page.sections.begin(), page.sections.end(),
                                   [](const section& s) { return s.heading == "STOP"; });
    const bool stopped = stop != page.sections.end();
    if (stopped) {
        std::rotate(page.sections.begin(), stop, stop + 1);
    }
    std::size_t at = std::min(page.sections.size(), std::size_t{stopped ? 2U : 1U});
    // what the owner ticks is settled before the dog is looked at
    at += at < page.sections.size() && to_tick(page.sections[at]) ? 1U : 0U;
    if (!p.when.empty() && at > 0) {  // else it would be taken for what is done today
        page.sections[at - 1].blocks.emplace_back(
            line{line_as::caution,
                 "What is white is another day's, at the lengths it is then left at; today only "
                 "the steps here."});
    }
    page.sections.insert(page.sections.begin() + static_cast<std::ptrdiff_t>(at), std::move(views));
    return page;
}

}  // namespace pelage::io
