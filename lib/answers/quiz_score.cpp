// What answers come to: a sitting, and a table of topics.
#include <array>

#include <pelage/answers/quiz.hpp>

#include "answers/json.hpp"

namespace pelage::io {

namespace {

std::string topic_words(quiz_topic t) {
    constexpr std::array<std::string_view, 6> words{"lengths",
                                                    "ways: with or against the lay",
                                                    "nevers: what never goes there",
                                                    "substitutes: what replaces what",
                                                    "combs",
                                                    "sheets"};
    return std::string(words[static_cast<std::size_t>(t)]);
}

/// Of first answers alone, a later one was told before; nothing of nothing.
cell share_of(const quiz_score& s, const std::string& fewest) {
    if (s.first == 0) {
        return {std::monostate{}, "not asked yet"};
    }
    if (!s.enough) {
        return {std::monostate{}, "from " + fewest + " on"};
    }
    return cell{
        percentage{static_cast<std::int64_t>(s.first_right), static_cast<std::int64_t>(s.first)}};
}

typed_table score_table(const quiz_result& q, const std::string& fewest) {
    typed_table t{{"topic", "asked", "right at first", "share", "missed now", "questions"}};
    t.numbers = {false, true, true, true, true, true};
    for (const quiz_score& s : q.scores) {
        t.rows.push_back({topic_words(s.topic), std::int64_t{s.first}, std::int64_t{s.first_right},
                          share_of(s, fewest), std::int64_t{s.missed}, std::int64_t{s.of_kit}});
    }
    return t;
}

}  // namespace

document document_of(const quiz_result& q, const quiz_rules& rules, const print_options& o) {
    document d{"Quiz" + (q.whose.empty() ? "" : ": " + q.whose)};
    if (q.answers && *q.answers == 0) {
        d.say("Nothing was answered.");
    } else if (q.answers) {
        d.say("This time " + std::to_string(q.right) + " of " + std::to_string(*q.answers) +
              " right." + (q.whose.empty() ? " Nothing is kept without --as NAME." : ""));
        if (!q.missed.empty()) {
            d.say("Missed:");
        }
        for (const std::string& one : q.missed) {
            d.item(one);
        }
    }
    if (!q.whose.empty() || !q.answers) {
        const std::string fewest = detail::fixed(rules.score_from.best, 0);
        d.open("All answers" + (q.whose.empty() ? std::string{} : " of " + q.whose), true);
        d.show(score_table(q, fewest));
        d.say("A share is of the first answer to each question, told from " + fewest +
              " on; guessing alone gets 1 in 4, of three answers 1 in 3. It says what was answered "
              "here, "
              "and nothing of hands at the table.");
    }
    if (q.next) {
        d.say("Due again: " +
              (o.today && *q.next <= *o.today ? std::string("now") : in_words(*q.next)) + ".");
    }
    return d;
}

std::string json_of(const quiz_result& q) {
    json topics = json::array();
    for (const quiz_score& s : q.scores) {
        json one{{"topic", name(s.topic)}, {"answers", s.answers}, {"right", s.right}};
        one["first_answers"] = s.first;
        one["first_right"] = s.first_right;
        one["share"] = s.enough ? share_json(static_cast<double>(s.first_right) / s.first) : json{};
        one["missed_now"] = s.missed;
        one["asked_of_kit"] = s.asked;
        one["of_kit"] = s.of_kit;
        topics.push_back(std::move(one));
    }
    json out{{"schema", "pelage/quiz/1"}};
    if (!q.whose.empty()) {
        out["trainee"] = q.whose;
    }
    if (q.answers) {
        out["this_time"] = {{"answers", *q.answers}, {"right", q.right}};
    }
    out["topics"] = std::move(topics);
    if (q.next) {
        out["due"] = iso(*q.next);
    }
    return dumped(out);
}

}  // namespace pelage::io
