#include <algorithm>
#include <array>
#include <string_view>

#include <pelage/base/suggest.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/kit/tool_check.hpp>
#include <pelage/trade/finish.hpp>

namespace pelage {

namespace {

std::string lowered(std::string_view s) {
    std::string out(s);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    return out;
}

/// The tool without how it is moved and the mark of its lever: "blade 10, with the lay" is "blade 10".
std::string plain_tool(const std::string& text) {
    std::string out = lowered(detail::trimmed(text));
    for (const direction d : {direction::with_lay, direction::against_lay}) {
        const std::string_view way = name(d);
        if (out.ends_with(way)) {
            out.resize(out.size() - way.size());
        }
    }
    if (const auto at = out.find(" at "); at != std::string::npos) {
        out.resize(at);
    }
    while (!out.empty() && (out.back() == ' ' || out.back() == ',')) {
        out.pop_back();
    }
    return out;
}

/// What tools held in the hand are called, whatever else is said with it.
constexpr std::array<std::string_view, 19> hand_words{
    "scissors", "shears",  "thinners", "chunkers", "knife",      "stone", "rake",
    "brush",    "slicker", "curry",    "fingers",  "hand-strip", "strip", "dematter",
    "splitter", "nippers", "carder",   "carding",  "pin-brush"};

bool by_hand(const std::string& plain) {
    std::size_t from = 0;
    while (from < plain.size()) {
        const std::size_t end = std::min(plain.find_first_of(" ,/", from), plain.size());
        const std::string_view one = std::string_view(plain).substr(from, end - from);
        if (std::find(hand_words.begin(), hand_words.end(), one) != hand_words.end()) {
            return true;
        }
        from = end + 1;
    }
    return false;
}

/// The blade or comb of the kit that is called exactly so, by its id or what is printed on it.
std::optional<held_tool> in_kit_as(const kit& k, const std::string& plain) {
    for (const kit_blade& b : k.blades) {
        const std::string id = lowered(b.spec.id);
        if (plain == id || plain == "blade " + id) {
            return held_tool{false, b.spec.id};
        }
    }
    for (const kit_comb& c : k.combs) {
        const bool label = std::any_of(c.labels.begin(), c.labels.end(), [&](const comb_label& l) {
            return !l.label.empty() && plain == "comb " + lowered(l.label);
        });
        if (label || plain == "comb " + lowered(c.spec.id)) {
            return held_tool{true, c.spec.id};
        }
    }
    return std::nullopt;
}

std::vector<held_tool> parts_of(const setup& s) {
    std::vector<held_tool> out;
    if (s.over) {
        out.push_back({true, s.over->id});
    }
    out.push_back({false, s.tool.id});
    return out;
}

bool lies_in(const kit& k, const held_tool& t) {
    if (t.comb) {
        return std::any_of(k.combs.begin(), k.combs.end(),
                           [&](const kit_comb& c) { return c.spec.id == t.id && c.count > 0; });
    }
    const kit_blade* b = find_blade(k, t.id);
    return b != nullptr && b->count > 0;
}

/// What of the kit could be meant: of the same number, or else the one or two nearest in length.
std::vector<std::string> like(const kit& k, const held_tool& t, const setup& asked) {
    std::vector<std::string> out;
    std::vector<std::pair<length, std::string>> by_length;
    if (t.comb) {
        for (const kit_comb& c : k.combs) {
            by_length.emplace_back(gap(c.spec.stated.best, asked.over->stated.best),
                                   name(held_tool{true, c.spec.id}));
        }
    } else {
        for (const kit_blade& b : k.blades) {
            if (!b.spec.etched.empty() && b.spec.etched == asked.tool.etched) {
                out.push_back(name(held_tool{false, b.spec.id}));
            }
            by_length.emplace_back(gap(b.spec.stated.best, asked.tool.stated.best),
                                   name(held_tool{false, b.spec.id}));
        }
    }
    std::stable_sort(by_length.begin(), by_length.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    if (out.empty()) {
        constexpr std::size_t most = 2;
        for (std::size_t i = 0; i < std::min(most, by_length.size()); ++i) {
            out.push_back(by_length[i].second);
        }
    }
    return out;
}

std::optional<tool_doubt> held_against(const kit& k, const std::string& text,
                                       const std::vector<held_tool>& tools, const setup* asked,
                                       const std::optional<date>& on) {
    tool_doubt d;
    d.text = text;
    for (const held_tool& t : tools) {
        if (!lies_in(k, t)) {
            d.what = tool_doubt::kind::lacking;
            d.which.push_back(t);
            for (std::string& one :
                 asked == nullptr ? std::vector<std::string>{} : like(k, t, *asked)) {
                d.near.push_back(std::move(one));
            }
        }
    }
    if (!d.which.empty()) {
        return d;
    }
    for (const held_tool& t : tools) {
        const kit_blade* b = t.comb ? nullptr : find_blade(k, t.id);
        if (b != nullptr && !at_hand(*b, on)) {
            d.what = tool_doubt::kind::out;
            d.which.push_back(t);
            d.until = b->out_until;
        }
    }
    return d.which.empty() ? std::nullopt : std::optional{d};
}

tool_doubt unknown(const std::string& text, const std::string& plain, const kit& k,
                   std::string complaint) {
    tool_doubt d;
    d.text = text;
    d.complaint = std::move(complaint);
    std::vector<std::string> names(hand_words.begin(), hand_words.end());
    for (const kit_blade& b : k.blades) {
        names.push_back(lowered(name(held_tool{false, b.spec.id})));
    }
    for (const kit_comb& c : k.combs) {
        names.push_back(lowered(name(held_tool{true, c.spec.id})));
    }
    if (const std::string n = nearest_name(plain, names); !n.empty()) {
        d.near.push_back(n);
    }
    return d;
}

}  // namespace

std::optional<tool_doubt> doubt_of_tool(const std::string& text, const reference_data& c,
                                        const parameters& r, const kit* drawer,
                                        const std::optional<date>& on) {
    const std::string plain = plain_tool(text);
    const kit none;
    const kit& k = drawer == nullptr ? none : *drawer;
    if (const auto exact = in_kit_as(k, plain)) {
        return held_against(k, text, {*exact}, nullptr, on);
    }
    const bool carded = std::any_of(c.coats.begin(), c.coats.end(),
                                    [&](const coat& one) { return one.carded_with == plain; });
    if (carded || by_hand(plain)) {
        return std::nullopt;
    }
    const bool numbered = plain.find_first_of("0123456789") != std::string::npos;
    if (!numbered && (plain == "comb" || plain.ends_with(" comb"))) {
        return std::nullopt;  // held in the hand
    }
    if (!numbered) {
        return unknown(text, plain, k, {});
    }
    const lookup_request ask{c, r, k, plain, asked_kind::any, false, {}, {}, {}, on};
    try {
        const question q = read_question(ask);
        if (q.what == question::form::of_length) {
            return unknown(text, plain, k, {});
        }
        return drawer == nullptr ? std::nullopt
                                 : held_against(k, text, parts_of(q.tool), &q.tool, on);
    } catch (const error& e) {
        return unknown(text, plain, k, e.what());
    }
}

}  // namespace pelage
