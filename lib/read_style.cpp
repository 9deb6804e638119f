// Style sheets.
#include <algorithm>
#include <set>

#include <fmt/format.h>

#include <pelage/text.hpp>

#include "read_files.hpp"

namespace pelage::io {

namespace {

constexpr std::array<std::string_view, 3> feet_words{"round", "clean", "natural"};
constexpr std::array<std::string_view, 4> face_words{"clean", "round", "bearded", "natural"};

/// A limit on one place, with the position of its record.
struct placed_limit {
    limit what;
    selection whom;
};

/// The rules that decide what a place is left at and how: the narrowest that says so, the later of
/// equals.
struct deciding {
    const placed_rule* size = nullptr;  ///< gives a length or a blade
    const placed_rule* finish = nullptr;
};

bool covers(const selection& s, const place& p) {
    return std::any_of(s.places.begin(), s.places.end(), [&](const place& w) {
        return w.zone == p.zone && (w.which == side::both || w.which == p.which);
    });
}

deciding decide(const std::vector<placed_rule>& rules, const place& p) {
    deciding d;
    for (const reach how : {reach::all, reach::group, reach::zone, reach::side}) {
        for (const placed_rule& r : rules) {
            if (r.whom.how != how || !covers(r.whom, p)) {
                continue;
            }
            const instruction& i = r.rule.what;
            d.size = i.target || i.blade ? &r : d.size;
            d.finish = i.how ? &r : d.finish;
        }
    }
    return d;
}

/// Whether a place knows what to do: a length, a blade, or work that keeps the coat's own length.
bool says_enough(const deciding& d) {
    if (d.size != nullptr || d.finish == nullptr) {
        return d.size != nullptr;
    }
    const finish how = *d.finish->rule.what.how;
    return how == finish::leave || how == finish::card || how == finish::thin ||
           how == finish::hand_strip;
}

std::vector<place> sides_of(const body& b, std::size_t zone) {
    if (!b.zones[zone].paired) {
        return {{zone, side::both}};
    }
    return {{zone, side::left}, {zone, side::right}};
}

std::string span_of(const limit& l) {
    if (l.low && l.high) {
        return fmt::format("{} to {} mm", in_mm(*l.low), in_mm(*l.high));
    }
    return l.low ? fmt::format("at least {} mm", in_mm(*l.low))
                 : fmt::format("at most {} mm", in_mm(*l.high));
}

std::vector<placed_limit> get_limit(const node& n, page& p) {
    record r(n, p.out);
    const std::vector<word> zones = r.get_words("zones", presence::must);
    limit l;
    l.low = r.get_length("low", presence::may);
    l.high = r.get_length("high", presence::may);
    l.why = get_evidence(r, p, p.ours ? presence::must : presence::may);
    r.done();
    if (r.at("low") == r.at() && r.at("high") == r.at()) {
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
    std::vector<placed_limit> out;
    std::vector<std::pair<selection, std::string>> before;
    for (const word& w : zones) {
        if (const selection* whom = p.places.find(w, p.out)) {
            refuse_twice(w, *whom, before, p.out);
            l.whom = w.text;
            out.push_back({l, *whom});
        }
    }
    return out;
}

/// What a rule leaves at least and at most, as far as the sheet alone says: a blade may leave more
/// than is etched on it, never less than against the lay.
bool breaks(const instruction& i, const limit& l, const catalogue& c) {
    if (i.target) {
        return (l.low && *i.target < *l.low) || (l.high && *i.target > *l.high);
    }
    const blade* b = i.blade ? find(c.blades, *i.blade) : nullptr;
    return b != nullptr && l.high && b->stated.best > *l.high;
}

void check_limits(const std::vector<placed_rule>& rules, const std::vector<placed_limit>& limits,
                  page& p) {
    std::set<std::pair<const placed_rule*, const placed_limit*>> told;
    const body& b = p.places.whole();
    for (const placed_limit& l : limits) {
        for (const place& wide : l.whom.places) {
            for (const place& at : sides_of(b, wide.zone)) {
                const placed_rule* r = covers(l.whom, at) ? decide(rules, at).size : nullptr;
                if (r == nullptr || !breaks(r->rule.what, l.what, p.known) ||
                    !told.emplace(r, &l).second) {
                    continue;
                }
                const instruction& i = r->rule.what;
                const place named{at.zone, r->whom.how == reach::side ? at.which : side::both};
                p.out.add(r->at, errc::conflict,
                          fmt::format("{} breaks the sheet's own limit; found {}; right is {}",
                                      shown(title(b, named)),
                                      i.target ? fmt::format("{} mm", in_mm(*i.target))
                                               : "blade " + *i.blade,
                                      span_of(l.what)));
            }
        }
    }
}

void list_figures(page& p, const style& s, const std::vector<placed_limit>& limits) {
    std::optional<length> least;
    std::optional<length> most;
    for (const sheet_rule& r : s.rules) {
        if (const auto& l = r.what.target) {
            least = least ? shorter(*least, *l) : *l;
            most = most ? longer(*most, *l) : *l;
        }
    }
    if (least) {
        const double low = in_mm(*least);
        const double high = in_mm(*most);
        list_text(p, "styles/" + s.id + "/lengths",
                  low < high ? fmt::format("{} to {} mm", low, high) : fmt::format("{} mm", low),
                  s.why);
    }
    for (const placed_limit& l : limits) {
        if (l.what.low || l.what.high) {
            list_text(p, "styles/" + s.id + "/limit " + l.what.whom, span_of(l.what), l.what.why);
        }
    }
}

std::vector<std::string> texts(std::vector<word> words) {
    std::vector<std::string> out;
    out.reserve(words.size());
    for (word& w : words) {
        out.push_back(std::move(w.text));
    }
    return out;
}

void get_head(record& r, style& s) {
    s.id = r.get_id("id");
    s.title = r.get_text("title", presence::must);
    s.version = r.get_count("version", 1, 9999, 1);
    s.dated = r.get_day("date", presence::may);
    s.approved_by = r.get_text("approved_by", presence::may);
    s.text = r.get_text("text", presence::may, text_kind::prose);
    for (const word& w : r.get_words("coats", presence::may)) {
        const int i = index_of(w, "coat", coat_names, r.out());
        if (i >= 0) {
            s.coats.push_back(static_cast<coat_class>(i));
        }
    }
    s.mixes = texts(r.get_words("mixes", presence::may));
}

void get_words_of_trim(record& r, style& s) {
    s.feet = r.get_choice("feet", presence::may, feet_words);
    s.face = r.get_choice("face", presence::may, face_words);
    s.ears = r.get_text("ears", presence::may);
    s.tail = r.get_text("tail", presence::may);
    s.topknot = r.get_text("topknot", presence::may);
    s.show = r.get_flag("show");
    s.clip_jacket = r.get_flag("clip_jacket");
}

void get_upkeep(record& r, style& s) {
    s.upkeep = r.get_text("upkeep", presence::may);
    if (!s.upkeep.empty() && !parse_brushing(s.upkeep)) {
        r.out().add(r.at("upkeep"), errc::syntax,
                    fmt::format("not a way to brush; found {}; write it like \"every 3 days to the "
                                "skin\", \"weekly on the surface\" or \"none\"",
                                shown(s.upkeep)));
    }
    if (const auto d =
            r.get_number("longest_interval", presence::may, measure::days, over_zero(365.0))) {
        s.longest_interval = day(*d);
    }
    for (const word& w : r.get_words("consent", presence::may)) {
        s.consent.push_back(w.text);
    }
    s.front_desk = r.get_text("front_desk", presence::may);
}

void check_adjustable(record& r, const style& s) {
    const bool used = std::any_of(s.rules.begin(), s.rules.end(), [&](const sheet_rule& rule) {
        return rule.what.target == s.adjustable;
    });
    if (s.adjustable && !used) {
        r.out().add(
            r.at("adjustable_length"), errc::conflict,
            fmt::format("an adjustable length is one that the sheet uses; found {} mm, which "
                        "no zone has; write a zone's length",
                        in_mm(*s.adjustable)));
    }
}

}  // namespace

placed<style> get_style(const node& root, page& p) {
    record r(root, p.out);
    check_format(r);
    style s;
    get_head(r, s);
    get_words_of_trim(r, s);
    get_upkeep(r, s);
    s.adjustable = r.get_length("adjustable_length", presence::may);
    s.why = get_evidence(r, p, p.ours ? presence::must : presence::may);
    std::vector<placed_rule> rules = get_rules(r, p, "zones", presence::must);
    std::vector<placed_limit> limits;
    for (const node* n : r.get_tables("limit", presence::may)) {
        for (placed_limit& l : get_limit(*n, p)) {
            limits.push_back(std::move(l));
        }
    }
    r.done();
    check_limits(rules, limits, p);
    for (const placed_limit& l : limits) {
        s.limits.push_back(l.what);
    }
    s.rules = without_positions(std::move(rules));
    check_adjustable(r, s);
    list_figures(p, s, limits);
    return {std::move(s), r.at("id")};
}

void check_complete(const style& s, const spot& at, page& p) {
    std::vector<placed_rule> rules;
    for (const sheet_rule& r : s.rules) {
        if (const selection* whom = p.places.find({r.whom, at}, p.out)) {
            rules.push_back({r, *whom, at});
        }
    }
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
