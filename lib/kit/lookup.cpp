#include <algorithm>
#include <tuple>
#include <utility>

#include <pelage/kit/lookup.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/trade/term.hpp>

#include "kit/lookup_near.hpp"
#include "kit/lookup_where.hpp"

namespace pelage {

namespace {

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

/// What a setup leaves on a coat.
finished left_on(const lookup_request& r, const setup& s, coat_class c) {
    return cut_length(s, lay_asked(r, c), r.rules.cut);
}

bool refused(const near_setup& n) {
    return n.why_not.has_value();
}

/// Of what lies there first what goes wherever `with` does; skip teeth, firm skin only, where nothing else does it.
void wherever_first(std::vector<near_setup>& best, const setup& with) {
    std::erase_if(best, [](const near_setup& n) { return !n.at_hand; });
    std::stable_partition(best.begin(), best.end(), [&](const near_setup& n) {
        return !skips(n.how.tool) || skips(with.tool);
    });
}

/// As near as the trade's names are to the lengths they stand for.
length as_named(const length& wanted) {
    return mm(std::max(0.25, 0.06 * in_mm(wanted)));
}

void keep_first(std::vector<near_setup>& best) {
    best.resize(std::min<std::size_t>(best.size(), 1));
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

void nothing_in_its_place(lookup_answer& a) {
    a.replaces.clear();
    a.replaces_by_coat.clear();
    a.reverse.clear();
    a.reverse_by_coat.clear();
}

/// What takes its place, on the coat it is judged on, and where none is named on each.
template <class Of>
void in_its_place(const lookup_request& r, lookup_answer& a, Of of) {
    a.replaces = of(a.judged_on);
    if (!r.coat) {
        for (const coat_class c : coats_asked(r)) {
            a.replaces_by_coat.push_back({c, of(c), std::nullopt, std::nullopt});
        }
    }
}

/// In place of a 50 nothing goes on a dog. Of a comb on a blade that never carries one only this is
/// answered: the kit's ways to use that comb.
void as_it_may_be(const lookup_request& r, lookup_answer& a) {
    nothing_in_its_place(a);
    if (!a.asked.tool.over) {
        return;
    }
    a.leaves.clear();
    a.cautions.clear();
    const comb& asked = *a.asked.tool.over;
    in_its_place(r, a, [&](coat_class c) {
        std::vector<near_setup> all;
        for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
            if (s.over && s.over->id == asked.id && s.way == direction::with_lay) {
                all.push_back(near_to(r, s, asked.stated.best, c, true));
            }
        }
        return all;
    });
}

/// Of a tool that may not go there only what may is named: what leaves as much, or else the nearest the
/// kit has for the place.
void only_what_may(const lookup_request& r, lookup_answer& a) {
    nothing_in_its_place(a);
    if (a.there->no->why == no_go::cause::rule && a.there->no->rule == refusal::scissors_only) {
        return;
    }
    const setup with = turned(a.asked.tool, direction::with_lay);
    in_its_place(r, a, [&](coat_class c) {
        const length wanted = left_on(r, with, c).best;
        std::vector<near_setup> all = others(r, with, wanted, c, direction::with_lay);
        std::erase_if(all, refused);
        if (all.empty()) {
            all = nearest_to(r, wanted, c, direction::with_lay);
            std::erase_if(all, refused);
        }
        return all;
    });
    for (nearest_row& row : a.replaces_by_coat) {
        keep_first(row.best);
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
        as_it_may_be(r, a);
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
    const bool feet = std::any_of(r.where.begin(), r.where.end(), [&](const place& p) {
        return r.reference.dog_body.zones[p.zone].has(zone_use::clean_feet);
    });
    if (feet && in_mm(s.tool.stated.best) >= 1.75 && s.tool.cut != teeth::skip) {
        mind(lookup_caution::top_of_feet);
    }
    const setup asked = turned(s, r.way.value_or(direction::with_lay));
    a.on_firm_skin = r.where.empty() ? refused_there(r, asked) : std::nullopt;
    if (a.on_firm_skin) {
        mind(lookup_caution::refused);
        a.only_there = places_of(r, asked);
    }
}

/// The usual blades that state about that length, rather longer than shorter: hair can't be put back.
std::vector<blade> stating(const lookup_request& r, const length& wanted) {
    const length near = as_named(wanted);
    std::vector<blade> all;
    for (const blade& b : r.reference.blades) {
        const bool usual = b.shape == edge::standard && !b.rare && b.etched != "50";
        if (usual && gap(b.stated.best, wanted) <= near) {
            all.push_back(b);
        }
    }
    const auto key = [&](const blade& b) {
        const bool too_short = in_mm(b.stated.best) < in_mm(wanted) - 0.05;
        return std::tuple{too_short, in_hundredths(gap(b.stated.best, wanted))};
    };
    std::stable_sort(all.begin(), all.end(),
                     [&](const blade& a, const blade& b) { return key(a) < key(b); });
    const auto other = std::find_if(all.begin(), all.end(),
                                    [&](const blade& b) { return key(b) != key(all.front()); });
    all.erase(other, all.end());
    return all;
}

/// Of an answer to a length: by coat.
void answer_length(const lookup_request& r, lookup_answer& a) {
    for (const coat_class c : coats_asked(r)) {
        const bool beyond = a.asked.wanted > stops_at(r, c);
        std::vector<near_setup> best = nearest_to(r, a.asked.wanted, c, r.way, a.asked.only);
        auto out = nearer_but_out(r, a.asked.wanted, c, best);
        a.nearest.push_back({c, std::move(best),
                             beyond ? std::optional{stops_at(r, c)} : std::nullopt,
                             std::move(out)});
    }
    add_length_cautions(a);
    if (a.asked.only != asked_kind::comb) {
        a.stated_so = stating(r, a.asked.wanted);
    }
}

/// What does the same, by coat where none is named: what fits a smooth coat is another one than fits a
/// curly.
void add_others(const lookup_request& r, lookup_answer& a) {
    const setup with = turned(a.asked.tool, direction::with_lay);
    const setup against = turned(a.asked.tool, direction::against_lay);
    // asked against the lay, what leaves that with the lay takes its place: nothing is left to say of it reversed
    const bool turned_round = r.way == direction::against_lay;
    const setup& asked = turned_round ? against : with;
    const auto left = [&](const setup& s, coat_class c) { return left_on(r, s, c).best; };
    const auto in_place_of = [&](const setup& s, coat_class c) {
        return others(r, with, left(s, c), c, direction::with_lay);
    };
    const auto or_longer = [&](std::vector<near_setup> best, coat_class c) {
        const bool any =
            std::any_of(best.begin(), best.end(), [](const near_setup& n) { return n.at_hand; });
        const bool freely = !refused_there(r, with);
        if (!any && freely && !turned_round) {
            if (auto n = next_longer(r, with, left(with, c), c, direction::with_lay)) {
                best.insert(best.begin(), std::move(*n));
            }
        }
        return best;
    };
    // what goes wherever this one goes, the fittest; nothing where the coat stands off
    const auto reversed = [&](coat_class c) {
        const bool alike = left(with, c) == left(against, c);
        std::vector<near_setup> best = alike ? std::vector<near_setup>{} : in_place_of(against, c);
        // a blade is told by a blade, where one comes as near: reversed, a 7F is a 10
        const auto key = [&](const near_setup& n) {
            const bool far = n.off > as_named(n.wanted);
            return std::tuple{far, !far && n.how.over.has_value(), in_hundredths(n.off)};
        };
        std::stable_sort(best.begin(), best.end(),
                         [&](const near_setup& x, const near_setup& y) { return key(x) < key(y); });
        wherever_first(best, with);
        keep_first(best);
        return best;
    };
    if (r.coat) {
        a.replaces = or_longer(in_place_of(asked, *r.coat), *r.coat);
    } else {
        for (const coat_class c : coats_asked(r)) {
            std::vector<near_setup> best = or_longer(in_place_of(asked, c), c);
            wherever_first(best, with);
            keep_first(best);
            a.replaces_by_coat.push_back({c, std::move(best), std::nullopt, std::nullopt});
            if (!turned_round) {
                a.reverse_by_coat.push_back({c, reversed(c), std::nullopt, std::nullopt});
            }
        }
    }
    if (!turned_round) {
        a.reverse = in_place_of(against, a.judged_on);
    }
}

/// Of a tool that may be used in the places asked about only what may take its place there.
void keep_what_may(const lookup_request& r, lookup_answer& a) {
    if (r.where.empty() || (a.there && a.there->use == use_there::may::not_at_all)) {
        return;
    }
    std::erase_if(a.replaces, refused);
    std::erase_if(a.reverse, refused);
    for (nearest_row& row : a.reverse_by_coat) {
        std::erase_if(row.best, refused);
    }
    bool any = !a.replaces.empty();
    for (nearest_row& row : a.replaces_by_coat) {
        std::erase_if(row.best, refused);
        any = any || !row.best.empty();
    }
    a.nothing_else_there = !any;
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

bool of_pads_alone(const lookup_request& r) {
    const auto& zones = r.reference.dog_body.zones;
    return !r.where.empty() && std::all_of(r.where.begin(), r.where.end(), [&](const place& p) {
        return zones[p.zone].has(zone_use::pads);
    });
}

const glossary& words_of(const lookup_request& r) {
    static const glossary none;
    return r.words == nullptr ? none : *r.words;
}

lookup_answer look_up(const lookup_request& r, question asked) {
    lookup_answer a;
    a.asked = std::move(asked);
    a.judged_on = r.coat.value_or(coat_class::smooth);
    if (a.asked.what == question::form::of_length) {
        answer_length(r, a);
    } else {
        const setup with = turned(a.asked.tool, direction::with_lay);
        const setup against = turned(a.asked.tool, direction::against_lay);
        a.stated = stated_length(with, r.rules.cut);
        for (const coat_class c : coats_asked(r)) {
            const finished along = left_on(r, with, c);
            a.leaves.push_back(
                {c, along, left_on(r, against, c),
                 along.best > stops_at(r, c) ? std::optional{stops_at(r, c)} : std::nullopt});
        }
        add_others(r, a);
        add_cautions(r, a);
        a.there = judged_there(r, a.asked.tool);
        keep_what_may(r, a);
    }
    add_coats(r, a);
    add_never(r, a);
    add_basis(r, a);
    return a;
}

lookup_answer look_up(const lookup_request& r) {
    return look_up(r, read_question(r));
}

}  // namespace pelage
