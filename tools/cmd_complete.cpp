// What may follow the words typed so far: asked by the shells (tools/completion), not by people.
#include <algorithm>

#include <CLI/CLI.hpp>

#include <pelage/data/reference.hpp>
#include <pelage/kit/quiz.hpp>
#include <pelage/trade/place_words.hpp>
#include <pelage/trade/service.hpp>

#include "command_line.hpp"
#include "resolve_arguments.hpp"
#include "resolve_words.hpp"

namespace pelage::cli {

namespace {

using words = std::vector<std::string>;

struct complete_options : common_options {
    explicit complete_options(CLI::App& a) : common_options(a) {}
    list_option typed{app, "word", "WORD", "the words typed so far, the last of them unfinished"};
};

/// Where the typed words lead: the subcommand, and the option that waits for its value.
struct reached {
    const CLI::App* app = nullptr;
    const CLI::Option* waits = nullptr;
    std::string salon{};
};

/// The option of that name, if it takes a value.
const CLI::Option* valued(const CLI::App& app, const std::string& name) {
    const CLI::Option* o = app.get_option_no_throw(name);
    return o != nullptr && o->get_items_expected_max() > 0 ? o : nullptr;
}

reached reach(const CLI::App& root, const words& done_with) {
    reached at{&root};
    for (const std::string& w : done_with) {
        if (at.waits != nullptr) {
            at.salon = at.waits->check_lname("salon") ? w : at.salon;
            at.waits = nullptr;
        } else if (w.starts_with("--salon=")) {
            at.salon = w.substr(w.find('=') + 1);
        } else if (w.starts_with("-")) {
            at.waits = valued(*at.app, w);
        } else {
            for (const CLI::App* sub : at.app->get_subcommands(nullptr)) {
                at.app = sub->get_name() == w ? sub : at.app;
            }
        }
    }
    return at;
}

/// The salon that is asked about, where it can be read: its own names and the reference's.
words names_of(const std::string& kind, const std::string& salon, const surroundings& around) {
    CLI::App scratch;
    common_options o(scratch);
    o.salon = salon;
    faults f;
    surroundings quiet = around;
    words unheard;
    quiet.notes = &unheard;
    const workplace w = workplace_of(o, quiet, f, {});
    const reference_data& r = w.reference;
    if (kind == "STYLE" || kind == "ID") {
        return ids(w.styles);
    }
    if (kind == "DOG") {
        return w.own ? ids(w.own->dogs) : ids(io::demo_salon().dogs);
    }
    if (kind == "BLADE") {
        words out;
        for (const kit_blade& b : w.tools().blades) {
            out.push_back(b.spec.id);
        }
        return out;
    }
    return kind == "SERVICE" ? words_of(service_names) : part_index(r.dog_body).words();
}

words values_of(const CLI::Option& o, const std::string& salon, const surroundings& around) {
    const std::string type = o.get_type_name();
    if (type == "COAT") {
        return words_of(coat_names);
    }
    if (type == "SIZE") {
        return words_of(size_names);
    }
    if (type == "UNITS") {
        return {"mm", "in"};
    }
    if (type == "FORMAT") {
        words formats = CLI::detail::split(o.get_description(), ',');
        std::for_each(formats.begin(), formats.end(), [](std::string& w) { CLI::detail::trim(w); });
        return formats;
    }
    if (type == "TOPIC") {
        return words_of(quiz_topic_names);
    }
    if (type == "SIGN") {
        return words_of(stop_sign_names);
    }
    if (type == "AGE") {
        return words_of(life_stage_names);
    }
    if (type.find("ZONE") != std::string::npos || type.find("PLACE") != std::string::npos) {
        return names_of("ZONE", salon, around);
    }
    for (const char* known : {"STYLE", "DOG", "SERVICE"}) {
        if (type == known) {
            return names_of(known, salon, around);
        }
    }
    return o.check_lname("consent") ? words_of(consent_names) : words{};
}

/// Subcommands, long options, and what an operand may be.
words offers(const reached& at, const std::string& begun, const surroundings& around) {
    words out;
    for (const CLI::App* sub : at.app->get_subcommands(nullptr)) {
        if (sub->get_name() != "complete") {
            out.push_back(sub->get_name());
        }
    }
    for (const CLI::Option* o : at.app->get_options()) {
        if (!o->get_lnames().empty() && begun.starts_with("-")) {
            out.push_back("--" + o->get_lnames().front());
        } else if (o->get_positional() && !begun.starts_with("-")) {
            const words more = o->get_type_name() == "WHAT" || called(*at.app) == "lookup"
                                   ? names_of("BLADE", at.salon, around)
                                   : values_of(*o, at.salon, around);
            out.insert(out.end(), more.begin(), more.end());
        }
    }
    return out;
}

reply complete(complete_options& o, const surroundings& around) {
    words typed = o.typed;
    std::string begun = typed.empty() ? "" : typed.back();
    if (!typed.empty()) {
        typed.pop_back();
    }
    CLI::App root;
    task unused;
    add_all(root, unused);
    reached at = reach(root, typed);
    std::string before;  // the value, as in --coat=wa
    if (at.waits == nullptr && begun.starts_with("--") && begun.find('=') != std::string::npos) {
        at.waits = valued(*at.app, begun.substr(0, begun.find('=')));
        before = begun.substr(0, begun.find('=') + 1);
        begun.erase(0, before.size());
    }
    words all =
        at.waits != nullptr ? values_of(*at.waits, at.salon, around) : offers(at, begun, around);
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    std::string out;
    for (const std::string& one : all) {
        out += one.starts_with(begun) ? before + one + "\n" : "";
    }
    return {out};
}

constexpr introduction about{"complete", "what may follow the words typed so far, for a shell",
                             "pelage complete -- plan --coat wa\n",
                             "Completions for bash, zsh and fish ask this; people need not.\n"};

}  // namespace

void add_complete(CLI::App& root, task& chosen) {
    add_command<complete_options>(root, chosen, about, complete);
}

}  // namespace pelage::cli
