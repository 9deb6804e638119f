// A test patch: a blade or a comb was run over a patch of coat and what it left was measured. It tells
// the angle at which the coat lies, or what the blade or comb really leaves.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/stock.hpp>
#include <pelage/zone.hpp>

namespace pelage {

/// What a patch may set. With the lay a blade shows the angle of the lay unless the blade is asked for;
/// against the lay it shows the blade. A comb's patch sets the comb alone: its teeth lift the hair by
/// a share that is our guess.
enum class patch_sets { by_direction, lay, tool };

/// The patch. Everything is borrowed for the call.
struct patch_request {
    const catalogue& reference;
    const rule_book& rules;
    const kit& tools;
    const std::vector<style>& sheets;
    setup tool{};  ///< a blade, or a comb over a blade, with its direction
    coat_class coat = coat_class::wavy;
    std::optional<place> where{};
    length found{};  ///< measured after combing out (mm)
    patch_sets sets = patch_sets::by_direction;
    std::optional<date> today{};
};

/// A setup of the kit that leaves another length now.
struct changed_length {
    setup how{};
    finished before{};
    finished after{};
};

/// A target of a sheet on the patch's coat that the kit meets now and didn't, or the reverse.
struct changed_target {
    std::size_t sheet = 0;
    std::size_t zone = 0;
    bool meets = false;
};

/// What the patch teaches.
struct patch_lesson {
    finished expected{};                  ///< what the setup was taken to leave
    std::optional<figure<double>> lay{};  ///< the angle of the lay that explains it (degrees)
    double lay_before = 0.0;
    std::optional<length> measured{};  ///< or the length to write at the tool
    length stated_before{};            ///< the tool's length until now
    bool of_comb = false;
    std::vector<std::string> lines{};  ///< to put into salon.toml
    std::vector<changed_length> lengths{};
    std::vector<changed_target> targets{};
};

/// Works it out; changes nothing. Throws error(refused) for a patch that can't be: shorter with the lay
/// than the blade cuts against it, a lay asked of a comb or of a blade that doesn't show it, more than
/// four times off.
[[nodiscard]] patch_lesson read_patch(const patch_request& r);

}  // namespace pelage
