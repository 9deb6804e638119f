// Places of the dog, blades, and what is wished of a place: shared by sheets and dogs.
#include <algorithm>

#include <fmt/format.h>

#include <pelage/base/suggest.hpp>

#include "data/read/parts.hpp"

namespace pelage::io {

namespace {

void check_instruction(record& r, const instruction& i, bool complete) {
    if (i.target && i.blade) {
        r.out().add(r.at("blade"), errc::conflict,
                    "a zone has a length or a blade; found both; leave one out");
    }
    if (i.blade && i.how && *i.how != finish::clip) {
        r.out().add(
            r.at("finish"), errc::conflict,
            fmt::format("a blade clips; found blade {} and finish \"{}\"; write a length in "
                        "place of the blade, or {}",
                        shown(*i.blade), name(*i.how), r.out().setting("finish", "\"clip\"")));
    }
    if (i.target && i.how == finish::leave) {
        r.out().add(r.at("finish"), errc::conflict,
                    "what is left keeps its own length; found a length and finish \"leave\"; leave "
                    "one out");
    }
    if (i.target && i.tolerance && *i.tolerance >= *i.target) {
        r.out().add(r.at("tolerance"), errc::range,
                    "a tolerance must be less than the length; found it as long or longer; write a "
                    "smaller one");
    }
    const bool silent = !i.target && !i.blade && !i.tolerance && !i.way && !i.how && !i.between;
    if (complete && silent && i.note.empty() && i.why.empty()) {
        r.out().add(r.at(), errc::missing,
                    fmt::format("this says nothing; found no key; write {{ {} }}",
                                r.out().setting("length", "\"13 mm\"")));
    }
}

instruction get_instruction(const node& n, page& p) {
    record r(n, p.out);
    const std::size_t before = p.out.count();
    instruction i;
    i.target = r.get_length("length", presence::may);
    if (const std::string id = r.get_text("blade", presence::may); !id.empty()) {
        i.blade = blade_named({id, r.at("blade")}, p);
    }
    i.tolerance = r.get_length("tolerance", presence::may);
    i.way = r.get_name<lay_choice>("direction", presence::may, lay_choice_names);
    i.how = r.get_name<finish>("finish", presence::may, finish_names);
    i.between = r.get_name<side_of_target>("between", presence::may, between_names);
    i.why = r.get_text("why", presence::may, text_kind::prose);
    if (r.get("basis") != nullptr || r.get("source") != nullptr) {
        i.known = get_evidence(r, p, presence::must);
        i.note = i.known->note;
    } else {
        i.note = r.get_text("note", presence::may, text_kind::prose);
    }
    r.done();
    check_instruction(r, i, p.out.count() == before);
    return i;
}

std::string right_instruction(const node& n, const faults& out) {
    const std::string text = n.kind == node_kind::text ? shown(n.text) : "\"13 mm\"";
    return fmt::format("{{ {} }}", out.setting("length", text));
}

}  // namespace

days_off get_days_off(record& r, std::string_view key) {
    days_off all;
    for (const word& w : r.get_words(key, presence::may)) {
        if (const auto off = parse_days_off(w.text)) {
            all.add(*off);
        } else {
            const std::string meant =
                did_you_mean(w.text, {weekday_names.begin(), weekday_names.end()});
            r.out().add(w.at, errc::syntax,
                        "no day off; found " + shown(w.text) +
                            (meant.empty() ? "; write it like \"Monday\", \"2026-12-24\" or "
                                             "\"2026-12-24 to 2027-01-03\""
                                           : meant));
        }
    }
    return all;
}

const part_index& place_finder::index() {
    if (!parts_) {
        parts_.emplace(body_);
    }
    return *parts_;
}

const selection* place_finder::find(const word& w, faults& out) {
    if (const selection* s = index().find(w.text)) {
        return s;
    }
    // looking for the nearest word takes time: a file full of faults gets fewer hints
    if (++looked_up_ > 100) {
        out.add(w.at, errc::unknown,
                fmt::format("the dog has no such place; found {}", shown(w.text)));
        return nullptr;
    }
    const part_index::stranger s = parts_->about(w.text);
    out.add(w.at, s.code, fmt::format("{}; found {}{}", s.wrong, shown(w.text), s.right));
    return nullptr;
}

void refuse_twice(const word& w, const selection& whom,
                  std::vector<std::pair<selection, std::string>>& before, faults& out) {
    for (const auto& [other, words] : before) {
        if (other.how == whom.how && other.places == whom.places) {
            out.add(w.at, errc::duplicate,
                    fmt::format("the same place twice; found {}, which is {}; name it once",
                                shown(w.text), shown(words)));
            return;
        }
    }
    before.emplace_back(whom, w.text);
}

std::vector<placed_rule> get_rules(record& r, page& p, std::string_view key, presence there) {
    const node* table = r.get_table(key, there);
    if (table == nullptr) {
        return {};
    }
    std::vector<placed_rule> rules;
    std::vector<std::pair<selection, std::string>> before;
    for (const member& m : table->members) {
        const word w{m.key, m.at};
        const selection* whom = p.places.find(w, p.out);
        if (whom != nullptr) {
            refuse_twice(w, *whom, before, p.out);
        }
        if (m.value.kind != node_kind::table) {
            p.out.add(m.value.at, errc::type,
                      fmt::format("{} must be a table; found {}; write {}", shown(m.key),
                                  found(m.value), right_instruction(m.value, p.out)));
            continue;
        }
        instruction what = get_instruction(m.value, p);
        if (whom != nullptr) {
            const written_at at{p.out.file(), m.value.at.line, m.value.at.column};
            rules.push_back({{m.key, std::move(what), {}, at}, *whom, m.value.at});
        }
    }
    if (there == presence::must && table->members.empty()) {
        p.out.add(table->at, errc::missing,
                  fmt::format(
                      "\"{}\" is empty; found no zone; write all = {{ length = \"13 mm\" }}", key));
    }
    return rules;
}

std::vector<sheet_rule> without_positions(std::vector<placed_rule> rules) {
    std::vector<sheet_rule> out;
    out.reserve(rules.size());
    for (placed_rule& r : rules) {
        out.push_back(std::move(r.rule));
    }
    return out;
}

}  // namespace pelage::io
