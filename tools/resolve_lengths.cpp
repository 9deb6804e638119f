// --length as it is said in a shop: "16 mm", "7F all off", "half inch all over, legs 16 mm".
#include <algorithm>
#include <array>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/trade/place_words.hpp>

#include "resolve_arguments.hpp"
#include "resolve_words.hpp"

namespace pelage::cli {

namespace {

using words = std::vector<std::string>;

/// At every `at`, but at no comma between two digits: that is somebody's decimal point.
words split(const std::string& text, char at) {
    words out{{}};
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool decimal = at == ',' && i > 0 && i + 1 < text.size() &&
                             detail::is_digit(text[i - 1]) && detail::is_digit(text[i + 1]);
        if (text[i] == at && !decimal) {
            out.emplace_back();
        } else {
            out.back() += text[i];
        }
    }
    std::erase_if(out, [](const std::string& w) { return detail::trimmed(w).empty(); });
    return out;
}

std::string joined_from(const words& all, std::size_t from, std::size_t to) {
    return joined(words(all.begin() + static_cast<std::ptrdiff_t>(from),
                        all.begin() + static_cast<std::ptrdiff_t>(to)),
                  " ");
}

/// Numbers of an inch by name.
std::string in_figures(std::string text) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 6> spelt{
        {{"three quarter inch", "3/4 in"},
         {"half an inch", "1/2 in"},
         {"half inch", "1/2 in"},
         {"quarter inch", "1/4 in"},
         {"one inch", "1 in"},
         {"an inch", "1 in"}}};
    for (const auto& [from, to] : spelt) {
        if (const auto at = text.find(from); at != std::string::npos) {
            text.replace(at, from.size(), to);
        }
    }
    return text;
}

/// One wish: what is to be left, and where; without a place it is the sheet's own length.
struct wish {
    std::string whom;  ///< "body", "all"; empty: not said
    instruction what;
};

class wish_reader {
  public:
    wish_reader(const workplace& w, faults& f) : w_(w), f_(f), parts_(w.reference.dog_body) {}

    std::optional<wish> read(const std::string& text) {
        words all = split(in_figures(text), ' ');
        wish out;
        const auto drop_end = [&](std::string_view a, std::string_view b) {
            const bool there = all.size() > 2 && all[all.size() - 2] == a && all.back() == b;
            if (there) {
                all.resize(all.size() - 2);
                out.whom = "all";
            }
            return there;
        };
        (void)(drop_end("all", "off") || drop_end("all", "over") || drop_end("all", "round"));
        if (!all.empty() && (all.back() == "longer" || all.back() == "shorter")) {
            by_how_much(text, joined_from(all, 0, all.size() - 1));
            return std::nullopt;
        }
        take_place(all, out.whom);
        if (out.whom.empty() && all.size() > 1 && all.front() != "blade" && measures(all.back())) {
            const auto stranger = parts_.about(joined_from(all, 0, all.size() - 1));
            f_.say(stranger.code, "--length: " + stranger.wrong + "; found \"" +
                                      joined_from(all, 0, all.size() - 1) + "\"" + stranger.right);
            return std::nullopt;
        }
        return leaves(text, joined(all, " "), out) ? std::optional{out} : std::nullopt;
    }

  private:
    /// The longest run of words at either end that names a place.
    void take_place(words& all, std::string& whom) {
        for (std::size_t n = all.size() - 1; whom.empty() && n > 0; --n) {
            const std::string first = joined_from(all, 0, n);
            const std::string last = joined_from(all, all.size() - n, all.size());
            if (parts_.find(first) != nullptr) {
                whom = first;
                all.erase(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(n));
            } else if (parts_.find(last) != nullptr) {
                whom = last;
                all.resize(all.size() - n);
            }
        }
    }

    [[nodiscard]] bool measures(const std::string& word) const {
        try {
            return read_question(asked(word)).what != question::form::of_comb;
        } catch (const error&) {
            return false;
        }
    }
    [[nodiscard]] lookup_request asked(const std::string& text) const {
        return {w_.reference, w_.place().rules, w_.tools(), text, asked_kind::any,
                false,        std::nullopt,     {},         {},   w_.print.today};
    }

    void by_how_much(const std::string& text, const std::string& whom) {
        f_.say(errc::ambiguous, "--length: by how much? found \"" + text +
                                    "\"; say what is to be left there: '" +
                                    (parts_.find(whom) != nullptr ? whom : "legs") + " 16 mm'");
    }

    /// A blade, a comb or a length, as the look-up reads them.
    bool leaves(const std::string& text, const std::string& measure, wish& out) {
        try {
            const question q = read_question(asked(measure));
            const auto also = [&](question_hint h) {
                return std::find(q.hints.begin(), q.hints.end(), h) != q.hints.end();
            };
            switch (q.what) {
                case question::form::of_blade:
                    if (also(question_hint::as_millimetres) && measure == q.tool.tool.id) {
                        f_.say(errc::ambiguous, "--length: a blade or a length? found \"" + text +
                                                    "\"; write \"blade " + measure + "\" or \"" +
                                                    measure + " mm\"");
                        return false;
                    }
                    out.what.blade = q.tool.tool.id;
                    return true;
                case question::form::of_comb:
                    out.what.target = q.tool.over->stated.best;
                    return true;
                case question::form::of_length:
                    out.what.target = length_in("--length", measure, f_);
                    return out.what.target.has_value();
            }
        } catch (const error& e) {
            if (parse_length(measure).fault == length_fault::no_unit) {
                (void)length_in("--length", measure, f_);
            } else if (e.code() == errc::unknown) {
                f_.say(e.code(), "--length: no blade, comb or length; found \"" + text +
                                     "\"; write it like '16 mm', '7F', 'body 7F, legs 16 mm'");
            } else {
                f_.say(e.code(), "--length: " + std::string(e.what()));
            }
        }
        return false;
    }

    const workplace& w_;
    faults& f_;
    part_index parts_;
};

/// The sheet leaves the whole dog about alike, so that a bare length or blade takes the place of all of it;
/// 1 mm, our own choice, is what a blade more or less may leave beside another.
bool about_one_length(const style& s) {
    std::optional<length> least;
    std::optional<length> most;
    for (const sheet_rule& r : s.rules) {
        if (r.what.target) {
            least = least ? shorter(*least, *r.what.target) : *r.what.target;
            most = most ? longer(*most, *r.what.target) : *r.what.target;
        }
    }
    return least && *most - *least <= mm(1.0);
}

}  // namespace

void apply_lengths(const std::string& text, const workplace& w, dog& d, faults& f) {
    if (text.empty()) {
        return;
    }
    if (d.style.empty()) {
        d.style = "one-length";
    }
    const style* sheet = find(w.styles, d.style);
    wish_reader reader(w, f);
    for (const std::string& one : split(text, ',')) {
        const auto said = reader.read(std::string(detail::trimmed(one)));
        if (!said) {
            continue;
        }
        const bool bare = said->whom.empty();
        const bool replaced = sheet != nullptr && (sheet->adjustable || about_one_length(*sheet));
        if (bare && said->what.target && sheet != nullptr && sheet->adjustable) {
            d.body_length = said->what.target;
        } else if (bare && sheet != nullptr && !replaced) {
            f.say(errc::conflict, "--length: the sheet \"" + d.style +
                                      "\" has no length of its own to replace; found \"" + text +
                                      "\"; say where: 'all " + text + "', 'body " + text +
                                      "', or write another --style, such as one-length");
        } else {
            d.departures.push_back({bare ? "all" : said->whom, said->what});
        }
    }
}

}  // namespace pelage::cli
