// Mats of the intake, from the words of --mat.
#pragma once

#include "resolve_arguments.hpp"

namespace pelage::cli {

/// Lays what --mat says over the findings of the dog, narrower words last; two mats in one place are a fault.
void apply_mats(const intake_options& o, const workplace& w, dog& d, faults& f);

/// What an option says of the hair may fight what a file says of a mat, and the other way round.
void check_free_hair(const intake_options& o, bool hair_said, const workplace& w, const dog& d,
                     faults& f);

}  // namespace pelage::cli
