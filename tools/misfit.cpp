// Options that say nothing of what is asked. To pass one over in silence would be to guess.
#include <algorithm>

#include "request.hpp"

namespace pelage::cli {

namespace {

using names = std::vector<std::string>;

bool in(const names& all, const std::string& one) {
    return std::find(all.begin(), all.end(), one) != all.end();
}

/// An option and what it goes with: the first word behind the verb, or another option.
struct company {
    verb of;
    std::string option;
    names with;
};

/// An option and those that say nothing beside it.
struct loner {
    verb of;
    std::string option;
    names without;
};

const std::vector<company>& companies() {
    static const std::vector<company> all{
        {verb::plan, "--jobs", {"--roster"}},
        {verb::plan, "--groomer", {"--for"}},
        {verb::regrow, "--cannot", {"--weeks"}},
        {verb::regrow, "--event", {"--weeks"}},
        {verb::sheet, "--for", {"list", "new"}},
        {verb::sheet, "--against", {"check"}},
        {verb::sheet, "--season", {"show", "compare"}},
        {verb::sheet, "--coat", {"show", "compare", "new"}},
        {verb::sheet, "--size", {"show", "compare"}},
        {verb::sheet, "--brush", {"compare"}},
        {verb::sheet, "--chance", {"compare"}},
        {verb::sheet, "--format", {"check", "show", "list", "compare"}},
        {verb::sheet, "--units", {"check", "show", "list", "compare"}},
        {verb::kit, "--most", {"buy"}},
        {verb::kit, "--catalogue", {"buy"}},
        {verb::kit, "--from-nothing", {"buy"}},
        {verb::kit, "--coat", {"measure"}},
        {verb::kit, "--zone", {"measure"}},
        {verb::kit, "--direction", {"measure"}},
        {verb::kit, "--length", {"measure"}},
        {verb::kit, "--sets", {"measure"}},
    };
    return all;
}

const std::vector<loner>& loners() {
    static const std::vector<loner> all{
        {verb::lookup,
         "--sources",
         {"--coat", "--zone", "--direction", "--kind", "--curl", "--barber", "--all"}},
        {verb::lookup, "--all", {"--kind", "--barber"}},
        {verb::plan, "--any-sheet", {"--ask", "--for", "--zones"}},
        {verb::plan, "--back-in", {"--zones"}},
        {verb::plan, "--roster", {"--ask", "--back-in", "--mix", "--season"}},
        {verb::regrow, "--weeks", {"--zones"}},
        {verb::regrow,
         "--learn",
         {"--mix", "--season", "--mat", "--skin", "--alert", "--sensitive", "--sign", "--age",
          "--health", "--outdoors", "--coat-change", "--shedding", "--thin-skin", "--pink-skin",
          "--groomed", "--weeks", "--cannot", "--event", "--zones"}},
    };
    return all;
}

std::string joined(const names& all, const std::string& before) {
    std::string out;
    for (std::size_t i = 0; i < all.size(); ++i) {
        out += (i == 0 ? "" : i + 1 == all.size() ? " or " : ", ") + before + all[i];
    }
    return out;
}

}  // namespace

std::string misfit(const request& q) {
    const std::string what = q.operands.empty() ? "" : q.operands.front();
    const bool by_word = q.what == verb::sheet || q.what == verb::kit;
    const std::string before = q.what == verb::sheet ? "sheet " : q.what == verb::kit ? "kit " : "";
    std::string out;
    for (const company& c : companies()) {
        const bool fits = std::any_of(c.with.begin(), c.with.end(), [&](const std::string& w) {
            return w == what || in(q.given, w);
        });
        if (c.of == q.what && in(q.given, c.option) && !fits && !(by_word && what.empty())) {
            out += "pelage: error: " + c.option + ": goes with " + joined(c.with, before) +
                   "; found " + (by_word ? before + what : "no " + c.with.front()) +
                   "; leave it out\n";
        }
    }
    for (const loner& l : loners()) {
        for (const std::string& beside : l.without) {
            if (l.of == q.what && in(q.given, l.option) && in(q.given, beside)) {
                out += "pelage: error: " + l.option + ": " + beside +
                       " says nothing beside it; leave one out\n";
            }
        }
    }
    return out;
}

}  // namespace pelage::cli
