// What was said beside the thing asked, laid over what the options say.
#include <string>

#include <pelage/kit/asked.hpp>

namespace pelage {

lookup_request with_circumstances(const lookup_request& r, const asked& a) {
    lookup_request out{r};
    const auto both = [](const char* option) {
        throw error(errc::conflict,
                    std::string(option) + ": said in the question already; leave one of them out");
    };
    if (a.coat) {
        if (r.coat && *r.coat != *a.coat) {
            both("--coat");
        }
        out.coat = a.coat;
        out.breed = a.breed;
    }
    if (!a.where.empty()) {
        if (!r.where.empty() && r.where != a.where) {
            both("--zone");
        }
        out.where = a.where;
    }
    if (a.way) {
        if (r.way && *r.way != *a.way) {
            both("--direction");
        }
        out.way = a.way;
    }
    return out;
}

}  // namespace pelage
