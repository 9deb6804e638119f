// What lies in the drawer of one salon, and of it at one table.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/trade/blade.hpp>
#include <pelage/trade/comb.hpp>

namespace pelage {

/// Clippers of one kind and the blades they take.
struct clipper {
    std::string title;                 ///< as people call it
    int count = 1;                     ///< so many of it
    bool detachable = true;            ///< takes every blade but the adjustable one
    std::vector<std::string> takes{};  ///< ids of the other blades it takes
};

/// A blade in the kit. `measured` is what a test patch gave and then wins over what is etched. A count
/// of 2 is a pair, swapped when one runs hot.
struct kit_blade {
    blade spec;                      ///< what it is
    int count = 1;                   ///< so many of it
    std::optional<length> measured;  ///< what a patch left; none: not tried
    bool out = false;                ///< out for sharpening as of the day asked about
    std::optional<date> out_until;   ///< none: nobody said
    std::vector<length> settings{};  ///< adjustable: the marks of its lever, rising (mm)
};

/// What is printed on a comb of a set: "2" of the long set. A name, never a length.
struct comb_label {
    std::string set;    ///< title of the set
    std::string label;  ///< empty where the set prints lengths
};

/// A comb in the kit.
struct kit_comb {
    comb spec;                       ///< what it is
    int count = 1;                   ///< so many of it
    std::optional<length> measured;  ///< what a patch left; none: not tried
    std::vector<std::string> fits;   ///< ids of the blades it fits over; empty: the one under combs
    std::vector<comb_label> labels{};  ///< the sets it is in; empty: bought alone
};

/// What lies at one table. Blades and combs that no table lists are shared by all.
struct table_drawer {
    std::string id;                     ///< as files name it
    int clippers = 1;                   ///< so many there
    std::vector<std::string> blades{};  ///< ids, one for each that lies there
    std::vector<std::string> combs{};   ///< ids
};

/// The kit: clippers, blades, combs and the one blade kept under the combs.
struct kit {
    std::string title;  ///< as people call it
    int clippers = 1;   ///< how many that take detachable blades
    std::vector<clipper>
        machines{};                 ///< by kind, where the salon says; empty: they take everything
    std::string under_comb = "30";  ///< id of the blade kept under combs
    std::vector<kit_blade> blades;  ///< each once
    std::vector<kit_comb> combs;    ///< each once
    std::vector<table_drawer> tables{};  ///< may be empty
};

/// The kit's blade with that id, or null.
[[nodiscard]] inline const kit_blade* find_blade(const kit& k, std::string_view id) {
    const auto at = std::find_if(k.blades.begin(), k.blades.end(),
                                 [&](const kit_blade& b) { return b.spec.id == id; });
    return at == k.blades.end() ? nullptr : &*at;
}

/// Whether some clipper of the kit takes the blade.
[[nodiscard]] inline bool taken(const kit& k, const blade& b) {
    return k.machines.empty() ||
           std::any_of(k.machines.begin(), k.machines.end(), [&](const clipper& c) {
               return (c.detachable && b.shape != edge::adjustable) ||
                      std::find(c.takes.begin(), c.takes.end(), b.id) != c.takes.end();
           });
}

/// Whether the blade can be used on `today`: there, and not out for sharpening.
[[nodiscard]] inline bool at_hand(const kit_blade& b, const std::optional<date>& today) {
    if (b.count < 1) {
        return false;
    }
    if (b.out_until && today) {
        return *today > *b.out_until;
    }
    return !b.out && !b.out_until;
}

/// The kit with every blade back from sharpening.
[[nodiscard]] inline kit all_there(kit k) {
    for (kit_blade& b : k.blades) {
        b.out = false;
        b.out_until.reset();
    }
    return k;
}

/// The adjustable blade with its lever on one mark.
[[nodiscard]] inline blade set_to(const blade& adjustable, const length& mark) {
    blade b = adjustable;
    b.stated.low = b.stated.best = b.stated.high = mark;
    b.setting = show(mark);
    return b;
}

/// The kit as it lies at one table: what is listed there and what no table lists. The table must be
/// one of the kit's.
[[nodiscard]] inline kit at_table(const kit& k, std::string_view id) {
    const auto at = std::find_if(k.tables.begin(), k.tables.end(),
                                 [&](const table_drawer& t) { return t.id == id; });
    kit out = k;
    out.tables.clear();
    out.clippers = at->clippers;
    const auto count_of = [&](const std::string& what, auto list, int otherwise) {
        const auto listed = [&](const table_drawer& t) {
            return static_cast<int>(std::count((t.*list).begin(), (t.*list).end(), what));
        };
        const bool shared = std::all_of(k.tables.begin(), k.tables.end(),
                                        [&](const table_drawer& t) { return listed(t) == 0; });
        return shared ? otherwise : listed(*at);
    };
    for (kit_blade& b : out.blades) {
        b.count = count_of(b.spec.id, &table_drawer::blades, b.count);
    }
    for (kit_comb& c : out.combs) {
        c.count = count_of(c.spec.id, &table_drawer::combs, c.count);
    }
    std::erase_if(out.blades, [](const kit_blade& b) { return b.count < 1; });
    std::erase_if(out.combs, [](const kit_comb& c) { return c.count < 1; });
    return out;
}

}  // namespace pelage
