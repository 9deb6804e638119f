#include <algorithm>
#include <map>

#include <pelage/planner/planned_entry.hpp>

namespace pelage {

namespace {

bool is_in(const place& p, const std::vector<place>& all) {
    return std::find(all.begin(), all.end(), p) != all.end();
}

/// Each place once, a pair as its two sides.
std::vector<place> sides_of(const body& b, const std::vector<place>& places) {
    std::vector<place> out;
    const auto add = [&](const place& p) {
        if (!is_in(p, out)) {
            out.push_back(p);
        }
    };
    for (const place& p : places) {
        if (p.which == side::both && b.zones[p.zone].paired) {
            add({p.zone, side::left});
            add({p.zone, side::right});
        } else {
            add(p);
        }
    }
    return out;
}

/// What the word says of a place takes in all of these.
bool takes_in(const selection& s, const place& p) {
    return s.how == reach::all || std::any_of(s.places.begin(), s.places.end(),
                                              [&](const place& w) { return share_side(w, p); });
}

/// Today's lengths after the groom, but for what is told.
std::vector<logged_length> left_lengths(const plan_request& r, const groom& g,
                                        const part_index& parts,
                                        const std::vector<logged_length>& told, bool begun) {
    const body& b = r.reference.dog_body;
    const std::vector<std::size_t> later = begun ? done_another_day(g) : std::vector<std::size_t>{};
    std::map<std::int32_t, std::vector<place>> by_length;
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        if (std::find(later.begin(), later.end(), i) != later.end()) {
            continue;
        }
        const std::optional<finished>& left = begun && z.off_leaves ? z.off_leaves : z.leaves;
        const bool done = left && z.came != outcome::stuck && z.came != outcome::skin_left &&
                          z.came != outcome::left_by_sheet;
        for (const place& p : sides_of(b, {z.at})) {
            const bool said = std::any_of(told.begin(), told.end(), [&](const logged_length& l) {
                const selection* s = parts.find(l.whom);
                return s != nullptr && takes_in(*s, p);
            });
            if (done && !said) {
                by_length[in_hundredths(left->best)].push_back(p);
            }
        }
    }
    std::vector<logged_length> out;
    for (const auto& [hundredths, places] : by_length) {
        for (const std::string& word : words_for(parts, b, places)) {
            out.push_back({word, mm(hundredths / 100.0), false});
        }
    }
    out.insert(out.end(), told.begin(), told.end());
    return out;
}

std::vector<logged_tool> tools_of(const plan_request& r, const groom& g, const part_index& parts,
                                  bool begun) {
    std::vector<std::pair<std::string, std::vector<place>>> by_tool;
    for (const block& k : g.blocks) {
        if (begun && k.when == list::after_bath) {
            continue;
        }
        const std::string tool = title(k.how);
        auto at = std::find_if(by_tool.begin(), by_tool.end(),
                               [&](const auto& one) { return one.first == tool; });
        if (at == by_tool.end()) {
            at = by_tool.insert(by_tool.end(), {tool, {}});
        }
        for (const std::size_t z : k.zones) {
            at->second.push_back(g.zones[z].at);
        }
    }
    std::vector<logged_tool> out;
    for (const auto& [tool, places] : by_tool) {
        out.push_back({tool, words_for(parts, r.reference.dog_body, places)});
    }
    return out;
}

}  // namespace

std::vector<std::string> words_for(const part_index& parts, const body& b,
                                   const std::vector<place>& places) {
    std::vector<place> left = sides_of(b, places);
    std::vector<std::string> out;
    for (const std::string_view group : group_names) {
        const selection* s = parts.find(group);
        if (s == nullptr || s->how != reach::group) {
            continue;
        }
        const std::vector<place> whole = sides_of(b, s->places);
        if (std::all_of(whole.begin(), whole.end(),
                        [&](const place& p) { return is_in(p, left); })) {
            out.emplace_back(group);
            std::erase_if(left, [&](const place& p) { return is_in(p, whole); });
        }
    }
    for (const place& p : left) {
        const bool pair = p.which != side::both &&
                          is_in({p.zone, p.which == side::left ? side::right : side::left}, left);
        if (!pair || p.which == side::left) {
            out.push_back(pair || p.which == side::both ? b.zones[p.zone].id : title(b, p));
        }
    }
    return out;
}

log_entry planned_entry(const plan_request& r, const groom& g, const date& on,
                        const std::vector<logged_length>& told, bool all) {
    const bool begun = !all && goes_on_another_day(g);
    log_entry e;
    e.on = on;
    e.services = {begun ? service_kind::prep : service_kind::full};
    e.left = told;
    if (g.planned()) {
        const part_index parts(r.reference.dog_body);
        e.used = tools_of(r, g, parts, begun);
        e.left = left_lengths(r, g, parts, told, begun);
    }
    return e;
}

namespace {

/// Whether `wide` takes in all that `word` means.
bool takes_in(const part_index& parts, const std::string& wide, const std::string& word) {
    const selection* now = parts.find(wide);
    const selection* was = parts.find(word);
    return now != nullptr && was != nullptr &&
           (now->how == reach::all ||
            std::all_of(was->places.begin(), was->places.end(), [&](const place& p) {
                return std::any_of(now->places.begin(), now->places.end(), [&](const place& q) {
                    return q.zone == p.zone && (q.which == side::both || q.which == p.which);
                });
            }));
}

}  // namespace

void put_told(const part_index& parts, std::vector<logged_length>& planned,
              const logged_length& told) {
    std::erase_if(planned,
                  [&](const logged_length& l) { return takes_in(parts, told.whom, l.whom); });
    planned.push_back(told);
}

void put_told(const part_index& parts, std::vector<logged_tool>& planned, const logged_tool& told) {
    for (logged_tool& t : planned) {
        std::erase_if(t.places, [&](const std::string& word) {
            return std::any_of(told.places.begin(), told.places.end(),
                               [&](const std::string& p) { return takes_in(parts, p, word); });
        });
    }
    std::erase_if(planned, [](const logged_tool& t) { return t.places.empty(); });
    planned.push_back(told);
}

void forget_left(const part_index& parts, std::vector<logged_length>& left,
                 const std::vector<logged_tool>& planned, const logged_tool& told) {
    for (const std::string& word : told.places) {
        const bool as_planned =
            std::any_of(planned.begin(), planned.end(), [&](const logged_tool& t) {
                return t.tool == told.tool &&
                       std::any_of(t.places.begin(), t.places.end(), [&](const std::string& wide) {
                           return takes_in(parts, wide, word);
                       });
            });
        if (!as_planned) {
            std::erase_if(left, [&](const logged_length& l) {
                return !l.measured && takes_in(parts, word, l.whom);
            });
        }
    }
}

}  // namespace pelage
