// What is wrong with how the command was called: what the parser knows of its options, in our words and
// all at once, where it would stop at the first.
#include <algorithm>
#include <array>
#include <set>
#include <string_view>
#include <utility>

#include <CLI/CLI.hpp>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>

#include "command_line.hpp"

namespace pelage::cli {

namespace {

using names = std::vector<std::string>;

std::string complaint(const std::string& text) {
    return "pelage: error: " + text + "\n";
}

std::string quoted(const std::string& text) {
    return "\"" + text + "\"";
}

/// "--coat", or what an operand is called and what was written: the dog "biscuit".
std::string shown(const CLI::Option& o) {
    return o.get_positional() ? "the " + o.get_name(true) + " " + quoted(joined(o.results(), " "))
                              : "--" + o.get_lnames().front();
}

names children(const CLI::App& app) {
    names out;
    for (const CLI::App* sub : app.get_subcommands(nullptr)) {
        if (sub->get_name() != "complete") {  // shells know it
            out.push_back(sub->get_name());
        }
    }
    return out;
}

names long_names(const CLI::App& app) {
    names out;
    for (const CLI::Option* o : app.get_options()) {
        if (!o->get_lnames().empty()) {
            out.push_back("--" + o->get_lnames().front());
        }
    }
    return out;
}

/// Which subcommands of `app`, and of these, have that option.
names owners_of(const std::string& option, const CLI::App& app) {
    names out;
    for (const CLI::App* sub : app.get_subcommands(nullptr)) {
        if (sub->get_option_no_throw(option) != nullptr) {
            out.push_back(called(*sub));
        }
        const names below = owners_of(option, *sub);
        out.insert(out.end(), below.begin(), below.end());
    }
    return out;
}

/// What an option is called here that people look for under another word; empty: nothing.
std::string our_word_for(const std::string& option) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 8> words{
        {{"--breed", "--mix"},
         {"--cross", "--mix"},
         {"--weight", "--size"},
         {"--blade", "--length"},
         {"--date", "--today"},
         {"--matted", "--mat"},
         {"--mats", "--mat"},
         {"--temperament", "--alert"}}};
    const auto at =
        std::find_if(words.begin(), words.end(), [&](const auto& w) { return w.first == option; });
    return at == words.end() ? "" : std::string(at->second);
}

/// An option that `app` doesn't have: one of those below it, beside it, elsewhere, or a slip of the pen.
std::string strange_option(const std::string& word, const CLI::App& app) {
    const std::string name = word.substr(0, word.find('='));
    if (const names below = owners_of(name, app); !below.empty()) {
        return complaint(name + ": goes behind " +
                         (app.get_parent() == nullptr ? "the command" : one_of(below)) +
                         "; found it before that");
    }
    for (const CLI::App* over = app.get_parent(); over != nullptr; over = over->get_parent()) {
        if (const names owners = owners_of(name, *over); !owners.empty()) {
            return complaint(name + ": goes with " + one_of(owners) + "; found " + called(app) +
                             "; leave it out");
        }
    }
    const std::string ours = our_word_for(name);
    if (!ours.empty() && app.get_option_no_throw(ours) != nullptr) {
        return complaint("unknown option " + quoted(word) + "; did you mean " + quoted(ours) + "?");
    }
    return complaint("unknown option " + quoted(word) + did_you_mean(name, long_names(app)));
}

/// A word for which `app` has no place.
std::string strange_word(const std::string& word, const CLI::App& app) {
    const names subs = children(app);
    if (!subs.empty()) {
        const std::string meant = did_you_mean(word, subs);
        const bool root = app.get_parent() == nullptr;
        return complaint((root ? "unknown command " : called(app) + ": found ") + quoted(word) +
                         (meant.empty() ? "; write " + one_of(subs) : meant));
    }
    for (const CLI::Option* o : app.get_options()) {
        if (o->get_positional() && o->count() > 0) {
            return complaint(called(app) + ": one " + o->get_name(true) + " at a time; found " +
                             quoted(word) + " after " + quoted(o->results().back()) +
                             "; leave one out");
        }
    }
    return complaint(called(app) + ": nothing but options comes behind it; found " + quoted(word) +
                     "; leave it out");
}

/// Words that no option or operand took. An option may have had the words behind it as its value.
std::string strangers(const CLI::App& app) {
    std::string of_options;
    std::string of_words;
    for (const std::string& w : app.remaining()) {
        if (w == "--") {
            continue;
        }
        if (w.size() > 1 && w.front() == '-') {
            of_options += strange_option(w, app);
        } else if (of_words.empty()) {  // the first explains the rest
            of_words += strange_word(w, app);
        }
    }
    return of_options.empty() ? of_words : of_options;
}

/// An option with nothing in it, as an empty variable of a script leaves it: to pass it over would be
/// to guess. Operands of several words are read as one text, which may not be empty either.
std::string empties(const CLI::Option& o) {
    const bool operand = o.get_positional();
    std::string out;
    const auto is_option = [](const std::string& v) {
        return v.size() > 2 && v.starts_with("--") && v[2] >= 'a' && v[2] <= 'z';
    };
    for (const std::string& value : o.results()) {
        if (!operand && is_option(value)) {
            out += complaint(shown(o) + ": found nothing behind it but the option " +
                             quoted(value) + "; write something behind it, or leave it out");
        }
    }
    for (const std::string& value : o.results()) {
        if (value.find_first_not_of(" \t") == std::string::npos &&
            !(operand && o.get_items_expected_max() > 1)) {
            out += complaint((operand ? "the " + o.get_name(true) : shown(o)) + ": found " +
                             quoted(value) + "; write something" + (operand ? "" : " behind it") +
                             ", or leave it out");
        }
    }
    return out;
}

/// Options that need one another, or exclude one another.
std::string fights(const CLI::App& app) {
    std::string out;
    auto all = app.get_options();
    std::erase_if(all, [](const CLI::Option* o) { return o->count() == 0; });
    // what excludes most is what was asked for; each of two that exclude one another knows the other
    std::stable_sort(all.begin(), all.end(), [](const CLI::Option* a, const CLI::Option* b) {
        return a->get_excludes().size() > b->get_excludes().size();
    });
    for (auto one = all.begin(); one != all.end(); ++one) {
        for (const CLI::Option* o : (*one)->get_needs()) {
            out += o->count() > 0
                       ? ""
                       : complaint(shown(**one) + ": goes with " + shown(*o) + "; found no " +
                                   shown(*o) + "; write both, or leave it out");
        }
        const std::set<CLI::Option*> no = (*one)->get_excludes();
        for (auto other = one + 1; other != all.end(); ++other) {
            out +=
                std::any_of(no.begin(), no.end(), [&](const CLI::Option* o) { return o == *other; })
                    ? complaint(shown(**one) + ": doesn't go with " + shown(**other) +
                                "; leave one out")
                    : "";
        }
    }
    return out;
}

}  // namespace

std::string complaints(const CLI::App& root) {
    const CLI::App& used = innermost(root);
    std::string out;
    for (const CLI::App* app = &used; app != nullptr; app = app->get_parent()) {
        out += strangers(*app);
    }
    if (!out.empty()) {
        return out;  // a misspelt word explains the rest
    }
    for (const CLI::Option* o : used.get_options()) {
        out += empties(*o);
    }
    out += fights(used);
    const names subs = children(used);
    if (out.empty() && !subs.empty()) {
        out = complaint((called(used).empty() ? "" : called(used) + ": ") +
                        std::string("found nothing to do; write ") + one_of(subs));
    }
    return out;
}

}  // namespace pelage::cli
