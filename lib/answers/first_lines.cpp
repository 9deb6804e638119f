#include "answers/first_lines.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>

namespace pelage::io {

void say_alert(document& d, const dog& of) {
    if (!of.alerts.empty()) {
        d.say_of("ALERT: ", joined(titles(of.alerts), "; ") + ".");
    }
}

void say_note(document& d, const dog& of) {
    std::string text = of.note;
    std::replace(text.begin(), text.end(), '\n', ' ');
    if (!text.empty()) {
        d.say_of("Note: ", text);
    }
}

}  // namespace pelage::io
