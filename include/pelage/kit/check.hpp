// A kit checked: what in it can be mistaken, what is unsafe together, what is missing or idle for the
// salon's sheets, and how well its lengths are known.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include <pelage/kit/buy.hpp>
#include <pelage/kit/matter.hpp>
#include <pelage/model/refusal.hpp>

namespace pelage {

/// What is checked. Everything is borrowed for the call.
struct kit_check_request {
    const reference_data& reference;
    const parameters& rules;
    const kit& own;
    const std::vector<style>& sheets;
    std::optional<date> today{};
};

/// A blade or a comb of the kit, by its id ("7F", "13 mm").
struct kit_tool {
    bool is_comb = false;
    std::string id;
    friend bool operator==(const kit_tool&, const kit_tool&) = default;
};

/// unsafe: a comb said to fit a blade that no comb may sit on.
struct comb_on_wrong_blade {
    std::string comb;
    std::string blade;
    refusal why{};
};

/// unsafe: a blade that no groom uses.
struct surgical_blade {
    std::string blade;
};

/// two_lengths: what is printed on several combs of different length.
struct label_on_combs {
    struct labelled {
        std::string comb;
        std::string set;
    };
    std::string label;
    std::vector<labelled> combs;  ///< at least two
};

/// two_lengths: what is printed on a comb is also the name of a blade.
struct label_on_comb_and_blade {
    std::string label;    ///< and the blade's id
    length blade_length;  ///< the blade's, as measured if it was (mm)
    std::string comb;
    std::string set;
};

/// two_lengths: one number etched on two blades of unlike length.
struct number_on_blades {
    struct numbered {
        std::string blade;
        length leaves;  ///< stated, or as measured (mm)
    };
    std::string number;
    numbered first;
    numbered second;
};

/// gap: a length, a blade, or else any customary blade of prep zones, that the sheets ask for and that
/// nothing in the kit leaves within tolerance, everything in it at hand.
struct nothing_leaves {
    struct asking {
        std::size_t sheet = 0;           ///< index into the request's sheets
        std::vector<std::size_t> zones;  ///< indices into body::zones
        std::vector<coat_class> coats;
        std::string season{};  ///< in which of its seasons; empty: the sheet as it is
    };
    struct nearest {
        setup how{};
        length off{};  ///< from what is asked (mm)
        coat_class coat{};
    };
    std::optional<length> wanted;      ///< to 0.01 mm; none if a blade is missing
    std::optional<std::string> blade;  ///< the blade asked for by name
    std::vector<asking> sheets;
    std::optional<nearest> best;  ///< the one least off that may be used there
};

/// out: a blade out for sharpening, with what does its work until then.
struct blade_out {
    struct in_place {
        std::optional<setup> how;       ///< none: nothing at hand leaves as much
        std::vector<coat_class> coats;  ///< on which of the coats of the sheets
    };
    std::string blade;
    std::optional<date> until;
    std::vector<in_place> instead;  ///< empty where no sheet asks for a coat
};

/// out: the blade under the combs is out.
struct comb_blade_out {
    struct beneath {
        std::string blade;
        length change{};       ///< of what every comb leaves (mm)
        bool shorter = false;  ///< else longer
    };
    std::string blade;
    std::optional<date> until;
    std::optional<beneath> instead;  ///< none: no comb can be used until then
};

/// no_basis: blades and combs whose length is from memory or guessed, and not measured.
struct guessed_lengths {
    struct guessed {
        kit_tool tool;
        basis how{};
    };
    std::vector<guessed> tools;
};

/// idle: what no sheet needs.
struct idle_tools {
    struct idle {
        kit_tool tool;
        length leaves;  ///< stated, or as measured (mm)
    };
    std::vector<idle> tools;
};

/// remark: a comb said to fit a blade that isn't in the kit.
struct comb_on_no_blade {
    std::string comb;
    std::string blade;
};

/// remark: a blade measured outside what is stated of it.
struct measured_elsewhere {
    std::string blade;
    length measured;
    length etched;
};

/// remark: an adjustable blade whose lever has no marks written, and so isn't planned with.
struct lever_without_marks {
    std::string blade;
};

/// remark: blades with skip teeth and with full ones under almost one name.
struct look_alikes {
    struct pair {
        std::string skip;
        std::string full;
    };
    std::vector<pair> pairs;
};

/// remark: blades that clip a coat and have no second to swap in while the first cools.
struct single_blades {
    std::vector<std::string> blades;
};

/// remark: more of it lie at the tables than the kit has.
struct more_than_there_are {
    kit_tool tool;
    int at_tables = 0;
    int in_kit = 0;
};

/// What was found, with the ids, lengths and days it is about. In words: answers/kit.hpp.
using drawer_finding =
    std::variant<comb_on_wrong_blade, surgical_blade, label_on_combs, label_on_comb_and_blade,
                 number_on_blades, nothing_leaves, blade_out, comb_blade_out, guessed_lengths,
                 idle_tools, comb_on_no_blade, measured_elsewhere, lever_without_marks, look_alikes,
                 single_blades, more_than_there_are>;

/// One thing found.
struct kit_remark {
    kit_matter what = kit_matter::remark;
    drawer_finding found;
};

/// What was found, gravest first.
struct kit_check {
    std::vector<kit_remark> remarks;
    std::size_t targets = 0;  ///< zones of the sheets, on their coats, that clippers cut
    std::size_t met = 0;      ///< of them within tolerance, everything in the kit at hand
    std::size_t met_today = 0;
    bool more_to_buy =
        false;  ///< a blade or comb in common use that isn't in the kit would meet more
    /// Whether something has to be mended: unsafe, a label with two lengths, or a gap.
    [[nodiscard]] bool amiss() const;
};

[[nodiscard]] kit_check check_kit(const kit_check_request& r);

}  // namespace pelage
