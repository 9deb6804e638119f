// What groomers call the places of the dog.
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include <fmt/format.h>

#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

/// Who has a word: complains where a second place would get it.
class word_owners {
  public:
    explicit word_owners(const body& b) {
        own("all", "all");
        for (const zone& z : b.zones) {
            own(z.id, z.id);
            own(z.title, z.id);
        }
        for (const std::string_view g : group_names) {
            own(fmt::format("whole {}", g), g);
            owner_.emplace(detail::heard(g).core, g);  // "tail" is the zone
        }
    }

    void add(const word& w, const std::string& owner, faults& out) {
        const detail::heard_place h = detail::heard(w.text);
        if (h.core.empty() || h.which != side::both) {
            out.add(w.at, errc::syntax,
                    fmt::format("a word for a place is written without a side; found {}; leave the "
                                "side out",
                                shown(w.text)));
            return;
        }
        if (const auto [before, is_new] = owner_.emplace(h.core, owner); !is_new) {
            out.add(w.at, errc::ambiguous,
                    fmt::format("a word that stands for {} already; found {} for {}; leave it out "
                                "of one, or write it under [[asked]]",
                                shown(before->second), shown(w.text), shown(owner)));
        }
    }

  private:
    void own(std::string_view word, std::string_view owner) {
        owner_.insert_or_assign(detail::heard(word).core, std::string(owner));
    }
    std::map<std::string, std::string> owner_;
};

std::vector<std::string> get_own_words(record& r, word_owners& owners, faults& out) {
    const std::vector<word> words = r.get_words("words", presence::must);
    std::vector<std::string> all;
    for (const word& w : words) {
        owners.add(w, words.front().text, out);
        all.push_back(w.text);
    }
    return all;
}

void get_zones_of(record& r, const body& b, place_word& to, faults& out) {
    const std::string of = r.get_text("of", presence::may);
    for (const word& w : r.get_words("zones", of.empty() ? presence::must : presence::may)) {
        const zone* z = find(b.zones, w.text);
        if (z == nullptr) {
            out.add_unknown(w.at, "unknown zone", w.text, ids(b.zones));
        } else {
            to.zones.push_back(static_cast<std::size_t>(z - b.zones.data()));
        }
    }
    std::sort(to.zones.begin(), to.zones.end());
    if (of.empty()) {
        return;
    }
    if (!to.zones.empty()) {
        out.add(r.at("of"), errc::conflict,
                "a word is of zones, or of a group; found both; leave one out");
    }
    to.whole_dog = of == "all";
    if (!to.whole_dog) {
        const int g = index_of({of, r.at("of")}, "group", group_names, out);
        to.whole = static_cast<group>(std::max(g, 0));
    }
}

place_word get_place_word(record& r, page& p, const body& b, word_owners& owners) {
    place_word w;
    w.words = get_own_words(r, owners, p.out);
    get_zones_of(r, b, w, p.out);
    w.sides = r.get_flag("sides");
    w.why = get_evidence(r, p, presence::must);
    r.done();
    return w;
}

}  // namespace

void get_places(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    body& b = c.dog_body;
    word_owners owners(b);
    for (const node* n : top.get_tables("place", presence::must)) {
        record r(*n, p.out);
        place_word w = get_place_word(r, p, b, owners);
        if (!w.zones.empty() || w.whole || w.whole_dog) {
            b.words.push_back(std::move(w));
        }
    }
    const part_index known(b);
    for (const node* n : top.get_tables("asked", presence::may)) {
        record r(*n, p.out);
        asked_place a;
        a.words = get_own_words(r, owners, p.out);
        for (const word& w : r.get_words("means", presence::must)) {
            if (known.find(w.text) == nullptr) {
                p.out.add_unknown(w.at, "the dog has no such place", w.text, known.words());
            }
            a.means.push_back(w.text);
        }
        a.why = get_evidence(r, p, presence::must);
        r.done();
        b.asked.push_back(std::move(a));
    }
    top.done();
}

}  // namespace pelage::io
