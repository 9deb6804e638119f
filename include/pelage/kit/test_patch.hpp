// A test patch: a blade or a comb was run over a patch of coat and what it left was measured. It tells
// the angle at which the coat lies, or what the blade or comb really leaves.
#pragma once

#include <optional>
#include <vector>

#include <pelage/kit/buy.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// What a patch may set. With the lay a blade shows the angle of the lay unless the blade is asked for;
/// against the lay it shows the blade. A comb's patch sets the comb alone: its teeth lift the hair by
/// a share that is our guess.
enum class patch_sets { by_direction, lay, tool };

/// The patch. Everything is borrowed for the call.
struct test_patch {
    const reference_data& reference;     ///< what the library knows
    const parameters& rules;             ///< figures, the salon's own among them
    const kit& tools;                    ///< the kit
    const std::vector<style>& sheets;    ///< whose zones are looked at
    setup tool{};                        ///< a blade, or a comb over a blade, with its direction
    coat_class coat = coat_class::wavy;  ///< it was clipped on
    std::optional<place> where{};        ///< none: nobody said
    length found{};                      ///< measured after combing out (mm)
    patch_sets sets = patch_sets::by_direction;  ///< what it is to teach
    std::optional<date> today{};                 ///< none: not known
};

/// A setup of the kit that leaves another length now.
struct changed_length {
    setup how{};        ///< what is held
    finished before{};  ///< what it was taken to leave
    finished after{};   ///< what it is taken to leave now
};

/// A target of a sheet on the patch's coat that the kit meets now and didn't, or the reverse.
struct changed_target {
    std::size_t sheet = 0;  ///< index into the sheets
    std::size_t zone = 0;   ///< index into body::zones
    bool meets = false;     ///< it comes within tolerance, else it leaves it
    std::string season{};   ///< of the sheet; empty: the sheet as it is
};

/// Why a patch teaches nothing.
enum class patch_slip {
    comb_tells_no_lay,      ///< the lay asked of a comb: how far its teeth lift the hair is a guess
    reversed_tells_no_lay,  ///< the lay asked of a patch against it
    blade_shows_no_lay,     ///< so long a blade's share of the lay is 0
    shorter_than_reversed,  ///< with the lay less than the blade cuts against it
    longer_than_believed,   ///< more than four times the blade's length
    no_one_length,          ///< the length asked of an adjustable blade
    far_from_label          ///< more than four times off what is etched
};

/// A patch that can't be, or that can't tell what is asked of it.
struct refused_patch {
    patch_slip why{};  ///< what is wrong with it
    length counted{};  ///< the blade's length until now (mm), where it speaks of it
    length made{};     ///< the length the patch would give the tool (mm), likewise
    length etched{};   ///< and what is etched on it (mm)
};

/// What the patch teaches.
struct calibration {
    std::optional<refused_patch> refused{};  ///< then only `expected` and `lay_before` are told
    finished expected{};                     ///< what the setup was taken to leave
    std::optional<figure<double>> lay{};     ///< the angle of the lay that explains it (degrees)
    double lay_before = 0.0;                 ///< degrees, as it was taken until now
    std::optional<length> measured{};        ///< or the length to write at the tool
    length stated_before{};                  ///< the tool's length until now
    bool of_comb = false;                    ///< it is a comb's length, else a blade's
    std::vector<changed_length> lengths{};   ///< what changes, by setup
    std::vector<changed_target> targets{};   ///< what changes, by zone of a sheet
};

/// Works it out; changes nothing. A patch that can't be is no error: `refused` says why.
[[nodiscard]] calibration read_patch(const test_patch& r);

}  // namespace pelage
