#include "kit/asked_strangers.hpp"

#include <algorithm>
#include <string>

#include "kit/asked_settle.hpp"
#include "kit/asked_tokens.hpp"

namespace pelage::asking {

namespace {

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

}  // namespace

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

}  // namespace pelage::asking
