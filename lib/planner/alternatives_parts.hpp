// Private to lib: planning again with something barred or changed.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include <pelage/planner/alternatives.hpp>

#include "planner/compile.hpp"

namespace pelage::ways {

/// The request with no reasons given for what is refused.
[[nodiscard]] plan_request quietly(const plan_request& r);

/// A plan without cautions, consents and notes.
[[nodiscard]] groom plan_again(const plan_request& r);

/// The plan's own problem, compiled again, for choices with something barred.
class same_problem {
  public:
    /// `g`: the plan of `r`, whose parts that come down whole and whose followers are taken over.
    same_problem(const plan_request& r, const groom& g)
        : request_(quietly(r)),
          ready_(request_),
          compiled_(compile(request_, ready_, g.down, g.follow)) {}

    [[nodiscard]] const plan_request& request() const { return request_; }
    [[nodiscard]] const ready_kit& ready() const { return ready_; }
    [[nodiscard]] const kit_setups& top() const { return ready_.top(); }
    [[nodiscard]] const compiled_plan& compiled() const { return compiled_; }
    [[nodiscard]] solution choose(const problem& p, std::int64_t most_nodes = usual_nodes) const {
        return pelage::choose(request_, ready_, compiled_, p, most_nodes);
    }
    /// The plan of a choice; followers go with what their part is left at by it.
    [[nodiscard]] groom read(solution s) const;
    /// The setup a column of the problem means.
    [[nodiscard]] const setup& setup_at(std::size_t column) const {
        return top().setups()[compiled_.setup_of(column)];
    }
    /// Blades and combs of a set of the problem's tools, or that a choice holds, as indices into
    /// worktop::tools().
    [[nodiscard]] std::set<std::size_t> tools_of(tool_set held) const;
    [[nodiscard]] std::set<std::size_t> tools_of(const std::vector<std::size_t>& choice) const;

  private:
    plan_request request_;
    ready_kit ready_;
    compiled_plan compiled_;
};

/// A dog and a kit to be changed, planned for with the rest of a request.
struct changed_request {
    dog patient;
    kit tools;
    bool kit_changed = false;

    explicit changed_request(const plan_request& r) : patient(r.patient), tools(r.tools) {}
    /// Borrows this and `ready`, which must be that of `r`.
    [[nodiscard]] plan_request of(const plan_request& r, const ready_kit& ready) const;
    /// A departure for one place, over what sheet and dog say of it so far.
    void departs(const plan_request& r, const place& p, instruction what);
};

/// Places done otherwise in `b` than in `a`; both have the same places.
[[nodiscard]] std::vector<std::size_t> changes(const groom& a, const groom& b);

/// Whether nothing is stuck in `b` that isn't in `a`.
[[nodiscard]] bool no_worse_stuck(const groom& a, const groom& b);

/// Minutes of work in all.
[[nodiscard]] inline work all_work(const groom& g) {
    return g.before + g.after;
}

/// The blades and combs of a plan in working order.
[[nodiscard]] std::vector<held_tool> tools_in(const groom& g);

/// `becomes` as another way beside `was`; what it is about is left to say.
[[nodiscard]] other_way compared(way_kind what, const groom& was, groom becomes);

/// What is combed out clipped off in its place; nothing if nothing is.
[[nodiscard]] std::optional<other_way> clip_mats(const same_problem& at, const groom& g);

/// The cheapest plan with fewer tools than `g`; nothing if there is none within an hour's cost.
[[nodiscard]] std::optional<other_way> fewer_tools(const same_problem& at, const groom& g);

}  // namespace pelage::ways
