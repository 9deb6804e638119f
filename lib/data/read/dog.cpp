// Dogs.
#include <algorithm>
#include <set>

#include <fmt/format.h>

#include <pelage/base/length_text.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/trade/weight.hpp>

#include "data/read/dog_findings.hpp"
#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

constexpr std::array<std::string_view, 2> hair_states{"combed dry", "as it lies"};
constexpr std::array<std::string_view, 3> visit_kinds{"full", "tidy", "bath"};

/// Where nobody has seen the coat, the mix has to be one that can be read.
void check_mix(record& r, const page& p, const dog& d) {
    try {
        (void)read_mix(d.mix, p.known.genes);
    } catch (const bad_input& wrong) {
        for (const diagnostic& m : wrong.all()) {
            // past the opening quote; exact unless the text has escapes before
            const spot at{r.at("mix").line, r.at("mix").column + m.column};
            p.out.add(at, m.code, m.text);
        }
    }
}

/// Whether a word that should be a coat names a breed or a mix.
bool is_mix(const std::string& text, const page& p) {
    if (std::find(coat_names.begin(), coat_names.end(), text) != coat_names.end()) {
        return false;
    }
    try {
        (void)read_mix(text, p.known.genes);
        return true;
    } catch (const bad_input&) {
        return false;
    }
}

void get_coat(record& r, const page& p, dog& d) {
    const member* coat = r.get("coat");
    if (coat != nullptr && coat->value.kind == node_kind::text && is_mix(coat->value.text, p)) {
        p.out.add(
            coat->value.at, errc::unknown,
            fmt::format("a breed is no coat; found {}; write {} for the breeds, and coat as you "
                        "see it or not at all",
                        shown(coat->value.text), p.out.setting("mix", shown(coat->value.text))));
        d.mix = r.get_text("mix", presence::may);
        return;
    }
    d.coat = r.get_name<coat_class>("coat", presence::may, coat_names);
    d.mix = r.get_text("mix", presence::may);
    if (r.at("coat") == r.at() && r.at("mix") == r.at()) {
        r.out().add(
            r.at(), errc::missing,
            fmt::format("nothing says what coat the dog has; found neither coat nor mix; "
                        "write {} as you see it, or the breeds as {}",
                        r.out().setting("coat", "\"wavy\""), r.out().setting("mix", "\"...\"")));
    }
    if (r.at("coat") == r.at() && !d.mix.empty()) {
        check_mix(r, p, d);
    }
}

void get_style_wish(record& r, page& p, dog& d, const std::vector<style>& styles,
                    const std::vector<std::string>& others) {
    d.style = r.get_text("style", presence::may);
    d.body_length = r.get_length("body_length", presence::may);
    if (d.style.empty() || std::find(others.begin(), others.end(), d.style) != others.end()) {
        return;
    }
    const style* s = find(styles, d.style);
    if (s == nullptr) {
        std::vector<std::string> known = ids(styles);
        known.insert(known.end(), others.begin(), others.end());
        p.out.add_unknown(r.at("style"), "no style sheet is called so", d.style, known);
    } else if (d.body_length && !s->adjustable) {
        p.out.add(r.at("body_length"), errc::conflict,
                  fmt::format("the sheet {} has no adjustable length; found {} mm for it; write "
                              "{} under {}",
                              shown(d.style), in_mm(*d.body_length),
                              p.out.setting("all", "{ " + p.out.setting("length", "...") + " }"),
                              p.out.heading("departures")));
    }
}

void get_brushing(record& r, dog& d) {
    const std::string text = r.get_text("brushing", presence::may);
    d.brushing_said = !text.empty();
    if (text.empty()) {
        d.brushed = {habit::none, false};
        return;
    }
    if (const auto b = parse_brushing(text)) {
        d.brushed = *b;
    } else {
        r.out().add(r.at("brushing"), errc::syntax,
                    fmt::format("not a way to brush; found {}; write it like \"every 3 days to the "
                                "skin\", \"weekly on the surface\" or \"none\"",
                                shown(text)));
    }
}

/// A table of places, each with a length.
std::vector<hair_now> lengths_in(const node& table, page& p) {
    std::vector<hair_now> out;
    std::vector<std::pair<selection, std::string>> before;
    for (const member& m : table.members) {
        const word w{m.key, m.at};
        if (m.value.kind == node_kind::truth) {
            p.out.add(
                m.at, errc::conflict,
                fmt::format("only places and their lengths stand here; found {}; write it above "
                            "the first line that begins with [",
                            shown(m.key)));
            continue;
        }
        if (const selection* whom = p.places.find(w, p.out)) {
            refuse_twice(w, *whom, before, p.out);
        }
        if (const auto l =
                number_at(m.value, escaped(m.key, 60), measure::length, any_hair, p.out)) {
            out.push_back({m.key, mm(*l)});
        }
    }
    return out;
}

void get_now(record& r, page& p, dog& d) {
    if (const node* table = r.get_table("now", presence::may)) {
        d.now = lengths_in(*table, p);
    }
    const auto on = r.get_day("now_on", presence::may);
    if (!on) {
        return;
    }
    if (r.get("now") == nullptr) {
        r.out().add(r.at("now_on"), errc::missing,
                    fmt::format("now_on is the day of today's hair; found none; write {}",
                                r.out().table({}, "now", false)));
    }
    for (hair_now& n : d.now) {
        d.told.push_back({*on, std::move(n.whom), n.is, true});
    }
    d.now.clear();
}

/// What it hates to have touched: any places.
void get_sensitive(record& r, page& p, dog& d) {
    for (const word& w : r.get_words("sensitive", presence::may)) {
        if (p.places.find(w, p.out) != nullptr) {
            d.sensitive.push_back(w.text);
        }
    }
}

void get_health(record& r, dog& d) {
    d.health = r.get_text("health", presence::may);
    if (says_well(d.health)) {
        r.out().add(
            r.at("health"), errc::conflict,
            fmt::format("health says what ails the dog; found {}; leave it out", shown(d.health)));
    }
}

/// No plan reckons with it; it is there for the next intake.
void check_weight(record& r) {
    const std::string text = r.get_text("weight", presence::may);
    if (!text.empty() && !parse_weight(text)) {
        r.out().add(r.at("weight"), errc::syntax, weight_complaint(text));
    }
}

void get_signs(record& r, dog& d) {
    for (const word& w : r.get_words("signs", presence::may)) {
        const int i = index_of(w, "sign of the stop list", stop_sign_names, r.out());
        if (i >= 0) {
            d.signs.push_back(static_cast<stop_sign>(i));
        }
    }
}

void get_alerts(record& r, dog& d) {
    for (const word& w : r.get_words("alerts", presence::may)) {
        if (const auto a = parse_alert(w.text)) {
            add_alert(d.alerts, *a);
        } else {
            r.out().add(w.at, errc::unknown, alert_complaint(w.text));
        }
    }
}

/// What an intake asks of the dog as a whole.
void get_intake(record& r, page& p, dog& d) {
    d.coat_change = r.get_flag("coat_change");
    d.thin_or_old = r.get_flag("thin_or_old");
    d.pink_skin = r.get_flag("pink_skin");
    d.shedding = r.get_flag("shedding");
    d.age = r.get_name<life_stage>("age", presence::may, life_stage_names);
    d.out = r.get_name<outdoors>("outdoors", presence::may, outdoors_names);
    get_health(r, d);
    get_sensitive(r, p, d);
    get_signs(r, d);
    get_alerts(r, d);
    d.comb_checked = r.get_flag("comb_checked");
    d.combed_on = r.get_day("combed_on", presence::may);
}

void get_measured(record& top, page& p, dog& d) {
    std::set<std::pair<date, std::string>> before;
    for (const node* n : top.get_tables("measured", presence::may)) {
        record r(*n, p.out);
        measurement m;
        const auto on = r.get_day("date", presence::must);
        m.whom = r.get_text("zone", presence::must);
        const selection* whom =
            m.whom.empty() ? nullptr : p.places.find({m.whom, r.at("zone")}, p.out);
        m.is = r.get_length("length", presence::must).value_or(m.is);
        m.combed_dry = r.get_choice("state", presence::must, hair_states) == "combed dry";
        r.done();
        if (!on || whom == nullptr) {
            continue;
        }
        m.on = *on;
        if (!before.emplace(m.on, detail::plain(m.whom)).second) {
            p.out.add(r.at("date"), errc::duplicate,
                      fmt::format("measured twice on one day; found {} on {} again; name it once",
                                  shown(m.whom), iso(m.on)));
        }
        d.measured.push_back(m);
    }
}

/// What a visit left: one length for the whole coat, or a table of places.
std::vector<hair_now> get_left(record& r, page& p, const std::string& kind) {
    const member* m = r.get("left");
    if (m == nullptr) {
        return {};
    }
    if (kind == "bath") {
        r.out().add(m->value.at, errc::conflict,
                    "a bath cuts nothing; found what it left; leave that out, or write kind = "
                    "\"full\" or \"tidy\"");
        return {};
    }
    if (m->value.kind == node_kind::table) {
        return lengths_in(m->value, p);
    }
    const auto l = r.get_length("left", presence::may);
    return l ? std::vector<hair_now>{{"all", *l}} : std::vector<hair_now>{};
}

/// Where a visit found mats: "none", a place, or a list of places.
std::optional<std::vector<std::string>> get_mats_then(record& r, page& p) {
    const member* m = r.get("mats");
    if (m == nullptr) {
        return std::nullopt;
    }
    std::vector<std::string> out;
    const auto add = [&](const word& w) {
        if (p.places.find(w, p.out) != nullptr) {
            out.push_back(w.text);
        }
    };
    if (m->value.kind == node_kind::text) {
        const std::string one = r.get_text("mats", presence::may);
        if (detail::plain(one) != "none") {
            add({one, r.at("mats")});
        }
        return out;
    }
    const std::vector<word> all = r.get_words("mats", presence::may);
    for (const word& w : all) {
        add(w);
    }
    return out.empty() && !all.empty() ? std::nullopt : std::optional{std::move(out)};
}

void get_visits(record& top, page& p, dog& d) {
    std::set<std::pair<date, std::string>> before;
    for (const node* n : top.get_tables("visit", presence::may)) {
        record r(*n, p.out);
        const auto on = r.get_day("date", presence::must);
        const std::string kind = r.get_choice("kind", presence::must, visit_kinds);
        auto left = get_left(r, p, kind);
        auto mats = get_mats_then(r, p);
        r.done();
        if (!on || kind.empty()) {
            continue;
        }
        if (!before.emplace(*on, kind).second) {
            p.out.add(r.at("date"), errc::duplicate,
                      fmt::format("the same visit twice; found {} on {} again; name it once", kind,
                                  iso(*on)));
        }
        d.visits.push_back({*on, kind, std::move(left), std::move(mats)});
    }
}

void get_events(record& top, page& p, dog& d) {
    for (const node* n : top.get_tables("event", presence::may)) {
        record r(*n, p.out);
        fresh_day f;
        const auto on = r.get_day("date", presence::must);
        f.name = r.get_text("name", presence::may);
        const std::string within = r.get_text("within", presence::may);
        const auto days = within.empty() ? std::optional{f.within} : parse_wait(within);
        r.done();
        if (!days) {
            p.out.add(r.at("within"), errc::syntax,
                      fmt::format("not a number of days; found {}; write within = \"7 days\"",
                                  shown(within)));
        }
        if (on && days) {
            d.events.push_back({*on, *days, f.name});
        }
    }
}

}  // namespace

bool says_well(const std::string& health) {
    constexpr std::array<std::string_view, 6> well{"none",    "nothing", "no",
                                                   "healthy", "well",    "good"};
    return std::find(well.begin(), well.end(), detail::plain(health)) != well.end();
}

placed<dog> get_dog(const node& root, page& p, const std::vector<style>& styles,
                    const std::vector<std::string>& other_sheets) {
    record r(root, p.out);
    check_format(r, p.format_there);
    dog d;
    d.id = r.get_id("id");
    d.name = r.get_text("name", presence::must);
    d.invented = r.get_flag("invented");
    d.size = r.get_name<dog_size>("size", presence::must, size_names).value_or(d.size);
    check_weight(r);
    get_coat(r, p, d);
    get_style_wish(r, p, d, styles, other_sheets);
    d.departures = without_positions(get_rules(r, p, "departures", presence::may));
    get_now(r, p, d);
    get_brushing(r, d);
    get_intake(r, p, d);
    get_mats(r, p, d);
    get_skin(r, p, d);
    for (const word& w : r.get_words("consents", presence::may)) {
        (void)index_of(w, "consent", consent_names, p.out);
        d.consents.push_back(w.text);
    }
    get_measured(r, p, d);
    get_visits(r, p, d);
    d.groomer = r.get_text("groomer", presence::may);
    d.cannot = get_days_off(r, "cannot");
    get_events(r, p, d);
    d.note = r.get_text("note", presence::may, text_kind::prose);
    if (!d.health.empty() || !d.note.empty() || !d.mix.empty()) {
        d.heard = read_health(d.health, d.note, p.known.told_health, d.mix);
        if (d.heard->of_skin && d.skin.empty()) {
            r.out().add(r.at("health"), errc::ambiguous,
                        fmt::format("health tells of the skin and not where; found {}; write it as "
                                    "a [[skin]] with its zone and state, so that nothing goes near "
                                    "it; healed by now: leave it out",
                                    shown(d.health)));
        }
    }
    r.done();
    return {std::move(d), r.at("id")};
}

}  // namespace pelage::io
