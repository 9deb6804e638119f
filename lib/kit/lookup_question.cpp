// From what a person types to what is meant.
#include <algorithm>
#include <array>

#include <pelage/base/length_text.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/planner/kit_setups.hpp>

namespace pelage {

namespace {

[[noreturn]] void ask_back(const std::string& what) {
    throw error(errc::ambiguous, what);
}

std::string tidy(std::string_view s) {
    std::string out;
    for (const char c : detail::trimmed(s)) {
        out += c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c;
    }
    const std::array<std::pair<std::string_view, std::string_view>, 7> spelt{{{" \u00bd", ".5"},
                                                                              {"\u00bd", ".5"},
                                                                              {" \u00be", ".75"},
                                                                              {"\u00be", ".75"},
                                                                              {" 1/2", ".5"},
                                                                              {" 3/4", ".75"},
                                                                              {"BLADE", ""}}};
    for (const auto& [from, to] : spelt) {
        for (auto at = out.find(from); at != std::string::npos && (at > 0 || from == "BLADE");
             at = out.find(from)) {
            out.replace(at, from.size(), to);
        }
    }
    std::string_view t = detail::trimmed(out);
    if (!t.empty() && t.front() == '#') {
        t.remove_prefix(1);
    }
    return std::string(t);
}

const char* width_trap(bool five) {
    return five
               ? "\"5/8\" means two blades: on a toe blade it is the width, and it leaves about "
                 "0.8 mm; a long one leaves 16 mm; type \"5/8 toe\" or \"5/8 long\", or the length "
                 "\"5/8in\""
               : "\"7/8\" is a toe blade's width: it leaves about 0.8 mm, and as a length it is "
                 "22 mm; type \"7/8 toe\", or the length \"7/8in\"";
}

/// The blade called `name`, looked for in the reference, then in the kit; F and FC both mean full
/// teeth, W and T a wide edge of the same length.
const blade* blade_called(const lookup_request& r, std::string name) {
    if (name.size() > 2 && name.substr(name.size() - 2) == "FC") {
        name.pop_back();
    }
    if (name.size() > 1 && name.back() == 'T' && name[name.size() - 2] != 'H') {
        name.back() = 'W';
    }
    const auto same = [&](const std::string& id) { return tidy(id) == name; };
    for (const blade& b : r.reference.blades) {
        if (same(b.id)) {
            return &b;
        }
    }
    for (const kit_blade& b : r.tools.blades) {
        if (same(b.spec.id)) {
            return &b.spec;
        }
    }
    return nullptr;
}

bool numbered(const std::string& s) {
    return !s.empty() && detail::is_digit(s.front());
}

/// "7X": a blade's number with letters that mean nothing.
void refuse_suffix(const lookup_request& r, const std::string& name) {
    const auto letters = name.find_first_not_of("0123456789./");
    if (!numbered(name) || letters == std::string::npos) {
        return;
    }
    const std::string number = name.substr(0, letters);
    std::string known;
    std::string high;  // "5/8 HT": its long teeth are what it is called by here
    for (const blade& b : r.reference.blades) {
        if (b.etched == number) {
            high = name.ends_with("HT") && b.id.ends_with("long")
                       ? "did you mean \"" + b.id + "\"? "
                       : high;
            known += (known.empty() ? "\"" : ", \"") + b.id + "\" (" + show(b.stated.best) + ")";
        }
    }
    if (!known.empty()) {
        throw error(errc::unknown, "no blade " + number + " has the letters \"" +
                                       name.substr(letters) + "\"; found \"" + r.text + "\"; " +
                                       high + "known: " + known);
    }
}

question as_blade(const lookup_request& r, const blade& b) {
    question q;
    q.what = question::form::of_blade;
    const kit_blade* mine = find_blade(r.tools, b.id);
    q.tool = bare(mine != nullptr ? as_measured(*mine) : b, direction::with_lay);
    const bool whole = b.id.find_first_not_of("0123456789") == std::string::npos;
    if (whole && r.kind == asked_kind::any) {
        q.hints.push_back(question_hint::as_millimetres);
    }
    return q;
}

std::optional<comb> comb_of(const lookup_request& r, const length& l) {
    // "1 in" is the comb of 25 mm: the trade rounds, and the spread says how far
    const auto called = [&](const comb& c) {
        return gap(c.stated.best, l) < mm(0.35) || (c.stated.low <= l && l <= c.stated.high);
    };
    for (const kit_comb& c : r.tools.combs) {
        if (called(c.spec)) {
            return as_measured(c);
        }
    }
    const auto at = std::find_if(r.reference.combs.begin(), r.reference.combs.end(), called);
    return at == r.reference.combs.end() ? std::nullopt : std::optional{*at};
}

/// "in the kit 2 of the long set is 10 mm; ": which combs of the kit's sets bear that label.
std::string printed_on(const kit& k, const std::string& label) {
    std::string out;
    for (const kit_comb& c : k.combs) {
        for (const comb_label& l : c.labels) {
            if (l.label == label) {
                out += "in the kit " + label + " of " + l.set + " is " + c.spec.id + "; ";
            }
        }
    }
    return out;
}

length comb_length(const lookup_request& r, const std::string& text) {
    const parsed_length l = parse_length(text);
    if (l.ok()) {
        return l.value;
    }
    if (text.empty()) {
        ask_back("which comb? write its length, as in \"13 mm comb\"");
    }
    // no comb is a fraction of a millimetre
    if (const parsed_length inch = parse_length(text + " in");
        l.fault == length_fault::no_unit && text.find('/') != std::string::npos && inch.ok()) {
        return inch.value;
    }
    std::string_view rest = text;
    const auto n = detail::take_decimal(rest);
    if (l.fault == length_fault::no_unit && n && rest.empty()) {
        if (r.barber && *n >= 1.0 && *n <= 16.0 && *n == static_cast<int>(*n)) {
            return barber_guard(static_cast<int>(*n));
        }
        ask_back("a bare comb number is not a length: sets number both ways; found \"" + text +
                 "\"; " + printed_on(r.tools, text) +
                 "type the comb's length (\"13 mm\"), or name the convention: with --barber, " +
                 "guard n is n/8 in (2 is 6.4 mm)");
    }
    throw error(l.fault == length_fault::out_of_range ? errc::range : errc::unit,
                complaint(l, text));
}

question as_comb(const lookup_request& r, const std::string& text, const std::string& under) {
    question q;
    q.what = question::form::of_comb;
    const length l = comb_length(r, text);
    const std::optional<comb> known = comb_of(r, l);
    comb c = known.value_or(comb{});
    if (!known) {
        c.id = show(l);
        c.stated = exactly(l, {basis::measured, {}, false, {}});
        q.hints.push_back(question_hint::comb_as_typed);
    }
    const blade* b = blade_called(r, tidy(under));
    if (b == nullptr) {
        throw error(errc::unknown, "no blade is called \"" + under + "\"" +
                                       did_you_mean(under, ids(r.reference.blades)));
    }
    const kit_blade* mine = find_blade(r.tools, b->id);
    q.tool = combed(std::move(c), mine != nullptr ? as_measured(*mine) : *b, direction::with_lay);
    return q;
}

/// "13 mm comb over 10", "comb 13 mm", "13 mm comb": the comb and the blade under it.
std::optional<question> comb_phrase(const lookup_request& r) {
    std::string text{detail::trimmed(r.text)};
    std::string low = text;
    std::transform(low.begin(), low.end(), low.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    std::string under = r.tools.under_comb;
    if (const auto at = low.find(" over "); at != std::string::npos) {
        under = text.substr(at + 6);
        text.resize(at);
        low.resize(at);
    }
    const auto at = low.find("comb");
    if (at == std::string::npos && r.kind != asked_kind::comb) {
        return std::nullopt;
    }
    if (at != std::string::npos) {
        text.erase(at, 4);
    }
    return as_comb(r, std::string(detail::trimmed(text)), under);
}

bool says_blade(const lookup_request& r) {
    constexpr std::string_view word = "blade";
    return std::search(r.text.begin(), r.text.end(), word.begin(), word.end(),
                       [](char a, char b) { return a == b || a + 32 == b; }) != r.text.end();
}

/// "T84": a letter and a number.
bool wide_by_number(const std::string& name) {
    return name.size() > 1 && name.size() < 6 && (name.front() == 'T' || name.front() == 'W') &&
           name.find_first_not_of("0123456789", 1) == std::string::npos;
}

question bare_number(const lookup_request& r, const std::string& name) {
    if (name == "5/8" || name == "7/8") {
        ask_back(width_trap(name == "5/8"));
    }
    if ((name == "1" || name == "2") && r.kind == asked_kind::any && !says_blade(r)) {
        const std::string rare = name == "1" ? "19 mm" : "16 mm";
        ask_back("\"" + name + "\" means too many things: a rare blade (" + rare +
                 "), a comb of some set, or a length; type it with --kind blade or comb, or \"" +
                 name + "mm\", or the comb's length");
    }
    if (const blade* b = blade_called(r, name)) {
        return as_blade(r, *b);
    }
    const parsed_length l = parse_length(r.text);
    if (l.ok()) {
        throw error(errc::type, "a length is no blade; found \"" + r.text +
                                    "\"; leave out --kind blade, or write a blade such as 7F");
    }
    const auto odd = name.find_first_not_of("0123456789./");
    const std::string letters = odd == std::string::npos ? "" : name.substr(odd);
    const bool short_suffix = letters.size() <= 2 && letters.find(',') == std::string::npos;
    if (numbered(name) && !letters.empty() && !short_suffix) {
        throw error(errc::unit, complaint(l, r.text));
    }
    if (name.find('/') != std::string::npos && letters.empty()) {
        if (const parsed_length inch = parse_length(name + " in"); !inch.ok()) {
            throw error(errc::unit, complaint(inch, r.text));
        }
        ask_back("a bare fraction could be a length or a blade; found \"" + r.text + "\"; type \"" +
                 r.text + "in\" for the length" +
                 (blade_called(r, name + " LONG") != nullptr
                      ? " or \"" + r.text + " long\" for the blade"
                      : ""));
    }
    refuse_suffix(r, name);
    if (wide_by_number(name)) {
        ask_back(
            "T or W before a number is a wide blade by its maker's own number, which is no "
            "length; found \"" +
            r.text +
            "\"; type the length that stands on it, as in \"2.4 mm\", or look up \"wide "
            "blade\"");
    }
    if (odd == std::string::npos) {
        throw error(errc::unknown, "no blade is called \"" + r.text + "\"; for the length type \"" +
                                       name + "mm\"");
    }
    throw error(
        errc::unknown,
        "not a blade, a comb or a length; found \"" + r.text + "\"" +
            (numbered(name) ? "" : did_you_mean(name, ids(r.reference.blades))) +
            "; write \"7F\", \"9mm\", \"3/8in\" or \"13 mm comb over 10\", or a breed or a mix "
            "that we know, such as \"poodle x beagle\"");
}

question read_unsaid(const lookup_request& r) {
    if (r.text.size() > 200) {
        throw error(errc::range,
                    "too long to be a blade, a comb or a length; write \"7F\", "
                    "\"9mm\", \"3/8in\" or \"13 mm comb over 10\"");
    }
    if (detail::trimmed(r.text).empty()) {
        throw error(errc::missing,
                    "nothing to look up; write \"7F\", \"9mm\", \"3/8in\" or "
                    "\"13 mm comb over 10\"");
    }
    if (const auto comb = comb_phrase(r)) {
        return *comb;
    }
    const parsed_length l = parse_length(r.text);
    if (l.ok() && r.kind == asked_kind::any) {
        question q;
        q.what = question::form::of_length;
        q.wanted = l.value;
        return q;
    }
    if (l.fault == length_fault::out_of_range && !l.unit.empty()) {
        throw error(errc::range, complaint(l, r.text));
    }
    return bare_number(r, tidy(r.text));
}

}  // namespace

question read_question(const lookup_request& r) {
    question q = read_unsaid(r);
    q.said = detail::trimmed(r.text);
    return q;
}

}  // namespace pelage
