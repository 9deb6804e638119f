// Laws of reading and writing on random text and lengths.
#include <cmath>
#include <string>
#include <vector>

#include <rapidcheck.h>

#include <pelage/base/date.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/trade/place_words.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

/// Any bytes, or words that look like something.
std::string any_text() {
    if (*rc::gen::arbitrary<bool>()) {
        return *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
    }
    static const std::vector<std::string> parts{
        "1",  "2",      "9",     "13",          "5/8",  "1/2",   "/",   ".",   " ",   "mm",
        "in", "\"",     "cm",    "comb",        "over", "blade", "7F",  "½",   "¾",   "#",
        "-",  "every ", " days", "to the skin", "toe",  "long",  "nan", "1e9", "0x1", "weekly"};
    std::string s;
    for (int i = *rc::gen::inRange(0, 8); i > 0; --i) {
        s += *rc::gen::elementOf(parts);
    }
    return s;
}

/// From 0.01 to 999 mm, as many of each order of magnitude.
double any_length() {
    return std::pow(10.0, -2.0 + 4.9995 * *rc::gen::inRange(0, 100001) / 100000.0);
}

}  // namespace

TEST_CASE("a length shown in millimetres reads back as close as it was shown", "[text]") {
    CHECK(rc::check([] {
        const double v = any_length();
        const parsed_length p = parse_length(show(mm(v)));
        RC_ASSERT(p.ok());
        const double grain = v < 1 ? 0.01 : v < 10 ? 0.1 : 1.0;
        RC_ASSERT(std::abs(in_mm(p.value) - v) <= grain / 2 + 1e-9);
    }));
}

TEST_CASE("a length shown in inches reads back within half a step of its fraction", "[text]") {
    CHECK(rc::check([] {
        const double v = any_length();
        RC_PRE(v > 0.03);
        const parsed_length p = parse_length(show(mm(v), length_unit::inch));
        RC_ASSERT(p.ok());
        // sixteenths from 1/8 in up, sixty-fourths from 1/32; below, one over a whole number
        const double half_step = v > 3.2 ? 25.4 / 32 : 25.4 / 128;
        RC_ASSERT(std::abs(in_mm(p.value) - v) <= half_step + 1e-9);
    }));
}

TEST_CASE("a longer length never shows as a shorter one", "[text]") {
    CHECK(rc::check([] {
        const double a = any_length();
        const double b = a * (1.0 + *rc::gen::inRange(0, 1000) / 1000.0);
        RC_PRE(b <= 1000);
        for (const length_unit u : {length_unit::mm, length_unit::inch}) {
            const parsed_length first = parse_length(show(mm(a), u));
            const parsed_length second = parse_length(show(mm(b), u));
            RC_PRE(first.ok() && second.ok());
            RC_ASSERT(in_mm(first.value) <= in_mm(second.value) + 1e-9);
        }
    }));
}

TEST_CASE("whatever is typed, a length is read or told what is wrong", "[text]") {
    CHECK(rc::check([] {
        const std::string s = any_text();
        const parsed_length p = parse_length(s);
        RC_ASSERT(complaint(p, s).empty() == p.ok());
        if (p.ok()) {
            RC_ASSERT(in_mm(p.value) > 0.0);
            RC_ASSERT(in_mm(p.value) <= 1000.0);
        }
    }));
}

TEST_CASE("whatever is typed, brushing is a habit or nothing, a day is a day or nothing",
          "[text]") {
    CHECK(rc::check([] {
        const std::string s = any_text();
        if (const auto b = parse_brushing(s)) {
            RC_ASSERT(s.find("none") != std::string::npos || s.find("never") != std::string::npos ||
                      s.find("to the skin") != std::string::npos ||
                      s.find("on the surface") != std::string::npos);
        }
        if (const auto d = parse_date(s)) {
            RC_ASSERT(iso(*d) == s);
        }
    }));
}

TEST_CASE("every n days reads as the habit it is", "[text]") {
    CHECK(rc::check([] {
        const int n = *rc::gen::inRange(1, 366);
        const auto b = parse_brushing("every " + std::to_string(n) + " days to the skin");
        RC_ASSERT(b);
        RC_ASSERT(b->how_often == every(n));
        RC_ASSERT(b->to_skin);
    }));
}

TEST_CASE("whatever is typed, a look-up answers or says why not", "[lookup]") {
    CHECK(rc::check([] {
        const std::string s = any_text();
        for (const asked_kind k : {asked_kind::any, asked_kind::blade, asked_kind::comb}) {
            const lookup_request r{io::reference(),
                                   io::reference().rules,
                                   io::demo_salon().tools,
                                   s,
                                   k,
                                   *rc::gen::arbitrary<bool>(),
                                   coat_class::wavy,
                                   {},
                                   {},
                                   {}};
            try {
                const lookup_answer a = look_up(r);
                RC_ASSERT(a.stated.has_value() == (a.asked.what != question::form::of_length));
            } catch (const error& e) {
                RC_ASSERT(!std::string(e.what()).empty());
                RC_ASSERT(e.code() != errc::internal);
            }
        }
    }));
}

TEST_CASE("whatever is typed, it names places or none", "[select]") {
    CHECK(rc::check([] {
        const auto s = select(io::reference().dog_body, any_text());
        if (s) {
            RC_ASSERT(!s->places.empty());
        }
    }));
}

TEST_CASE("edits are a distance, and a name is nearest to itself", "[suggest]") {
    CHECK(rc::check([] {
        const auto word = [] {
            return *rc::gen::container<std::string>(rc::gen::elementOf(std::string("abcdeE ")));
        };
        const std::string a = word();
        const std::string b = word();
        RC_ASSERT(edits(a, b) == edits(b, a));
        RC_ASSERT(edits(a, a) == 0);
        RC_ASSERT(edits(a, b) <= std::max(a.size(), b.size()));
        RC_ASSERT(edits(a, b) + std::min(a.size(), b.size()) >= std::max(a.size(), b.size()));
        RC_ASSERT(nearest_name(a, {a + "xxxx", a}) == a);
    }));
}
