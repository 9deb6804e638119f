#include <algorithm>

#include <nlohmann/json.hpp>

#include <pelage/data/embedded.hpp>
#include <pelage/data/quiz_file.hpp>
#include <pelage/data/record_file.hpp>
#include <pelage/data/reference.hpp>

#include "data/appended_file.hpp"
#include "data/read/readers.hpp"
#include "data/record_line.hpp"

namespace pelage::io {

namespace {

using json = nlohmann::ordered_json;

std::optional<quiz_answer> answer_in(std::string_view line) {
    const json j = sum_agrees(line) ? json::parse(line, nullptr, false) : json{};
    const auto text = [&](const char* key) {
        return j.is_object() && j.contains(key) && j[key].is_string() ? j[key].get<std::string>()
                                                                      : std::string{};
    };
    quiz_answer a;
    const auto on = parse_date(text("date"));
    const auto topic = std::find(quiz_topic_names.begin(), quiz_topic_names.end(), text("topic"));
    a.key = text("question");
    if (!on || topic == quiz_topic_names.end() || a.key.empty() || !j.contains("right") ||
        !j["right"].is_boolean()) {
        return std::nullopt;
    }
    a.on = *on;
    a.topic = static_cast<quiz_topic>(topic - quiz_topic_names.begin());
    a.right = j["right"].get<bool>();
    return a;
}

}  // namespace

const quiz_rules& quiz_figures() {
    static const quiz_rules rules = [] {
        constexpr std::string_view name = "reference/quiz.toml";
        quiz_rules out;
        diagnostics wrong;
        place_finder places(reference().dog_body);
        for (const embedded_file& f : embedded_reference()) {
            if (f.path == name) {
                (void)read_text({std::string(f.path), std::string(f.text)}, wrong,
                                [&](const node& root, faults& faults_of) {
                                    page p{faults_of, reference(), places, nullptr, nullptr, true};
                                    get_quiz(root, p, out);
                                });
            }
        }
        if (!wrong.empty() || out.score_from.best < 1.0) {
            throw error(errc::internal, "the embedded figures of the quiz have faults");
        }
        return out;
    }();
    return rules;
}

quiz_record read_quiz(const std::string& path) {
    quiz_record out;
    const std::string bytes = read_ordinary_file(path).value_or("");
    std::string_view rest = bytes;
    for (unsigned number = 1; !rest.empty(); ++number) {
        const auto end = rest.find('\n');
        const std::string_view line = rest.substr(0, end);
        if (const auto a = answer_in(line)) {
            out.answers.push_back(*a);
        } else {
            out.faults.push_back({path, number, 1, errc::conflict,
                                  "not an answer as the quiz wrote it; it isn't counted"});
        }
        rest.remove_prefix(end == std::string_view::npos ? rest.size() : end + 1);
    }
    return out;
}

void keep_quiz_answer(const std::string& path, const quiz_answer& a) {
    const json j{{"format", 1},
                 {"date", iso(a.on)},
                 {"topic", name(a.topic)},
                 {"question", a.key},
                 {"right", a.right}};
    const std::string line = with_checksum(j.dump(-1, ' ', false, json::error_handler_t::replace));
    appended_file file(path);
    const std::string bytes = file.bytes();
    const auto end = bytes.rfind('\n');
    const std::size_t whole = end == std::string::npos ? 0 : end + 1;
    const bool torn = whole < bytes.size();
    if (torn && !answer_in(std::string_view(bytes).substr(whole))) {
        file.cut_to(whole);
        file.append(line);
    } else {
        file.append((torn ? "\n" : "") + line);  // of the last line only its end is missing
    }
}

}  // namespace pelage::io
