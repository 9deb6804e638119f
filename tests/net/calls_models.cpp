// The library calls that need no dog: rules, models, words, readers.
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/data/read.hpp>
#include <pelage/kit/buy.hpp>
#include <pelage/model/blend.hpp>
#include <pelage/model/matting.hpp>
#include <pelage/model/refusal.hpp>
#include <pelage/roster/roster.hpp>
#include <pelage/solver/order.hpp>
#include <pelage/trade/place_words.hpp>

#include "net/calls.hpp"

using namespace pelage;
using namespace net;

namespace {

void cuts_and_rules() {
    for (const blade& b : known().blades) {
        line cut("cut_length " + b.id);
        line refused("refuse " + b.id);
        for (const direction d : {direction::with_lay, direction::against_lay}) {
            cut << cut_length(bare(b, d), 45.0, rules().cut);
            for (const zone& z : known().dog_body.zones) {
                zone_today t;
                t.where = &z;
                const auto no = refuse(bare(b, d), t, rules().refusal, rules().cut);
                refused.number(no ? static_cast<int>(*no) : -1);
            }
        }
    }
    line("lay_from_patch") << lay_from_patch(mm(3.2), mm(5.0), rules().cut)
                           << lay_from_patch(mm(3.2), mm(3.0), rules().cut);
    for (const coat& c : known().coats) {
        line prone("matting_prone_length " + std::string(name(c.id)));
        for (const zone& z : known().dog_body.zones) {
            prone << matting_prone_length(c, z, {habit::weekly, true}, false, rules().matting);
        }
        const rate_law law = prior_rate(c, rules().growth);
        line("rate_quantile " + std::string(name(c.id)))
            << in_mm_per_day(rate_quantile(law, 0.1)) << in_mm_per_day(rate_quantile(law, 0.9));
    }
    for (const dog& d : demo().dogs) {
        line("comb_out_budget " + d.id) << comb_out_budget(d, rules().refusal);
    }
    line("blend_width") << blend_width(mm(6), mm(200), dog_size::small, rules().prices)
                        << blend_width(mm(30), mm(20), dog_size::giant, rules().prices);
}

void models() {
    const shared_law law{{-1.05, 0.25}, 0.15, mm(0.8)};
    const std::vector<kept_zone> zones{{mm(13), mm(30), mm(100), day(0)},
                                       {mm(30), mm(32), mm(40), day(21)}};
    line("all_fine") << all_fine(zones, law, day(10)) << all_fine(zones, law, day(40));
    line("last_fine_day") << last_fine_day(zones, law, 0.9, day(60))
                          << last_fine_day(zones, law, 0.5, day(60));
    line("when_back") << return_date_of(zones, law, 0.9, day(56));
    line("prone_quantile") << prone_quantile(zones[0], law, 0.1)
                           << prone_quantile(zones[0], law, 0.9);
    line("days_to_length") << days_to_length(mm(10), mm(20), mm(50), mm_per_day(0.35))
                           << days_to_length(mm(10), mm(60), mm(50), mm_per_day(0.35));
    line("resting_quantile") << resting_quantile({0.3, day(60), mm(40)}, {-1.0, 0.2}, mm(20), 0.5);
    line("normal") << normal_cdf(1.0) << normal_quantile(0.9);
    const cover_problem stock{3, {{5, {1, 6}}, {3, {2}}, {4, {4}}, {1, {0}}}};
    for (const cover_choice& c : best_stock(stock, 3)) {
        line("best_stock").number(c.items).number(c.met).number(c.bound);
    }
    const order_problem blocks{{{1, 1, 2, 0}, {2, 2, 5, 0}, {1, 4, 2, 2}}, {500, 700}, 1};
    const work_order best = best_order(blocks);
    line order("best_order");
    order.number(best.cost.pick_ups).number(best.cost.early).number(best.proven);
    for (const std::size_t i : best.blocks) {
        order.number(i);
    }
}

void words() {
    for (const char* t : {"13 mm", "1/2 in", "1 1/4in", "13", "9,5mm", "0 mm", "2000mm", "cat"}) {
        line(std::string("parse_length ") + t).number(parse_length(t).fault)
            << parse_length(t).value;
    }
    for (const char* t : {"none", "daily to the skin", "every 5 days to the skin",
                          "weekly on the surface", "weekly"}) {
        const auto b = parse_brushing(t);
        line(std::string("parse_brushing ") + t)
            << (b ? std::optional{static_cast<double>(b->how_often)} : std::nullopt);
    }
    line("dates") << plus(today, day(40)) << between(today, day_of("2027-03-01"))
                  << parse_date("2026-02-30");
    for (const char* t :
         {"all", "legs", "left back leg", "ears", "topknot", "whole tail", "bottom", "nose"}) {
        line places(std::string("select ") + t);
        if (const auto s = select(known().dog_body, t)) {
            for (const place& p : s->places) {
                places << p;
            }
        }
    }
    line("nearest_name") << nearest_name("low-upkep", ids(demo().styles))
                         << nearest_name("zebra", ids(demo().styles));
}

void files() {
    try {
        (void)io::read_dog(
            {"a.toml", "format = 1\nid = \"a\"\nsize = \"smal\"\ncoat = 3\n[now]\nall = 4\n"},
            known(), demo().styles);
    } catch (const bad_input& e) {
        line faults("read_dog");
        for (const diagnostic& d : e.all()) {
            faults.number(d.code).number(d.line).number(d.column);
        }
    }
    std::istringstream in(
        "{\"id\":\"a\",\"name\":\"A\",\"size\":\"small\",\"coat\":\"curly\",\"style\":\"lamb\"}\n{}"
        "\n");
    std::ostringstream out;
    const auto n = io::plan_roster(in, out, {known(), rules(), demo().tools, demo().styles, today});
    line("plan_roster").number(n.lines).number(n.refused).number(n.faulty).number(n.failed);
}

}  // namespace

void net::calls_without_a_dog() {
    cuts_and_rules();
    models();
    words();
    files();
}
