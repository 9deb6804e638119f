// The places a person means by a word: "all", "legs", "back legs", "ear", "front leg left", "topknot".
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// How special a selector is; a more special one wins over a wider one. A part is a word for several
/// zones that is no group: "back legs".
enum class reach { all, group, part, zone, side };

/// What a selector means.
struct selection {
    reach how = reach::zone;    ///< how wide the word is
    std::vector<place> places;  ///< that it means
    bool sided = false;         ///< said of one side
};

/// Whether `a` is the wider word, over which `b` is laid: of two parts the one with more zones, of
/// one word that without a side. If neither is wider, the later one is laid over the earlier.
[[nodiscard]] bool wider(const selection& a, const selection& b);

/// Whether two places have a side in common.
[[nodiscard]] inline bool share_side(const place& a, const place& b) {
    return a.zone == b.zone &&
           (a.which == side::both || b.which == side::both || a.which == b.which);
}

/// What a finding on it is on: of the whole dog also what no length is said of, armpits, groin, pads.
[[nodiscard]] selection found_on(const body& b, selection whom);

/// Lays a finding (whatever has a place `at`) on every place of a word. What was found there before and
/// `gives_way` does so: of a pair found whole the other side stays.
template <class Finding, class Test>
void lay_finding(std::vector<Finding>& all, const selection& whom, Finding what, Test gives_way) {
    for (const place& p : whom.places) {
        for (Finding& f : all) {
            if (f.at.zone == p.zone && f.at.which == side::both && p.which != side::both &&
                gives_way(f)) {
                f.at.which = p.which == side::left ? side::right : side::left;
            }
        }
        std::erase_if(all, [&](const Finding& f) { return share_side(f.at, p) && gives_way(f); });
        what.at = p;
        all.push_back(what);
    }
}

/// Whether two words have a place in common and neither is the narrower one.
[[nodiscard]] bool clash(const selection& a, const selection& b);

namespace detail {

/// Lower case, hyphens and underscores as blanks, no blanks at the ends.
[[nodiscard]] std::string plain(std::string_view s);

/// A word for a place as it is looked up, and the side said with it, wherever that stands.
struct heard_place {
    std::string core;  ///< no blanks, no "the" or "both", no plural s
    side which = side::both;
    bool sound = true;  ///< not left and right at once
};
[[nodiscard]] heard_place heard(std::string_view text);

}  // namespace detail

/// Every word for a place of the dog and what it means: "all" and the groups, a zone by its id, its
/// title or another word, a part of several zones, each with its sides in any order ("front left
/// leg"). Case, hyphens, blanks, a plural s, "the" and "both" don't matter. "all" is everything but
/// the prep zones; a group that shares its name with one of its zones ("tail") means the zone, the
/// narrower word, and the group with "whole" before it ("whole tail").
class part_index {
  public:
    /// Borrows nothing.
    explicit part_index(const body& b);

    /// What the word means; null if nothing, if it is asked back, or if it is said of a side that the
    /// place doesn't have.
    [[nodiscard]] const selection* find(std::string_view word) const;

    /// The places that a word may mean where it is asked back; empty where it isn't.
    [[nodiscard]] std::vector<std::string> asked(std::string_view word) const;

    /// Every word with a meaning, and every one that is asked back; without sides.
    [[nodiscard]] const std::vector<std::string>& words() const { return words_; }

    /// Why a word that `find` doesn't know means nothing, and what would be right: the places it could
    /// mean, that there are no sides, or the nearest words, all that are as near. None of them begins
    /// otherwise: a paw is no pad, and a rear no ear.
    struct stranger {
        errc code = errc::unknown;  ///< unknown or ambiguous
        std::string wrong;          ///< "no place of the dog is called so"
        std::string right;          ///< "; did you mean \"paws\"?"; may be empty
    };
    [[nodiscard]] stranger about(std::string_view word) const;  ///< of such a word

  private:
    struct meaning {
        std::array<selection, 3> by_side;
        bool sides = false;
        std::size_t word = 0;  ///< what it is called, in words_
    };

    [[nodiscard]] const meaning* meaning_of(const std::string& core) const;
    [[nodiscard]] std::vector<std::string> nearest(const detail::heard_place& h) const;
    static meaning of_zones(const body& b, reach how, const std::vector<std::size_t>& zones,
                            bool sides_too);
    void add(meaning m, const std::vector<std::string>& words);
    void add_zone(const body& b, std::size_t i);
    void add_group(const body& b, group g);
    void add_word(const body& b, const place_word& w);

    std::vector<meaning> all_;
    std::unordered_map<std::string, std::size_t> meaning_;  ///< into all_
    std::unordered_map<std::string, std::vector<std::string>> asked_;
    std::vector<std::string> words_;
};

/// What one word means; nothing if it means nothing. Who asks often keeps a part_index.
[[nodiscard]] std::optional<selection> select(const body& b, std::string_view text);

}  // namespace pelage
