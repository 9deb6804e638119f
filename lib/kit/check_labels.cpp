// A kit checked: what on its blades and combs can be taken for something else.
#include <map>

#include "kit/check_parts.hpp"

namespace pelage {

namespace {

void labels_of_two_combs(checked_kit& k) {
    std::map<std::string, std::vector<label_on_combs::labelled>> meanings;
    for (const kit_comb& c : k.own().combs) {
        for (const comb_label& l : c.labels) {
            if (!l.label.empty()) {
                meanings[l.label].push_back({c.spec.id, l.set});
            }
        }
    }
    for (const auto& [label, all] : meanings) {
        if (all.size() > 1) {
            k.say(kit_matter::two_lengths, label_on_combs{label, all});
        }
    }
}

void labels_of_comb_and_blade(checked_kit& k) {
    for (const kit_comb& c : k.own().combs) {
        for (const comb_label& l : c.labels) {
            const kit_blade* b = l.label.empty() ? nullptr : find_blade(k.own(), l.label);
            if (b != nullptr) {
                k.say(kit_matter::two_lengths,
                      label_on_comb_and_blade{l.label, as_measured(*b).stated.best, c.spec.id,
                                              l.set});
            }
        }
    }
}

/// Blades with one number on them and unlike lengths, such as a long 5/8 and a 5/8 toe.
void numbers_of_two_blades(checked_kit& k) {
    const auto& all = k.own().blades;
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = i + 1; j < all.size(); ++j) {
            const length a = as_measured(all[i]).stated.best;
            const length b = as_measured(all[j]).stated.best;
            if (all[i].spec.etched == all[j].spec.etched && longer(a, b) > shorter(a, b) * 1.5) {
                k.say(
                    kit_matter::two_lengths,
                    number_on_blades{all[i].spec.etched, {all[i].spec.id, a}, {all[j].spec.id, b}});
            }
        }
    }
}

}  // namespace

void find_two_lengths(checked_kit& k) {
    labels_of_two_combs(k);
    labels_of_comb_and_blade(k);
    numbers_of_two_blades(k);
}

void find_look_alikes(checked_kit& k) {
    look_alikes found;
    for (const kit_blade& a : k.own().blades) {
        for (const kit_blade& b : k.own().blades) {
            if (a.spec.etched == b.spec.etched && a.spec.cut == teeth::skip &&
                b.spec.cut == teeth::full) {
                found.pairs.push_back({a.spec.id, b.spec.id});
            }
        }
    }
    if (!found.pairs.empty()) {
        k.say(kit_matter::remark, std::move(found));
    }
}

}  // namespace pelage
