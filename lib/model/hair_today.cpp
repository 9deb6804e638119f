#include <algorithm>

#include <pelage/model/hair_today.hpp>

namespace pelage {

said_hair::said_hair(const part_index& parts, const std::vector<hair_now>& said) {
    for (const hair_now& n : said) {
        if (const selection* s = parts.find(n.whom)) {
            all_.push_back({s, n.is});
        }
    }
}

std::optional<length> said_hair::at(const place& p) const {
    const meant* narrowest = nullptr;
    for (const meant& m : all_) {
        const auto& places = m.whom->places;
        const bool covers = m.whom->how == reach::all ||
                            std::any_of(places.begin(), places.end(),
                                        [&](const place& w) { return share_side(w, p); });
        if (covers && (narrowest == nullptr || !wider(*m.whom, *narrowest->whom))) {
            narrowest = &m;
        }
    }
    return narrowest != nullptr ? std::optional{narrowest->is} : std::nullopt;
}

std::optional<length> hair_said(const part_index& parts, const std::vector<hair_now>& said,
                                const place& p) {
    return said_hair(parts, said).at(p);
}

std::vector<mat_beyond_hair> mats_beyond_hair(const part_index& parts, const dog& d) {
    std::vector<mat_beyond_hair> out;
    for (std::size_t i = 0; i < d.mats.size(); ++i) {
        const auto now = d.mats[i].free_hair ? hair_said(parts, d.now, d.mats[i].at) : std::nullopt;
        if (now && *d.mats[i].free_hair > *now) {
            out.push_back({i, *now});
        }
    }
    return out;
}

}  // namespace pelage
