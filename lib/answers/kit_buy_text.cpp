// What to buy as text.
#include <algorithm>
#include <cmath>
#include <map>

#include <pelage/answers/kit.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/layout.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

/// "93.4 %"; rounded down, so that it never says 100 where something is missing.
std::string percent(std::int64_t part, std::int64_t whole) {
    const std::int64_t tenths = whole == 0 ? 0 : part * 1000 / whole;
    return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " %";
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
std::string change(const purchase& before, const purchase& now, const shopping_request& r,
                   const print_options& o) {
    const auto in = titles(without(now.bought, before.bought), r, o);
    const auto gone = titles(without(before.bought, now.bought), r, o);
    if (in.empty()) {
        return "nothing more helps";
    }
    return "+ " + listed(in) + (gone.empty() ? "" : "; instead of " + listed(gone));
}

table curve_table(const shopping& s, const shopping_request& r, const print_options& o) {
    table t;
    t.head = {"buy", "met", "adds", "against the line before"};
    t.numbers = {true, true, true, false};
    for (std::size_t n = 0; n < s.curve.size(); ++n) {
        const purchase& p = s.curve[n];
        if (n > 0 && p.choice.met == s.curve[n - 1].choice.met && p.choice.proven()) {
            t.rows.push_back(
                {std::to_string(n), percent(p.choice.met, s.whole), "0.0 %", "nothing more helps"});
            break;
        }
        const std::int64_t more = n == 0 ? 0 : p.choice.met - s.curve[n - 1].choice.met;
        std::string note = n == 0 ? (r.own.blades.empty() ? "an empty drawer" : "what is there")
                                  : change(s.curve[n - 1], p, r, o);
        if (!p.choice.proven()) {
            note += "; not proven, at most " + percent(p.choice.bound, s.whole);
        }
        t.rows.push_back({std::to_string(n), percent(p.choice.met, s.whole),
                          n == 0 ? "" : percent(more, s.whole), std::move(note)});
    }
    return t;
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

std::string uses_text(const shopping& s, const shopping_request& r, const print_options& o) {
    std::string out;
    for (const use_of& u : s.uses) {
        out += wrapped("  ",
                       ware_words(r.wares[u.ware], o) + ": without it " +
                           percent(u.lost_without, s.whole) + " less, " + sheets_served(u, s, r),
                       4, o.width);
    }
    return out;
}

std::string never_text(const shopping& s, const shopping_request& r, const print_options& o) {
    std::map<std::size_t, std::vector<std::string>> by;
    for (const std::size_t t : s.never) {
        const sheet_target& what = s.targets[t].what;
        const std::string text = (what.wanted ? show(*what.wanted, o.units) + " on " : "") +
                                 r.reference.dog_body.zones[what.zone].title;
        auto& words = by[what.sheet];
        if (std::find(words.begin(), words.end(), text) == words.end()) {
            words.push_back(text);
        }
    }
    std::string out;
    for (const auto& [sheet, words] : by) {
        out += wrapped("  " + r.sheets[sheet].id + ": ", listed(words), 4, o.width);
    }
    return out;
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
std::string explained(const shopping_request& r, const print_options& o) {
    const price_rules& p = r.rules.prices;
    const auto how = [](const evidence& e) { return std::string(in_words(e.how)); };
    std::string out = "How sure\n";
    out += wrapped("  ",
                   "tolerance, where the sheet gives none: " +
                       std::to_string(std::lround(p.tolerance_share.best * 100.0)) +
                       " % of the length (head " +
                       std::to_string(std::lround(p.tolerance_head_share.best * 100.0)) +
                       " %), at least " + show(p.tolerance_cap.best, o.units) + " or " +
                       std::to_string(std::lround(p.tolerance_cap_share.best * 100.0)) +
                       " % of it, whichever is less: " + how(p.tolerance_share.why),
                   4, o.width);
    out += wrapped("  ", "what the lay adds: " + how(r.rules.cut.blade_long_share.why), 4, o.width);
    return out + wrapped("  ", "each length offered: pelage lookup --sources blades/, combs/", 4,
                         o.width);
}

std::string weights_text(const shopping& s, const shopping_request& r, const print_options& o) {
    const std::string text =
        "A target is what " +
        (r.sheets.size() == 1 ? "the sheet"
                              : "one of " + std::to_string(r.sheets.size()) + " sheets") +
        " asks of one zone on one coat it is for, where clippers cut it: " +
        std::to_string(s.targets.size()) +
        ". It is met where a plan would find it within tolerance, in the sheet's direction; where "
        "that is left open, in either. It weighs as a miss in its zone does, " +
        weights_range(r) +
        " (our guess), one side half of both. Consents a sheet needs count as given. Scissored "
        "zones need nothing from the drawer. Of equals the first as listed.";
    return wrapped("", text, 0, o.width);
}

}  // namespace

std::string text_of(const shopping& s, const shopping_request& r, const print_options& o) {
    if (s.targets.empty()) {
        return "No sheet asks anything of clippers: nothing to buy.\n";
    }
    const purchase& last = s.curve.back();
    const bool proven = std::all_of(s.curve.begin(), s.curve.end(),
                                    [](const purchase& p) { return p.choice.proven(); });
    std::string head = "Of " + std::to_string(r.wares.size()) + " blades and combs offered ";
    head += last.bought.empty() ? "none helps" : "buy " + listed(titles(last.bought, r, o));
    head += ": " + percent(last.choice.met, s.whole) + " of what the sheets ask is met";
    head += last.bought.empty() ? "."
                                : ", " + percent(s.curve.front().choice.met, s.whole) + " without.";
    head += proven ? " No choice of so few meets more: proven."
                   : " Not proven: the search was stopped.";
    std::string out = wrapped("", head, 0, o.width);
    out += laid_out(curve_table(s, r, o), o.width);
    if (!s.uses.empty()) {
        out += "What each is for\n" + uses_text(s, r, o);
    }
    if (last.choice.met < s.reachable) {
        out += wrapped(
            "", "All that is offered together would meet " + percent(s.reachable, s.whole) + ".", 0,
            o.width);
    }
    if (!s.never.empty()) {
        out += "Nothing offered meets\n" + never_text(s, r, o);
    }
    out += weights_text(s, r, o);
    return o.explain ? out + explained(r, o) : out;
}

}  // namespace pelage::io
