// Private to lib: the places of a plan by name: one by one, in pairs, or by the parts of the dog.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pelage/planner/plan.hpp>
#include <pelage/trade/term.hpp>

namespace pelage::io {

/// Places of a plan: indices into groom::zones.
using zone_list = std::vector<std::size_t>;

/// The dog's body with its zones called as an owner calls them.
[[nodiscard]] body plain_body(const body& b, const glossary& g);

/// Places as a phrase; "the whole dog" where none but prep places are missing.
[[nodiscard]] std::string places_or_whole(const body& b, const std::vector<place>& all);

/// "on the belly and groin", but "behind the ears" and "under the tail", which are said as they are.
[[nodiscard]] std::string on_the(const std::vector<std::string>& titles);

/// The names of a plan's places. Borrows both.
class place_words {
  public:
    place_words(const groom& g, const plan_request& r) : place_words(g, r.reference.dog_body) {}
    /// By the names of that body: plain_body() for an owner.
    place_words(const groom& g, const body& b) : g_(g), body_(b) {}

    [[nodiscard]] const zone& zone_of(std::size_t i) const {
        return body_.zones[g_.zones[i].at.zone];
    }
    /// Whether a mat is in it that isn't combed out: it is clipped down, or the mat stays.
    [[nodiscard]] bool bared(std::size_t i) const {
        return g_.zones[i].mat && !g_.zones[i].combed_out;
    }
    [[nodiscard]] std::string title_of(std::size_t i) const { return title(body_, g_.zones[i].at); }
    /// Each by its own name.
    [[nodiscard]] std::vector<std::string> each_of(const zone_list& which) const;
    /// Both sides of a pair as one.
    [[nodiscard]] std::vector<std::string> titles_of(const zone_list& which) const;
    /// The same as a phrase: "neck, back and forelegs".
    [[nodiscard]] std::string listed_of(const zone_list& which) const;
    /// A place as a member of `whole`: of the pair where both sides are in that.
    [[nodiscard]] std::string in_pairs(const zone_list& whole, std::size_t i) const;
    /// The same with a part of the dog by its own name: "legs" where all of them are in it, "body (not
    /// skirt)" where little is missing.
    [[nodiscard]] std::vector<std::string> by_part(const zone_list& which) const;
    /// All titles as a phrase; a part of the dog that is among them as a whole by its own name.
    [[nodiscard]] std::string in_parts(std::vector<std::string> titles) const;
    /// Every place of a part.
    [[nodiscard]] zone_list all_of(group part) const;
    /// The parts that any of them are on, prep places apart: "body", "legs".
    [[nodiscard]] std::vector<std::string> parts_of(const zone_list& which) const;

  private:
    const groom& g_;
    const body& body_;
};

}  // namespace pelage::io
