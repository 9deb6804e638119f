// Calendars, and coats for a wait, as JSON.
#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/json.hpp"
#include "answers/visit_keys.hpp"

namespace pelage::io {

namespace {

json share(chance p) {
    return std::round(p * 10000.0) / 10000.0;
}

json whole_days(const days& d) {
    return std::round(in_days(d) * 10.0) / 10.0;
}

json titles(const std::vector<place>& places, const plan_request& r) {
    json j = json::array();
    for (const place& p : places) {
        j.push_back(title(r.reference.dog_body, p));
    }
    return j;
}

json sum_json(const calendar_sum& s) {
    json j{{"chance", s.asked}, {"brushing", title(s.habit)}, {"possible", s.possible}};
    if (!s.possible) {
        return j;
    }
    j["visits"] = s.number();
    for (std::size_t i = 0; i < visit_keys.size(); ++i) {
        j[std::string(visit_keys[i])] = s.visits[i];
    }
    j["minutes"] = in_minutes(s.takes);
    if (s.by_chance) {
        j["chance_least"] = share(s.least);
        j["chance_throughout"] = share(s.throughout);
    }
    return j;
}

json sums_json(const std::vector<calendar_sum>& all) {
    json j = json::array();
    for (const calendar_sum& s : all) {
        j.push_back(sum_json(s));
    }
    return j;
}

json visit_json(const calendar_visit& v, const calendar_request& r) {
    json j{{"date", iso(v.on)},
           {"weekday", weekday_names[weekday_of(v.on)]},
           {"day", (v.on - r.today).count()},
           {"kind", name(v.what)},
           {"minutes", in_minutes(v.takes)}};
    j["due"] = json::array();
    for (const due_clock& d : v.due) {
        j["due"].push_back({{"clock", name(d.what)}, {"by", iso(d.by)}, {"overdue", d.by < v.on}});
    }
    if (v.fresh) {
        j["event"] = {{"date", iso(v.fresh->on)}, {"name", v.fresh->name}};
    }
    return j;
}

json blocked_json(const calendar_blocked& b) {
    json clocks = json::array();
    for (const due d : b.clocks) {
        clocks.push_back(name(d));
    }
    json j{{"possible_until", iso(b.after)},
           {"clocks_in_the_way", std::move(clocks)},
           {"possible_with_no_days_off", b.days_off},
           {"sheets_that_do", b.styles}};
    if (b.brush) {
        j["brushing_that_does"] = name(*b.brush);
    }
    if (b.percent) {
        j["percent_that_does"] = *b.percent;
    }
    return j;
}

}  // namespace

std::string json_of(const calendar& c, const calendar_request& r) {
    json j{{"schema", "pelage/calendar/1"},
           {"alerts", titles(r.work.patient.alerts)},
           {"dog", dog_json(r.work)},
           {"today", iso(r.today)},
           {"weeks", r.weeks},
           {"last_full_groom", iso(c.from)},
           {"groomed_today", c.from_today},
           {"until", iso(c.until)},
           {"mats_by_length", c.mats_by_length},
           {"clips_the_jacket", c.clips}};
    j["sum"] = sum_json(c.sum);
    if (c.weekday) {
        j["all_on"] = weekday_names[*c.weekday];
    }
    j["visits"] = json::array();
    for (const calendar_visit& v : c.visits) {
        j["visits"].push_back(visit_json(v, r));
    }
    j["first_to_mat"] = titles(c.first, r.work);
    j["held_by_brushing"] = titles(c.held, r.work);
    j["chances"] = sums_json(c.chances);
    j["brushing"] = sums_json(c.habits);
    if (c.blocked) {
        j["blocked"] = blocked_json(*c.blocked);
    }
    return dumped(j);
}

std::string json_of(const longest_coat_answer& a, const plan_request& r, const print_options& o) {
    json j{{"schema", "pelage/back-in/1"},
           {"alerts", titles(r.patient.alerts)},
           {"wished_days", whole_days(a.wished)},
           {"holds", a.holds},
           {"percent", a.percent},
           {"back_in_days", whole_days(a.when.next_visit)},
           {"chance", a.when.asked},
           {"chance_at_wish", share(a.at_wish)},
           {"usual_interval_days", whole_days(a.usual)}};
    j["instead"] = json::array();
    for (const auto& [where, change] : a.instead) {
        j["instead"].push_back({{"group", name(r.reference.dog_body.zones[where.zone].where)},
                                {"sheet_mm", std::round(in_mm(change.first) * 100.0) / 100.0},
                                {"mm", std::round(in_mm(change.second) * 100.0) / 100.0}});
    }
    const plan_request ask = request_for(r, a.wishes);
    j["plan"] = json::parse(json_of(a.plan, a.when, ask, o));
    return dumped(j);
}

}  // namespace pelage::io
