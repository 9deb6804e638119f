// Blades by their labels. A label is a name, not a measurement: a slip of one letter can be a blade
// ten times as long, so only blades of the same number are ever suggested.
#include <algorithm>

#include <fmt/format.h>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>

#include "data/read/parts.hpp"

namespace pelage::io {

namespace {

constexpr std::string_view blade_mark = "blade ";

/// The number a label begins with: "7" of "7FW", "5/8" of "5/8 toe"; fractions written as one
/// character are spelt out.
std::string number_of(std::string_view label) {
    const auto ends = std::min(label.find_first_not_of("0123456789./"), label.size());
    const std::string_view rest = label.substr(ends);
    const std::string number{label.substr(0, ends)};
    return rest.starts_with("½") ? number + ".5" : rest.starts_with("¾") ? number + ".75" : number;
}

}  // namespace

std::string blades_like(std::string_view label, const std::vector<std::string>& known) {
    const std::string number = number_of(label.substr(0, 40));
    std::vector<std::string> like;
    for (const std::string& id : known) {
        if (edits(label.substr(0, 40), id) == 0) {
            return "did you mean \"" + id + "\"?";  // but for small and capital letters
        }
        if (!number.empty() && number_of(id) == number) {
            like.push_back(id == "1" || id == "2" ? "\"blade " + id + '"' : '"' + id + '"');
        }
    }
    return like.empty() ? "write it as etched, such as \"10\", \"7F\" or \"5/8 long\""
                        : "right would be " + one_of(like);
}

bool asks_back(word& w, faults& out) {
    const bool sure = w.text.starts_with(blade_mark);
    if (sure) {
        w.text.erase(0, blade_mark.size());
    }
    if (w.text == "5/8" || w.text == "7/8") {
        const std::string long_one =
            w.text == "5/8" ? "\"5/8 long\" for the blade that leaves 16 mm, or " : "";
        out.add(
            w.at, errc::ambiguous,
            fmt::format("this label could mean two things; found {}; write {}\"{} toe\" for the "
                        "narrow blade that leaves about 0.8 mm{}",
                        shown(w.text), long_one, w.text,
                        w.text == "5/8" ? "" : " (7/8 in is its width)"));
        return true;
    }
    if (!sure && (w.text == "1" || w.text == "2")) {
        out.add(
            w.at, errc::ambiguous,
            fmt::format("this label could be a blade or a comb; found {}; write \"blade {}\" for "
                        "the rare blade that leaves {} mm, or name the comb by its length",
                        shown(w.text), w.text, w.text == "1" ? 19 : 16));
        return true;
    }
    return false;
}

std::optional<std::string> blade_named(const word& w, page& p) {
    word label = w;
    if (asks_back(label, p.out)) {
        return std::nullopt;
    }
    if (find(p.known.blades, label.text) != nullptr ||
        (p.drawer != nullptr && find_blade(*p.drawer, label.text) != nullptr)) {
        return label.text;
    }
    std::vector<std::string> known = ids(p.known.blades);
    if (p.drawer != nullptr) {
        for (const kit_blade& b : p.drawer->blades) {
            known.push_back(b.spec.id);
        }
    }
    p.out.add(w.at, errc::unknown,
              fmt::format("unknown blade; found {}; {}", shown(label.text),
                          blades_like(label.text, known)));
    return std::nullopt;
}

}  // namespace pelage::io
