// Private to lib: what every part of the owner's page looks at, and how it speaks of it.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <pelage/answers/owner_page.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/lines.hpp"
#include "answers/owner_page_parts.hpp"
#include "answers/ways.hpp"
#include "answers/words/places.hpp"
#include "answers/words/when.hpp"
#include "planner/targets.hpp"

namespace pelage::io {

class owner_view;
/// What the record says was done today; what was asked for where nothing is logged yet.
void say_done(const owner_view& v);
/// Mats were logged today on the tail, or else on an ear, and the hair there isn't known to be long still.
[[nodiscard]] bool bared_by_record(const owner_view& v, bool tail);
/// A mat was logged there today, and so short a length left that it was clipped off.
[[nodiscard]] bool bared_by_record(const owner_view& v, const place& at);
/// A mat was logged there today.
[[nodiscard]] bool matted_by_record(const owner_view& v, const place& at);

/// A page that is being written. Parts of it are classes that look at it. Borrows what it is made of.
class owner_view {
  public:
    using strings = std::vector<std::string>;

    owner_view(const owner_matter& m, const print_options& o, const wishes_by_place& wishes,
               const kit_setups& top, const body& plain, owner_page& page)
        : m_(m),
          g_(m.plan),
          r_(m.asked),
          o_(o),
          coat_(coat_of(r_.reference, *r_.patient.coat)),
          wishes_(wishes),
          top_(top),
          plain_(plain),
          places_(g_, plain),
          page_(page) {}

  protected:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }
    [[nodiscard]] const zone& zone_of(std::size_t i) const { return places_.zone_of(i); }
    [[nodiscard]] std::string long_as(const length& l) const { return show(l, o_.units); }
    /// The dog as it stands in a sentence.
    [[nodiscard]] std::string who() const {
        return r_.patient.name.empty() ? "your dog" : page_.name;
    }
    /// What the owner told that the owner should see written down. That a dog bites, or how it is held,
    /// is for the groomer's pages.
    [[nodiscard]] strings told_alerts() const;
    /// A few places by name, many by the parts of the dog.
    [[nodiscard]] std::string named(const zone_list& which) const;

    page_section& add(std::string heading) {
        page_.sections.push_back({std::move(heading), {}, {}, lines_as::bullets, false});
        return page_.sections.back();
    }
    template <class Holds>
    [[nodiscard]] zone_list those(Holds holds) const {
        zone_list out;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            if (holds(g_.zones[i])) {
                out.push_back(i);
            }
        }
        return out;
    }

    const owner_matter& m_;
    const groom& g_;
    const plan_request& r_;
    const print_options& o_;
    const coat& coat_;
    const wishes_by_place& wishes_;
    const kit_setups& top_;
    const body& plain_;  ///< with an owner's names for its places
    place_words places_;
    owner_page& page_;
};

/// Whether the owner chooses if sound hair comes down with what is matted.
[[nodiscard]] bool may_keep_long(const owner_matter& m);
/// Why the dog wasn't groomed, and what to do now.
void say_stopped(const owner_view& v);
/// What the owner asked for.
void say_asked(const owner_view& v);
/// What could be done of it today, and why.
void say_today(const owner_view& v);
/// What is said of each place that isn't simply as asked; empty of one that is.
[[nodiscard]] std::vector<std::string> told_of_places(const owner_view& v);
/// Ways to grow back, lengths that the kit can leave, pairs that come out uneven: for the owner to choose.
void say_choices(const owner_view& v);
/// When to come back, and how to brush until then.
void say_home(const owner_view& v);
/// A vet's word before the groom: a dog too frail for one long sitting that is felted over much of it; one that
/// is not well.
void say_vet_first(const owner_view& v);
/// When to call a vet after it.
void say_when_to_call_vet(const owner_view& v);
/// What the owner has agreed to, and what is still to be signed.
void say_consents(const owner_view& v);

}  // namespace pelage::io
