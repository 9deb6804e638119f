// A salon file: the kit and the salon's own figures.
#include <fmt/format.h>

#include "read_files.hpp"
#include "read_kit.hpp"
#include "rule_slots.hpp"

namespace pelage::io {

namespace {

constexpr std::array<std::string_view, 2> own_basis{"measured", "assumption"};
constexpr std::string_view own_note = "the salon's own";

/// A salon's own figure: a plain value, or a table with its spread and whether it was measured.
std::optional<raw_figure> get_own(const member& m, page& p, const rule_slot& slot) {
    if (m.value.kind != node_kind::table) {
        const auto v = number_at(m.value, m.key, slot.kind(), slot.range, p.out);
        return v ? std::optional{raw_figure{
                       *v, *v, *v, {basis::assumption, {}, false, std::string(own_note)}}}
                 : std::nullopt;
    }
    record r(m.value, p.out);
    auto f = get_spread(r, slot.kind(), slot.range);
    const std::string how = r.get_choice("basis", presence::may, own_basis);
    const std::string note = r.get_text("note", presence::may, text_kind::prose);
    r.done();
    if (f) {
        f->why = {how == "measured" ? basis::measured : basis::assumption,
                  {},
                  false,
                  std::string(own_note) + (note.empty() ? "" : ": " + note)};
    }
    return f;
}

void get_overrides(record& top, page& p, rule_book& rules) {
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
        for (const rule_slot& slot : set.slots) {
            const member* m = one.get(slot.id);
            if (const auto f = m == nullptr ? std::nullopt : get_own(*m, p, slot)) {
                slot.store(*f);
            }
        }
        one.done();
        check_rules(rules, set.name, own->at, p.out);
    }
    r.done();
}

}  // namespace

salon get_salon(const node& root, page& p) {
    record r(root, p.out);
    check_format(r);
    salon s;
    s.title = r.get_text("title", presence::must);
    s.invented = r.get_flag("invented");
    r.get_text("note", presence::may, text_kind::prose);
    s.closed = get_days_off(r, "closed");
    s.rules = p.known.rules;
    if (const node* k = r.get_table("kit", presence::must)) {
        s.tools = get_kit(*k, p);
    }
    get_overrides(r, p, s.rules);
    r.done();
    return s;
}

}  // namespace pelage::io
