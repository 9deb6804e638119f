#include <algorithm>

#include <pelage/model/dog_record.hpp>

namespace pelage {

std::vector<log_entry> entries_in_force(const std::vector<log_entry>& all) {
    std::vector<unsigned> gone;
    std::vector<log_entry> out;
    for (auto e = all.rbegin(); e != all.rend(); ++e) {
        if (std::find(gone.begin(), gone.end(), e->number) != gone.end()) {
            continue;
        }
        if (e->corrects != 0) {
            gone.push_back(e->corrects);
        }
        if (!e->takes_back) {
            out.push_back(*e);
        }
    }
    std::reverse(out.begin(), out.end());
    return out;
}

std::optional<log_entry> last_in_force(const std::vector<log_entry>& all) {
    const std::vector<log_entry> in_force = entries_in_force(all);
    return in_force.empty() ? std::nullopt : std::optional{in_force.back()};
}

bool say_the_same(log_entry a, log_entry b) {
    a.number = b.number;
    return a == b;
}

namespace {

void lay_on_visit(visit& v, const log_entry& e) {
    v.logged = true;
    v.who = e.who.empty() ? v.who : e.who;
    if (!e.left.empty()) {
        v.left.clear();
        for (const logged_length& l : e.left) {
            v.left.push_back({l.whom, l.is});
        }
    }
    if (e.mats) {
        v.mats.emplace();
        for (const logged_mat& m : *e.mats) {
            v.mats->push_back(m.whom);
        }
    }
}

}  // namespace

std::vector<std::string> kinds_logged(const dog& d, const date& on) {
    std::vector<std::string> out;
    for (const visit& v : d.visits) {
        if (v.logged && v.on == on) {
            out.push_back(v.kind);
        }
    }
    return out;
}

void add_record(dog& d, const std::vector<log_entry>& all) {
    const std::vector<log_entry> in_force = entries_in_force(all);
    for (const log_entry& e : in_force) {
        for (const logged_length& l : e.found) {
            d.measured.push_back({e.on, l.whom, l.is, true});
        }
        log_entry told = e;
        for (const std::string_view kind : visit_kinds_of(e.services)) {
            const auto same = std::find_if(d.visits.begin(), d.visits.end(), [&](const visit& v) {
                return !v.logged && v.on == e.on && v.kind == kind;
            });
            lay_on_visit(same == d.visits.end()
                             ? d.visits.emplace_back(visit{e.on, std::string(kind)})
                             : *same,
                         told);
            // what was found that day is told once
            told.mats.reset();
            told.left.clear();
        }
    }
    if (!in_force.empty()) {
        d.promised = in_force.back().next;
    }
    if (!in_force.empty() && !d.now.empty()) {
        d.now.clear();
        d.now_gave_way = true;
    }
}

}  // namespace pelage
