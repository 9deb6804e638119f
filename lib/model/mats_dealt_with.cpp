#include <algorithm>
#include <vector>

#include <pelage/model/mats_dealt_with.hpp>

namespace pelage {

namespace {

/// Whether the word takes in the place, or some of it. "all" means the whole coat.
bool takes_in(const part_index& parts, const std::string& word, const place& p) {
    const selection* s = parts.find(word);
    return s != nullptr &&
           (s->how == reach::all || std::any_of(s->places.begin(), s->places.end(),
                                                [&](const place& w) { return share_side(w, p); }));
}

bool dealt_with(const part_index& parts, const visit& v, const place& p) {
    const bool none_there = v.mats && std::none_of(v.mats->begin(), v.mats->end(),
                                                   [&](auto& w) { return takes_in(parts, w, p); });
    const bool finished =
        v.kind == "full" && std::any_of(v.left.begin(), v.left.end(), [&](const hair_now& l) {
            return takes_in(parts, l.whom, p);
        });
    return none_there || finished;
}

/// One side at a time, where there are two.
std::vector<mat_finding> by_side(const body& b, const mat_finding& m) {
    if (m.at.which != side::both || !b.zones[m.at.zone].paired) {
        return {m};
    }
    mat_finding left = m;
    mat_finding right = m;
    left.at.which = side::left;
    right.at.which = side::right;
    return {left, right};
}

class visits_since {
  public:
    visits_since(const dog& d, const part_index& parts, const std::optional<date>& today)
        : parts_(parts) {
        for (const visit& v : d.visits) {
            if (!today || v.on <= *today) {
                visits_.push_back(&v);
            }
        }
        std::stable_sort(visits_.begin(), visits_.end(),
                         [](const visit* a, const visit* b) { return a->on < b->on; });
    }

    /// The visit that dealt with the place since the day the mat was seen, and after which none found mats
    /// there again; of a mat without its day, among those of the record.
    [[nodiscard]] std::optional<date> dealing_with(const mat_finding& m) const {
        std::optional<date> on;
        for (const visit* v : visits_) {
            if (m.seen ? v->on < *m.seen : !v->logged) {
                continue;
            }
            if (dealt_with(parts_, *v, m.at)) {
                on = on.value_or(v->on);
            } else if (v->mats) {
                on.reset();  // mats were there, and nobody says that they went
            }
        }
        return on;
    }

  private:
    const part_index& parts_;
    std::vector<const visit*> visits_;  ///< by date
};

/// Puts together what is alike on both sides, as it was before.
void add(std::vector<mat_since>& to, const std::vector<mat_since>& sides,
         const mat_finding& whole) {
    if (sides.size() == 2 && sides[0].on == sides[1].on) {
        to.push_back({whole, sides[0].on});
    } else {
        to.insert(to.end(), sides.begin(), sides.end());
    }
}

}  // namespace

dog without_mats_dealt_with(dog d, const part_index& parts, const body& b,
                            const std::optional<date>& today) {
    const visits_since visits(d, parts, today);
    std::vector<mat_finding> still;
    for (const mat_finding& m : d.mats) {
        std::vector<mat_since> gone;
        std::vector<mat_since> unknown;
        std::vector<mat_finding> here;
        for (const mat_finding& one : m.filed ? by_side(b, m) : std::vector<mat_finding>{}) {
            const auto on = visits.dealing_with(one);
            if (on) {
                (m.seen ? gone : unknown).push_back({one, *on});
            }
            if (!on || !m.seen) {
                here.push_back(one);
            }
        }
        add(d.dealt, gone, m);
        add(d.undated, unknown, m);
        if (gone.empty()) {
            still.push_back(m);
        } else {
            still.insert(still.end(), here.begin(), here.end());
        }
    }
    d.mats = std::move(still);
    return d;
}

}  // namespace pelage
