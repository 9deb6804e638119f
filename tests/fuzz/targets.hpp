// Every reader of what strangers write, as a function of any bytes. What it says of them is no matter;
// it must say it by an error, and none that is our own fault.
#pragma once

#include <array>
#include <string>
#include <string_view>

namespace fuzz {

using target = void (*)(const std::string&);

void dog(const std::string& text);      ///< a dog's file
void sheet(const std::string& text);    ///< a style sheet's file, and what is doubtful about it
void salon(const std::string& text);    ///< a salon's file
void roster(const std::string& text);   ///< a roster: lines of JSON, each planned
void intake(const std::string& text);   ///< the answers to an intake
void record(const std::string& text);   ///< a record, and its lines with a checksum that agrees
void words(const std::string& text);    ///< a look-up, and what options take
void offers(const std::string& text);   ///< a list of offers, and what it offers
void vectors(const std::string& text);  ///< check vectors, and what they ask
void page(const std::string& text);     ///< a document made of these bytes, written in every form
void problem_solved(const std::string& text);  ///< a small problem, against every plan priced
void posterior(
    const std::string& text);  ///< what was measured, against its posterior by a plain sum

struct named_target {
    std::string_view name;
    target reads;
};
inline constexpr std::array<named_target, 12> targets{{{"dog", dog},
                                                       {"sheet", sheet},
                                                       {"salon", salon},
                                                       {"roster", roster},
                                                       {"intake", intake},
                                                       {"record", record},
                                                       {"words", words},
                                                       {"offers", offers},
                                                       {"vectors", vectors},
                                                       {"page", page},
                                                       {"problem_solved", problem_solved},
                                                       {"posterior", posterior}}};

/// Runs a target over bytes. An error that people are told is an answer; our own fault, or any other
/// exception, ends the program.
void run(target reads, const std::string& text);

}  // namespace fuzz
