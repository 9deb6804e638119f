// Private to lib: what the things of a question mean by what stands beside them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/kit/asked.hpp>

#include "kit/asked_pieces.hpp"

namespace pelage::asking {

/// A blade, comb or length by its own words. Throws as read_question().
[[nodiscard]] question read_tool(const std::string& text, const lookup_request& r);

/// "never", "list words": a list, if nothing else is asked; else these words say nothing.
[[nodiscard]] std::optional<list_asked> only_a_list(std::vector<piece>& all);

/// "clip" is what is asked about where it is told apart from something, or nothing else is said.
void say_what_fillers_mean(std::vector<piece>& all);

/// "comb over a 7F", "which blade under the comb".
[[nodiscard]] std::optional<carrying_asked> comb_on_a_blade(const std::vector<piece>& all,
                                                            const lookup_request& r);

/// "blade" and "comb" say nothing beside another thing: "which blade for the belly", "matted dog what
/// blade". Gives which of them was said, and not the other: of a length that is looked for.
asked_kind drop_tool_words(std::vector<piece>& all);

/// A word for several things means that one of them which belongs to what is said beside it: "comb vs
/// blade", "skip tooth vs finish".
void settle_by_neighbours(std::vector<piece>& all, const glossary& g, const term_index& index);

/// "longest blade": of the kit, by what is stated; without a blade or a comb the ladder of a coat.
[[nodiscard]] asked about_the_extreme(const std::string& word, asked_kind only,
                                      const lookup_request& r);

/// "13 mm over a 10 or a 30", "10 or 30 under a 13 mm comb": the comb sits on each of them.
void comb_over_each(std::vector<piece>& all, const lookup_request& r);

/// "clipper oil, how often": words that only ask go where another thing is asked about that they don't
/// belong to.
void drop_asking_words(std::vector<piece>& all);

/// "7 skip", "5 finish": the one blade of that number with these teeth, where there is one; then the word
/// has been said and goes from `beside`.
void take_teeth(question& q, std::vector<const term*>& beside, const lookup_request& r);

}  // namespace pelage::asking
