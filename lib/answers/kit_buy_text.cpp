// What to buy, as a document.
#include <algorithm>
#include <cmath>
#include <map>

#include <pelage/answers/kit.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/document_cells.hpp"
#include "answers/words/kit_check.hpp"
#include "answers/words/tolerance.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

std::string share_percent(std::int64_t part, std::int64_t whole) {
    return shown(percentage{part, whole}, length_unit::mm);
}

std::string ware_words(const ware& w, const print_options& o) {
    return w.as_comb ? "comb " + comb_words(w.as_comb->id, o.units) : w.title();
}

std::vector<std::string> titles(const std::vector<std::size_t>& items, const shopping_request& r,
                                const print_options& o) {
    std::vector<std::string> out;
    for (const std::size_t i : items) {
        out.push_back(ware_words(r.wares[i], o));
    }
    return out;
}

std::vector<std::size_t> without(const std::vector<std::size_t>& all,
                                 const std::vector<std::size_t>& some) {
    std::vector<std::size_t> out;
    std::set_difference(all.begin(), all.end(), some.begin(), some.end(), std::back_inserter(out));
    return out;
}

/// What comes in and goes out between two best purchases.
cell change(const purchase& before, const purchase& now, const shopping_request& r,
            const print_options& o) {
    const auto in = titles(without(now.bought, before.bought), r, o);
    const auto gone = titles(without(before.bought, now.bought), r, o);
    if (in.empty()) {
        return {"nothing more helps"};
    }
    const std::string what = listed(in) + (gone.empty() ? "" : "; instead of " + listed(gone));
    return {what, "+ " + what};
}

typed_table curve_table(const shopping& s, const shopping_request& r, const print_options& o) {
    typed_table t{{"buy", "met", "adds", "against the line before"}, {}, {true, true, true, false}};
    const auto part = [&](std::int64_t met) { return percentage{met, s.whole}; };
    for (std::size_t n = 0; n < s.curve.size(); ++n) {
        const purchase& p = s.curve[n];
        const auto buy = static_cast<std::int64_t>(n);
        if (n > 0 && p.choice.met == s.curve[n - 1].choice.met && p.choice.proven()) {
            t.rows.push_back({buy, part(p.choice.met), part(0), "nothing more helps"});
            break;
        }
        cell note = n == 0 ? cell(r.own.blades.empty() ? "an empty drawer" : "what is there")
                           : change(s.curve[n - 1], p, r, o);
        if (!p.choice.proven()) {
            const std::string bound =
                "; not proven, at most " + share_percent(p.choice.bound, s.whole);
            std::get<std::string>(note.value) += bound;
            note.said += note.said.empty() ? "" : bound;
        }
        t.rows.push_back({buy, part(p.choice.met),
                          n == 0 ? cell{} : part(p.choice.met - s.curve[n - 1].choice.met),
                          std::move(note)});
    }
    return t;
}

std::string counted_words(const places_at_once& at) {
    switch (at.how) {
        case places_at_once::by::tables:
            return "one for each table (" + listed(at.who) + ")";
        case places_at_once::by::groomers:
            return "one for each groomer at work on one day, at most " + listed(at.who);
        case places_at_once::by::nobody:
            break;
    }
    return {};
}

/// How many of each, and what that costs as far as the file that offers them says it.
void say_list(document& d, const purchase& last, const shopping_request& r,
              const print_options& o) {
    const shopping_cost cost = cost_of(last, r);
    const bool money = cost.unpriced.size() < last.bought.size();
    if (last.bought.empty() || (!money && r.places.how == places_at_once::by::nobody)) {
        return;
    }
    typed_table t{{"list", "number"}, {}, {false, true}};
    if (money) {
        t.head.insert(t.head.end(), {"each", "together"});
        t.numbers.insert(t.numbers.end(), {true, true});
    }
    for (const std::size_t i : last.bought) {
        t.rows.push_back({ware_words(r.wares[i], o), std::int64_t{r.places.number}});
        if (const auto& price = r.wares[i].price; money) {
            pelage::money all = price.value_or(pelage::money{});
            all.hundredths *= r.places.number;
            t.rows.back().push_back(price ? cell(show(*price)) : cell{});
            t.rows.back().push_back(price ? cell(show(all)) : cell{});
        }
    }
    d.open("The list", false);
    d.show(std::move(t));
    if (money && cost.one_currency) {
        d.say("Together " + show(cost.sum) +
              (cost.unpriced.empty() ? ""
                                     : ", without " + listed(titles(cost.unpriced, r, o)) +
                                           ", of which the file says no price") +
              ".");
    } else if (money) {
        d.say("Prices of more than one currency: nothing is added up.");
    }
    if (r.places.how != places_at_once::by::nobody) {
        d.say("Number: " + counted_words(r.places) + " (our guess; what is shared needs one).");
    }
}

/// Sheets whose zones a purchase serves, those with most first.
std::string sheets_served(const use_of& u, const shopping& s, const shopping_request& r) {
    std::map<std::size_t, std::int64_t> by;
    for (const std::size_t t : u.serves) {
        by[s.targets[t].what.sheet] += s.targets[t].what.weight;
    }
    std::vector<std::pair<std::size_t, std::int64_t>> order(by.begin(), by.end());
    std::stable_sort(order.begin(), order.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    std::vector<std::string> words;
    for (std::size_t i = 0; i < order.size() && i < 4; ++i) {
        words.push_back(r.sheets[order[i].first].id);
    }
    if (order.size() > words.size()) {
        words.push_back(std::to_string(order.size() - words.size()) + " more");
    }
    return words.empty() ? "another of these does the same" : "for " + listed(words);
}

/// "7.8 mm on neck, collar line and 25 more".
std::string wish_on(const std::string& what, std::vector<std::string> zones) {
    constexpr std::size_t most = 3;
    if (zones.size() > most) {
        const std::string rest = std::to_string(zones.size() - (most - 1)) + " more";
        zones.resize(most - 1);
        zones.push_back(rest);
    }
    return what + " on " + listed(zones);
}

void say_never(document& d, const shopping& s, const shopping_request& r, length_unit u) {
    using sheet_in_season = std::pair<std::size_t, std::string>;
    std::map<sheet_in_season, std::map<std::string, std::vector<std::string>>> by;
    for (const std::size_t t : s.never) {
        const sheet_target& what = s.targets[t].what;
        auto& zones = by[{what.sheet, what.season}]
                        [what.wanted ? show(*what.wanted, u) : "a customary blade"];
        const std::string& zone = r.reference.dog_body.zones[what.zone].title;
        if (std::find(zones.begin(), zones.end(), zone) == zones.end()) {
            zones.push_back(zone);
        }
    }
    d.open("Nothing offered meets", false);
    for (const auto& [sheet, wishes] : by) {
        std::vector<std::string> words;
        for (const auto& [what, zones] : wishes) {
            words.push_back(wish_on(what, zones));
        }
        d.item_of(r.sheets[sheet.first].id + in_its_season(sheet.second) + ": ",
                  joined(words, "; "));
    }
}

/// "1 to 3": what zones weigh.
std::string weights_range(const shopping_request& r) {
    int low = 1000;
    int high = 0;
    for (const zone& z : r.reference.dog_body.zones) {
        low = std::min(low, z.weight_tenths);
        high = std::max(high, z.weight_tenths);
    }
    const auto text = [](int tenths) {
        return std::to_string(tenths / 10) +
               (tenths % 10 == 0 ? "" : "." + std::to_string(tenths % 10));
    };
    return text(low) + " to " + text(high);
}

/// What stands behind the judgement.
void explain(document& d, const shopping_request& r, length_unit u) {
    d.open("How sure", false);
    d.item(tolerance_words(r.rules.prices, u));
    d.item("what the lay adds: " + std::string(in_words(r.rules.cut.blade_long_share.why.how)));
    d.item("each length offered: pelage lookup --sources blades/, combs/");
}

std::string weights_text(const shopping& s, const shopping_request& r) {
    return "A target is what " +
           (r.sheets.size() == 1 ? "the sheet"
                                 : "one of " + std::to_string(r.sheets.size()) + " sheets") +
           " asks of one zone on one coat it is for, as it is or in a season of its own, where "
           "clippers cut it: " +
           std::to_string(s.targets.size()) +
           ". It is met where a plan would find it within tolerance, in the sheet's direction; "
           "where "
           "that is left open, in either. It weighs as a miss in its zone does, " +
           weights_range(r) +
           " (our guess), one side half of both. Consents a sheet needs count as given. Scissored "
           "zones need nothing from the drawer. Where several do as well, the first in the list is "
           "taken.";
}

}  // namespace

document document_of(const shopping& s, const shopping_request& r, const print_options& o) {
    document d{"What to buy"};
    if (s.targets.empty()) {
        d.say("No sheet asks anything of clippers: nothing to buy.");
        return d;
    }
    const purchase& last = s.curve.back();
    const bool proven = std::all_of(s.curve.begin(), s.curve.end(),
                                    [](const purchase& p) { return p.choice.proven(); });
    std::string head = "Of " + std::to_string(r.wares.size()) + " blades and combs offered ";
    head += last.bought.empty() ? "none helps" : "buy " + listed(titles(last.bought, r, o));
    head += ": " + share_percent(last.choice.met, s.whole) + " of what the sheets ask is met";
    head += last.bought.empty()
                ? "."
                : ", " + share_percent(s.curve.front().choice.met, s.whole) + " without.";
    head += proven ? " Proven: no other choice of as few meets more."
                   : " Not proven: the search was stopped.";
    d.say(head);
    d.show(curve_table(s, r, o));
    say_list(d, last, r, o);
    if (!s.uses.empty()) {
        d.open("What each is for", false);
        for (const use_of& u : s.uses) {
            d.item(ware_words(r.wares[u.ware], o) + ": without it " +
                   share_percent(u.lost_without, s.whole) + " less, " + sheets_served(u, s, r));
        }
    }
    if (last.choice.met < s.reachable) {
        d.say("All that is offered together would meet " + share_percent(s.reachable, s.whole) +
              ".");
    }
    if (!s.never.empty()) {
        say_never(d, s, r, o.units);
    }
    d.say(weights_text(s, r));
    if (o.explain) {
        explain(d, r, o.units);
    }
    return d;
}

}  // namespace pelage::io
