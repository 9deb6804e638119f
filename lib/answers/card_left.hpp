// Private to lib: what a card leaves, doesn't touch and goes around.
#pragma once

#include "answers/card_cautions.hpp"

namespace pelage::io {

/// Hurt skin alone, as a card has it.
void say_hurt(document& page, const groom& g, const plan_request& r, const print_options& o,
              card_cautions& cautions);

/// What is left for its length, what else is left, hurt skin, and lumps and scabs to be felt for; cautions that
/// stand there are told by it.
void say_left(document& page, const groom& g, const plan_request& r, const print_options& o,
              card_cautions& cautions);

}  // namespace pelage::io
