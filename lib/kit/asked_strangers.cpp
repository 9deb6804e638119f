#include "kit/asked_strangers.hpp"

#include <algorithm>
#include <initializer_list>
#include <string>

#include <pelage/model/mix.hpp>

namespace pelage::asking {

namespace {

/// Whether it has nothing else but words that say nothing.
bool has_only(const std::vector<piece>& all, std::initializer_list<piece_kind> kinds) {
    return std::all_of(all.begin(), all.end(), [&](const piece& p) {
        return of_kind(p, piece_kind::filler) ||
               std::find(kinds.begin(), kinds.end(), p.kind) != kinds.end();
    });
}

/// A run of strangers near to nothing is told word by word.
void split_runs(strangers& s, const vocabulary& known) {
    std::vector<strangers::one> out;
    for (const strangers::one& w : s.words) {
        const std::vector<token> each = tokens_of(w.word);
        if (!w.near.empty() || each.size() < 2) {
            out.push_back(w);
            continue;
        }
        for (const token& t : each) {
            out.push_back({t.low, known.near(t.low)});
        }
    }
    s.words = std::move(out);
}

strangers each_stranger(const std::vector<piece>& all, const vocabulary& known) {
    strangers out;
    std::string run;
    const auto end_run = [&] {
        const bool told = std::any_of(out.words.begin(), out.words.end(),
                                      [&](const auto& w) { return w.word == run; });
        if (told) {
            run.clear();
        }
        if (!run.empty()) {
            const auto breeds = known.breeds_with(run);
            out.words.push_back({run, breeds.empty() ? known.near(run) : breeds});
            run.clear();
        }
    };
    for (const piece& p : all) {
        if (of_kind(p, piece_kind::stranger)) {
            run += (run.empty() ? "" : " ") + p.text;
            continue;
        }
        end_run();
        const bool thing = p.kind < piece_kind::telling_apart;
        if (thing && std::find(out.understood.begin(), out.understood.end(), p.text) ==
                         out.understood.end()) {
            out.understood.push_back(p.text);
        }
    }
    end_run();
    split_runs(out, known);
    return out;
}

}  // namespace

bool clips_double(const std::vector<piece>& all, const lookup_request& r) {
    return double_coat_said(all, r) && std::any_of(all.begin(), all.end(), [](const piece& p) {
               return of_kind(p, piece_kind::term) && p.means->clips;
           });
}

bool double_coat_said(const std::vector<piece>& all, const lookup_request& r) {
    return std::any_of(all.begin(), all.end(), [&](const piece& p) {
        if (of_kind(p, piece_kind::coat)) {
            return double_coated(p.coat);
        }
        try {
            return of_kind(p, piece_kind::breed) &&
                   double_coated(expect_coat(p.text, r.reference.genes, r.reference.coats)
                                     .may_be.likeliest());
        } catch (const error&) {  // a doodle
            return false;
        }
    });
}

asked about_strangers(const std::vector<piece>& all, const std::vector<token>& words,
                      const vocabulary& known, const lookup_request& r) {
    const bool none_known = has_only(all, {piece_kind::stranger});
    const bool number = r.text.find_first_of("0123456789") != std::string::npos;
    const bool tool_first = of_kind(all.front(), piece_kind::tool) &&
                            has_only(all, {piece_kind::tool, piece_kind::stranger}) &&
                            all.size() == 2 &&
                            all.front().text.find_first_not_of("0123456789./") == std::string::npos;
    if ((none_known && number) || tool_first) {
        return {tools_asked{{read_question(r)}}};
    }
    const std::string whole = words_of(words, 0, words.size());
    const std::vector<std::string> near = known.near(whole);
    const auto bred = [&](const std::string& n) { return sounds_like_mix(n, r.reference.genes); };
    const bool tools = count(all, piece_kind::tool) + count(all, piece_kind::place) +
                           count(all, piece_kind::breed) >
                       0;
    if (!tools && sounds_like_mix(whole, r.reference.genes) &&
        std::all_of(near.begin(), near.end(), bred)) {
        return {mix_asked{r.text}};
    }
    if (none_known && !near.empty()) {
        return {strangers{{{whole, near}}, {}}};
    }
    strangers out = each_stranger(all, known);
    out.clips_double = clips_double(all, r);
    return {std::move(out)};
}

}  // namespace pelage::asking
