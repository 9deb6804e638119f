// What answers are made of, as values: they own all they hold and know nothing of the salon.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/length_unit.hpp>
#include <pelage/base/units.hpp>
#include <pelage/solver/visit_schedule.hpp>
#include <pelage/trade/coat_class.hpp>
#include <pelage/trade/finish.hpp>

namespace pelage {

/// What is in the hand, and how it is moved.
struct tool_in_hand {
    tool_kind kind = tool_kind::none;  ///< what it is
    std::string blade{};               ///< its id, "7F"; empty: no blade
    std::string lever_at{};            ///< of an adjustable blade: the mark its lever is on
    std::string comb{};                ///< its id, "13 mm"; empty: no comb
    std::string hand_tool{};           ///< what the trade calls it on this coat; empty: by its kind
    direction moved = direction::with_lay;  ///< of what clips
};
/// "comb 13 mm over blade 30, with the lay", "scissors".
[[nodiscard]] std::string text(const tool_in_hand& t, length_unit u = length_unit::mm);

/// A place of a step.
struct step_place {
    std::string title{};                      ///< "left ear"
    std::optional<finished> leaves_length{};  ///< (mm); none: the step cuts nothing to length here
};

/// One step of a plan: some places done with one tool in one go.
struct step {
    bool before_bath = false;          ///< else after it
    tool_in_hand tool{};               ///< what is held
    finish done = finish::clip;        ///< how it is finished
    bool finished_later = false;       ///< clips down what another step finishes after the bath
    std::vector<step_place> places{};  ///< in the order of the body
    work takes{};                      ///< with picking up the tool
};
/// "comb 13 mm over blade 30, with the lay, leaves 13 mm: back, loin".
[[nodiscard]] std::string text(const step& s, length_unit u = length_unit::mm);

/// A mat combed out before the bath.
struct combed_mat {
    std::string place{};  ///< as people call it
    work takes{};         ///< to comb it out
};

/// A caution that applies.
struct plan_caution {
    std::string id{};                   ///< of reference/cautions.toml
    int danger = 3;                     ///< 1 (gravest) to 5
    std::string text{};                 ///< in a sentence or more
    std::vector<std::string> places{};  ///< empty: the whole dog
};

/// A style sheet in a list.
struct sheet_card {
    std::string id{};                 ///< as files name it
    std::string title{};              ///< as people call it
    std::vector<coat_class> coats{};  ///< coats it is for; empty: any
};

/// What a blade or a comb leaves on one coat (mm).
struct coat_leaves {
    coat_class coat = coat_class::wavy;  ///< on which
    finished with_lay{};                 ///< what is left, moved with the lay
    finished against_lay{};              ///< what is left, moved against it
};

/// What comes near to a length asked for.
struct near_tool {
    coat_class coat = coat_class::wavy;  ///< on which
    tool_in_hand tool{};                 ///< what is held
    finished leaves_length{};            ///< (mm)
    length off{};                        ///< how far its best is from what was asked (mm)
    bool at_hand = true;                 ///< in the kit and not out for sharpening
};

/// One rung of a ladder.
struct ladder_rung {
    tool_in_hand tool{};       ///< what is held
    finished leaves_length{};  ///< (mm)
    bool at_hand = true;       ///< not out for sharpening
    bool whole_coat = false;   ///< may go wherever the coat is clipped
};
/// "blade 7F, with the lay: 3.2 mm (2.5 to 4)".
[[nodiscard]] std::string text(const ladder_rung& r, length_unit u = length_unit::mm);

/// A visit of a calendar.
struct visit_day {
    date on{};                                 ///< the day
    visit_work what = visit_work::full_groom;  ///< what is done
    work takes{};                              ///< the whole appointment
};

}  // namespace pelage
