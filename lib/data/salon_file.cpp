// Prices and figures of its own, read from a salon file.
#include <functional>

#include <fmt/format.h>

#include <pelage/data/salon_file.hpp>

#include "data/read/kit_tools.hpp"
#include "data/read/readers.hpp"

namespace pelage::io {

std::optional<money> get_price(record& r) {
    const std::string text = r.get_text("price", presence::may);
    const auto price = parse_money(text);
    if (!price && r.at("price") != r.at()) {
        r.out().add(r.at("price"), errc::syntax,
                    fmt::format("an amount, with its currency if you like; found {}; write it like "
                                "\"24.50 EUR\"",
                                shown(text)));
    }
    return price;
}

namespace {

using laid = std::function<void(const std::string& title, const std::optional<money>& price)>;

void each_price(const node& root, page& p, const laid& lay) {
    record top(root, p.out);
    const node* table = top.get_table("kit", presence::must);
    if (table == nullptr) {
        return;
    }
    record r(*table, p.out, "kit.");
    for (const node* n : r.get_tables("blade", presence::may)) {
        record one(*n, p.out);
        lay("blade " + get_blade(one, p).spec.id, get_price(one));
    }
    for (const node* n : r.get_tables("comb", presence::may)) {
        record one(*n, p.out);
        const std::optional<kit_comb> comb = get_comb(one, p);
        lay(comb ? "comb " + comb->spec.id : "", get_price(one));
    }
}

}  // namespace

void add_prices(std::vector<ware>& wares, const document_text& d, const reference_data& c) {
    const kit offered = read_kit(d, c);  // complains of all that is wrong
    place_finder places(c.dog_body);
    diagnostics none;
    read_text(d, none, [&](const node& root, faults& out) {
        page p{out, c, places, &offered};
        each_price(root, p, [&](const std::string& title, const std::optional<money>& price) {
            for (ware& w : wares) {
                w.price = price && w.title() == title ? price : w.price;
            }
        });
    });
}

std::vector<listed_figure> own_figures(const document_text& d, const reference_data& c) {
    std::vector<listed_figure> own;
    place_finder places(c.dog_body);
    diagnostics wrong;
    read_text(d, wrong, [&](const node& root, faults& out) {
        page p{out, c, places, nullptr, &own};
        get_salon(root, p);
    });
    if (!wrong.empty()) {
        throw bad_input(std::move(wrong));
    }
    return own;
}

}  // namespace pelage::io
