// The words of the trade.
#include <algorithm>
#include <map>
#include <utility>

#include <pelage/data/embedded.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/trade/place_words.hpp>

#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

/// Who has a word already; a word has one meaning.
class term_owners {
  public:
    /// A word that is asked back may be that of one of the terms it means, `its`.
    void add_asked(const word& w, const std::vector<std::string>& its, faults& out) {
        const auto before = owner_.find(detail::heard(w.text).core);
        if (before == owner_.end() ||
            std::find(its.begin(), its.end(), before->second) == its.end()) {
            add(w, w.text, out);
        }
    }
    void add(const word& w, const std::string& owner, faults& out) {
        const detail::heard_place h = detail::heard(w.text);
        if (h.core.empty() || h.which != side::both) {
            out.add(w.at, errc::syntax,
                    "a word of the trade has no side; found " + shown(w.text) +
                        "; leave left and right out");
            return;
        }
        if (const auto [before, is_new] = owner_.emplace(h.core, owner); !is_new) {
            out.add(w.at, errc::ambiguous,
                    "a word has one meaning; found " + shown(w.text) + " of " +
                        shown(before->second) + " and of " + shown(owner) +
                        "; leave it out of one, or write it under [[asked]]");
        }
    }

  private:
    std::map<std::string, std::string> owner_;
};

/// Ids that a record names, looked up when all are read.
struct named_later {
    std::vector<word> ids;
    void add(const std::vector<word>& more) { ids.insert(ids.end(), more.begin(), more.end()); }
};

void get_zone_of(record& r, const body& b, term& to) {
    const std::string id = r.get_text("zone", presence::may);
    if (id.empty()) {
        return;
    }
    const zone* z = find(b.zones, id);
    if (z == nullptr) {
        r.out().add_unknown(r.at("zone"), "unknown zone", id, ids(b.zones));
        return;
    }
    to.zone = static_cast<std::size_t>(z - b.zones.data());
    if (to.kind != term_kind::place) {
        r.out().add(r.at("kind"), errc::conflict,
                    "a zone is a place; found " + named(name(to.kind)) + "; write \"place\"");
    }
}

/// What an owner calls the zone; of a paired one, a side of it too.
void get_plain_name(record& r, const body& b, term& to) {
    to.plain = r.get_text("plain", presence::may);
    to.plain_one = r.get_text("plain_one", presence::may);
    const bool paired = to.zone && b.zones[*to.zone].paired;
    if (to.plain.empty() && to.plain_one.empty()) {
        return;
    }
    if (!to.zone) {
        r.out().add(r.at("plain"), errc::conflict,
                    "only a zone has a plain name; found one of " + shown(to.title) +
                        "; write zone too, or leave it out");
    } else if (to.plain.empty() || to.plain_one.empty() == paired ||
               (paired && to.plain_one.find("{side}") == std::string::npos)) {
        r.out().add(r.at("plain"), errc::missing,
                    std::string(paired ? "a paired zone has both plain names, plain_one with "
                                         "\"{side}\" in it"
                                       : "a zone that isn't paired has plain alone") +
                        "; found it otherwise of " + shown(to.title) + "; write " +
                        (paired ? "plain = \"knees\" and plain_one = \"{side} knee\""
                                : "plain = \"start of the tail\""));
    }
}

term get_term(record& r, page& p, term_owners& owners, named_later& later) {
    term t;
    t.id = r.get_id("id");
    t.title = r.get_text("title", presence::must);
    owners.add({t.title, r.at("title")}, t.title, r.out());
    const std::vector<word> words = r.get_words("words", presence::may);
    for (const word& w : words) {
        owners.add(w, t.title, r.out());
    }
    t.words = texts_of(words);
    t.kind = r.get_name<term_kind>("kind", presence::must, term_kind_names).value_or(t.kind);
    t.text = r.get_text("text", presence::must, text_kind::prose);
    get_zone_of(r, p.known.dog_body, t);
    get_plain_name(r, p.known.dog_body, t);
    t.skin = r.get_text("skin", t.zone ? presence::must : presence::may, text_kind::prose);
    if (!t.zone && !t.skin.empty()) {
        r.out().add(r.at("skin"), errc::conflict,
                    "only a zone has skin; found it beside " + shown(t.title) +
                        "; write zone too, or leave it out");
    }
    const bool own_blades = t.zone && !p.known.dog_body.zones[*t.zone].prep_blades.empty();
    t.usual = r.get_text("usual", t.zone && !own_blades ? presence::must : presence::may);
    if (!t.usual.empty() && own_blades) {
        r.out().add(r.at("usual"), errc::conflict,
                    "a zone with blades of its own has its usual tools there; found them beside " +
                        shown(t.title) + "; leave them out");
    }
    t.clips = r.get_flag("clips");
    later.ids = r.get_words("see", presence::may);
    t.see = texts_of(later.ids);
    const std::vector<word> parts = r.get_words("parts", presence::may);
    later.add(parts);
    t.parts = texts_of(parts);
    const std::vector<word> asks = r.get_words("asks", presence::may);
    for (const word& w : asks) {
        owners.add(w, t.title, r.out());
    }
    t.asks = texts_of(asks);
    t.sheets = texts_of(r.get_words("sheets", presence::may));
    t.why = get_evidence(r, p, presence::must);
    r.done();
    return t;
}

asked_term get_asked(record& r, page& p, const glossary& g, term_owners& owners,
                     named_later& later) {
    asked_term a;
    const std::vector<word> words = r.get_words("words", presence::must);
    later.ids = r.get_words("means", presence::must);
    a.means = texts_of(later.ids);
    std::vector<std::string> its;
    for (const std::string& id : a.means) {
        const term* t = find(g.terms, id);
        its.push_back(t == nullptr ? "" : t->title);
    }
    for (const word& w : words) {
        owners.add_asked(w, its, r.out());
    }
    a.words = texts_of(words);
    const auto one_of_them = [&](const char* key) {
        std::string id = r.get_text(key, presence::may);
        if (!id.empty() && std::find(a.means.begin(), a.means.end(), id) == a.means.end()) {
            r.out().add_unknown(r.at(key), "none of what it means", id, a.means);
        }
        return id;
    };
    a.doing = one_of_them("doing");
    a.there = one_of_them("there");
    a.why = get_evidence(r, p, presence::must);
    r.done();
    return a;
}

never_rule get_never(record& r, page& p, named_later& later) {
    never_rule n;
    n.text = r.get_text("text", presence::must);
    n.instead = r.get_text("instead", presence::must, text_kind::prose);
    later.ids = r.get_words("of", presence::may);
    n.of = texts_of(later.ids);
    n.why = get_evidence(r, p, presence::must);
    r.done();
    return n;
}

term_on_coats get_on_coats(record& r, page& p, const glossary& g) {
    term_on_coats o;
    o.term = r.get_text("term", presence::must);
    if (!o.term.empty() && find(g.terms, o.term) == nullptr) {
        r.out().add_unknown(r.at("term"), "unknown term", o.term, ids(g.terms));
    }
    for (const word& w : r.get_words("coats", presence::must)) {
        const int i = index_of(w, "coat", coat_names, r.out());
        if (i < 0) {
            continue;
        }
        const auto c = static_cast<coat_class>(i);
        const bool twice = std::find(o.coats.begin(), o.coats.end(), c) != o.coats.end() ||
                           std::any_of(g.on_coats.begin(), g.on_coats.end(), [&](const auto& b) {
                               return b.term == o.term &&
                                      std::find(b.coats.begin(), b.coats.end(), c) != b.coats.end();
                           });
        if (twice) {
            r.out().add(w.at, errc::duplicate,
                        "of a term one thing is said on a coat; found " + shown(w.text) +
                            " again; leave it out of one");
        }
        o.coats.push_back(c);
    }
    o.text = r.get_text("text", presence::must, text_kind::prose);
    o.why = get_evidence(r, p, presence::must);
    r.done();
    return o;
}

/// Each wording of a card is read in one way.
card_line get_line(record& r, page& p, std::vector<std::string>& before) {
    card_line l;
    for (const word& w : r.get_words("said", presence::must)) {
        if (std::find(before.begin(), before.end(), w.text) != before.end()) {
            r.out().add(w.at, errc::duplicate,
                        "words of a card are read in one way; found " + shown(w.text) +
                            " again; leave it out of one");
        }
        before.push_back(w.text);
        l.said.push_back(w.text);
    }
    l.text = r.get_text("text", presence::must, text_kind::prose);
    l.why = get_evidence(r, p, presence::must);
    r.done();
    return l;
}

/// Every zone is explained, and none twice.
void check_zones(const glossary& g, const body& b, const spot& at, faults& out) {
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        std::size_t n = 0;
        for (const term& t : g.terms) {
            n += t.zone == z ? 1U : 0U;
        }
        if (n != 1) {
            out.add(at, n == 0 ? errc::missing : errc::duplicate,
                    "each zone has one term; found " + std::to_string(n) + " of " +
                        named(b.zones[z].id) + "; write one with zone = " + named(b.zones[z].id));
        }
    }
}

void get_glossary(const node& root, page& p, glossary& g) {
    record top(root, p.out);
    check_format(top);
    term_owners owners;
    std::vector<named_later> later;
    for (const node* n : top.get_tables("term", presence::must)) {
        record r(*n, p.out);
        term t = get_term(r, p, owners, later.emplace_back());
        if (find(g.terms, t.id) != nullptr) {
            p.out.add(r.at("id"), errc::duplicate,
                      "an id is given once; found " + shown(t.id) + " again; write another");
        }
        g.terms.push_back(std::move(t));
    }
    for (const node* n : top.get_tables("asked", presence::may)) {
        record r(*n, p.out);
        g.asked.push_back(get_asked(r, p, g, owners, later.emplace_back()));
    }
    for (const node* n : top.get_tables("never", presence::may)) {
        record r(*n, p.out);
        g.never.push_back(get_never(r, p, later.emplace_back()));
    }
    for (const node* n : top.get_tables("on_coats", presence::may)) {
        record r(*n, p.out);
        g.on_coats.push_back(get_on_coats(r, p, g));
    }
    std::vector<std::string> said;
    for (const node* n : top.get_tables("line", presence::may)) {
        record r(*n, p.out);
        g.lines.push_back(get_line(r, p, said));
    }
    for (const named_later& l : later) {
        for (const word& w : l.ids) {
            if (find(g.terms, w.text) == nullptr) {
                p.out.add_unknown(w.at, "unknown term", w.text, ids(g.terms));
            }
        }
    }
    check_zones(g, p.known.dog_body, top.at(), p.out);
    top.done();
}

constexpr std::string_view embedded_as = "reference/glossary.toml";

glossary read_embedded_glossary() {
    for (const embedded_file& f : embedded_reference()) {
        if (f.path == embedded_as) {
            return read_glossary({std::string(f.path), std::string(f.text)}, reference());
        }
    }
    throw error(errc::internal, "the embedded data has no glossary");
}

}  // namespace

glossary read_glossary(const document_text& d, const reference_data& c) {
    glossary g;
    diagnostics wrong;
    read_text(d, wrong, [&](const node& root, faults& out) {
        place_finder places(c.dog_body);
        page p{out, c, places};
        get_glossary(root, p, g);
    });
    throw_if_any(std::move(wrong));
    return g;
}

const glossary& trade_words() {
    static const glossary all = read_embedded_glossary();
    return all;
}

}  // namespace pelage::io
