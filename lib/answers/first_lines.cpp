#include "answers/first_lines.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

#include "answers/layout.hpp"

namespace pelage::io {

std::string alert_line(const dog& d, std::size_t width) {
    return d.alerts.empty() ? std::string{}
                            : wrapped("ALERT: ", joined(titles(d.alerts), "; ") + ".", 2, width);
}

std::string note_line(const dog& d, std::size_t width) {
    std::string text = d.note;
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text.empty() ? std::string{} : wrapped("Note: ", text, 2, width);
}

}  // namespace pelage::io
