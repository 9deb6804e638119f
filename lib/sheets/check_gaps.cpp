// What a sheet doesn't say, doesn't reach, or isn't for.
#include <algorithm>

#include <pelage/model/mix.hpp>

#include "planner/double_jacket.hpp"
#include "sheets/check_parts.hpp"

namespace pelage::sheets {

namespace {

/// Where a mix is written, if in the sheet's own file.
written_at mix_at(const judged_sheet& s, std::size_t i) {
    const auto& at = s.own.mixes_at;
    return i < at.size() && at[i].file == s.own.at.file ? at[i] : s.own.at;
}

void judge_mix(judged_sheet& s, const std::string& mix, const written_at& at) {
    const coat_answer a = coats_of(read_mix(mix, s.known.genes).dog, s.known.genes, s.known.coats);
    const std::vector<coat_class>& right = s.sheet.coats;
    if (!right.empty() && std::find(right.begin(), right.end(), a.likeliest()) == right.end()) {
        s.say_at(sheet_doubt::other_coat, at,
                 unfit_mix{mix, at.line == s.own.at.line ? s.own.extends : std::string{},
                           a.likeliest(), right});
    }
}

/// The double coat it is for, by name or as the likeliest of a mix.
std::optional<unsigned_jacket_clip> double_coat_of(const judged_sheet& s) {
    for (const coat_class k : s.sheet.coats) {
        if (double_coated(k)) {
            return unsigned_jacket_clip{{}, k, {}};
        }
    }
    for (const std::string& mix : s.sheet.mixes) {
        try {
            const auto dog = read_mix(mix, s.known.genes).dog;
            const coat_class k = coats_of(dog, s.known.genes, s.known.coats).likeliest();
            if (double_coated(k)) {
                return unsigned_jacket_clip{{}, k, mix};
            }
        } catch (const bad_input&) {
            continue;  // told elsewhere
        }
    }
    return std::nullopt;
}

}  // namespace

void judge_name(judged_sheet& s) {
    constexpr std::string_view ending = ".toml";
    std::string stem = s.own.at.file.substr(s.own.at.file.find_last_of('/') + 1);
    if (!stem.ends_with(ending)) {
        return;
    }
    stem.resize(stem.size() - ending.size());
    if (stem != s.own.id) {
        s.say_at(sheet_doubt::misnamed, s.own.at, other_file_name{s.own.id, stem});
    }
}

void judge_consent(judged_sheet& s, told_lengths& told) {
    const auto& signs = s.sheet.consent;
    auto found = double_coat_of(s);
    if (!found || std::find(signs.begin(), signs.end(), "clip-jacket") != signs.end()) {
        return;
    }
    for (const sheet_place& p : s.places) {
        const bool jacket = s.dog().zones[p.at.zone].has(zone_use::jacket);
        if (jacket && wants_clipping(p.asked) &&
            told.emplace(sheet_doubt::unsigned_clip, 0, 0, 0).second) {
            found->found = s.says(p);
            s.say(sheet_doubt::unsigned_clip, p, *found);
        }
    }
}

void judge_untold(judged_sheet& s) {
    untold_zones missing;
    for (const sheet_place& p : s.places) {
        const instruction& i = p.asked;
        const bool by_hair =
            keeps_length(i) || i.how == finish::thin || i.how == finish::hand_strip;
        if (!i.target && !i.blade && !by_hair) {
            missing.where.push_back(p.at);
        }
    }
    if (!missing.where.empty()) {
        s.say_at(sheet_doubt::untold, s.own.at, std::move(missing));
    }
}

void judge_stopped(judged_sheet& s) {
    for (const sheet_rule& r : s.sheet.rules) {
        const selection* whom = s.parts.find(r.whom);
        if (!r.from.empty() || whom == nullptr || whom->how != reach::all || !r.what.target) {
            continue;
        }
        stopped_line line{r.whom, s.sheet.extends, {}};
        for (const sheet_place& p : s.places) {
            const bool parents = p.rule && !s.sheet.rules[*p.rule].from.empty();
            if (parents && p.asked.target && *p.asked.target != *r.what.target) {
                line.stay.emplace_back(p.at, *p.asked.target);
            }
        }
        if (!line.stay.empty()) {
            s.say_at(sheet_doubt::not_reached, r.at, std::move(line));
        }
    }
}

void judge_mixes(judged_sheet& s) {
    if (s.sheet.coats.empty() && s.sheet.mixes.empty()) {
        s.say_at(sheet_doubt::no_coat, s.own.at, no_coats{});
    }
    for (std::size_t i = 0; i < s.sheet.mixes.size(); ++i) {
        try {
            judge_mix(s, s.sheet.mixes[i], mix_at(s, i));
        } catch (const bad_input& wrong) {
            s.say_at(sheet_doubt::mix_unread, mix_at(s, i), unread_mix{wrong.all().front().text});
        }
    }
}

}  // namespace pelage::sheets
