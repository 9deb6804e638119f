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
        const bool health = of.health.empty() && of.heard && of.heard->in_note;
        d.say_of("Note: ", text + (health ? " (what ails it is told as health, too: --health or "
                                            "health in its file; a note changes no advice)"
                                          : ""));
    }
}

}  // namespace pelage::io
