// --length: one wish read word by word, into places and what is to be left there.
#include "length_wish.hpp"

#include <algorithm>
#include <array>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

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

/// "leave skirt", "skip the head", "head left as it is": that place isn't cut.
bool not_cut(const strings& all, wish& out) {
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

}  // namespace

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
    if (asks_no_length(text, all, parts_, f_)) {
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
        ask_by_how_much(text, phrase(all, 0, all.size() - 1), parts_, f_);
        return std::nullopt;
    }
    take_places(all, out.whom);
    if (not_cut(all, out) || asks_for_scissors(text, all, out.whom, f_)) {
        return out.what.how ? std::optional{out} : std::nullopt;
    }
    if (out.whom.empty() && all.size() > 1 && all.front() != "blade" && measures(all.back())) {
        const auto stranger = parts_.about(phrase(all, 0, all.size() - 1));
        f_.say(stranger.code, "--length: " + stranger.wrong + "; found \"" +
                                  phrase(all, 0, all.size() - 1) + "\"" + stranger.right);
        return std::nullopt;
    }
    return leaves(text, joined(all, " "), out) ? std::optional{out} : std::nullopt;
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
    return {w_.reference, w_.place().rules, w_.tools(), text, asked_kind::any,
            false,        std::nullopt,     {},         {},   w_.print.today};
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

std::string wish_reader::first_of_the_coat() const {
    return said_first_.empty() ? "" : ". But first: " + said_first_;
}

}  // namespace pelage::cli
