// A checked kit and a test patch, as documents.
#include <algorithm>

#include <pelage/answers/kit.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/kit_check.hpp"
#include "answers/words/test_patch.hpp"
#include "answers/words/tolerance.hpp"
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

std::string head_of(const kit_check& c, const kit_check_request& r) {
    const std::string whose = r.own.title.empty() ? "The kit" : r.own.title;
    const auto many = [](std::size_t n, const std::string& what) {
        return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
    };
    std::string text = whose + ": " + many(r.own.blades.size(), "blade") + ", " +
                       many(r.own.combs.size(), "comb") + ". ";
    if (c.targets == 0) {
        return text + "No sheet asks anything of it.";
    }
    text += "Of " + std::to_string(c.targets) + " lengths that " + std::to_string(r.sheets.size()) +
            (r.sheets.size() == 1 ? " sheet asks" : " sheets ask") +
            " of clippers, zone by zone and coat by coat, it leaves " +
            share_text(c.met, c.targets) + " within tolerance";
    if (c.met_today != c.met) {
        text += "; today, with what is out, " + share_text(c.met_today, c.targets);
    }
    return text + ".";
}

/// The zones that come within tolerance, or leave it; whether there are any.
bool say_zones(document& d, const calibration& l, const test_patch& r, bool meets) {
    bool any = false;
    for (std::size_t s = 0; s < r.sheets.size(); ++s) {
        std::vector<std::string> zones;
        for (const changed_target& t : l.targets) {
            if (t.sheet == s && t.meets == meets) {
                zones.push_back(r.reference.dog_body.zones[t.zone].title + in_its_season(t.season));
            }
        }
        if (!zones.empty()) {
            if (!any) {
                d.open(meets ? "Now within tolerance" : "No longer within tolerance");
            }
            d.item_of(r.sheets[s].id + ": ", listed(zones));
            any = true;
        }
    }
    return any;
}

std::string head_of(const calibration& l, const test_patch& r, const print_options& o) {
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
    return text;
}

/// The setups of which the likeliest length changes on the screen, and how many do only in range.
void say_lengths(document& d, const calibration& l, const test_patch& r, length_unit u) {
    typed_table t{{"leaves", "until now", "now"}};
    for (const changed_length& c : l.lengths) {
        if (show(c.before.best, u) != show(c.after.best, u)) {
            t.rows.push_back({title_words(c.how, u), c.before.best, c.after.best});
        }
    }
    const bool none = t.rows.empty();
    const std::size_t rest = l.lengths.size() - t.rows.size();
    d.open(none ? "" : "Then on a " + std::string(name(r.coat)) + " coat");
    d.show(std::move(t));
    if (rest > 0) {
        d.say("The range of " + std::to_string(rest) + (none ? "" : " more") +
              " changes and the likeliest length does not.");
    } else if (none) {
        d.say("No setup of the kit leaves another length on this coat.");
    }
}

/// What stands behind the judgement.
void say_sure(document& d, const kit_check_request& r, length_unit u) {
    d.open("How sure");
    d.item(tolerance_words(r.rules.prices, u));
    d.item("what the lay adds: " + std::string(in_words(r.rules.cut.blade_long_share.why.how)));
    for (std::size_t how = 0; how < basis_names.size(); ++how) {
        std::vector<std::string> tools;
        for (const kit_blade& b : r.own.blades) {
            if (b.measured ? static_cast<basis>(how) == basis::measured
                           : b.spec.stated.why.how == static_cast<basis>(how)) {
                tools.push_back("blade " + b.spec.id);
            }
        }
        for (const kit_comb& one : r.own.combs) {
            if (one.measured ? static_cast<basis>(how) == basis::measured
                             : one.spec.stated.why.how == static_cast<basis>(how)) {
                tools.push_back("comb " + comb_words(one.spec.id, u));
            }
        }
        if (!tools.empty()) {
            d.item("length of " + listed(tools) + ": " +
                   std::string(in_words(static_cast<basis>(how))));
        }
    }
}

}  // namespace

document document_of(const kit_check& c, const kit_check_request& r, const print_options& o) {
    document d{"Kit check"};
    d.say(head_of(c, r));
    for (std::size_t i = 0; i < c.remarks.size(); ++i) {
        if (i == 0 || c.remarks[i].what != c.remarks[i - 1].what) {
            d.open(heading(c.remarks[i].what));
        }
        d.item(finding_words(c.remarks[i].found, r, o.units));
    }
    if (c.remarks.empty()) {
        d.say("Nothing to remark.");
    } else if (c.met != c.targets) {
        d.open();
        d.say(c.more_to_buy ? "What would fill the gaps: pelage kit buy --most 5"
                            : "No blade or comb in common use fills a gap: scissor there, or mend "
                              "the sheet.");
    }
    if (o.explain) {
        say_sure(d, r, o.units);
    }
    return d;
}

document document_of(const calibration& l, const test_patch& r, const print_options& o) {
    document d{"A test patch"};
    d.say(head_of(l, r, o));
    d.open(l.lay ? "Write into salon.toml, in place of such a table if it has one:"
                 : "Write into salon.toml, beside what stands there of it:");
    for (const std::string& line : salon_lines(l, r, o.units)) {
        d.copied(line);
    }
    say_lengths(d, l, r, o.units);
    const bool gained = say_zones(d, l, r, true);
    const bool lost = say_zones(d, l, r, false);
    if (!gained && !lost) {
        d.open();
        d.say("No sheet's zones come within tolerance or leave it.");
    }
    d.say("Nothing was changed. One patch is one dog: measure two or three before you trust it.");
    return d;
}

}  // namespace pelage::io
