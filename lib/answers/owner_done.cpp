// The owner's page to take home: what was done today, by the record.
#include <algorithm>

#include <pelage/model/dog_record.hpp>

#include "answers/owner_view.hpp"

namespace pelage::io {

namespace {

class done_part : owner_view {
  public:
    explicit done_part(const owner_view& v) : owner_view(v) {}

    [[nodiscard]] bool logged() const { return today_s() != nullptr; }
    [[nodiscard]] bool bared_on(bool tail) const {
        return mats_where([&](const place& p) { return is_of(p, tail) && !long_still(p); });
    }
    [[nodiscard]] bool bared_at(const place& at) const {
        return mats_where([&](const place& p) {
            const auto left = left_at(p);
            return share_side(p, at) && left && *left < r_.rules.refusal.soft_brush.best;
        });
    }
    [[nodiscard]] bool mats_at(const place& at) const {
        return mats_where([&](const place& p) { return share_side(p, at); });
    }

    void say() {
        const visit& v = *today_s();
        page_section& s = add("What we did today");
        if (const std::string left = left_words(); !left.empty()) {
            s.says.push_back("The hair was left at: " + left + ".");
        } else {
            s.says.push_back(v.kind == "full"
                                 ? "A full groom."
                                 : "Today: " + listed(kinds_logged(r_.patient, v.on)) + ".");
        }
        if (v.mats) {
            s.says.push_back(v.mats->empty() ? "A comb went through to the skin: no mats."
                                             : "We found mats here: " + listed(*v.mats) + ".");
        }
    }

  private:
    /// What today's record says was left there; wider words stand first.
    [[nodiscard]] std::optional<length> left_at(const place& at) const {
        std::optional<length> last;
        const visit* v = today_s();
        for (const hair_now& h : v == nullptr ? std::vector<hair_now>{} : v->left) {
            const selection* meant = top_.parts().find(h.whom);
            if (meant != nullptr &&
                std::any_of(meant->places.begin(), meant->places.end(),
                            [&](const place& p) { return share_side(p, at); })) {
                last = h.is;
            }
        }
        return last;
    }
    /// It was combed out, or came off above the skin.
    [[nodiscard]] bool long_still(const place& at) const {
        const auto left = left_at(at);
        return left && *left >= r_.rules.refusal.soft_brush.best;
    }
    template <class Test>
    [[nodiscard]] bool mats_where(Test is_there) const {
        const visit* v = today_s();
        return v != nullptr && v->mats &&
               std::any_of(v->mats->begin(), v->mats->end(), [&](const std::string& word) {
                   const selection* meant = top_.parts().find(word);
                   return meant != nullptr &&
                          std::any_of(meant->places.begin(), meant->places.end(), is_there);
               });
    }
    /// "body (not skirt) 10 mm; legs 16 mm": what can be seen of the dog, of one length together.
    [[nodiscard]] std::string left_words() const {
        grouped<std::string> by;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const auto left = left_at(g_.zones[i].at);
            if (left && zone_of(i).where != group::prep) {
                by.add(long_as(*left), i);
            }
        }
        strings out;
        for (const auto& [length_left, where] : by.all()) {
            out.push_back(joined(places_.by_part(where), ", ") + " " + length_left);
        }
        return joined(out, "; ");
    }
    [[nodiscard]] bool is_of(const place& p, bool tail) const {
        const zone& z = r_.reference.dog_body.zones[p.zone];
        return tail ? z.where == group::tail : z.has(zone_use::ear_leather) || z.id == "ear-edge";
    }
    [[nodiscard]] const visit* today_s() const {
        const auto& all = r_.patient.visits;
        const auto at = std::find_if(all.begin(), all.end(), [&](const visit& v) {
            return v.logged && o_.today && v.on == *o_.today;
        });
        return at == all.end() ? nullptr : &*at;
    }
};

}  // namespace

void say_done(const owner_view& v) {
    done_part part(v);
    if (part.logged()) {
        part.say();
    } else {
        say_asked(v);
    }
}

bool bared_by_record(const owner_view& v, bool tail) {
    return done_part(v).bared_on(tail);
}

bool bared_by_record(const owner_view& v, const place& at) {
    return done_part(v).bared_at(at);
}

bool matted_by_record(const owner_view& v, const place& at) {
    return done_part(v).mats_at(at);
}

}  // namespace pelage::io
