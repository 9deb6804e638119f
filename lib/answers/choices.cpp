#include "answers/choices.hpp"

#include <algorithm>
#include <array>
#include <functional>

#include <pelage/answers/owner_page.hpp>
#include <pelage/answers/ways_to_choose.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/planner/appointment.hpp>

#include "answers/document_cells.hpp"
#include "answers/grouped.hpp"
#include "answers/lines.hpp"
#include "answers/plan_parts.hpp"
#include "answers/ways.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/places.hpp"
#include "answers/words/tool.hpp"
#include "planner/cautions.hpp"

namespace pelage::io {

namespace {

constexpr std::size_t most_choices = 3;

/// One way: what it is, and the plan of it.
struct whole_way {
    std::string what;
    const groom* plan = nullptr;
    std::optional<std::array<days, 3>> back_in{};
    std::optional<return_date> when{};
    bool tested = false;  ///< only if a test patch proves it
};

std::string from_to(const ends& e, length_unit u) {
    const std::string low = u == length_unit::mm ? number(e.low) : fraction_of_inch(e.low);
    const std::string high = show(e.high, u);
    return show(e.low, u) == high ? high : low + " to " + high;
}

/// What a part is left at: what most of it is, with the longest of it where that is half as long again; or from
/// least to most where there is no such length or something of it comes out at less than half of that; "as it is"
/// where nothing of it is cut.
std::string left_in_part(const groom& g, const zone_list& part, length_unit u) {
    grouped<std::string> by;
    std::vector<length> all;
    for (const std::size_t i : part) {
        const zone_plan& z = g.zones[i];
        if (z.leaves && z.how.kind != tool_kind::none) {
            by.add(show(z.leaves->best, u), i);
            all.push_back(z.leaves->best);
        }
    }
    if (all.empty()) {
        return "as it is";
    }
    const auto most_of_it = std::max_element(
        by.all().begin(), by.all().end(),
        [](const auto& one, const auto& other) { return one.second.size() < other.second.size(); });
    const auto [low, high] = std::minmax_element(all.begin(), all.end());
    // what most of it is, unless something of it is shaved beside that: who signs must read so
    const length main = g.zones[most_of_it->second.front()].leaves->best;
    const bool shaved = *low + *low < main;
    if (2 * most_of_it->second.size() <= all.size() || shaved) {
        return from_to({*low, *high}, u);
    }
    // a fringe that stays is seen as well
    const bool fringe = in_mm(*high) > 1.5 * in_mm(main);
    return most_of_it->first +
           (fringe
                ? " (to " + (u == length_unit::mm ? number(*high) : fraction_of_inch(*high)) + ")"
                : "");
}

/// What is told of each way: a part of the dog, or those of its places in which the ways differ.
struct told_part {
    std::string title;
    zone_list zones;
};

zone_list zones_of(const groom& g, const body& b, group part) {
    zone_list out;
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        if (b.zones[g.zones[i].at.zone].where == part) {
            out.push_back(i);
        }
    }
    return out;
}

/// Whether those places come out otherwise by one way than by another.
bool told_apart(const std::vector<whole_way>& all, const zone_list& zones, length_unit u) {
    const std::string first = left_in_part(*all.front().plan, zones, u);
    return std::any_of(all.begin(), all.end(), [&](const whole_way& w) {
        return left_in_part(*w.plan, zones, u) != first;
    });
}

/// Parts that come out otherwise by one way than by another.
std::vector<told_part> parts_to_tell(const std::vector<whole_way>& all, const place_words& places,
                                     const body& b, length_unit u) {
    const groom& first = *all.front().plan;
    std::vector<told_part> out;
    for (const group part : {group::body, group::legs, group::tail, group::feet, group::head}) {
        const zone_list whole = zones_of(first, b, part);
        zone_list apart;
        std::copy_if(whole.begin(), whole.end(), std::back_inserter(apart),
                     [&](std::size_t i) { return told_apart(all, {i}, u); });
        // of a part that is said alike, what differs in it is the choice
        if (told_apart(all, whole, u)) {
            out.push_back({std::string(name(part)), whole});
        } else if (!apart.empty()) {
            out.push_back({listed(places.titles_of(apart)), apart});
        }
    }
    return out;
}

/// Whether body and legs come out about alike: of two lengths apart by a blade or so none stands out.
bool alike(const groom& g, const body& b, const price_rules& p) {
    std::optional<length> shortest;
    std::optional<length> longest;
    for (const zone_plan& z : g.zones) {
        const group where = b.zones[z.at.zone].where;
        const bool coat = where == group::body || where == group::legs;
        if (coat && z.leaves && z.how.kind == tool_kind::clip) {
            shortest = shortest ? shorter(*shortest, z.leaves->best) : z.leaves->best;
            longest = longest ? longer(*longest, z.leaves->best) : z.leaves->best;
        }
    }
    return !shortest || *longest - *shortest <= p.seam_allowance.best;
}

/// What goes down beside the mats: parts of which most does, and single places of others.
std::vector<std::string> gone_down(const zone_list& down, const place_words& places, const groom& g,
                                   const body& b) {
    std::vector<std::string> out;
    for (const group part : {group::body, group::legs, group::tail, group::feet, group::head}) {
        zone_list here;
        std::copy_if(down.begin(), down.end(), std::back_inserter(here),
                     [&](std::size_t i) { return b.zones[g.zones[i].at.zone].where == part; });
        if (here.empty()) {
            continue;
        }
        if (2 * here.size() > zones_of(g, b, part).size()) {
            out.emplace_back(name(part));
        } else {
            const std::vector<std::string> some = places.titles_of(here);
            out.insert(out.end(), some.begin(), some.end());
        }
    }
    return out;
}

std::string down_words(const regrowth_option& w, const place_words& places, const groom& g,
                       const plan_request& r) {
    if (w.how == grow_back::keep_long) {
        return w.plan.combed.empty() ? "only the mats clipped off"
                                     : "only what won't comb out is clipped";
    }
    const bool even =
        w.how == grow_back::even_part || alike(w.plan, r.reference.dog_body, r.rules.prices);
    return listed(w.down.size() <= 3 ? places.titles_of(w.down)
                                     : gone_down(w.down, places, g, r.reference.dog_body)) +
           (even ? " short, too" : " shorter, too");
}

std::vector<whole_way> after_mats(const groom& g, const beside& b, const plan_request& r) {
    const place_words places(g, r);
    std::vector<whole_way> all;
    for (const regrowth_option& w : b.grow_back) {
        const bool whole = all.empty() && !g.down.empty();
        all.push_back(
            {(all.empty() ? "as planned, " : "") +
                 (whole ? std::string("matted parts clipped whole") : down_words(w, places, g, r)),
             &w.plan, w.back_in});
    }
    for (const other_way& w : b.ways) {
        if (w.what == way_kind::clip_mats && !all.empty()) {
            // what is clipped off by the plan is by this way, too: the later of both
            const auto& planned = all.front().back_in;
            const bool later = planned && (!w.back_in || (*planned)[1] > (*w.back_in)[1]);
            all.push_back(
                {"mats clipped off, none combed out", &w.plan, later ? planned : w.back_in});
        }
    }
    return all;
}

/// "the body by blade 5F, 6.7 mm".
std::string body_by(const zone_plan& z, length_unit u) {
    return "the body by " + held_words(z.how, u) + (z.leaves ? ", " + show(z.leaves->best, u) : "");
}

std::vector<whole_way> by_the_kit(const groom& g, const std::vector<other_way>& ways,
                                  const std::optional<return_date>& when, length_unit u) {
    const bool asked = owner_chooses(g);
    std::vector<whole_way> all;
    for (const other_way& w : ways) {
        if (asked && (w.what == way_kind::body_length || w.what == way_kind::test_patch)) {
            all.push_back({w.what == way_kind::body_length
                               ? body_by(w.plan.zones[w.about.front()], u)
                               : "nearer the wish, if a test patch proves it",
                           &w.plan,
                           {},
                           w.when,
                           w.what == way_kind::test_patch});
        }
    }
    if (!all.empty()) {
        all.insert(all.begin(), {"as planned", &g, {}, when});
    }
    all.resize(std::min(all.size(), most_choices));
    return all;
}

/// What there is to choose of, the plan first; empty where that is all there is.
std::vector<whole_way> ways_of(const groom& g, const beside& b,
                               const std::optional<return_date>& when, const plan_request& r,
                               length_unit u) {
    std::vector<whole_way> all = after_mats(g, b, r);
    if (all.size() < 2) {
        all = by_the_kit(g, b.ways, when, u);
    }
    all.resize(all.size() < 2 ? 0 : std::min(all.size(), most_choices));
    return all;
}

/// When it is as asked again, or when the dog must be back; nothing where no way knows.
std::string back_head(const std::vector<whole_way>& all) {
    const auto any = [&](auto member) {
        return std::any_of(all.begin(), all.end(),
                           [&](const whole_way& w) { return (w.*member).has_value(); });
    };
    return any(&whole_way::back_in) ? "as asked again" : any(&whole_way::when) ? "back by" : "";
}

std::string back_words(const whole_way& w, const print_options& o) {
    return w.back_in ? weeks_in_words((*w.back_in)[0], (*w.back_in)[2])
           : w.when  ? day_in_short(w.when->next_visit, o)
                     : "";
}

/// Minutes and weeks that are the same by each way are no choice: what stands from `first` to the last but one.
void drop_alike(typed_table& t, std::vector<std::vector<std::string>>& rows, std::size_t first) {
    for (std::size_t k = t.head.size() - 1; k-- > first;) {
        const bool alike = std::all_of(rows.begin(), rows.end(),
                                       [&](const auto& row) { return row[k] == rows.front()[k]; });
        if (alike) {
            const auto at = static_cast<std::ptrdiff_t>(k);
            t.head.erase(t.head.begin() + at);
            t.numbers.erase(t.numbers.begin() + at);
            for (auto& row : rows) {
                row.erase(row.begin() + at);
            }
        }
    }
}

}  // namespace

bool owner_chooses(const groom& g) {
    return std::any_of(g.consents.begin(), g.consents.end(), [](const consent& c) {
        return c.what == consent_for::other_length && !c.given;
    });
}

std::vector<std::string> lengths_to_choose(const groom& g, const std::vector<other_way>& ways,
                                           const std::optional<return_date>& when,
                                           const plan_request& r, const print_options& o) {
    const std::vector<whole_way> all = by_the_kit(g, ways, when, o.units);
    if (all.size() < 2) {
        return {};
    }
    const body& b = r.reference.dog_body;
    const std::vector<told_part> shown = parts_to_tell(all, place_words(g, r), b, o.units);
    std::vector<std::string> out;
    for (const whole_way& w : all) {
        std::vector<std::string> parts;
        for (const told_part& part : shown) {
            parts.push_back(part.title + " " + left_in_part(*w.plan, part.zones, o.units));
        }
        out.push_back(sentence_case(parts.empty() ? w.what : listed(parts)) +
                      (w.tested ? ", if a small patch shows that it comes out so" : "") +
                      (w.when ? ": back by " + come_by_date(w.when->next_visit, o) : "") + ".");
    }
    return out;
}

namespace {

typed_table table_of(const std::vector<whole_way>& all, const std::vector<told_part>& shown,
                     const plan_request& r, const print_options& o) {
    const length_unit u = o.units;
    typed_table t;
    t.head.emplace_back("");
    t.numbers.push_back(false);
    for (const told_part& part : shown) {
        t.head.emplace_back(part.title);
        t.numbers.push_back(true);
    }
    const std::string back = back_head(all);
    t.head.emplace_back("minutes");
    t.numbers.push_back(true);
    if (!back.empty()) {
        t.head.push_back(back);
        t.numbers.push_back(false);
    }
    t.head.emplace_back("");
    t.numbers.push_back(false);
    t.whom = shown_to::people;
    std::vector<std::vector<std::string>> rows;
    for (const whole_way& w : all) {
        auto& row = rows.emplace_back();
        row.emplace_back(std::string(tick_box) + " " + std::to_string(rows.size()));
        for (const told_part& part : shown) {
            row.emplace_back(left_in_part(*w.plan, part.zones, u));
        }
        // of the plan itself as its card says it
        const work takes = appointment_of(r, *w.plan, booked_service(r)).total();
        row.emplace_back(detail::whole_minutes(takes));
        if (!back.empty()) {
            row.emplace_back(back_words(w, o));
        }
        row.emplace_back(w.what);
    }
    drop_alike(t, rows, 1 + shown.size());
    for (const auto& row : rows) {
        t.rows.emplace_back(row.begin(), row.end());
    }
    return t;
}

}  // namespace

std::optional<typed_table> choices(const groom& g, const beside& b,
                                   const std::optional<return_date>& when, const plan_request& r,
                                   const print_options& o) {
    const std::vector<whole_way> all = ways_of(g, b, when, r, o.units);
    if (all.empty()) {
        return std::nullopt;
    }
    return table_of(all, parts_to_tell(all, place_words(g, r), r.reference.dog_body, o.units), r,
                    o);
}

std::vector<line> choices_in_brief(const groom& g, const beside& b,
                                   const std::optional<return_date>& when, const plan_request& r,
                                   const print_options& o) {
    const std::vector<whole_way> all = ways_of(g, b, when, r, o.units);
    std::vector<std::string> minutes;
    std::vector<std::string> weeks;
    for (const whole_way& w : all) {
        const work takes = appointment_of(r, *w.plan, booked_service(r)).total();
        minutes.push_back("; " + detail::whole_minutes(takes) + " min");
        const std::string back = back_words(w, o);
        weeks.push_back(back.empty() ? "" : (w.back_in ? "; regrown " : "; back by ") + back);
    }
    const auto alike = [](const std::vector<std::string>& told) {
        return std::adjacent_find(told.begin(), told.end(), std::not_equal_to<>{}) == told.end();
    };
    constexpr std::string_view planned = "as planned, ";  // which is the first, the heading says
    std::vector<line> out;
    for (std::size_t k = 0; k < all.size(); ++k) {
        const std::string& what = all[k].what;
        out.push_back({line_as::box,
                       std::to_string(k + 1) + " " +
                           what.substr(what.starts_with(planned) ? planned.size() : 0) +
                           (alike(minutes) ? "" : minutes[k]) + (alike(weeks) ? "" : weeks[k]),
                       std::string(tick_box) + " ", 2, 8});
    }
    return out;
}

std::vector<chosen_way> ways_to_choose(const groom& g, const beside& b,
                                       const std::optional<return_date>& when,
                                       const plan_request& r, length_unit u) {
    std::vector<chosen_way> out;
    for (const whole_way& w : ways_of(g, b, when, r, u)) {
        out.push_back({*w.plan, w.what});
        groom& plan = out.back().plan;
        if (out.size() == 1) {
            plan = g;  // the plan itself, with what was asked beside it
            continue;
        }
        // a way beside the plan is weighed by its lengths and minutes alone
        plan.cautions.clear();
        plan.consents.clear();
        plan.notes.clear();
        add_cautions(r, plan);
    }
    return out;
}

}  // namespace pelage::io
