// What dogs are booked for.
#include <algorithm>
#include <set>

#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

/// Who has a word already; a word has one meaning.
using words_taken = std::set<std::string, std::less<>>;

void get_service_words(record& r, words_taken& owners, service& to) {
    std::vector<word> all = r.get_words("words", presence::may);
    for (const word& w : all) {
        to.words.push_back(w.text);
    }
    all.push_back({to.title, r.at("title")});
    all.push_back({std::string(name(to.kind)), r.at("id")});
    for (const word& w : all) {
        if (!owners.insert(w.text).second) {
            r.out().add(w.at, errc::ambiguous,
                        "a word for a service has one meaning; found " + named(w.text) +
                            " twice; leave it out of one");
        }
    }
}

template <class Enum, std::size_t n>
void get_names(record& r, std::string_view key, std::string_view what,
               const std::array<std::string_view, n>& names, std::vector<Enum>& to) {
    for (const word& w : r.get_words(key, presence::must)) {
        const int i = index_of(w, what, names, r.out());
        if (i >= 0) {
            to.push_back(static_cast<Enum>(i));
        }
    }
}

void get_service_zones(record& r, const body& b, service& to) {
    for (const word& w : r.get_words("zones", presence::must)) {
        const zone* z = find(b.zones, w.text);
        if (w.text == "all") {
            to.whole = true;
        } else if (z == nullptr) {
            r.out().add_unknown(w.at, "unknown zone", w.text, ids(b.zones));
        } else {
            to.zones.push_back(static_cast<std::size_t>(z - b.zones.data()));
        }
    }
}

service get_service(record& r, page& p, words_taken& owners) {
    service s;
    s.kind = r.get_name<service_kind>("id", presence::must, service_names).value_or(s.kind);
    s.title = r.get_text("title", presence::must);
    get_service_words(r, owners, s);
    s.text = r.get_text("text", presence::must, text_kind::prose);
    get_service_zones(r, p.known.dog_body, s);
    get_names(r, "steps", "step of a service", service_step_names, s.steps);
    get_names(r, "stops", "clock", service_clock_names, s.stops);
    s.why = get_evidence(r, p, presence::must);
    if (!std::is_sorted(s.steps.begin(), s.steps.end()) ||
        std::adjacent_find(s.steps.begin(), s.steps.end()) != s.steps.end()) {
        p.out.add(r.at("steps"), errc::conflict,
                  "steps stand in the order in which they are done, each once; found others; write "
                  "them as "
                  "services.toml says");
    }
    r.done();
    return s;
}

}  // namespace

void get_services(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    words_taken owners;
    for (const node* n : top.get_tables("service", presence::must)) {
        record r(*n, p.out);
        service s = get_service(r, p, owners);
        if (static_cast<std::size_t>(s.kind) != c.services.size()) {
            p.out.add(r.at("id"), errc::conflict,
                      "services stand in one order, each once; found " + named(name(s.kind)) +
                          " out of its place");
        }
        c.services.push_back(std::move(s));
    }
    if (c.services.size() < service_names.size()) {
        p.out.add(top.at(), errc::missing,
                  "the services lack " + named(service_names[c.services.size()]));
    }
    top.done();
}

}  // namespace pelage::io
