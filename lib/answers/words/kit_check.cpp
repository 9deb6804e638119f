#include "answers/words/kit_check.hpp"

#include <pelage/base/phrase.hpp>

#include "answers/words/refusal.hpp"
#include "answers/words/tool.hpp"

namespace pelage::io {

namespace {

std::vector<std::string> coat_names(const std::vector<coat_class>& coats) {
    std::vector<std::string> out;
    for (const coat_class c : coats) {
        out.emplace_back(name(c));
    }
    return out;
}

/// One call operator a finding.
class finding_writer {
  public:
    finding_writer(const kit_check_request& r, length_unit u) : r_(r), u_(u) {}

    std::string operator()(const comb_on_wrong_blade& f) const {
        return comb_called(f.comb) + " over blade " + f.blade + ": " +
               std::string(refusal_words(f.why));
    }

    std::string operator()(const surgical_blade& f) const {
        return "blade " + f.blade + ": " + std::string(refusal_words(refusal::never_50)) +
               "; take it out of the drawer";
    }

    std::string operator()(const label_on_combs& f) const {
        std::vector<std::string> all;
        for (const auto& c : f.combs) {
            all.push_back(comb_words(c.comb, u_) + " in " + c.set);
        }
        return "\"" + f.label + "\" on a comb is " + listed(all) +
               ": go by the length, and mark them";
    }

    std::string operator()(const label_on_comb_and_blade& f) const {
        return "\"" + f.label + "\" is a blade of " + show(f.blade_length, u_) + " and, in " +
               f.set + ", a comb of " + comb_words(f.comb, u_) + ": say \"blade " + f.label +
               "\" or the comb's length";
    }

    std::string operator()(const number_on_blades& f) const {
        const auto one = [&](const number_on_blades::numbered& b) {
            return "on blade " + b.blade + " (" + show(b.leaves, u_) + ")";
        };
        return "\"" + f.number + "\" is " + one(f.first) + " and " + one(f.second) +
               ": keep them apart and say the whole name";
    }

    std::string operator()(const nothing_leaves& f) const {
        std::vector<std::string> asking;
        for (const auto& s : f.sheets) {
            asking.push_back(r_.sheets[s.sheet].id + in_its_season(s.season) + " (" +
                             listed(some_of(s.zones)) + "; " + listed(coat_names(s.coats)) + ")");
        }
        const std::string what = f.blade    ? "blade " + *f.blade
                                 : f.wanted ? show(*f.wanted, u_)
                                            : "a customary blade";
        return what + ": " + joined(asking, ", ") +
               (f.best
                    ? "; nearest " + title_words(f.best->how, u_) + ", " + show(f.best->off, u_) +
                          " off (" + std::string(name(f.best->coat)) + ")"
                    : "");
    }

    std::string operator()(const blade_out& f) const {
        std::vector<std::string> all{is_out(f.blade, f.until)};
        for (const auto& by : f.instead) {
            all.push_back((by.how ? "in its place " + held_words(*by.how, u_)
                                  : "nothing at hand replaces it") +
                          (f.instead.size() > 1 ? " (" + listed(coat_names(by.coats)) + ")" : ""));
        }
        return joined(all, "; ");
    }

    std::string operator()(const comb_blade_out& f) const {
        return is_out(f.blade, f.until) + "; it is the one under the combs: " +
               (f.instead ? "until then under_comb = \"" + f.instead->blade +
                                "\" would do, with every comb " + show(f.instead->change, u_) +
                                (f.instead->shorter ? " shorter" : " longer")
                          : "no comb can be used until then");
    }

    std::string operator()(const guessed_lengths& f) const {
        std::vector<std::string> all;
        for (const auto& g : f.tools) {
            all.push_back(called(g.tool) + " (" + std::string(in_words(g.how)) + ")");
        }
        return listed(all) + ": nobody stands behind the length; measure a patch (kit measure)";
    }

    std::string operator()(const idle_tools& f) const {
        std::vector<std::string> all;
        for (const auto& i : f.tools) {
            all.push_back(called(i.tool) + (i.tool.is_comb ? "" : " (" + show(i.leaves, u_) + ")"));
        }
        return "no sheet of the salon needs " + listed(all) +
               "; they may still serve under mats, to blend or to spare";
    }

    std::string operator()(const comb_on_no_blade& f) const {
        return comb_called(f.comb) + " is said to fit blade " + f.blade +
               ", which is not in the kit";
    }

    std::string operator()(const measured_elsewhere& f) const {
        return "blade " + f.blade + " leaves " + show(f.measured, u_) +
               " by your patch, etched is " + show(f.etched, u_) + ": mark it";
    }

    std::string operator()(const lever_without_marks&) const {
        return "the adjustable blade is not planned with: write the marks of its lever as "
               "settings = [\"" +
               show(mm(1.5), u_) + "\", \"" + show(mm(3), u_) + "\"]";
    }

    std::string operator()(const look_alikes& f) const {
        std::vector<std::string> all;
        for (const auto& p : f.pairs) {
            all.push_back(p.skip + " and " + p.full);
        }
        return "one letter apart, skip teeth and full: " + listed(all) +
               "; skip teeth go on firm, flat skin only";
    }

    std::string operator()(const single_blades& f) const {
        return "no second to swap in while the first cools: blade " + listed(f.blades) +
               "; two of each size are common practice, no source";
    }

    std::string operator()(const more_than_there_are& f) const {
        return called(f.tool) + " lies at " + std::to_string(f.at_tables) +
               " tables, and the kit has " + std::to_string(f.in_kit);
    }

  private:
    [[nodiscard]] std::string comb_called(const std::string& id) const {
        return "comb " + comb_words(id, u_);
    }

    [[nodiscard]] std::string called(const kit_tool& t) const {
        return t.is_comb ? comb_called(t.id) : "blade " + t.id;
    }

    [[nodiscard]] static std::string is_out(const std::string& blade,
                                            const std::optional<date>& until) {
        return "blade " + blade + " is out" + (until ? " until " + iso(*until) : ", no date said");
    }

    /// Titles of at most three zones, or of two and how many more there are.
    [[nodiscard]] std::vector<std::string> some_of(const std::vector<std::size_t>& zones) const {
        std::vector<std::string> out;
        for (const std::size_t z : zones) {
            out.push_back(r_.reference.dog_body.zones[z].title);
        }
        if (out.size() > 3) {
            out.resize(2);
            out.push_back(std::to_string(zones.size() - 2) + " more");
        }
        return out;
    }

    const kit_check_request& r_;
    length_unit u_;
};

}  // namespace

std::string in_its_season(const std::string& season) {
    return season.empty() ? "" : " in \"" + season + "\"";
}

std::string finding_words(const drawer_finding& f, const kit_check_request& r, length_unit u) {
    return std::visit(finding_writer(r, u), f);
}

}  // namespace pelage::io
