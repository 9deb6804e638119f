// What coat a breed or a mix comes to, as text.
#include <algorithm>
#include <cmath>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/layout.hpp"
#include "answers/words/chance.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

/// Rarer coats are told together, without a row each (assumption).
constexpr double worth_a_row = 0.005;

/// "1 copy of long hair".
std::string locus_title(std::size_t l, const heredity& h) {
    constexpr std::array<std::string_view, 3> titles{"long hair", "furnishings", "curl"};
    return std::string(titles[l]) + ", " + h.loci[l].gene;
}

class mix_writer {
  public:
    mix_writer(const expected_coat& e, const reference_data& c, const print_options& o)
        : e_(e), c_(c), o_(o) {}

    [[nodiscard]] std::string all() {
        say("", heading(), 2);
        chances();
        for (const std::string& n : e_.read.notes) {
            say("", n, 2);
        }
        practice();
        out_ += what_to_look_at(e_, c_, o_);
        if (o_.explain) {
            explain();
        }
        how_sure();
        return out_;
    }

  private:
    void say(std::string_view first, std::string_view text, std::size_t indent) {
        out_ += wrapped(first, text, indent, o_.width);
    }

    [[nodiscard]] std::string heading() const {
        const auto& coats = e_.may_be.coats;
        const std::string& first = coat_of(c_, coats.front().coat).title;
        const std::string what = e_.read.dog.text + ": ";
        if (coats.size() == 1) {
            return what + first + (e_.read.dog.depth > 0 ? ", all pups by the model." : ".");
        }
        if (coats[1].chance > coats[0].chance - 1e-9) {
            return what + std::string(name(coats[0].coat)) + " or " +
                   coat_of(c_, coats[1].coat).title + ", as likely; " + first +
                   " stands first because planning on it errs on the longer side.";
        }
        return what + "most likely a " + first + ", " + chance_in_words(coats.front().chance) + ".";
    }

    void chances() {
        if (e_.may_be.coats.size() == 1) {
            return;
        }
        table t;
        t.head = {"coat", "chance", ""};
        t.numbers = {false, false, true};
        std::vector<std::string> rare;
        for (const coat_chance& k : e_.may_be.coats) {
            if (k.chance < worth_a_row) {
                rare.emplace_back(name(k.coat));
                continue;
            }
            t.rows.push_back(
                {std::string(name(k.coat)), chance_in_words(k.chance), percent(k.chance)});
        }
        out_ += laid_out(t, o_.width);
        if (!rare.empty()) {
            say("  rarer still: ", listed(rare), 4);
        }
    }

    void practice() {
        for (const practice_hit& p : e_.may_be.practice) {
            const practice_rule& rule = c_.genes.practice[p.rule];
            const bool all = p.chance > 1.0 - 1e-9;
            const std::string how = " [" + std::string(in_words(rule.why.how)) + "]";
            const std::string whom = (all ? "" : ", " + chance_in_words(p.chance) + " of them") +
                                     ", not " +
                                     c_.genes.types[static_cast<std::size_t>(p.model)].title;
            const bool unsure = rule.coats.size() > 1;
            std::string coats;
            for (const coat_class k : rule.coats) {
                coats += (coats.empty() ? "" : " or ") + std::string(name(k));
            }
            say("",
                "In practice " + coats + (unsure ? ", unsure which" : "") + whom +
                    (o_.explain || unsure ? ": " + rule.text : " as by the genes alone.") + how,
                2);
        }
    }

    void explain() {
        const heredity& h = c_.genes;
        out_ += "Genes: chances of carrying none, one or two copies of the variant\n";
        table t;
        t.head = {"locus", "none", "one", "two", ""};
        t.numbers = {false, true, true, true, false};
        for (std::size_t l = 0; l < h.loci.size(); ++l) {
            const copies<double>& n = e_.read.dog.genes.at[l];
            t.rows.push_back({locus_title(l, h), percent(n.none), percent(n.one), percent(n.two),
                              h.loci[l].says});
        }
        out_ += laid_out(t, o_.width);
        if (e_.curl == curl_mode::dominant) {
            say("", "Curl is read as dominant: one copy does as much as two.", 2);
        }
        out_ += "Types of coat by the genes alone (cadieu-2009, seen second-hand)\n";
        table types;
        for (std::size_t i = 0; i < h.types.size(); ++i) {
            if (e_.may_be.types[i] > 0.0) {
                types.rows.push_back({h.types[i].title, chance_in_words(e_.may_be.types[i]),
                                      percent(e_.may_be.types[i])});
            }
        }
        types.head = {"type", "chance", ""};
        types.numbers = {false, false, true};
        out_ += laid_out(types, o_.width);
        for (const ancestry& a : e_.read.dog.from) {
            frequencies(h.breeds[a.breed], a.share);
        }
        for (std::size_t l = 0; l < h.loci.size(); ++l) {
            say("  " + h.loci[l].gene + ": ", basis_words(h.loci[l].why), 4);
        }
        say("  rule: ",
            "loci on different chromosomes are inherited independently; the dogs named are taken "
            "as unrelated, each breed as in the law of Hardy and Weinberg",
            4);
    }

    void frequencies(const breed& b, double share) {
        std::string text = percent(share) + " of it: ";
        constexpr std::array<std::string_view, 3> titles{"long hair ", "furnishings ", "curl "};
        for (std::size_t l = 0; l < b.frequency.size(); ++l) {
            const figure<double>& f = b.frequency[l];
            text += (l == 0 ? "" : "; ") + std::string(titles[l]) + plain(f.best);
            text += f.low < f.high ? " (" + plain(f.low) + " to " + plain(f.high) + ")" : "";
            text += f.why == b.why ? "" : ", " + basis_words(f.why);
        }
        say("  " + b.id + ", ", text + "; the rest " + basis_words(b.why), 4);
    }

    static std::string plain(double v) {
        std::string s = detail::fixed(v, 2);
        s.erase(s.find_last_not_of('0') + 1);
        if (s.back() == '.') {
            s.pop_back();
        }
        return s;
    }

    void how_sure() {
        out_ += "How sure:\n";
        for (const ancestry& a : e_.read.dog.from) {
            const breed& b = c_.genes.breeds[a.breed];
            say("  genes of the " + b.id + ": ", worst_words(b), 4);
        }
        std::vector<std::string> seen;
        for (std::size_t i = 0; i < c_.genes.types.size(); ++i) {
            const std::string words{in_words(c_.genes.types[i].why.how)};
            if (e_.may_be.types[i] > 0.0 &&
                std::find(seen.begin(), seen.end(), words) == seen.end()) {
                seen.push_back(words);
            }
        }
        say("  what the genes mean for grooming: ", listed(seen), 4);
    }

    /// Every basis that stands behind a breed's genes.
    static std::string worst_words(const breed& b) {
        std::vector<std::string> seen;
        for (const figure<double>& f : b.frequency) {
            std::string words{in_words(f.why.how)};
            words += f.why.relayed ? ", second-hand" : "";
            if (std::find(seen.begin(), seen.end(), words) == seen.end()) {
                seen.push_back(std::move(words));
            }
        }
        std::string text;
        for (const std::string& w : seen) {
            text += (text.empty() ? "" : "; ") + w;
        }
        return text;
    }

    const expected_coat& e_;
    const reference_data& c_;
    const print_options& o_;
    std::string out_;
};

}  // namespace

std::string percent(double p) {
    if (p > 0.99 && p < 1.0 - 1e-9) {
        return "over 99 %";
    }
    if (p > 0.0 && p < 0.001) {
        return "under 0.1 %";
    }
    const double hundredths = p * 100.0;
    return p > 0.0 && p < 0.01 ? detail::fixed(hundredths, 1) + " %"
                               : detail::fixed(std::floor(hundredths + 0.5), 0) + " %";
}

std::string chance_in_words(double p) {
    if (p > 1.0 - 1e-9) {
        return "all";
    }
    for (int d = 2; d <= 20; ++d) {
        const double n = p * d;
        if (n > 0.5 && std::abs(n - std::round(n)) < 1e-9) {
            return detail::fixed(n, 0) + " in " + std::to_string(d);
        }
    }
    if (p > 0.95) {
        return "more than 19 in 20";
    }
    if (p > 0.4) {
        return "about " + detail::fixed(p * 10.0, 0) + " in 10";
    }
    return p < 0.001 ? "fewer than 1 in 1000" : "about 1 in " + detail::fixed(1.0 / p, 0);
}

namespace {

std::string sign_words(const coat_sign& s, const print_options& o) {
    return s.text + (o.explain ? " [" + basis_words(s.why) + "]" : "");
}

/// "comb 16 mm over blade 30, with the lay, leaves 18 mm, not 17 mm; ..."
std::string leaves_otherwise(const other_coat& c, const print_options& o) {
    constexpr std::size_t most = 3;
    std::string text;
    for (std::size_t i = 0; i < c.leaves.size() && (o.explain || i < most); ++i) {
        const left_otherwise& l = c.leaves[i];
        text += (i == 0 ? "" : "; ") + l.setup + ", leaves " + show(l.then.best, o.units) +
                ", not " + show(l.planned.best, o.units);
    }
    const std::size_t more = o.explain || c.leaves.size() <= most ? 0 : c.leaves.size() - most;
    text += more > 0 ? "; and " + std::to_string(more) + " more" : "";
    return text;
}

}  // namespace

void say_unseen(document& d, const mixed_coat& u, const plan_request& r, const print_options& o) {
    const expected_coat& e = u.expected;
    const coat_chance& first = e.may_be.coats.front();
    const std::string odds =
        e.may_be.coats.size() == 1 ? "all pups by the model" : chance_in_words(first.chance);
    d.say("Coat from the mix, nobody has seen it: planned on " + std::string(name(first.coat)) +
          ", " + odds + " (" + e.read.dog.text + "). The dates count every coat it may have. " +
          (e.may_be.signs.empty() ? "What you see on the dog wins." : "First look at"));
    for (const std::size_t s : e.may_be.signs) {
        d.item(sign_words(r.reference.genes.signs[s], o));
    }
    for (const other_coat& c : u.others) {
        const std::string what =
            "if " + std::string(name(c.what.coat)) + ", " + chance_in_words(c.what.chance) + ": ";
        if (c.jacket_clipped) {
            d.add({line_as::caution,
                   what + "its jacket is carded, not clipped, unless the owner agrees in writing",
                   "! ", 2, 4});
        }
        const std::string leaves = leaves_otherwise(c, o);
        if (!leaves.empty() || !c.jacket_clipped) {
            d.item(what + (leaves.empty() ? "the same lengths" : leaves));
        }
    }
    d.say("Once seen, write --coat, or coat = in the dog's file.");
}

std::string what_to_look_at(const expected_coat& e, const reference_data& c,
                            const print_options& o) {
    std::string out = "What you see on the dog wins. Look at\n";
    for (const std::size_t s : e.may_be.signs) {
        out += wrapped("  ", sign_words(c.genes.signs[s], o), 4, o.width);
    }
    for (const coat_chance& k : e.may_be.coats) {
        if (k.chance >= worth_a_row) {
            out += wrapped("  " + std::string(name(k.coat)) + " is: ", coat_of(c, k.coat).look, 4,
                           o.width);
        }
    }
    return out;
}

std::string text_of(const expected_coat& e, const reference_data& c, const print_options& o) {
    return mix_writer(e, c, o).all();
}

}  // namespace pelage::io
