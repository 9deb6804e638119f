#include "dog_in_words.hpp"

#include <algorithm>
#include <filesystem>

#include <pelage/base/phrase.hpp>
#include <pelage/base/shell.hpp>
#include <pelage/base/suggest.hpp>

#include "words_said.hpp"

namespace pelage::cli {

namespace {

/// Whether that can stand behind --mix: read, or a cross whose parents are asked back.
bool breed_called(const std::string& text, const workplace& w) {
    try {
        (void)expect_coat(text, w.reference.genes, w.reference.coats);
        return true;
    } catch (const error&) {
        const auto& open = w.reference.genes.asked;
        return std::any_of(open.begin(), open.end(), [&](const asked_breed& a) {
            return std::any_of(a.endings.begin(), a.endings.end(),
                               [&](const std::string& e) { return text.ends_with(e); });
        });
    }
}

/// The options that the words behind the dog come to.
std::string options_of(const std::string& rest, const workplace& w) {
    faults ignored;
    if (rest.empty()) {
        return " --length '7F all off'";
    }
    if (const service* s = service_in("", rest, w.reference, ignored)) {
        return " --service " + std::string(name(s->kind));
    }
    if (find(w.styles, rest) != nullptr) {
        return " --style " + shell_word(rest);
    }
    return " --length " + shell_word(rest);
}

/// What to write for "biscuit 7F" or "cockapoo 7F all off".
std::string in_options(const std::string& text, const std::vector<std::string>& dogs,
                       const workplace& w) {
    const strings words = split_at(text, ' ');
    for (std::size_t n = words.size(); n > 0; --n) {
        std::string first = phrase(words, 0, n);
        const std::string rest = phrase(words, n, words.size());
        if (std::find(dogs.begin(), dogs.end(), first) != dogs.end()) {
            return "what is asked of a dog stands behind options: pelage plan " +
                   shell_word(first) + options_of(rest, w);
        }
        first.resize(first.size() - (first.ends_with(',') ? 1 : 0));
        if (breed_called(first, w)) {
            return "a dog in words: pelage plan --mix " + shell_word(first) + options_of(rest, w);
        }
    }
    return "a dog in words: pelage plan --mix cockapoo --length '7F all off'";
}

}  // namespace

bool is_file_name(const std::string& dog) {
    if (dog.size() > 5 && dog.ends_with(".toml")) {
        return true;
    }
    std::error_code unseen;
    return dog.find('/') != std::string::npos &&
           (dog.find(' ') == std::string::npos || std::filesystem::exists(dog, unseen));
}

std::string no_dog_called(const std::string& text, const workplace& w) {
    const std::vector<std::string> known = ids_to_ask(w);
    const std::string start = "no dog of the salon is called \"" + text + "\"";
    const std::string write =
        (known.empty() ? "" : "the id of one (" + joined(known, ", ") + ") or ") +
        "a file that ends in .toml";
    const bool sentence = text.find(' ') != std::string::npos;
    if (sentence || breed_called(text, w)) {
        return start + "; " + in_options(text, known, w) + "; or write " + write;
    }
    return start + did_you_mean(text, known) + "; write " + write;
}

}  // namespace pelage::cli
