// Our iCalendar read back by libical: the same visits, the same words.
#include <algorithm>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

#include <libical/ical.h>

#include <pelage/answers/week.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/forecast/calendar.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

/// A visit as the reader finds it.
struct found {
    std::string uid;
    std::string from;
    std::string to;
    std::string stamp;
    std::string summary;
    std::string description;
};

using component = std::unique_ptr<icalcomponent, void (*)(icalcomponent*)>;

component parsed(const std::string& text) {
    return {icalparser_parse_string(text.c_str()), icalcomponent_free};
}

std::vector<found> visits_in(icalcomponent* root) {
    std::vector<found> out;
    for (icalcomponent* c = icalcomponent_get_first_component(root, ICAL_VEVENT_COMPONENT);
         c != nullptr; c = icalcomponent_get_next_component(root, ICAL_VEVENT_COMPONENT)) {
        const auto time = [](const icaltimetype& t) {
            return std::string(icaltime_as_ical_string(t));
        };
        out.push_back({icalcomponent_get_uid(c), time(icalcomponent_get_dtstart(c)),
                       time(icalcomponent_get_dtend(c)), time(icalcomponent_get_dtstamp(c)),
                       icalcomponent_get_summary(c), icalcomponent_get_description(c)});
    }
    return out;
}

std::string basic(const date& d) {
    std::string s = iso(d);
    s.erase(std::remove(s.begin(), s.end(), '-'), s.end());
    return s;
}

/// A demo dog's half year from 25 November 2026, under another name.
struct half_year {
    dog patient;
    const style* sheet = nullptr;
    date today = parse_date("2026-11-25").value();

    half_year(const char* id, std::string called)
        : patient(*find(io::demo_salon().dogs, id)),
          sheet(find(io::demo_salon().styles, patient.style)) {
        patient.name = std::move(called);
    }
    [[nodiscard]] plan_request work() const {
        return {io::reference(),
                io::demo_salon().rules,
                io::demo_salon().tools,
                patient,
                *sheet,
                today};
    }
};

}  // namespace

TEST_CASE("a general reader of iCalendar finds every visit as it was written", "[oracle][ics]") {
    const char* id = GENERATE("biscuit", "bramble", "tansy", "thistle", "acorn", "aspen");
    // every character that must be escaped, letters of two to four bytes where a line is folded
    const std::string name = "Bél\\la; die Große, " + std::string(29, 'x') + "犬犬犬🐩🐩";
    INFO(id);
    half_year h(id, name);
    h.patient.events.push_back({parse_date("2027-02-14").value(), 7, "a; \\show, é"});
    const plan_request work = h.work();
    const calendar_request ask{work, h.today, 26, io::demo_salon().closed, nullptr};
    const calendar c = calendar_of(ask, make_plan(work));
    const std::string text = io::ics_of(c, ask);
    const component root = parsed(text);
    REQUIRE(root != nullptr);
    CHECK(icalcomponent_count_errors(root.get()) == 0);
    CHECK(icalrestriction_check(root.get()) == 1);
    const auto visits = visits_in(root.get());
    REQUIRE(visits.size() == c.visits.size());
    REQUIRE_FALSE(visits.empty());
    std::string fresh;
    int last_number = 0;
    for (std::size_t i = 0; i < visits.size(); ++i) {
        const calendar_visit& v = c.visits[i];
        // an appointment keeps its id when it moves: they are numbered, after those that were
        const std::string before = std::string(id) + "-visit-";
        REQUIRE(visits[i].uid.starts_with(before));
        const int number = std::stoi(visits[i].uid.substr(before.size()));
        CHECK(visits[i].uid == before + std::to_string(number) + "@pelage");
        CHECK(number == (i == 0 ? number : last_number + 1));
        last_number = number;
        CHECK(visits[i].from == basic(v.on));
        CHECK(visits[i].to == basic(v.on + std::chrono::days{1}));
        CHECK(visits[i].stamp == "20261125T000000Z");
        CHECK(visits[i].summary == name + ": " + std::string(pelage::name(v.what)));
        fresh += visits[i].description;
    }
    CHECK_THAT(fresh, match::ContainsSubstring("fresh for a; \\show, é on 14 February 2027"));
    CHECK(text == io::ics_of(calendar_of(ask, make_plan(work)), ask));
}

TEST_CASE("lines are folded at 75 octets, never inside a character, and end in CR LF",
          "[oracle][ics]") {
    for (int shift = 0; shift < 8; ++shift) {
        half_year h("biscuit",
                    std::string(static_cast<std::size_t>(shift), 'x') +
                        "ééééééééééééééééééééééééééééééééééééééééééééé犬犬犬犬犬犬犬犬犬🐩🐩🐩🐩🐩🐩🐩🐩");
        const plan_request work = h.work();
        const calendar_request ask{work, h.today, 12, {}, nullptr};
        const calendar visits = calendar_of(ask, make_plan(work));
        const std::string text = io::ics_of(visits, ask);
        std::size_t from = 0;
        std::size_t lines = 0;
        while (from < text.size()) {
            const std::size_t end = text.find("\r\n", from);
            REQUIRE(end != std::string::npos);
            const std::string line = text.substr(from, end - from);
            CHECK(line.size() <= 75);
            CHECK(line.find_first_of("\r\n") == std::string::npos);
            const std::size_t first = !line.empty() && line.front() == ' ' ? 1 : 0;
            CHECK((static_cast<unsigned char>(line.at(first)) & 0xC0U) != 0x80U);
            from = end + 2;
            ++lines;
        }
        CHECK(lines > 10);
        CHECK(visits_in(parsed(text).get()).front().summary ==
              h.patient.name + ": " + std::string(name(visits.visits.front().what)));
    }
}

TEST_CASE("a general reader of iCalendar finds every visit of a groomer's diary", "[oracle][ics]") {
    const salon_files& s = io::demo_salon();
    std::vector<style> sheets = s.styles;
    sheets.insert(sheets.end(), io::reference().styles.begin(), io::reference().styles.end());
    const week_request ask{io::reference(), s, sheets, parse_date("2026-11-25").value()};
    const auto due = due_dogs(ask);
    const diary_question question = diary_question_of(ask, due, 8);
    const diary booked = diary_of(question.problem);
    REQUIRE_FALSE(booked.visits.empty());
    std::size_t all = 0;
    for (std::size_t g = 0; g < s.groomers.size(); ++g) {
        const component root = parsed(io::ics_of(io::diary_matter{ask, due, question, booked, g}));
        REQUIRE(root != nullptr);
        CHECK(icalcomponent_count_errors(root.get()) == 0);
        CHECK(icalrestriction_check(root.get()) == 1);
        std::vector<std::string> ids;
        const auto visits = visits_in(root.get());
        auto v = visits.begin();
        for (const diary_visit& b : booked.visits) {
            if (b.groomer != g) {
                continue;
            }
            REQUIRE(v != visits.end());
            const date on = ask.today + std::chrono::days{b.on};
            CHECK(v->from == basic(on));
            CHECK(v->to == basic(on + std::chrono::days{1}));
            const dog& d = s.dogs[due[question.which[b.dog]].dog];
            CHECK_THAT(v->summary, match::ContainsSubstring(d.name));
            CHECK(std::find(ids.begin(), ids.end(), v->uid) == ids.end());
            ids.push_back(v->uid);
            ++v;
            ++all;
        }
        CHECK(v == visits.end());
    }
    CHECK(all == booked.visits.size());
}
