// Private to lib: the cautions of a card.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/write.hpp>

#include "answers/words/places.hpp"

namespace pelage::io {

/// Of the whole dog and of the gravest: before anything is taken up.
[[nodiscard]] bool first_of_all(const caution_line& c);

/// The cautions of one card: each is given once.
class card_cautions {
  public:
    /// `g` and `r` must outlive it.
    card_cautions(const groom& g, const plan_request& r);

    /// From now on that one stands already beside what it is about.
    void told(caution_when w);
    /// That one stands above already.
    void told(const caution& c);

    /// What is minded of that, in brief; it isn't told by being asked for.
    [[nodiscard]] std::vector<std::string> briefs_of(caution_when w) const;
    /// Of the whole dog, of its fleas, whose bath comes first, of all mats that are clipped off, with what is done
    /// where a blade sticks, and what would have to be said at more than one of these steps, of which each has its
    /// places: before the work.
    [[nodiscard]] std::vector<std::string> of_the_dog(const std::vector<zone_list>& steps,
                                                      const std::string& wont_pass);
    /// What is felt for on the belly before a bare blade goes there; told by being asked for. Empty: nothing.
    [[nodiscard]] std::string on_belly(const zone_list& step);
    /// Of places the step goes over and no step before it did: what is said of the same places together, their
    /// names before it where it isn't all of the step; whole the first time, then in short. Empty: nothing.
    [[nodiscard]] std::string beneath(const zone_list& step);
    /// The list after the bath begins: what is minded of toes, dewclaws and teats is told there again.
    void second_time();
    /// What no step took up, what the owner is told, and the usual ones in one line each.
    void say_rest(document& page);

  private:
    [[nodiscard]] bool told_already(std::size_t k) const;
    [[nodiscard]] bool steps_show(const caution_line& c) const;
    [[nodiscard]] zone_list zones_of(const caution_line& c) const;
    [[nodiscard]] std::string where_of(const caution_line& c) const;
    /// Those of its places that the step goes over and that it wasn't told at.
    [[nodiscard]] zone_list not_told(std::size_t k, const zone_list& step) const;
    /// "; a mat left in: no bath": of a hated place with a mat in it.
    [[nodiscard]] std::string mat_left_in(std::size_t k) const;
    [[nodiscard]] bool at_many(std::size_t k, const std::vector<zone_list>& steps) const;
    [[nodiscard]] bool at_none(std::size_t k, const std::vector<zone_list>& steps) const;
    void say_to_owner(document& page);

    const groom& g_;
    const plan_request& r_;
    std::vector<caution_when> told_;
    std::vector<std::string> told_themselves_;  ///< ids
    std::vector<bool> said_;                    ///< of each of the plan's cautions
    std::vector<zone_list> told_at_;            ///< likewise
    std::vector<bool> above_;                   ///< likewise: once for all steps
};

}  // namespace pelage::io
