#include <algorithm>

#include <pelage/trade/log_entry.hpp>

namespace pelage {

namespace {

std::string_view kind_of(service_kind s) {
    switch (s) {
        case service_kind::full:
        case service_kind::hand_strip:
            return "full";
        case service_kind::tidy:
        case service_kind::prep:
        case service_kind::puppy:
            return "tidy";
        case service_kind::bath:
        case service_kind::deshed:
            return "bath";
        case service_kind::nails:
        case service_kind::rolling:
            break;
    }
    return {};
}

}  // namespace

std::vector<std::string_view> visit_kinds_of(const std::vector<service_kind>& all) {
    std::vector<std::string_view> out;
    for (const std::string_view kind : {"full", "tidy", "bath"}) {
        if (std::any_of(all.begin(), all.end(),
                        [&](service_kind s) { return kind_of(s) == kind; })) {
            out.push_back(kind);
        }
    }
    if (!out.empty() && out.front() == "full") {
        out.resize(1);
    }
    return out;
}

std::string_view visit_kind_of(const std::vector<service_kind>& all) {
    const auto kinds = visit_kinds_of(all);
    return kinds.empty() ? std::string_view{} : kinds.front();
}

}  // namespace pelage
