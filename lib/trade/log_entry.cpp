#include <algorithm>

#include <pelage/trade/log_entry.hpp>

namespace pelage {

namespace {

std::string_view kind_of(service s) {
    switch (s) {
        case service::full:
        case service::hand_strip:
            return "full";
        case service::tidy:
        case service::prep:
        case service::puppy:
            return "tidy";
        case service::bath:
        case service::deshed:
            return "bath";
        case service::nails:
            break;
    }
    return {};
}

}  // namespace

std::string_view visit_kind_of(const std::vector<service>& all) {
    for (const std::string_view kind : {"full", "tidy", "bath"}) {
        if (std::any_of(all.begin(), all.end(), [&](service s) { return kind_of(s) == kind; })) {
            return kind;
        }
    }
    return {};
}

}  // namespace pelage
