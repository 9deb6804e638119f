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
    [[nodiscard]] bool mats_on(bool tail) const {
        return mats_where([&](const place& p) { return is_of(p, tail); });
    }
    [[nodiscard]] bool mats_at(const place& at) const {
        return mats_where([&](const place& p) { return share_side(p, at); });
    }

    void say() {
        const visit& v = *today_s();
        page_section& s = add("What we did today");
        if (const std::string left = left_words(v); !left.empty()) {
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
    [[nodiscard]] std::string left_words(const visit& v) const {
        grouped<std::string> by;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            std::string last;  // wider words stand first
            for (const hair_now& h : v.left) {
                const selection* meant = top_.parts().find(h.whom);
                if (meant != nullptr &&
                    std::any_of(meant->places.begin(), meant->places.end(),
                                [&](const place& p) { return share_side(p, g_.zones[i].at); })) {
                    last = long_as(h.is);
                }
            }
            if (!last.empty() && zone_of(i).where != group::prep) {
                by.add(last, i);
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

bool matted_by_record(const owner_view& v, bool tail) {
    return done_part(v).mats_on(tail);
}

bool matted_by_record(const owner_view& v, const place& at) {
    return done_part(v).mats_at(at);
}

}  // namespace pelage::io
