// The owner's page as a document.
#include <pelage/answers/owner_page.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/document_cells.hpp"
#include "answers/owner_page_parts.hpp"

namespace pelage::io {

namespace {

line page_line(lines_as how, const std::string& text) {
    switch (how) {
        case lines_as::steps:
            return {line_as::step, text, {}, 2, 5};
        case lines_as::boxes:
            return {line_as::box, text, std::string(tick_box) + " ", 2, 6};
        case lines_as::bullets:
            break;
    }
    return {line_as::bullet, text, "- ", 2, 4};
}

}  // namespace

document document_of(const owner_matter& m, const print_options& o) {
    const owner_page page = page_of(m, o);
    document d{page.title, page.name, true};
    if (!page.from.empty()) {
        d.open({}, false);
        d.say(page.from, 2);
    }
    for (const page_section& s : page.sections) {
        d.open(s.heading).beside = s.beside;
        if (!s.says.empty()) {
            d.add({line_as::paragraph, joined(s.says, " "), {}, 2, 2});
        }
        for (const std::string& l : s.lines) {
            d.add(page_line(s.how, l));
        }
    }
    d.sign = page.sign;
    d.foot = page.foot;
    return d;
}

}  // namespace pelage::io
