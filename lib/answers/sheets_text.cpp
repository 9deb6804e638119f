// What was found in sheets' files, sheets as a list, and a sheet's file to begin with.
#include <algorithm>
#include <array>
#include <tuple>

#include <fmt/format.h>

#include <pelage/answers/sheets.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/chance.hpp"
#include "answers/words/doubt.hpp"
#include "answers/words/when.hpp"
#include "data/faults.hpp"

namespace pelage::io {

namespace {

constexpr std::size_t widest = 24;  ///< of an id in a column

std::string place_of(const std::string& path, unsigned line, unsigned column) {
    const std::string file = escaped(path, 400);
    return line > 0 ? fmt::format("{}:{}:{}: ", file, line, column) : file + ": ";
}

std::string some_coats(const std::vector<coat_class>& coats) {
    constexpr std::size_t most = 4;  // more don't fit a line; the sheet's own page names them
    if (coats.size() > most) {
        return std::to_string(coats.size()) + " kinds of coat";
    }
    std::vector<std::string> names;
    for (const coat_class k : coats) {
        names.emplace_back(name(k));
    }
    return names.empty() ? "any coat" : listed(names);
}

std::string why_listed(const listed_sheet& one, const expected_coat& mix, const reference_data& c) {
    std::vector<std::string> hits;
    const std::vector<coat_class> coats = coats_for(*one.sheet, c);
    for (const coat_chance& k : mix.may_be.coats) {
        if (std::find(coats.begin(), coats.end(), k.coat) != coats.end()) {
            hits.push_back(std::string(name(k.coat)) + " (" + chance_in_words(k.chance) + ")");
        }
    }
    std::string text = one.for_mix ? "made for this mix" : "";
    if (!hits.empty()) {
        text += (text.empty() ? "for its coat: " : "; ") + listed(hits);
    }
    return text.empty() ? "not for it: for " + some_coats(coats) : text;
}

/// Lines of a sheet to begin with: what such a coat can bear.
std::string zones_for(coat_class k) {
    if (k == coat_class::smooth || double_coated(k)) {
        const std::string rest = k == coat_class::smooth ? "leave" : "card";
        return "all = { finish = \"" + rest +
               "\" }\near-edge = { finish = \"leave\" }\n"
               "feet = { length = \"13 mm\", finish = \"scissor\" }\n";
    }
    return R"(all = { length = "13 mm", direction = "with", finish = "clip" }
legs = { length = "16 mm", direction = "with", finish = "comb-then-scissor" }
head = { length = "16 mm", direction = "with", finish = "comb-then-scissor" }
ear = { length = "13 mm", direction = "with", finish = "clip" }
behind-ear = { length = "13 mm", direction = "with", finish = "clip" }
ear-edge = { length = "13 mm", finish = "scissor" }
eyebrow = { length = "13 mm", finish = "scissor" }
skirt = { length = "13 mm", finish = "scissor" }
feet = { length = "13 mm", finish = "scissor" }
)";
}

}  // namespace

document sheet_in_brief(const style& s) {
    document d{s.title};
    d.say_of(s.title + ": ", "a style sheet. " + s.text, 2);
    d.say("all of it: pelage sheet show " + s.id, 2);
    d.say_of("how sure: ", basis_words(s.why), 2);
    return d;
}

document document_of(const std::vector<checked_sheet>& all, const reference_data& c,
                     const print_options& o) {
    document out{"Style sheets checked"};
    std::size_t faulty = 0;
    std::size_t cannot = 0;
    std::size_t advised = 0;
    std::size_t not_judged = 0;
    for (const checked_sheet& one : all) {
        for (const diagnostic& d : one.read.faults) {
            out.say(place_of(d.file, d.line, d.column) + "error: " + d.text, 2);
        }
        bool no = false;
        for (const auto& [w, text] : told_doubts(one, c, o.units)) {
            no = no || graver(w->what);
            out.say(place_of(one.read.file, w->at.line, w->at.column) +
                        (graver(w->what) ? "no: " : "advice: ") + text,
                    2);
        }
        if (one.read.parent_faulty) {
            out.say(escaped(one.read.file, 400) + ": not judged: a sheet it extends is faulty, " +
                        shown(one.read.parent) + " or one above that",
                    2);
        }
        faulty += one.read.faults.empty() ? 0 : 1;
        not_judged += one.read.parent_faulty ? 1 : 0;
        cannot += no ? 1 : 0;
        advised += !no && !(one.doubts.empty() && one.broken.empty()) ? 1 : 0;
    }
    const std::size_t clean = all.size() - faulty - not_judged - cannot - advised;
    std::string sum =
        fmt::format("{} sheet{}: {} clean", all.size(), all.size() == 1 ? "" : "s", clean);
    const auto also = [&](std::size_t n, const char* what) {
        sum += n > 0 ? fmt::format(", {} {}", n, what) : "";
    };
    also(advised, "with advice");
    also(cannot, "can't be done as written");
    also(faulty, "faulty");
    also(not_judged, "not judged");
    out.say(sum + ".", 2);
    return out;
}

std::vector<listed_sheet> sheets_for(const std::vector<style>& all, const expected_coat& mix,
                                     const reference_data& c) {
    std::vector<listed_sheet> out;
    for (const style& s : all) {
        listed_sheet one{&s, 0.0, names_mix(s, mix.asked, c.genes), false};
        const std::vector<coat_class> coats = coats_for(s, c);
        for (const coat_chance& k : mix.may_be.coats) {
            const bool hit = std::find(coats.begin(), coats.end(), k.coat) != coats.end();
            one.chance += hit || coats.empty() ? k.chance : 0.0;
            one.for_coat = one.for_coat || hit;
        }
        out.push_back(one);
    }
    std::stable_sort(out.begin(), out.end(), [](const listed_sheet& a, const listed_sheet& b) {
        return std::tuple(!a.for_mix, -a.chance, a.sheet->id) <
               std::tuple(!b.for_mix, -b.chance, b.sheet->id);
    });
    return out;
}

document sheet_list(const std::vector<listed_sheet>& all, const expected_coat* mix,
                    const reference_data& c) {
    document d{mix == nullptr ? "Style sheets" : "Style sheets for " + mix->read.dog.text};
    typed_table t{{"sheet", mix == nullptr ? "for" : "why", "title"}};
    std::vector<std::string> others;
    bool fit = true;
    for (const listed_sheet& one : all) {
        const std::string coats = some_coats(coats_for(*one.sheet, c));
        if (mix != nullptr && !one.for_mix && !one.for_coat) {
            others.push_back(one.sheet->id + " (" + coats + ")");
            continue;
        }
        fit = fit && one.sheet->id.size() <= widest;
        t.rows.push_back(
            {one.sheet->id, mix == nullptr ? coats : why_listed(one, *mix, c), one.sheet->title});
    }
    if (mix != nullptr) {
        std::vector<std::string> coats;
        for (const coat_chance& k : mix->may_be.coats) {
            coats.push_back(std::string(name(k.coat)) + " (" + chance_in_words(k.chance) + ")");
        }
        d.say(mix->read.dog.text + ": coat " + listed(coats) +
                  " (the mix says what is likely; the dog on the table decides)",
              2);
    }
    if (t.rows.empty()) {
        d.say("No sheet is for it.");
    }
    t.narrow = !fit;
    d.show(std::move(t));
    if (!others.empty()) {
        d.say_of("Not for such a coat: ", listed(others));
    }
    return d;
}

std::string new_sheet(const std::string& id, std::optional<coat_class> coat, coat_class hair,
                      const std::string& mix, const std::optional<date>& today) {
    const std::string coats =
        coat || mix.empty() ? fmt::format("coats = [\"{}\"]", name(coat.value_or(coat_class::wavy)))
                            : "# coats = [\"wavy\"]         # left out: what the mixes come to";
    const std::string mixes = mix.empty() ? "# mixes = [\"poodle x golden retriever\"]"
                                          : fmt::format("mixes = [\"{}\"]", mix);
    return fmt::format(
        R"(# A style sheet. What stands behind a # is said to you, not to pelage: where a
# key does, take its # away to use it. Check it:  pelage sheet check {0}.toml
format = 1

id = "{0}"                 # the file's name without .toml
title = "{0}"              # what hands and owners call it
version = 1
{1}approved_by = "nobody yet: write who"
text = "What it looks like, in a sentence or two."

# extends = "low-upkeep"   # take another sheet over; write the rest
# scale = "20 % shorter"   # ... with every length of it shorter or longer

{2}
# smooth double-short double-long feathered wire drop shaggy wavy curly
{3}

feet = "round"             # round clean natural
face = "round"             # clean round bearded natural
ears = "as the body, edge scissored"
tail = "as the body"
topknot = "as the head"
upkeep = "every 3 days to the skin"   # brushing at home that it needs
longest_interval = "56 days"          # back after at most
front_desk = "One sentence for whoever takes the booking."
{5}   # what the owner signs, where a jacket is clipped
basis = "assumption"       # how the lengths are known: practice, measured, ...

# [minutes]                # what it takes you
# medium = "75 min"
# basis = "measured"

# Lengths are of combed-out hair, with their unit: "13 mm" or "1/2 in". The
# narrower line wins: all, then body legs head "whole tail" feet, then a zone,
# then one side ("left ear").
#   length or blade    what is left, or blade = "7F"
#   tolerance          how far off it may end; left out: 15 %, on the head 10 %
#   direction          with against either
#   finish             clip comb-then-scissor scissor thin card hand-strip leave
#   between            which side to miss on: longer shorter nearest
#   note, why          a word for the table, and the reason
[zones]
{4}
# [[seam]]                 # where neighbours meet in a line, not blended
# a = "body"
# b = "legs"
# kind = "line"

# [season.summer]          # otherwise in a part of the year
# months = ["June", "July", "August"]
# scale = "20 % shorter"
)",
        id, today ? "date = \"" + iso(*today) + "\"\n" : "", coats, mixes, zones_for(hair),
        stripped_by_custom(hair) ? "consent = [\"clip-jacket\"]  "
                                 : "# consent = [\"clip-jacket\"]");
}

}  // namespace pelage::io
