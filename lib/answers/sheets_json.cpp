// Answers about style sheets as JSON.
#include <algorithm>
#include <cmath>

#include <pelage/answers/sheets.hpp>

#include "answers/json.hpp"
#include "answers/visit_keys.hpp"
#include "answers/words/consent.hpp"
#include "answers/words/doubt.hpp"
#include "answers/words/objection.hpp"
#include "answers/words/sheet.hpp"

namespace pelage::io {

namespace {

json wish_json(const instruction& i) {
    json j = json::object();
    if (i.target) {
        j["length_mm"] = mm_json(*i.target);
    }
    if (i.blade) {
        j["blade"] = *i.blade;
    }
    if (i.tolerance) {
        j["tolerance_mm"] = mm_json(*i.tolerance);
    }
    if (i.way) {
        j["direction"] = name(*i.way);
    }
    if (i.how) {
        j["finish"] = name(*i.how);
    }
    if (i.between) {
        j["between"] = name(*i.between);
    }
    if (!i.note.empty()) {
        j["note"] = i.note;
    }
    if (!i.why.empty()) {
        j["why"] = i.why;
    }
    if (i.known) {
        j["basis"] = name(i.known->how);
        j["source"] = i.known->from;
    }
    return j;
}

json days_of(const days& d) {
    return is_never(d) ? json("never") : json(std::round(in_days(d) * 10.0) / 10.0);
}

json coats_json(const std::vector<coat_class>& coats) {
    json j = json::array();
    for (const coat_class k : coats) {
        j.push_back(name(k));
    }
    return j;
}

json limit_json(const limit& l) {
    json j{{"zone", l.whom}};
    if (!l.not_below.empty()) {
        j["not_below"] = l.not_below;
    }
    if (l.low) {
        j["low_mm"] = mm_json(*l.low);
    }
    if (l.high) {
        j["high_mm"] = mm_json(*l.high);
    }
    j["basis"] = name(l.why.how);
    j["source"] = l.why.from;
    j["note"] = l.why.note;
    return j;
}

json cost_json(const style& s, const sheet_cost& c) {
    json j{{"sheet", s.id},
           {"minutes", minutes_json(c.takes())},
           {"setups", c.setups},
           {"tools", names(c.tools)},
           {"back_in_days", days_of(c.when.next_visit)},
           {"full_groom_days", days_of(c.when.full_groom)}};
    if (c.visits) {
        json v{{"possible", c.visits->sum.possible}};
        if (c.visits->sum.possible) {
            v["visits"] = c.visits->sum.number();
            for (std::size_t k = 0; k < visit_keys.size(); ++k) {
                v[std::string(visit_keys[k])] = c.visits->sum.visits[k];
            }
            v["minutes"] = minutes_json(c.visits->sum.takes);
        }
        j["half_a_year"] = v;
    }
    return j;
}

}  // namespace

std::string json_of(const std::vector<checked_sheet>& all, const reference_data& c) {
    json j{{"schema", "pelage/sheet-check/1"}, {"sheets", json::array()}};
    for (const checked_sheet& one : all) {
        json s{{"file", one.read.file}};
        if (one.read.sheet) {
            s["id"] = one.read.sheet->id;
        }
        s["parent_faulty"] = one.read.parent_faulty;
        s["faults"] = json::array();
        for (const diagnostic& d : one.read.faults) {
            s["faults"].push_back({{"line", d.line}, {"column", d.column}, {"message", d.text}});
        }
        s["doubts"] = json::array();
        for (const auto& [w, text] : told_doubts(one, c, length_unit::mm)) {
            s["doubts"].push_back({{"kind", name(w->what)},
                                   {"to_be_had", !graver(w->what)},
                                   {"line", w->at.line},
                                   {"column", w->at.column},
                                   {"message", text}});
        }
        j["sheets"].push_back(std::move(s));
    }
    return dumped(j);
}

namespace {

/// What is wished of a place, and with what of the kit it is done.
json wished_place_json(const sheet_place& p, const groom& g, const body& b) {
    json z = wish_json(p.asked);
    z["zone"] = b.zones[p.at.zone].id;
    z["title"] = title(b, p.at);
    for (const zone_plan& done : g.zones) {
        if (done.at.zone == p.at.zone &&
            (done.at.which == p.at.which || p.at.which == side::both)) {
            z["with_this_kit"] = json_of(done.how);
            break;
        }
    }
    return z;
}

}  // namespace

std::string sheet_json(const style& s, const groom& g, const plan_request& r) {
    const body& b = r.reference.dog_body;
    const part_index parts(b);
    json j{{"schema", "pelage/sheet/1"},
           {"id", s.id},
           {"title", s.title},
           {"version", s.version},
           {"date", s.dated ? json(iso(*s.dated)) : json(nullptr)},
           {"approved_by", s.approved_by},
           {"text", s.text},
           {"extends", s.line},
           {"season", s.in_season},
           {"coats", coats_json(coats_for(s, r.reference))},
           {"mixes", s.mixes},
           {"feet", s.feet},
           {"face", s.face},
           {"ears", s.ears},
           {"tail", s.tail},
           {"topknot", s.topknot},
           {"upkeep", s.upkeep},
           {"longest_interval_days",
            s.longest_interval ? days_of(*s.longest_interval) : json(nullptr)},
           {"consent", s.consent},
           {"front_desk", s.front_desk},
           {"to_sign", json::array()},
           {"minutes_by_plan", minutes_json(g.before + g.after)},
           {"appointment_minutes_by_plan", minutes_json(whole_by_plan(g, r))},
           {"minutes", json::object()},
           {"basis", name(s.why.how)},
           {"source", s.why.from},
           {"note", s.why.note},
           {"zones", json::array()},
           {"seams", json::array()},
           {"limits", json::array()},
           {"seasons", json::array()}};
    for (const consent& c : g.consents) {
        j["to_sign"].push_back({{"consent", c.id}, {"for", consent_words(c, g, r)}});
    }
    for (std::size_t k = 0; k < size_names.size(); ++k) {
        if (s.takes.by_size[k]) {
            j["minutes"][std::string(size_names[k])] = minutes_json(*s.takes.by_size[k]);
        }
    }
    for (const sheet_place& p : places_of(s, b, parts)) {
        j["zones"].push_back(wished_place_json(p, g, b));
    }
    for (const sheet_seam& one : s.seams) {
        j["seams"].push_back({{"a", one.a}, {"b", one.b}, {"kind", name(one.kind)}});
    }
    for (const limit& l : s.limits) {
        j["limits"].push_back(limit_json(l));
    }
    for (const season& one : s.seasons) {
        j["seasons"].push_back({{"name", one.name},
                                {"scale", one.scale},
                                {"text", season_words(one, length_unit::mm)}});
    }
    return dumped(j);
}

std::string list_json(const std::vector<listed_sheet>& all, const expected_coat* mix,
                      const reference_data& c) {
    json j{{"schema", "pelage/sheets/1"}};
    if (mix != nullptr) {
        j["mix"] = mix->read.dog.text;
        j["coats"] = json::array();
        for (const coat_chance& k : mix->may_be.coats) {
            j["coats"].push_back(
                {{"coat", name(k.coat)}, {"chance", std::round(k.chance * 1e6) / 1e6}});
        }
    }
    j["sheets"] = json::array();
    for (const listed_sheet& one : all) {
        json s{{"id", one.sheet->id},
               {"title", one.sheet->title},
               {"coats", coats_json(coats_for(*one.sheet, c))},
               {"mixes", one.sheet->mixes}};
        if (mix != nullptr) {
            s["for_mix"] = one.for_mix;
            s["chance"] = std::round(one.chance * 1e6) / 1e6;
        }
        j["sheets"].push_back(std::move(s));
    }
    return dumped(j);
}

std::string json_of(const sheet_comparison& c, const plan_request& r) {
    json j{{"schema", "pelage/sheet-compare/1"},
           {"alerts", titles(r.patient.alerts)},
           {"first", cost_json(*c.first, c.of_first)},
           {"second", cost_json(*c.second, c.of_second)},
           {"alike", c.alike},
           {"differ", json::array()}};
    for (const sheet_difference& d : c.differ) {
        j["differ"].push_back({{"zone", r.reference.dog_body.zones[d.at.zone].id},
                               {"title", title(r.reference.dog_body, d.at)},
                               {"first", wish_json(d.first)},
                               {"second", wish_json(d.second)}});
    }
    return dumped(j);
}

std::string json_of(const std::vector<ranked_sheet>& all, const plan_request& r, const days& wait,
                    const print_options& o) {
    json j{{"schema", "pelage/any-sheet/1"},
           {"alerts", titles(r.patient.alerts)},
           {"dog", r.patient.id},
           {"wait_days", days_of(wait)},
           {"sheets", json::array()}};
    for (const ranked_sheet& t : all) {
        json s{{"id", t.sheet->id},        {"title", t.sheet->title},
               {"carried", t.carried()},   {"own", t.own},
               {"for_mix", t.for_mix},     {"minutes", minutes_json(t.takes())},
               {"against", json::array()}, {"instead", json::array()}};
        if (t.when) {
            s["back_in_days"] = days_of(t.when->next_visit);
            s["full_groom_days"] = days_of(t.when->full_groom);
            if (o.today) {
                s["full_groom_by"] = iso(plus(*o.today, t.when->full_groom));
            }
        }
        if (t.away) {
            s["off_own_sheet_mm"] = mm_json(*t.away);
        }
        for (const told_objection& a : told_objections(t, r, length_unit::mm)) {
            s["against"].push_back({{"what", name(a.what)}, {"text", a.text}});
        }
        for (const tool_instead& i : t.instead) {
            s["instead"].push_back({{"out", "blade " + i.out},
                                    {"instead", title(i.instead)},
                                    {"where", titles_in(t, i.where, r)},
                                    {"would_leave", json_of(i.would_leave)},
                                    {"leaves", json_of(i.leaves)}});
        }
        j["sheets"].push_back(std::move(s));
    }
    return dumped(j);
}

}  // namespace pelage::io
