// --length as it is said in a shop: "16 mm", "7F all off", "half inch all over, legs 16 mm".
#include <algorithm>
#include <array>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/trade/place_words.hpp>
#include <pelage/trade/term.hpp>

#include "resolve_arguments.hpp"
#include "resolve_words.hpp"

namespace pelage::cli {

namespace {

using words = std::vector<std::string>;

/// At every `at`, but at no comma between two digits: that is somebody's decimal point.
words split(const std::string& text, char at) {
    words out{{}};
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool decimal = at == ',' && i > 0 && i + 1 < text.size() &&
                             detail::is_digit(text[i - 1]) && detail::is_digit(text[i + 1]);
        if (text[i] == at && !decimal) {
            out.emplace_back();
        } else {
            out.back() += text[i];
        }
    }
    std::erase_if(out, [](const std::string& w) { return detail::trimmed(w).empty(); });
    return out;
}

std::string joined_from(const words& all, std::size_t from, std::size_t to) {
    return joined(words(all.begin() + static_cast<std::ptrdiff_t>(from),
                        all.begin() + static_cast<std::ptrdiff_t>(to)),
                  " ");
}

/// Numbers of an inch by name.
std::string in_figures(std::string text) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 6> spelt{
        {{"three quarter inch", "3/4 in"},
         {"half an inch", "1/2 in"},
         {"half inch", "1/2 in"},
         {"quarter inch", "1/4 in"},
         {"one inch", "1 in"},
         {"an inch", "1 in"}}};
    for (const auto& [from, to] : spelt) {
        if (const auto at = text.find(from); at != std::string::npos) {
            text.replace(at, from.size(), to);
        }
    }
    return text;
}

/// One wish: what is to be left, and where; without a place it is the sheet's own length.
struct wish {
    words whom;  ///< "body", "all"; empty: not said
    instruction what;
};

bool any_of_these(const words& all, std::initializer_list<std::string_view> these) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& w) {
        return std::find(these.begin(), these.end(), w) != these.end();
    });
}

class wish_reader {
  public:
    /// `said_first`: what is said of the dog's coat before any length; may be empty.
    wish_reader(const workplace& w, std::string said_first, faults& f)
        : w_(w), f_(f), said_first_(std::move(said_first)), parts_(w.reference.dog_body) {}

    std::optional<wish> read(const std::string& text) {
        words all = split(in_figures(text), ' ');
        if (two_wishes(text, all) || no_measure(text, all)) {
            return std::nullopt;
        }
        wish out;
        const auto drop_end = [&](std::string_view a, std::string_view b) {
            const bool there = all.size() > 2 && all[all.size() - 2] == a && all.back() == b;
            if (there) {
                all.resize(all.size() - 2);
                out.whom = {"all"};
            }
            return there;
        };
        (void)(drop_end("all", "off") || drop_end("all", "over") || drop_end("all", "round"));
        if (!all.empty() && (all.back() == "longer" || all.back() == "shorter")) {
            by_how_much(text, joined_from(all, 0, all.size() - 1));
            return std::nullopt;
        }
        take_places(all, out.whom);
        if (not_cut(all, out) || by_scissors(text, all, out)) {
            return out.what.how ? std::optional{out} : std::nullopt;
        }
        if (out.whom.empty() && all.size() > 1 && all.front() != "blade" && measures(all.back())) {
            const auto stranger = parts_.about(joined_from(all, 0, all.size() - 1));
            f_.say(stranger.code, "--length: " + stranger.wrong + "; found \"" +
                                      joined_from(all, 0, all.size() - 1) + "\"" + stranger.right);
            return std::nullopt;
        }
        return leaves(text, joined(all, " "), out) ? std::optional{out} : std::nullopt;
    }

  private:
    /// The places of "belly, sani and pads" one by one; empty where a word of it is none.
    [[nodiscard]] words places_in(const words& all, std::size_t from, std::size_t to) const {
        if (const std::string whole = joined_from(all, from, to); parts_.find(whole) != nullptr) {
            return {whole};
        }
        words out;
        std::size_t begin = from;
        for (std::size_t i = from; i <= to; ++i) {
            if (i < to && all[i] != "and" && all[i] != "&" && all[i] != "+") {
                continue;
            }
            const std::string one = joined_from(all, begin, i);
            if (one.empty() || parts_.find(one) == nullptr) {
                return {};
            }
            out.push_back(one);
            begin = i + 1;
        }
        return out;
    }

    /// The longest run of words at either end that names places.
    void take_places(words& all, words& whom) {
        for (std::size_t n = all.size() - 1; whom.empty() && n > 0; --n) {
            const words first = places_in(all, 0, n);
            const words last = places_in(all, all.size() - n, all.size());
            if (!first.empty()) {
                whom = first;
                all.erase(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(n));
            } else if (!last.empty()) {
                whom = last;
                all.resize(all.size() - n);
            }
        }
    }

    /// What asks for no length at all: the last groom's, what comes off, "short", a word of a style.
    bool no_measure(const std::string& text, const words& all) {
        const std::string found = "; found \"" + text + "\"; ";
        if (any_of_these(all, {"last", "usual", "before", "previous"}) &&
            any_of_these(all, {"same", "as", "like", "usual"})) {
            f_.say(errc::ambiguous,
                   "--length: what was left last time stands in the dog's own record" + found +
                       "name the dog, as in pelage plan DOG, or write the length");
            return true;
        }
        if (all.size() > 1 && all.back() == "off" && all[all.size() - 2] != "all") {
            f_.say(errc::ambiguous,
                   "--length is what is left on the dog, not what comes off" + found +
                       "say how long the hair is today (--now 'body 40 mm') and write what is to "
                       "be left, as in --length '25 mm'");
            return true;
        }
        words rest = all;
        std::erase_if(rest, [](const std::string& w) {
            return w == "all" || w == "over" || w == "off" || w == "a" || w == "bit" ||
                   w == "quite" || w == "very" || w == "nice" || w == "and";
        });
        if (rest.size() == 1 &&
            any_of_these(rest, {"short", "long", "medium", "shortish", "tidy"})) {
            f_.say(errc::ambiguous, "--length: how " + rest.front() + " is that" + found +
                                        "write what is left, as in '7F all over', 'half inch all "
                                        "over' or '25 mm all over'");
            return true;
        }
        return a_word_of_style(found, all);
    }

    bool a_word_of_style(const std::string& found, const words& all) {
        if (found.find_first_of("0123456789") != std::string::npos) {
            return false;
        }
        const term_index terms(io::trade_words());
        const term* t = terms.find(joined(all, " "));
        if (t == nullptr || t->kind != term_kind::style ||
            parts_.find(joined(all, " ")) != nullptr) {
            return false;
        }
        words styles;
        for (const std::string& id : t->sheets) {
            styles.push_back("--style " + id);
        }
        f_.say(errc::ambiguous, "--length: a style, which names no length" + found +
                                    "write the place and what is left, as in 'head 25 mm'" +
                                    (styles.empty() ? "" : ", or " + one_of(styles)));
        return true;
    }

    /// "leave skirt", "skip the head", "head left as it is": that place isn't cut.
    static bool not_cut(const words& all, wish& out) {
        const bool only = std::all_of(all.begin(), all.end(), [](const std::string& w) {
            return any_of_these(
                {w}, {"leave", "left", "skip", "skipped", "untouched", "alone", "as", "it", "is"});
        });
        if (out.whom.empty() || !only ||
            !any_of_these(all, {"leave", "left", "skip", "skipped", "untouched"})) {
            return false;
        }
        out.what.how = finish::leave;
        return true;
    }

    /// "10mm body legs 3/4": where the comma is missing, if two lengths stand there. Each half is read for
    /// what else is wrong with it.
    bool two_wishes(const std::string& text, const words& all) {
        std::vector<std::size_t> begins;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const bool first = detail::is_digit(all[i].front());
            const bool goes_on =
                i > 0 && (detail::is_digit(all[i - 1].front()) ||
                          any_of_these({all[i - 1]}, {"over", "on"}) ||
                          (i > 1 && all[i - 1] == "blade" && all[i - 2] == "over"));
            if (first && !goes_on) {
                begins.push_back(i);
            }
        }
        if (begins.size() != 2 || begins[1] < begins[0] + 2) {
            return false;
        }
        for (std::size_t at = begins[0] + 1; at <= begins[1]; ++at) {
            const std::string first = joined_from(all, 0, at);
            const std::string second = joined_from(all, at, all.size());
            if (names_a_place(all, 0, at) && names_a_place(all, at, all.size())) {
                f_.say(errc::syntax, "--length: two lengths, and no comma between them; found \"" +
                                         text + "\"; write \"" + first + ", " + second + "\"");
                static_cast<void>(read(first));
                static_cast<void>(read(second));
                return true;
            }
        }
        return false;
    }
    /// Whether one of its words names a place.
    [[nodiscard]] bool names_a_place(const words& all, std::size_t from, std::size_t to) const {
        return std::any_of(all.begin() + static_cast<std::ptrdiff_t>(from),
                           all.begin() + static_cast<std::ptrdiff_t>(to),
                           [&](const std::string& w) { return parts_.find(w) != nullptr; });
    }

    /// "scissor legs": how long is asked back.
    bool by_scissors(const std::string& text, const words& all, const wish& out) {
        if (out.whom.empty() || all.size() != 1 ||
            !any_of_these(all, {"scissor", "scissors", "scissored", "hand-scissor"})) {
            return false;
        }
        f_.say(errc::ambiguous, "--length: by scissors, and how long is left there? found \"" +
                                    text + "\"; write it like '" + out.whom.front() +
                                    " 25 mm': the plan says what takes the scissors");
        return true;
    }

    [[nodiscard]] bool measures(const std::string& word) const {
        try {
            return read_question(asked(word)).what != question::form::of_comb;
        } catch (const error&) {
            return false;
        }
    }
    [[nodiscard]] lookup_request asked(const std::string& text) const {
        return {w_.reference, w_.place().rules, w_.tools(), text, asked_kind::any,
                false,        std::nullopt,     {},         {},   w_.print.today};
    }

    void by_how_much(const std::string& text, const std::string& whom) {
        f_.say(errc::ambiguous, "--length: by how much? found \"" + text +
                                    "\"; say what is to be left there: '" +
                                    (parts_.find(whom) != nullptr ? whom : "legs") + " 16 mm'");
    }

    /// Whether the blade is customary in all of these places, so that its number can mean nothing else.
    [[nodiscard]] bool customary(const std::string& blade, const words& whom) const {
        return !whom.empty() && std::all_of(whom.begin(), whom.end(), [&](const std::string& word) {
            const selection* s = parts_.find(word);
            return s != nullptr &&
                   std::all_of(s->places.begin(), s->places.end(), [&](const place& p) {
                       const auto& usual = w_.reference.dog_body.zones[p.zone].prep_blades;
                       return std::find(usual.begin(), usual.end(), blade) != usual.end();
                   });
        });
    }

    /// A blade, a comb or a length, as the look-up reads them.
    bool leaves(const std::string& text, std::string measure, wish& out) {
        for (const std::string_view before : {"number ", "no ", "no. ", "nr ", "#"}) {
            if (measure.starts_with(before)) {
                measure.erase(0, before.size());
            }
        }
        try {
            const question q = read_question(asked(measure));
            const auto also = [&](question_hint h) {
                return std::find(q.hints.begin(), q.hints.end(), h) != q.hints.end();
            };
            switch (q.what) {
                case question::form::of_blade:
                    if (also(question_hint::as_millimetres) && measure == q.tool.tool.id &&
                        !customary(q.tool.tool.id, out.whom)) {
                        f_.say(errc::ambiguous, "--length: a blade or a length? found \"" + text +
                                                    "\"; write \"blade " + measure + "\" or \"" +
                                                    measure + " mm\"" + first_of_the_coat());
                        return false;
                    }
                    out.what.blade = q.tool.tool.id;
                    return true;
                case question::form::of_comb:
                    out.what.target = q.tool.over->stated.best;
                    return true;
                case question::form::of_length:
                    out.what.target = length_in("--length", measure, f_);
                    return out.what.target.has_value();
            }
        } catch (const error& e) {
            if (parse_length(measure).fault == length_fault::no_unit) {
                (void)length_in("--length", measure, f_);
            } else if (e.code() == errc::unknown) {
                f_.say(e.code(), "--length: no blade, comb or length; found \"" + text +
                                     "\"; write it like '16 mm', '7F', 'body 7F, legs 16 mm'" +
                                     first_of_the_coat());
            } else {
                f_.say(e.code(), "--length: " + std::string(e.what()) + first_of_the_coat());
            }
        }
        return false;
    }

    [[nodiscard]] std::string first_of_the_coat() const {
        return said_first_.empty() ? "" : ". But first: " + said_first_;
    }

    const workplace& w_;
    faults& f_;
    std::string said_first_;
    part_index parts_;
};

/// What is said of a double coat before any length; empty of others, or where the coat isn't known.
std::string first_of_a_double_coat(const dog& d, const workplace& w) {
    std::optional<coat_class> c = d.coat;
    if (!c && !d.mix.empty()) {
        try {
            c = expect_coat(d.mix, w.reference.genes, w.reference.coats).may_be.likeliest();
        } catch (const error&) {  // told where the mix is read
            return {};
        }
    }
    return c && double_coated(*c) ? coat_of(w.reference, *c).said_first : "";
}

/// The sheet leaves the whole dog about alike, so that a bare length or blade takes the place of all of it;
/// 1 mm, our own choice, is what a blade more or less may leave beside another.
bool about_one_length(const style& s) {
    std::optional<length> least;
    std::optional<length> most;
    for (const sheet_rule& r : s.rules) {
        if (r.what.target) {
            least = least ? shorter(*least, *r.what.target) : *r.what.target;
            most = most ? longer(*most, *r.what.target) : *r.what.target;
        }
    }
    return least && *most - *least <= mm(1.0);
}

}  // namespace

void apply_lengths(const std::string& text, const workplace& w, dog& d, faults& f) {
    if (text.empty()) {
        return;
    }
    if (d.style.empty()) {
        d.style = "one-length";
    }
    const style* sheet = find(w.styles, d.style);
    wish_reader reader(w, first_of_a_double_coat(d, w), f);
    for (const std::string& one : split(text, ',')) {
        const auto said = reader.read(std::string(detail::trimmed(one)));
        if (!said) {
            continue;
        }
        const bool bare = said->whom.empty();
        const bool replaced = sheet != nullptr && (sheet->adjustable || about_one_length(*sheet));
        const bool whole = said->whom == words{"all"} && !said->what.how;
        if (whole && sheet != nullptr && !replaced) {
            f.say(errc::conflict,
                  "--length: one length over the whole dog, and the sheet \"" + d.style +
                      "\" has several; found \"" + text +
                      "\"; say where: 'body 16 mm', or write --style one-length or kennel");
            continue;
        }
        if (bare && said->what.target && sheet != nullptr && sheet->adjustable) {
            d.body_length = said->what.target;
        } else if (bare && sheet != nullptr && !replaced) {
            f.say(errc::conflict, "--length: the sheet \"" + d.style +
                                      "\" has no length of its own to replace; found \"" + text +
                                      "\"; say where: 'body " + text +
                                      "', or write another --style, such as one-length");
        } else {
            for (const std::string& whom : bare ? words{"all"} : said->whom) {
                d.departures.push_back({whom, said->what});
            }
        }
    }
}

}  // namespace pelage::cli
