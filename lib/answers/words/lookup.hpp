// Private to lib: what a look-up and a ladder show, each decision as a sentence.
#pragma once

#include <string>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/kit/lookup.hpp>

namespace pelage::io {

/// "customary there: blade 10"; with the places before it where it isn't true of all asked about. `way`: how
/// what may not go there is moved.
[[nodiscard]] std::string no_go_words(const no_go& no, const body& b,
                                      direction way = direction::with_lay);

/// "on the back: it may be used, with the lay and against it".
[[nodiscard]] std::string there_words(const use_there& there, const lookup_request& r);

/// Why what is asked about is never done; `a.never` holds.
[[nodiscard]] std::string never_words(const lookup_answer& a, const lookup_request& r,
                                      length_unit u);

/// What to know of the coat asked about before any length; may be empty.
[[nodiscard]] std::string coat_words(const lookup_request& r);

/// "out today", and of the demo salon's kit "out today in the demo kit".
[[nodiscard]] std::string out_words(const lookup_request& r);

/// The hints and the cautions of an answer. Who asks in inches isn't told how to ask for millimetres.
[[nodiscard]] std::vector<std::string> hint_words(const question& q, length_unit u);
[[nodiscard]] std::vector<std::string> caution_words(const lookup_answer& a,
                                                     const lookup_request& r);

/// "stated length", and how it is known with what there is to note.
[[nodiscard]] std::string figure_words(const known_figure& f, const lookup_request& r);
[[nodiscard]] evidence known_how(const known_figure& f, const lookup_answer& a);

/// Where a setup goes that may go wherever the coat is clipped: "whole coat but belly and pads".
[[nodiscard]] std::string whole_coat_words(const setup& s, const body& b);

/// "belly and armpits: blade 10; pads: blades 10 and 15": the places of prep, and what goes there.
[[nodiscard]] std::string prep_words(const body& b);

/// Where a setup may go: "ears; of pattern breeds: cheeks".
[[nodiscard]] std::string places_words(const where_it_may& w, const body& b);

}  // namespace pelage::io
