#include "log_check.hpp"

#include <pelage/answers/record.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/model/hair_by_record.hpp>

namespace pelage::cli {

namespace {

/// The dog as it came to the visit of that day.
dog before(dog d, const workplace& w, const date& on) {
    (void)coat_by_mix(d, w);
    std::erase_if(d.visits, [&](const visit& v) { return v.on >= on; });
    std::erase_if(d.measured, [&](const measurement& m) { return m.on >= on; });
    return d.coat ? as_by_record(std::move(d), w.reference, w.place().rules, on) : d;
}

std::string said(const length_doubt& d, length_unit u) {
    return d.whom + " " + show(d.said, u);
}

}  // namespace

entry_checks::entry_checks(const workplace& w, dog d, const date& on, bool sure)
    : w_(w),
      dog_(before(std::move(d), w, on)),
      on_(on),
      sure_(sure),
      parts_(w.reference.dog_body) {}

/// Where the salon is the invented one, nobody knows what is in the drawer.
const kit* entry_checks::drawer() const {
    return w_.own || w_.own_kit ? &w_.tools() : nullptr;
}

std::vector<length_doubt> entry_checks::doubts_of(const log_entry& e) const {
    return length_doubts(e, dog_, parts_, w_.reference, w_.place().rules);
}

void entry_checks::tools(const std::string& option, const std::vector<logged_tool>& all,
                         faults& f) const {
    for (const logged_tool& t : all) {
        const auto d = doubt_of_tool(t.tool, w_.reference, w_.place().rules, drawer(), on_);
        if (d && d->impossible() && !sure_) {
            f.say(errc::unknown, option + ": " + io::doubt_words(*d));
        }
    }
}

void entry_checks::lengths(const std::array<std::string, 2>& option, const log_entry& e,
                           faults& f) const {
    for (const length_doubt& d : doubts_of(e)) {
        if (d.impossible() && !sure_) {
            f.say(errc::range, option[d.before_cut ? 1 : 0] + ": " +
                                   io::doubt_words(d, dog_, w_.reference, w_.print.units) +
                                   "; found \"" + said(d, w_.print.units) + "\"" +
                                   (d.measured ? "" : ", as planned; write what was left"));
        }
    }
}

std::vector<std::string> entry_checks::odd(const log_entry& e) const {
    std::vector<std::string> out;
    for (const length_doubt& d : doubts_of(e)) {
        if (!d.impossible() || sure_) {
            out.push_back((d.before_cut ? "before: " : "left: ") + said(d, w_.print.units) +
                          " is " + io::doubt_words(d, dog_, w_.reference, w_.print.units));
        }
    }
    for (const logged_tool& t : e.used) {
        const auto d = doubt_of_tool(t.tool, w_.reference, w_.place().rules, drawer(), on_);
        if (d && (!d->impossible() || sure_)) {
            out.push_back("tools: " + io::doubt_words(*d));
        }
    }
    return out;
}

}  // namespace pelage::cli
