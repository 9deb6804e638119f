// What the sheets ask for, place by place, or of a part where all of it is alike.
#include <algorithm>

#include <pelage/sheets/check.hpp>
#include <pelage/sheets/compare.hpp>

#include "kit/quiz_parts.hpp"

namespace pelage {

namespace {

class of_sheets {
  public:
    of_sheets(quiz_list& to, const quiz_drawer& d) : to_(to), d_(d), r_(d.asked) {}

    void all() {
        for (std::size_t s = 0; s < r_.sheets.size(); ++s) {
            sheet(s);
        }
    }

  private:
    /// Whether a place's length or blade can be asked for.
    [[nodiscard]] static bool told(const instruction& i) {
        const bool cut = by_clipper(i) || *i.how == finish::scissor || *i.how == finish::thin;
        return cut && (i.target || i.blade);
    }

    void sheet(std::size_t s) {
        const body& b = r_.reference.dog_body;
        const style sheet = on_day(r_.sheets[s], r_.today);
        const auto places = places_of(sheet, b, parts_);
        for (std::size_t g = 0; g < group_names.size(); ++g) {
            std::vector<sheet_place> here;
            std::copy_if(places.begin(), places.end(), std::back_inserter(here),
                         [&](const sheet_place& p) {
                             return b.zones[p.at.zone].where == static_cast<group>(g);
                         });
            const bool alike = here.size() > 1 && static_cast<group>(g) != group::prep &&
                               std::all_of(here.begin(), here.end(), [&](const sheet_place& p) {
                                   return p.asked.target == here.front().asked.target &&
                                          p.asked.blade == here.front().asked.blade &&
                                          told(p.asked);
                               });
            if (alike) {
                of_sheet(s, here.front(), static_cast<group>(g), places);
                continue;
            }
            for (const sheet_place& p : here) {
                if (p.at.which == side::both && told(p.asked)) {
                    of_sheet(s, p, {}, places);
                }
            }
        }
    }

    void of_sheet(std::size_t s, const sheet_place& p, std::optional<group> part,
                  const std::vector<sheet_place>& all) {
        const zone& z = r_.reference.dog_body.zones[p.at.zone];
        quiz_question q;
        q.topic = quiz_topic::sheets;
        q.asks = p.asked.target ? quiz_asks::sheet_length : quiz_asks::sheet_blade;
        q.sheet = s;
        q.part = part;
        q.zone = p.at.zone;
        q.wish = p.asked;
        q.known = p.asked.known ? *p.asked.known : r_.sheets[s].why;
        if (p.asked.target) {
            const length& right = *p.asked.target;
            const length near = longer(p.asked.tolerance.value_or(length{}),
                                       tolerance(right, z.where == group::head, r_.rules.prices));
            q.right = {right};
            const finished there{right - near, right, right + near};
            q.wrong = other_lengths(there, targets_of(all));
            // this sheet's own first: what another place of it is left at is what one mixes up
            for (const quiz_option& o : other_lengths(there, targets_of_others())) {
                const auto like = [&](const quiz_option& own) {
                    return !read_apart(std::get<length>(own.says), std::get<length>(o.says));
                };
                if (std::none_of(q.wrong.begin(), q.wrong.end(), like)) {
                    q.wrong.push_back(o);
                }
            }
        } else {
            q.right = {*p.asked.blade};
            q.wrong = other_blades(*p.asked.blade);
        }
        to_.add(std::move(q), {r_.sheets[s].id, part ? std::string(name(*part)) : z.id});
    }

    [[nodiscard]] static std::vector<length> targets_of(const std::vector<sheet_place>& own) {
        std::vector<length> out;
        for (const sheet_place& p : own) {
            if (p.asked.target) {
                out.push_back(*p.asked.target);
            }
        }
        return out;
    }
    [[nodiscard]] std::vector<length> targets_of_others() const {
        std::vector<length> out;
        for (const style& other : r_.sheets) {
            for (const sheet_rule& rule : other.rules) {
                if (rule.what.target) {
                    out.push_back(*rule.what.target);
                }
            }
        }
        return out;
    }

    /// Blades of the kit that leave something else; those of like length first.
    [[nodiscard]] std::vector<quiz_option> other_blades(const std::string& id) const {
        const kit_blade* mine = find_blade(d_.whole, id);
        const blade* known = find(r_.reference.blades, id);
        if (mine == nullptr && known == nullptr) {
            return {};
        }
        const length right = mine != nullptr ? mine->spec.stated.best : known->stated.best;
        std::vector<std::pair<length, std::string>> others;
        for (const kit_blade& b : d_.whole.blades) {
            const length off = gap(b.spec.stated.best, right);
            if (b.spec.id != id && b.spec.shape != edge::adjustable && off > mm(0.25)) {
                others.emplace_back(off, b.spec.id);
            }
        }
        std::sort(others.begin(), others.end());
        std::vector<quiz_option> out;
        for (const auto& [off, other] : others) {
            out.push_back({other});
        }
        return out;
    }

    quiz_list& to_;
    const quiz_drawer& d_;
    const quiz_request& r_;
    part_index parts_{r_.reference.dog_body};
};

}  // namespace

void add_sheets(quiz_list& to, const quiz_drawer& d) {
    of_sheets(to, d).all();
}

}  // namespace pelage
