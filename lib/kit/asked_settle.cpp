#include "kit/asked_settle.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace pelage::asking {

namespace {

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

bool is_joining(const piece& p) {
    return of_kind(p, piece_kind::joining);
}

/// "snap-on over a 10 or 30": the comb, then what it sits on, then nothing but blades.
bool comb_before_its_blades(const std::vector<piece>& all) {
    const auto comb = std::find_if(all.begin(), all.end(), is_comb_word);
    const auto first = std::find_if(all.begin(), all.end(),
                                    [](const piece& p) { return of_kind(p, piece_kind::tool); });
    const auto over = std::find_if(all.begin(), all.end(), [](const piece& p) {
        return of_kind(p, piece_kind::filler) && (p.text == "over" || p.text == "on");
    });
    return comb < over && over < first && std::none_of(first, all.end(), is_comb_word);
}

/// "10 or 30 under a 13 mm comb": the comb on each of the blades told before it.
template <class Carries>
void under_each(std::vector<piece>& all, Carries carries) {
    const auto under = std::find_if(all.begin(), all.end(), [](const piece& p) {
        return of_kind(p, piece_kind::filler) &&
               (p.text == "under" || p.text == "beneath" || p.text == "underneath");
    });
    const auto comb = std::find_if(under, all.end(), [](const piece& p) {
        return of_kind(p, piece_kind::tool) && p.text.ends_with(" comb");
    });
    const bool each = comb != all.end() && count(all, piece_kind::tool) > 2 &&
                      std::all_of(all.begin(), all.end(), [&](const piece& p) {
                          return !of_kind(p, piece_kind::tool) || &p == &*comb || carries(p);
                      });
    if (!each) {
        return;
    }
    const std::string what = comb->text;
    all.erase(comb);
    for (piece& p : all) {
        if (of_kind(p, piece_kind::tool)) {
            p.text = what + " over " + p.text;
        }
    }
}

/// "7 skip", "5 finish": the teeth that a word says of a blade; not said of none.
std::optional<teeth> teeth_of(const term& t) {
    if (t.id == "skip-tooth-blade") {
        return teeth::skip;
    }
    return t.id == "full-tooth-blade" || t.id == "finish" ? std::optional{teeth::full}
                                                          : std::nullopt;
}

/// "brush my poodle", "wet ear": the one that a word means where a dog or a place is told with it.
void settle_by_its_place(std::vector<piece>& all, std::size_t at, const glossary& g) {
    piece& p = all[at];
    if (!of_kind(p, piece_kind::terms_asked)) {
        return;
    }
    const auto of_a_dog = [](const piece& o) {
        return of_kind(o, piece_kind::breed) || of_kind(o, piece_kind::coat) ||
               of_kind(o, piece_kind::place);
    };
    const auto next = std::find_if(
        all.begin() + static_cast<std::ptrdiff_t>(at) + 1, all.end(), [](const piece& o) {
            constexpr std::array<std::string_view, 9> whose{"a",   "an",  "the",  "my",   "your",
                                                            "his", "her", "this", "their"};
            return !of_kind(o, piece_kind::filler) ||
                   std::find(whose.begin(), whose.end(), o.text) == whose.end();
        });
    const bool done_to = next != all.end() && of_a_dog(*next);
    const bool there = count(all, piece_kind::place) > 0;
    const std::string id = there && !p.several->there.empty() ? p.several->there
                           : done_to                          ? p.several->doing
                                                              : std::string{};
    if (!id.empty()) {
        p.kind = piece_kind::term;
        p.means = find(g.terms, id);
    }
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

void comb_over_each(std::vector<piece>& all, const lookup_request& r) {
    const auto carries = [&](const piece& p) {
        if (!of_kind(p, piece_kind::tool) || p.text.find("comb") != std::string::npos) {
            return false;
        }
        const question q = read_tool(p.text, r);
        return q.what == question::form::of_blade && carrying(r, {{q.tool.tool}}).may();
    };
    const auto said_over = [](const piece& p) {
        return of_kind(p, piece_kind::filler) && (p.text == "over" || p.text == "on");
    };
    const std::string over = " over ";
    std::string comb;  // the last one, without its blade
    bool apart = false;
    bool again = false;  // "or over a 30"
    for (piece& p : all) {
        const auto at = p.text.find(" comb" + over);
        if (of_kind(p, piece_kind::tool) && at != std::string::npos) {
            comb = p.text.substr(0, at + 5);
            apart = again = false;
        } else if (of_kind(p, piece_kind::telling_apart) || of_kind(p, piece_kind::joining)) {
            apart = true;
        } else if (of_kind(p, piece_kind::tool)) {
            if (!comb.empty() && apart && (again || carries(p))) {
                p.text = comb + over + p.text;
            } else {
                comb.clear();
            }
            apart = again = false;
        } else if (apart && said_over(p)) {
            again = true;
        }
    }
    under_each(all, carries);
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
    const bool apart = count(all, piece_kind::telling_apart) > 0;
    if (!upon || !any(is_comb_word) || (tools == 0 && !any(is_blade_word)) ||
        count(all, piece_kind::place) > 0 || (tools > 1 && !apart && !any(is_joining)) ||
        (apart && !(tools > 1 && comb_before_its_blades(all)))) {
        return std::nullopt;
    }
    carrying_asked out;
    for (const piece& p : all) {
        if (!of_kind(p, piece_kind::tool)) {
            continue;
        }
        const question q = read_tool(p.text, r);
        if (q.what != question::form::of_blade) {
            return std::nullopt;
        }
        out.under.push_back(q.tool.tool);
    }
    return out;
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

void drop_asking_words(std::vector<piece>& all) {
    const auto asks = [](const piece& p) {
        return of_kind(p, piece_kind::term) &&
               std::find(p.means->asks.begin(), p.means->asks.end(), p.text) != p.means->asks.end();
    };
    const auto beside = [&](const piece& p) {
        return p.kind < piece_kind::telling_apart && !asks(p) && !of_kind(p, piece_kind::coat) &&
               !of_kind(p, piece_kind::breed);
    };
    const bool other = std::any_of(all.begin(), all.end(), beside);
    std::erase_if(all, [&](const piece& p) {
        return other && asks(p) && std::none_of(all.begin(), all.end(), [&](const piece& o) {
                   return of_kind(o, piece_kind::term) && &o != &p &&
                          belong_together(*p.means, *o.means);
               });
    });
}

void settle_by_neighbours(std::vector<piece>& all, const glossary& g, const term_index& index) {
    for (std::size_t i = 0; i < all.size(); ++i) {
        settle_by_its_place(all, i, g);
    }
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
