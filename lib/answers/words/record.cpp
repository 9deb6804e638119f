#include "answers/words/record.hpp"

#include <array>
#include <map>

#include <pelage/base/phrase.hpp>

namespace pelage::io {

std::string services_words(const std::vector<service_kind>& all) {
    constexpr std::array<const char*, service_names.size()> titles{
        "full groom",      "tidy",           "bath and brush",      "de-shed",
        "prep only",       "nails and ears", "puppy's first visit", "hand-strip",
        "rolling the coat"};
    std::vector<std::string> out;
    for (const service_kind s : all) {
        out.emplace_back(titles[static_cast<std::size_t>(s)]);
    }
    return joined(out, ", ");
}

std::string lengths_words(const std::vector<logged_length>& all, length_unit u) {
    std::string out;
    for (const bool measured : {true, false}) {
        std::vector<std::pair<std::string, std::vector<std::string>>> by_length;
        for (const logged_length& l : all) {
            if (l.measured != measured) {
                continue;
            }
            if (by_length.empty() || by_length.back().first != show(l.is, u)) {
                by_length.push_back({show(l.is, u), {}});
            }
            by_length.back().second.push_back(l.whom);
        }
        std::vector<std::string> parts;
        for (const auto& [length, places] : by_length) {
            parts.push_back(length + " " + joined(places, ", "));
        }
        if (!parts.empty()) {
            out += (out.empty() ? "" : "; ") + std::string(measured ? "measured " : "as planned ") +
                   joined(parts, "; ");
        }
    }
    return out;
}

std::string mats_words(const std::optional<std::vector<logged_mat>>& all) {
    if (!all) {
        return {};
    }
    std::vector<std::string> out;
    for (const logged_mat& m : *all) {
        out.push_back(m.whom + (m.grade ? " (" + std::string(name(*m.grade)) + ")" : ""));
    }
    return out.empty() ? "none" : joined(out, ", ");
}

std::string skin_words_of(const std::vector<logged_skin>& all, length_unit u) {
    std::vector<std::string> out;
    for (const logged_skin& s : all) {
        const skin_finding f{{}, s.state, s.size, s.known};
        out.push_back(s.whom + ": " + in_words(f, s.size ? show(*s.size, u) : ""));
    }
    return joined(out, ", ");
}

std::string tools_words(const std::vector<logged_tool>& all) {
    std::vector<std::string> out;
    for (const logged_tool& t : all) {
        out.push_back(t.tool + ": " + joined(t.places, ", "));
    }
    return joined(out, "; ");
}

std::string minutes_words(const work& w) {
    return detail::whole_minutes(w) + " min";
}

}  // namespace pelage::io
