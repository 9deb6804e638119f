// quiz: questions on one's own kit; what was answered is kept in a file of the trainee's.
#include <algorithm>
#include <istream>
#include <ostream>

#include <pelage/answers/quiz.hpp>
#include <pelage/data/quiz_file.hpp>

#include "asker.hpp"
#include "command.hpp"
#include "resolve_arguments.hpp"

namespace pelage::cli {

namespace {

struct quiz_options : common_options {
    using common_options::common_options;
    text_option whose{app, "--as", "NAME", "who answers; kept in NAME.quiz.jsonl, or a path"};
    text_option many{app, "-n,--number", "N", "so many questions, 1 to 100; 10 if not said"};
    text_option topic{app, "--topic", "TOPIC",
                      "lengths, ways, nevers, substitutes, combs or sheets"};
    flag_option score{app, "--score", "ask nothing; what the answers came to so far"};
};

constexpr introduction about{
    "quiz", "questions on your own kit and sheets, with the reason",
    "pelage quiz\n"
    "pelage quiz --as mia --salon my-salon\n"
    "pelage quiz --topic nevers -n 5 --explain\n"
    "pelage quiz --as mia --salon my-salon --score\n",
    "The number and Enter answers, q ends; what was answered until then is kept.\n"
    "Questions go to standard error, answers come from standard input. What was missed\n"
    "comes first the next time, then what is due again, then what is new; the waits\n"
    "are figures: pelage lookup --sources quiz. --explain says how each is known.\n"};

/// Where the answers of NAME are kept.
std::string path_of(const std::string& whose, const quiz_options& o, const surroundings& around) {
    constexpr std::string_view ending = ".quiz.jsonl";
    if (!is_plain_line(whose)) {
        throw error(errc::usage,
                    "--as: a name in plain text, without control characters; found \"" + whose +
                        "\"; write it like --as mia");
    }
    if (whose.find('/') != std::string::npos || whose.ends_with(ending)) {
        return whose.ends_with(ending) ? whose : whose + std::string(ending);
    }
    const std::string dir = o.salon.empty() ? around.salon : o.salon;
    if (dir.empty()) {
        throw error(errc::usage,
                    "--as: the invented demo salon keeps nothing; write your salon behind --salon, "
                    "or a path: --as ./" +
                        whose);
    }
    return dir + (dir.ends_with('/') ? "" : "/") + whose + std::string(ending);
}

/// "mia" of "trainees/mia.quiz.jsonl".
std::string name_in(const std::string& path) {
    const auto slash = path.rfind('/');
    const std::string file = slash == std::string::npos ? path : path.substr(slash + 1);
    return file.substr(0, file.find(".quiz.jsonl"));
}

/// The salon's own sheets, or the reference's where it has none.
std::vector<style> sheets_asked(const workplace& w) {
    std::vector<style> own;
    for (const style& s : w.place().styles) {
        const style* known = find(w.reference.styles, s.id);
        if (known == nullptr || known->at.file != s.at.file) {
            own.push_back(s);
        }
    }
    return own.empty() ? w.reference.styles : own;
}

class sitting {
  public:
    sitting(const quiz_request& r, const workplace& w, const surroundings& around, std::string path)
        : r_(r),
          w_(w),
          in_(*around.in),
          talk_(*around.talk),
          path_(std::move(path)),
          whose_(name_in(path_)) {}

    /// Asks until all were asked or the answers end.
    void ask(const std::vector<quiz_question>& all, const std::vector<quiz_turn_of>& turns,
             std::vector<quiz_answer>& answers, io::quiz_result& out) {
        const date today = w_.print.today.value();
        out.answers = 0;
        say(io::quiz_caution());
        say("The number and Enter; q ends.");
        for (std::size_t i = 0; i < turns.size(); ++i) {
            const quiz_question& q = all[turns[i].question];
            // asked again its answers stand otherwise: what is to be remembered is no number
            const auto before = std::count_if(answers.begin(), answers.end(),
                                              [&](const quiz_answer& a) { return a.key == q.key; });
            const posed_question p =
                pose(q, today, before == 0 ? whose_ : whose_ + " " + std::to_string(before));
            put(q, p, i + 1, turns.size(), turns[i].why);
            const auto chosen = answer(p.options.size());
            if (!chosen) {
                return;
            }
            const bool right = *chosen == p.right;
            const quiz_answer a{today, q.key, q.topic, right};
            if (!path_.empty()) {
                io::keep_quiz_answer(path_, a);
            }
            answers.push_back(a);
            ++*out.answers;
            out.right += right ? 1U : 0U;
            tell(q, p, *chosen, out);
        }
    }

  private:
    void say(const std::string& text) {
        io::document d;
        d.say(text);
        talk_ << io::text_of(d, w_.print.units, 80);
    }

    void put(const quiz_question& q, const posed_question& p, std::size_t number, std::size_t of,
             quiz_turn why) {
        const char* again = why == quiz_turn::missed ? "missed the last time"
                            : why == quiz_turn::due  ? "again"
                                                     : "";
        talk_ << "\n" << number << " of " << of << (*again != '\0' ? ", " : "") << again << "\n";
        say(io::question_words(q, r_, w_.print.units));
        for (std::size_t i = 0; i < p.options.size(); ++i) {
            talk_ << "  " << i + 1 << "  " << io::option_words(p.options[i], q, w_.print.units)
                  << "\n";
        }
    }

    /// Which option is chosen; nothing at q and where the answers end.
    std::optional<std::size_t> answer(std::size_t options) {
        while (true) {
            talk_ << "> " << std::flush;
            std::string text;
            if (!std::getline(in_, text)) {
                talk_ << "\n";
                return std::nullopt;
            }
            const std::string_view word =
                detail::trimmed(std::string_view(text).substr(0, text.find('\r')));
            if (word == "q" || word == "Q") {
                return std::nullopt;
            }
            if (word.size() == 1 && word[0] >= '1' &&
                word[0] < static_cast<char>('1' + static_cast<char>(options))) {
                return static_cast<std::size_t>(word[0] - '1');
            }
            talk_ << "  a number from 1 to " << options << ", or q\n";
        }
    }

    void tell(const quiz_question& q, const posed_question& p, std::size_t chosen,
              io::quiz_result& out) {
        const length_unit u = w_.print.units;
        const bool right = chosen == p.right;
        const std::string best = io::option_words(q.right, q, u);
        const std::string why = io::reason_words(q, p, right ? nullptr : &p.options[chosen], r_, u);
        say((right ? "Right. " : "No: " + best + ". ") + why);
        if (w_.print.explain) {
            say(io::basis_words(q, r_));
        }
        if (!right) {
            out.missed.push_back(io::question_words(q, r_, u) + " " + best + ". " + why);
        }
    }

    const quiz_request& r_;
    const workplace& w_;
    std::istream& in_;
    std::ostream& talk_;
    std::string path_;
    std::string whose_;
};

void keep_topic(const std::string& text, const std::vector<quiz_question>& all,
                std::vector<quiz_turn_of>& turns, faults& f) {
    const auto topic =
        choice_in("--topic", text, {quiz_topic_names.begin(), quiz_topic_names.end()}, f);
    f.throw_if_any();
    std::erase_if(turns, [&](const quiz_turn_of& t) {
        return topic && all[t.question].topic != static_cast<quiz_topic>(*topic);
    });
}

bool any_of_topic(const std::vector<quiz_question>& all, const std::string& topic) {
    return std::any_of(all.begin(), all.end(),
                       [&](const quiz_question& q) { return name(q.topic) == topic; });
}

reply quiz(quiz_options& o, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(o, around, f);
    const auto many = o.many.empty()
                          ? std::optional{10U}
                          : whole_in("--number", o.many, 1, 100, "write it like -n 10", f);
    f.throw_if_any();
    if (!w.print.today) {
        throw error(errc::usage, "quiz: today isn't known; write --today");
    }
    if (o.score && o.whose.empty()) {
        throw error(errc::usage, "--score: whose? write --as NAME as well");
    }
    const std::string path = o.whose.empty() ? "" : path_of(o.whose, o, around);
    io::quiz_result out{name_in(path)};
    io::quiz_record kept = path.empty() ? io::quiz_record{} : io::read_quiz(path);
    for (const diagnostic& d : kept.faults) {
        note(around, d.file + ":" + std::to_string(d.line) + ": " + d.text);
    }
    const std::vector<style> sheets = sheets_asked(w);
    const quiz_request r{w.reference, w.place().rules, w.tools(), sheets, w.print.today};
    const auto all = quiz_questions(r);
    const quiz_rules& rules = io::quiz_figures();
    auto turns = quiz_order(all, kept.answers, rules, *w.print.today, out.whose);
    keep_topic(o.topic, all, turns, f);
    turns.resize(std::min<std::size_t>(turns.size(), *many));
    if (!o.score && !turns.empty()) {
        if (around.in == nullptr || around.talk == nullptr) {
            throw error(errc::usage, "quiz: nobody is there to answer");
        }
        sitting(r, w, around, path).ask(all, turns, kept.answers, out);
    } else if (!o.score) {
        note(around, o.topic.empty() || any_of_topic(all, o.topic)
                         ? "nothing of it is due today"
                         : "this kit and these sheets give no question on \"" + o.topic + "\"");
    }
    out.scores = quiz_scores(all, kept.answers, rules);
    if (!path.empty()) {
        out.next = quiz_next_day(all, kept.answers, rules);
    }
    return {w.json ? io::json_of(out) : w.written(io::document_of(out, rules, w.print))};
}

}  // namespace

void add_quiz(CLI::App& root, task& chosen) {
    add_command<quiz_options>(root, chosen, about, quiz);
}

}  // namespace pelage::cli
