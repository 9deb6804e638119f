// A salon file: the kit and the salon's own figures.
#include <algorithm>

#include <fmt/format.h>

#include "data/read/figures.hpp"
#include "data/read/kit.hpp"
#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

constexpr std::string_view own_note = "the salon's own";
// told in reference/README.md; a coat that lies flatter than 10 degrees would be six times as long as
// a blade leaves it, and rates that differ by less than 1 in 100 between dogs were never seen (assumption)
constexpr bounds own_rate{0.01, 2.0, true};
constexpr bounds own_log_sd{0.01, 1.0, true};
constexpr bounds own_lay{10.0, 90.0, true};
constexpr bounds working_day{1.0, 900.0, true};
constexpr bounds own_prone{5.0, 300.0, true};
constexpr bounds own_zone{0.3, 1.5, true};

/// Whether the salon measured it or guessed, and its note.
evidence get_own_evidence(record& r) {
    const std::string how = r.get_choice("basis", presence::may, own_basis);
    const std::string note = r.get_text("note", presence::may, text_kind::prose);
    return {how == "measured" ? basis::measured : basis::assumption,
            {},
            false,
            std::string(own_note) + (note.empty() ? "" : ": " + note)};
}

/// A salon's own figure: a plain value, or a table with its spread and whether it was measured.
std::optional<raw_figure> get_own(const member& m, page& p, const figure_field& slot) {
    if (m.value.kind != node_kind::table) {
        const auto v = number_at(m.value, m.key, slot.kind(), slot.range, p.out);
        return v ? std::optional{raw_figure{
                       *v, *v, *v, {basis::assumption, {}, false, std::string(own_note)}}}
                 : std::nullopt;
    }
    record r(m.value, p.out);
    auto f = get_spread(r, slot.kind(), slot.range);
    const evidence why = get_own_evidence(r);
    r.done();
    if (f) {
        f->why = why;
    }
    return f;
}

/// The salon's own growth rate of one coat: [override.coats.wavy.rate].
std::optional<rate_prior> get_own_rate(const node& table, page& p) {
    record r(table, p.out);
    const auto median = r.get_number("median", presence::must, measure::rate, own_rate);
    const auto log_sd = r.get_number("log_sd", presence::must, measure::number, own_log_sd);
    const evidence why = get_own_evidence(r);
    r.done();
    return median && log_sd ? std::optional{rate_prior{mm_per_day(*median), *log_sd, why}}
                            : std::nullopt;
}

/// Its angle of the lay, of a test patch: lay = { best = "52 deg", ... } under [override.coats.wavy].
std::optional<figure<double>> get_own_lay(const node& table, page& p) {
    record r(table, p.out);
    const auto f = get_spread(r, measure::degrees, own_lay);
    const evidence why = get_own_evidence(r);
    r.done();
    return f ? std::optional{figure<double>{f->low, f->best, f->high, why}} : std::nullopt;
}

/// Its matting-prone length: matting_prone = "44 mm", or a table with its spread.
void get_own_prone(record& r, std::size_t coat, page& p, parameters& rules) {
    const member* m = r.get("matting_prone");
    if (m == nullptr) {
        return;
    }
    if (matting_prone_of(p.known.coats[coat]) == nullptr) {
        p.out.add(r.at("matting_prone"), errc::conflict,
                  fmt::format("a {} doesn't mat by its length; found a length for it; leave it out",
                              p.known.coats[coat].title));
        return;
    }
    figure<length> own;
    const figure_field slot{"matting_prone", &own, own_prone};
    if (const auto f = get_own(*m, p, slot)) {
        slot.store(*f);
        list_figure(p, fmt::format("coats/{}/matting_prone", coat_names[coat]), *f, slot.kind());
        rules.matting.own_prone[coat] = own;
    }
}

void get_own_coat(const node& table, std::size_t coat, page& p, parameters& rules) {
    const std::string path = fmt::format("override.coats.{}.", coat_names[coat]);
    record r(table, p.out, path);
    const node* lay = r.get_table("lay", presence::may);
    get_own_prone(r, coat, p, rules);
    const bool others = lay != nullptr || r.at("lay") != r.at() || r.at("matting_prone") != r.at();
    const node* rate = r.get_table("rate", others ? presence::may : presence::must);
    r.done();
    if (lay != nullptr) {
        rules.own_lays[coat] = get_own_lay(*lay, p);
        if (const auto& own = rules.own_lays[coat]) {
            list_figure(p, fmt::format("coats/{}/lay", coat_names[coat]),
                        {own->low, own->best, own->high, own->why}, measure::degrees);
        }
    }
    if (rate != nullptr) {
        rules.own_rates[coat] = get_own_rate(*rate, p);
        if (const auto& own = rules.own_rates[coat]) {
            const double median = in_mm_per_day(own->median);
            list_figure(p, fmt::format("coats/{}/rate", coat_names[coat]),
                        {median, median, median, own->why}, measure::rate);
        }
    }
}

void get_own_coats(record& overrides, page& p, parameters& rules) {
    const node* table = overrides.get_table("coats", presence::may);
    if (table == nullptr) {
        return;
    }
    record r(*table, p.out, "override.coats.");
    for (std::size_t k = 0; k < coat_names.size(); ++k) {
        if (const node* one = r.get_table(coat_names[k], presence::may)) {
            get_own_coat(*one, k, p, rules);
        }
    }
    r.done();
}

/// Its factors of zones on the matting-prone length: [override.zones] ear = 0.8.
void get_own_zones(record& overrides, page& p, parameters& rules) {
    const node* table = overrides.get_table("zones", presence::may);
    if (table == nullptr) {
        return;
    }
    record r(*table, p.out, "override.zones.");
    for (const zone& z : p.known.dog_body.zones) {
        const member* m = r.get(z.id);
        if (m == nullptr) {
            continue;
        }
        figure<double> own;
        const figure_field slot{z.id, &own, own_zone};
        if (const auto f = get_own(*m, p, slot)) {
            slot.store(*f);
            list_figure(p, fmt::format("zones/{}/matting", z.id), *f, slot.kind());
            rules.matting.own_zones[z.id] = own;
        }
    }
    r.done();
}

void get_overrides(record& top, page& p, parameters& rules) {
    const node* table = top.get_table("override", presence::may);
    if (table == nullptr) {
        return;
    }
    record r(*table, p.out, "override.");
    for (const rule_set& set : rule_sets(rules)) {
        const node* own = r.get_table(set.name, presence::may);
        if (own == nullptr) {
            continue;
        }
        record one(*own, p.out);
        for (const figure_field& slot : set.slots) {
            const member* m = one.get(slot.id);
            if (const auto f = m == nullptr ? std::nullopt : get_own(*m, p, slot)) {
                slot.store(*f);
                list_figure(p, fmt::format("{}/{}", set.name, slot.id), *f, slot.kind());
            }
        }
        one.done();
        check_rules(rules, set.name, own->at, p.out);
    }
    get_own_coats(r, p, rules);
    get_own_zones(r, p, rules);
    r.done();
}

/// What stands on the page an owner takes home: [salon].
salon_card get_card(record& top, page& p) {
    const node* table = top.get_table("salon", presence::may);
    if (table == nullptr) {
        return {};
    }
    record r(*table, p.out, "salon.");
    salon_card c;
    c.name = r.get_text("name", presence::may);
    c.telephone = r.get_text("telephone", presence::may);
    c.groomer = r.get_text("groomer", presence::may);
    r.done();
    return c;
}

/// A groomer's hours with dogs: [groomer.hours] Tuesday = "420 min".
std::array<work, 7> get_hours(const node& table, page& p) {
    record r(table, p.out, "groomer.hours.");
    std::array<work, 7> hours{};
    bool any = false;
    for (std::size_t d = 0; d < weekday_names.size(); ++d) {
        const auto m = r.get_number(weekday_names[d], presence::may, measure::minutes, working_day);
        hours[d] = m ? minutes(*m) : work{};
        any = any || m;
    }
    r.done();
    if (!any && table.members.empty()) {
        p.out.add(table.at, errc::missing,
                  "a groomer's hours name no day; found none; write Tuesday = \"420 min\"");
    }
    return hours;
}

/// Who works there: [[groomer]].
std::vector<groomer> get_groomers(record& top, page& p) {
    std::vector<groomer> out;
    for (const node* n : top.get_tables("groomer", presence::may)) {
        record r(*n, p.out);
        groomer g;
        g.name = r.get_text("name", presence::must);
        if (const node* hours = r.get_table("hours", presence::must)) {
            g.hours = get_hours(*hours, p);
        }
        g.away = get_days_off(r, "away");
        r.done();
        const bool twice = std::any_of(out.begin(), out.end(),
                                       [&](const groomer& other) { return other.name == g.name; });
        if (twice && !g.name.empty()) {
            p.out.add(
                r.at("name"), errc::duplicate,
                "two groomers of one name; found " + named(g.name) + " again; tell them apart");
        }
        out.push_back(std::move(g));
    }
    return out;
}

}  // namespace

salon_files get_salon(const node& root, page& p) {
    record r(root, p.out);
    check_format(r);
    salon_files s;
    s.title = r.get_text("title", presence::must);
    s.invented = r.get_flag("invented");
    r.get_text("note", presence::may, text_kind::prose);
    s.card = get_card(r, p);
    s.closed = get_days_off(r, "closed");
    s.rules = p.known.rules;
    if (const node* k = r.get_table("kit", presence::must)) {
        s.tools = get_kit(*k, p);
    }
    s.groomers = get_groomers(r, p);
    get_overrides(r, p, s.rules);
    r.done();
    return s;
}

}  // namespace pelage::io
