// A calendar's file in the place of an earlier one (RFC 5545, 3.8.7.4).
#include <string>

#include <pelage/answers/calendar_file.hpp>

#include "catch.hpp"

using pelage::io::in_place_of;

namespace {

std::string calendar(const std::string& visit, int sequence) {
    return "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:rosie-visit-1@pelage\r\nSEQUENCE:" +
           std::to_string(sequence) + "\r\nDTSTART;VALUE=DATE:" + visit +
           "\r\nDESCRIPTION:about SEQUENCE:9\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n";
}

}  // namespace

TEST_CASE("of two calendars of one day the later is above the earlier", "[calendar][ics]") {
    const std::string first = calendar("20261201", 252500);
    const std::string second = in_place_of(calendar("20261202", 252500), first);
    CHECK(second == calendar("20261202", 252501));
    CHECK(in_place_of(calendar("20261203", 252500), second) == calendar("20261203", 252502));
}

TEST_CASE("who makes the same calendar again has the same file", "[calendar][ics]") {
    const std::string second = calendar("20261202", 252501);
    CHECK(in_place_of(calendar("20261202", 252500), second) == second);
}

TEST_CASE("a calendar of a later day needs no more than its day", "[calendar][ics]") {
    CHECK(in_place_of(calendar("20261202", 252600), calendar("20261201", 252599)) ==
          calendar("20261202", 252600));
    // one made with an earlier --today rises all the same
    CHECK(in_place_of(calendar("20261202", 252400), calendar("20261201", 252501)) ==
          calendar("20261202", 252502));
}

TEST_CASE("what was there and is no calendar of ours changes nothing", "[calendar][ics]") {
    const std::string now = calendar("20261202", 252500);
    CHECK(in_place_of(now, "") == now);
    CHECK(in_place_of(now, "notes\r\nSEQUENCE:999999\r\n") == now);
    CHECK(in_place_of(now, "BEGIN:VCALENDAR\r\nSEQUENCE:many\r\n") == now);
}
