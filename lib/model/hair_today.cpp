#include <algorithm>

#include <pelage/model/hair_today.hpp>

namespace pelage {

std::optional<length> hair_said(const part_index& parts, const std::vector<hair_now>& said,
                                const place& p) {
    std::optional<length> out;
    const selection* narrowest = nullptr;
    for (const hair_now& n : said) {
        const selection* s = parts.find(n.whom);
        const bool covers =
            s != nullptr &&
            (s->how == reach::all || std::any_of(s->places.begin(), s->places.end(),
                                                 [&](const place& w) { return share_side(w, p); }));
        if (covers && (narrowest == nullptr || !wider(*s, *narrowest))) {
            out = n.is;
            narrowest = s;
        }
    }
    return out;
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
