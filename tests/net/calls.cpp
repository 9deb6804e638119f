// The net's library calls: what the core answers of the embedded data, as values. A line is the call,
// then numbers: lengths in mm, days, work in thousandths of a minute, enumerators and places by number;
// "-" is nothing. No words of ours are in it but ids. tests/net/run holds it to recorded/calls.
#include "net/calls.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/data/reference.hpp>
#include <pelage/forecast/calendar.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/forecast/longest_coat.hpp>
#include <pelage/kit/buy.hpp>
#include <pelage/kit/check.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/kit/test_patch.hpp>
#include <pelage/model/growth_record.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/planner/alternatives.hpp>
#include <pelage/planner/grow_back.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/sheets/check.hpp>
#include <pelage/sheets/compare.hpp>
#include <pelage/sheets/rank.hpp>

using namespace pelage;
using namespace net;

namespace {

const std::vector<std::string> demo_dogs{"acorn",   "aspen", "biscuit",
                                         "bramble", "tansy", "thistle"};

plan_request asked_of(const std::string& dog_id, const std::string& sheet = {}) {
    const dog& d = *find(demo().dogs, dog_id);
    const style& s = *find(demo().styles, sheet.empty() ? d.style : sheet);
    return {known(), rules(), demo().tools, d, s, today};
}

void plans() {
    for (const std::string& id : demo_dogs) {
        const plan_request r = asked_of(id);
        const groom g = make_plan(r);
        (line("plan_groom " + id) << g.before << g.after)
            .number(g.blocks.size())
            .number(g.cautions.size())
            .number(g.consents.size())
            .number(g.blends.size())
            .number(g.stuck.size());
        for (const zone_plan& z : g.zones) {
            (line("  zone") << z.at << z.how << z.leaves << z.target << z.tolerated << z.takes)
                .number(z.when)
                .number(z.came)
                .number(z.combed_out);
        }
        for (const block& b : g.blocks) {
            (line("  block") << b.how << b.takes << b.running_before << b.running)
                .number(b.zones.size());
        }
        for (const blend& b : g.blends) {
            (line("  blend") << b.step << b.width << b.between).number(b.from).number(b.into);
        }
        const kept_coat kept = after_groom(r, g);
        line("after_groom " + id).number(kept.zones.size())
            << kept.law.rate.log_median << kept.law.rate.log_sd << kept.usual;
    }
}

void forecasts() {
    for (const std::string& id : demo_dogs) {
        const plan_request r = asked_of(id);
        const groom g = make_plan(r);
        line("back_of " + id) << back_of(r, g);
        const forecast f = forecast_of(r, g);
        line("forecast_of " + id) << f.when << f.usual << f.tidy_face_feet << f.tidy_sanitary;
        for (const zone_forecast& z : f.zones) {
            line("  zone") << z.at << z.start << z.threshold << z.early << z.even << z.late
                           << z.clock;
        }
        for (const habit_forecast& h : f.habits) {
            line("  habit").number(h.habit.how_often) << h.when;
        }
        if (f.regrown) {
            line("  jacket") << f.regrown->in[0] << f.regrown->in[1] << f.regrown->in[2];
        }
    }
}

void calendars() {
    for (const std::string& id : demo_dogs) {
        const plan_request r = asked_of(id);
        const calendar c = calendar_of({r, today, 20, demo().closed, &demo().styles}, make_plan(r));
        (line("calendar_of " + id) << c.from << c.until << c.sum.takes << c.sum.throughout)
            .number(c.sum.possible)
            .number(c.sum.number());
        for (const calendar_visit& v : c.visits) {
            line visit("  visit");
            (visit << v.on << v.takes).number(v.what);
            for (const due_clock& d : v.due) {
                visit.number(d.what) << d.by;
            }
        }
        if (c.blocked) {
            (line("  blocked") << c.blocked->after)
                .number(c.blocked->clocks.size())
                .number(c.blocked->percent.value_or(0))
                .number(c.blocked->styles.size());
        }
    }
}

void sheets_on_dogs() {
    for (const std::string id : {"biscuit", "bramble"}) {
        const plan_request r = asked_of(id);
        for (const ranked_sheet& t : rank_sheets(r, demo().styles)) {
            line trial("try_sheets " + id);
            trial << t.sheet->id << t.takes() << t.when << t.away;
            for (const sheet_objection& o : t.against) {
                trial.number(o.what());
            }
        }
        for (const double wait : {28.0, 42.0, 70.0}) {
            const longest_coat_answer a = back_in(r, make_plan(r), day(wait));
            line("back_in " + id).number(a.holds).number(a.percent)
                << a.wished << a.when << a.at_wish << a.usual;
        }
    }
    const sheet_comparison c =
        compare_sheets(asked_of("biscuit"), asked_of("biscuit", "low-upkeep"), demo().closed);
    line("compare_sheets").number(c.differ.size()).number(c.alike)
        << c.of_first.takes() << c.of_second.takes() << c.of_first.when << c.of_second.when;
    for (const sheet_difference& d : c.differ) {
        line("  differs") << d.at << d.first.target << d.second.target;
    }
}

void beside_plans() {
    for (const std::string& id : demo_dogs) {
        const plan_request r = asked_of(id);
        const groom g = make_plan(r);
        for (const other_way& w : other_ways(r, g)) {
            line("other_ways " + id).number(w.what)
                << w.more << w.dearer << static_cast<double>(w.changed.size());
        }
        for (const without_tool& w : without_each_tool(r, g)) {
            line("without_each_tool " + id).number(w.in_kit).number(w.changed.size())
                << w.more << w.dearer;
        }
        for (const reason_why& w : reasons_why(r, g)) {
            line("reasons_why " + id).number(w.zone).number(w.why) << w.next << w.dearer;
        }
        for (const infeasible_zone& w : infeasible_zones(r, g)) {
            line("conflicts " + id).number(w.zone).number(w.rules.size()).number(w.frees.size());
        }
        for (const regrowth_option& w : ways_to_grow_back(r, g)) {
            line("ways_to_grow_back " + id).number(w.how)
                << w.more << w.even << w.step << w.back_in[0] << w.back_in[1] << w.back_in[2];
        }
    }
}

lookup_request question_of(const char* text) {
    return {known(), rules(), demo().tools, text, asked_kind::any, false, {}, {}, {}, today};
}

void lookups() {
    for (const char* text :
         {"7F", "10", "4", "9mm", "1/2in", "13 mm comb over 10", "30mm", "5/8", "7X"}) {
        lookup_request r = question_of(text);
        try {
            const lookup_answer a = look_up(r);
            line(std::string("look_up ") + text).number(a.asked.what) << a.asked.wanted;
            for (const coat_row& c : a.leaves) {
                line("  leaves").number(c.coat) << c.with << c.against << c.stops;
            }
            for (const nearest_row& n : a.nearest) {
                line("  nearest").number(n.coat) << n.best.front().how << n.best.front().off;
            }
            for (const near_setup& n : a.replaces) {
                line("  replaces") << n.how << n.leaves << n.off;
            }
        } catch (const error& e) {
            line(std::string("look_up ") + text) << "error" << static_cast<double>(e.code());
        }
    }
    lookup_request r = question_of("");
    r.coat = coat_class::wavy;
    for (const rung& s : whole_ladder(r).rungs) {
        (line("whole_ladder") << s.how << s.leaves).number(s.out).number(s.whole_coat);
    }
}

void mixes() {
    for (const char* text : {"poodle", "poodle x labrador", "F1b poodle x labrador to poodle",
                             "F2 poodle x golden retriever", "genotype l/l F/f C/c", "cockapoo",
                             "poodle x terrier", "F1b poodle x labrador"}) {
        line answer(std::string("expect_coat ") + text);
        try {
            for (const coat_chance& c :
                 expect_coat(text, known().genes, known().coats).may_be.coats) {
                answer.number(c.coat) << c.chance;
            }
        } catch (const bad_input& e) {
            for (const diagnostic& d : e.all()) {
                (answer << "error").number(d.code).number(d.line).number(d.column);
            }
        }
    }
}

void learning() {
    const learned_rate l = learn_rate(*find(demo().dogs, "tansy"), known(), rules(), today);
    line("learn_rate tansy").number(l.counted.size()).number(l.left_out.size())
        << l.dog.log_median << l.dog.log_sd << l.next.log_median << l.next.log_sd << l.coat_weight;
    for (const population_rate& h : learn_populations(demo(), known(), today)) {
        line("learn_herds").number(h.coat).number(h.dogs).number(h.measurements).number(h.left_out);
    }
    const herd_rate h = herd_rate_of({{-1.0, 0.1}, {-0.8, 0.1}, {-1.3, 0.2}}, 0.05);
    line("herd_rate_of") << h.law.log_median << h.law.log_sd << h.fitted_log_sd << h.median_error;
}

void kits() {
    const kit_check c = check_kit({known(), rules(), demo().tools, demo().styles, today});
    line check("check_drawer");
    check.number(c.targets).number(c.met).number(c.met_today).number(c.amiss());
    for (const kit_remark& r : c.remarks) {
        check.number(r.what);
    }
    const shopping s = what_to_buy({known(), rules(), demo().tools, demo().styles,
                                    usual_wares(known(), demo().tools), 4, today});
    line("what_to_buy").number(s.targets.size()).number(s.whole).number(s.reachable);
    for (const purchase& p : s.curve) {
        line bought("  bought");
        bought.number(p.choice.met).number(p.choice.bound);
        for (const std::size_t i : p.bought) {
            bought.number(i);
        }
    }
    const blade& seven = *find(known().blades, "7F");
    for (const double found : {4.0, 5.8, 40.0}) {
        for (const direction d : {direction::with_lay, direction::against_lay}) {
            line patch("read_patch 7F");
            patch << found;
            const calibration l = read_patch({known(),
                                              rules(),
                                              demo().tools,
                                              demo().styles,
                                              bare(seven, d),
                                              coat_class::drop,
                                              {},
                                              mm(found)});
            if (l.refused) {
                (patch << "refused").number(l.refused->why);
                continue;
            }
            patch << l.expected << (l.lay ? std::optional{l.lay->best} : std::nullopt)
                  << l.measured;
            patch.number(l.lengths.size()).number(l.targets.size());
        }
    }
}

void sheets() {
    const style& lagotto = *find(known().styles, "lagotto");
    for (const style& s : demo().styles) {
        line doubts("doubts_about " + s.id);
        for (const sheet_warning& w : doubts_about(s, known(), rules())) {
            doubts.number(w.what).number(w.at.line);
        }
        doubts << "against" << static_cast<double>(broken_limits(s, lagotto, known()).size());
    }
}

}  // namespace

int main(int argc, char** argv) {
    summed::whole = argc > 1 && std::string_view(argv[1]) == "whole";
    if (argc > 2 && std::string_view(argv[1]) == "only") {
        summed::only = argv[2];
        calls_by_chance();
        return 0;
    }
    plans();
    forecasts();
    calendars();
    sheets_on_dogs();
    beside_plans();
    lookups();
    mixes();
    learning();
    kits();
    sheets();
    calls_without_a_dog();
    calls_by_chance();
    return 0;
}
