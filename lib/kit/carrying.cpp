// Which blades carry a comb, and what is never done with the things asked about.
#include <algorithm>

#include <pelage/kit/asked.hpp>

namespace pelage {

namespace {

/// Whether the rules let a comb sit on it at all.
bool carries(const lookup_request& r, const blade& b, const comb& c) {
    zone firm;
    zone_today t;
    t.where = &firm;
    return !refuse(combed(c, b, direction::with_lay), t, r.rules.refusal, r.rules.cut).has_value();
}

bool sits_on(const kit_comb& c, const std::string& blade, const kit& k) {
    return c.fits.empty() ? blade == k.under_comb
                          : std::find(c.fits.begin(), c.fits.end(), blade) != c.fits.end();
}

/// The rule whose things are all among `said`; of several the one with most.
const never_rule* never_among(const glossary& g, const std::vector<std::string>& said) {
    const never_rule* out = nullptr;
    for (const never_rule& n : g.never) {
        const bool all =
            !n.of.empty() && std::all_of(n.of.begin(), n.of.end(), [&](const auto& id) {
                return std::find(said.begin(), said.end(), id) != said.end();
            });
        if (all && (out == nullptr || n.of.size() > out->of.size())) {
            out = &n;
        }
    }
    return out;
}

/// The term of a part of the dog: what a rule about any place is of.
constexpr const char* on_a_place = "zone";

std::vector<std::string> ids_of(const std::vector<const term*>& all) {
    std::vector<std::string> out;
    for (const term* t : all) {
        out.push_back(t->id);
    }
    return out;
}

}  // namespace

carrying_answer carrying(const lookup_request& r, const carrying_asked& c) {
    carrying_answer out;
    if (r.tools.combs.empty() && r.reference.combs.empty()) {
        return out;
    }
    const comb& any =
        r.tools.combs.empty() ? r.reference.combs.front() : r.tools.combs.front().spec;
    for (const blade& b : c.under) {
        const length left =
            stated_length(combed(any, b, direction::with_lay), r.rules.cut).best - any.stated.best;
        out.asked.push_back({b, carries(r, b, any), left});
    }
    for (const kit_blade& b : r.tools.blades) {
        if (carries(r, b.spec, any)) {
            out.blades.push_back(b.spec);
        }
    }
    std::stable_partition(out.blades.begin(), out.blades.end(),
                          [&](const blade& b) { return b.id == r.tools.under_comb; });
    for (const kit_comb& one : r.tools.combs) {
        if (c.under.empty() || std::any_of(c.under.begin(), c.under.end(), [&](const blade& b) {
                return sits_on(one, b.id, r.tools);
            })) {
            out.combs.push_back(one.spec);
        }
    }
    return out;
}

const never_rule* never_of(const lookup_request& r, const terms_asked& t) {
    return never_among(words_of(r), ids_of(t.all));
}

const never_rule* never_of(const lookup_request& r, const tools_asked& t) {
    std::vector<std::string> said = ids_of(t.beside);
    if (said.empty()) {
        return nullptr;
    }
    said.emplace_back(on_a_place);
    for (const question& q : t.all) {
        if (q.what == question::form::of_length) {
            continue;
        }
        said.emplace_back(q.tool.over ? "snap-on-comb" : "blade");
        if (!q.tool.over && skips(q.tool.tool)) {
            said.emplace_back("skip-tooth-blade");
        }
    }
    return never_among(words_of(r), said);
}

const never_rule* never_of(const lookup_request& r, const place_asked& p) {
    const term_index terms(words_of(r));
    std::vector<std::string> said = ids_of(p.beside);
    if (said.empty()) {
        return nullptr;
    }
    said.emplace_back(on_a_place);
    if (p.said != nullptr) {
        said.push_back(p.said->id);
    }
    for (const place& at : p.places) {
        if (const term* t = terms.of_zone(at.zone)) {
            said.push_back(t->id);
        }
    }
    return never_among(words_of(r), said);
}

}  // namespace pelage
