#include "kit/asked_elsewhere.hpp"

#include <algorithm>
#include <initializer_list>
#include <string_view>

#include <pelage/base/length_text.hpp>
#include <pelage/model/mix.hpp>

#include "kit/asked_strangers.hpp"

namespace pelage::asking {

namespace {

using words_list = std::initializer_list<std::string_view>;

bool in(std::string_view w, words_list all) {
    return std::find(all.begin(), all.end(), w) != all.end();
}

/// The question by its words.
class by_words {
  public:
    by_words(const std::vector<piece>& all, const std::vector<token>& words)
        : all_(all), words_(words) {}

    [[nodiscard]] bool says(words_list these) const {
        return std::any_of(words_.begin(), words_.end(),
                           [&](const token& t) { return in(t.low, these); });
    }
    /// The word behind these two in a row; none where they aren't said, empty where they end it.
    [[nodiscard]] std::optional<std::string_view> behind(std::string_view a,
                                                         std::string_view b) const {
        for (std::size_t i = 1; i < words_.size(); ++i) {
            if (words_[i - 1].low == a && words_[i].low == b) {
                return i + 1 < words_.size() ? std::string_view(words_[i + 1].low)
                                             : std::string_view{};
            }
        }
        return std::nullopt;
    }
    [[nodiscard]] std::size_t count(piece_kind k) const { return asking::count(all_, k); }
    [[nodiscard]] std::size_t dogs() const {
        return count(piece_kind::breed) + count(piece_kind::coat);
    }
    /// Whether every piece is a dog, says nothing, or passes.
    template <class Test>
    [[nodiscard]] bool but_dogs_all(Test passes) const {
        return std::all_of(all_.begin(), all_.end(), [&](const piece& p) {
            return of_kind(p, piece_kind::filler) || of_kind(p, piece_kind::breed) ||
                   of_kind(p, piece_kind::coat) || passes(p);
        });
    }

  private:
    const std::vector<piece>& all_;
    const std::vector<token>& words_;
};

/// What was said of the dog, and a sheet that fits it.
void add_dog(asked_back& out, const std::vector<piece>& all, const lookup_request& r) {
    std::optional<coat_class> coat;
    if (const auto breeds = all_of(all, piece_kind::breed); breeds.size() == 1) {
        out.dog = breeds.front()->text;
        try {
            coat = expect_coat(out.dog, r.reference.genes, r.reference.coats).may_be.likeliest();
        } catch (const error&) {  // a doodle: told where it is asked about
            coat = {};
        }
    } else if (const auto coats = all_of(all, piece_kind::coat); coats.size() == 1) {
        out.coat = coat = coats.front()->coat;
    }
    const style* fits = nullptr;
    for (const style& s : r.reference.styles) {
        const bool of_it =
            !s.show && (!coat || std::find(s.coats.begin(), s.coats.end(), *coat) != s.coats.end());
        fits = of_it && (fits == nullptr || (s.adjustable && !fits->adjustable)) ? &s : fits;
    }
    out.sheet = fits != nullptr ? fits->id : std::string{};
}

/// "not a 10 on ears", "poodle without a topknot": without the word.
std::optional<asked_back> denied(const std::vector<piece>& all, const std::vector<token>& words,
                                 const lookup_request& r) {
    const by_words q(all, words);
    // "why not scissor mats" asks for the reason; of a double coat it is a no either way
    if (q.says({"why"}) || clips_double(all, r)) {
        return std::nullopt;
    }
    const bool things = std::any_of(
        all.begin(), all.end(), [](const piece& p) { return p.kind < piece_kind::telling_apart; });
    const auto no = std::find_if(all.begin(), all.end(), [&](const piece& p) {
        const bool turns = in(p.text, {"not", "don't", "dont", "without"});
        return turns && p.kind > piece_kind::breed;
    });
    if (no == all.end() || !things) {
        return std::nullopt;
    }
    asked_back out{asked_back::cause::denied, no->text, {}};
    std::string rest;
    for (const token& t : words) {
        if (t.low != no->text && t.low != "do") {
            rest += (rest.empty() ? "" : " ") + t.raw;
        }
    }
    out.readings.push_back(rest);
    return out;
}

/// "what do i sharpen first, how often oil blades": the two.
std::optional<asked_back> two_questions(const std::string& text) {
    asked_back out;
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t end = std::min(text.find_first_of(",;?", from), text.size());
        const std::string one{detail::trimmed(text.substr(from, end - from))};
        from = end + 1;
        const auto words = tokens_of(one);
        if (words.empty()) {
            continue;
        }
        if (words.size() < 2 ||
            !in(words.front().low, {"what", "how", "which", "when", "where", "why", "can", "should",
                                    "do", "does", "is", "are", "may", "whats", "what's"})) {
            return std::nullopt;
        }
        out.readings.push_back(one);
    }
    return out.readings.size() > 1 ? std::optional{out} : std::nullopt;
}

bool asks_price(const by_words& q) {
    const auto next = q.behind("how", "much");
    const bool charged = q.says({"charge", "charges"}) && (next || q.says({"you", "we"}));
    if (charged || q.says({"price", "prices", "pricing", "cost", "costs", "fee", "fees"})) {
        return true;
    }
    const bool of_hair =
        q.says({"leave", "leaves", "left", "off", "longer", "shorter", "hair", "time", "oil",
                "water", "come", "comes", "stay", "lower", "higher"});
    return next && !of_hair && q.count(piece_kind::tool) == 0 &&
           in(*next, {"", "for", "to", "is", "are", "a", "an", "the"});
}

bool asks_minutes(const std::vector<piece>& all, const by_words& q) {
    const bool of_a_style = std::any_of(all.begin(), all.end(), [](const piece& p) {
        return of_kind(p, piece_kind::term) && p.means->kind == term_kind::style;
    });
    const bool other =
        q.says({"grow",  "grows", "regrow", "growing", "back",   "between", "until",
                "till",  "keep",  "wait",   "leave",   "leaves", "left",    "last",
                "lasts", "stay",  "stays",  "hair",    "coat",   "be",      "should"});
    if (other || q.count(piece_kind::tool) + q.count(piece_kind::place) > 0 ||
        q.dogs() + q.count(piece_kind::term) + q.count(piece_kind::terms_asked) == 0) {
        return false;
    }
    const auto next = q.behind("how", "long");
    const bool takes = q.says({"take", "takes", "taking", "need", "needs"});
    const bool in_words = q.behind("how", "many") == "minutes" || q.behind("how", "much") == "time";
    return in_words || (next && (takes || *next == "for" || (next->empty() && !of_a_style)));
}

/// "when should my poodle be back", "how often doodle".
bool asks_when_back(const by_words& q) {
    const auto of_return = [](const piece& p) {
        return in(p.text, {"back", "come", "coming", "due", "return", "returning", "next", "again",
                           "visit", "appointment", "booked", "book"});
    };
    const bool when = q.says({"when"}) && q.but_dogs_all(of_return) &&
                      (q.dogs() > 0 || q.says({"back", "due", "return"}));
    const bool often =
        q.behind("how", "often") && q.dogs() > 0 &&
        q.but_dogs_all([&](const piece& p) { return of_return(p) || p.text == "how often"; });
    return when || often;
}

/// "yorkie 4 wks": the wait as it was said; empty of any other.
std::string only_weeks(const by_words& q, const std::vector<token>& words) {
    std::string said;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& w = words[i].low;
        const auto digits = w.find_first_not_of("0123456789");
        const bool number = digits == std::string::npos;
        const std::string_view unit =
            number ? i + 1 < words.size() ? std::string_view(words[i + 1].low) : std::string_view{}
                   : std::string_view(w).substr(digits);
        if (digits != 0 && in(unit, {"wk", "wks", "week", "weeks"})) {
            said = w.substr(0, std::min(digits, w.size())) + "w";
        }
    }
    const bool else_ = !q.but_dogs_all([&](const piece& p) {
        const bool number = of_kind(p, piece_kind::tool) || of_kind(p, piece_kind::stranger);
        return number && (detail::is_digit(p.text.front()) ||
                          in(p.text, {"wk", "wks", "week", "weeks", "every"}));
    });
    return else_ ? std::string{} : said;
}

/// "blade for schnauzer": nothing else is said. Of a double coat the answer is that it isn't clipped.
bool asks_part(const std::vector<piece>& all, const by_words& q, const lookup_request& r) {
    const auto is_blade = [](const piece& p) {
        return of_kind(p, piece_kind::term) && p.means->id == "blade";
    };
    const auto breeds = all_of(all, piece_kind::breed);
    if (breeds.size() != 1 || q.dogs() != 1 || std::none_of(all.begin(), all.end(), is_blade) ||
        !q.but_dogs_all(is_blade)) {
        return false;
    }
    try {
        return !double_coated(
            expect_coat(breeds.front()->text, r.reference.genes, r.reference.coats)
                .may_be.likeliest());
    } catch (const error&) {  // asked back by its own name
        return false;
    }
}

}  // namespace

std::optional<asked_back> asked_elsewhere(const std::vector<piece>& all,
                                          const std::vector<token>& words,
                                          const lookup_request& r) {
    if (auto two = two_questions(r.text)) {
        return two;
    }
    if (auto no = denied(all, words, r)) {
        return no;
    }
    const by_words q(all, words);
    asked_back out;
    if (asks_price(q)) {
        out.why = asked_back::cause::price;
    } else if (asks_minutes(all, q)) {
        out.why = asked_back::cause::minutes;
    } else if (asks_when_back(q)) {
        out.why = asked_back::cause::due;
    } else if (asks_part(all, q, r)) {
        out.why = asked_back::cause::part;
    } else if (out.word = only_weeks(q, words); !out.word.empty()) {
        out.why = asked_back::cause::weeks;
    } else {
        return std::nullopt;
    }
    add_dog(out, all, r);
    return out;
}

namespace {

/// The caution that is shown of such a dog; of the heart that of whatever faints.
caution_when shown_when(ailment_kind k) {
    const std::string_view called = k == ailment_kind::heart ? name(caution_when::faints) : name(k);
    const auto at = std::find(caution_when_names.begin(), caution_when_names.end(), called);
    return static_cast<caution_when>(at - caution_when_names.begin());
}

/// Whether the word is one of a phrase for a sign of the stop list that stands in what is said.
bool of_a_sign(const std::string& word, const std::string& said, const ailments& by) {
    const auto phrase_has = [&](const std::string& phrase) {
        const bool open = phrase.back() == '*';
        const std::string whole = open ? phrase.substr(0, phrase.size() - 1) : phrase;
        const std::string last = whole.substr(whole.rfind(' ') + 1);
        return said.find(whole) != std::string::npos &&
               ((" " + whole + " ").find(" " + word + " ") != std::string::npos ||
                (open && word.starts_with(last)));
    };
    return std::any_of(by.signs.begin(), by.signs.end(), [&](const sign_words& s) {
        return std::any_of(s.seen.begin(), s.seen.end(), phrase_has);
    });
}

std::string without(const std::vector<token>& words, std::string_view gone) {
    std::string out;
    for (const token& t : words) {
        out += t.low == gone ? "" : t.low + " ";
    }
    return out;
}

}  // namespace

std::optional<health_asked> about_health(const std::vector<piece>& all,
                                         const std::vector<token>& words, const vocabulary& vocab,
                                         const lookup_request& r) {
    const ailments& by = r.reference.told_health;
    const auto known = [&](const std::string& text) { return read_health(text, {}, by).known; };
    const std::string said = words_of(words, 0, words.size());
    // a blade that is too hot is no dog that is, a collapsed windpipe no dog that fell
    const bool of_another = std::any_of(words.begin(), words.end(), [](const token& t) {
        return in(t.low, {"blade", "blades", "clipper", "clippers", "dryer", "comb", "water",
                          "bath", "how", "trachea", "windpipe"});
    });
    const std::vector<stop_sign> seen =
        of_another ? std::vector<stop_sign>{} : read_health(said, {}, by).seen;
    auto found = known(said);
    std::erase(found, ailment_kind::first);
    const auto misspelt_place = [&](const std::string& word) {  // "stiffle" isn't stiff
        const auto near = vocab.near(word);
        return std::any_of(near.begin(), near.end(),
                           [&](const std::string& n) { return vocab.places().find(n) != nullptr; });
    };
    const auto tells = [&](const std::string& word) {
        const auto listed = [&](const std::vector<std::string>& of) {
            return std::find(of.begin(), of.end(), word) != of.end();
        };
        const std::string rest = without(words, word);
        return !known(word).empty() || known(rest).size() < known(said).size() ||
               listed(by.beside) || listed(by.how_bad) || in(word, {"bitch", "female", "girl"});
    };
    const bool all_told = std::all_of(all.begin(), all.end(), [&](const piece& p) {
        const bool of_care = of_kind(p, piece_kind::term) &&
                             (p.means->kind == term_kind::care || p.means->kind == term_kind::harm);
        return of_kind(p, piece_kind::filler) || of_kind(p, piece_kind::joining) ||
               of_kind(p, piece_kind::breed) || of_kind(p, piece_kind::coat) || of_care ||
               (tells(p.text) && !misspelt_place(p.text)) ||
               (!seen.empty() && of_a_sign(p.text, said, by));
    });
    const bool told = !found.empty() && count(all, piece_kind::stranger) > 0;
    if (!all_told || (!told && seen.empty())) {
        return std::nullopt;
    }
    health_asked out{said, {}, {}, {}};
    for (const stop_rule& s : r.reference.stops) {
        if (std::find(seen.begin(), seen.end(), s.sign) != seen.end()) {
            out.stops.push_back(&s);
        }
    }
    for (const caution& c : r.reference.cautions) {
        if (std::any_of(found.begin(), found.end(),
                        [&](ailment_kind k) { return shown_when(k) == c.when; })) {
            out.all.push_back(&c);
        }
    }
    for (const piece* p : all_of(all, piece_kind::term)) {
        if (!tells(p->text) && out.stops.empty()) {  // "in heat" is no hot blade
            out.beside.push_back(p->means);
        }
    }
    return out.all.empty() && out.stops.empty() ? std::nullopt : std::optional{out};
}

void felted_to_the_skin(std::vector<piece>& all, const glossary& g) {
    const auto mat = std::find_if(all.begin(), all.end(), [](const piece& p) {
        return of_kind(p, piece_kind::term) && p.means->id == "mat";
    });
    const auto skin = std::find_if(mat, all.end(), [](const piece& p) {
        return of_kind(p, piece_kind::filler) && p.text == "skin";
    });
    const bool to_it =
        skin != all.end() && std::any_of(mat, skin, [](const piece& p) { return p.text == "to"; });
    if (!to_it) {
        return;
    }
    for (const char* id : {"pelt", "free-hair"}) {
        const term* t = find(g.terms, id);
        all.push_back({piece_kind::term, t->title, {}, t});
    }
}

}  // namespace pelage::asking
