#include "answers/words/learned.hpp"

#include <array>
#include <cmath>

#include <pelage/base/length_text.hpp>

#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

// rates nearer than this are printed as the same
constexpr double told_alike = 0.03;

std::string count_of(std::size_t n) {
    constexpr std::array<std::string_view, 10> words{"No",   "One", "Two",   "Three", "Four",
                                                     "Five", "Six", "Seven", "Eight", "Nine"};
    return n < words.size() ? std::string(words[n]) : std::to_string(n);
}

/// A rate in mm a day as it is printed: by the day, or in inches by the month, the twelfth of a year.
std::string rate_number(double rate, length_unit u, int digits = 2) {
    constexpr double days_a_month = 365.25 / 12.0;
    return detail::fixed(u == length_unit::mm ? rate : rate * days_a_month / in_mm(inch(1)),
                         digits);
}

std::string per_day(double log_rate, length_unit u) {
    return rate_number(std::exp(log_rate), u);
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

std::string compared(double own, double usual, length_unit u) {
    const double ratio = std::exp(own - usual);
    if (std::abs(ratio - 1.0) <= told_alike) {
        return "about the " + per_day(usual, u) + " of its coat";
    }
    return std::string(ratio > 1.0 ? "faster" : "slower") + " than " + per_day(usual, u) +
           " for its coat";
}

std::string counted_words(std::size_t n, const char* one, const char* many) {
    return count_of(n) + " " + (n == 1 ? one : many);
}

/// "Three measurements and 2 visits that looked for mats (none in 2)".
std::string what_counts(const learned_rate& l) {
    std::string s;
    if (!l.counted.empty()) {
        s = counted_words(l.counted.size(), "measurement", "measurements");
    }
    if (!l.checks.empty()) {
        const auto matted = std::count_if(l.checks.begin(), l.checks.end(),
                                          [](const counted_check& k) { return k.matted; });
        const std::string visits = counted_words(l.checks.size(), "visit that looked for mats",
                                                 "visits that looked for mats");
        s += (s.empty() ? "" : " and ") + visits;
        s += matted == 0 ? " and found none" : ", " + std::to_string(matted) + " with mats";
    }
    return s;
}

/// Where the dog mats, by what its visits say: "mats from about 42 mm, 8 in 10 such dogs from 33 to 52".
std::string mats_from(const learned_rate& l, const plan_request& r, length_unit u) {
    const figure<length>* prone =
        prone_of(coat_of(r.reference, r.patient.coat.value()), r.rules.matting);
    if (l.cases.empty() || prone == nullptr) {
        return {};
    }
    const auto at = [&](chance p) {
        double sum = 0.0;
        for (const factor_case& f : l.cases) {
            sum += f.weight;
            if (sum >= p) {
                return show(prone->best * f.factor, u);
            }
        }
        return show(prone->best * l.cases.back().factor, u);
    };
    return ", mats from about " + at(0.5) + " (" + at(0.1) + " to " + at(0.9) + " in 8 of 10)";
}

/// Why a dog that grows faster is back later, where nothing was learned of when it mats.
std::string surer(const forecast& f) {
    const learned_rate& l = f.learned;
    const bool faster = std::exp(l.dog.log_median - l.usual.log_median) > 1.0 + told_alike;
    const bool later = std::lround(in_days(f.when.next_visit - f.by_coat->next_visit)) > 0;
    return faster && later && l.next.log_sd < l.usual.log_sd && l.cases.empty()
               ? ", though it grows faster: its rate is known closer than its coat's"
               : "";
}

std::string sentence(const forecast& f, const plan_request& r, length_unit u) {
    const learned_rate& l = f.learned;
    return what_counts(l) + ": this dog grows " + rate_words(std::exp(l.dog.log_median), u) + ", " +
           compared(l.dog.log_median, l.usual.log_median, u) + mats_from(l, r, u) + "; " +
           moved(f.when.next_visit - f.by_coat->next_visit, "back") + surer(f) +
           "; the coat's usual rate still weighs " + share_in_words(l.coat_weight) + ".";
}

}  // namespace

void say_learned(document& d, const forecast& f, const plan_request& r, length_unit u) {
    if (f.learned.own()) {
        d.say(sentence(f, r, u), 2);
    }
    constexpr std::size_t most = 5;
    const auto& no = f.learned.left_out;
    for (std::size_t i = 0; i < no.size() && i < most; ++i) {
        const measurement& m = r.patient.measured[no[i].which];
        d.say("Measurement left out: " + m.whom + ", " + in_words(m.on) + ": " +
                  left_out_words(no[i], r) + ".",
              2);
    }
    if (no.size() > most) {
        d.say("And " + std::to_string(no.size() - most) + " more left out; --format json has all.");
    }
}

std::string learned_in_figures(const learned_rate& l, length_unit u) {
    const auto at = [&](chance p) {
        return rate_number(in_mm_per_day(rate_quantile(l.dog, p)), u);
    };
    return rate_per(std::exp(l.dog.log_median), u) + ", log SD " + detail::fixed(l.dog.log_sd, 2) +
           ", " + at(0.1) + " to " + at(0.9) +
           " in 8 of 10 such dogs, measured by you; from visit to visit log SD " +
           detail::fixed(l.next.log_sd, 2) + "; the coat's usual rate weighs " +
           detail::fixed(100.0 * l.coat_weight, 0) + " %";
}

std::string rate_words(double rate, length_unit u, int digits) {
    return rate_number(rate, u, digits) + (u == length_unit::mm ? " mm a day" : " in a month");
}

std::string rate_per(double rate, length_unit u) {
    return rate_number(rate, u) + (u == length_unit::mm ? " mm/day" : " in/month");
}

std::string left_out_words(const left_out_measurement& m, const plan_request& r) {
    const std::string coat = coat_of(r.reference, r.patient.coat.value()).title;
    const std::string after = std::to_string(std::lround(in_days(m.after)));
    switch (m.why) {
        case left_out_because::coat_rests:
            return "most hairs of a " + coat +
                   " rest, and its length doesn't tell how fast one grows";
        case left_out_because::not_combed_dry:
            return "measured as it lies, and waves and curls read short";
        case left_out_because::after_today:
            return "dated after today";
        case left_out_because::cut_unalike:
            return "the places it names were not cut alike; measure one zone";
        case left_out_because::no_cut:
            return "no cut before it is on record";
        case left_out_because::cut_unsaid:
            return "the visit of " + in_words(r.patient.visits[m.cut].on) +
                   " doesn't say what length it left there";
        case left_out_because::full_length:
            return "as long as a " + coat + " is taken to grow";
        case left_out_because::newer_are_enough:
            return "older than the newest " + std::to_string(most_counted) + ", which are enough";
        case left_out_because::too_short:
            return "too short for " + after +
                   " days after that cut: trimmed in between, or not stretched?";
        case left_out_because::too_long:
            return "too long for " + after +
                   " days after that cut: are the cut's length and day right?";
    }
    return {};
}

std::string against(double rate, double usual, length_unit u) {
    const double percent = 100.0 * (rate / usual - 1.0);
    const std::string usually = rate_words(usual, u);
    if (std::abs(percent) < 100.0 * told_alike) {
        return "about the " + usually;
    }
    return detail::fixed(std::abs(percent), 0) + " % " + (percent > 0.0 ? "faster" : "slower") +
           " than the " + usually;
}

}  // namespace pelage::io
