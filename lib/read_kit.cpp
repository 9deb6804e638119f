// The kit of a salon.
#include "read_kit.hpp"

#include <algorithm>

#include <fmt/format.h>

#include <pelage/text.hpp>

namespace pelage::io {

namespace {

/// A measured length this many times off is taken for a slip of the unit or the label, not for a
/// finding: with the lay on flat hair a blade leaves about twice what is etched (assumption).
constexpr double far_off = 4.0;

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
    const auto stated = r.get_length("stated", presence::must);
    b.stated = exactly(stated.value_or(length{}),
                       evidence{basis::measured, {}, false, "as the salon says"});
    b.cut = r.get_name<teeth>("teeth", presence::must, teeth_names).value_or(teeth::unknown);
    return b;
}

blade get_spec(record& r, page& p) {
    word label{r.get_text("id", presence::must), r.at("id")};
    const bool empty = label.text.empty();
    if (empty || asks_back(label, p.out)) {
        r.get("stated");
        r.get("teeth");
        return {};
    }
    if (const blade* b = find(p.known.blades, label.text)) {
        return known_blade(r, *b);
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

kit_blade get_blade(record& r, page& p) {
    kit_blade b;
    b.spec = get_spec(r, p);
    b.count = r.get_count("count", 1, 99, 1);
    b.measured = r.get_length("measured", presence::may);
    b.out = r.get_flag("out");
    b.out_until = r.get_day("out_until", presence::may);
    r.done();
    if (b.out_until && r.at("out") != r.at() && !b.out) {
        p.out.add(
            r.at("out"), errc::conflict,
            "a blade that is out until a day is out; found out = false; leave one of them out");
    }
    check_measured(r, b.measured, b.spec.stated);
    return b;
}

const comb* comb_of_length(const catalogue& c, const length& l) {
    const auto at = std::find_if(c.combs.begin(), c.combs.end(),
                                 [&](const comb& o) { return gap(o.stated.best, l) < mm(0.005); });
    return at == c.combs.end() ? nullptr : &*at;
}

const comb* comb_of_inch(const catalogue& c, std::string_view text) {
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
    const auto stated = r.get_length("stated", presence::may);
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

std::optional<kit_comb> get_comb(record& r, page& p) {
    kit_comb c;
    const auto spec = get_comb_spec(r, p);
    c.count = r.get_count("count", 1, 99, 1);
    c.measured = r.get_length("measured", presence::may);
    for (const word& w : r.get_words("fits", presence::may)) {
        if (const auto id = blade_named(w, p)) {
            c.fits.push_back(*id);
        }
    }
    r.done();
    if (!spec) {
        return std::nullopt;
    }
    c.spec = *spec;
    check_measured(r, c.measured, c.spec.stated);
    return c;
}

/// A comb's blade must be short and have full teeth, or hair gets between comb and blade.
bool goes_under(const kit_blade& b) {
    constexpr double longest = 1.55;  // blade 10, with a hair's grain of slack against rounding
    return !skips(b.spec) && b.spec.stated.best <= mm(longest) && b.spec.shape != edge::toe;
}

std::string blades_that_go_under(const kit& k) {
    std::vector<std::string> fit;
    for (const kit_blade& b : k.blades) {
        if (goes_under(b)) {
            fit.push_back('"' + b.spec.id + '"');
        }
    }
    return fit.empty() ? "a blade 30, 40 or 10 into the kit" : "under_comb = " + one_of(fit);
}

void check_under_comb(record& r, const kit& k) {
    const kit_blade* b = find_blade(k, k.under_comb);
    if (b == nullptr) {
        r.out().add(
            r.at("under_comb"), errc::unknown,
            fmt::format("the blade under the combs must lie in the kit; found {}, which does "
                        "not; write {}",
                        shown(k.under_comb), blades_that_go_under(k)));
    } else if (!goes_under(*b)) {
        r.out().add(
            r.at("under_comb"), errc::conflict,
            fmt::format("a comb sits on a short blade with full teeth only; found {}; write "
                        "{}",
                        shown(k.under_comb), blades_that_go_under(k)));
    }
}

void get_under_comb(record& r, page& p, kit& k) {
    word label{r.get_text("under_comb", presence::may), r.at("under_comb")};
    if (!label.text.empty() && asks_back(label, p.out)) {
        return;
    }
    if (!label.text.empty()) {
        k.under_comb = label.text;
    } else if (k.combs.empty()) {
        return;
    }
    check_under_comb(r, k);
}

}  // namespace

kit get_kit(const node& table, page& p) {
    record r(table, p.out, "kit.");
    kit k;
    k.title = r.get_text("title", presence::may);
    k.clippers = r.get_count("clippers", 1, 20, 1);
    unique_ids blades;
    for (const node* n : r.get_tables("blade", presence::must)) {
        record one(*n, p.out);
        k.blades.push_back(get_blade(one, p));
        blades.add(k.blades.back().spec.id, one.at("id"), "blade", p.out);
        if (k.blades.back().spec.id.empty()) {
            k.blades.pop_back();
        }
    }
    page with_own = p;  // a comb may fit one of the salon's own blades
    with_own.drawer = &k;
    unique_ids combs;
    for (const node* n : r.get_tables("comb", presence::may)) {
        record one(*n, p.out);
        if (auto c = get_comb(one, with_own)) {
            combs.add(c->spec.id, one.at("id"), "comb", p.out);
            k.combs.push_back(*std::move(c));
        }
    }
    get_under_comb(r, p, k);
    r.done();
    return k;
}

}  // namespace pelage::io
