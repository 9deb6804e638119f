// What a person asked of the look-up, read from what was typed: a tool, several to be compared, a place, a
// word of the trade, a coat, a breed or mix; or that it can't be told, which is asked back.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include <pelage/kit/lookup.hpp>
#include <pelage/trade/place_words.hpp>
#include <pelage/trade/term.hpp>

namespace pelage {

/// A blade, a comb or a length; of two and more it is asked how they differ.
struct tools_asked {
    std::vector<question> all;          ///< in the order asked, each once
    std::vector<const term*> beside{};  ///< words of the trade said with it; borrows the reference
    bool same = false;                  ///< it was asked beside itself: "8.5 vs 8 1/2"
};

/// A place of the dog.
struct place_asked {
    std::string word;            ///< as it was said: "back legs"
    std::vector<place> places;   ///< may be several
    const term* said = nullptr;  ///< the term of that very word; null: none. Borrows the reference.
    std::vector<const term*> beside{};  ///< words of the trade said with it: "matted ears"
    bool against = false;               ///< asked how it goes there against the lay
};

/// A word of the trade; of two it is asked how they differ. Borrows the reference.
struct terms_asked {
    std::vector<const term*> all;       ///< never none; each of the glossary
    const asked_breed* open = nullptr;  ///< what was said of a dog whose coat it leaves open
    std::string breed{};                ///< as that was said
};

/// A class of coat.
struct coat_asked {
    coat_class coat{};           ///< which
    const term* said = nullptr;  ///< the term of that very word; null: none
};

/// Which blades carry a comb, or whether these do.
struct carrying_asked {
    std::vector<blade> under{};  ///< none: which do
};

/// A list.
struct list_asked {
    /// Of what.
    enum class of { words, nevers } what = of::words;  ///< which of them
};

/// A breed or a mix, as read_mix() takes it.
struct mix_asked {
    std::string text;  ///< as it was typed
};

/// It could mean several things: each as one would type it. Never guessed.
struct asked_back {
    /// Why it can't be told.
    enum class cause {
        places,             ///< one word for several places
        terms,              ///< one word of the trade for several things
        things,             ///< several things that are no one question
        breed_too,          ///< a place, and a breed is called so too
        cross,              ///< two breeds: a cross, or each by itself
        ladder,             ///< the longest or shortest of all: that is the whole ladder of a coat
        beside,             ///< one thing, to be told apart from nothing: "7F vs"
        denied,             ///< "not" turns it about; `readings` has it without
        price,              ///< what a groom costs, which is kept nowhere
        minutes,            ///< how long a groom takes: a plan tells that
        due,                ///< when a dog is back: that is reckoned from its coat
        weeks,              ///< a number of weeks: what waits so long, or when it is back
        part                ///< a blade for a dog: on which part of it
    } why = cause::things;  ///< what can't be told apart
    std::string word;       ///< what is asked back; empty: all of it
    std::vector<std::string> readings;  ///< "belly"
    std::string dog{};                  ///< the breed or mix said with it; may be empty
    std::optional<coat_class> coat{};   ///< the coat said with it
    std::string sheet{};  ///< id of a sheet that fits such a dog; empty where none is asked about
};

/// Words that mean nothing here.
struct strangers {
    /// One of them.
    struct one {
        std::string word;               ///< as it was typed
        std::vector<std::string> near;  ///< words that were perhaps meant
    };
    std::vector<one> words;               ///< each once
    std::vector<std::string> understood;  ///< the rest, as it was taken
    bool clips_double = false;            ///< and it asks to take off the jacket of a double coat
};

/// What ails a dog, or that it is in heat or pregnant: what is minded at the table. Borrows the reference.
struct health_asked {
    std::string said;                       ///< as it was asked: "heart murmur"
    std::vector<const caution*> all;        ///< what is minded; never none without `stops`
    std::vector<const term*> beside{};      ///< words of the trade said with it: "old dog"
    std::vector<const stop_rule*> stops{};  ///< what ends a groom: "tongue blue"; the gravest first
};

/// Words of a card: what is minded at the table, in short, a sign that ends a groom, or how figures are read.
/// Never none of all three. Borrows the reference and the glossary.
struct card_asked {
    std::string said;                         ///< as it was asked: "over the top only"
    std::vector<const caution*> all;          ///< the gravest first
    std::vector<const stop_rule*> stops{};    ///< none where there is one of `all`
    std::vector<const card_line*> figures{};  ///< one or none; where there is one, nothing else
};

using asked_thing =
    std::variant<tools_asked, place_asked, terms_asked, coat_asked, mix_asked, carrying_asked,
                 list_asked, asked_back, strangers, health_asked, card_asked>;

/// What was asked, with what was said beside it.
struct asked {
    asked_thing what;                  ///< what the text asks
    std::optional<coat_class> coat{};  ///< said, or the likeliest of the breed that was said
    std::string breed{};               ///< the breed that `coat` was taken from
    std::vector<place> where{};        ///< in which places; empty: anywhere
    std::optional<direction> way{};    ///< how it is moved; none: not said
};

/// Reads `r.text`. Throws error as read_question() does, of the blade, comb or length in it, and as read_mix()
/// of a breed beside it.
[[nodiscard]] asked read_asked(const lookup_request& r);

/// Several tools side by side.
struct comparison {
    std::vector<lookup_answer> all;  ///< as they were asked
    std::optional<std::size_t>
        longest;  ///< index into all, by what is etched; none: two are as long
    std::vector<coat_class> otherwise{};  ///< on which another one leaves more with the lay
};
[[nodiscard]] comparison compare(const lookup_request& r, std::vector<question> tools);

/// What is etched on a tool, or the length that was asked about (mm).
[[nodiscard]] length etched(const lookup_answer& a);

/// What carries a comb.
struct carrying_answer {
    /// A blade asked about.
    struct one {
        blade tool;       ///< which
        bool may = true;  ///< a comb sits on it
        length adds{};    ///< what a comb leaves more over it than is stated of the comb (mm)
    };
    std::vector<one> asked{};     ///< none: which do
    std::vector<blade> blades{};  ///< of the kit that may, the one it keeps for that first
    std::vector<comb> combs{};    ///< of the kit that sit on one of `asked`, or on any
    /// Whether one of those asked about may, or none was asked about.
    [[nodiscard]] bool may() const {
        return asked.empty() ||
               std::any_of(asked.begin(), asked.end(), [](const one& o) { return o.may; });
    }
};
[[nodiscard]] carrying_answer carrying(const lookup_request& r, const carrying_asked& c);

/// What is never done with what is asked about together; null: nothing is said of it. Borrows the reference.
[[nodiscard]] const never_rule* never_of(const lookup_request& r, const terms_asked& t);
[[nodiscard]] const never_rule* never_of(const lookup_request& r, const place_asked& p);
[[nodiscard]] const never_rule* never_of(const lookup_request& r, const tools_asked& t);

/// Whether the word asked about takes a coat off short that isn't clipped: double, and said beside it.
[[nodiscard]] bool never_of_this_coat(const lookup_request& r, const terms_asked& t);

/// The request with what was said beside the thing asked. Throws error(conflict) where `r` has it otherwise.
[[nodiscard]] lookup_request with_circumstances(const lookup_request& r, const asked& a);

}  // namespace pelage
