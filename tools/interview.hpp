// The intake as a talk: a dog nobody knows, or one of which a file and its record tell.
#pragma once

#include "asker.hpp"
#include "intake_talk.hpp"

namespace pelage::cli {

/// Asks what isn't answered yet and gives the dog as it was described; the same answers give the same dog.
/// A dog with a file is asked only about what may have changed. With a sign of the stop list nothing more
/// is asked. `finish` is what is done with it while one may still go back; it may ask, too. Throws
/// break_off where the talk is broken off, with all answers kept.
void interview(asker& a, intake_answers& kept, const intake_matter& about,
               const std::function<void(const intake_result&)>& finish);

}  // namespace pelage::cli
