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
    const reference_data& reference;   ///< what the library knows
    const parameters& rules;           ///< figures, the salon's own among them
    const kit& own;                    ///< the kit that is checked
    const std::vector<style>& sheets;  ///< what is to be cut with it
    std::optional<date> today{};       ///< none: nothing is out for sharpening
};

/// A blade or a comb of the kit, by its id ("7F", "13 mm").
struct kit_tool {
    bool is_comb = false;  ///< else a blade
    std::string id;        ///< of that blade or comb
    friend bool operator==(const kit_tool&, const kit_tool&) = default;
};

/// unsafe: a comb said to fit a blade that no comb may sit on.
struct comb_on_wrong_blade {
    std::string comb;   ///< its id
    std::string blade;  ///< id of the one beneath
    refusal why{};      ///< what forbids it
};

/// unsafe: a blade that no groom uses.
struct surgical_blade {
    std::string blade;  ///< its id
};

/// two_lengths: what is printed on several combs of different length.
struct label_on_combs {
    /// A comb that has the label.
    struct labelled {
        std::string comb;  ///< its id
        std::string set;   ///< title of the set it is of
    };
    std::string label;            ///< what is printed on both
    std::vector<labelled> combs;  ///< at least two
};

/// two_lengths: what is printed on a comb is also the name of a blade.
struct label_on_comb_and_blade {
    std::string label;    ///< and the blade's id
    length blade_length;  ///< the blade's, as measured if it was (mm)
    std::string comb;     ///< its id
    std::string set;      ///< title of the set it is of
};

/// two_lengths: one number etched on two blades of unlike length.
struct number_on_blades {
    /// A blade that has the number.
    struct numbered {
        std::string blade;  ///< its id
        length leaves;      ///< stated, or as measured (mm)
    };
    std::string number;  ///< what is written on both
    numbered first;      ///< the one
    numbered second;     ///< the other
};

/// gap: a length, a blade, or else any customary blade of prep zones, that the sheets ask for and that
/// nothing in the kit leaves within tolerance, everything in it at hand.
struct nothing_leaves {
    /// A sheet that asks for the length.
    struct asking {
        std::size_t sheet = 0;           ///< index into the request's sheets
        std::vector<std::size_t> zones;  ///< indices into body::zones
        std::vector<coat_class> coats;   ///< on which of its coats
        std::string season{};            ///< in which of its seasons; empty: the sheet as it is
    };
    /// What comes nearest.
    struct nearest {
        setup how{};        ///< what is held
        length off{};       ///< from what is asked (mm)
        coat_class coat{};  ///< on which of the coats
    };
    std::optional<length> wanted;      ///< to 0.01 mm; none if a blade is missing
    std::optional<std::string> blade;  ///< the blade asked for by name
    std::vector<asking> sheets;        ///< who asks it
    std::optional<nearest> best;       ///< the one least off that may be used there
};

/// out: a blade out for sharpening, with what does its work until then.
struct blade_out {
    /// What does its work.
    struct in_place {
        std::optional<setup> how;       ///< none: nothing at hand leaves as much
        std::vector<coat_class> coats;  ///< on which of the coats of the sheets
    };
    std::string blade;              ///< its id
    std::optional<date> until;      ///< none: nobody said
    std::vector<in_place> instead;  ///< empty where no sheet asks for a coat
};

/// out: the blade under the combs is out.
struct comb_blade_out {
    /// What goes under the combs in its place.
    struct beneath {
        std::string blade;     ///< id of the one beneath instead
        length change{};       ///< of what every comb leaves (mm)
        bool shorter = false;  ///< else longer
    };
    std::string blade;               ///< its id
    std::optional<date> until;       ///< none: nobody said
    std::optional<beneath> instead;  ///< none: no comb can be used until then
};

/// no_basis: blades and combs whose length is from memory or guessed, and not measured.
struct guessed_lengths {
    /// One of them.
    struct guessed {
        kit_tool tool;  ///< which
        basis how{};    ///< from memory, or guessed
    };
    std::vector<guessed> tools;  ///< each once
};

/// idle: what no sheet needs.
struct idle_tools {
    /// One of them.
    struct idle {
        kit_tool tool;  ///< which
        length leaves;  ///< stated, or as measured (mm)
    };
    std::vector<idle> tools;  ///< each once
};

/// remark: a comb said to fit a blade that isn't in the kit.
struct comb_on_no_blade {
    std::string comb;   ///< its id
    std::string blade;  ///< id of the one it should sit on
};

/// remark: a blade measured outside what is stated of it.
struct measured_elsewhere {
    std::string blade;  ///< its id
    length measured;    ///< what a patch left
    length etched;      ///< what is etched on it
};

/// remark: an adjustable blade whose lever has no marks written, and so isn't planned with.
struct lever_without_marks {
    std::string blade;  ///< its id
};

/// remark: blades with skip teeth and with full ones under almost one name.
struct look_alikes {
    /// Two of them.
    struct pair {
        std::string skip;  ///< id of the one with skip teeth
        std::string full;  ///< id of the one with full teeth
    };
    std::vector<pair> pairs;  ///< each once
};

/// remark: blades that clip a coat and have no second to swap in while the first cools.
struct single_blades {
    std::vector<std::string> blades;  ///< their ids
};

/// remark: more of it lie at the tables than the kit has.
struct more_than_there_are {
    kit_tool tool;      ///< which
    int at_tables = 0;  ///< all tables together
    int in_kit = 0;     ///< so many there are
};

/// What was found, with the ids, lengths and days it is about. In words: answers/kit.hpp.
using drawer_finding =
    std::variant<comb_on_wrong_blade, surgical_blade, label_on_combs, label_on_comb_and_blade,
                 number_on_blades, nothing_leaves, blade_out, comb_blade_out, guessed_lengths,
                 idle_tools, comb_on_no_blade, measured_elsewhere, lever_without_marks, look_alikes,
                 single_blades, more_than_there_are>;

/// One thing found.
struct kit_remark {
    kit_matter what = kit_matter::remark;  ///< under which heading
    drawer_finding found;                  ///< with its values
};

/// What was found, gravest first.
struct kit_check {
    std::vector<kit_remark> remarks;  ///< gravest first
    std::size_t targets = 0;          ///< zones of the sheets, on their coats, that clippers cut
    std::size_t met = 0;              ///< of them within tolerance, everything in the kit at hand
    std::size_t met_today = 0;        ///< the same without what is out
    bool more_to_buy =
        false;  ///< a blade or comb in common use that isn't in the kit would meet more
    /// Whether something has to be mended: unsafe, a label with two lengths, or a gap.
    [[nodiscard]] bool amiss() const;
};

[[nodiscard]] kit_check check_kit(const kit_check_request& r);

}  // namespace pelage
