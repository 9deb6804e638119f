#include "answers/words/objection.hpp"

#include <algorithm>
#include <map>

#include <pelage/base/phrase.hpp>
#include <pelage/sheets/check.hpp>
#include <pelage/trade/upkeep.hpp>

#include "answers/words/plan.hpp"

namespace pelage::io {

namespace {

using strings = std::vector<std::string>;

class objection_writer {
  public:
    objection_writer(const ranked_sheet& t, const plan_request& r, length_unit u)
        : t_(t), r_(r), units_(u) {}

    /// A reason in a sentence.
    [[nodiscard]] std::string words(const sheet_objection& o) const {
        switch (o.why) {
            case objected::other_coat:
                return "it is for a " + coats() + " coat, this one is " +
                       std::string(name(r_.patient.coat.value()));
            case objected::unsigned_jacket:
                return "a double coat is not clipped without its owner's consent";
            case objected::felted:
                return "felted to the skin at the " +
                       some_places(titles(r_.reference.dog_body, t_.plan.stop)) +
                       ": a veterinarian's";
            case objected::carded:
                return "jacket not to be clipped without consent: " + some_places(titles_of(o));
            case objected::clipped_under:
                return "mats come off under the wish: " + some_places(missed(o));
            case objected::no_tool:
                return "nothing at hand comes near enough: " + some_places(missed(o));
            case objected::brushing_ends:
                return brushing(o);
            case objected::nothing_allowed:
            case objected::below_standard:
            case objected::hair_shorter:
                break;
        }
        return {};
    }
    /// Why something is so in places of which it says where; empty for reasons in a sentence.
    [[nodiscard]] std::string because(const sheet_objection& o) const {
        switch (o.why) {
            case objected::nothing_allowed:
                return "nothing may be done (" + as_planned(o) + ")";
            case objected::below_standard:
                return (o.now ? "today's hair is " + show(*o.now, units_)
                              : std::string("today's hair isn't recorded")) +
                       ", the sheet's standard wants at least " + show(*o.least, units_);
            case objected::hair_shorter:
                return as_planned(o);
            default:
                return {};
        }
    }
    [[nodiscard]] strings titles_of(const sheet_objection& o) const {
        strings out;
        for (const objected_place& p : o.where) {
            out.push_back(title(r_.reference.dog_body, zone_of(p).at));
        }
        return out;
    }

  private:
    [[nodiscard]] const zone_plan& zone_of(const objected_place& p) const {
        return t_.plan.zones[p.zone];
    }
    [[nodiscard]] std::string as_planned(const sheet_objection& o) const {
        return cause_words(r_, zone_of(o.where.front()), units_);
    }
    [[nodiscard]] strings missed(const sheet_objection& o) const {
        strings out;
        for (const objected_place& p : o.where) {
            out.push_back(
                title(r_.reference.dog_body, zone_of(p).at) + " " +
                show(zone_of(p).leaves->best, units_) +
                (p.wished ? " instead of " + show(*p.wished, units_) : ", which the sheet leaves"));
        }
        return out;
    }
    [[nodiscard]] std::string brushing(const sheet_objection& o) const {
        dog patient = r_.patient;
        assume_upkeep(patient, *t_.sheet);
        return brushing_of(patient) + (o.in_vain ? ", which counts as none" : "") +
               ", it holds until day " + std::to_string(static_cast<int>(in_days(o.holds))) +
               ", not day " + detail::fixed(in_days(o.wait), 0);
    }
    [[nodiscard]] std::string coats() const {
        strings names;
        for (const coat_class k : coats_for(*t_.sheet, r_.reference)) {
            names.emplace_back(name(k));
        }
        return one_of(names);
    }

    const ranked_sheet& t_;
    const plan_request& r_;
    length_unit units_;
};

}  // namespace

std::string some_places(const strings& titles) {
    constexpr std::size_t most = 3;
    if (titles.size() <= most) {
        return joined(titles, ", ");
    }
    return joined({titles.begin(), titles.begin() + most}, ", ") + " and " +
           std::to_string(titles.size() - most) + " more";
}

strings titles_in(const ranked_sheet& t, const std::vector<std::size_t>& zones,
                  const plan_request& r) {
    strings out;
    for (const std::size_t i : zones) {
        out.push_back(title(r.reference.dog_body, t.plan.zones[i].at));
    }
    return out;
}

std::vector<told_objection> told_objections(const ranked_sheet& t, const plan_request& r,
                                            length_unit u) {
    const objection_writer write(t, r, u);
    std::vector<told_objection> out;
    for (auto from = t.against.begin(); from != t.against.end();) {
        const auto to = std::find_if(from, t.against.end(),
                                     [&](const sheet_objection& o) { return o.why != from->why; });
        std::map<std::string, strings> where;  // by the words of the reason
        for (auto one = from; one != to; ++one) {
            const std::string because = write.because(*one);
            if (because.empty()) {
                out.push_back({one->what(), write.words(*one)});
                continue;
            }
            const strings titles = write.titles_of(*one);
            where[because].insert(where[because].end(), titles.begin(), titles.end());
        }
        for (const auto& [because, titles] : where) {
            out.push_back({from->what(), some_places(titles) + ": " + because});
        }
        from = to;
    }
    return out;
}

}  // namespace pelage::io
