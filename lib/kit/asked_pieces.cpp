#include "kit/asked_pieces.hpp"

#include <algorithm>
#include <array>

#include <pelage/base/suggest.hpp>

#include "model/mix_words.hpp"

namespace pelage::asking {

std::size_t count(const std::vector<piece>& all, piece_kind k) {
    return static_cast<std::size_t>(
        std::count_if(all.begin(), all.end(), [&](const piece& p) { return of_kind(p, k); }));
}

std::vector<const piece*> all_of(const std::vector<piece>& all, piece_kind k) {
    std::vector<const piece*> out;
    for (const piece& p : all) {
        if (of_kind(p, k)) {
            out.push_back(&p);
        }
    }
    return out;
}

namespace {

constexpr std::size_t longest_phrase = 8;  // words; no word of the trade has more
constexpr std::size_t longest_word = 48;

template <std::size_t n>
bool among(std::string_view w, const std::array<std::string_view, n>& all) {
    return std::find(all.begin(), all.end(), w) != all.end();
}

constexpr std::array<std::string_view, 3> articles{"the", "a", "an"};

/// Words that a question is made of and that say nothing by themselves.
bool says_nothing(std::string_view w) {
    constexpr auto all = std::to_array<std::string_view>(
        {"what",    "whats",    "what's",    "is",      "are",     "a",        "an",
         "the",     "does",     "do",        "did",     "i",       "me",       "my",
         "we",      "you",      "your",      "on",      "for",     "in",       "of",
         "at",      "to",       "how",       "which",   "who",     "where",    "wheres",
         "mean",    "means",    "meaning",   "use",     "used",    "using",    "can",
         "could",   "should",   "would",     "may",     "must",    "it",       "its",
         "this",    "that",     "with",      "by",      "go",      "goes",     "going",
         "clip",    "clipping", "clipped",   "cutting", "groom",   "grooming", "take",
         "get",     "put",      "leave",     "leaves",  "leaving", "left",     "please",
         "pls",     "dog",      "dogs",      "best",    "need",    "about",    "tell",
         "explain", "know",     "when",      "why",     "thin",    "thick",    "skin",
         "hold",    "holding",  "there",     "be",      "ok",      "okay",     "safe",
         "hair",    "size",     "length",    "long",    "short",   "him",      "her",
         "his",     "one",      "under",     "over",    "onto",    "beneath",  "underneath",
         "too",     "much",     "many",      "before",  "after",   "inside",   "out",
         "off",     "up",       "from",      "if",      "any",     "some",     "will",
         "have",    "has",      "good",      "right",   "make",    "makes",    "want",
         "them",    "they",     "their",     "he",      "she",     "these",    "those",
         "only",    "just",     "very",      "really",  "also",    "cut",      "cuts",
         "trim",    "trims",    "trimming",  "trimmed", "was",     "then",     "into",
         "through", "around",   "tidy",      "tidied",  "coat",    "coats",    "type",
         "types",   "kind",     "not",       "dont",    "don't",   "cant",     "can't",
         "cannot",  "isn't",    "shouldn't", "getting", "gets",    "got",      "now",
         "today",   "again",    "number",    "as",      "equal",   "equals",   "equivalent",
         "=",       "summer"});
    return among(w, all);
}

bool a_unit(std::string_view w) {
    constexpr std::array<std::string_view, 7> all{"mm",   "millimetres", "millimeters", "cm",
                                                  "inch", "inches",      "in"};
    return among(w, all);
}

std::optional<piece_kind> word_of_a_question(std::string_view w) {
    constexpr std::array<std::string_view, 20> apart{
        "vs",     "versus",     "v",         "or",      "than",    "longer",   "shorter",
        "closer", "difference", "different", "between", "compare", "compared", "same",
        "bigger", "smaller",    "higher",    "lower",   "differ",  "diff"};
    constexpr std::array<std::string_view, 2> joining{"and", "&"};
    constexpr std::array<std::string_view, 6> extreme{"longest", "shortest", "closest",
                                                      "biggest", "smallest", "highest"};
    constexpr std::array<std::string_view, 7> listing{"never", "nevers", "words", "glossary",
                                                      "terms", "don'ts", "donts"};
    constexpr std::array<std::string_view, 12> crossing{"half",    "mum",    "mom",   "mother",
                                                        "dad",     "father", "sire",  "dam",
                                                        "crossed", "mix",    "mixed", "parents"};
    if (among(w, apart)) {
        return piece_kind::telling_apart;
    }
    if (among(w, joining)) {
        return piece_kind::joining;
    }
    if (among(w, extreme)) {
        return piece_kind::extreme;
    }
    if (among(w, listing)) {
        return piece_kind::listing;
    }
    if (among(w, crossing)) {
        return piece_kind::crossing;
    }
    return says_nothing(w) ? std::optional{piece_kind::filler} : std::nullopt;
}

bool begins_alike(std::string_view a, std::string_view b) {
    return !a.empty() && !b.empty() &&
           (a[0] == b[0] || (a.size() > 1 && b.size() > 1 && a[0] == b[1] && a[1] == b[0]));
}

/// Gathers the words as near as the nearest.
class nearest_words {
  public:
    explicit nearest_words(std::string_view word)
        : word_(detail::heard(word).core), best_(word_.size() < sure_of_two ? 1 : 2) {}

    void offer(const std::string& candidate) {
        const std::string core = detail::heard(candidate).core;
        const std::size_t apart =
            core.size() > word_.size() ? core.size() - word_.size() : word_.size() - core.size();
        if (apart > best_ || !begins_alike(core, word_)) {
            return;
        }
        const std::size_t e = edits(word_, core);
        // of three letters only the middle one is a slip: "ley" is "lay", "too" is no "toe"
        const bool short_word = word_.size() == 3;
        if (e > best_ || (short_word && (core.size() != 3 || core.back() != word_.back()))) {
            return;
        }
        if (e < best_) {
            found_.clear();
            best_ = e;
        }
        const bool known = std::any_of(found_.begin(), found_.end(), [&](const std::string& f) {
            return detail::heard(f).core == core;
        });
        if (!known) {
            found_.push_back(candidate);
        }
    }
    [[nodiscard]] std::vector<std::string> found() const {
        constexpr std::size_t most = 4;
        return found_.size() > most ? std::vector<std::string>{} : found_;
    }

  private:
    // letters from which two slips of the pen are still the same word: "corner" isn't "corded"
    static constexpr std::size_t sure_of_two = 8;
    std::string word_;
    std::size_t best_;
    std::vector<std::string> found_;
};

}  // namespace

bool vocabulary::in_our_texts(std::string_view word) const {
    const auto has = [&](const std::string& text) {
        const auto all = tokens_of(text);
        return std::any_of(all.begin(), all.end(), [&](const token& t) { return t.low == word; });
    };
    return std::any_of(c_.cautions.begin(), c_.cautions.end(),
                       [&](const caution& c) { return has(c.text) || has(c.brief); }) ||
           std::any_of(trade_.terms.begin(), trade_.terms.end(),
                       [&](const term& t) { return has(t.text); });
}

std::vector<std::string> vocabulary::near(std::string_view word) const {
    if (word.empty() || word.size() > longest_word || detail::heard(word).core.size() < 3) {
        return {};
    }
    if (in_our_texts(word)) {
        return {};  // "shade" is no slip of "shave"
    }
    nearest_words n(word);
    for (const auto* all : {&terms_.words(), &places_.words()}) {
        for (const std::string& w : *all) {
            n.offer(w);
        }
    }
    for (const std::string& w : mix_words::every_name(c_.genes)) {
        n.offer(w);
    }
    for (const asked_breed& a : c_.genes.asked) {
        for (const std::string& w : a.endings.empty() ? std::vector<std::string>{} : a.words) {
            n.offer(w);  // "doodle": then its parents are asked
        }
    }
    for (const coat& k : c_.coats) {
        n.offer(k.title);
        n.offer(std::string(name(k.id)));
    }
    return n.found();
}

std::optional<piece> vocabulary::coat_or_breed(const std::string& words) const {
    const std::string plain = mix_words::plain_name(words);
    for (const coat& k : c_.coats) {
        if (plain == mix_words::plain_name(name(k.id)) || plain == k.title) {
            return piece{piece_kind::coat, words, {}, terms_.find(words), nullptr, k.id};
        }
    }
    const auto breed_called = [&](const std::string& name) {
        const std::string bred = mix_words::written_out(c_.genes, name);
        return !mix_words::breeds_called(c_.genes, bred).empty() ||
               mix_words::cross_called(c_.genes, bred) != nullptr;
    };
    if (breed_called(plain) || (plain.size() > 3 && plain.ends_with('s') &&
                                breed_called(plain.substr(0, plain.size() - 1)))) {
        return piece{piece_kind::breed,
                     breed_called(plain) ? words : words.substr(0, words.size() - 1)};
    }
    return std::nullopt;
}

bool vocabulary::one_name(const std::string& words) const {
    for (auto blank = words.find(' '); blank != std::string::npos;
         blank = words.find(' ', blank + 1)) {
        const auto before = words.rfind(' ', blank - 1);
        const std::size_t from = before == std::string::npos ? 0 : before + 1;
        const std::string word = words.substr(from, blank - from);
        if (word_of_a_question(word) || terms_.find(word) != nullptr ||
            terms_.asked(word) != nullptr || places_.find(word) != nullptr ||
            coat_or_breed(words.substr(blank + 1))) {
            return false;
        }
    }
    return true;
}

std::vector<std::string> vocabulary::breeds_with(std::string_view word) const {
    constexpr std::size_t most = 5;
    std::vector<std::string> all = mix_words::breeds_with(c_.genes, std::string(word));
    all.resize(all.size() > 1 ? std::min(all.size(), most) : 0);
    return all;
}

std::optional<piece> vocabulary::known(const std::string& words) const {
    const auto of_dogs = coat_or_breed(words);
    const term* t = terms_.find(words);
    if (const selection* s = places_.find(words)) {
        piece p{piece_kind::place, words, s->places, t};
        if (of_dogs && of_dogs->kind == piece_kind::breed) {
            p.also_breed =
                c_.genes.breeds[mix_words::breeds_called(c_.genes, words).front().index].id;
        }
        return p;
    }
    if (of_dogs) {
        return of_dogs;
    }
    // where it is explained it needn't be asked which is meant: "pastern"
    const bool explained = t != nullptr && t->kind == term_kind::place;
    if (!explained && !places_.asked(words).empty()) {
        return piece{piece_kind::places_asked, words};
    }
    if (t != nullptr) {
        return piece{piece_kind::term, words, {}, t};
    }
    if (const asked_term* a = terms_.asked(words)) {
        return piece{piece_kind::terms_asked, words, {}, nullptr, a};
    }
    const std::string plain = mix_words::plain_name(words);
    const asked_breed* a = mix_words::asked_of(c_.genes, plain);
    if (a != nullptr &&
        (std::find(a->words.begin(), a->words.end(), plain) != a->words.end() || one_name(words))) {
        return piece{piece_kind::breed, words};
    }
    return std::nullopt;
}

std::optional<piece> vocabulary::longest_at(const std::vector<token>& all, std::size_t at,
                                            std::size_t& next) const {
    for (std::size_t n = std::min(longest_phrase, all.size() - at); n > 0; --n) {
        std::string words = words_of(all, at, at + n);
        if (words.size() > longest_word || (n > 1 && among(all[at].low, articles))) {
            continue;
        }
        next = at + n;
        // a word of a question is no word of the trade by itself: "cut", "or"
        if (n == 1) {
            if (const auto kind = word_of_a_question(words)) {
                return piece{*kind, words, {}, terms_.find(words)};
            }
        }
        if (auto p = known(words)) {
            return p;
        }
    }
    next = at + 1;
    return std::nullopt;
}

std::vector<piece> vocabulary::pieces(const std::vector<token>& all,
                                      const lookup_request& r) const {
    std::vector<piece> out;
    for (std::size_t at = 0; at < all.size();) {
        std::size_t next = at + 1;
        const auto p = longest_at(all, at, next);
        const auto tool = tool_at(all, at, r);
        const bool after_tool = std::any_of(
            out.begin(), out.end(), [](const piece& one) { return one.kind == piece_kind::tool; });
        if (tool && (!p || tool->next >= next)) {
            out.push_back({piece_kind::tool, tool->text});
            next = tool->next;
        } else if (after_tool && a_unit(all[at].low)) {
            out.push_back({piece_kind::filler, all[at].low});  // "3/8 in mm": shown so anyway
            next = at + 1;
        } else if (p) {
            out.push_back(*p);
        } else {
            out.push_back({piece_kind::stranger, all[at].low});
        }
        at = next;
    }
    return out;
}

}  // namespace pelage::asking
