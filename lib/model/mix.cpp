#include <algorithm>
#include <cmath>
#include <tuple>

#include <pelage/model/mix.hpp>

namespace pelage {

namespace {

constexpr double rounding = 1e-9;  // a chance below it is rounding

void add_half(const bred& parent, std::vector<ancestry>& to) {
    for (const ancestry& a : parent.from) {
        const auto known = std::find_if(to.begin(), to.end(),
                                        [&](const ancestry& o) { return o.breed == a.breed; });
        if (known == to.end()) {
            to.push_back({a.breed, a.share / 2.0});
        } else {
            known->share += a.share / 2.0;
        }
    }
}

bool open(double chance) {
    return chance > rounding && chance < 1.0 - rounding;
}

/// Spreads one dog's combinations over the classes.
class spreader {
  public:
    spreader(const bred& dog, const heredity& h, curl_mode curl) : dog_(dog), h_(h), curl_(curl) {}

    void add(const coat_cell& c) {
        const double chance = chance_of(c, dog_.genes);
        if (!(chance > 0.0)) {
            return;
        }
        const coat_type type = type_of(c);
        answer.types[static_cast<std::size_t>(type)] += chance;
        if (const practice_rule* rule = practised(c)) {
            for (const coat_class k : rule->coats) {
                of_[static_cast<std::size_t>(k)] +=
                    chance / static_cast<double>(rule->coats.size());
            }
            answer.practice.push_back(
                {static_cast<std::size_t>(rule - h_.practice.data()), chance, type});
            return;
        }
        spread(classes_for(type, c.curl), chance);
    }

    void finish(const std::vector<coat>& coats) {
        for (std::size_t i = 0; i < of_.size(); ++i) {
            if (of_[i] > rounding) {
                answer.coats.push_back({static_cast<coat_class>(i), std::min(1.0, of_[i])});
            }
        }
        const auto key = [&](const coat_chance& c) {
            const coat& k = coats[static_cast<std::size_t>(c.coat)];
            return std::tuple{-std::llround(c.chance / rounding), k.jacket == jacket_finish::clip,
                              -k.lay_degrees.best, c.coat};
        };
        std::sort(answer.coats.begin(), answer.coats.end(),
                  [&](const coat_chance& a, const coat_chance& b) { return key(a) < key(b); });
        look_at();
    }

    coat_answer answer;

  private:
    [[nodiscard]] const practice_rule* practised(const coat_cell& c) const {
        const auto at =
            std::find_if(h_.practice.begin(), h_.practice.end(), [&](const practice_rule& r) {
                return r.cell.long_hair == c.long_hair && r.cell.furnished == c.furnished &&
                       r.cell.curl == c.curl;
            });
        return at == h_.practice.end() ? nullptr : &*at;
    }

    [[nodiscard]] const std::vector<coat_class>& classes_for(coat_type t, int curl_copies) const {
        const type_facts& facts = h_.types[static_cast<std::size_t>(t)];
        const bool waves = curl_copies == 1 && curl_ == curl_mode::additive;
        return waves && !facts.one_copy.empty() ? facts.one_copy : facts.classes;
    }

    /// By what share of the ancestors has each of the classes; to the first where none has any.
    void spread(const std::vector<coat_class>& classes, double chance) {
        std::vector<double> shares;
        double all = 0.0;
        for (const coat_class k : classes) {
            double share = 0.0;
            for (const ancestry& a : dog_.from) {
                share += h_.breeds[a.breed].coat == k ? a.share : 0.0;
            }
            shares.push_back(share);
            all += share;
        }
        const bool unsettled = classes.size() > 1 &&
                               !(std::count(shares.begin(), shares.end(), all) == 1 && all > 0.0);
        undercoat_open_ = undercoat_open_ || unsettled;
        for (std::size_t i = 0; i < classes.size(); ++i) {
            const double part = all > 0.0 ? shares[i] / all : i == 0 ? 1.0 : 0.0;
            of_[static_cast<std::size_t>(classes[i])] += chance * part;
        }
    }

    void look_at() {
        const auto see = [&](bool worth, std::size_t sign) {
            if (worth) {
                answer.signs.push_back(sign);
            }
        };
        const genotype<double>& g = dog_.genes;
        const copies<double>& curl = g[locus::curl];
        const bool odd = !answer.practice.empty();  // the model is known to fail: look anyway
        see(odd || open(g[locus::long_hair].two), 0);
        see(open(g[locus::furnishings].none), 1);
        see(odd || open(curl.none) || curl.one > rounding, 2);
        see(undercoat_open_, 3);
    }

    const bred& dog_;
    const heredity& h_;
    curl_mode curl_;
    std::array<double, coat_names.size()> of_{};
    bool undercoat_open_ = false;
};

}  // namespace

bred of_breed(const heredity& h, std::size_t index, std::string text) {
    const breed& b = h.breeds.at(index);
    return {genes_of(b), {{index, 1.0}}, 0, text.empty() ? b.id : std::move(text)};
}

bred cross(const bred& a, const bred& b) {
    bred pup;
    pup.depth = 1 + std::max(a.depth, b.depth);
    if (pup.depth > deepest_mix) {
        throw error(errc::range, "a mix goes at most " + std::to_string(deepest_mix) +
                                     " crosses deep; leave out the furthest");
    }
    pup.genes = child_of(a.genes, b.genes);
    add_half(a, pup.from);
    add_half(b, pup.from);
    pup.text = as_part(a) + " x " + as_part(b);
    return pup;
}

coat_answer coats_of(const bred& dog, const heredity& h, const std::vector<coat>& coats,
                     curl_mode curl) {
    spreader s(dog, h, curl);
    for (const coat_cell& c : coat_cells()) {
        s.add(c);
    }
    s.finish(coats);
    return std::move(s.answer);
}

}  // namespace pelage
