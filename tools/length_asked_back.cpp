// --length: what of it is no length, and what is asked back.
#include "length_asked_back.hpp"

#include <pelage/base/phrase.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/trade/term.hpp>

#include "resolve_words.hpp"

namespace pelage::cli {

namespace {

bool a_word_of_style(const std::string& found, const strings& all, const part_index& parts,
                     faults& f) {
    if (found.find_first_of("0123456789") != std::string::npos) {
        return false;
    }
    const term_index terms(io::trade_words());
    const term* t = terms.find(joined(all, " "));
    if (t == nullptr || t->kind != term_kind::style || parts.find(joined(all, " ")) != nullptr) {
        return false;
    }
    strings styles;
    for (const std::string& id : t->sheets) {
        styles.push_back("--style " + id);
    }
    f.say(errc::ambiguous, "--length: a style, which names no length" + found +
                               "write the place and what is left, as in 'head 25 mm'" +
                               (styles.empty() ? "" : ", or " + one_of(styles)));
    return true;
}

/// "hand strip", "bath": what is booked.
bool a_service(const std::string& found, const strings& all, const reference_data& c,
               const part_index& parts, faults& f) {
    const std::string text = joined(all, " ");
    faults none;
    const service* s = parts.find(text) == nullptr ? service_in("", text, c, none) : nullptr;
    if (s == nullptr) {
        return false;
    }
    f.say(errc::ambiguous, "--length: a service, which names no length" + found + "book it with " +
                               "--service " + std::string(name(s->kind)));
    return true;
}

/// Whether one of its words names a place.
bool names_a_place(const strings& all, std::size_t from, std::size_t to, const part_index& parts) {
    return std::any_of(all.begin() + static_cast<std::ptrdiff_t>(from),
                       all.begin() + static_cast<std::ptrdiff_t>(to),
                       [&](const std::string& w) { return parts.find(w) != nullptr; });
}

}  // namespace

bool asks_no_length(const std::string& text, const strings& all, const reference_data& c,
                    const part_index& parts, faults& f) {
    const std::string found = "; found \"" + text + "\"; ";
    if (any_of_these(all, {"last", "usual", "before", "previous"}) &&
        any_of_these(all, {"same", "as", "like", "usual"})) {
        f.say(errc::ambiguous, "--length: what was left last time stands in the dog's own record" +
                                   found +
                                   "name the dog, as in pelage plan DOG, or write the length");
        return true;
    }
    if (all.size() > 1 && all.back() == "off" && all[all.size() - 2] != "all") {
        f.say(errc::ambiguous,
              "--length is what is left on the dog, not what comes off" + found +
                  "say how long the hair is today (--now 'body 40 mm') and write what is to "
                  "be left, as in --length '25 mm'");
        return true;
    }
    strings rest = all;
    std::erase_if(rest, [](const std::string& w) {
        return w == "all" || w == "over" || w == "off" || w == "a" || w == "bit" || w == "quite" ||
               w == "very" || w == "nice" || w == "and";
    });
    if (rest.size() == 1 && any_of_these(rest, {"short", "long", "medium", "shortish", "tidy"})) {
        f.say(errc::ambiguous, "--length: how " + rest.front() + " is that" + found +
                                   "write what is left, as in '7F all over', 'half inch all "
                                   "over' or '25 mm all over'");
        return true;
    }
    return a_service(found, all, c, parts, f) || a_word_of_style(found, all, parts, f);
}

bool asks_how_long(const std::string& text, const strings& all, const strings& whom, faults& f) {
    const auto says = [&](std::initializer_list<std::string_view> these) {
        return any_of_these(all, these);
    };
    const bool only = std::all_of(all.begin(), all.end(), [](const std::string& w) {
        return any_of_these({w}, {"keep", "leave", "left", "the", "a", "bit", "long", "full",
                                  "natural", "longish"});
    });
    if (whom.empty() || !only || !says({"long", "full", "natural", "longish"})) {
        return false;
    }
    const std::string& where = whom.front();
    f.say(errc::ambiguous, "--length: how long is that; found \"" + text + "\"; write '" + where +
                               " left' where nothing is cut, or what is left there, as in '" +
                               where + " 50 mm'");
    return true;
}

std::string what_of(const std::string& stray, const part_index& parts) {
    if (parts.find(stray) != nullptr) {
        return " (\"and\" or a comma between places)";
    }
    const term* t = term_index(io::trade_words()).find(stray);
    return t == nullptr                  ? ""
           : t->kind == term_kind::style ? " (a style, " + t->title + ", which names no length)"
                                         : " (a word of the trade: pelage lookup '" + stray + "')";
}

void ask_for_the_rest(const std::string& text, const std::vector<std::string>& missing,
                      const std::string& first, faults& f) {
    constexpr std::size_t few = 3;
    f.say(errc::ambiguous,
          "--length: and the " +
              (missing.size() > few ? std::string("rest of the dog") : listed(missing)) +
              "? found \"" + text +
              "\"; add it, as in ', rest 13 mm' or ', rest as it is', or name a sheet "
              "with --style" +
              (first.empty() ? "" : ". But first: ") + first);
}

std::optional<std::pair<std::string, std::string>> two_wishes(const strings& all,
                                                              const part_index& parts) {
    std::vector<std::size_t> begins;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const bool first = detail::is_digit(all[i].front());
        const bool goes_on = i > 0 && (detail::is_digit(all[i - 1].front()) ||
                                       any_of_these({all[i - 1]}, {"over", "on"}) ||
                                       (i > 1 && all[i - 1] == "blade" && all[i - 2] == "over"));
        if (first && !goes_on) {
            begins.push_back(i);
        }
    }
    if (begins.size() != 2 || begins[1] < begins[0] + 2) {
        return std::nullopt;
    }
    for (std::size_t at = begins[0] + 1; at <= begins[1]; ++at) {
        if (names_a_place(all, 0, at, parts) && names_a_place(all, at, all.size(), parts)) {
            return std::pair{phrase(all, 0, at), phrase(all, at, all.size())};
        }
    }
    return std::nullopt;
}

bool asks_for_scissors(const std::string& text, const strings& all, const strings& whom,
                       faults& f) {
    if (whom.empty() || all.size() != 1 ||
        !any_of_these(all, {"scissor", "scissors", "scissored", "hand-scissor"})) {
        return false;
    }
    f.say(errc::ambiguous, "--length: by scissors, and how long is left there? found \"" + text +
                               "\"; write it like '" + whom.front() +
                               " 25 mm': the plan says what takes the scissors");
    return true;
}

void ask_by_how_much(const std::string& text, const std::string& whom, const part_index& parts,
                     faults& f) {
    f.say(errc::ambiguous, "--length: by how much? found \"" + text +
                               "\"; say what is to be left there: '" +
                               (parts.find(whom) != nullptr ? whom : "legs") + " 16 mm'");
}

}  // namespace pelage::cli
