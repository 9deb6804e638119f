// What speaks against what an entry says, in words.
#include <pelage/answers/record.hpp>
#include <pelage/base/phrase.hpp>

namespace pelage::io {

std::string doubt_words(const length_doubt& l, const dog& d, const reference_data& c,
                        length_unit u) {
    const std::string most = show(l.most, u);
    const std::string where = "(" + title(c.dog_body, l.at) + ")";
    switch (l.what) {
        case length_doubt::kind::beyond_coat:
            return "longer than hair of a " + coat_of(c, d.coat.value()).title + " gets " + where +
                   ", " + most + " at most (" + std::string(in_words(l.why.how)) + ")";
        case length_doubt::kind::longer_than_before:
            return "longer than what was measured before the cut " + where + ", " + most;
        case length_doubt::kind::longer_than_told:
            return "longer than today's hair as it was told " + where + ", " + most;
        case length_doubt::kind::longer_than_record:
            break;
    }
    return "longer than the record lets expect " + where + ", " + most + " in 9 of 10 dogs since " +
           in_words(*l.since);
}

std::string doubt_words(const tool_doubt& t) {
    std::vector<std::string> which = names(t.which);
    switch (t.what) {
        case tool_doubt::kind::lacking:
            return "the kit has no " + joined(which, " and no ") + "; found \"" + t.text + "\"" +
                   (t.near.empty() ? "" : "; it has " + listed(t.near));
        case tool_doubt::kind::out:
            return joined(which, ", ") + " is out for sharpening by the kit" +
                   (t.until ? ", until " + in_words(*t.until) : "");
        case tool_doubt::kind::unknown:
            break;
    }
    if (!t.complaint.empty()) {
        return t.complaint;
    }
    return "no blade, comb or tool of the hand is called so; found \"" + t.text + "\"" +
           (t.near.empty() ? "; write it like 'blade 7F', 'comb 13 mm' or scissors"
                           : "; did you mean \"" + t.near.front() + "\"?");
}

}  // namespace pelage::io
