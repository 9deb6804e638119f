#include <algorithm>
#include <cstddef>

#include <pelage/base/stats.hpp>
#include <pelage/model/entry_check.hpp>
#include <pelage/model/hair_today.hpp>
#include <pelage/model/learning.hpp>

namespace pelage {

namespace {

/// The length that is said of the place: of the narrowest word, then of the last; null if none is.
const logged_length* said_at(const part_index& parts, const std::vector<logged_length>& all,
                             const place& p) {
    const logged_length* out = nullptr;
    const selection* by = nullptr;
    for (const logged_length& l : all) {
        const selection* s = parts.find(l.whom);
        const bool there =
            s != nullptr &&
            (s->how == reach::all || std::any_of(s->places.begin(), s->places.end(),
                                                 [&](const place& w) { return share_side(w, p); }));
        if (there && (by == nullptr || !wider(*s, *by))) {
            out = &l;
            by = s;
        }
    }
    return out;
}

class doubter {
  public:
    doubter(const log_entry& e, const dog& d, const part_index& parts, const reference_data& c,
            const parameters& r)
        : entry_(e), dog_(d), parts_(parts), reference_(c), rules_(r) {}

    std::vector<length_doubt> all() && {
        const auto& zones = reference_.dog_body.zones;
        for (std::size_t z = 0; z < zones.size(); ++z) {
            for (const side s : {side::left, side::right}) {
                look_at({z, zones[z].paired ? s : side::both});
            }
        }
        return std::move(out_);
    }

  private:
    void look_at(const place& p) {
        const logged_length* before = said_at(parts_, entry_.found, p);
        const logged_length* left = said_at(parts_, entry_.left, p);
        by_coat(before, p, true);
        by_coat(left, p, false);
        if (left == nullptr) {
            return;
        }
        if (before != nullptr) {
            doubt(length_doubt::kind::longer_than_before, *left, p, before->is);
        } else if (left->measured) {
            by_hair(*left, p);
        }
    }

    void by_coat(const logged_length* l, const place& p, bool before_cut) {
        if (l == nullptr || !dog_.coat) {
            return;
        }
        const figure<length>& end =
            terminal_at(coat_of(reference_, *dog_.coat), reference_.dog_body.zones[p.zone].id);
        if (l->is > end.high) {
            length_doubt& d = put(length_doubt::kind::beyond_coat, *l, p, end.high);
            d.before_cut = before_cut;
            d.why = end.why;
        }
    }

    void by_hair(const logged_length& l, const place& p) {
        const auto known = std::find_if(dog_.by_record.begin(), dog_.by_record.end(),
                                        [&](const auto& h) { return share_side(h.at, p); });
        if (known != dog_.by_record.end()) {
            if (l.is > known->high) {
                put(length_doubt::kind::longer_than_record, l, p, known->high).since = known->since;
            }
        } else if (const auto now = hair_said(parts_, dog_.now, p)) {
            doubt(length_doubt::kind::longer_than_told, l, p, *now);
        }
    }

    void doubt(length_doubt::kind k, const logged_length& l, const place& p, const length& there) {
        constexpr double tenth = 0.1;
        const length error = measuring_error(there, rules_.growth) * normal_quantile(1.0 - tenth);
        if (l.is > there + error) {
            put(k, l, p, there);
        }
    }

    /// One a word and kind: where there may be least.
    length_doubt& put(length_doubt::kind k, const logged_length& l, const place& p,
                      const length& most) {
        const auto same = std::find_if(out_.begin(), out_.end(), [&](const length_doubt& d) {
            return d.what == k && d.whom == l.whom && d.said == l.is;
        });
        const bool first = same == out_.end();
        length_doubt& d = first ? out_.emplace_back() : *same;
        if (first || most < d.most) {
            d.what = k;
            d.measured = l.measured;
            d.whom = l.whom;
            d.said = l.is;
            d.most = most;
            d.at = p;
        }
        return d;
    }

    const log_entry& entry_;
    const dog& dog_;
    const part_index& parts_;
    const reference_data& reference_;
    const parameters& rules_;
    std::vector<length_doubt> out_;
};

}  // namespace

std::vector<length_doubt> length_doubts(const log_entry& e, const dog& d, const part_index& parts,
                                        const reference_data& c, const parameters& r) {
    return doubter(e, d, parts, c, r).all();
}

}  // namespace pelage
