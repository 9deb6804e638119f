// When a question is asked, how it is put, and what the answers come to.
#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include <pelage/kit/quiz.hpp>

namespace pelage {

namespace {

/// FNV-1a (64 bits), then mixed once more: an order that is the same on every machine.
std::uint64_t scattered(std::string_view text, std::string_view seed) {
    std::uint64_t h = 0xcbf29ce484222325U;
    for (const std::string_view part : {seed, std::string_view{"\n"}, text}) {
        for (const char c : part) {
            h = (h ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
        }
    }
    h = (h ^ (h >> 30U)) * 0xbf58476d1ce4e5b9U;
    return h ^ (h >> 31U);
}

std::string seed_of(const date& today, std::string_view whose) {
    return iso(today) + " " + std::string(whose);
}

/// What was answered to one question.
struct standing {
    date last{};
    bool missed = false;
    std::size_t in_a_row = 0;  ///< right answers up to the last
};

std::map<std::string, standing> standings(const std::vector<quiz_answer>& before) {
    std::map<std::string, standing> out;
    for (const quiz_answer& a : before) {
        standing& s = out[a.key];
        // right again on the same day is no longer remembered
        const bool again = a.right && s.in_a_row > 0 && s.last == a.on;
        s.in_a_row = !a.right ? 0 : again ? s.in_a_row : s.in_a_row + 1;
        s.missed = !a.right;
        s.last = a.on;
    }
    return out;
}

date due_on(const standing& s, const quiz_rules& rules) {
    const std::size_t box = std::min(s.in_a_row, rules.boxes.size()) - 1;
    return plus(s.last, rules.boxes[box].best);
}

/// One of each topic by turns, each topic in the order it has.
std::vector<quiz_turn_of> by_turns(const std::vector<quiz_question>& all,
                                   const std::vector<quiz_turn_of>& fresh) {
    std::array<std::size_t, quiz_topic_names.size()> so_far{};
    std::vector<std::pair<std::size_t, quiz_turn_of>> rounds;
    for (const quiz_turn_of& t : fresh) {
        rounds.emplace_back(so_far[static_cast<std::size_t>(all[t.question].topic)]++, t);
    }
    std::stable_sort(rounds.begin(), rounds.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<quiz_turn_of> out;
    for (const auto& r : rounds) {
        out.push_back(r.second);
    }
    return out;
}

}  // namespace

std::vector<quiz_turn_of> quiz_order(const std::vector<quiz_question>& all,
                                     const std::vector<quiz_answer>& before,
                                     const quiz_rules& rules, const date& today,
                                     std::string_view whose) {
    const auto known = standings(before);
    const std::string seed = seed_of(today, whose);
    std::vector<std::tuple<date, std::uint64_t, quiz_turn_of>> asked;
    std::vector<std::pair<std::uint64_t, quiz_turn_of>> fresh;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const std::uint64_t place = scattered(all[i].key, seed);
        const auto at = known.find(all[i].key);
        if (at == known.end()) {
            fresh.emplace_back(place, quiz_turn_of{i, quiz_turn::fresh});
        } else if (at->second.missed) {
            asked.emplace_back(date{}, place, quiz_turn_of{i, quiz_turn::missed});
        } else if (due_on(at->second, rules) <= today) {
            asked.emplace_back(due_on(at->second, rules), place, quiz_turn_of{i, quiz_turn::due});
        }
    }
    const auto key = [](const auto& t) {
        return std::tuple{std::get<2>(t).why, std::get<0>(t), std::get<1>(t),
                          std::get<2>(t).question};
    };
    std::sort(asked.begin(), asked.end(),
              [&](const auto& a, const auto& b) { return key(a) < key(b); });
    std::sort(fresh.begin(), fresh.end(), [](const auto& a, const auto& b) {
        return std::tuple{a.first, a.second.question} < std::tuple{b.first, b.second.question};
    });
    std::vector<quiz_turn_of> out;
    for (const auto& t : asked) {
        out.push_back(std::get<2>(t));
    }
    std::vector<quiz_turn_of> in_turn;
    for (const auto& t : fresh) {
        in_turn.push_back(t.second);
    }
    const auto rest = by_turns(all, in_turn);
    out.insert(out.end(), rest.begin(), rest.end());
    return out;
}

std::optional<date> quiz_next_day(const std::vector<quiz_question>& all,
                                  const std::vector<quiz_answer>& before, const quiz_rules& rules) {
    std::optional<date> out;
    const auto known = standings(before);
    for (const quiz_question& q : all) {
        if (const auto at = known.find(q.key); at != known.end()) {
            const date d = at->second.missed ? at->second.last : due_on(at->second, rules);
            out = out ? std::min(*out, d) : d;
        }
    }
    return out;
}

namespace {

/// What is left by an answer, where it is about lengths.
std::optional<length> left_by(const quiz_option& o) {
    if (const auto* l = std::get_if<length>(&o.says)) {
        return *l;
    }
    return o.leaves ? std::optional{o.leaves->best} : std::nullopt;
}

/// The wrong answers that stand beside the right one, by their number. Of lengths shorter and longer ones by chance:
/// else the shortest would be right too often.
std::vector<std::size_t> beside_right(const quiz_question& q, const std::string& seed) {
    constexpr std::size_t most_wrong = 3;
    constexpr std::size_t plausible = 6;
    const auto place = [&](std::size_t i) { return scattered(std::to_string(i), seed); };
    std::vector<std::size_t> below;
    std::vector<std::size_t> other;
    for (std::size_t i = 0; i < q.wrong.size(); ++i) {
        const auto wrong = left_by(q.wrong[i]);
        const auto right = left_by(q.right);
        auto& side = wrong && right && *wrong < *right ? below : other;
        if (side.size() < plausible) {
            side.push_back(i);
        }
    }
    const std::size_t fewest = most_wrong - std::min(most_wrong, other.size());
    const std::size_t most = std::min(most_wrong, below.size());
    const std::size_t shorter_ones =
        most <= fewest
            ? most
            : fewest + static_cast<std::size_t>(scattered("shorter", seed) % (most - fewest + 1));
    const auto drawn = [&](std::vector<std::size_t> from, std::size_t n) {
        std::sort(from.begin(), from.end(), [&](std::size_t a, std::size_t b) {
            return std::tuple{place(a), a} < std::tuple{place(b), b};
        });
        from.resize(std::min(from.size(), n));
        return from;
    };
    std::vector<std::size_t> out = drawn(below, shorter_ones);
    const auto rest = drawn(other, most_wrong - out.size());
    out.insert(out.end(), rest.begin(), rest.end());
    std::sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) {
        return std::tuple{place(a), a} < std::tuple{place(b), b};
    });
    return out;
}

}  // namespace

posed_question pose(const quiz_question& q, const date& today, std::string_view whose) {
    const std::string seed = seed_of(today, whose) + " " + q.key;
    const std::vector<std::size_t> beside = beside_right(q, seed);
    posed_question out;
    for (const std::size_t i : beside) {
        out.options.push_back(q.wrong[i]);
    }
    out.right = static_cast<std::size_t>(scattered("right", seed) % (out.options.size() + 1));
    out.options.insert(out.options.begin() + static_cast<std::ptrdiff_t>(out.right), q.right);
    return out;
}

std::vector<quiz_score> quiz_scores(const std::vector<quiz_question>& all,
                                    const std::vector<quiz_answer>& answers,
                                    const quiz_rules& rules) {
    std::vector<quiz_score> out(quiz_topic_names.size());
    for (std::size_t t = 0; t < out.size(); ++t) {
        out[t].topic = static_cast<quiz_topic>(t);
    }
    std::set<std::string> begun;
    for (const quiz_answer& a : answers) {
        quiz_score& s = out[static_cast<std::size_t>(a.topic)];
        ++s.answers;
        s.right += a.right ? 1U : 0U;
        if (begun.insert(a.key).second) {
            ++s.first;
            s.first_right += a.right ? 1U : 0U;
        }
    }
    const auto known = standings(answers);
    for (const quiz_question& q : all) {
        quiz_score& s = out[static_cast<std::size_t>(q.topic)];
        const auto at = known.find(q.key);
        ++s.of_kit;
        s.asked += at != known.end() ? 1U : 0U;
        s.missed += at != known.end() && at->second.missed ? 1U : 0U;
    }
    for (quiz_score& s : out) {
        s.enough = s.first >= rules.score_from.best;
    }
    return out;
}

}  // namespace pelage
