#include "data/read/dog_findings.hpp"

#include <algorithm>

#include <fmt/format.h>

#include <pelage/base/length_text.hpp>
#include <pelage/model/hair_today.hpp>

#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

/// What the place of a finding means; null if nothing. A finding on several zones is one on each.
const selection* get_place(record& r, page& p) {
    const word w{r.get_text("zone", presence::must), r.at("zone")};
    return w.text.empty() ? nullptr : p.places.find(w, p.out);
}

/// A finding as it is written, of a word that may stand for several places.
template <class Finding>
struct written {
    const selection* whom;
    std::string word;
    Finding what;
};

/// The findings place by place: what is said of a narrower word stands.
template <class Finding, class Test>
void lay(std::vector<written<Finding>> said, const body& b, std::vector<Finding>& all, Test same) {
    std::stable_sort(said.begin(), said.end(), [](const auto& one, const auto& other) {
        return wider(*one.whom, *other.whom);
    });
    for (const written<Finding>& one : said) {
        lay_finding(all, found_on(b, *one.whom), one.what,
                    [&](const Finding& before) { return same(before, one.what); });
    }
}

/// Nothing under a mat is longer than the hair that is there.
void check_free_hair(record& r, page& p, const dog& d, const selection& whom,
                     const mat_finding& m) {
    for (const place& at : whom.places) {
        const auto now = m.free_hair ? hair_said(p.places.index(), d.now, at) : std::nullopt;
        if (now && *m.free_hair > *now) {
            r.out().add(r.at("free_hair"), errc::conflict,
                        fmt::format("more free hair under a mat than hair today; found {} under it "
                                    "at the {}, where the hair is {}; measure again",
                                    show(*m.free_hair), title(p.known.dog_body, at), show(*now)));
            return;
        }
    }
}

void check_mat(record& r, const mat_finding& m) {
    if (m.to_skin && (m.free_hair || m.comb_passes)) {
        r.out().add(
            r.at("to_skin"), errc::conflict,
            "felted to the skin leaves no free hair and no way for a comb; found both; leave "
            "one out");
    }
    if (m.comb_out && (m.grade == mat_grade::pelt || m.to_skin)) {
        r.out().add(r.at("comb_out"), errc::conflict,
                    fmt::format("a pelt, or what is felted to the skin, is never combed out; found "
                                "{}; leave it out",
                                r.out().setting("comb_out", "true")));
    }
}

}  // namespace

void get_mats(record& top, page& p, dog& d) {
    std::vector<written<mat_finding>> said;
    for (const node* n : top.get_tables("mat", presence::may)) {
        record r(*n, p.out);
        const selection* whom = get_place(r, p);
        mat_finding m;
        m.grade = r.get_name<mat_grade>("grade", presence::must, mat_names).value_or(m.grade);
        m.free_hair = r.get_length("free_hair", presence::may);
        m.to_skin = r.get_flag("to_skin");
        m.comb_passes = r.get_flag("comb_passes");
        m.comb_out = r.get_flag("comb_out");
        m.seen = r.get_day("seen", presence::may);
        m.filed = true;
        const std::string word = r.get_text("zone", presence::may);
        r.done();
        check_mat(r, m);
        if (whom == nullptr) {
            continue;
        }
        check_free_hair(r, p, d, *whom, m);
        const auto before = std::find_if(said.begin(), said.end(),
                                         [&](const auto& o) { return clash(*o.whom, *whom); });
        if (before != said.end()) {
            p.out.add(r.at("zone"), errc::duplicate,
                      fmt::format("two mats in one place; found {} and {}; write the worse one",
                                  shown(before->word), shown(word)));
            continue;
        }
        said.push_back({whom, word, m});
    }
    lay(std::move(said), p.known.dog_body, d.mats,
        [](const mat_finding&, const mat_finding&) { return true; });
}

namespace {

/// What the skin shows in a place not yet said.
std::optional<skin_finding> get_skin_state(record& r) {
    skin_finding f;
    const std::string state = r.get_choice("state", presence::must, skin_words);
    f.size = r.get_length("size", presence::may);
    f.known = r.get_flag("known");
    r.done();
    if (state.empty()) {
        return std::nullopt;
    }
    f.state = skin_state_at(static_cast<std::size_t>(
        std::find(skin_words.begin(), skin_words.end(), state) - skin_words.begin()));
    for (const std::string_view key : {"size", "known"}) {
        if (f.state != skin_state::lump && r.at(key) != r.at()) {
            r.out().add(r.at(key), errc::conflict,
                        fmt::format("only of a lump is said {}; found it beside {}; leave it out",
                                    key == "size" ? "how large it is" : "whether a vet knows it",
                                    shown(state)));
        }
    }
    return f;
}

/// Whether two findings of one place are one: several lumps may be there, of several sizes.
bool same_finding(const skin_finding& a, const skin_finding& b) {
    return a.state == b.state &&
           (a.state != skin_state::lump || (a.size == b.size && a.known == b.known));
}

}  // namespace

void get_skin(record& top, page& p, dog& d) {
    std::vector<written<skin_finding>> said;
    for (const node* n : top.get_tables("skin", presence::may)) {
        record r(*n, p.out);
        const selection* whom = get_place(r, p);
        const std::string word = r.get_text("zone", presence::may);
        const auto f = get_skin_state(r);
        if (whom == nullptr || !f) {
            continue;
        }
        if (std::any_of(said.begin(), said.end(), [&](const auto& o) {
                return same_finding(o.what, *f) && clash(*o.whom, *whom);
            })) {
            p.out.add(r.at("zone"), errc::duplicate,
                      fmt::format("the same finding twice; found {} in {} again; name it once",
                                  name(f->state), shown(word)));
            continue;
        }
        said.push_back({whom, word, *f});
    }
    lay(std::move(said), p.known.dog_body, d.skin, same_finding);
}

}  // namespace pelage::io
