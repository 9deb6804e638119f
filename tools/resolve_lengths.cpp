// --length as it is said in a shop: "16 mm", "7F all off", "half inch all over, legs 16 mm".
#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/model/mix.hpp>

#include "length_wish.hpp"

namespace pelage::cli {

namespace {

/// What is said of a double coat before any length; empty of others, or where the coat isn't known.
std::string first_of_a_double_coat(const dog& d, const workplace& w) {
    std::optional<coat_class> c = d.coat;
    if (!c && !d.mix.empty()) {
        try {
            c = expect_coat(d.mix, w.reference.genes, w.reference.coats).may_be.likeliest();
        } catch (const error&) {  // told where the mix is read
            return {};
        }
    }
    return c && double_coated(*c) ? coat_of(w.reference, *c).said_first : "";
}

/// The sheet leaves the whole dog about alike, so that a bare length or blade takes the place of all of it;
/// 1 mm, our own choice, is what a blade more or less may leave beside another.
bool about_one_length(const style& s) {
    std::optional<length> least;
    std::optional<length> most;
    for (const sheet_rule& r : s.rules) {
        if (r.what.target) {
            least = least ? shorter(*least, *r.what.target) : *r.what.target;
            most = most ? longer(*most, *r.what.target) : *r.what.target;
        }
    }
    return least && *most - *least <= mm(1.0);
}

}  // namespace

void apply_lengths(const std::string& text, const workplace& w, dog& d, faults& f) {
    if (text.empty()) {
        return;
    }
    if (d.style.empty()) {
        d.style = "one-length";
    }
    const style* sheet = find(w.styles, d.style);
    wish_reader reader(w, first_of_a_double_coat(d, w), f);
    for (const std::string& one : split_at(text, ',')) {
        const auto said = reader.read(std::string(detail::trimmed(one)));
        if (!said) {
            continue;
        }
        const bool bare = said->whom.empty();
        const bool replaced = sheet != nullptr && (sheet->adjustable || about_one_length(*sheet));
        const bool whole = said->whom == strings{"all"} && !said->what.how;
        if (whole && sheet != nullptr && !replaced) {
            f.say(errc::conflict,
                  "--length: one length over the whole dog, and the sheet \"" + d.style +
                      "\" has several; found \"" + text +
                      "\"; say where: 'body 16 mm', or write --style one-length or kennel");
            continue;
        }
        if (bare && said->what.target && sheet != nullptr && sheet->adjustable) {
            d.body_length = said->what.target;
        } else if (bare && sheet != nullptr && !replaced) {
            f.say(errc::conflict, "--length: the sheet \"" + d.style +
                                      "\" has no length of its own to replace; found \"" + text +
                                      "\"; say where: 'body " + text +
                                      "', or write another --style, such as one-length");
        } else {
            for (const std::string& whom : bare ? strings{"all"} : said->whom) {
                d.departures.push_back({whom, said->what});
            }
        }
    }
}

}  // namespace pelage::cli
