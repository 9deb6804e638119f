// Who the dog is: name, breed, coat, size, sheet, age, weight.
#include <algorithm>

#include <pelage/base/phrase.hpp>
#include <pelage/data/write_dog.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/sheets/rank.hpp>

#include "intake_talk.hpp"

namespace pelage::cli {

namespace {

std::vector<named_choice> breeds_of(const heredity& h) {
    std::vector<named_choice> out;
    for (const breed& b : h.breeds) {
        out.push_back({b.id, {}, b.also});
    }
    return out;
}

/// What is wrong with a breed or mix as typed; empty if nothing is.
std::string mix_complaint(const std::string& text, const heredity& h) {
    try {
        (void)read_mix(text, h);
        return {};
    } catch (const bad_input& wrong) {
        std::vector<std::string> all;
        for (const diagnostic& d : wrong.all()) {
            all.push_back(d.text);
        }
        return joined(all, "; ");
    }
}

/// As typed where it can be read, or the only breed that begins so.
std::optional<std::string> mix_meant(const std::string& text, const heredity& h,
                                     const std::vector<named_choice>& breeds) {
    if (text.empty() || mix_complaint(text, h).empty()) {
        return text;
    }
    const auto one = text.size() > 1 ? chosen(breeds, text) : std::nullopt;
    return one ? std::optional{breeds[*one].name} : std::nullopt;
}

bool fits(const style& s, const std::optional<coat_class>& coat) {
    return s.coats.empty() || !coat ||
           std::find(s.coats.begin(), s.coats.end(), *coat) != s.coats.end();
}

std::string breed_fault(const std::string& text, const heredity& h,
                        const std::vector<named_choice>& breeds) {
    if (mix_meant(text, h, breeds)) {
        return {};
    }
    const auto several = beginning_so(breeds, text);
    constexpr std::size_t shown = 8;
    return several.size() > 1 && several.size() <= shown ? choice_complaint("breed", breeds, text)
                                                         : mix_complaint(text, h);
}

}  // namespace

void ask_name(intake_state& s) {
    s.d.name = s.ask.line("name", "What is it called", [](const std::string& text) {
        return text.empty()         ? "a dog has a name"
               : text.size() > 200U ? "that is more than a name"
                                    : "";
    });
    s.d.id = io::dog_id(s.d.name);
}

void ask_breed(intake_state& s) {
    const heredity& h = s.about.known.genes;
    const auto breeds = breeds_of(h);
    const std::string text = s.ask.line(
        "breed", "Breed or mix, as poodle x beagle (Enter: not known)",
        [&](const std::string& typed) { return breed_fault(typed, h, breeds); },
        [&](const std::string& typed) { return beginning_so(breeds, typed); });
    s.d.mix = mix_meant(text, h, breeds).value_or(std::string{});
}

void ask_coat(intake_state& s) {
    std::vector<named_choice> coats;
    for (const coat& c : s.about.known.coats) {
        coats.push_back({std::string(name(c.id)), c.look, {}});
    }
    std::optional<std::size_t> usual;
    std::string enter;
    if (!s.d.mix.empty()) {
        const auto expected = expect_coat(s.d.mix, s.about.known.genes, s.about.known.coats);
        usual = static_cast<std::size_t>(expected.may_be.likeliest());
        enter = " (Enter: " + coats[*usual].name + ", likeliest of such)";
    }
    // what a coat looks like is read, not typed
    std::vector<named_choice> by_name = coats;
    for (named_choice& c : by_name) {
        s.ask.say("  " + std::to_string(&c - by_name.data() + 1) + "  " + c.name + ": " + c.title);
        c.title.clear();
    }
    s.d.coat = static_cast<coat_class>(
        s.ask.choose("coat", "Its coat, as you see it" + enter, "coat", by_name, usual, false));
}

void ask_size(intake_state& s) {
    s.d.size = s.ask.one_of<dog_size>("size", "How big", size_names);
}

void ask_sheet(intake_state& s) {
    std::vector<const style*> sheets;
    for (const style& one : s.about.styles) {
        if (fits(one, s.d.coat)) {
            sheets.push_back(&one);
        }
    }
    std::stable_partition(sheets.begin(), sheets.end(), [&](const style* one) {
        return names_mix(*one, s.d.mix, s.about.known.genes);
    });
    // the salon's own before those of the reference
    std::stable_partition(sheets.begin(), sheets.end(), [&](const style* one) {
        return find(s.about.known.styles, one->id) == nullptr;
    });
    std::vector<named_choice> names;
    std::optional<std::size_t> usual;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        names.push_back({sheets[i]->id, sheets[i]->title, {}});
        usual = sheets[i]->id == s.d.style ? std::optional{i} : usual;
    }
    const std::size_t n =
        s.ask.choose("sheet", "The style asked for" + (usual ? " (Enter: " + s.d.style + ")" : ""),
                     "sheet for such a coat", names, usual);
    if (sheets[n]->id != s.d.style && !sheets[n]->adjustable) {
        s.d.body_length.reset();  // it was the other sheet's
    }
    s.d.style = sheets[n]->id;
}

void ask_age(intake_state& s) {
    s.d.age = s.ask.one_of<life_stage>("age", "How old", life_stage_names);
}

void ask_weight(intake_state& s) {
    const std::string before = s.weighed ? "on file " + title(*s.weighed) + "; " : "";
    const std::string text =
        s.ask.line("weight", "Weight, as 12.5 kg (" + before + "Enter: not weighed)",
                   [](const std::string& typed) {
                       return typed.empty() || parse_weight(typed) ? "" : weight_complaint(typed);
                   });
    if (!text.empty()) {
        s.weighed = parse_weight(text);
    }
}

}  // namespace pelage::cli
