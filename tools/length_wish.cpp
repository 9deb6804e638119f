// --length: one wish read word by word, into places and what is to be left there.
#include "length_wish.hpp"

#include <algorithm>
#include <array>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/kit/asked.hpp>

#include "length_asked_back.hpp"

namespace pelage::cli {

namespace {

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

/// "number 5", "#5": taken off; whether it was there, which says that it is a blade.
bool take_number(std::string& measure) {
    for (const std::string_view before : {"number ", "no ", "no. ", "nr ", "#"}) {
        if (measure.starts_with(before)) {
            measure.erase(0, before.size());
            return true;
        }
    }
    return false;
}

/// "5 skip", "7 finish": the blade of that number with these teeth; empty if nothing of the kind is said.
std::string of_these_teeth(const lookup_request& r, const strings& words) {
    const bool teeth =
        words.size() > 1 && std::all_of(words.begin() + 1, words.end(), [](const std::string& w) {
            return any_of_these({w}, {"skip", "skip-tooth", "tooth", "toothed", "teeth", "finish",
                                      "finishing", "full"});
        });
    if (!teeth) {
        return {};
    }
    try {
        const pelage::asked a = read_asked(r);
        const auto* tool = std::get_if<tools_asked>(&a.what);
        const bool one = tool != nullptr && tool->all.size() == 1 && tool->beside.empty() &&
                         tool->all.front().what == question::form::of_blade;
        return one ? tool->all.front().tool.tool.id : std::string{};
    } catch (const error&) {  // told where it is read as a length
        return {};
    }
}

/// "leave skirt", "skip the head", "head left as it is": that place isn't cut.
bool not_cut(const strings& all, wish& out) {
    const bool only = std::all_of(all.begin(), all.end(), [](const std::string& w) {
        return any_of_these({w}, {"leave", "left", "skip", "skipped", "untouched", "uncut", "keep",
                                  "alone", "as", "it", "is", "the"});
    });
    if ((out.whom.empty() && !out.rest) || !only ||
        !any_of_these(all,
                      {"leave", "left", "skip", "skipped", "untouched", "uncut", "keep", "as"})) {
        return false;
    }
    out.what.how = finish::leave;
    return true;
}

bool ends_with(const strings& all, const strings& words) {
    return all.size() >= words.size() &&
           std::equal(words.begin(), words.end(),
                      all.end() - static_cast<std::ptrdiff_t>(words.size()));
}

/// "rest 13 mm", "leave the rest", "13 mm everywhere else": those words taken out.
bool take_rest(strings& all) {
    const std::array<strings, 6> said{{{"rest", "of", "the", "dog"},
                                       {"everything", "else"},
                                       {"everywhere", "else"},
                                       {"all", "else"},
                                       {"elsewhere"},
                                       {"rest"}}};
    for (const strings& words : said) {
        const auto at = std::search(all.begin(), all.end(), words.begin(), words.end());
        if (at == all.end()) {
            continue;
        }
        const bool the = at != all.begin() && *(at - 1) == "the";
        all.erase(the ? at - 1 : at, at + static_cast<std::ptrdiff_t>(words.size()));
        return true;
    }
    return false;
}

/// "7F against the lay", "7 in reverse": how it is moved, those words taken from the end.
std::optional<lay_choice> take_way(strings& all) {
    const std::array<std::pair<strings, lay_choice>, 9> said{
        {{{"against", "the", "lay"}, lay_choice::against_lay},
         {{"against", "the", "grain"}, lay_choice::against_lay},
         {{"against", "lay"}, lay_choice::against_lay},
         {{"in", "reverse"}, lay_choice::against_lay},
         {{"against"}, lay_choice::against_lay},
         {{"reverse"}, lay_choice::against_lay},
         {{"reversed"}, lay_choice::against_lay},
         {{"with", "the", "lay"}, lay_choice::with_lay},
         {{"with", "the", "grain"}, lay_choice::with_lay}}};
    for (const auto& [words, way] : said) {
        if (all.size() > words.size() && ends_with(all, words)) {
            all.resize(all.size() - words.size());
            return way;
        }
    }
    return std::nullopt;
}

}  // namespace

std::size_t wish_reader::whole_dog_words(const strings& all) const {
    for (const char* word : {"off", "over", "round"}) {
        if (all.size() > 2 && ends_with(all, {"all", word})) {
            return 2;
        }
    }
    const bool shaved = ends_with(all, {"shave", "off"}) || ends_with(all, {"shaved", "off"});
    if (!shaved || all.size() != 3) {
        return 0;
    }
    try {  // of a length it would be what comes off
        return read_question(asked(all.front())).what == question::form::of_blade ? 2 : 0;
    } catch (const error&) {
        return 0;
    }
}

std::optional<wish> wish_reader::read(const std::string& text) {
    strings all = split_at(in_figures(text), ' ');
    if (const auto two = two_wishes(all, parts_)) {
        const auto& [first, second] = *two;
        f_.say(errc::syntax, "--length: two lengths, and no comma between them; found \"" + text +
                                 "\"; write \"" + first + ", " + second + "\"");
        static_cast<void>(read(first));  // for what else is wrong with it
        static_cast<void>(read(second));
        return std::nullopt;
    }
    wish out;
    if (const std::size_t n = whole_dog_words(all); n > 0) {
        all.resize(all.size() - n);
        out.whom = {"all"};
    }
    if (asks_no_length(text, all, w_.reference, parts_, f_)) {
        return std::nullopt;
    }
    out.rest = out.whom.empty() && take_rest(all);
    if (all.size() > 1 && any_of_these({all.front()}, {"keep", "leave"})) {
        std::rotate(all.begin(), all.begin() + 1,
                    all.end());  // "keep tail long": the place stands first
    }
    if (!all.empty() && (all.back() == "longer" || all.back() == "shorter")) {
        ask_by_how_much(text, phrase(all, 0, all.size() - 1), parts_, f_);
        return std::nullopt;
    }
    out.what.way = take_way(all);
    if (!out.rest && !all.empty()) {
        take_places(all, out.whom);
    }
    if (!out.what.way) {
        out.what.way = take_way(all);
    }
    return what_is_left(text, std::move(all), out) ? std::optional{out} : std::nullopt;
}

bool wish_reader::what_is_left(const std::string& text, strings all, wish& out) {
    if (not_cut(all, out)) {
        return true;
    }
    if (asks_for_scissors(text, all, out.whom, f_) || asks_how_long(text, all, out.whom, f_)) {
        return false;
    }
    if (out.whom.empty() && all.size() > 1 && all.front() != "blade" && measures(all.back())) {
        const auto stranger = parts_.about(phrase(all, 0, all.size() - 1));
        f_.say(stranger.code, "--length: " + stranger.wrong + "; found \"" +
                                  phrase(all, 0, all.size() - 1) + "\"" + stranger.right);
        return false;
    }
    if (const std::string blade = of_these_teeth(asked(joined(all, " ")), all); !blade.empty()) {
        out.what.blade = blade;
        return true;
    }
    return !has_strays(text, all) && leaves(text, joined(all, " "), out);
}

std::size_t wish_reader::measured_by(const strings& words) const {
    for (std::size_t n = words.size(); n > 0; --n) {
        std::string measure = phrase(words, 0, n);
        (void)take_number(measure);
        try {
            (void)read_question(asked(measure));
            return n;
        } catch (const error& e) {
            if (e.code() == errc::ambiguous ||
                parse_length(measure).fault == length_fault::no_unit) {
                return n;  // asked back by itself
            }
        }
    }
    return 0;
}

std::string wish_reader::with_a_comma(const strings& words) const {
    for (std::size_t i = 1; alone_ && i < words.size(); ++i) {
        faults untold;
        wish_reader half(w_, {}, untold);
        half.alone_ = false;
        const auto first = half.read(phrase(words, 0, i));
        const auto second = first ? half.read(phrase(words, i, words.size())) : std::nullopt;
        if (second && untold.none()) {
            return phrase(words, 0, i) + ", " + phrase(words, i, words.size());
        }
    }
    return {};
}

bool wish_reader::has_strays(const std::string& text, const strings& measure) {
    const std::size_t n = measured_by(measure);
    if (n == 0 || n == measure.size()) {
        return false;
    }
    const std::string stray = phrase(measure, n, measure.size());
    if (const std::string meant = with_a_comma(split_at(text, ' ')); !meant.empty()) {
        f_.say(errc::syntax, "--length: a comma is missing; found \"" + text + "\"; write '" +
                                 meant + "'" + first_of_the_coat());
        return true;
    }
    f_.say(errc::unknown,
           "--length: not understood: \"" + stray + "\"" + what_of(stray, parts_) + "; found \"" +
               text + "\"; write it like '7F', 'body 7F, legs 16 mm'" + first_of_the_coat());
    return true;
}

strings wish_reader::places_in(const strings& all, std::size_t from, std::size_t to) const {
    if (const std::string whole = phrase(all, from, to); parts_.find(whole) != nullptr) {
        return {whole};
    }
    strings out;
    std::size_t begin = from;
    for (std::size_t i = from; i <= to; ++i) {
        if (i < to && all[i] != "and" && all[i] != "&" && all[i] != "+") {
            continue;
        }
        const std::string one = phrase(all, begin, i);
        if (one.empty() || parts_.find(one) == nullptr) {
            return {};
        }
        out.push_back(one);
        begin = i + 1;
    }
    return out;
}

void wish_reader::take_places(strings& all, strings& whom) const {
    for (std::size_t n = all.size() - 1; whom.empty() && n > 0; --n) {
        const strings first = places_in(all, 0, n);
        const strings last = places_in(all, all.size() - n, all.size());
        if (!first.empty()) {
            whom = first;
            all.erase(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(n));
        } else if (!last.empty()) {
            whom = last;
            all.resize(all.size() - n);
        }
    }
}

bool wish_reader::measures(const std::string& word) const {
    try {
        return read_question(asked(word)).what != question::form::of_comb;
    } catch (const error&) {
        return false;
    }
}

lookup_request wish_reader::asked(const std::string& text) const {
    return {w_.reference,
            w_.place().rules,
            w_.tools(),
            text,
            asked_kind::any,
            false,
            std::nullopt,
            {},
            {},
            w_.print.today,
            &io::trade_words()};
}

bool wish_reader::customary(const std::string& blade, const strings& whom) const {
    return !whom.empty() && std::all_of(whom.begin(), whom.end(), [&](const std::string& word) {
        const selection* s = parts_.find(word);
        return s != nullptr && std::all_of(s->places.begin(), s->places.end(), [&](const place& p) {
                   const auto& usual = w_.reference.dog_body.zones[p.zone].prep_blades;
                   return std::find(usual.begin(), usual.end(), blade) != usual.end();
               });
    });
}

bool wish_reader::leaves(const std::string& text, std::string measure, wish& out) {
    if (take_number(measure) && measure.find_first_not_of("0123456789") == std::string::npos) {
        measure = "blade " + measure;
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

std::string wish_reader::first_of_the_coat() const {
    return said_first_.empty() ? "" : ". But first: " + said_first_;
}

}  // namespace pelage::cli
