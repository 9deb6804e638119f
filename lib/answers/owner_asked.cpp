// The owner's page: why a dog wasn't groomed, and what was asked for.
#include <algorithm>
#include <array>
#include <map>

#include "answers/owner_view.hpp"

namespace pelage::io {

namespace {

class stopped_part : owner_view {
  public:
    explicit stopped_part(const owner_view& v) : owner_view(v) {}

    void say() {
        page_section& why = add("Why we stopped");
        why.says.push_back("We did not groom " + who() +
                           " today. We saw something that a vet should look at first.");
        if (!g_.stop.empty()) {
            why.lines.push_back(
                "The coat is felted tight to the skin here: " + listed(titles(plain_, g_.stop)) +
                ". It can hide sores, and it can't come off safely on our table.");
        }
        for (const stop_sign s : g_.signs) {
            why.lines.push_back(r_.reference.stops[static_cast<std::size_t>(s)].seen + ".");
        }
        if (const zone_list sore = those([](const zone_plan& z) {
                return (z.hurt && !z.edge_of_hurt) || !z.around.empty();
            });
            !sore.empty()) {
            why.lines.push_back("The skin is sore or odd here: " + named(sore) + ".");
        }
        strings told = told_alerts();
        if (!r_.patient.health.empty()) {
            told.insert(told.begin(), r_.patient.health);
        }
        if (!told.empty()) {
            why.lines.push_back("You told us: " + joined(told, "; ") + ".");
        }
        page_section& now = add("What to do now");
        now.how = lines_as::steps;
        const bool now_not_today = std::any_of(g_.signs.begin(), g_.signs.end(), at_once);
        now.lines = {"Call a vet now and say what you read here. " +
                         std::string(now_not_today ? "Then go at once." : "Ask to be seen today."),
                     "Keep " + who() + " quiet, not too warm and not too cold."};
        const bool beneath = !g_.stop.empty() ||
                             !those([](const zone_plan& z) { return z.mat.has_value(); }).empty();
        if (beneath || !now_not_today) {
            now.lines.emplace_back(
                "Don't cut, pull or wash the coat at home. Skin lies closer than you think.");
        }
        now.lines.emplace_back("Call us when the vet is happy. We will make a new plan then.");
        page_section& kind = add("Please know");
        kind.says = {std::string("This can happen to any dog. ") +
                     (beneath ? "Felt and sores grow near the skin, where no one can see them. "
                              : "It can come on fast. ") +
                     "You did the right thing when you came."};
    }
};

class asked_part : owner_view {
  public:
    explicit asked_part(const owner_view& v) : owner_view(v) {}

    void say() {
        page_section& s = add("What you asked for");
        if (r_.booked != nullptr && !r_.booked->whole) {
            s.says.push_back(sentence_case(r_.booked->text) + ".");
            say_told(s);
            return;
        }
        const std::array<std::pair<const char*, part>, 6> parts{{{"body", part::body},
                                                                 {"legs", part::legs},
                                                                 {"tail", part::tail},
                                                                 {"feet", part::feet},
                                                                 {"head", part::head},
                                                                 {"ears", part::ears}}};
        std::vector<std::pair<std::int32_t, strings>> by_length;
        const auto put = [&](std::int32_t l, const std::string& whom) {
            const auto at = std::find_if(by_length.begin(), by_length.end(),
                                         [&](const auto& one) { return one.first == l; });
            strings& names =
                (at == by_length.end() ? by_length.emplace_back(l, strings{}) : *at).second;
            if (std::find(names.begin(), names.end(), whom) == names.end()) {
                names.push_back(whom);
            }
        };
        std::vector<std::pair<std::int32_t, std::string>> apart;
        for (const auto& [name, which] : parts) {
            const auto l = most_asked(which);
            if (!l) {
                continue;
            }
            put(*l, name);
            for (std::size_t i = 0; i < g_.zones.size(); ++i) {
                const auto own = wished(i);
                const zone& z = zone_of(i);
                const bool fringe =
                    which == part::ears && z.where == group::head && !z.edge_of.empty();
                const bool here = part_of(z) == which || fringe;
                if (here && own && far_apart(in_hundredths(*own), *l)) {
                    apart.emplace_back(in_hundredths(*own), zone_of(i).title);
                }
            }
        }
        for (const auto& [l, whom] : apart) {
            put(l, whom);
        }
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (told_otherwise(i)) {  // what wasn't to be had was asked for, too
                put_own(i, by_length, put);
            }
        }
        std::string text = r_.sheet.title;
        for (std::size_t n = 0; n < by_length.size(); ++n) {
            text += (n == 0 ? ": " : "; ") + listed(by_length[n].second) + " " +
                    long_as(mm(by_length[n].first / 100.0));
        }
        s.says.push_back(text + ".");
        say_told(s);
    }

  private:
    void say_told(page_section& s) const {
        if (const strings told = told_alerts(); !told.empty()) {
            s.says.push_back("You told us: " + listed(told) + ".");
        }
    }
    /// The parts an owner speaks of.
    enum class part { body, legs, tail, feet, head, ears, other };
    static part part_of(const zone& z) {
        switch (z.where) {
            case group::body:
                return part::body;
            case group::legs:
                return part::legs;
            case group::tail:
                return z.has(zone_use::tail_band) ? part::other : part::tail;
            case group::feet:
                return part::feet;
            case group::head:
                return z.has(zone_use::ear_leather) ? part::ears
                       : z.edge_of.empty()          ? part::head
                                                    : part::other;
            case group::prep:
                break;
        }
        return part::other;
    }
    /// So unlike that an owner would call it another length: a beard on a short head.
    static bool far_apart(std::int32_t a, std::int32_t b) {
        return 5 * std::max(a, b) > 9 * std::min(a, b);  // nearly twice
    }

    /// Whether today's part says of the place that it isn't as long as asked.
    [[nodiscard]] bool told_otherwise(std::size_t i) const {
        const zone_plan& z = g_.zones[i];
        return z.target && z.leaves && zone_of(i).where != group::prep &&
               (z.came == outcome::off_target || z.came == outcome::beyond_reach);
    }
    /// Names its length where no line says that one of it.
    template <class Put>
    void put_own(std::size_t i, const std::vector<std::pair<std::int32_t, strings>>& by_length,
                 const Put& put) const {
        const std::string own = long_as(*g_.zones[i].target);
        const part of = part_of(zone_of(i));
        const auto most = most_asked(of);
        const bool said = most && of != part::other && long_as(mm(*most / 100.0)) == own;
        const bool apart = std::any_of(by_length.begin(), by_length.end(), [&](const auto& one) {
            return std::find(one.second.begin(), one.second.end(), zone_of(i).title) !=
                   one.second.end();
        });
        if (!said && !apart) {
            put(in_hundredths(*g_.zones[i].target), zone_of(i).title);
        }
    }
    /// What the owner wished of a place, before mats, skin or a missing signature came between.
    [[nodiscard]] std::optional<length> wished(std::size_t i) const {
        const zone_plan& z = g_.zones[i];
        if (z.target && z.came != outcome::goes_along) {
            return z.target;
        }
        const instruction said = wishes_.at(z.at);
        const finish how = said.how.value_or(finish::clip);
        return cuts(how) || how == finish::thin ? said.target : std::nullopt;
    }

    /// The length that most of a part is asked to be, in hundredths.
    [[nodiscard]] std::optional<std::int32_t> most_asked(part which) const {
        constexpr std::int32_t none = -1;
        std::map<std::int32_t, work> by_length;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (part_of(zone_of(i)) == which) {  // what is left or combed has no length
                const auto l = wished(i);
                by_length[l ? in_hundredths(*l) : none] += zone_of(i).clip_time.best;
            }
        }
        const auto most =
            std::max_element(by_length.begin(), by_length.end(),
                             [](const auto& a, const auto& b) { return a.second < b.second; });
        return most == by_length.end() || most->first == none ? std::nullopt
                                                              : std::optional{most->first};
    }
};

}  // namespace

void say_stopped(const owner_view& v) {
    stopped_part(v).say();
}

void say_asked(const owner_view& v) {
    asked_part(v).say();
}

}  // namespace pelage::io
