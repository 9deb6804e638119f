// A test patch in words: why it is refused, and what to write into salon.toml.
#include "answers/words/test_patch.hpp"

#include <pelage/answers/kit.hpp>

#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

/// "30", "1.85": hundredths without the zeros that say nothing.
std::string to_hundredths(double v) {
    std::string s = detail::fixed(v, 2);
    s.erase(s.find_last_not_of('0') + 1);
    if (s.back() == '.') {
        s.pop_back();
    }
    return s;
}

/// As a file holds it: to 0.01 mm, which four digits of an inch keep.
std::string written(const length& l, length_unit u) {
    return u == length_unit::mm ? to_hundredths(in_mm(l)) + " mm"
                                : detail::fixed(in_mm(l) / 25.4, 4) + " in";
}

/// The comb's id as a file may write it: by the trade's fraction where it has one.
std::string written(const comb& c, length_unit u) {
    return u == length_unit::mm || c.in_inch.empty() ? c.id : c.in_inch + " in";
}

std::string where_and_when(const test_patch& r) {
    std::string out = "test patch";
    out += r.where ? ", " + title(r.reference.dog_body, *r.where) : "";
    out += ", " + title(r.tool);
    return out + (r.today ? ", " + iso(*r.today) : "");
}

}  // namespace

std::vector<std::string> salon_lines(const calibration& l, const test_patch& r, length_unit u) {
    if (l.lay) {
        return {"[override.coats." + std::string(name(r.coat)) + ".lay]",
                "best = \"" + to_hundredths(l.lay->best) + " deg\"", "basis = \"measured\"",
                "note = \"" + where_and_when(r) + "\""};
    }
    return {l.of_comb ? "[[kit.comb]]" : "[[kit.blade]]",
            "id = \"" + (l.of_comb ? written(*r.tool.over, u) : r.tool.tool.id) + "\"",
            "measured = \"" + written(*l.measured, u) + "\""};
}

std::string refusal_text(const calibration& l, const test_patch& r, length_unit u) {
    const refused_patch& no = *l.refused;
    const std::string tool = held_words(r.tool, u);
    const std::string counted = show(no.counted, u);
    const std::string found = show(r.found, u);
    switch (no.why) {
        case patch_slip::comb_tells_no_lay:
            return "a comb's patch doesn't tell the angle of the lay: how far its teeth lift the "
                   "hair is a guess; it sets the comb's own length, or run a bare blade over the "
                   "patch";
        case patch_slip::reversed_tells_no_lay:
            return "against the lay the hair is raised and its angle doesn't show; clip the patch "
                   "with the lay";
        case patch_slip::blade_shows_no_lay:
            return "by your own figures a blade of " + counted +
                   " shows nothing of the lay (its share is 0), so no angle can be told; use a "
                   "blade of " +
                   show(mm(3.2), u) + " or less";
        case patch_slip::shorter_than_reversed:
            return "with the lay " + tool + " leaves no less than against it, " + counted +
                   "; found " + found +
                   ": measure again combed out and dry; if it is so, the blade leaves less than "
                   "it says: run it against the lay and give that length";
        case patch_slip::longer_than_believed:
            return "found " + found + ", over four times what " + tool + " says (" + counted +
                   "); that is taken for a slip: did the blade cut the whole patch?";
        case patch_slip::no_one_length:
            return "an adjustable blade has no one length: write what each mark of its lever "
                   "leaves as settings = [\"" +
                   written(no.made, u) + "\"]";
        case patch_slip::far_from_label:
            break;
    }
    return "the patch would make " + tool + " " + show(no.made, u) + "; etched is " +
           show(no.etched, u) +
           ", and more than four times off is taken for a slip: measure again, combed out and "
           "dry, and look at the label";
}

}  // namespace pelage::io
