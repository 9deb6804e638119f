// Answers as pictures: on ladders of random drawers, growth of random dogs and every place of the dog no text
// covers another, and what is drawn is what the answer says.
#include <cmath>
#include <set>

#include <pelage/answers/illustrated.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/model/return_date.hpp>

#include "answers/chart.hpp"
#include "checked.hpp"
#include "generate/real_problems.hpp"

using namespace pelage;

namespace {

/// Random dogs that something is planned for, with their forecast.
template <class Check>
void for_planned(generate::dice& d, int dogs, const Check& check) {
    for (int i = 0; i < dogs; ++i) {
        const generate::table t = generate::any_table(d);
        const plan_request r = t.request();
        const groom g = make_plan(r);
        if (g.planned()) {
            INFO("dog " << i);
            check(r, g, forecast_of(r, g, false));
        }
    }
}

lookup_request looked_up(const plan_request& r, coat_class c) {
    return {r.reference, r.rules, r.tools, {}, asked_kind::any, false, c, {}, {}, {}, nullptr};
}

length_unit any_unit(generate::dice& d) {
    return d.one_in(3) ? length_unit::inch : length_unit::mm;
}

std::size_t count(const std::string& in, const std::string& what) {
    std::size_t n = 0;
    for (auto at = in.find(what); at != std::string::npos; at = in.find(what, at + 1)) {
        ++n;
    }
    return n;
}

}  // namespace

TEST_CASE("ladders of random drawers: no text covers another, the sheets' lengths beside") {
    generate::dice d(5);
    for (std::size_t i = 0; i < 40; ++i) {
        const generate::table t = generate::any_table(d);
        const plan_request r = t.request();
        lookup_request ask = looked_up(r, static_cast<coat_class>(i % coat_names.size()));
        if (d.one_in(3)) {
            ask.way = d.one_in(2) ? direction::with_lay : direction::against_lay;
        }
        if (d.one_in(3)) {
            ask.where = {{static_cast<std::size_t>(
                              d.roll(static_cast<int>(r.reference.dog_body.zones.size()))),
                          side::both}};
        }
        ladder l = whole_ladder(ask);
        l.targets = targets_on(ask, {t.sheet});
        INFO("drawer " << i);
        const auto p = io::picture_of(l, ask, io::dog_outline(), any_unit(d));
        REQUIRE(p.has_value() == !l.rungs.empty());
        if (p) {
            drawn::check_picture(*p);
        }
    }
}

TEST_CASE("lengths that nothing leaves stand apart however near they are") {
    generate::dice d(1);
    const generate::table t = generate::any_table(d);
    const plan_request r = t.request();
    const lookup_request ask = looked_up(r, coat_class::wavy);
    ladder l = whole_ladder(ask);
    for (int i = 0; i < 9; ++i) {
        l.targets.push_back({mm(20.0 + i), {0}, i % 3 == 0});
    }
    for (const length_unit u : {length_unit::mm, length_unit::inch}) {
        drawn::check_picture(*io::picture_of(l, ask, io::dog_outline(), u));
    }
}

TEST_CASE("a sheet's length counts as left only if the kit leaves it everywhere it is asked") {
    const reference_data& known = io::reference();
    kit drawer;
    drawer.title = "one blade";
    kit_blade only;
    only.spec = known.blades.front();
    for (const blade& b : known.blades) {
        only.spec = b.id == "7F" ? b : only.spec;
    }
    drawer.blades = {only};
    const parameters& rules = known.rules;
    const lookup_request ask{
        known, rules, drawer, {}, asked_kind::any, false, coat_class::curly, {}, {}, {}, nullptr};
    style s;
    s.id = "two";
    s.coats = {coat_class::curly};
    instruction short_one;
    short_one.target = mm(3.2);
    instruction long_one;
    long_one.target = mm(19.0);
    s.rules = {{"body", short_one}, {"legs", long_one}};
    const auto targets = targets_on(ask, {s});
    REQUIRE(targets.size() == 2);
    CHECK(targets[0].wanted == mm(3.2));
    CHECK(targets[0].met);
    CHECK(targets[1].wanted == mm(19.0));
    CHECK_FALSE(targets[1].met);
    s.coats = {coat_class::wire};
    CHECK(targets_on(ask, {s}).empty());
}

TEST_CASE("growth of random dogs: no text covers another, and curves are the forecast's days") {
    generate::dice d(7);
    int drawn_ones = 0;
    for_planned(d, 60, [&](const plan_request& r, const groom& g, const forecast& f) {
        const growth_course c = course_of(r, g, f);
        for (const growing_part& p : c.parts) {
            for (const auto& curve : p.curves) {
                for (std::size_t k = 1; k < curve.size(); ++k) {
                    CHECK(curve[k - 1].is <= curve[k].is);
                    CHECK(curve[k - 1].at <= curve[k].at);
                }
            }
            // the fastest first
            CHECK(p.curves[0].back().at <= p.curves[2].back().at);
        }
        io::print_options o;
        o.units = any_unit(d);
        if (d.one_in(2)) {
            o.today = date{std::chrono::year{2026} / 11 / 25};
        }
        if (const auto p = io::picture_of(c, f, r, io::dog_outline(), o)) {
            ++drawn_ones;
            drawn::check_picture(*p);
        }
    });
    CHECK(drawn_ones > 20);
}

TEST_CASE("where the curve of half such dogs is at a length, half are that long that day") {
    generate::dice d(3);
    for_planned(d, 40, [&](const plan_request& r, const groom& g, const forecast& f) {
        const kept_coat k = after_groom(r, g);
        for (const growing_part& p : course_of(r, g, f).parts) {
            if (!p.prone) {
                continue;
            }
            for (const grown_to& point : p.curves[1]) {
                // ln R is normal: half such dogs grow slower than the median rate
                const double days_at = in_mm(point.is - p.start) / std::exp(k.law.rate.log_median);
                const double error = in_mm(k.law.start_error) / std::exp(k.law.rate.log_median);
                if (days_at > 2.0 * error && in_days(point.at) < in_days(f.when.full_groom)) {
                    CHECK(in_days(point.at) > days_at - 0.5 * error - 0.5);
                    CHECK(in_days(point.at) < days_at + 0.5 * error + 0.5);
                }
            }
        }
    });
}

TEST_CASE("every place and every word for several, on every look of a dog") {
    const reference_data& known = io::reference();
    const outline& o = io::dog_outline();
    const kit none;
    const parameters& rules = known.rules;
    std::vector<std::string> breeds{""};
    for (const outline_look& l : o.looks) {
        if (!l.breeds.empty()) {
            breeds.push_back(l.breeds.front());
        }
    }
    const part_index words(known.dog_body);
    for (const std::string& word : words.words()) {
        const selection* where = words.find(word);
        if (where == nullptr) {
            continue;
        }
        lookup_request r{known,        rules, none, word, asked_kind::any, false,
                         std::nullopt, {},    {},   {},   nullptr};
        r.breed = breeds[word.size() % breeds.size()];
        const place_card c = card_of(r, {word, where->places, nullptr});
        INFO(word << ", " << r.breed);
        const auto p = io::picture_of(c, r, o, true);
        REQUIRE(p);
        drawn::check_picture(*p);
        CHECK(count(svg_of(*p), "pd-mk\" d=") >= 1);
    }
}

TEST_CASE("of a right ear the right side is shown") {
    const reference_data& known = io::reference();
    const kit none;
    const parameters& rules = known.rules;
    const lookup_request r{known,        rules, none, "right ear", asked_kind::any, false,
                           std::nullopt, {},    {},   {},          nullptr};
    const part_index words(known.dog_body);
    const place_card c = card_of(r, {"right ear", words.find("right ear")->places, nullptr});
    const auto p = io::picture_of(c, r, io::dog_outline(), false);
    REQUIRE(p);
    REQUIRE(p->parts.size() == 1);
    CHECK(p->parts.front().title == "from the right");
}

TEST_CASE("a title is broken into lines that fit, a word without blanks, too") {
    for (const std::string& line : io::lines_within(std::string(300, 'm'), 400.0, 26.0, false)) {
        CHECK(io::text_width(line, 26.0, false) <= 400.0);
    }
    const auto lines = io::lines_within("all of the dog and more of it", 200.0, 26.0, false);
    CHECK(lines.size() > 1);
    CHECK(lines.front() == "all of the dog");
}
