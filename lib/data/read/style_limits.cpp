// What a standard states as limits, and whether a sheet keeps them.
#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "data/read/style_parts.hpp"

namespace pelage::io {

namespace {

/// A rule or limit with its words resolved.
struct meant_rule {
    const sheet_rule* rule;
    const selection* whom;
};

/// The rules that decide what a place is left at and how: the narrowest that says so, the later of
/// equals.
struct deciding {
    const sheet_rule* size = nullptr;  ///< gives a length or a blade
    const sheet_rule* finish = nullptr;
    bool sided = false;  ///< `size` is of one side
};

bool covers(const selection& s, const place& p) {
    return std::any_of(s.places.begin(), s.places.end(), [&](const place& w) {
        return w.zone == p.zone && (w.which == side::both || w.which == p.which);
    });
}

/// `rules`: wider ones first.
deciding decide(const std::vector<meant_rule>& rules, const place& p) {
    deciding d;
    for (const meant_rule& r : rules) {
        if (!covers(*r.whom, p)) {
            continue;
        }
        const instruction& i = r.rule->what;
        if (i.target || i.blade) {
            d.size = r.rule;
            d.sided = r.whom->sided;
        }
        d.finish = i.how ? r.rule : d.finish;
    }
    return d;
}

std::vector<meant_rule> meant_rules(const style& s, page& p) {
    std::vector<meant_rule> out;
    out.reserve(s.rules.size());
    for (const sheet_rule& r : s.rules) {
        // what means nothing was complained of where it stands
        if (const selection* whom = p.places.find({r.whom, {}}, p.out)) {
            out.push_back({&r, whom});
        }
    }
    std::stable_sort(out.begin(), out.end(), [](const meant_rule& a, const meant_rule& b) {
        return wider(*a.whom, *b.whom);
    });
    return out;
}

/// Whether a place knows what to do: a length, a blade, or work that keeps the coat's own length.
bool says_enough(const deciding& d) {
    if (d.size != nullptr || d.finish == nullptr) {
        return d.size != nullptr;
    }
    const finish how = *d.finish->what.how;
    return how == finish::leave || how == finish::card || how == finish::thin ||
           how == finish::hand_strip;
}

std::vector<place> sides_of(const body& b, std::size_t zone) {
    if (!b.zones[zone].paired) {
        return {{zone, side::both}};
    }
    return {{zone, side::left}, {zone, side::right}};
}

limit get_limit(record& r, page& p) {
    limit l;
    l.low = r.get_length("low", presence::may);
    l.high = r.get_length("high", presence::may);
    for (const word& w : r.get_words("not_below", presence::may)) {
        l.not_below = p.places.find(w, p.out) != nullptr ? w.text : l.not_below;
    }
    l.why = get_evidence(r, p, p.ours ? presence::must : presence::may);
    r.done();
    l.at = {p.out.file(), r.at().line, r.at().column};
    if (r.at("low") == r.at() && r.at("high") == r.at() && r.at("not_below") == r.at()) {
        p.out.add(
            r.at(), errc::missing,
            "a limit has a low or a high end, or both; found neither; write high = \"25 mm\"");
    }
    if (l.low && l.high && *l.low > *l.high) {
        p.out.add(r.at("low"), errc::conflict,
                  fmt::format("a limit's low end lies above its high end; found {}; swap them",
                              span_of(l)));
        l.low = l.high = std::nullopt;  // nothing can keep it
    }
    return l;
}

/// What a rule leaves at least and at most, as far as the sheet alone says: a blade may leave more
/// than is etched on it, never less than against the lay.
bool breaks(const instruction& i, const limit& l, const reference_data& c) {
    if (i.target) {
        return (l.low && *i.target < *l.low) || (l.high && *i.target > *l.high);
    }
    const blade* b = i.blade ? find(c.blades, *i.blade) : nullptr;
    return b != nullptr && l.high && b->stated.best > *l.high;
}

spot spot_of(const written_at& w) {
    return {w.line, w.column};
}

/// What was told of: the rule and the limit it breaks, by their places in the sheet.
using told_faults = std::set<std::pair<std::size_t, std::size_t>>;

/// A sheet, plain or in a season, against its limits.
class limit_checker {
  public:
    /// `of_season`: the season laid on the sheet, or null; its rules stand last.
    limit_checker(const style& s, const season* of_season, const spot& here, page& p)
        : sheet_(s), season_(of_season), here_(here), page_(p), rules_(meant_rules(s, p)) {}

    void run(told_faults& told) {
        for (std::size_t n = 0; n < sheet_.limits.size(); ++n) {
            const selection* whom = page_.places.find({sheet_.limits[n].whom, {}}, page_.out);
            for (const place& wide : whom == nullptr ? std::vector<place>{} : whom->places) {
                for (const place& at : sides_of(page_.places.whole(), wide.zone)) {
                    if (covers(*whom, at)) {
                        check(n, at, told);
                    }
                }
            }
        }
    }

  private:
    void check(std::size_t n, const place& at, told_faults& told) {
        const limit& l = sheet_.limits[n];
        const deciding d = decide(rules_, at);
        if (d.size == nullptr || !breaks(d.size->what, l, page_.known)) {
            return;
        }
        const auto index = static_cast<std::size_t>(d.size - sheet_.rules.data());
        if (!told.emplace(index, n).second) {
            return;
        }
        const instruction& i = d.size->what;
        const place named{at.zone, d.sided ? at.which : side::both};
        const std::string whose = l.from.empty() ? "the sheet's own limit"
                                                 : fmt::format("the limit of {}", shown(l.from));
        const std::string from =
            d.size->from.empty() ? "" : fmt::format(" from {}", shown(d.size->from));
        const std::string when =
            season_ == nullptr ? "" : fmt::format(" in {}", shown(season_->name));
        page_.out.add(
            where(*d.size, index, l), errc::conflict,
            fmt::format("{}{} breaks {}; found {}{}; right is {}",
                        shown(title(page_.places.whole(), named)), when, whose,
                        i.target ? fmt::format("{} mm", in_mm(*i.target)) : "blade " + *i.blade,
                        from, span_of(l)));
    }

    /// The rule where this file writes it, else the limit, else what the file does to both.
    [[nodiscard]] spot where(const sheet_rule& r, std::size_t index, const limit& l) const {
        const auto of_season = season_ == nullptr ? 0 : season_->rules.size();
        if (season_ != nullptr && season_->at.file == page_.out.file()) {
            return spot_of(index + of_season >= sheet_.rules.size() ? r.at : season_->at);
        }
        if (season_ == nullptr && r.from.empty()) {
            return spot_of(r.at);
        }
        return l.from.empty() ? spot_of(l.at) : here_;
    }

    const style& sheet_;
    const season* season_;
    spot here_;
    page& page_;
    std::vector<meant_rule> rules_;
};

}  // namespace

std::string span_of(const limit& l) {
    if (l.low && l.high) {
        return fmt::format("{} to {} mm", in_mm(*l.low), in_mm(*l.high));
    }
    return l.low    ? fmt::format("at least {} mm", in_mm(*l.low))
           : l.high ? fmt::format("at most {} mm", in_mm(*l.high))
                    : fmt::format("no shorter than {}", shown(l.not_below));
}

std::vector<limit> get_limits(record& r, page& p) {
    std::vector<limit> out;
    for (const node* n : r.get_tables("limit", presence::may)) {
        record one(*n, p.out);
        const std::vector<word> zones = one.get_words("zones", presence::must);
        limit l = get_limit(one, p);
        std::vector<std::pair<selection, std::string>> before;
        for (const word& w : zones) {
            if (const selection* whom = p.places.find(w, p.out)) {
                refuse_twice(w, *whom, before, p.out);
                l.whom = w.text;
                out.push_back(l);
            }
        }
    }
    return out;
}

void check_limits(const style& s, const spot& here, page& p) {
    if (s.limits.empty()) {
        return;
    }
    told_faults told;
    limit_checker(s, nullptr, here, p).run(told);
    for (const season& one : s.seasons) {
        told_faults also = told;
        limit_checker(in_season(s, one), &one, here, p).run(also);
    }
}

void check_complete(const style& s, const spot& at, page& p) {
    const std::vector<meant_rule> rules = meant_rules(s, p);
    const body& b = p.places.whole();
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        if (b.zones[z].where == group::prep) {
            continue;
        }
        std::vector<place> untold = sides_of(b, z);
        std::erase_if(untold, [&](const place& one) { return says_enough(decide(rules, one)); });
        if (untold.size() > 1) {
            untold = {{z, side::both}};
        }
        for (const place& one : untold) {
            p.out.add(at, errc::missing,
                      fmt::format("a sheet must say something of every zone; found nothing for {}; "
                                  "write a length, a blade or finish = \"leave\"",
                                  shown(title(b, one))));
        }
    }
}

}  // namespace pelage::io
