// How a document is put together.
#include <algorithm>

#include <pelage/answers/document.hpp>

namespace pelage::io {

section& document::last() {
    return sections.empty() ? open({}, false) : sections.back();
}

section& document::open(std::string heading, bool apart) {
    section& s = sections.emplace_back();
    s.heading = std::move(heading);
    s.apart = apart;
    return s;
}

void document::say(std::string text, std::size_t hang) {
    last().blocks.emplace_back(line{line_as::paragraph, std::move(text), {}, 0, hang});
}

void document::say_of(std::string lead, std::string text, std::size_t hang) {
    last().blocks.emplace_back(line{line_as::paragraph, std::move(text), std::move(lead), 0, hang});
}

void document::item(std::string text, std::size_t hang) {
    last().blocks.emplace_back(line{line_as::item, std::move(text), {}, 2, hang});
}

void document::item_of(std::string lead, std::string text, std::size_t hang) {
    last().blocks.emplace_back(line{line_as::item, std::move(text), std::move(lead), 2, hang});
}

void document::copied(std::string text) {
    last().blocks.emplace_back(line{line_as::copied, std::move(text), {}, 2, 2});
}

namespace {

/// Without what stands in brackets to be typed.
void untyped(std::string& text) {
    for (auto from = text.find(" ("); from != std::string::npos; from = text.find(" (", from)) {
        const auto to = text.find(')', from);
        const auto at = text.find("--", from);
        if (to != std::string::npos && at < to) {
            text.erase(from, to + 1 - from);
        } else {
            ++from;
        }
    }
}

}  // namespace

document on_paper(document d) {
    for (section& s : d.sections) {
        untyped(s.heading);
        for (auto& block : s.blocks) {
            auto* l = std::get_if<line>(&block);
            if (l == nullptr || l->as == line_as::copied) {
                continue;
            }
            untyped(l->text);
        }
    }
    return d;
}

void document::caution(std::string text) {
    last().blocks.emplace_back(line{line_as::caution, std::move(text), "! ", 0, 2});
}

void document::add(line l) {
    last().blocks.emplace_back(std::move(l));
}

void document::copy(const std::string& text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        add({line_as::copied, text.substr(at, end - at), {}, 0, 0});
        at = end + 1;
    }
}

void document::tell(std::string heading, std::vector<line> lines, bool apart) {
    if (!lines.empty()) {
        section& s = open(std::move(heading), apart);
        for (line& l : lines) {
            s.blocks.emplace_back(std::move(l));
        }
    }
}

void document::append(document more) {
    bool first = true;
    for (section& s : more.sections) {
        s.apart = s.apart || first;
        first = false;
        sections.push_back(std::move(s));
    }
}

void document::show(typed_table t) {
    if (!t.rows.empty()) {
        last().blocks.emplace_back(std::move(t));
    }
}

void document::show(drawing d) {
    last().blocks.emplace_back(std::move(d));
}

}  // namespace pelage::io
