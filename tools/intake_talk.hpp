// A talk that can be corrected, broken off and taken up again: every answer is kept under the name of its
// question. Asked again from the beginning, the talk takes what is kept in silence and asks from there on;
// so going back is asking again without the last answer.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/model/reference_data.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/weight.hpp>

#include "asker.hpp"
#include "intake_answers.hpp"

namespace pelage::cli {

/// One of several things with names: what is kept of it, what is read beside it, and other words for it.
struct named_choice {
    std::string name;
    std::string title{};
    std::vector<std::string> also{};
};

/// Which of them the text means: its number in the list from 1, a name, or the beginning of one that no
/// other begins with.
[[nodiscard]] std::optional<std::size_t> chosen(const std::vector<named_choice>& all,
                                                const std::string& text);
/// Those a text may be the beginning of, by name.
[[nodiscard]] std::vector<std::string> beginning_so(const std::vector<named_choice>& all,
                                                    const std::string& text);
/// Why it means none of them, and what would be right.
[[nodiscard]] std::string choice_complaint(const std::string& what,
                                           const std::vector<named_choice>& all,
                                           const std::string& text);
/// Whether a number as typed is meant, and not the beginning of a longer one.
[[nodiscard]] bool whole_number(std::size_t of, const std::string& text);

class intake_talk {
  public:
    /// `kept` is written to its file whenever it changes.
    intake_talk(asker& a, intake_answers& kept) : ask_(a), kept_(kept) {}

    using fault = std::function<std::string(const std::string&)>;

    char key(const std::string& id, const std::string& question, std::string_view keys,
             const std::vector<std::string>& names = {});
    bool yes(const std::string& id, const std::string& question);
    std::string line(const std::string& id, const std::string& question, const fault& wrong = {},
                     const completion& begins = {});
    /// One of `all`, which are listed with their numbers unless they were (`list`); `what` is what one of
    /// them is called. Enter is `usual`, where there is one.
    std::size_t choose(const std::string& id, const std::string& question, const std::string& what,
                       const std::vector<named_choice>& all,
                       const std::optional<std::size_t>& usual = {}, bool list = true);
    /// A line that may be an answer without Enter (`at_once`); what is kept is what it means.
    std::string pick(const std::string& id, const std::string& question, const fault& wrong,
                     const completion& begins,
                     const std::function<bool(const std::string&)>& at_once,
                     const std::function<std::string(const std::string&)>& meant);
    /// The same for what has names of one array, in the order of an enumeration.
    template <class Enum, std::size_t n>
    Enum one_of(const std::string& id, const std::string& question,
                const std::array<std::string_view, n>& names) {
        std::string text = question + ":";
        std::string keys;
        for (std::size_t i = 0; i < n; ++i) {
            keys += static_cast<char>('1' + static_cast<int>(i));
            text += std::string(" ") + keys.back() + " " + std::string(names[i]);
        }
        return static_cast<Enum>(key(id, text, keys, {names.begin(), names.end()}) - '1');
    }
    void say(const std::string& text);

    /// An answer that `take` gives, unless one is kept that `sound` takes: kept and given.
    std::string answered(const std::string& id,
                         const std::function<bool(const std::string&)>& sound,
                         const std::function<std::string()>& take);

  private:
    asker& ask_;
    intake_answers& kept_;
    std::size_t next_ = 0;
};

/// What an intake is about.
struct intake_matter {
    const reference_data& known;
    const std::vector<style>& styles;
    std::optional<date> today{};
    const dog* on_file = nullptr;     ///< the dog as its file has it; null: a new one
    const dog* by_record = nullptr;   ///< ... with its record laid over it
    std::optional<weight> weighed{};  ///< by its file
};

/// What it came to.
struct intake_result {
    dog patient;
    std::optional<weight> weighed{};
};

/// What the parts of the intake work on.
struct intake_state {
    intake_talk& ask;
    const intake_matter& about;
    dog& d;
    std::optional<weight>& weighed;
};

// who it is (interview_who.cpp)
void ask_name(intake_state& s);
void ask_breed(intake_state& s);
void ask_coat(intake_state& s);
void ask_size(intake_state& s);
void ask_sheet(intake_state& s);
void ask_age(intake_state& s);
void ask_weight(intake_state& s);
// how it is (interview_whole.cpp)
void ask_stop_list(intake_state& s);
void ask_health(intake_state& s);
void ask_skin_and_coat(intake_state& s);
void ask_brushing(intake_state& s);
void ask_last_groom(intake_state& s);
void ask_hair(intake_state& s);
void ask_hates(intake_state& s);
void ask_alerts(intake_state& s);
void ask_note(intake_state& s);
// what the comb finds (interview_comb.cpp)
void ask_still_there(intake_state& s);
void ask_comb(intake_state& s);

}  // namespace pelage::cli
