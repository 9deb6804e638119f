// A setup is one thing you hold and how you move it.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <pelage/base/length_text.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/blade.hpp>
#include <pelage/trade/comb.hpp>
#include <pelage/trade/finish.hpp>

namespace pelage {

/// One setup: a blade, or a comb over a blade, with a direction; or a hand tool; or nothing.
struct setup {
    tool_kind kind = tool_kind::none;     ///< what it is
    blade tool{};                         ///< meaningful for clip only
    std::optional<comb> over{};           ///< a comb on the blade
    direction way = direction::with_lay;  ///< of what clips
    std::string called{};  ///< what the trade calls this hand tool on this coat; empty: by its kind
};

/// A blade used bare.
[[nodiscard]] inline setup bare(blade b, direction d) {
    return {tool_kind::clip, std::move(b), std::nullopt, d, {}};
}
/// A comb on a blade.
[[nodiscard]] inline setup combed(comb c, blade under, direction d) {
    return {tool_kind::clip, std::move(under), std::move(c), d, {}};
}
/// A hand tool, or nothing at all.
[[nodiscard]] inline setup by_hand(tool_kind k) {
    return {k, {}, std::nullopt, {}, {}};
}

/// "comb 13 mm over blade 30", "blade 7F", "scissors": what is held, without the direction.
[[nodiscard]] inline std::string held(const setup& s) {
    switch (s.kind) {
        case tool_kind::clip: {
            const std::string mark = s.tool.setting.empty() ? "" : " at " + s.tool.setting;
            return (s.over ? "comb " + s.over->id + " over blade " : "blade ") + s.tool.id + mark;
        }
        case tool_kind::scissors:
            return "scissors";
        case tool_kind::thinners:
            return "thinning scissors";
        case tool_kind::carder:
            return s.called.empty() ? "carding tool" : s.called;
        case tool_kind::fingers:
            return "hand-strip";
        case tool_kind::none:
            break;
    }
    return "leave";
}

/// What is held and how it is moved: the setup's name everywhere.
[[nodiscard]] inline std::string title(const setup& s) {
    if (s.kind != tool_kind::clip) {
        return held(s);
    }
    return held(s) + ", " + std::string(name(s.way));
}

/// "6.4 mm (3.2 to 8)" - the best and what it may lie between.
[[nodiscard]] inline std::string show(const finished& f, length_unit u = length_unit::mm) {
    const auto plain = [&](const length& l) {
        return u == length_unit::mm ? number(l) : fraction_of_inch(l);
    };
    if (plain(f.low) == plain(f.high)) {
        return show(f.best, u);
    }
    return show(f.best, u) + " (" + plain(f.low) + " to " + plain(f.high) + ")";
}

}  // namespace pelage
