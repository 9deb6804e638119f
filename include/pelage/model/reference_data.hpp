// Everything the reference holds, as values: what a reader fills and the decisions draw on.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/model/cut.hpp>
#include <pelage/model/growth.hpp>
#include <pelage/model/inheritance.hpp>
#include <pelage/model/matting.hpp>
#include <pelage/model/refusal.hpp>
#include <pelage/trade/blade.hpp>
#include <pelage/trade/caution.hpp>
#include <pelage/trade/coat.hpp>
#include <pelage/trade/comb.hpp>
#include <pelage/trade/days_off.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/groomer.hpp>
#include <pelage/trade/kit.hpp>
#include <pelage/trade/prices.hpp>
#include <pelage/trade/service.hpp>
#include <pelage/trade/style.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// A published or remembered source.
struct source {
    std::string id;         ///< what figures name
    std::string kind;       ///< standard, paper, book, ...
    std::string title;      ///< in our words where the note says so
    std::string author;     ///< may be empty
    std::string publisher;  ///< may be empty
    int year = 0;           ///< 0: not known
    std::string address;    ///< may be empty
    std::string seen;       ///< read, second-hand, memory
    std::string note;       ///< may be empty
};

/// One figure as the reference prints it, for `lookup --sources`: "zones/ear/matting", "0.85".
struct listed_figure {
    std::string key;    ///< "growth/start-error"
    std::string value;  ///< best, and low to high where they differ, with the unit
    evidence why;       ///< how it is known
};

/// The rules in force: the reference's, with a salon's own in place of some, and its own growth rates.
struct parameters {
    cut_rules cut;          ///< what blades and combs leave
    growth_rules growth;    ///< how hair grows
    matting_rules matting;  ///< when it mats
    refusal_rules refusal;  ///< what must not be done
    price_rules prices;     ///< minutes, and what a miss costs
    std::array<std::optional<rate_prior>, coat_names.size()> own_rates;     ///< by coat class
    std::array<std::optional<figure<double>>, coat_names.size()> own_lays;  ///< likewise (degrees)
};

/// The reference as a whole. Invariant, held by the reader: ids are unique, every name resolves,
/// figures lie low <= best <= high.
struct reference_data {
    std::vector<source> sources;         ///< what figures rest on
    std::vector<blade> blades;           ///< all the trade has
    std::vector<comb> combs;             ///< all the trade has
    body dog_body;                       ///< zones and seams
    std::vector<coat> coats;             ///< in the order of coat_class, all of them
    heredity genes;                      ///< how coats are inherited, and the breeds
    parameters rules;                    ///< figures
    std::vector<caution> cautions;       ///< all there are
    std::vector<stop_rule> stops;        ///< in the order of stop_sign, all of them
    ailments told_health;                ///< words by which what is told of a dog's health is read
    std::vector<service> services;       ///< in the order of service_kind, all of them
    std::vector<style> styles;           ///< sheets that come with the library
    std::vector<listed_figure> figures;  ///< every figure with its basis, in file order
};

/// What a salon puts on the page an owner takes home; what is empty isn't printed.
struct salon_card {
    std::string name;       ///< may be empty
    std::string telephone;  ///< may be empty
    std::string groomer;    ///< who grooms, unless another is named for the day
};

/// A salon: its kit, its sheets, its dogs and the rules with its own figures in them.
struct salon_files {
    std::string title;              ///< as people call it
    bool invented = false;          ///< demo data
    salon_card card;                ///< for the owner's page
    kit tools;                      ///< its kit
    days_off closed;                ///< days on which the salon takes no dogs
    std::vector<groomer> groomers;  ///< none: nobody said
    parameters rules;               ///< figures, its own among them
    std::vector<style> styles;      ///< those of its folder
    std::vector<dog> dogs;          ///< those of its folder
};

/// The coat of that class.
[[nodiscard]] inline const coat& coat_of(const reference_data& c, coat_class k) {
    return c.coats[static_cast<std::size_t>(k)];
}

/// The service of that kind.
[[nodiscard]] inline const service& service_of(const reference_data& c, service_kind k) {
    return c.services[static_cast<std::size_t>(k)];
}

/// The growth rate taken of a coat: the salon's own, or else the reference's.
[[nodiscard]] inline const rate_prior& rate_of(const reference_data& c, const parameters& r,
                                               coat_class k) {
    const auto& own = r.own_rates[static_cast<std::size_t>(k)];
    return own ? *own : coat_of(c, k).rate;
}

/// The angle of the lay taken of a coat (degrees): the salon's own test patch, or else the reference's.
[[nodiscard]] inline const figure<double>& lay_of(const reference_data& c, const parameters& r,
                                                  coat_class k) {
    const auto& own = r.own_lays[static_cast<std::size_t>(k)];
    return own ? *own : coat_of(c, k).lay_degrees;
}

/// The record with that id, or null; for any vector of records with an `id`.
template <class Record>
[[nodiscard]] const Record* find(const std::vector<Record>& all, std::string_view id) {
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const Record& r) { return r.id == id; });
    return at == all.end() ? nullptr : &*at;
}

/// Every id, for suggestions.
template <class Record>
[[nodiscard]] std::vector<std::string> ids(const std::vector<Record>& all) {
    std::vector<std::string> out;
    out.reserve(all.size());
    for (const Record& r : all) {
        out.push_back(r.id);
    }
    return out;
}

}  // namespace pelage
