#include "roster_line.hpp"

#include <exception>

#include <pelage/forecast.hpp>
#include <pelage/groom.hpp>

#include "read_files.hpp"
#include "read_json.hpp"
#include "write_roster.hpp"

namespace pelage::io {

namespace {

/// A line of a roster is planned, so it must say what a dog's file may leave to be said later.
void check_plannable(const dog& d, const node& root, faults& out) {
    if (!d.coat && out.none()) {
        out.add(root.at, errc::missing,
                "the mix alone doesn't say what coat is on the table; found no coat; write " +
                    out.setting("coat", "\"wavy\"") + " as you see it");
    }
    if (d.style.empty() && out.none()) {
        out.add(root.at, errc::missing,
                "\"style\" is missing; write " + out.setting("style", "\"...\""));
    }
}

diagnostics one_fault(errc code, std::string text) {
    return {{{}, 0, 1, code, std::move(text)}};
}

}  // namespace

void line_planner::plan(std::string_view text, std::uint64_t number, std::string& out,
                        roster_count& n) {
    faults wrong({}, notation::json);
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
    const groom_request r{all_.reference, all_.rules, all_.tools, d, *find(all_.styles, d.style),
                          all_.today,     all_.asked};
    const groom g = plan_groom(r);
    const auto when = g.stop.empty() ? std::optional{back_of(r, g)} : std::nullopt;
    add_plan(out, number, g, when, r);
    n.refused += g.stop.empty() && g.stuck.empty() ? 0 : 1;
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
