// A checked kit and a test patch as text.
#include <algorithm>

#include <pelage/answers/kit.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/layout.hpp"
#include "answers/words/kit_check.hpp"
#include "answers/words/test_patch.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

const char* heading(kit_matter m) {
    switch (m) {
        case kit_matter::unsafe:
            return "Unsafe";
        case kit_matter::two_lengths:
            return "One label, two lengths";
        case kit_matter::gap:
            return "Gaps: nothing in the kit leaves the sheet's length within tolerance";
        case kit_matter::out:
            return "Out for sharpening";
        case kit_matter::no_basis:
            return "Lengths nobody stands behind";
        case kit_matter::idle:
            return "Idle";
        case kit_matter::remark:
            break;
    }
    return "Remarks";
}

/// "all", "94 %": never 100 where something is missing.
std::string share_text(std::size_t part, std::size_t whole) {
    return part == whole ? "all" : std::to_string(100 * part / whole) + " %";
}

std::string drawer_head(const kit_check& c, const kit_check_request& r, const print_options& o) {
    const std::string whose = r.own.title.empty() ? "The kit" : r.own.title;
    const auto many = [](std::size_t n, const std::string& what) {
        return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
    };
    std::string text = whose + ": " + many(r.own.blades.size(), "blade") + ", " +
                       many(r.own.combs.size(), "comb") + ". ";
    if (c.targets == 0) {
        return wrapped("", text + "No sheet asks anything of it.", 0, o.width);
    }
    text += "Of " + std::to_string(c.targets) + " lengths that " + std::to_string(r.sheets.size()) +
            (r.sheets.size() == 1 ? " sheet asks" : " sheets ask") +
            " of clippers, zone by zone and coat by coat, it leaves " +
            share_text(c.met, c.targets) + " within tolerance";
    if (c.met_today != c.met) {
        text += "; today, with what is out, " + share_text(c.met_today, c.targets);
    }
    return wrapped("", text + ".", 0, o.width);
}

std::string zones_text(const calibration& l, const test_patch& r, bool meets,
                       const print_options& o) {
    std::string out;
    for (std::size_t s = 0; s < r.sheets.size(); ++s) {
        std::vector<std::string> zones;
        for (const changed_target& t : l.targets) {
            if (t.sheet == s && t.meets == meets) {
                zones.push_back(r.reference.dog_body.zones[t.zone].title);
            }
        }
        if (!zones.empty()) {
            out += wrapped("  " + r.sheets[s].id + ": ", listed(zones), 4, o.width);
        }
    }
    return out;
}

std::string lesson_head(const calibration& l, const test_patch& r, const print_options& o) {
    std::string text = title_words(r.tool, o.units) + " left " + show(r.found, o.units) + " on a " +
                       std::string(name(r.coat)) + " coat";
    text += r.where ? ", " + title(r.reference.dog_body, *r.where) : "";
    text += "; expected was " + show(l.expected, o.units) + ". ";
    if (l.lay) {
        text += "So the hair lies at about " + detail::fixed(l.lay->best, 0) +
                " degrees, until now " + detail::fixed(l.lay_before, 0) +
                " was taken. The angle counts for all of this coat.";
    } else {
        text +=
            "So " +
            std::string(l.of_comb ? "comb " + comb_words(r.tool.over->id, o.units) : held(r.tool)) +
            " counts as " + show(*l.measured, o.units) + ", until now as " +
            show(l.stated_before, o.units) + ".";
    }
    return wrapped("", text, 0, o.width);
}

/// The setups of which the likeliest length changes on the screen; `rest`: how many only in range.
table lengths_table(const calibration& l, const print_options& o, std::size_t& rest) {
    table t;
    t.head = {"leaves", "until now", "now"};
    rest = 0;
    for (const changed_length& c : l.lengths) {
        const std::string before = show(c.before.best, o.units);
        const std::string after = show(c.after.best, o.units);
        if (before == after) {
            ++rest;
        } else {
            t.rows.push_back({title_words(c.how, o.units), before, after});
        }
    }
    return t;
}

std::string lengths_text(const calibration& l, const test_patch& r, const print_options& o) {
    std::size_t rest = 0;
    const table t = lengths_table(l, o, rest);
    std::string out;
    if (!t.rows.empty()) {
        out += "\nThen on a " + std::string(name(r.coat)) + " coat\n" + laid_out(t, o.width);
    }
    if (rest > 0) {
        out += std::string(t.rows.empty() ? "\n" : "") +
               wrapped("",
                       "The range of " + std::to_string(rest) + (t.rows.empty() ? "" : " more") +
                           " changes and the likeliest length does not.",
                       0, o.width);
    }
    return out.empty() ? "\nNo setup of the kit leaves another length on this coat.\n" : out;
}

}  // namespace

std::string text_of(const kit_check& c, const kit_check_request& r, const print_options& o) {
    std::string out = drawer_head(c, r, o);
    for (std::size_t i = 0; i < c.remarks.size(); ++i) {
        if (i == 0 || c.remarks[i].what != c.remarks[i - 1].what) {
            out += "\n" + wrapped("", heading(c.remarks[i].what), 0, o.width);
        }
        out += wrapped("  ", finding_words(c.remarks[i].found, r, o.units), 4, o.width);
    }
    if (c.remarks.empty()) {
        return out + "Nothing to remark.\n";
    }
    if (c.met != c.targets) {
        out += "\nWhat would fill the gaps: pelage kit buy --most 5\n";
    }
    return out;
}

std::string text_of(const calibration& l, const test_patch& r, const print_options& o) {
    std::string out = lesson_head(l, r, o);
    out += "\n";
    out += l.lay ? "Write into salon.toml, in place of such a table if it has one:\n"
                 : "Write into salon.toml, beside what stands there of it:\n";
    for (const std::string& line : salon_lines(l, r, o.units)) {
        out += "  " + line + "\n";
    }
    out += lengths_text(l, r, o);
    const std::string gained = zones_text(l, r, true, o);
    const std::string lost = zones_text(l, r, false, o);
    out += gained.empty() ? "" : "\nNow within tolerance\n" + gained;
    out += lost.empty() ? "" : "\nNo longer within tolerance\n" + lost;
    if (gained.empty() && lost.empty()) {
        out += "\nNo sheet's zones come within tolerance or leave it.\n";
    }
    return out + wrapped("",
                         "Nothing was changed. One patch is one dog: measure two or three before "
                         "you trust it.",
                         0, o.width);
}

}  // namespace pelage::io
