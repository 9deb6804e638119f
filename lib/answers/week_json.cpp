// The week and the diary as values; the diary as iCalendar.
#include <algorithm>
#include <map>

#include <pelage/answers/week.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/ics.hpp"
#include "answers/json.hpp"
#include "answers/words/week.hpp"

namespace pelage::io {

namespace {

json date_json(const std::optional<date>& d) {
    return d ? json(iso(*d)) : json();
}

std::string_view standing_of(const due_dog& one) {
    if (one.why_not) {
        return *one.why_not == not_plannable::no_coat    ? "no coat"
               : *one.why_not == not_plannable::no_sheet ? "no sheet"
                                                         : "no groomer";
    }
    return one.stopped       ? "veterinarian first"
           : one.asked_first ? "owner first"
           : !one.last_full  ? "no groom on record"
                             : "bookable";
}

}  // namespace

std::string json_of(const week_matter& m) {
    json j{
        {"schema", "pelage/week/1"}, {"today", iso(m.asked.today)}, {"salon", m.asked.salon.title}};
    if (m.asked.salon.invented) {
        j["invented"] = true;
    }
    j["dogs"] = json::array();
    for (const due_dog& one : m.due) {
        const dog& who = m.asked.salon.dogs[one.dog];
        json d{{"id", who.id},
               {"name", who.name},
               {"alerts", titles(who.alerts)},
               {"standing", standing_of(one)}};
        if (one.bookable()) {
            d["visit"] = name(one.what);
            d["by"] = iso(one.by);
            d["full_groom_by"] = iso(one.full_by);
            d["minutes"] = minutes_json(one.takes);
            d["overdue_days"] = std::max(0, static_cast<int>((m.asked.today - one.by).count()));
        }
        d["last_full_groom"] = date_json(one.last_full);
        d["last_visit"] = date_json(one.last_visit);
        d["promised"] = date_json(one.promised);
        d["stuck"] = one.stuck;
        d["unsigned"] = one.unsigned_consents;
        j["dogs"].push_back(std::move(d));
    }
    return dumped(j);
}

std::string json_of(const diary_matter& m) {
    const auto day = [&](int n) { return iso(m.asked.today + std::chrono::days{n}); };
    json j{{"schema", "pelage/diary/1"},
           {"today", iso(m.asked.today)},
           {"salon", m.asked.salon.title},
           {"weeks", m.question.problem.last / 7},
           {"possible", !m.question.problem.hours.empty()}};
    if (!m.question.problem.hours.empty()) {
        j["cost_minutes"] = minutes_json(m.found.cost);
        j["bound_minutes"] = minutes_json(m.found.bound);
        j["gap"] = share_json(m.found.gap());
    }
    if (m.asked.salon.invented) {
        j["invented"] = true;
    }
    j["visits"] = json::array();
    const std::vector<work> takes = visit_minutes(m.found, m.question, m.due);
    for (std::size_t i = 0; i < m.found.visits.size(); ++i) {
        const diary_visit& v = m.found.visits[i];
        const due_dog& one = m.due[m.question.which[v.dog]];
        if (m.only.value_or(v.groomer) == v.groomer) {
            j["visits"].push_back(
                {{"on", day(v.on)},
                 {"groomer", m.asked.salon.groomers[v.groomer].name},
                 {"dog", m.asked.salon.dogs[one.dog].id},
                 {"alerts", titles(m.asked.salon.dogs[one.dog].alerts)},
                 {"unsigned", one.unsigned_consents},
                 {"visit", visit_name(one, v)},
                 {"minutes", minutes_json(takes[i])},
                 {"late_days", std::max(0, v.late)},
                 {"promised", one.promised == m.asked.today + std::chrono::days{v.on}}});
        }
    }
    j["not_held"] = json::array();
    for (const diary_lapse& l : m.found.lapses) {
        j["not_held"].push_back(
            {{"dog", m.asked.salon.dogs[m.due[m.question.which[l.dog]].dog].id},
             {"due", day(l.due)},
             {"why", m.question.problem.hours.empty()              ? "no groomer named"
                     : l.reason == lapse_reason::no_common_day     ? "no day in common"
                     : l.reason == lapse_reason::longer_than_a_day ? "longer than a day"
                                                                   : "no room"}});
    }
    j["promised_not_kept"] = json::array();
    for (const promised_visit& v : m.question.promised) {
        if (v.why != promise_broken::no) {
            json one{{"dog", m.asked.salon.dogs[m.due[v.due].dog].id},
                     {"on", iso(v.on)},
                     {"why", name(v.why)}};
            if (v.instead) {
                one["booked"] = iso(*v.instead);
            }
            j["promised_not_kept"].push_back(std::move(one));
        }
    }
    return dumped(j);
}

std::string ics_of(const diary_matter& m) {
    std::string out = ics::opening();
    std::map<std::size_t, int> visits;
    const std::vector<work> takes = visit_minutes(m.found, m.question, m.due);
    for (std::size_t i = 0; i < m.found.visits.size(); ++i) {
        const diary_visit& v = m.found.visits[i];
        const due_dog& one = m.due[m.question.which[v.dog]];
        const dog& who = m.asked.salon.dogs[one.dog];
        const auto before = std::count_if(who.visits.begin(), who.visits.end(),
                                          [&](const visit& b) { return b.on <= m.asked.today; });
        const auto number = before + ++visits[v.dog];
        if (m.only.value_or(v.groomer) != v.groomer) {
            continue;
        }
        const std::string alerts =
            who.alerts.empty() ? "" : "ALERT: " + joined(titles(who.alerts), "; ") + ". ";
        out += ics::whole_day(
            {who.id + "-diary-" + std::to_string(number), m.asked.today + std::chrono::days{v.on},
             called(who) + ": " + std::string(visit_name(one, v)) + ", " +
                 m.asked.salon.groomers[v.groomer].name,
             alerts + "About " + detail::whole_minutes(takes[i]) + " min." +
                 (who.invented ? " An invented dog for trying things out." : "")},
            m.asked.today);
    }
    return out + ics::closing();
}

}  // namespace pelage::io
