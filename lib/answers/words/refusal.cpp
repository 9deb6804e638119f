#include "answers/words/refusal.hpp"

#include <array>

namespace pelage::io {

std::string_view refusal_words(refusal r) {
    constexpr std::array<std::string_view, 21> words{
        "a comb cannot go through or under a mat",
        "a comb sits on full teeth no longer than a 10",
        "clean face and feet are clipped bare: a comb leaves hair on lips and between toes",
        "felted to the skin: stop, a veterinarian decides",
        "too long to pass safely between skin and mat",
        "only full teeth go under a mat",
        "no scissors or hand tools between mat and skin",
        "skip teeth only on broad, flat, firm parts: elsewhere they catch skin",
        "skip teeth can catch the lump or scab here",
        "a 50 is too short for any dog outside a veterinarian's surgery",
        "so short a blade bares the skin: only on pads, or on clean face and feet in "
        "show finish with the owner's consent",
        "a 15 goes down to the skin: only small places, light strokes: face and feet where they "
        "are "
        "wanted bare, ear leather, tail band, sanitary area, under the tail and pads",
        "a short blade against the lay irritates skin here",
        "nothing on broken or irritated skin",
        "the neighbouring zone's skin is hurt: keep off the edge",
        "a double coat's jacket is clipped only with the owner's written consent",
        "this zone is scissored, not clipped",
        "nobody scissors so short in place of a blade",
        "a long blade's gaps catch webs and folds: a comb over a short blade is safer here",
        "a mat over a lump is not clipped off: nobody sees where the lump begins",
        "plucking tears thin skin"};
    return words[static_cast<std::size_t>(r)];
}

}  // namespace pelage::io
