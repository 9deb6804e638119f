#include <algorithm>

#include <pelage/kit/lookup.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "kit/lookup_where.hpp"

namespace pelage {

namespace {

constexpr std::size_t how_many_near = 3;

double lay_of(const lookup_request& r, coat_class c) {
    return lay_of(r.reference, r.rules, c).best;
}

std::vector<coat_class> coats_asked(const lookup_request& r) {
    if (r.coat) {
        return {*r.coat};
    }
    std::vector<coat_class> all;
    for (const coat& c : r.reference.coats) {
        all.push_back(c.id);
    }
    return all;
}

setup turned(setup s, direction d) {
    s.way = d;
    return s;
}

near_setup near_to(const lookup_request& r, const setup& s, const length& wanted, coat_class c,
                   bool at_hand) {
    near_setup n;
    n.how = s;
    n.leaves = cut_length(s, lay_of(r, c), r.rules.cut);
    n.off = gap(n.leaves.best, wanted);
    n.at_hand = at_hand;
    n.why_not = refused_there(r, s);
    return n;
}

/// By distance; where a zone is asked about, what may be used there first.
void keep_nearest(std::vector<near_setup>& all, bool there, std::size_t most) {
    std::stable_sort(all.begin(), all.end(), [&](const near_setup& a, const near_setup& b) {
        const bool ok_a = !there || !a.why_not;
        const bool ok_b = !there || !b.why_not;
        return std::tuple{!ok_a, in_hundredths(a.off)} < std::tuple{!ok_b, in_hundredths(b.off)};
    });
    all.resize(std::min(all.size(), most));
}

/// Where the hair of a coat stops: in the zone asked about, or wherever it grows longest.
length stops_at(const lookup_request& r, coat_class c) {
    const coat& k = coat_of(r.reference, c);
    if (r.where.empty()) {
        return longest_terminal(k).best;
    }
    length most{};
    for (const place& p : r.where) {
        most = longer(most, terminal_at(k, r.reference.dog_body.zones[p.zone].id).best);
    }
    return most;
}

bool same_thing(const setup& a, const setup& b) {
    return a.tool.id == b.tool.id && a.tool.setting == b.tool.setting &&
           a.over.has_value() == b.over.has_value() && (!a.over || a.over->id == b.over->id);
}

/// Nobody reverses what does with the lay: against it only where nothing with it comes near enough for a
/// plan, and no tool both ways.
void with_the_lay_first(std::vector<near_setup>& all, const length& near_enough) {
    const auto with = [](const near_setup& n) { return n.how.way == direction::with_lay; };
    const bool found = std::any_of(all.begin(), all.end(), [&](const near_setup& n) {
        return with(n) && n.off <= near_enough && !n.why_not;
    });
    const std::vector<near_setup> before = all;
    std::erase_if(all, [&](const near_setup& n) {
        const auto twin = std::find_if(before.begin(), before.end(), [&](const near_setup& other) {
            return same_thing(other.how, n.how) && other.how.way != n.how.way;
        });
        if (twin == before.end()) {
            return found && !with(n);
        }
        return with(n) ? !found && in_hundredths(twin->off) < in_hundredths(n.off) && !twin->why_not
                       : found || in_hundredths(n.off) >= in_hundredths(twin->off) ||
                             n.why_not.has_value();
    });
}

/// Setups of the kit whose finished length comes nearest to `wanted`; `way` limits the direction.
std::vector<near_setup> nearest_to(const lookup_request& r, const length& wanted, coat_class c,
                                   const std::optional<direction>& way) {
    std::vector<near_setup> all;
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        if (s.kind == tool_kind::clip && s.tool.etched != "50" && (!way || s.way == *way)) {
            all.push_back(near_to(r, s, wanted, c, true));
        }
    }
    // no cut leaves more than grows
    std::erase_if(all, [&](const near_setup& n) { return n.leaves.best > stops_at(r, c); });
    if (!way) {
        with_the_lay_first(all, tolerance(wanted, false, r.rules.prices));
    }
    keep_nearest(all, !r.where.empty(), how_many_near);
    return all;
}

/// In place of another: what may be used, is at hand, has as good teeth and errs on the longer side.
void keep_fittest(std::vector<near_setup>& all, const setup& self, const length& wanted) {
    std::stable_sort(all.begin(), all.end(), [&](const near_setup& a, const near_setup& b) {
        const auto key = [&](const near_setup& n) {
            return std::tuple{
                n.why_not.has_value(), !n.at_hand, skips(n.how.tool) && !skips(self.tool),
                in_hundredths(n.leaves.best) < in_hundredths(wanted), in_hundredths(n.off)};
        };
        return key(a) < key(b);
    });
    all.resize(std::min(all.size(), how_many_near));
}

/// What else gives `wanted`, from the kit and from every blade there is, within the tolerance a plan
/// would accept.
std::vector<near_setup> others(const lookup_request& r, const setup& self, const length& wanted,
                               coat_class c, direction way) {
    std::vector<near_setup> all;
    const length tol = tolerance(wanted, false, r.rules.prices);
    const auto add = [&](const setup& s, bool at_hand) {
        const near_setup n = near_to(r, s, wanted, c, at_hand);
        const bool known = std::any_of(all.begin(), all.end(),
                                       [&](const near_setup& a) { return same_thing(a.how, s); });
        if (!same_thing(s, self) && !known && n.off <= tol) {
            all.push_back(n);
        }
    };
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        if (s.kind == tool_kind::clip && s.way == way) {
            add(s, true);
        }
    }
    for (const blade& b : r.reference.blades) {
        const bool common = b.shape == edge::standard && !b.rare;
        if (common && b.etched != "50" && find_blade(r.tools, b.id) == nullptr) {
            add(bare(b, way), false);
        }
    }
    keep_fittest(all, self, wanted);
    return all;
}

/// Of an answer to a length, what its nearest setups need said.
void add_length_cautions(lookup_answer& a) {
    bool comb_used = false;
    bool skip_used = false;
    for (const nearest_row& row : a.nearest) {
        if (!row.best.empty()) {
            const setup& s = row.best.front().how;
            comb_used = comb_used || s.over.has_value();
            skip_used = skip_used || (!s.over && skips(s.tool));
        }
    }
    if (comb_used) {
        a.cautions.push_back(lookup_caution::nearest_comb);
    }
    if (skip_used) {
        a.cautions.push_back(lookup_caution::nearest_skip);
    }
}

/// Where no coat is named: some aren't clipped.
void add_coats(const lookup_request& r, lookup_answer& a) {
    if (!r.coat) {
        a.cautions.push_back(lookup_caution::carded_coats);
    }
}

/// Of a comb on a blade that never carries one only this is answered: the kit's ways to use that comb.
void as_it_may_be(const lookup_request& r, lookup_answer& a) {
    a.leaves.clear();
    a.replaces.clear();
    a.reverse.clear();
    a.cautions.clear();
    const comb& asked = *a.asked.tool.over;
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        if (s.over && s.over->id == asked.id && s.way == direction::with_lay) {
            a.replaces.push_back(near_to(r, s, asked.stated.best, a.judged_on, true));
        }
    }
}

/// Of a tool that may not go there only what may is named: what leaves as much, or else the nearest the
/// kit has for the place.
void only_what_may(const lookup_request& r, lookup_answer& a) {
    const auto refused = [](const near_setup& n) { return n.why_not.has_value(); };
    std::erase_if(a.replaces, refused);
    std::erase_if(a.reverse, refused);
    if (a.replaces.empty()) {
        const double lay = lay_of(r, a.judged_on);
        const length wanted = cut_length(a.asked.tool, lay, r.rules.cut).best;
        a.replaces = nearest_to(r, wanted, a.judged_on, direction::with_lay);
        std::erase_if(a.replaces, refused);
    }
}

/// What must never be done, and a length that the coat asked about doesn't grow to.
void add_never(const lookup_request& r, lookup_answer& a) {
    if (a.asked.what == question::form::of_length) {
        if (r.coat && a.asked.wanted > stops_at(r, *r.coat)) {
            a.never = {answered_no::cause::outgrown, {}, stops_at(r, *r.coat)};
        }
        return;
    }
    const setup& s = a.asked.tool;
    zone_today t;
    t.where = &r.reference.dog_body.zones.front();
    const auto no = refuse(s, t, r.rules.refusal, r.rules.cut);
    if (no && (s.over || *no == refusal::never_50)) {
        a.never = {answered_no::cause::rule, *no, {}};
        if (s.over) {
            as_it_may_be(r, a);
        }
    } else if (a.there && a.there->use == use_there::may::not_at_all) {
        a.never = {answered_no::cause::there, {}, {}};
        only_what_may(r, a);
    }
}

void add_cautions(const lookup_request& r, lookup_answer& a) {
    const setup& s = a.asked.tool;
    const auto mind = [&](lookup_caution c) { a.cautions.push_back(c); };
    if (s.over) {
        mind(lookup_caution::comb_in_tangles);
        mind(lookup_caution::comb_drops_off);
        return;
    }
    if (s.tool.cut == teeth::skip) {
        mind(lookup_caution::fold_of_skin);
    } else if (s.tool.cut == teeth::unknown) {
        mind(lookup_caution::teeth_unknown);
    }
    if (s.tool.shape == edge::toe) {
        mind(lookup_caution::fraction_is_width);
    }
    if (in_mm(s.tool.stated.best) < 1.75) {
        mind(lookup_caution::short_irritates);
    }
    a.on_firm_skin = r.where.empty() ? refused_there(r, s) : std::nullopt;
    if (a.on_firm_skin) {
        mind(lookup_caution::refused);
    }
}

/// Whether it may be used in the places asked about, either way over the coat.
std::optional<use_there> judged_there(const lookup_request& r, const setup& s) {
    if (r.where.empty()) {
        return std::nullopt;
    }
    if (r.way) {
        const auto no = refused_there(r, turned(s, *r.way));
        return use_there{no ? use_there::may::not_at_all : use_there::may::so, no};
    }
    if (const auto no = refused_there(r, turned(s, direction::with_lay))) {
        return use_there{use_there::may::not_at_all, no};
    }
    const auto against = refused_there(r, turned(s, direction::against_lay));
    return use_there{against ? use_there::may::with_lay_only : use_there::may::both_ways, against};
}

void add_basis(const lookup_request& r, lookup_answer& a) {
    if (a.stated) {
        a.sure.push_back({lookup_figure::stated_length, a.stated->why});
    }
    a.sure.push_back({lookup_figure::lay_of_blades, r.rules.cut.blade_long_share.why});
    if (a.asked.tool.over || a.asked.what == question::form::of_length) {
        a.sure.push_back({lookup_figure::lay_of_combs, r.rules.cut.comb_share.why});
    }
    if (r.coat) {
        a.sure.push_back({lookup_figure::lay_angle, lay_of(r.reference, r.rules, *r.coat).why});
    }
}

}  // namespace

std::vector<near_setup> replacements(const lookup_request& r, const setup& self,
                                     const length& wanted, coat_class c, direction way) {
    return others(r, self, wanted, c, way);
}

lookup_answer look_up(const lookup_request& r) {
    lookup_answer a;
    a.asked = read_question(r);
    a.judged_on = r.coat.value_or(coat_class::smooth);
    if (a.asked.what == question::form::of_length) {
        for (const coat_class c : coats_asked(r)) {
            const bool beyond = a.asked.wanted > stops_at(r, c);
            a.nearest.push_back({c, nearest_to(r, a.asked.wanted, c, r.way),
                                 beyond ? std::optional{stops_at(r, c)} : std::nullopt});
        }
        add_length_cautions(a);
        add_coats(r, a);
        add_never(r, a);
        add_basis(r, a);
        return a;
    }
    const setup with = turned(a.asked.tool, direction::with_lay);
    const setup against = turned(a.asked.tool, direction::against_lay);
    a.stated = stated_length(with, r.rules.cut);
    for (const coat_class c : coats_asked(r)) {
        const finished along = cut_length(with, lay_of(r, c), r.rules.cut);
        a.leaves.push_back(
            {c, along, cut_length(against, lay_of(r, c), r.rules.cut),
             along.best > stops_at(r, c) ? std::optional{stops_at(r, c)} : std::nullopt});
    }
    const double lay = lay_of(r, a.judged_on);
    a.replaces =
        others(r, with, cut_length(with, lay, r.rules.cut).best, a.judged_on, direction::with_lay);
    a.reverse = others(r, with, cut_length(against, lay, r.rules.cut).best, a.judged_on,
                       direction::with_lay);
    add_cautions(r, a);
    a.there = judged_there(r, a.asked.tool);
    add_coats(r, a);
    add_never(r, a);
    add_basis(r, a);
    return a;
}

}  // namespace pelage
