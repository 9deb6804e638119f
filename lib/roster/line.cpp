#include "roster/line.hpp"

#include <exception>

#include <pelage/forecast/forecast.hpp>
#include <pelage/forecast/mixed_coat.hpp>
#include <pelage/model/hair_by_record.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/trade/upkeep.hpp>

#include "data/json.hpp"
#include "data/read/readers.hpp"
#include "roster/line_json.hpp"

namespace pelage::io {

namespace {

/// A line of a roster is planned, so it must say what a dog's file may leave to be said later.
void check_plannable(const dog& d, const node& root, faults& out) {
    if (d.style.empty() && out.none()) {
        out.add(root.at, errc::missing,
                "\"style\" is missing; write " + out.setting("style", "\"...\""));
    }
}

diagnostics one_fault(errc code, std::string text) {
    return {{{}, 0, 1, code, std::move(text)}};
}

}  // namespace

prepared::prepared(const roster_request& r)
    : top_(r.reference, r.rules, r.tools, r.today), styles_(r.styles) {
    sheets_.reserve(styles_.size());
    for (const style& s : styles_) {
        sheets_.emplace_back(r.reference.dog_body, top_.parts(), s);
    }
}

void line_planner::plan(std::string_view text, std::uint64_t number, std::string& out,
                        roster_count& n) {
    faults wrong({}, notation::json_text);
    dog d;
    if (text.find_first_not_of(" \t\r") == std::string_view::npos) {
        wrong.add({}, errc::missing, "an empty line; found no dog; write {\"id\": ...}");
    } else if (const auto root = parse_json(text, static_cast<unsigned>(number), wrong)) {
        page p{wrong, all_.reference, places_, &all_.tools};
        p.format_there = presence::may;
        d = get_dog(*root, p, all_.styles).value;
        id_ = d.id;
        check_plannable(d, *root, wrong);
    }
    if (!wrong.none()) {
        diagnostics told;
        wrong.move_to(told);
        throw bad_input(std::move(told));
    }
    const style& sheet = *find(all_.styles, d.style);
    assume_upkeep(d, sheet);
    std::optional<coat_answer> by_mix;
    if (!d.coat) {
        const heredity& h = all_.reference.genes;
        by_mix = coats_of(read_mix(d.mix, h).dog, h, all_.reference.coats);
        d.coat = by_mix->likeliest();
    }
    d = as_by_record(std::move(d), all_.reference, all_.rules, all_.today, &ready_.top().parts());
    plan_request r{all_.reference, all_.rules, all_.tools, d, sheet, all_.today, all_.asked};
    r.reasons = false;
    r.top = &ready_.top();
    r.laid = &ready_.laid(sheet);
    groom g = make_plan(r);
    if (!g.stuck.empty()) {
        r.reasons = true;  // few dogs: what stops them is said
        g = make_plan(r);
    }
    const auto when = !g.planned() ? std::nullopt
                      : by_mix     ? std::optional{back_of(r, g, by_mix->coats)}
                                   : std::optional{back_of(r, g)};
    add_plan(out, number, g, when, r, by_mix);
    n.refused += g.planned() && g.stuck.empty() ? 0 : 1;
}

void line_planner::answer(std::string_view text, std::uint64_t number, std::string& out,
                          roster_count& n) {
    ++n.lines;
    id_.clear();
    const std::size_t before = out.size();
    try {
        plan(text, number, out, n);
    } catch (const bad_input& e) {
        out.resize(before);
        add_faults(out, number, id_, e.all());
        ++n.faulty;
    } catch (const error& e) {
        out.resize(before);
        add_faults(out, number, id_, one_fault(e.code(), e.what()));
        ++(e.code() == errc::internal ? n.failed : n.faulty);
    } catch (const std::exception& e) {
        out.resize(before);
        add_faults(
            out, number, id_,
            one_fault(errc::internal, std::string("our own fault, please report it: ") + e.what()));
        ++n.failed;
    }
}

void line_planner::answer_too_long(std::uint64_t number, std::string& out, roster_count& n) {
    ++n.lines;
    ++n.faulty;
    add_faults(out, number, {},
               one_fault(errc::range, "longer than 1 MB; found a line that is; no dog needs that"));
}

}  // namespace pelage::io
