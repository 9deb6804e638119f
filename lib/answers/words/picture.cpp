#include "answers/words/picture.hpp"

#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

namespace pelage::io {

std::string short_title(const zone& z) {
    std::string text = z.paired ? z.one : z.title;
    const std::string mark = "{side} ";
    if (const auto at = text.find(mark); at != std::string::npos) {
        text.erase(at, mark.size());
    }
    return text;
}

namespace {

/// What is done with the tool: "rake", "curry", "card".
std::string carded_words(const std::string& tool) {
    const std::string last = tool.substr(tool.rfind(' ') + 1);
    return last.empty() || last == "knife" ? "card" : last;
}

}  // namespace

std::string figure_words(const pictured_place& p, length_unit u) {
    switch (p.as) {
        case shown_as::cut:
            return !p.leaves              ? ""
                   : u == length_unit::mm ? number(*p.leaves)
                                          : fraction_of_inch(*p.leaves);
        case shown_as::left:
            return "leave";
        case shown_as::skin:
            return "don't touch: hurt";
        case shown_as::carded:
            return carded_words(p.carded_with);
        case shown_as::stripped:
            return "strip";
        case shown_as::not_done:
            return "not done";
        case shown_as::vet:
            return "veterinarian";
        case shown_as::ask:
            return "ask first";
        case shown_as::unsaid:
            break;
    }
    return {};
}

std::string mat_words(const pictured_place& p) {
    if (!p.mat) {
        return {};
    }
    const std::string_view grade = in_words(*p.mat);  // "a matted area"
    return std::string(grade.substr(2)) + (p.combed_out    ? ": comb out"
                                           : p.clipped_off ? " off"
                                                           : "");
}

std::string mat_label(const pictured_place& p) {
    return p.combed_out    ? "comb out"
           : p.clipped_off ? "clip off"
                           : std::string(in_words(*p.mat).substr(2)) + " stays";
}

std::string round_words(const pictured_place& p) {
    return !p.round ? "" : *p.round == skin_state::lump ? "round the lump" : "round the scab";
}

std::string view_title(drawn_side s) {
    switch (s) {
        case drawn_side::left:
            return "from the left";
        case drawn_side::right:
            return "from the right";
        case drawn_side::below:
            break;
    }
    return "from below";
}

std::string map_words() {
    return "The outline is only a map: go by your own dog's shape, ears and tail.";
}

std::string view_words(const picture_request& p, const std::vector<place>& shown, const body& b) {
    std::vector<std::pair<std::string, std::vector<std::string>>> said;
    for (const pictured_place& one : p.places) {
        if (std::find(shown.begin(), shown.end(), one.at) == shown.end() ||
            (one.as == shown_as::unsaid && !one.mat && !one.round)) {
            continue;
        }
        std::string words = figure_words(one, p.units);
        if (one.as == shown_as::cut && one.leaves) {
            words = show(*one.leaves, p.units);
        }
        words = (one.later ? "another day, then " : "") + words;
        if (one.mat) {
            words += (words.empty() ? "(" : " (") + mat_words(one) + ")";
        }
        if (one.round) {
            words += (words.empty() ? "" : ", ") + round_words(one);
        }
        const auto at =
            std::find_if(said.begin(), said.end(), [&](const auto& s) { return s.first == words; });
        auto& to = at == said.end() ? said.emplace_back(words, std::vector<std::string>{}) : *at;
        to.second.push_back(title(b, one.at));
    }
    std::string out;
    for (const auto& [words, places] : said) {
        out += (out.empty() ? "" : " ") + words + ": " + joined(places, ", ") + ".";
    }
    return out;
}

}  // namespace pelage::io
