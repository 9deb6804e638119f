// Questions to the look-up that another command answers: what to write there.
#include <pelage/base/shell.hpp>

#include "answers/words/asked.hpp"

namespace pelage::io {

namespace {

/// "pelage plan --mix 'shih tzu' --style one-length": the dog that was said, or any.
std::string about_the_dog(const std::string& verb, const asked_back& a) {
    const std::string dog = a.coat          ? "--coat " + std::string(name(*a.coat))
                            : a.dog.empty() ? "DOG"
                                            : "--mix " + shell_word(a.dog);
    return "pelage " + verb + " " + dog + (dog == "DOG" ? "" : " --style " + a.sheet);
}

}  // namespace

std::string elsewhere_words(const asked_back& a) {
    const std::string plan = about_the_dog("plan", a);
    const std::string regrow = about_the_dog("regrow", a);
    switch (a.why) {
        case asked_back::cause::denied:
            return "a question that is turned about isn't answered; found \"" + a.word +
                   "\"; ask for the thing itself, as in pelage lookup " +
                   shell_word(a.readings.front()) + "; what is never done: pelage lookup never";
        case asked_back::cause::price:
            return "what a groom or a tool costs is kept nowhere here; how many minutes a groom "
                   "takes: " +
                   plan;
        case asked_back::cause::minutes:
            return "how long a groom takes is told by its plan, \"about N min\": " + plan;
        case asked_back::cause::due:
            return "when a dog is back depends on its coat, length and brushing: " + regrow;
        case asked_back::cause::weeks:
            return "what of " + a.word + "? the coat that waits so long: " + plan + " --back-in " +
                   a.word + "; when the dog is back: " + regrow;
        case asked_back::cause::part: {
            const auto of = [&](const char* part) {
                return "pelage lookup " + shell_word("blade for " + a.dog + " " + part);
            };
            return "on which part of it? write " + of("back") + ", " + of("face") + " or " +
                   of("feet") + "; for all of the dog: " + plan;
        }
        default:
            return {};
    }
}

}  // namespace pelage::io
