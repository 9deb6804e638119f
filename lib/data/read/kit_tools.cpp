#include "data/read/kit_tools.hpp"

#include <algorithm>

#include <fmt/format.h>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

namespace pelage::io {

namespace {

/// A measured length this many times off is taken for a slip of the unit or the label, not for a
/// finding: with the lay on flat hair a blade leaves about twice what is etched (assumption).
constexpr double far_off = 4.0;

/// What a blade or comb leaves, as a maker says it or a salon measures it (assumption).
constexpr bounds tool_length{0.1, 100.0, true};

constexpr std::size_t longest_label = 20;

bool is_label(std::string_view s) {
    const auto letter_or_digit = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    };
    return !s.empty() && s.size() <= longest_label && letter_or_digit(s.front()) &&
           std::all_of(s.begin(), s.end(), [&](char c) {
               return letter_or_digit(c) || c == ' ' || c == '.' || c == '/' || c == '-';
           });
}

void check_measured(record& r, const std::optional<length>& measured,
                    const figure<length>& stated) {
    if (!measured || !(in_mm(stated.best) > 0.0)) {
        return;
    }
    if (*measured < stated.low / far_off || *measured > stated.high * far_off) {
        r.out().add(
            r.at("measured"), errc::range,
            fmt::format("too far from what is etched to be believed; found {} mm for {} mm; "
                        "measure again, or mend the label",
                        in_mm(*measured), in_mm(stated.best)));
    }
}

/// A blade of the reference with what the salon knows of its own: nobody can tell the teeth of some
/// labels without looking.
blade known_blade(record& r, const blade& b) {
    blade own = b;
    if (r.get("stated") != nullptr) {
        r.out().add(
            r.at("stated"), errc::conflict,
            fmt::format("blade {} is known; found a stated length; write measured = \"...\" "
                        "for what yours leaves",
                        shown(b.id)));
    }
    const auto cut = r.get_name<teeth>("teeth", presence::may, teeth_names);
    if (cut && b.cut != teeth::unknown && *cut != b.cut) {
        r.out().add(
            r.at("teeth"), errc::conflict,
            fmt::format("blade {} has {} teeth; found \"{}\"; write the label that is etched "
                        "on yours",
                        shown(b.id), name(b.cut), name(*cut)));
    }
    own.cut = cut.value_or(b.cut);
    return own;
}

blade own_blade(record& r, const word& label) {
    blade b;
    b.id = b.etched = label.text;
    if (!is_label(label.text)) {
        r.out().add(
            label.at, errc::syntax,
            fmt::format("a blade's label is made of letters, digits, blank, point, slash and "
                        "hyphen, {} at most; found {}; write it as etched",
                        longest_label, shown(label.text)));
    }
    const auto stated = r.get_length("stated", presence::must, tool_length);
    b.stated = exactly(stated.value_or(length{}),
                       evidence{basis::measured, {}, false, "as the salon says"});
    b.cut = r.get_name<teeth>("teeth", presence::must, teeth_names).value_or(teeth::unknown);
    return b;
}

/// The salon's adjustable blade: its own span in place of the reference's.
blade adjustable_blade(record& r, const blade& b) {
    blade own = b;
    const auto shortest = r.get_length("stated", presence::may, tool_length);
    const auto reach = r.get_length("reach", presence::may, tool_length);
    if (shortest) {
        own.stated = exactly(*shortest, evidence{basis::measured, {}, false, "as the salon says"});
    }
    own.reach = reach ? reach : b.reach;
    if (own.reach && !(own.stated.best < *own.reach)) {
        r.out().add(r.at(reach ? "reach" : "stated"), errc::conflict,
                    fmt::format("an adjustable blade reaches beyond its shortest mark; found {} to "
                                "{} mm; write stated for the shortest, reach for the longest",
                                in_mm(own.stated.best), in_mm(*own.reach)));
        return b;
    }
    return own;
}

/// The marks of an adjustable blade's lever, rising.
std::vector<length> get_settings(record& r, const blade& b) {
    std::vector<length> out;
    for (const word& w : r.get_words("settings", presence::may)) {
        const parsed_length l = parse_length(w.text);
        if (!l.ok()) {
            r.out().add(w.at, errc::unit, complaint(l, w.text));
        } else if (b.shape == edge::adjustable &&
                   (l.value < b.stated.best || l.value > b.reach.value_or(l.value))) {
            r.out().add(w.at, errc::range,
                        fmt::format("outside the blade's span; found {}; right is {} to {} mm, or "
                                    "write its own stated and reach",
                                    shown(w.text), in_mm(b.stated.best),
                                    in_mm(b.reach.value_or(b.stated.best))));
        } else {
            out.push_back(l.value);
        }
    }
    if (b.shape != edge::adjustable && r.at("settings") != r.at()) {
        r.out().add(
            r.at("settings"), errc::conflict,
            fmt::format("blade {} has no lever; found settings; leave them out", shown(b.id)));
        out.clear();
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

blade get_spec(record& r, page& p) {
    word label{r.get_text("id", presence::must), r.at("id")};
    const bool empty = label.text.empty();
    if (empty || asks_back(label, p.out)) {
        for (const char* key : {"stated", "teeth", "reach"}) {
            r.get(key);
        }
        return {};
    }
    if (const blade* b = find(p.known.blades, label.text)) {
        return b->shape == edge::adjustable ? adjustable_blade(r, *b) : known_blade(r, *b);
    }
    if (r.get("stated") != nullptr || r.get("teeth") != nullptr) {
        return own_blade(r, label);
    }
    p.out.add(label.at, errc::unknown,
              fmt::format("unknown blade; found {}; {}; a blade of your own needs stated = \"...\" "
                          "and teeth = \"...\" too",
                          shown(label.text), blades_like(label.text, ids(p.known.blades))));
    return {};
}

}  // namespace

kit_blade get_blade(record& r, page& p) {
    kit_blade b;
    b.spec = get_spec(r, p);
    b.count = r.get_count("count", 1, 99, 1);
    b.measured = r.get_length("measured", presence::may, tool_length);
    b.out = r.get_flag("out");
    b.out_until = r.get_day("out_until", presence::may);
    b.settings = get_settings(r, b.spec);
    get_price(r);
    r.done();
    if (b.measured && b.spec.shape == edge::adjustable) {
        p.out.add(r.at("measured"), errc::conflict,
                  "an adjustable blade has no one length; found a measured one; write what its "
                  "lever's marks leave as settings = [\"...\"]");
        b.measured.reset();
    }
    if (b.out_until && r.at("out") != r.at() && !b.out) {
        p.out.add(
            r.at("out"), errc::conflict,
            "a blade that is out until a day is out; found out = false; leave one of them out");
    }
    check_measured(r, b.measured, b.spec.stated);
    return b;
}

namespace {

const comb* comb_of_length(const reference_data& c, const length& l) {
    const auto at = std::find_if(c.combs.begin(), c.combs.end(),
                                 [&](const comb& o) { return gap(o.stated.best, l) < mm(0.005); });
    return at == c.combs.end() ? nullptr : &*at;
}

const comb* comb_of_inch(const reference_data& c, std::string_view text) {
    std::string_view inches = detail::trimmed(text);
    for (const std::string_view unit : {"inches", "inch", "in", "\""}) {
        if (inches.ends_with(unit)) {
            inches = detail::trimmed(inches.substr(0, inches.size() - unit.size()));
            break;
        }
    }
    const auto at = std::find_if(c.combs.begin(), c.combs.end(),
                                 [&](const comb& o) { return o.in_inch == inches; });
    return at == c.combs.end() ? nullptr : &*at;
}

std::optional<comb> comb_of_own_length(record& r, const std::string& id, const length& l) {
    constexpr double shortest = 2.0;
    constexpr double longest = 60.0;
    const auto stated = r.get_length("stated", presence::may, tool_length);
    if (!(in_mm(l) >= shortest && in_mm(l) <= longest)) {
        r.out().add(r.at("id"), errc::range,
                    fmt::format("no comb is as long or as short; found {}; right is {} to {} mm",
                                shown(id), shortest, longest));
        return std::nullopt;
    }
    if (!stated && r.at("stated") == r.at()) {
        r.out().add(r.at("id"), errc::missing,
                    fmt::format("a comb that the reference doesn't know needs its stated length; "
                                "found {}; write stated = {} too",
                                shown(id), shown(id)));
    }
    if (!stated) {
        return std::nullopt;
    }
    return comb{with_unit(in_mm(l), measure::length),
                exactly(*stated, evidence{basis::measured, {}, false, "as the salon says"}),
                {}};
}

std::optional<comb> get_comb_spec(record& r, page& p) {
    const std::string id = r.get_text("id", presence::must);
    const parsed_length l = parse_length(id);
    const comb* known = l.ok() ? comb_of_length(p.known, l.value) : nullptr;
    if (known == nullptr && l.ok() && l.unit != "mm" && l.unit != "cm") {
        known = comb_of_inch(p.known, id);
    }
    if (known != nullptr || !l.ok()) {
        r.get("stated");
    }
    if (known != nullptr && r.at("stated") != r.at()) {
        r.out().add(r.at("stated"), errc::conflict,
                    fmt::format("comb {} is known; found a stated length; write measured = \"...\" "
                                "for what yours leaves",
                                shown(known->id)));
    }
    if (known != nullptr) {
        return *known;
    }
    if (l.ok()) {
        return comb_of_own_length(r, id, l.value);
    }
    if (l.fault == length_fault::no_unit) {
        p.out.add(r.at("id"), errc::ambiguous,
                  fmt::format("a bare comb number is a name in somebody's set, not a length; found "
                              "{}; write its length, such as \"13 mm\"",
                              shown(id)));
    } else if (!id.empty()) {
        p.out.add(r.at("id"), errc::syntax,
                  fmt::format("a comb is named by its length; found {}; write it like \"13 mm\"",
                              shown(id)));
    }
    return std::nullopt;
}

std::vector<std::string> get_fits(record& r, page& p) {
    std::vector<std::string> out;
    for (const word& w : r.get_words("fits", presence::may)) {
        if (const auto id = blade_named(w, p)) {
            out.push_back(*id);
        }
    }
    return out;
}

}  // namespace

std::optional<kit_comb> get_comb(record& r, page& p) {
    kit_comb c;
    const auto spec = get_comb_spec(r, p);
    c.count = r.get_count("count", 1, 99, 1);
    c.measured = r.get_length("measured", presence::may, tool_length);
    c.fits = get_fits(r, p);
    get_price(r);
    r.done();
    if (!spec) {
        return std::nullopt;
    }
    c.spec = *spec;
    check_measured(r, c.measured, c.spec.stated);
    return c;
}

namespace {

/// A comb of a set, by the length written for it.
std::optional<comb> comb_in_set(const word& w, page& p) {
    const parsed_length l = parse_length(w.text);
    if (!l.ok()) {
        p.out.add(w.at, errc::unit,
                  l.fault == length_fault::no_unit
                      ? fmt::format("what is printed on a comb is a name, not a length; found {}; "
                                    "write its length, as in combs = {{ \"2\" = \"10 mm\" }}",
                                    shown(w.text))
                      : complaint(l, w.text));
        return std::nullopt;
    }
    if (const comb* known = comb_of_length(p.known, l.value)) {
        return *known;
    }
    if (const comb* known = l.unit == "in" ? comb_of_inch(p.known, w.text) : nullptr) {
        return *known;
    }
    constexpr double shortest = 2.0;
    constexpr double longest = 60.0;
    if (!(in_mm(l.value) >= shortest && in_mm(l.value) <= longest)) {
        p.out.add(w.at, errc::range,
                  fmt::format("no comb is as long or as short; found {}; right is {} to {} mm",
                              shown(w.text), shortest, longest));
        return std::nullopt;
    }
    return comb{with_unit(in_mm(l.value), measure::length),
                exactly(l.value, evidence{basis::measured, {}, false, "as the salon says"}),
                {}};
}

/// The combs of a set: a list of lengths, or a table of what is printed on each with its length.
std::vector<std::pair<std::string, word>> combs_listed(record& r) {
    std::vector<std::pair<std::string, word>> out;
    const member* m = r.get("combs", presence::must, "[\"10 mm\", \"13 mm\"]");
    if (m == nullptr) {
        return out;
    }
    if (m->value.kind != node_kind::table) {
        for (word& w : r.get_words("combs", presence::must)) {
            out.emplace_back("", std::move(w));
        }
        return out;
    }
    for (const member& one : m->value.members) {
        if (!is_label(one.key)) {
            r.out().add(one.at, errc::syntax,
                        fmt::format("what is printed on a comb is short: letters, digits, blank, "
                                    "point, slash and hyphen; found {}",
                                    shown(one.key)));
        }
        if (const auto text = text_at(one.value, one.key, text_kind::line, r.out())) {
            out.emplace_back(one.key, word{*text, one.value.at});
        }
    }
    return out;
}

}  // namespace

/// A set of combs: each goes into the kit, or one more of it where another set has it too.
void get_set(record& r, page& p, kit& k) {
    const std::string title = r.get_text("title", presence::must);
    const int count = r.get_count("count", 1, 99, 1);
    const std::vector<std::string> fits = get_fits(r, p);
    for (const auto& [label, w] : combs_listed(r)) {
        const auto spec = comb_in_set(w, p);
        if (!spec) {
            continue;
        }
        const auto before = std::find_if(k.combs.begin(), k.combs.end(),
                                         [&](const kit_comb& c) { return c.spec.id == spec->id; });
        if (before == k.combs.end()) {
            k.combs.push_back({*spec, count, {}, fits, {{title, label}}});
        } else if (before->fits != fits) {
            p.out.add(w.at, errc::conflict,
                      fmt::format("two sets have a comb of {} and it fits different blades; write "
                                  "fits alike in both, or one of the combs by a length of its own",
                                  spec->id));
        } else {
            before->count += count;
            before->labels.push_back({title, label});
        }
    }
    r.done();
}

/// A comb written by itself that a set has brought already: what is said of it there wins.
bool say_of_set(kit& k, const kit_comb& c, bool count_said) {
    const auto at = std::find_if(k.combs.begin(), k.combs.end(), [&](const kit_comb& o) {
        return o.spec.id == c.spec.id && !o.labels.empty();
    });
    if (at == k.combs.end()) {
        return false;
    }
    at->measured = c.measured;
    at->count = count_said ? c.count : at->count;
    at->fits = c.fits.empty() ? at->fits : c.fits;
    return true;
}

}  // namespace pelage::io
