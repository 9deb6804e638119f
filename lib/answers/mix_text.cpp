// What coat a breed or a mix comes to.
#include <algorithm>
#include <cmath>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/chance.hpp"
#include "answers/words/tool.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

/// Rarer coats are told together, without a row each (assumption).
constexpr double worth_a_row = 0.005;

constexpr std::array<std::string_view, 3> variants{"long hair", "furnishings", "curl"};

/// "1 copy of long hair".
std::string locus_title(std::size_t l, const heredity& h) {
    return std::string(variants[l]) + ", " + h.loci[l].gene;
}

std::string sign_words(const coat_sign& s, const print_options& o) {
    return s.text + (o.explain ? " [" + basis_words(s.why) + "]" : "");
}

std::string plain(double v) {
    std::string s = detail::fixed(v, 2);
    s.erase(s.find_last_not_of('0') + 1);
    if (s.back() == '.') {
        s.pop_back();
    }
    return s;
}

/// Shares of a variant that are known from least to most only: "furnishings of the poodle, 0.9 to 1".
std::vector<std::string> not_known(const expected_coat& e, const heredity& h) {
    std::vector<std::string> out;
    for (const ancestry& a : e.read.dog.from) {
        const breed& b = h.breeds[a.breed];
        for (std::size_t l = 0; l < b.frequency.size(); ++l) {
            const figure<double>& f = b.frequency[l];
            if (f.low < f.high) {
                out.push_back(std::string(variants[l]) + " of the " + b.id + ", " + plain(f.low) +
                              " to " + plain(f.high));
            }
        }
    }
    return out;
}

class mix_page {
  public:
    mix_page(const expected_coat& e, const reference_data& c, const print_options& o)
        : e_(e), c_(c), o_(o), page_{e.read.dog.text + ": the coat"} {}

    document all() {
        page_.say(heading(), 2);
        const bool sure = e_.may_be.coats.size() == 1;
        if (sure) {
            say_first();
        }
        chances();
        if (!sure) {
            say_first();
        }
        for (const std::string& n : e_.read.notes) {
            page_.say(n, 2);
        }
        for (const practice_hit& p : e_.may_be.practice) {
            // where practice is sure it is what the heading says, and the genes stand in --explain
            if (o_.explain || e_.may_be.coats.size() > 1 ||
                c_.genes.practice[p.rule].coats.size() > 1) {
                page_.say(in_practice(p), 2);
            }
        }
        look();
        if (o_.explain) {
            genes();
            types();
        }
        how_sure();
        go_on();
        return std::move(page_);
    }

  private:
    [[nodiscard]] std::string heading() const {
        const auto& coats = e_.may_be.coats;
        const std::string& first = coat_of(c_, coats.front().coat).title;
        const std::string what = e_.read.dog.text + ": ";
        if (coats.size() == 1) {
            const std::string& look = coat_of(c_, coats.front().coat).look;
            return e_.read.dog.depth == 0
                       ? what + first + "."
                       : what + "usually a " + first + ": " + look.substr(0, look.find(';')) +
                             ". Look at the coat on the table.";
        }
        if (coats[1].chance > coats[0].chance - 1e-9) {
            return what + std::string(name(coats[0].coat)) + " or " +
                   coat_of(c_, coats[1].coat).title + ", equally likely; " + first +
                   " stands first because planning on it errs on the longer side.";
        }
        return what + "most likely a " + first + ", " + chance_in_words(coats.front().chance) + ".";
    }

    /// What can't be undone stands before all else.
    void say_first() {
        for (const coat_chance& k : e_.may_be.coats) {
            const coat& of = coat_of(c_, k.coat);
            const bool sure = e_.may_be.coats.size() == 1;
            if (k.chance < worth_a_row || of.said_first.empty() ||
                !(sure || double_coated(k.coat))) {
                continue;
            }
            page_.say((sure ? "" : "If it is " + std::string(name(k.coat)) + ": ") + of.said_first,
                      2);
        }
    }

    void chances() {
        const auto& coats = e_.may_be.coats;
        typed_table all{{"coat", "chance"}};
        all.whom = shown_to::programs;
        typed_table often{{"coat", "chance", ""}};
        often.numbers = {false, false, true};
        often.whom = shown_to::people;
        std::vector<std::string> rare;
        for (const coat_chance& k : coats) {
            const std::string coat{name(k.coat)};
            all.rows.push_back({coat, likelihood{k.chance}});
            if (k.chance < worth_a_row) {
                rare.push_back(coat);
            } else if (coats.size() > 1) {
                often.rows.push_back({coat, chance_in_words(k.chance), percent(k.chance)});
            }
        }
        page_.show(std::move(all));
        page_.show(std::move(often));
        if (!rare.empty()) {
            page_.item_of("rarer still: ", listed(rare));
        }
    }

    [[nodiscard]] std::string in_practice(const practice_hit& p) const {
        const practice_rule& rule = c_.genes.practice[p.rule];
        const bool all = p.chance > 1.0 - 1e-9;
        const bool unsure = rule.coats.size() > 1;
        std::vector<std::string> coats;
        for (const coat_class k : rule.coats) {
            coats.emplace_back(name(k));
        }
        return "In practice " + joined(coats, " or ") + (unsure ? ", unsure which" : "") +
               (all ? "" : ", " + chance_in_words(p.chance) + " of them") + ", not " +
               c_.genes.types[static_cast<std::size_t>(p.model)].title +
               (o_.explain || unsure ? ": " + rule.text : " as by the genes alone.") + " [" +
               std::string(in_words(rule.why.how)) + "]";
    }

    /// What settles on the table which coat it is.
    void look() {
        page_.open("What you see on the dog wins. Look at", false);
        for (const std::size_t s : e_.may_be.signs) {
            page_.item(sign_words(c_.genes.signs[s], o_));
        }
        for (const coat_chance& k : e_.may_be.coats) {
            if (k.chance >= worth_a_row) {
                page_.item_of(std::string(name(k.coat)) + " is: ", coat_of(c_, k.coat).look);
            }
        }
    }

    void genes() {
        const heredity& h = c_.genes;
        page_.open("Genes: chances of carrying none, one or two copies of the variant", false);
        typed_table t{{"gene", "none", "one", "two", ""}};
        t.numbers = {false, true, true, true, false};
        for (std::size_t l = 0; l < h.loci.size(); ++l) {
            const copies<double>& n = e_.read.dog.genes.at[l];
            t.rows.push_back({locus_title(l, h), percent(n.none), percent(n.one), percent(n.two),
                              h.loci[l].says});
        }
        page_.show(std::move(t));
        if (e_.curl == curl_mode::dominant) {
            page_.say("Curl is read as dominant: one copy does as much as two.", 2);
        }
    }

    /// "curly with furnishings, here with one copy of curl: wavy": the types know no waves.
    [[nodiscard]] std::string type_title(const type_facts& t) const {
        const copies<double>& curl = e_.read.dog.genes.at[static_cast<std::size_t>(locus::curl)];
        if (t.one_copy.empty() || e_.curl == curl_mode::dominant || curl.one <= 0.0) {
            return t.title;
        }
        std::vector<std::string> coats;
        for (const coat_class k : t.one_copy) {
            coats.emplace_back(name(k));
        }
        return t.title +
               (curl.two > 0.0 ? "; with one copy of curl, " : "; here, with one copy of curl, ") +
               joined(coats, " or ");
    }

    void types() {
        const heredity& h = c_.genes;
        page_.open("Types of coat by the genes alone (cadieu-2009, seen second-hand)", false);
        typed_table t{{"type", "chance", ""}};
        t.numbers = {false, false, true};
        for (std::size_t i = 0; i < h.types.size(); ++i) {
            if (e_.may_be.types[i] > 0.0) {
                t.rows.push_back({type_title(h.types[i]), chance_in_words(e_.may_be.types[i]),
                                  percent(e_.may_be.types[i])});
            }
        }
        page_.show(std::move(t));
        if (const auto spread = not_known(e_, h); !spread.empty()) {
            page_.say("By the likeliest figures alone. Not known, and not in these chances: " +
                          joined(spread, "; ") + ".",
                      2);
        }
        for (const ancestry& a : e_.read.dog.from) {
            const breed& b = h.breeds[a.breed];
            page_.item_of(b.id + ", ", frequencies(b, a.share));
        }
        for (const locus_facts& l : h.loci) {
            page_.item_of(l.gene + ": ", basis_words(l.why));
        }
        page_.item_of(
            "rule: ",
            "the three genes lie on different chromosomes, so each is inherited without regard to "
            "the others; the dogs named are taken as unrelated, and each of a dog's two copies as "
            "drawn from its breed by chance (the law of Hardy and Weinberg)");
    }

    static std::string frequencies(const breed& b, double share) {
        std::string text = percent(share) + " of it: ";
        for (std::size_t l = 0; l < b.frequency.size(); ++l) {
            const figure<double>& f = b.frequency[l];
            text += (l == 0 ? "" : "; ") + std::string(variants[l]) + " " + plain(f.best);
            text += f.low < f.high ? " (" + plain(f.low) + " to " + plain(f.high) + ")" : "";
            text += f.why == b.why ? "" : ", " + basis_words(f.why);
        }
        return text + "; the rest " + basis_words(b.why);
    }

    void how_sure() {
        page_.open("How sure:", false);
        for (const ancestry& a : e_.read.dog.from) {
            const breed& b = c_.genes.breeds[a.breed];
            std::vector<std::string> behind;
            for (const figure<double>& f : b.frequency) {
                add_new(behind,
                        std::string(in_words(f.why.how)) + (f.why.relayed ? ", second-hand" : ""));
            }
            page_.item_of("genes of the " + b.id + ": ", joined(behind, "; "));
        }
        std::vector<std::string> behind;
        for (std::size_t i = 0; i < c_.genes.types.size(); ++i) {
            if (e_.may_be.types[i] > 0.0) {
                add_new(behind, std::string(in_words(c_.genes.types[i].why.how)));
            }
        }
        page_.item_of("what the genes mean for grooming: ", listed(behind));
    }
    /// Where the coat is told, what the kit leaves on it, and which sheets there are for it.
    void go_on() {
        const coat_class first = e_.may_be.coats.front().coat;
        page_.open({}, false);
        page_.say("More: pelage lookup '" + coat_of(c_, first).title +
                      "'; pelage lookup --all --coat " + std::string(name(first)) +
                      "; pelage sheet list --for '" + e_.read.dog.text + "'",
                  2);
    }
    static void add_new(std::vector<std::string>& all, std::string text) {
        if (std::find(all.begin(), all.end(), text) == all.end()) {
            all.push_back(std::move(text));
        }
    }

    const expected_coat& e_;
    const reference_data& c_;
    const print_options& o_;
    document page_;
};

}  // namespace

namespace {

/// "comb 16 mm over blade 30, with the lay, leaves 18 mm, not 17 mm; ..."
std::string leaves_otherwise(const other_coat& c, const print_options& o) {
    constexpr std::size_t most = 3;
    std::string text;
    for (std::size_t i = 0; i < c.leaves.size() && (o.explain || i < most); ++i) {
        const left_otherwise& l = c.leaves[i];
        text += (i == 0 ? "" : "; ") + title_words(l.held, o.units) + ", leaves " +
                show(l.then.best, o.units) + ", not " + show(l.planned.best, o.units);
    }
    const std::size_t more = o.explain || c.leaves.size() <= most ? 0 : c.leaves.size() - most;
    text += more > 0 ? "; and " + std::to_string(more) + " more" : "";
    return text;
}

}  // namespace

namespace {

/// A breed by its name, which has one coat.
bool of_one_breed(const expected_coat& e) {
    return e.read.dog.depth == 0 && e.may_be.coats.size() == 1;
}

std::string planned_on(const expected_coat& e, const reference_data& r) {
    const coat_chance& first = e.may_be.coats.front();
    if (of_one_breed(e)) {
        return "Coat of the breed (" + e.read.dog.text + "): " + std::string(name(first.coat)) +
               ". ";
    }
    const std::string odds = e.may_be.coats.size() > 1 ? chance_in_words(first.chance)
                             : not_known(e, r.genes).empty()
                                 ? "all pups by the model"
                                 : "all pups by the likeliest figures of their breeds";
    return "Coat from the mix, nobody has seen it: planned on " + std::string(name(first.coat)) +
           ", " + odds + " (" + e.read.dog.text + "). ";
}

void say_jacket_carded(document& d, const other_coat& c) {
    d.add({line_as::caution,
           "if " + std::string(name(c.what.coat)) + ", " + chance_in_words(c.what.chance) +
               ": its jacket is carded, not clipped, unless the owner agrees in writing",
           "! ", 2, 4});
}

}  // namespace

void say_unseen_in_brief(document& d, const mixed_coat& u, const plan_request& r) {
    d.say(planned_on(u.expected, r.reference) + "Look; once seen: --coat.", 2);
    for (const other_coat& c : u.others) {
        if (c.jacket_clipped) {
            say_jacket_carded(d, c);
        }
    }
}

void say_unseen(document& d, const mixed_coat& u, const plan_request& r, const print_options& o) {
    const expected_coat& e = u.expected;
    d.say(planned_on(e, r.reference) +
          (of_one_breed(e) ? "" : "The dates count every coat it may have. ") +
          (e.may_be.signs.empty() ? "What you see on the dog wins." : "First look at"));
    for (const std::size_t s : e.may_be.signs) {
        d.item(sign_words(r.reference.genes.signs[s], o));
    }
    for (const other_coat& c : u.others) {
        const std::string what =
            "if " + std::string(name(c.what.coat)) + ", " + chance_in_words(c.what.chance) + ": ";
        if (c.jacket_clipped) {
            say_jacket_carded(d, c);
        }
        const std::string leaves = leaves_otherwise(c, o);
        if (!leaves.empty() || !c.jacket_clipped) {
            d.item(what + (leaves.empty() ? "the same lengths" : leaves));
        }
    }
    d.say("Once seen, write --coat, or coat = in the dog's file.");
}

document document_of(const expected_coat& e, const reference_data& c, const print_options& o) {
    return mix_page(e, c, o).all();
}

}  // namespace pelage::io
