// Inheritance and breeds of the reference.
#include <algorithm>

#include <fmt/format.h>

#include <pelage/model/mix.hpp>

#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

template <std::size_t size>
std::optional<std::size_t> next_of(record& r, std::string_view what, std::size_t place,
                                   const std::array<std::string_view, size>& names) {
    const std::string id = r.get_text("id", presence::must);
    if (id.empty()) {
        return std::nullopt;
    }
    const int i = index_of({id, r.at("id")}, what, names, r.out());
    if (i >= 0 && static_cast<std::size_t>(i) != place) {
        r.out().add(r.at("id"), errc::conflict,
                    fmt::format("each {} stands once, in one order; found {} in place {}; right is "
                                "{}",
                                what, shown(id), place + 1,
                                place < size ? names[place] : "no more of them"));
    }
    return i < 0 ? std::nullopt : std::optional{static_cast<std::size_t>(i)};
}

template <std::size_t size>
void check_all(record& top, std::string_view key, std::size_t found,
               const std::array<std::string_view, size>& names) {
    if (found < size) {
        top.out().add(top.at(key), errc::missing,
                      fmt::format("[[{}]] is missing; found {}; right are all {} from {} to {}",
                                  key, found, size, names.front(), names.back()));
    }
}

std::vector<coat_class> get_classes(record& r, std::string_view key, presence there) {
    std::vector<coat_class> out;
    for (const word& w : r.get_words(key, there)) {
        if (const int i = index_of(w, "coat", coat_names, r.out()); i >= 0) {
            out.push_back(static_cast<coat_class>(i));
        }
    }
    return out;
}

void get_loci(record& top, page& p, heredity& h) {
    std::size_t place = 0;
    for (const node* n : top.get_tables("locus", presence::must)) {
        record r(*n, p.out);
        const auto i = next_of(r, "locus", place++, locus_names);
        locus_facts f{r.get_text("gene", presence::must), r.get_text("says", presence::must),
                      get_evidence(r, p, presence::must)};
        r.done();
        if (i) {
            list_text(p, "inheritance/" + std::string(locus_names[*i]), f.says, f.why);
            h.loci[*i] = std::move(f);
        }
    }
    check_all(top, "locus", place, locus_names);
}

std::string coats_joined(const std::vector<coat_class>& classes) {
    std::string out;
    for (const coat_class c : classes) {
        out += (out.empty() ? "" : ", ") + std::string(name(c));
    }
    return out;
}

void get_types(record& top, page& p, heredity& h) {
    std::size_t place = 0;
    for (const node* n : top.get_tables("type", presence::must)) {
        record r(*n, p.out);
        const auto i = next_of(r, "type", place++, coat_type_names);
        type_facts f{r.get_text("title", presence::must), get_classes(r, "classes", presence::must),
                     get_classes(r, "one_copy", presence::may), get_evidence(r, p, presence::must)};
        r.done();
        if (f.classes.empty() && r.at("classes") != r.at()) {
            p.out.add(r.at("classes"), errc::missing,
                      "a type stands for one class at least; found none; write classes = "
                      "[\"wavy\"]");
        }
        if (i) {
            list_text(p, "inheritance/" + std::string(coat_type_names[*i]), coats_joined(f.classes),
                      f.why);
            h.types[*i] = std::move(f);
        }
    }
    check_all(top, "type", place, coat_type_names);
}

void get_practice(record& top, page& p, heredity& h) {
    unique_ids seen;
    for (const node* n : top.get_tables("practice", presence::may)) {
        record r(*n, p.out);
        practice_rule rule;
        rule.id = r.get_id("id");
        seen.add(rule.id, r.at("id"), "rule", p.out);
        rule.cell = {r.get_count("long_hair", 0, 2, 0), r.get_flag("furnished"),
                     r.get_count("curl", 0, 2, 0)};
        rule.coats = get_classes(r, "coats", presence::must);
        rule.text = r.get_text("text", presence::must);
        rule.why = get_evidence(r, p, presence::must);
        r.done();
        if (rule.coats.empty() && r.at("coats") != r.at()) {
            p.out.add(r.at("coats"), errc::missing,
                      "practice knows one coat at least; found none; write coats = [\"wavy\"]");
        }
        list_text(p, "inheritance/" + rule.id, coats_joined(rule.coats), rule.why);
        h.practice.push_back(std::move(rule));
    }
}

void get_signs(record& top, page& p, heredity& h) {
    std::size_t place = 0;
    for (const node* n : top.get_tables("sign", presence::must)) {
        record r(*n, p.out);
        const auto i = next_of(r, "sign", place++, sign_names);
        coat_sign s{std::string(i ? sign_names[*i] : ""), r.get_text("text", presence::must),
                    get_evidence(r, p, presence::must)};
        r.done();
        if (i) {
            h.signs[*i] = std::move(s);
        }
    }
    check_all(top, "sign", place, sign_names);
}

/// A name as mixes are read: lower case, single blanks, no hyphens, digits or words of the mix itself.
void check_name(const word& w, page& p) {
    if (!is_mix_name(w.text)) {
        p.out.add(
            w.at, errc::syntax,
            fmt::format("not a name that a mix can hold; found {}; write it in lower case with "
                        "blanks for hyphens, without digits, x, cross, to, back or genotype",
                        shown(w.text)));
    }
}

std::vector<std::string> get_names(record& r, page& p, std::string_view key) {
    std::vector<std::string> out;
    for (word& w : r.get_words(key, presence::may)) {
        check_name(w, p);
        out.push_back(std::move(w.text));
    }
    return out;
}

void get_breed(record& r, page& p, heredity& h, unique_ids& seen) {
    breed b;
    b.id = r.get_text("id", presence::must);
    const spot at = r.at("id");
    if (!b.id.empty()) {
        check_name({b.id, at}, p);
    }
    seen.add(b.id, at, "breed", p.out);
    b.coat = r.get_name<coat_class>("coat", presence::must, coat_names).value_or(b.coat);
    b.also = get_names(r, p, "also");
    b.sizes = get_names(r, p, "sizes");
    b.why = get_evidence(r, p, presence::must);
    const std::string prefix = "breeds/" + b.id;
    list_text(p, prefix + "/coat", std::string(name(b.coat)), b.why);
    figures f(r, p, prefix, &b.why);
    b.frequency = {f.must<double>("long_hair", from_zero(1.0)),
                   f.must<double>("furnishings", from_zero(1.0)),
                   f.must<double>("curl", from_zero(1.0))};
    r.done();
    h.breeds.push_back(std::move(b));
}

named_cross get_cross(record& r, page& p, const heredity& h, unique_ids& seen) {
    named_cross c;
    c.id = r.get_text("id", presence::must);
    if (!c.id.empty()) {
        check_name({c.id, r.at("id")}, p);
    }
    seen.add(c.id, r.at("id"), "breed", p.out);
    c.mix = r.get_text("mix", presence::must);
    c.why = get_evidence(r, p, presence::must);
    r.done();
    try {
        // `h` has no crosses yet: one named within another would lead in circles
        if (!c.mix.empty() && read_mix(c.mix, h).dog.depth != 1) {
            p.out.add(
                r.at("mix"), errc::conflict,
                fmt::format("a named cross is of two breeds; found {}; write it like \"poodle "
                            "x beagle\"",
                            shown(c.mix)));
        }
    } catch (const bad_input& wrong) {
        for (const diagnostic& d : wrong.all()) {
            p.out.add(r.at("mix"), d.code, d.text);
        }
    }
    return c;
}

short_word get_short(record& r, page& p, unique_ids& seen) {
    short_word s;
    s.word = r.get_text("word", presence::must);
    if (!s.word.empty()) {
        check_name({s.word, r.at("word")}, p);
    }
    seen.add(s.word, r.at("word"), "short word", p.out);
    s.means = r.get_text("means", presence::must);
    s.why = get_evidence(r, p, presence::must);
    r.done();
    return s;
}

/// Words that are asked back; none of them may name a breed or a cross as well.
asked_breed get_asked(record& r, page& p, const heredity& h) {
    asked_breed a;
    a.words = get_names(r, p, "words");
    a.endings = get_names(r, p, "endings");
    a.wrong = r.get_text("wrong", presence::must);
    a.right = r.get_text("right", presence::may);
    a.why = get_evidence(r, p, presence::must);
    r.done();
    for (const std::string& w : a.words) {
        const bool cross = std::any_of(h.crosses.begin(), h.crosses.end(),
                                       [&](const named_cross& c) { return c.id == w; });
        const bool breed = std::any_of(h.breeds.begin(), h.breeds.end(), [&](const auto& b) {
            return b.id == w || std::find(b.also.begin(), b.also.end(), w) != b.also.end();
        });
        if (cross || breed) {
            p.out.add(
                r.at("words"), errc::ambiguous,
                fmt::format("a word that is asked back names a breed as well; found {}; leave "
                            "it out of one",
                            shown(w)));
        }
    }
    return a;
}

}  // namespace

void get_inheritance(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    get_loci(top, p, c.genes);
    get_types(top, p, c.genes);
    get_practice(top, p, c.genes);
    get_signs(top, p, c.genes);
    top.done();
}

void get_breeds(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    unique_ids seen;
    for (const node* n : top.get_tables("breed", presence::must)) {
        record r(*n, p.out);
        get_breed(r, p, c.genes, seen);
    }
    std::vector<named_cross> crosses;
    for (const node* n : top.get_tables("cross", presence::may)) {
        record r(*n, p.out);
        crosses.push_back(get_cross(r, p, c.genes, seen));
    }
    c.genes.crosses = std::move(crosses);
    unique_ids shorts;
    for (const node* n : top.get_tables("short", presence::may)) {
        record r(*n, p.out);
        c.genes.shorts.push_back(get_short(r, p, shorts));
    }
    for (const node* n : top.get_tables("asked", presence::may)) {
        record r(*n, p.out);
        c.genes.asked.push_back(get_asked(r, p, c.genes));
    }
    top.done();
}

}  // namespace pelage::io
