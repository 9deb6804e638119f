#include "answers/words/skin.hpp"

#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/model/refusal.hpp>

#include "answers/words/places.hpp"

namespace pelage::io {

std::string finding_words(const skin_finding& f, length_unit u) {
    return in_words(f, f.size ? show(*f.size, u) : std::string{});
}

namespace {

/// The state as it is where a place is left alone for it; a lump or a scab only if a mat is over it.
std::string_view left_for(skin_state s) {
    switch (s) {
        case skin_state::irritated:
            return "red, sore skin";
        case skin_state::broken:
            return "broken skin, a wound";
        case skin_state::wet:
            return "wet, raw skin";
        case skin_state::lump:
            return "a lump under a mat";
        case skin_state::scab:
            return "a scab under a mat";
        case skin_state::fleas:
            break;
    }
    return "fleas";
}

}  // namespace

std::string hurt_skin_words(const plan_request& r) {
    std::vector<std::string> all;
    for (const skin_state s : {skin_state::broken, skin_state::wet, skin_state::irritated}) {
        std::vector<place> where;
        for (const skin_finding& f : r.patient.skin) {
            if (f.state == s) {
                where.push_back(f.at);
            }
        }
        if (!where.empty()) {
            all.push_back(joined(titles(r.reference.dog_body, where), ", ") + " (" +
                          std::string(left_for(s)) + ")");
        }
    }
    return joined(all, ", ");
}

std::string sore_in_brief(const zone_plan& z) {
    return std::string(left_for(*z.hurt)) +
           (z.mat ? "; " + std::string(in_words(*z.mat)) + " stays in, so no bath" : "");
}

std::string left_alone_words(const zone_plan& z, const plan_request& r) {
    const body& b = r.reference.dog_body;
    std::string text;
    if (z.edge_of_hurt) {
        text = "belongs to the " + title(b, *z.why.of) + " (" + std::string(left_for(*z.hurt)) +
               "): left alone, too";
    } else {
        text = std::string(left_for(*z.hurt)) + ": left alone, for a veterinarian to see";
    }
    return text +
           (z.mat ? "; " + std::string(in_words(*z.mat)) + " is still in, so no bath before" : "");
}

bool shaved_about(const zone_plan& z, const refusal_rules& r) {
    return z.how.kind == tool_kind::clip && !z.how.over && z.leaves &&
           z.leaves->best < r.bump_least.best;
}

std::optional<length> hair_over(const zone_plan& z, const refusal_rules& r) {
    const bool cut = z.how.kind == tool_kind::clip || z.how.kind == tool_kind::scissors ||
                     z.how.kind == tool_kind::thinners;
    if (!cut || !z.leaves) {
        return std::nullopt;
    }
    const length over = over_bump(z.leaves->best, r);
    return z.now ? shorter(over, *z.now) : over;
}

std::string go_around_words(const zone_plan& z, const skin_finding& f, const refusal_rules& r,
                            length_unit u) {
    const auto over = hair_over(z, r);
    const std::string left = !over                ? ""
                             : shaved_about(z, r) ? "; the hair over it stays uncut"
                                                  : "; over it about " + show(*over, u) +
                                                        " is left, by scissors over a comb";
    if (f.state == skin_state::scab) {
        return "a scab: leave it unpicked, and the hair over it; go around it";
    }
    const bool large = f.size && *f.size > r.finger_covers.best;
    return finding_words(f, u) + ": feel for it first, cover it with " +
           (large ? "the hand" : "a finger") + " and go around it" + left +
           (f.known ? "" : "; tell the owner");
}

std::string around_in_brief(const zone_plan& z, const skin_finding& f, const refusal_rules& r,
                            length_unit u) {
    if (f.state == skin_state::scab) {
        return "a scab, and the hair over it";
    }
    const auto over = hair_over(z, r);
    const bool large = f.size && *f.size > r.finger_covers.best;
    const std::string hand = large ? "hand" : "finger";
    return finding_words(f, u) + ", find it first, cover it with " + (large ? "the " : "a ") +
           hand +
           (!over                ? ""
            : shaved_about(z, r) ? ", the hair over it uncut"
                                 : (z.how.kind == tool_kind::clip ? " and clip" : " and scissor") +
                                       std::string(" round it; then the ") + hand +
                                       " off, a comb flat over it, scissors above " +
                                       "the comb: about " + show(*over, u) + " left over it");
}

namespace {

/// Where the skin is red, or where it is broken or wet.
std::vector<place> where_skin_is(const plan_request& r, bath_care c) {
    std::vector<place> out;
    for (const skin_finding& f : r.patient.skin) {
        if (bath_for({f}) == c) {
            out.push_back(f.at);
        }
    }
    return out;
}

std::string brief_of(const plan_request& r, std::string_view id) {
    const caution* c = find(r.reference.cautions, id);
    return c == nullptr ? std::string{} : c->brief;
}

}  // namespace

std::string no_bath_in_brief(const plan_request& r) {
    if (bath_for(r.patient.skin) != bath_care::none) {
        return {};
    }
    return "no bath today: broken or wet skin (" +
           places_or_whole(r.reference.dog_body, where_skin_is(r, bath_care::none)) + ")";
}

std::string no_bath_words(const plan_request& r) {
    const std::string brief = no_bath_in_brief(r);
    return brief.empty() ? brief : brief + "; " + brief_of(r, "no-bath");
}

std::string gently_words(const plan_request& r) {
    if (bath_for(r.patient.skin) != bath_care::gently) {
        return {};
    }
    return "; " + brief_of(r, "gentle-bath") + " (red skin: " +
           places_or_whole(r.reference.dog_body, where_skin_is(r, bath_care::gently)) + ")";
}

std::string_view finished_later(const plan_request& r) {
    return bath_for(r.patient.skin) == bath_care::none ? ", to be finished below"
                                                       : ", to be finished after the bath";
}

std::string_view once_more_words(const plan_request& r) {
    return bath_for(r.patient.skin) == bath_care::none ? "again, for what combing raised"
                                                       : "again, for what the bath raised";
}

namespace {

bool any_mat(const groom& g) {
    return std::any_of(g.zones.begin(), g.zones.end(),
                       [](const zone_plan& z) { return z.mat.has_value(); });
}

}  // namespace

bool flea_bath_first(const groom& g, const plan_request& r) {
    return !g.fleas.empty() && bath_for(r.patient.skin) != bath_care::none &&
           (r.booked == nullptr || r.booked->has(service_step::bath)) && !any_mat(g);
}

bool any_hurt(const groom& g) {
    return std::any_of(g.zones.begin(), g.zones.end(),
                       [](const zone_plan& z) { return z.hurt.has_value(); });
}

bool fleas_after_mats(const groom& g, const plan_request& r) {
    return !g.fleas.empty() && bath_for(r.patient.skin) != bath_care::none &&
           (r.booked == nullptr || r.booked->has(service_step::bath)) && any_mat(g);
}

std::string flea_bath_words(const groom& g, const plan_request& r) {
    if (g.fleas.empty()) {
        return {};
    }
    const std::string seen =
        "fleas were seen (" + places_or_whole(r.reference.dog_body, g.fleas) + "): ";
    if (bath_for(r.patient.skin) == bath_care::none) {
        return seen +
               "and broken or wet skin, so no bath before a veterinarian's word; other dogs away, "
               "clean every tool after";
    }
    if (r.booked != nullptr && !r.booked->has(service_step::bath)) {
        return seen +
               "no bath is booked: ask for a flea bath first, or send it home; clean every tool";
    }
    if (any_mat(g)) {
        return seen +
               "the mats come out first, dry, then the bath is a flea bath; clean every tool";
    }
    const bool plain = bath_for(r.patient.skin) == bath_care::gently || bears_less(r.patient);
    return seen +
           (plain ? "a plain bath and a fine comb" +
                        std::string(any_hurt(g) ? ", not where it is hurt," : "") +
                        " before any other tool, nothing against fleas without a vet's word"
                  : "flea bath before any tool, it is the bath") +
           gently_words(r) + "; dry, comb check down to the skin" +
           (any_hurt(g) ? ", not where it is hurt" : "") + "; clean every tool after";
}

}  // namespace pelage::io
