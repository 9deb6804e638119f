#include <algorithm>
#include <utility>

#include <pelage/kit/asked.hpp>

namespace pelage {

length etched(const lookup_answer& a) {
    return a.stated ? a.stated->best : a.asked.wanted;
}

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
    return out;
}

bool never_of_this_coat(const lookup_request& r, const terms_asked& t) {
    const bool double_said = std::any_of(t.all.begin(), t.all.end(),
                                         [](const term* one) { return one->id == "double-coat"; });
    return (double_said || (r.coat && double_coated(*r.coat))) &&
           std::any_of(t.all.begin(), t.all.end(), [](const term* one) { return one->clips; });
}

}  // namespace pelage
