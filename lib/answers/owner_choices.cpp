// The owner's page: what is left for the owner to choose.
#include <algorithm>

#include "answers/choices.hpp"
#include "answers/owner_view.hpp"

namespace pelage::io {

namespace {

class choice_part : owner_view {
  public:
    explicit choice_part(const owner_view& v) : owner_view(v) {}

    void say() {
        ways_back();
        by_the_kit();
        uneven();
    }

  private:
    /// The ways to grow back, for the owner to choose.
    void ways_back() {
        if (m_.grow_back == nullptr || m_.grow_back->empty()) {
            return;
        }
        const auto& all = *m_.grow_back;
        const auto back = [&](const regrowth_option& w) { return back_in_words(w, o_.units); };
        strings choices;
        for (const regrowth_option& w : all) {
            if (!gains_nothing(w)) {
                std::string text =
                    w.how == grow_back::keep_long
                        ? "Keep the rest long. What is short shows until it has grown: " + back(w) +
                              "."
                        : "Take the " + named(all_down(w)) + " down to about " + comes_to(w) +
                              (is_even(w) ? " too, so that it matches: "
                                          : " too, so that the difference shows less: ") +
                              back(w) + ".";
                if (std::find(choices.begin(), choices.end(), text) == choices.end()) {
                    choices.push_back(std::move(text));
                }
            }
        }
        if (choices.size() == 1) {
            page_.sections.back().lines.push_back("It grows: it will be " + back(all.front()) +
                                                  ".");
            return;
        }
        page_section& s = add("While it grows back: please choose");
        s.how = lines_as::boxes;
        s.lines = std::move(choices);
    }
    [[nodiscard]] std::string comes_to(const regrowth_option& w) const {
        regrowth_option all = w;
        all.down = all_down(w);
        return even_in_words(all, o_.units);
    }
    /// What it takes down, with what the plan itself does.
    [[nodiscard]] zone_list all_down(const regrowth_option& w) const {
        zone_list out = w.down;
        if (w.how == grow_back::even_all) {
            for (const std::size_t i : m_.grow_back->front().down) {
                if (std::find(out.begin(), out.end(), i) == out.end()) {
                    out.push_back(i);
                }
            }
        }
        std::sort(out.begin(), out.end());
        return out;
    }
    /// Whether what was matted and what goes down with it come out at one length.
    [[nodiscard]] bool is_even(const regrowth_option& w) const {
        const std::string even = even_in_words(w, o_.units);
        return std::all_of(w.plan.zones.begin(), w.plan.zones.end(), [&](const zone_plan& z) {
            const bool with_it = std::any_of(w.down.begin(), w.down.end(), [&](std::size_t i) {
                return zone_of(i).where == zone_of(z).where;
            });
            return z.came != outcome::clipped_under || !with_it || !z.leaves ||
                   zone_of(z).where == group::prep || show(z.leaves->best, o_.units) == even;
        });
    }
    /// Whether a way before it comes to the same lengths in the same weeks and takes less coat off. A dog that
    /// is alike all over is a gain of its own.
    [[nodiscard]] bool gains_nothing(const regrowth_option& w) const {
        if (w.how == grow_back::even_all) {
            return false;
        }
        const auto same = [&](const regrowth_option& other) {
            return other.how != grow_back::keep_long &&
                   even_in_words(other, o_.units) == even_in_words(w, o_.units) &&
                   back_in_words(other, o_.units) == back_in_words(w, o_.units);
        };
        for (const regrowth_option& other : *m_.grow_back) {
            if (&other == &w) {
                return false;
            }
            if (w.how != grow_back::keep_long && same(other)) {
                return true;
            }
        }
        return false;
    }
    /// Whether a way to grow back takes the other side down, too: it is chosen there.
    [[nodiscard]] bool offered_above(std::size_t zone) const {
        return m_.grow_back != nullptr &&
               std::any_of(m_.grow_back->begin(), m_.grow_back->end(), [&](const auto& w) {
                   return std::any_of(w.down.begin(), w.down.end(),
                                      [&](std::size_t i) { return g_.zones[i].at.zone == zone; });
               });
    }
    /// Where the kit falls short and nobody has agreed yet: the ways that the card shows.
    void by_the_kit() {
        if (m_.ways == nullptr || !owner_chooses(g_) || m_.moment == owner_moment::after) {
            return;
        }
        strings lines = lengths_to_choose(g_, *m_.ways, m_.when, r_, o_);
        if (!lines.empty()) {
            page_section& s = add("Not the length agreed: please choose");
            s.how = lines_as::boxes;
            s.lines = std::move(lines);
        }
    }
    /// Pairs that come out uneven: the owner chooses, as the card asks.
    void uneven() {
        for (const uneven_pair& p : g_.asks) {
            if (!p.hurt && offered_above(p.zone)) {
                continue;
            }
            const body& b = r_.reference.dog_body;
            const bool left_longer = !p.left || (p.right && *p.left > *p.right);
            const std::string other = title(b, {p.zone, left_longer ? side::right : side::left});
            const auto said = [&](const std::optional<length>& l) {
                return l ? long_as(*l) : std::string("as it is");
            };
            page_section& s = add(sentence_case(title(b, {p.zone, side::both})) +
                                  " will be uneven: please choose");
            s.how = lines_as::boxes;
            s.lines.push_back("Fine: left " + said(p.left) + ", right " + said(p.right) + ".");
            s.lines.push_back(
                p.hurt
                    ? "Leave the " + other + " as it is, too."
                    : "Both at " +
                          long_as(longer(shorter(*p.left, *p.right),
                                         coat_of(r_.reference, *r_.patient.coat).shortest.best)) +
                          ".");
        }
    }
};

}  // namespace

bool may_keep_long(const owner_matter& m) {
    return m.grow_back != nullptr && m.grow_back->size() > 1 && m.moment != owner_moment::after &&
           std::any_of(m.grow_back->begin(), m.grow_back->end(),
                       [](const regrowth_option& w) { return w.how == grow_back::keep_long; }) &&
           !m.plan.down.empty();
}

void say_choices(const owner_view& v) {
    choice_part(v).say();
}

}  // namespace pelage::io
