#include "kit/asked_settle.hpp"

#include <algorithm>

namespace pelage::asking {

namespace {

std::size_t count(const std::vector<piece>& all, piece_kind k) {
    return static_cast<std::size_t>(
        std::count_if(all.begin(), all.end(), [&](const piece& p) { return of_kind(p, k); }));
}

bool only_of(const std::vector<piece>& all, std::initializer_list<piece_kind> kinds) {
    return std::all_of(all.begin(), all.end(), [&](const piece& p) {
        return std::find(kinds.begin(), kinds.end(), p.kind) != kinds.end();
    });
}

bool is_comb_word(const piece& p) {
    return (of_kind(p, piece_kind::term) && p.means->id == "snap-on-comb") ||
           (of_kind(p, piece_kind::terms_asked) && p.text == "comb");
}
bool is_blade_word(const piece& p) {
    return of_kind(p, piece_kind::term) && (p.means->id == "blade" || p.means->id == "clipper");
}

bool belong_together(const term& a, const term& b) {
    const auto in = [](const std::vector<std::string>& all, const std::string& id) {
        return std::find(all.begin(), all.end(), id) != all.end();
    };
    return in(a.see, b.id) || in(b.see, a.id);
}

/// "7 skip", "5 finish": the teeth that a word says of a blade; not said of none.
std::optional<teeth> teeth_of(const term& t) {
    if (t.id == "skip-tooth-blade") {
        return teeth::skip;
    }
    return t.id == "full-tooth-blade" || t.id == "finish" ? std::optional{teeth::full}
                                                          : std::nullopt;
}

}  // namespace

question read_tool(const std::string& text, const lookup_request& r) {
    lookup_request one{r};
    one.text = text;
    return read_question(one);
}

std::optional<list_asked> only_a_list(std::vector<piece>& all) {
    const auto first = std::find_if(all.begin(), all.end(),
                                    [](const piece& p) { return of_kind(p, piece_kind::listing); });
    if (first == all.end()) {
        return std::nullopt;
    }
    if (only_of(all, {piece_kind::filler, piece_kind::listing})) {
        const std::string& word = first->text;
        const bool of_words = word == "words" || word == "terms" || word == "glossary";
        return list_asked{of_words ? list_asked::of::words : list_asked::of::nevers};
    }
    for (piece& p : all) {
        p.kind = of_kind(p, piece_kind::listing) ? piece_kind::filler : p.kind;
    }
    return std::nullopt;
}

void say_what_fillers_mean(std::vector<piece>& all) {
    const bool apart = count(all, piece_kind::telling_apart) > 0;
    const bool alone = only_of(all, {piece_kind::filler});
    for (piece& p : all) {
        if (of_kind(p, piece_kind::filler) && p.means != nullptr && (apart || alone)) {
            p.kind = piece_kind::term;
        }
    }
}

std::optional<carrying_asked> comb_on_a_blade(const std::vector<piece>& all,
                                              const lookup_request& r) {
    const auto any = [&](auto test) { return std::any_of(all.begin(), all.end(), test); };
    const std::size_t tools = count(all, piece_kind::tool);
    const bool upon = any([&](const piece& p) {
        const bool over =
            p.text == "over" || p.text == "under" || p.text == "beneath" || p.text == "underneath";
        const bool on = tools > 0 && (p.text == "on" || p.text == "onto");
        return of_kind(p, piece_kind::filler) && (over || on);
    });
    if (!upon || !any(is_comb_word) || tools > 1 || (tools == 0 && !any(is_blade_word)) ||
        count(all, piece_kind::place) + count(all, piece_kind::telling_apart) > 0) {
        return std::nullopt;
    }
    if (tools == 0) {
        return carrying_asked{};
    }
    const auto tool = std::find_if(all.begin(), all.end(),
                                   [](const piece& p) { return of_kind(p, piece_kind::tool); });
    const question q = read_tool(tool->text, r);
    if (q.what != question::form::of_blade) {
        return std::nullopt;
    }
    return carrying_asked{q.tool.tool};
}

asked_kind drop_tool_words(std::vector<piece>& all) {
    const auto is_word = [](const piece& p) { return is_blade_word(p) || is_comb_word(p); };
    const bool beside = count(all, piece_kind::tool) + count(all, piece_kind::place) +
                            count(all, piece_kind::places_asked) >
                        0;
    const bool blade = std::any_of(all.begin(), all.end(), is_blade_word);
    const bool comb = std::any_of(all.begin(), all.end(), is_comb_word);
    const bool other = std::any_of(all.begin(), all.end(), [&](const piece& p) {
        return p.kind < piece_kind::telling_apart && !is_word(p);
    });
    const bool apart = count(all, piece_kind::telling_apart) + count(all, piece_kind::joining) > 0;
    if (beside) {
        std::erase_if(all, is_word);
    } else if (other && !apart) {
        std::erase_if(all, is_blade_word);
    }
    if (blade == comb) {
        return asked_kind::any;
    }
    return blade ? asked_kind::blade : asked_kind::comb;
}

void settle_by_neighbours(std::vector<piece>& all, const glossary& g, const term_index& index) {
    for (piece& p : all) {
        const asked_term* several = of_kind(p, piece_kind::terms_asked) ? p.several
                                    : of_kind(p, piece_kind::term)      ? index.asked(p.text)
                                                                        : nullptr;
        if (several == nullptr) {
            continue;
        }
        std::vector<const term*> fit;
        for (const std::string& id : several->means) {
            const term* t = find(g.terms, id);
            if (std::any_of(all.begin(), all.end(), [&](const piece& other) {
                    return &other != &p && of_kind(other, piece_kind::term) &&
                           belong_together(*t, *other.means);
                })) {
                fit.push_back(t);
            }
        }
        if (fit.size() == 1) {
            p.kind = piece_kind::term;
            p.means = fit.front();
        }
    }
}

asked about_the_extreme(const std::string& word, asked_kind only, const lookup_request& r) {
    const bool longest = word == "longest" || word == "biggest";
    std::vector<std::pair<length, std::string>> all;
    if (only == asked_kind::blade) {
        for (const kit_blade& b : r.tools.blades) {
            if (b.spec.shape == edge::standard && b.spec.etched != "50") {
                all.emplace_back(b.spec.stated.best, "blade " + b.spec.id);
            }
        }
    } else if (only == asked_kind::comb) {
        for (const kit_comb& c : r.tools.combs) {
            all.emplace_back(c.spec.stated.best, c.spec.id + " comb");
        }
    }
    if (all.empty() || word == "highest") {
        return {asked_back{asked_back::cause::ladder, {}, {}}};
    }
    const auto most = longest ? std::max_element(all.begin(), all.end())
                              : std::min_element(all.begin(), all.end());
    tools_asked out;
    for (const auto& [stated, text] : all) {
        if (in_hundredths(stated) == in_hundredths(most->first)) {
            out.all.push_back(read_tool(text, r));
        }
    }
    return {std::move(out)};
}

void take_teeth(question& q, std::vector<const term*>& beside, const lookup_request& r) {
    const auto said = std::find_if(beside.begin(), beside.end(),
                                   [](const term* t) { return teeth_of(*t).has_value(); });
    if (said == beside.end() || q.what != question::form::of_blade) {
        return;
    }
    const teeth wanted = *teeth_of(**said);
    const auto fits = [&](const blade& b) {
        return b.etched == q.tool.tool.etched && b.shape == edge::standard && b.cut == wanted;
    };
    const auto& blades = r.reference.blades;
    const auto at = std::find_if(blades.begin(), blades.end(), fits);
    if (at == blades.end()) {
        return;
    }
    q = read_tool("blade " + at->id, r);
    beside.erase(said);
}

}  // namespace pelage::asking
