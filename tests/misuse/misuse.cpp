// Answers of the front door used in every way that a struct of references would not bear: kept after
// their salon is gone, moved, copied, mixed, asked from many threads. Built under the sanitizers by
// tools/check --full; it has a main of its own so that little else is built there.
#include <iostream>
#include <optional>
#include <sstream>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include <pelage/pelage.hpp>

namespace {

int failed = 0;

void check(bool holds, const char* what) {
    if (!holds) {
        std::cerr << "misuse: " << what << '\n';
        ++failed;
    }
}

const auto today = pelage::parse_date("2026-11-25");

pelage::plan plan_of(const char* dog) {
    return pelage::salon::embedded().plan(pelage::salon::embedded().dog(dog), {.today = today});
}

/// All that a plan can be asked for, as one text.
std::string all_of(const pelage::plan& p) {
    std::string out =
        text(p) + json(p) + html(p, pelage::length_unit::inch) + p.dog().name() + p.sheet().title;
    for (const pelage::step& s : p.steps()) {
        out += text(s) + text(s.tool, pelage::length_unit::inch);
    }
    for (const pelage::plan_caution& c : p.cautions()) {
        out += c.id + c.text;
    }
    if (p.goes_ahead()) {
        out += text(p.return_date()) + pelage::iso(p.return_date().on().value());
    }
    return out;
}

/// All that a salon can be asked for, as one text.
std::string all_of(const pelage::salon& s) {
    std::string out = s.title();
    for (const pelage::dog_card& d : s.dogs()) {
        out += all_of(s.plan(d, {.today = today}));
    }
    out += text(s.lookup("7F", pelage::coat_class::wavy)) + json(s.lookup("9mm"));
    out += text(s.ladder(pelage::coat_class::curly)) + csv(s.ladder(pelage::coat_class::drop));
    const auto visits = s.calendar(s.dog("biscuit"), *today, 12);
    out += text(visits) + json(visits) + ics(visits) + text(s.check_kit()) + json(s.check_kit());
    std::istringstream in(R"({"id":"moss","size":"small","coat":"curly","style":"lamb"})");
    std::ostringstream answers;
    check(s.roster(in, answers, {.today = today, .jobs = 2}).lines == 1, "a line is a dog");
    return out + answers.str();
}

void kept_after_the_salon() {
    std::optional<pelage::salon> shop = pelage::salon::embedded();
    const pelage::plan plan = shop->plan(shop->dog("biscuit"), {.today = today});
    const pelage::return_day back = plan.return_date();
    const pelage::tool_lookup found = shop->lookup("7F", pelage::coat_class::wavy);
    const pelage::kit_ladder ladder = shop->ladder(pelage::coat_class::curly);
    const pelage::visit_calendar visits = shop->calendar(shop->dog("biscuit"), *today, 12);
    const pelage::kit_report report = shop->check_kit(today);
    const std::string before =
        all_of(plan) + text(back) + text(found) + csv(ladder) + ics(visits) + json(report);
    shop.reset();
    check(before ==
              all_of(plan) + text(back) + text(found) + csv(ladder) + ics(visits) + json(report),
          "answers say the same once the salon is gone");
    check(all_of(plan_of("bramble")) == all_of(plan_of("bramble")), "a plan can be returned");
    for (const pelage::step& s : plan_of("biscuit").steps()) {  // the plan itself is gone here
        check(!text(s).empty(), "steps outlive their plan");
    }
    std::vector<pelage::plan> kept;
    for (const pelage::dog_card& d : pelage::salon::embedded().dogs()) {
        kept.push_back(pelage::salon::embedded().plan(d));
    }
    for (const pelage::plan& p : kept) {
        check(!text(p).empty(), "plans can be gathered");
    }
}

void moved_and_copied() {
    pelage::salon one = pelage::salon::embedded();
    const std::string before = one.title();
    pelage::salon two = std::move(one);
    check(one.title() == before && two.title() == before,  // NOLINT: that is what is tried
          "a salon that was moved from is whole");
    one = two;
    two = std::move(one);
    check(one.dogs().size() == two.dogs().size(), "nor does assigning break one");  // NOLINT
    pelage::plan a = plan_of("biscuit");
    const std::string said = text(a);
    pelage::plan b = plan_of("bramble");
    std::swap(a, b);
    check(text(b) == said && text(a) != said, "plans can be swapped");
    const pelage::plan c = std::move(a);
    check(text(a) == text(c), "a plan that was moved from is whole");  // NOLINT
}

void two_salons_mixed() {
    const pelage::salon one = pelage::salon::embedded();
    const pelage::salon two = pelage::salon::embedded();
    const pelage::plan here = one.plan(one.dog("biscuit"), {.today = today});
    const pelage::plan there = two.plan(here.dog(), {.today = today});  // a dog of another salon
    const pelage::plan bramble = two.plan(one.dog("bramble"), {.today = today});
    check(here.steps().size() == there.steps().size(), "a dog may be another salon's");
    check(text(bramble.return_date()) == text(plan_of("bramble").return_date()),
          "a date is that of its own plan");
}

void many_threads() {
    const pelage::salon shop = pelage::salon::embedded();
    const pelage::plan shared = shop.plan(shop.dog("biscuit"), {.today = today});
    const std::string alone = all_of(shop) + all_of(shared);
    std::vector<std::string> said(8);
    {
        std::vector<std::jthread> all;
        for (std::string& mine : said) {
            all.emplace_back([&mine, shop, &shared] { mine = all_of(shop) + all_of(shared); });
        }
    }
    for (const std::string& one : said) {
        check(one == alone, "eight threads hear what one hears");
    }
}

}  // namespace

int main(int argc, char**) {
    if (argc > 1) {  // the threads come first: what is made on first use is made by all at once
        many_threads();
    }
    kept_after_the_salon();
    moved_and_copied();
    two_salons_mixed();
    many_threads();
    return failed == 0 ? 0 : 1;
}
