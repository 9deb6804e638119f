#include "generate/real_problems.hpp"

#include <algorithm>
#include <optional>
#include <string>

#include <pelage/base/error.hpp>
#include <pelage/data/reference.hpp>

#include "planner/compile.hpp"
#include "planner/targets.hpp"

namespace generate {

using namespace pelage;

namespace {

const reference_data& known() {
    return io::reference();
}

place any_place(dice& d) {
    const auto& zones = known().dog_body.zones;
    place p;
    p.zone = static_cast<std::size_t>(d.roll(static_cast<int>(zones.size())));
    if (zones[p.zone].paired && d.luck(50)) {
        p.which = d.luck(50) ? side::left : side::right;
    }
    return p;
}

place any_side(dice& d) {
    for (;;) {
        const place p = any_place(d);
        if (p.which != side::both && known().dog_body.zones[p.zone].where != group::prep) {
            return p;
        }
    }
}

/// The target times 0.7 to 1.3, at half a millimetre and not below it.
length scaled(dice& d, const length& target) {
    const double halves = std::round(in_mm(target) * d.between(0.7, 1.3) * 2.0);
    return mm(std::max(halves, 1.0) / 2.0);
}

style any_sheet(dice& d, const table_size& size) {
    style s = d.one_of(known().styles);
    for (sheet_rule& r : s.rules) {
        if (r.what.target && d.luck(50)) {
            r.what.target = scaled(d, *r.what.target);
        }
        if (d.luck(size.left_open)) {
            r.what.way = lay_choice::either;
        }
        if (d.luck(10)) {
            r.what.between = static_cast<side_of_target>(d.roll(3));
        }
    }
    s.show = d.luck(15);
    return s;
}

instruction any_wish(dice& d) {
    instruction i;
    if (d.luck(85)) {
        i.target = d.hair(2, 40);
    } else {
        i.blade = d.one_of(known().blades).id;
    }
    i.how = d.luck(75)   ? finish::clip
            : d.luck(60) ? finish::comb_then_scissor
                         : static_cast<finish>(d.roll(static_cast<int>(finish_names.size())));
    if (d.luck(50)) {
        i.way = static_cast<lay_choice>(d.roll(3));
    }
    if (d.luck(25)) {
        i.between = static_cast<side_of_target>(d.roll(3));
    }
    if (d.luck(15)) {
        i.tolerance = d.hair(0.2, 4);
    }
    return i;
}

void wishes(dice& d, const table_size& size, dog& patient) {
    const body& b = known().dog_body;
    const std::vector<std::string> wide{"all", "body", "legs", "head", "tail"};
    for (int n = d.roll(4); n > 0; --n) {
        const place p{any_place(d).zone, side::both};
        const std::string whom = d.luck(20) ? d.one_of(wide) : title(b, p);
        patient.departures.push_back({whom, any_wish(d)});
    }
    for (int n = d.roll(size.one_sided + 1); n > 0; --n) {
        patient.departures.push_back({title(b, any_side(d)), any_wish(d)});
    }
}

void hair(dice& d, dog& patient) {
    if (d.luck(40)) {
        patient.now.push_back({"all", d.hair(8, 80)});
        for (int n = d.roll(4); n > 0; --n) {
            const place p{any_place(d).zone, side::both};
            patient.now.push_back({title(known().dog_body, p), d.hair(2, 80)});
        }
    }
}

void findings(dice& d, dog& patient) {
    for (int n = d.luck(35) ? 1 + d.roll(4) : 0; n > 0; --n) {
        mat_finding m;
        m.at = any_place(d);
        m.grade = static_cast<mat_grade>(d.roll(4));
        m.comb_passes = d.luck(60);
        if (d.luck(80)) {
            m.free_hair = d.hair(0.5, 14);
        }
        m.comb_out = m.grade != mat_grade::pelt && d.luck(50);
        // one finding in a place
        if (std::none_of(patient.mats.begin(), patient.mats.end(),
                         [&](const mat_finding& o) { return share_side(o.at, m.at); })) {
            patient.mats.push_back(m);
        }
    }
    if (d.luck(15)) {
        patient.skin.push_back({any_place(d), static_cast<skin_state>(d.roll(5))});
    }
}

dog any_dog(dice& d, const table_size& size) {
    dog g;
    g.id = "made-up";
    g.invented = true;
    g.coat = static_cast<coat_class>(d.roll(static_cast<int>(coat_names.size())));
    g.size = static_cast<dog_size>(d.roll(static_cast<int>(size_names.size())));
    g.brushed = {static_cast<habit>(d.roll(static_cast<int>(habit_names.size()))), d.luck(70)};
    g.thin_or_old = d.luck(15);
    g.coat_change = d.luck(10);
    for (const char* agreed : {"clip-jacket", "clip-down", "show-blades"}) {
        if (d.luck(50)) {
            g.consents.emplace_back(agreed);
        }
    }
    wishes(d, size, g);
    hair(d, g);
    findings(d, g);
    return g;
}

/// A measured length within what makers make, for one piece in five.
std::optional<length> test_patch(dice& d, const figure<length>& stated) {
    if (!d.luck(20)) {
        return std::nullopt;
    }
    return d.hair(in_mm(stated.low), in_mm(stated.high));
}

kit any_drawer(dice& d, const table_size& size) {
    kit k;
    k.clippers = 1 + d.roll(2);
    k.under_comb = d.luck(70) ? "30" : d.one_of(std::vector<std::string>{"40", "15", "10"});
    for (const blade& b : known().blades) {
        if (b.id == k.under_comb || b.id == "10" || d.luck(size.drawer)) {
            k.blades.push_back({b, 1, test_patch(d, b.stated), d.luck(3), {}});
        }
    }
    for (const comb& c : known().combs) {
        if (d.luck(size.drawer)) {
            std::vector<std::string> fits;
            if (d.luck(25)) {
                fits = {"30", "10"};
            }
            k.combs.push_back({c, 1, test_patch(d, c.stated), fits});
        }
    }
    return k;
}

}  // namespace

plan_request table::request() const {
    plan_request r{known(), known().rules, tools, patient, sheet, {}};
    r.both_ways = both_ways;
    return r;
}

table any_table(dice& d, const table_size& size) {
    table t;
    t.patient = any_dog(d, size);
    t.sheet = any_sheet(d, size);
    t.tools = any_drawer(d, size);
    t.both_ways = d.luck(10);
    return t;
}

problem any_real_problem(dice& d, const table_size& size) {
    for (;;) {
        const table t = any_table(d, size);
        try {
            compiled_plan g = compile(t.request());
            if (g.stop.empty() && !g.choice.zones.empty()) {
                return std::move(g.choice);
            }
        } catch (const error& e) {
            if (e.code() != errc::range) {
                throw;
            }
        }
    }
}

std::vector<problem> real_problems(int n, std::uint64_t seed, const table_size& size) {
    dice d(seed);
    std::vector<problem> out;
    while (out.size() < static_cast<std::size_t>(n)) {
        out.push_back(any_real_problem(d, size));
    }
    return out;
}

}  // namespace generate
