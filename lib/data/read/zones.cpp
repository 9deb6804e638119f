// The zones of the dog and the seams between them.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include <fmt/format.h>

#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

constexpr std::size_t fewest_zones = 24;

constexpr std::array<std::string_view, 14> use_names{
    "jacket",      "skip-teeth",    "clean-face", "clean-feet", "pads",
    "ear-leather", "tail-band",     "sanitary",   "under-tail", "pattern-cheek",
    "never-demat", "scissors-only", "web",        "teats"};

std::uint32_t get_uses(record& r, page& p) {
    std::uint32_t uses = 0;
    for (const word& w : r.get_words("uses", presence::must)) {
        const int i = index_of(w, "use of a zone", use_names, p.out);
        uses |= i < 0 ? 0U : 1U << static_cast<unsigned>(i);
    }
    return uses;
}

void get_numbers(record& r, page& p, zone& z, const evidence& why) {
    figures f(r, p, "zones/" + z.id, &why);
    z.matting = f.must<double>("matting", over_zero(5.0));
    // with the dearest finish and size the time still fits what the planner can add up
    z.clip_time = f.must<work>("clip_time", over_zero(10.0));
    const figure<double> weight = f.must<double>("weight", over_zero(10.0));
    const double tenths = weight.best * 10.0;
    z.weight_why = weight.why;
    z.weight_tenths = static_cast<int>(std::lround(tenths));
    if (std::abs(tenths - z.weight_tenths) > 1e-9) {
        p.out.add(r.at("weight"), errc::range,
                  "a weight counts whole tenths; found a finer one; write it like 1.5");
    }
}

void get_prep(record& r, page& p, zone& z) {
    const bool prep = z.where == group::prep;
    for (const word& w : r.get_words("prep_blades", prep ? presence::must : presence::may)) {
        if (const auto id = blade_named(w, p)) {
            z.prep_blades.push_back(*id);
        }
    }
    if (!prep && r.get("prep_blades") != nullptr) {
        p.out.add(r.at("prep_blades"), errc::conflict,
                  "only prep zones have customary blades of their own; found them elsewhere; leave "
                  "prep_blades out");
    }
    if (!prep) {
        return;
    }
    z.prep_why = get_basis(r, p, "prep_basis");
    std::string all;
    for (const std::string& id : z.prep_blades) {
        all += (all.empty() ? "" : ", ") + id;
    }
    list_text(p, "zones/" + z.id + "/prep_blades", all, z.prep_why);
}

void check_sides(record& r, const zone& z, faults& out) {
    const bool sided = z.one.find("{side}") != std::string::npos;
    if (z.paired != sided) {
        out.add(r.at("one"), errc::conflict,
                "a paired zone, and no other, says what one side is called; found otherwise; write "
                "one = \"{side} ear\" there only");
    }
}

zone get_zone(record& r, page& p) {
    zone z;
    z.id = r.get_id("id");
    z.title = r.get_text("title", presence::must);
    z.one = r.get_text("one", presence::may);
    z.where = r.get_name<group>("group", presence::must, group_names).value_or(group::body);
    z.paired = r.get_flag("paired");
    z.cover = r.get_name<skin>("skin", presence::must, skin_names).value_or(skin::firm);
    z.uses = get_uses(r, p);
    z.edge_of = r.get_text("edge_of", presence::may);
    if (!z.edge_of.empty() && find(p.known.dog_body.zones, z.edge_of) == nullptr) {
        p.out.add_unknown(r.at("edge_of"), "no zone above is called so", z.edge_of,
                          ids(p.known.dog_body.zones));
    }
    z.sweep = r.get_text("sweep", presence::must);
    z.stroke = r.get_text("stroke", presence::must);
    z.against =
        r.get_text("against", z.has(zone_use::scissors_only) ? presence::may : presence::must);
    z.hold = r.get_text("hold", presence::may);
    z.hold_frail = r.get_text("hold_frail", presence::may);
    z.hazard = r.get_text("hazard", presence::may);
    z.why = get_evidence(r, p, presence::must);
    get_numbers(r, p, z, {z.why.how, z.why.from, z.why.relayed, {}});
    get_prep(r, p, z);
    r.done();
    check_sides(r, z, p.out);
    return z;
}

/// No word may mean two zones.
void check_words(const std::vector<zone>& zones, const std::vector<spot>& at, faults& out) {
    std::map<std::string, std::size_t> owner;
    for (std::size_t i = 0; i < zones.size(); ++i) {
        const std::set<std::string> own{detail::heard(zones[i].id).core,
                                        detail::heard(zones[i].title).core};
        for (const std::string& w : own) {
            if (const auto [before, is_new] = owner.emplace(w, i); !is_new) {
                out.add(at[i], errc::ambiguous,
                        fmt::format("a word that means two zones; found it for {} and {}; call one "
                                    "otherwise",
                                    shown(zones[before->second].id), shown(zones[i].id)));
            }
        }
    }
}

std::optional<std::size_t> get_end(record& r, std::string_view key,
                                   const std::vector<zone>& zones) {
    const std::string id = r.get_text(key, presence::must);
    if (id.empty()) {
        return std::nullopt;
    }
    const zone* z = find(zones, id);
    if (z == nullptr) {
        r.out().add_unknown(r.at(key), "unknown zone", id, ids(zones));
        return std::nullopt;
    }
    return static_cast<std::size_t>(z - zones.data());
}

void get_seam(record& r, page& p, body& b) {
    const auto a = get_end(r, "a", b.zones);
    const auto z = get_end(r, "b", b.zones);
    const std::string ends = a && z ? b.zones[*a].id + " to " + b.zones[*z].id : "";
    seam s;
    s.along = figures(r, p, "zones/" + ends).must<length>("along", over_zero(longest_mm));
    s.kind = r.get_name<seam_kind>("kind", presence::may, seam_names).value_or(seam_kind::blend);
    r.done();
    if (!a || !z) {
        return;
    }
    s.a = *a;
    s.b = *z;
    const bool there = std::any_of(b.seams.begin(), b.seams.end(), [&](const seam& o) {
        return (o.a == s.a && o.b == s.b) || (o.a == s.b && o.b == s.a);
    });
    if (there || s.a == s.b) {
        p.out.add(r.at(), errc::duplicate,
                  fmt::format("a seam joins two zones and is named once; found {} again or with "
                              "itself; leave it out",
                              shown(ends)));
    }
    b.seams.push_back(s);
}

void check_connected(const body& b, const std::vector<spot>& at, faults& out) {
    if (b.zones.empty()) {
        return;
    }
    std::vector<bool> reached(b.zones.size(), false);
    reached[0] = true;
    for (bool grew = true; grew;) {
        grew = false;
        for (const seam& s : b.seams) {
            if (reached[s.a] != reached[s.b]) {
                reached[s.a] = reached[s.b] = grew = true;
            }
        }
    }
    for (std::size_t i = 0; i < b.zones.size(); ++i) {
        if (!reached[i]) {
            out.add(at[i], errc::missing,
                    fmt::format("a zone that hangs in the air; found no way over seams from {} to "
                                "{}; write a [[seam]] to its neighbour",
                                shown(b.zones[0].id), shown(b.zones[i].id)));
        }
    }
}

}  // namespace

void get_zones(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    body& b = c.dog_body;
    std::vector<spot> at;
    unique_ids seen;
    for (const node* n : top.get_tables("zone", presence::must)) {
        record r(*n, p.out);
        b.zones.push_back(get_zone(r, p));
        at.push_back(r.at("id"));
        seen.add(b.zones.back().id, at.back(), "zone", p.out);
    }
    if (b.zones.size() < fewest_zones) {
        p.out.add(top.at("zone"), errc::missing,
                  fmt::format("too few zones; found {}; the trade speaks of at least {}",
                              b.zones.size(), fewest_zones));
    }
    for (const node* n : top.get_tables("seam", presence::must)) {
        record r(*n, p.out);
        get_seam(r, p, b);
    }
    top.done();
    check_words(b.zones, at, p.out);
    check_connected(b, at, p.out);
}

}  // namespace pelage::io
