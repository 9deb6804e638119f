#include "learned_words.hpp"

#include <array>
#include <cmath>

#include <pelage/text.hpp>

#include "layout.hpp"
#include "when_words.hpp"

namespace pelage::io {

namespace {

// rates nearer than this are printed as the same
constexpr double alike = 0.03;

std::string count_of(std::size_t n) {
    constexpr std::array<std::string_view, 10> words{"No",   "One", "Two",   "Three", "Four",
                                                     "Five", "Six", "Seven", "Eight", "Nine"};
    return n < words.size() ? std::string(words[n]) : std::to_string(n);
}

std::string per_day(double log_rate) {
    return detail::fixed(std::exp(log_rate), 2);
}

/// A share as people say it: the nearest of a few.
std::string share_in_words(double share) {
    struct step {
        double share;
        std::string_view words;
    };
    constexpr std::array<step, 9> steps{{{0.95, "nearly everything"},
                                         {0.8, "four fifths"},
                                         {2.0 / 3.0, "two thirds"},
                                         {0.5, "half"},
                                         {1.0 / 3.0, "a third"},
                                         {0.25, "a quarter"},
                                         {0.2, "a fifth"},
                                         {0.1, "a tenth"},
                                         {0.0, "next to nothing"}}};
    const step* best = steps.data();
    for (const step& s : steps) {
        best = std::abs(s.share - share) < std::abs(best->share - share) ? &s : best;
    }
    return std::string(best->words);
}

std::string moved(const days& by, const std::string& what) {
    const long n = std::lround(in_days(by));
    if (n == 0) {
        return what + " on the same day";
    }
    return what + " " + std::to_string(std::abs(n)) + (std::abs(n) == 1 ? " day " : " days ") +
           (n < 0 ? "sooner" : "later");
}

std::string compared(double own, double usual) {
    const double ratio = std::exp(own - usual);
    if (std::abs(ratio - 1.0) <= alike) {
        return "about the " + per_day(usual) + " of its coat";
    }
    return std::string(ratio > 1.0 ? "faster" : "slower") + " than " + per_day(usual) +
           " for its coat";
}

std::string sentence(const forecast& f) {
    const learned_rate& l = f.learned;
    std::string s = count_of(l.counted.size()) +
                    (l.counted.size() == 1 ? " measurement" : " measurements") +
                    ": this dog grows " + per_day(l.dog.log_median) + " mm a day, " +
                    compared(l.dog.log_median, l.usual.log_median) + "; " +
                    moved(f.when.in - f.by_coat->in, "back");
    if (f.when.why == visit_kind::brush_out) {
        s += ", " + moved(f.when.full_groom - f.by_coat->full_groom, "full groom");
    }
    return s + "; the coat's usual rate still weighs " + share_in_words(l.coat_weight) + ".";
}

}  // namespace

std::string learned_text(const forecast& f, const groom_request& r, const print_options& o) {
    std::string out;
    if (!f.learned.counted.empty()) {
        out += wrapped("", sentence(f), 2, o.width);
    }
    constexpr std::size_t most = 5;
    const auto& no = f.learned.left_out;
    for (std::size_t i = 0; i < no.size() && i < most; ++i) {
        const measurement& m = r.patient.measured[no[i].which];
        out += wrapped(
            "", "Measurement left out: " + m.whom + ", " + in_words(m.on) + ": " + no[i].why + ".",
            2, o.width);
    }
    if (no.size() > most) {
        out +=
            "And " + std::to_string(no.size() - most) + " more left out; --format json has all.\n";
    }
    return out;
}

std::string learned_in_figures(const learned_rate& l) {
    const auto at = [&](chance p) { return in_mm_per_day(rate_quantile(l.dog, p)); };
    return per_day(l.dog.log_median) + " mm/day, log SD " + detail::fixed(l.dog.log_sd, 2) + ", " +
           detail::fixed(at(0.1), 2) + " to " + detail::fixed(at(0.9), 2) +
           " in 8 of 10 such dogs, measured by you; from visit to visit log SD " +
           detail::fixed(l.next.log_sd, 2) + "; the coat's usual rate weighs " +
           detail::fixed(100.0 * l.coat_weight, 0) + " %";
}

std::string against(double rate, double usual) {
    const double percent = 100.0 * (rate / usual - 1.0);
    const std::string usually = detail::fixed(usual, 2) + " mm a day";
    if (std::abs(percent) < 100.0 * alike) {
        return "about the " + usually;
    }
    return detail::fixed(std::abs(percent), 0) + " % " + (percent > 0.0 ? "faster" : "slower") +
           " than the " + usually;
}

}  // namespace pelage::io
