#include <algorithm>

#include <pelage/trade/place_words.hpp>
#include <pelage/trade/term.hpp>

namespace pelage {

const term_on_coats* said_of(const glossary& g, const term& t, coat_class c) {
    const auto at = std::find_if(g.on_coats.begin(), g.on_coats.end(), [&](const term_on_coats& o) {
        return o.term == t.id && std::find(o.coats.begin(), o.coats.end(), c) != o.coats.end();
    });
    return at == g.on_coats.end() ? nullptr : &*at;
}

term_index::term_index(const glossary& g) : all_(g) {
    const auto add = [&](auto& to, const std::string& word, std::size_t i) {
        to.insert({detail::heard(word).core, i});
        words_.push_back(word);
    };
    for (std::size_t i = 0; i < g.terms.size(); ++i) {
        add(terms_, g.terms[i].title, i);
        for (const std::string& w : g.terms[i].words) {
            add(terms_, w, i);
        }
        for (const std::string& w : g.terms[i].asks) {
            add(terms_, w, i);
        }
    }
    for (std::size_t i = 0; i < g.asked.size(); ++i) {
        for (const std::string& w : g.asked[i].words) {
            add(asked_, w, i);
        }
    }
}

const term* term_index::find(std::string_view word) const {
    const auto at = terms_.find(detail::heard(word).core);
    return at == terms_.end() ? nullptr : &all_.terms[at->second];
}

const asked_term* term_index::asked(std::string_view word) const {
    const auto at = asked_.find(detail::heard(word).core);
    return at == asked_.end() ? nullptr : &all_.asked[at->second];
}

const term* term_index::of_zone(std::size_t zone) const {
    const auto at = std::find_if(all_.terms.begin(), all_.terms.end(),
                                 [&](const term& t) { return t.zone == zone; });
    return at == all_.terms.end() ? nullptr : &*at;
}

}  // namespace pelage
