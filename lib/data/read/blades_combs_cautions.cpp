// Sources, blades, combs and cautions of the reference.
#include <fmt/format.h>

#include <pelage/base/length_text.hpp>

#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

constexpr std::array<std::string_view, 6> source_kinds{
    "standard", "occupational-standard", "paper", "book", "university", "web"};
constexpr std::array<std::string_view, 3> ways_to_see{"read", "second-hand", "memory"};
constexpr std::array<std::string_view, 3> people{"groomer", "owner", "veterinarian"};

blade get_blade_sort(record& r, page& p) {
    blade b;
    b.id = r.get_text("id", presence::must);
    b.etched = r.get_text("etched", presence::must);
    b.in_inch = r.get_text("inch", presence::may);
    figures f(r, p, "blades/" + b.id);
    b.stated = f.must<length>("stated", over_zero(longest_mm));
    b.cut = r.get_name<teeth>("teeth", presence::must, teeth_names).value_or(teeth::unknown);
    b.shape = r.get_name<edge>("shape", presence::must, edge_names).value_or(edge::standard);
    b.rare = r.get_flag("rare");
    b.reach = r.get_length("reach", presence::may);
    b.note = r.get_text("note", presence::may, text_kind::prose);
    if (b.reach && b.shape == edge::adjustable && *b.reach > b.stated.best) {
        const double reach = in_mm(*b.reach);
        list_figure(p, "blades/" + b.id + "/reach", {reach, reach, reach, b.stated.why},
                    measure::length);
    } else if (b.reach || b.shape == edge::adjustable) {
        p.out.add(r.at("reach"), errc::conflict,
                  "an adjustable blade, and no other, reaches beyond its stated length; found "
                  "otherwise; write reach = \"3 mm\" there only");
    }
    r.done();
    return b;
}

void check_comb(const comb& c, const spot& at, faults& out) {
    if (c.id.empty()) {
        return;
    }
    const parsed_length id = parse_length(c.id);
    if (!id.ok() || gap(id.value, c.stated.best) > mm(0.05)) {
        out.add(
            at, errc::conflict,
            fmt::format("a comb is known by its length; found {} stated {} mm; write both alike",
                        shown(c.id), in_mm(c.stated.best)));
    }
}

comb get_comb_sort(record& r, page& p) {
    comb c;
    c.id = r.get_text("id", presence::must);
    c.stated = figures(r, p, "combs/" + c.id).must<length>("stated", over_zero(longest_mm));
    c.in_inch = r.get_text("inch", presence::may);
    r.done();
    check_comb(c, r.at("id"), p.out);
    return c;
}

/// A way in which others number combs: told to people, never used to guess a length.
void get_convention(record& r, page& p) {
    const std::string id = r.get_id("id");
    r.get_text("text", presence::must, text_kind::prose);
    const evidence why = get_evidence(r, p, presence::must);
    figures(r, p, "combs/" + id, &why).must<length>("per_step", over_zero(longest_mm));
    r.done();
}

source get_source(record& r) {
    source s;
    s.id = r.get_id("id");
    s.kind = r.get_choice("kind", presence::must, source_kinds);
    s.title = r.get_text("title", presence::must);
    s.author = r.get_text("author", presence::may);
    s.publisher = r.get_text("publisher", presence::may);
    s.year = r.get_count("year", 1500, 2199, 0);
    s.address = r.get_text("address", presence::may);
    s.seen = r.get_choice("seen", presence::must, ways_to_see);
    s.note = r.get_text("note", presence::may, text_kind::prose);
    r.done();
    return s;
}

caution get_caution(record& r, page& p) {
    caution c;
    c.id = r.get_id("id");
    c.when = r.get_name<caution_when>("when", presence::must, caution_when_names)
                 .value_or(caution_when::any_clipping);
    if (r.get("danger", presence::must, "3") != nullptr) {
        c.danger = r.get_count("danger", 1, 5, 3);
    }
    c.who = r.get_choice("who", presence::must, people);
    c.text = r.get_text("text", presence::must, text_kind::prose);
    c.brief = r.get_text("brief", presence::must);
    for (const word& w : r.get_words("zones", presence::may)) {
        if (find(p.known.dog_body.zones, w.text) == nullptr) {
            p.out.add_unknown(w.at, "no zone is called so", w.text, ids(p.known.dog_body.zones));
        }
        c.zones.push_back(w.text);
    }
    c.usual = r.get_flag("usual");
    c.why = get_evidence(r, p, presence::must);
    r.done();
    return c;
}

/// The tables of [[key]] through `read`, their ids unique.
template <class Value, class Read>
void get_all(record& top, std::string_view key, std::vector<Value>& to, const Read& read) {
    unique_ids seen;
    for (const node* n : top.get_tables(key, presence::must)) {
        record r(*n, top.out());
        to.push_back(read(r));
        seen.add(to.back().id, r.at("id"), key, top.out());
    }
}

/// The stop list: every sign once, in the order of stop_sign.
void get_stops(record& top, page& p, reference_data& c) {
    for (const node* n : top.get_tables("stop", presence::must)) {
        record r(*n, p.out);
        stop_rule s;
        const auto sign = r.get_name<stop_sign>("id", presence::must, stop_sign_names);
        s.seen = r.get_text("seen", presence::must, text_kind::prose);
        s.act = r.get_text("act", presence::must, text_kind::prose);
        s.why = get_evidence(r, p, presence::must);
        sign_words by{sign.value_or(s.sign), texts_of(r.get_words("told", presence::may)),
                      texts_of(r.get_words("asked", presence::may))};
        if (!by.told.empty() || !by.seen.empty()) {
            c.told_health.signs.push_back(std::move(by));
        }
        r.done();
        if (sign && static_cast<std::size_t>(*sign) != c.stops.size()) {
            p.out.add(r.at("id"), errc::conflict,
                      "the stop list stands gravest first, each sign once; found \"" +
                          std::string(name(*sign)) + "\" out of its place");
        }
        s.sign = sign.value_or(s.sign);
        c.stops.push_back(std::move(s));
    }
    if (c.stops.size() < stop_sign_names.size()) {
        p.out.add(top.at(), errc::missing,
                  "the stop list lacks \"" + std::string(stop_sign_names[c.stops.size()]) + "\"");
    }
}

/// The ailments: every kind once, in the order of ailment_kind, and the words beside them.
void get_ailments(record& top, page& p, reference_data& c) {
    c.told_health.beside = texts_of(top.get_words("beside", presence::must));
    c.told_health.how_bad = texts_of(top.get_words("how-bad", presence::must));
    c.told_health.of_skin = texts_of(top.get_words("of-skin", presence::must));
    c.told_health.operations = {texts_of(top.get_words("operation", presence::must)),
                                texts_of(top.get_words("lately", presence::must)),
                                texts_of(top.get_words("long-ago", presence::must))};
    for (const node* n : top.get_tables("ailment", presence::must)) {
        record r(*n, p.out);
        ailment a;
        const auto kind = r.get_name<ailment_kind>("id", presence::must, ailment_names);
        a.words = texts_of(r.get_words("words", presence::must));
        a.unwell = r.get_flag("unwell");
        a.why = get_evidence(r, p, presence::must);
        r.done();
        if (kind && static_cast<std::size_t>(*kind) != c.told_health.all.size()) {
            p.out.add(r.at("id"), errc::conflict,
                      "ailments stand in their order, each once; found \"" +
                          std::string(name(*kind)) + "\" out of its place");
        }
        a.kind = kind.value_or(a.kind);
        c.told_health.all.push_back(std::move(a));
    }
    if (c.told_health.all.size() < ailment_names.size()) {
        p.out.add(
            top.at(), errc::missing,
            "the ailments lack \"" + std::string(ailment_names[c.told_health.all.size()]) + "\"");
    }
}

}  // namespace

void get_sources(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    get_all(top, "source", c.sources, [](record& r) { return get_source(r); });
    top.done();
}

void get_blades(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    get_all(top, "blade", c.blades, [&](record& r) { return get_blade_sort(r, p); });
    top.done();
}

void get_combs(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    get_all(top, "comb", c.combs, [&](record& r) { return get_comb_sort(r, p); });
    for (const node* n : top.get_tables("convention", presence::may)) {
        record r(*n, p.out);
        get_convention(r, p);
    }
    top.done();
}

void get_cautions(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    get_all(top, "caution", c.cautions, [&](record& r) { return get_caution(r, p); });
    get_stops(top, p, c);
    get_ailments(top, p, c);
    top.done();
}

}  // namespace pelage::io
