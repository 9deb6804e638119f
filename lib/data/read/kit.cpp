// The kit of a salon.
#include "data/read/kit.hpp"

#include <algorithm>

#include <fmt/format.h>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/solver/setup_problem.hpp>

#include "data/read/kit_tools.hpp"

namespace pelage::io {

namespace {

/// A comb's blade must be short and have full teeth, or hair gets between comb and blade.
bool goes_under(const kit_blade& b) {
    constexpr double longest = 1.55;  // blade 10, with a hair's grain of slack against rounding
    return !skips(b.spec) && b.spec.stated.best <= mm(longest) && b.spec.shape != edge::toe;
}

std::string blades_that_go_under(const kit& k) {
    std::vector<std::string> fit;
    for (const kit_blade& b : k.blades) {
        if (goes_under(b)) {
            fit.push_back('"' + b.spec.id + '"');
        }
    }
    return fit.empty() ? "a blade 30, 40 or 10 into the kit" : "under_comb = " + one_of(fit);
}

void check_under_comb(record& r, const kit& k) {
    const kit_blade* b = find_blade(k, k.under_comb);
    if (b == nullptr) {
        r.out().add(
            r.at("under_comb"), errc::unknown,
            fmt::format("the blade under the combs must lie in the kit; found {}, which does "
                        "not; write {}",
                        shown(k.under_comb), blades_that_go_under(k)));
    } else if (!goes_under(*b)) {
        r.out().add(r.at("under_comb"), errc::conflict,
                    fmt::format("a comb sits on full teeth no longer than a 10; found {}; write "
                                "{}",
                                shown(k.under_comb), blades_that_go_under(k)));
    }
}

void get_under_comb(record& r, page& p, kit& k) {
    word label{r.get_text("under_comb", presence::may), r.at("under_comb")};
    if (!label.text.empty() && asks_back(label, p.out)) {
        return;
    }
    if (!label.text.empty()) {
        k.under_comb = label.text;
    } else if (k.combs.empty()) {
        return;
    }
    check_under_comb(r, k);
}

/// Clippers: how many, or a table for each kind with the blades it takes.
void get_clippers(record& r, page& p, kit& k) {
    const auto kinds = r.get_tables("clipper", presence::may);
    k.clippers = r.get_count("clippers", 1, 20, 1);
    if (kinds.empty()) {
        return;
    }
    if (r.at("clippers") != r.at()) {
        p.out.add(r.at("clippers"), errc::conflict,
                  "clippers are counted once; found clippers and [[kit.clipper]]; leave one of "
                  "them out");
    }
    int detachable = 0;
    for (const node* n : kinds) {
        record one(*n, p.out);
        clipper c;
        c.title = one.get_text("title", presence::must);
        c.count = one.get_count("count", 1, 20, 1);
        const auto takes = one.get_words("takes", presence::may);
        c.detachable = takes.empty();
        for (const word& w : takes) {
            if (w.text == "detachable") {
                c.detachable = true;
            } else if (const auto id = blade_named(w, p)) {
                c.takes.push_back(*id);
            }
        }
        one.done();
        detachable +=
            c.detachable || c.takes != std::vector<std::string>{"adjustable"} ? c.count : 0;
        k.machines.push_back(std::move(c));
    }
    k.clippers = std::max(detachable, 1);
    for (const kit_blade& b : k.blades) {
        if (!taken(k, b.spec)) {
            p.out.add(r.at("clipper"), errc::conflict,
                      fmt::format("no clipper takes blade {}; write takes = [\"{}\"] on the one "
                                  "that does",
                                  shown(b.spec.id),
                                  b.spec.shape == edge::adjustable ? "adjustable" : "detachable"));
        }
    }
}

/// What lies at one table: names of the kit's own blades and combs.
table_drawer get_table_drawer(record& r, page& p, const kit& k) {
    table_drawer t;
    t.id = r.get_id("id");
    t.clippers = r.get_count("clippers", 1, 20, 1);
    const auto names = [&](std::string_view key, const auto& all, std::vector<std::string>& to) {
        for (const word& w : r.get_words(key, presence::may)) {
            std::vector<std::string> known;
            for (const auto& one : all) {
                known.push_back(one.spec.id);
            }
            const bool there = std::find(known.begin(), known.end(), w.text) != known.end();
            if (there) {
                to.push_back(w.text);
            } else {
                p.out.add(w.at, errc::unknown,
                          fmt::format("not in the kit; found {}; there are {}", shown(w.text),
                                      one_of(known)));
            }
        }
    };
    names("blades", k.blades, t.blades);
    names("combs", k.combs, t.combs);
    r.done();
    return t;
}

/// A table without the blade under its combs could use none of them.
void check_table(record& r, const kit& k, const table_drawer& t, faults& out) {
    kit with = k;
    with.tables.push_back(t);
    const kit here = at_table(with, t.id);
    if (!t.combs.empty() && find_blade(here, k.under_comb) == nullptr) {
        out.add(r.at("combs"), errc::conflict,
                fmt::format("combs need their blade at the same table; found combs without blade "
                            "{}; write it under blades too",
                            shown(k.under_comb)));
    }
}

void get_tables_of(record& r, page& p, kit& k) {
    unique_ids seen;
    std::vector<table_drawer> all;
    for (const node* n : r.get_tables("table", presence::may)) {
        record one(*n, p.out);
        all.push_back(get_table_drawer(one, p, k));
        seen.add(all.back().id, one.at("id"), "table", p.out);
        check_table(one, k, all.back(), p.out);
    }
    k.tables = std::move(all);
}

}  // namespace

/// What the planner can hold apart.
void check_setups(record& r, page& p, const kit& k) {
    const std::size_t ways =
        p.out.none() ? setups_of(k, std::nullopt, p.known.rules.cut).size() : 0;
    if (ways > most_setups) {
        r.out().add(
            r.at(), errc::range,
            fmt::format("too many ways to hold the blades and combs of one kit; found {}, of "
                        "which most are combs over every blade they fit; right is at most "
                        "{}: name under fits what each is really used over",
                        ways, most_setups));
    }
}

kit get_kit(const node& table, page& p) {
    record r(table, p.out, "kit.");
    kit k;
    k.title = r.get_text("title", presence::may);
    unique_ids blades;
    for (const node* n : r.get_tables("blade", presence::must)) {
        record one(*n, p.out);
        k.blades.push_back(get_blade(one, p));
        blades.add(k.blades.back().spec.id, one.at("id"), "blade", p.out);
        if (k.blades.back().spec.id.empty()) {
            k.blades.pop_back();
        }
    }
    page with_own = p;  // a comb may fit one of the salon's own blades
    with_own.drawer = &k;
    get_clippers(r, with_own, k);
    for (const node* n : r.get_tables("comb_set", presence::may)) {
        record one(*n, p.out);
        get_set(one, with_own, k);
    }
    unique_ids combs;
    for (const node* n : r.get_tables("comb", presence::may)) {
        record one(*n, p.out);
        if (auto c = get_comb(one, with_own)) {
            combs.add(c->spec.id, one.at("id"), "comb", p.out);
            if (!say_of_set(k, *c, one.at("count") != one.at())) {
                k.combs.push_back(*std::move(c));
            }
        }
    }
    get_under_comb(r, p, k);
    get_tables_of(r, p, k);
    check_setups(r, p, k);
    r.done();
    return k;
}

}  // namespace pelage::io
