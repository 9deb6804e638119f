// Lengths, blades, combs and what they leave.
#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/model/cut.hpp>
#include <pelage/trade/comb.hpp>

#include "quantities.hpp"

namespace chk {

namespace {

using pelage::io::reference;

const pelage::blade& blade_called(const std::string& id) {
    const pelage::blade* b = pelage::find(reference().blades, id);
    if (b == nullptr) {
        throw bad_case("no blade is called '" + id + "'");
    }
    return *b;
}

pelage::direction direction_called(const std::string& word) {
    if (word != "with" && word != "against") {
        throw bad_case("a direction is with or against; found '" + word + "'");
    }
    return word == "with" ? pelage::direction::with_lay : pelage::direction::against_lay;
}

pelage::finished leaves(const std::string& blade, pelage::direction way, double lay) {
    return pelage::cut_length(pelage::bare(blade_called(blade), way), lay, reference().rules.cut);
}

answers three(const pelage::length& low, const pelage::length& best, const pelage::length& high) {
    return {{"low", in(low)}, {"best", in(best)}, {"high", in(high)}};
}

answers inch(givens& g) {
    return {{"length", in(pelage::inch(g.whole("n"), g.whole("d")))}};
}

answers written_length(givens& g) {
    const pelage::parsed_length p = pelage::parse_length(g.word("text"));
    if (!p.ok()) {
        throw bad_case(pelage::complaint(p, g.word("text")));
    }
    return {{"length", in(p.value)}};
}

answers barber_guard(givens& g) {
    return {{"length", in(pelage::barber_guard(g.whole("n")))}};
}

answers blade(givens& g) {
    const pelage::figure<pelage::length>& s = blade_called(g.word("id")).stated;
    return three(s.low, s.best, s.high);
}

/// In the order given, does every blade leave more than the one before, or at least no less?
answers order_of_blades(givens& g) {
    std::vector<double> lengths;
    for (const std::string& id : g.list("blades")) {
        lengths.push_back(pelage::in_mm(blade_called(id).stated.best));
    }
    const bool strictly =
        std::adjacent_find(lengths.begin(), lengths.end(), std::greater_equal<>{}) == lengths.end();
    const bool somewhere_less = !std::is_sorted(lengths.begin(), lengths.end());
    return {{"order", std::string(strictly         ? "rising"
                                  : somewhere_less ? "falling-somewhere"
                                                   : "never-falling")}};
}

/// How far two blades' stated lengths, and the makers' spread on them, lie apart.
answers blades_apart(givens& g) {
    const auto& a = blade_called(g.word("a")).stated;
    const auto& b = blade_called(g.word("b")).stated;
    return three(pelage::gap(a.low, b.low), pelage::gap(a.best, b.best),
                 pelage::gap(a.high, b.high));
}

answers finished_length(givens& g) {
    const pelage::finished f =
        leaves(g.word("blade"), direction_called(g.word("way")), g.number("lay", "deg"));
    return three(f.low, f.best, f.high);
}

/// One blade against the lay beside another with it.
answers reversed(givens& g) {
    const double lay = g.number("lay", "deg");
    const auto against = leaves(g.word("against"), pelage::direction::against_lay, lay);
    const auto with = leaves(g.word("with"), pelage::direction::with_lay, lay);
    return {{"apart", in(pelage::gap(against.best, with.best))}};
}

/// What is left with the lay over what is left against it, on one of the reference's coats.
answers direction_factor(givens& g) {
    const double lay = pelage::coat_of(reference(), g.coat()).lay_degrees.best;
    const std::string& id = g.word("blade");
    return {{"factor", plain(leaves(id, pelage::direction::with_lay, lay).best /
                             leaves(id, pelage::direction::against_lay, lay).best)}};
}

answers lay_factor(givens& g) {
    return {{"factor", plain(pelage::lay_factor(g.number("lay", "deg")))}};
}

answers sun_length(givens&) {
    return {{"length", in(reference().rules.refusal.sun_length.best)}};
}

}  // namespace

void add_tools(std::map<std::string, quantity>& to) {
    to["inch"] = inch;
    to["written-length"] = written_length;
    to["barber-guard"] = barber_guard;
    to["blade"] = blade;
    to["order-of-blades"] = order_of_blades;
    to["blades-apart"] = blades_apart;
    to["finished-length"] = finished_length;
    to["reversed"] = reversed;
    to["direction-factor"] = direction_factor;
    to["lay-factor"] = lay_factor;
    to["sun-length"] = sun_length;
}

}  // namespace chk
