#include <algorithm>
#include <utility>

#include <pelage/base/length_text.hpp>
#include <pelage/kit/asked.hpp>

namespace pelage {

length etched(const lookup_answer& a) {
    return a.stated ? a.stated->best : a.asked.wanted;
}

namespace {

/// What is left on the coat of that row of the table; of a length the length.
length left_on(const lookup_answer& a, std::size_t row) {
    return a.leaves.empty() ? a.asked.wanted : a.leaves[row].with.best;
}

/// The coats on which something else leaves more, as it is read, than what is etched longest.
std::vector<coat_class> left_otherwise(const comparison& c) {
    std::vector<coat_class> out;
    const auto tool = std::find_if(c.all.begin(), c.all.end(),
                                   [](const lookup_answer& a) { return !a.leaves.empty(); });
    if (!c.longest || tool == c.all.end()) {
        return out;
    }
    for (std::size_t row = 0; row < tool->leaves.size(); ++row) {
        const length most = left_on(c.all[*c.longest], row);
        if (std::any_of(c.all.begin(), c.all.end(), [&](const lookup_answer& a) {
                const length l = left_on(a, row);
                return most < l && number(most) != number(l);
            })) {
            out.push_back(tool->leaves[row].coat);
        }
    }
    return out;
}

}  // namespace

comparison compare(const lookup_request& r, std::vector<question> tools) {
    comparison out;
    for (question& q : tools) {
        out.all.push_back(look_up(r, std::move(q)));
    }
    const auto longest = std::max_element(
        out.all.begin(), out.all.end(),
        [](const lookup_answer& a, const lookup_answer& b) { return etched(a) < etched(b); });
    const auto as_long = std::count_if(out.all.begin(), out.all.end(), [&](const lookup_answer& a) {
        return in_hundredths(etched(a)) == in_hundredths(etched(*longest));
    });
    if (as_long == 1) {
        out.longest = static_cast<std::size_t>(longest - out.all.begin());
    }
    out.otherwise = left_otherwise(out);
    return out;
}

bool never_of_this_coat(const lookup_request& r, const terms_asked& t) {
    const bool double_said = std::any_of(t.all.begin(), t.all.end(),
                                         [](const term* one) { return one->id == "double-coat"; });
    return (double_said || (r.coat && double_coated(*r.coat))) &&
           std::any_of(t.all.begin(), t.all.end(), [](const term* one) { return one->clips; });
}

}  // namespace pelage
