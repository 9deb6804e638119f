// What a salon's measured dogs say of its coats
// as lines for its salon.toml.
#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/layout.hpp"
#include "answers/words/learned.hpp"
#include "answers/words/when.hpp"
#include "data/faults.hpp"

namespace pelage::io {

namespace {

std::string counted(std::size_t n, const std::string& what) {
    return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
}

std::string comment(const std::string& text, std::size_t width) {
    std::string out;
    std::string line;
    for (const char c : wrapped("", text, 0, width - 2)) {
        line += c;
        if (c == '\n') {
            out += "# " + line;
            line.clear();
        }
    }
    return out;
}

std::string basis_line(const population_rate& l) {
    return counted(l.dogs, "dog") + ", " + counted(l.measurements, "measurement") + " that count" +
           (l.measurements == 1 ? "s" : "") +
           (l.left_out > 0 ? ", " + std::to_string(l.left_out) + " left out" : "");
}

std::string too_few(const population_rate& l, const growth_rules& g) {
    return std::string(name(l.coat)) +
           ": too few dogs for a rate of the salon's own: " + basis_line(l) + "; " +
           detail::fixed(g.herd.best, 0) + " dogs are needed.";
}

std::string found(const population_rate& l, length_unit u) {
    const double rate = std::exp(l.fit->law.log_median);
    const double usual = in_mm_per_day(l.before.median);
    const double off = std::log(rate / usual) / l.fit->median_error;
    std::string s = std::string(name(l.coat)) + ": " + basis_line(l) + ". " +
                    rate_words(rate, u, 3) + " is " + against(rate, usual, u) +
                    " of the reference, " + detail::fixed(std::abs(off), 1) +
                    " of its standard errors off. The dogs differ by log SD " +
                    detail::fixed(l.fit->fitted_log_sd, 2) + ", in the reference " +
                    detail::fixed(l.before.log_sd, 2);
    s += l.fit->law.log_sd > l.fit->fitted_log_sd
             ? "; drawn toward the reference's: " + detail::fixed(l.fit->law.log_sd, 2) + "."
             : ".";
    if (l.own) {
        s += " The salon has " + rate_words(in_mm_per_day(l.own->median), u) +
             " of its own in place already.";
    }
    return s;
}

/// As a salon's file has it, whose rates are in mm/day whatever is printed.
std::string override_text(const population_rate& l, length_unit u) {
    const double rate = std::exp(l.fit->law.log_median);
    return "[override.coats." + std::string(name(l.coat)) + ".rate]\nmedian = \"" +
           detail::fixed(rate, 3) + " mm/day\"\nlog_sd = " + detail::fixed(l.fit->law.log_sd, 3) +
           "\nbasis = \"measured\"\nnote = \"" + counted(l.dogs, "dog") + ", " +
           against(rate, in_mm_per_day(l.before.median), u) + " of the reference\"\n";
}

}  // namespace

document proposal(const std::vector<population_rate>& lessons, const growth_rules& g,
                  const std::string& from, const print_options& o) {
    std::string out = comment("Growth rates from the measured dogs of " + escaped(from, 400) +
                                  ". Nothing was changed: copy what you agree with into its "
                                  "salon.toml.",
                              o.width);
    if (lessons.empty()) {
        out += comment("No dog with a coat and a measurement was found.", o.width);
    }
    for (const population_rate& l : lessons) {
        out += "\n" + comment(l.fit ? found(l, o.units) : too_few(l, g), o.width);
        out += l.fit ? override_text(l, o.units) : "";
    }
    document d{"Growth rates from the measured dogs"};
    d.copy(out);
    return d;
}

}  // namespace pelage::io
