#include "kit/asked_card.hpp"

#include <algorithm>
#include <string>

#include <pelage/base/phrase.hpp>

namespace pelage::asking {

namespace {

/// Whether `all` has `some` in a row.
bool has_in_a_row(const std::vector<token>& all, const std::vector<token>& some) {
    return std::search(all.begin(), all.end(), some.begin(), some.end(),
                       [](const token& a, const token& b) { return a.low == b.low; }) != all.end();
}

std::vector<const caution*> said_with(const std::vector<token>& words, const lookup_request& r) {
    std::vector<const caution*> out;
    std::vector<std::string> told;  // the same in short is told once
    for (const caution& c : r.reference.cautions) {
        const bool new_one = std::find(told.begin(), told.end(), c.brief) == told.end();
        if (new_one && has_in_a_row(tokens_of(c.brief), words)) {
            out.push_back(&c);
            told.push_back(c.brief);
        }
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const caution* a, const caution* b) { return a->danger < b->danger; });
    return out;
}

std::vector<const stop_rule*> stops_with(const std::vector<token>& words, const lookup_request& r) {
    std::vector<const stop_rule*> out;
    for (const stop_rule& s : r.reference.stops) {
        if (has_in_a_row(tokens_of(s.seen), words) || has_in_a_row(tokens_of(s.act), words)) {
            out.push_back(&s);
        }
    }
    return out;
}

/// The words behind the first colon: a card's line begins with its place.
std::vector<token> behind_its_place(const std::string& text) {
    const auto colon = text.find(':');
    return colon == std::string::npos ? std::vector<token>{} : tokens_of(text.substr(colon + 1));
}

}  // namespace

std::optional<card_asked> about_a_card(const std::vector<piece>& all,
                                       const std::vector<token>& words, const lookup_request& r) {
    constexpr std::size_t most = 4;  // more have such words than answer anything
    if (words.size() < 2 || all.size() < 2 || words.front().low == "not" ||
        (words.size() == 2 && count(all, piece_kind::stranger) == 0)) {
        return std::nullopt;
    }
    auto found = said_with(words, r);
    const auto rest = behind_its_place(r.text);
    if (found.empty() && rest.size() > 1) {
        found = said_with(rest, r);
    }
    std::vector<const stop_rule*> stops;
    if (found.empty()) {
        stops = stops_with(words, r);
    }
    if (found.size() + stops.size() == 0 || found.size() + stops.size() > most) {
        return std::nullopt;
    }
    return card_asked{std::string(detail::trimmed(r.text)), std::move(found), std::move(stops)};
}

std::optional<place_asked> places_but(const vocabulary& known, const lookup_request& r) {
    const auto opens = r.text.find("(not ");
    const auto closes = r.text.find(')', opens == std::string::npos ? 0 : opens);
    if (opens == std::string::npos || closes == std::string::npos) {
        return std::nullopt;
    }
    const auto places_in = [&](const std::string& text) {
        std::vector<place> out;
        for (const piece& p : known.pieces(tokens_of(text), r)) {
            out.insert(out.end(), p.places.begin(), p.places.end());
        }
        return out;
    };
    const std::string whole{detail::trimmed(r.text.substr(0, opens))};
    place_asked out{r.text, places_in(whole)};
    const auto gone = places_in(r.text.substr(opens + 5, closes - opens - 5));
    std::vector<place> stay;
    for (const place& p : out.places) {
        const auto is_gone = [&](side which) {
            return std::any_of(gone.begin(), gone.end(), [&](const place& g) {
                return g.zone == p.zone && (g.which == which || g.which == side::both);
            });
        };
        if (p.which != side::both) {
            if (!is_gone(p.which)) {
                stay.push_back(p);
            }
        } else if (!is_gone(side::both) && !is_gone(side::left) && !is_gone(side::right)) {
            stay.push_back(p);
        } else if (is_gone(side::left) != is_gone(side::right)) {
            stay.push_back({p.zone, is_gone(side::left) ? side::right : side::left});
        }
    }
    out.places = std::move(stay);
    return out.places.empty() || gone.empty() ? std::nullopt : std::optional{std::move(out)};
}

}  // namespace pelage::asking
