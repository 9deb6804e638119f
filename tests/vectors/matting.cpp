// The matting-prone length and when the dog must be back, for a dog that is kept at stated lengths.
#include <algorithm>
#include <cstdlib>

#include <pelage/data/reference.hpp>
#include <pelage/model/matting.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/trade/place_words.hpp>

#include "quantities.hpp"

namespace chk {

namespace {

using pelage::io::reference;

/// Zones kept at a length, one for each zone of the body but the prep zones, which are clipped short
/// at every visit.
struct kept_dog {
    std::vector<std::size_t> zone;  ///< index into body::zones
    std::vector<pelage::kept_zone> kept;
    pelage::shared_law law;
    pelage::days usual{};
};

const std::vector<pelage::zone>& zones() {
    return reference().dog_body.zones;
}

std::size_t zone_called(const std::string& id) {
    const pelage::zone* z = pelage::find(zones(), id);
    if (z == nullptr) {
        throw bad_case("no zone is called '" + id + "'");
    }
    return static_cast<std::size_t>(z - zones().data());
}

/// `all=13mm` and any zone by its id in place of it.
pelage::length kept_at(givens& g, const pelage::zone& z) {
    const pelage::length all = g.length("all");
    return g.has(z.id) ? g.length(z.id) : all;
}

kept_dog dog_kept(givens& g) {
    const pelage::coat& c = pelage::coat_of(reference(), g.coat());
    const pelage::parameters& rules = reference().rules;
    const pelage::brushing b = g.brushing();
    kept_dog d;
    d.usual = c.usual_interval.best;
    d.law = {pelage::prior_rate(c, rules.growth), rules.matting.threshold_log_sd.best,
             rules.growth.start_error.best};
    for (std::size_t i = 0; i < zones().size(); ++i) {
        if (zones()[i].where == pelage::group::prep) {
            continue;
        }
        d.zone.push_back(i);
        d.kept.push_back({kept_at(g, zones()[i]),
                          pelage::matting_prone_length(c, zones()[i], b, false, rules.matting),
                          c.terminal.best, pelage::brush_out_clock(b, rules.matting)});
    }
    return d;
}

answers brush_factor(givens& g) {
    return {{"factor", plain(pelage::brush_factor(g.brushing(), reference().rules.matting))}};
}

/// How far two habits lie apart in what they do to a coat.
answers habits_apart(givens& g) {
    const pelage::matting_rules& m = reference().rules.matting;
    const pelage::brushing a = g.brushing("a");
    const pelage::brushing b = g.brushing("b");
    return {{"factor", plain(pelage::brush_factor(a, m) - pelage::brush_factor(b, m))},
            {"clock", in(pelage::brush_out_clock(a, m) - pelage::brush_out_clock(b, m))}};
}

answers matting_prone(givens& g) {
    const auto m = pelage::matting_prone_length(pelage::coat_of(reference(), g.coat()),
                                                zones()[zone_called(g.word("zone"))], g.brushing(),
                                                false, reference().rules.matting);
    return {{"length", m ? in(*m) : answer{std::string("never")}}};
}

answers when_back(givens& g) {
    const kept_dog d = dog_kept(g);
    const pelage::return_date b =
        pelage::return_date_of(d.kept, d.law, g.number("chance"), d.usual);
    return {{"days", in(b.next_visit)},
            {"even-odds", in(b.even_odds)},
            {"full-groom", in(b.full_groom)}};
}

/// The chance that every zone is under its matting-prone length on a day, no zone excused by the
/// brush-out clock.
answers all_fine(givens& g) {
    const kept_dog d = dog_kept(g);
    return {{"chance", plain(pelage::all_fine(d.kept, d.law, g.days("day"), false))}};
}

/// Whether all of `sooner` reach their matting-prone length (1 in 2) before any of `later`.
answers first_to_mat(givens& g) {
    const kept_dog d = dog_kept(g);
    const auto even = [&](const std::string& id) {
        const auto at = std::find(d.zone.begin(), d.zone.end(), zone_called(id));
        if (at == d.zone.end()) {
            throw bad_case("'" + id + "' is a prep zone");
        }
        return pelage::in_days(pelage::prone_quantile(
            d.kept[static_cast<std::size_t>(at - d.zone.begin())], d.law, 0.5));
    };
    double last_of_first = 0.0;
    for (const std::string& id : g.list("sooner")) {
        last_of_first = std::max(last_of_first, even(id));
    }
    double first_of_last = std::numeric_limits<double>::infinity();
    for (const std::string& id : g.list("later")) {
        first_of_last = std::min(first_of_last, even(id));
    }
    return {{"order", std::string(last_of_first < first_of_last ? "as-said" : "other")},
            {"ahead", in(pelage::day(first_of_last - last_of_first))}};
}

/// What the reference says of a source of which only a remark is taken: how many figures rest on it,
/// and the first two numbers of its note.
answers remark(givens& g) {
    const pelage::source* s = pelage::find(reference().sources, g.word("source"));
    if (s == nullptr) {
        throw bad_case("no source is called '" + g.word("source") + "'");
    }
    std::vector<double> numbers;
    for (const char* at = s->note.c_str(); *at != '\0';) {
        char* end = nullptr;
        const bool digit = *at >= '0' && *at <= '9';
        const double v = digit ? std::strtod(at, &end) : 0.0;
        if (digit) {
            numbers.push_back(v);
        }
        at = digit ? end : at + 1;
    }
    if (numbers.size() < 2) {
        throw bad_case("the note names no range");
    }
    const auto resting = std::count_if(reference().figures.begin(), reference().figures.end(),
                                       [&](const auto& f) { return f.why.from == s->id; });
    return {{"figures", plain(static_cast<double>(resting))},
            {"seen", s->seen},
            {"middle", in(pelage::day(0.5 * (numbers[0] + numbers[1])))}};
}

}  // namespace

void add_matting(std::map<std::string, quantity>& to) {
    to["brush-factor"] = brush_factor;
    to["habits-apart"] = habits_apart;
    to["matting-prone"] = matting_prone;
    to["when-back"] = when_back;
    to["all-fine"] = all_fine;
    to["first-to-mat"] = first_to_mat;
    to["remark"] = remark;
}

}  // namespace chk
