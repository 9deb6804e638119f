#include "kit/asked_tokens.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>

#include <pelage/base/phrase.hpp>

namespace pelage::asking {

namespace {

using word_choice = std::initializer_list<std::string_view>;

bool one_of_these(std::string_view w, word_choice all) {
    return std::find(all.begin(), all.end(), w) != all.end();
}

/// The words with a cursor.
class cursor {
  public:
    cursor(const std::vector<token>& all, std::size_t at) : all_(&all), at_(at) {}

    [[nodiscard]] std::size_t at() const { return at_; }
    [[nodiscard]] bool ended() const { return at_ >= all_->size(); }
    [[nodiscard]] std::string_view low(std::size_t ahead = 0) const {
        return at_ + ahead < all_->size() ? std::string_view((*all_)[at_ + ahead].low)
                                          : std::string_view{};
    }
    [[nodiscard]] const std::string& raw() const { return (*all_)[at_].raw; }
    void step(std::size_t n = 1) { at_ += n; }
    bool take(word_choice these) {
        const bool there = !ended() && one_of_these(low(), these);
        at_ += there ? 1 : 0;
        return there;
    }

  private:
    const std::vector<token>* all_;
    std::size_t at_;
};

constexpr std::string_view digits = "0123456789";

/// "13", "1/2", "8.5", "8½": digits and the marks of fractions only.
bool numeric(std::string_view s) {
    if (s.empty() || digits.find(s.front()) == std::string_view::npos) {
        return false;
    }
    const auto after = s.find_first_not_of("0123456789./");
    const std::string_view rest = after == std::string_view::npos ? "" : s.substr(after);
    return rest.empty() || rest == "\u00bd" || rest == "\u00be";
}

bool a_fraction(std::string_view s) {
    return numeric(s) && s.find('/') != std::string_view::npos;
}

/// The unit as parse_length takes it; empty if it is none.
std::string_view unit_of(std::string_view w) {
    if (one_of_these(w, {"mm", "millimetre", "millimetres", "millimeter", "millimeters"})) {
        return "mm";
    }
    if (one_of_these(w, {"cm", "centimetre", "centimetres", "centimeter", "centimeters"})) {
        return "cm";
    }
    return one_of_these(w, {"in", "inch", "inches", "\"", "''"}) ? "in" : "";
}

/// "7f", "13mm", "1/2\"": a number with letters right behind it.
struct glued {
    std::string number;
    std::string behind;
};
std::optional<glued> glued_of(std::string_view s) {
    const auto after = s.find_first_not_of("0123456789./");
    if (after == std::string_view::npos || after == 0) {
        return std::nullopt;
    }
    const std::string_view rest = s.substr(after);
    const bool letters = std::all_of(rest.begin(), rest.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || c == '"' || c == '\'';
    });
    if (!letters || rest.size() > 11) {
        return std::nullopt;
    }
    return glued{std::string(s.substr(0, after)), std::string(rest)};
}

/// Whether "in" after a number is no unit: "7 in reverse", "10 in the armpit".
bool only_a_preposition(const cursor& c, bool whole) {
    return c.low() == "in" &&
           (one_of_these(c.low(1), {"reverse", "reversed", "the", "his", "her", "a", "my"}) ||
            (whole && !c.low(1).empty() &&
             !one_of_these(c.low(1), {"comb", "combs", "guard", "all", "on", "over", "mm", "with",
                                      "against", "vs", "or", "long", "for"})));
}

/// "half an inch", "three quarters of an inch", "an inch and a half", "one inch".
std::optional<std::string> inches_in_words(cursor& c) {
    cursor n = c;
    std::string out;
    if (n.take({"half"})) {
        out = "1/2";
    } else if (n.take({"quarter"})) {
        out = "1/4";
    } else if (n.take({"three"})) {
        out = n.take({"quarter", "quarters"}) ? "3/4" : n.take({"eighths", "eights"}) ? "3/8" : "";
    } else if (n.take({"an", "one", "a"})) {
        out = n.take({"quarter"}) ? "1/4" : n.take({"half"}) ? "1/2" : "1";
    } else if (one_of_these(n.low(), {"inch"})) {
        out = "1";
    }
    if (out.empty()) {
        return std::nullopt;
    }
    n.take({"of"});
    n.take({"an", "a"});
    if (!n.take({"inch", "inches"})) {
        return std::nullopt;
    }
    if (out == "1" && n.low() == "and" && n.low(1) == "a" && n.low(2) == "half") {
        n.step(3);
        out = "1 1/2";
    }
    c = n;
    return out + " in";
}

/// A number and what belongs to it, in either reading.
struct measure_said {
    std::string text;
    bool is_length = false;
};

std::optional<measure_said> number_at(cursor& c) {
    if (auto inches = inches_in_words(c)) {
        return measure_said{*inches, true};
    }
    if (const auto g = glued_of(c.low())) {
        const std::string_view unit = unit_of(g->behind);
        const std::string raw = c.raw();
        c.step();
        return unit.empty() ? measure_said{raw, false}
                            : measure_said{g->number + " " + std::string(unit), true};
    }
    if (!numeric(c.low())) {
        return std::nullopt;
    }
    std::string text{c.low()};
    c.step();
    if (a_fraction(c.low()) || one_of_these(c.low(), {"\u00bd", "\u00be"})) {
        text += " " + std::string(c.low());
        c.step();
    } else if (const auto g = glued_of(c.low());
               g && a_fraction(g->number) && !unit_of(g->behind).empty()) {
        text += " " + g->number + " " + std::string(unit_of(g->behind));
        c.step();
        return measure_said{text, true};
    }
    const bool whole = text.find_first_not_of(digits) == std::string::npos && text != "1";
    if (const std::string_view unit = unit_of(c.low());
        !unit.empty() && !only_a_preposition(c, whole)) {
        c.step();
        return measure_said{text + " " + std::string(unit), true};
    }
    if (one_of_these(c.low(), {"f", "fc", "w", "fw", "t", "ft", "ht"})) {
        text += c.low();
        c.step();
    } else if (c.low() == "toe" || (c.low() == "long" && text.find('/') != std::string::npos)) {
        text += " " + std::string(c.low());
        c.step();
    }
    return measure_said{text, false};
}

bool same_mark(std::string_view a, std::string_view b) {
    return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) {
               const auto low = [](char z) {
                   return z >= 'A' && z <= 'Z' ? static_cast<char>(z + 32) : z;
               };
               return low(x) == low(y);
           });
}

/// The length of the kit's one comb that bears this mark; empty if none does.
std::string marked(const kit& k, const std::string& mark) {
    std::vector<std::string> lengths;
    std::vector<std::string> told;
    for (const kit_comb& comb : k.combs) {
        for (const comb_label& l : comb.labels) {
            if (same_mark(l.label, mark)) {
                if (std::find(lengths.begin(), lengths.end(), comb.spec.id) == lengths.end()) {
                    lengths.push_back(comb.spec.id);
                }
                told.push_back(l.set + " (" + comb.spec.id + ")");
            }
        }
    }
    if (lengths.size() > 1) {
        throw error(errc::ambiguous, "several combs of the kit are marked \"" + mark +
                                         "\": " + listed(told) + "; write the length, as in \"" +
                                         lengths.front() + " comb\"");
    }
    return lengths.empty() ? "" : lengths.front();
}

bool has_marks(const kit& k) {
    return std::any_of(k.combs.begin(), k.combs.end(), [](const kit_comb& c) {
        return std::any_of(c.labels.begin(), c.labels.end(),
                           [](const comb_label& l) { return !l.label.empty(); });
    });
}

constexpr std::string_view mark_unknown =
    "; write its length, as in \"13 mm comb\", or give the comb its mark in the kit's file "
    "([[kit.comb_set]])";

/// A comb by what is printed on it: "comb C", "C comb".
std::optional<std::string> comb_by_mark(cursor& c, const lookup_request& r) {
    const bool first = one_of_these(c.low(), {"comb", "guard"});
    const bool behind = one_of_these(c.low(1), {"comb", "guard"});
    if (!first && (!behind || c.low() == "a")) {
        return std::nullopt;
    }
    const std::string_view said = c.low(first ? 1 : 0);
    const bool short_mark = said.size() == 1 || numeric(said);
    if (said.empty() || (numeric(said) && r.barber)) {
        return std::nullopt;
    }
    cursor n = c;
    n.step(first ? 1 : 0);
    const std::string mark = n.raw();
    const std::string length = marked(r.tools, mark);
    if (!length.empty()) {
        c.step(2);
        return length;
    }
    if (short_mark && !numeric(said)) {
        throw error(errc::unknown, "no comb of the kit is marked \"" + mark + "\"" +
                                       (has_marks(r.tools) ? "" : ", nor is any other") +
                                       std::string(mark_unknown));
    }
    return std::nullopt;
}

/// "over 10", behind a comb.
std::string over_what(cursor& c) {
    cursor n = c;
    if (!n.take({"over", "on"})) {
        return {};
    }
    const bool over = c.low() == "over";
    n.take({"a", "the"});
    n.take({"blade", "number", "no"});
    const auto under = number_at(n);
    if (!under || under->is_length || !(over || under->text.size() < 4)) {
        return {};
    }
    n.take({"blade"});
    c = n;
    return " over " + under->text;
}

/// A blade that has a name and no number: "adjustable", or one of the kit's own.
std::optional<std::string> blade_by_name(cursor& c, const lookup_request& r) {
    if (c.ended()) {
        return std::nullopt;
    }
    const auto called = [&](const blade& b) {
        return digits.find(b.id.front()) == std::string_view::npos && same_mark(b.id, c.raw());
    };
    const auto known = std::find_if(r.reference.blades.begin(), r.reference.blades.end(), called);
    const auto mine = std::find_if(r.tools.blades.begin(), r.tools.blades.end(),
                                   [&](const kit_blade& b) { return called(b.spec); });
    if (known == r.reference.blades.end() && mine == r.tools.blades.end()) {
        return std::nullopt;
    }
    std::string id = c.raw();
    c.step();
    return id;
}

std::string comb_text(cursor& c, const std::string& what) {
    return what + " comb" + over_what(c);
}

}  // namespace

std::vector<token> tokens_of(std::string_view text) {
    std::vector<token> out;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find_first_of(" \t\n\r", at), text.size());
        std::string one{text.substr(at, end - at)};
        at = end + 1;
        for (auto q = one.find("\u2019"); q != std::string::npos; q = one.find("\u2019")) {
            one.replace(q, 3, "'");
        }
        while (!one.empty() &&
               std::string_view("?!.,;:)").find(one.back()) != std::string_view::npos) {
            one.pop_back();
        }
        const auto first = one.find_first_not_of("#\"'(");
        one.erase(0, first == std::string::npos ? one.size() : first);
        token t{one, {}};
        for (const char c : one) {
            t.low += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
        }
        if (t.low.ends_with("'s") && t.low.size() > 2 && t.low != "what's") {
            t.low.resize(t.low.size() - 2);
        }
        if (!t.raw.empty()) {
            out.push_back(std::move(t));
        }
    }
    return out;
}

std::string words_of(const std::vector<token>& all, std::size_t from, std::size_t to) {
    std::string out;
    for (std::size_t i = from; i < to; ++i) {
        out += (i == from ? "" : " ") + all[i].low;
    }
    return out;
}

std::optional<tool_phrase> tool_at(const std::vector<token>& all, std::size_t at,
                                   const lookup_request& r) {
    cursor c(all, at);
    if (auto length = comb_by_mark(c, r)) {
        return tool_phrase{comb_text(c, *length), c.at()};
    }
    const bool comb_said = c.take({"comb", "guard"});
    const bool blade_said = !comb_said && c.take({"blade"});
    const bool prefixed = c.take({"number", "no", "nr", "num", "size"});
    if (!comb_said && !prefixed) {
        if (auto named = blade_by_name(c, r)) {
            c.take({"blade", "blades"});
            return tool_phrase{"blade " + *named, c.at()};
        }
    }
    const bool only_words = prefixed || blade_said;
    if (only_words && !numeric(c.low()) && !glued_of(c.low())) {
        return std::nullopt;
    }
    auto said = c.ended() ? std::nullopt : number_at(c);
    if (!said || (blade_said && said->is_length)) {  // "blade 3 mm" asks for a blade
        return std::nullopt;
    }
    if (comb_said || c.take({"comb", "combs", "guard", "attachment"}) ||
        (said->is_length && c.low() == "over")) {
        return tool_phrase{comb_text(c, said->text), c.at()};
    }
    const bool blade_behind = !said->is_length && c.take({"blade", "blades"});
    return tool_phrase{(blade_said || blade_behind ? "blade " : "") + said->text, c.at()};
}

}  // namespace pelage::asking
