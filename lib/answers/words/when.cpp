#include "answers/words/when.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/base/length_text.hpp>
#include <pelage/trade/upkeep.hpp>

namespace pelage::io {

std::string odds(chance p) {
    const double tenths = p * 10.0;
    if (std::abs(p - 0.5) < 1e-9) {
        return "1 in 2";
    }
    if (std::abs(tenths - std::round(tenths)) < 1e-9) {
        return detail::fixed(tenths, 0) + " in 10";
    }
    return detail::fixed(p * 100.0, 0) + " in 100";
}

std::string on_day(const days& d, const print_options& o) {
    if (is_never(d)) {
        return "never";
    }
    const std::string plain = "day " + detail::fixed(std::floor(in_days(d)), 0);
    return o.today ? in_words(plus(*o.today, d)) + " (" + plain + ")" : plain;
}

std::string basis_words(const evidence& e) {
    std::string s{in_words(e.how)};
    s += e.from.empty() ? "" : ": " + e.from;
    s += e.relayed ? ", seen second-hand" : "";
    s += e.note.empty() ? "" : " (" + e.note + ")";
    return s;
}

std::string when_in_words(const back& b, const plan_request& r, const print_options& o) {
    const coat& c = coat_of(r.reference, *r.patient.coat);
    // what nobody told is said once, with the date that hangs on it
    const std::string assumed = r.patient.brushing_said
                                    ? std::string{}
                                    : " if " + title(r.patient.brushed) +
                                          (r.patient.upkeep_assumed ? ", as the sheet assumes"
                                                                    : " (nothing is said of it)");
    const std::string brushing = r.patient.brushing_said ? title(r.patient.brushed) : "";
    const std::string who = brushing.empty() ? " such dogs" : " such dogs, " + brushing + ",";
    // short of the usual interval only a coat that mats, too, among those it may have, sets a date
    if (!mats_by_length(c) && b.why == visit_kind::usual) {
        return "Back by " + on_day(b.in, o) + ", the usual interval of a " + c.title +
               ". Its length sets no date" +
               (double_coated(c.id) ? ", but loose undercoat packs where it isn't combed out."
                                    : ".");
    }
    std::string s = "Back by " + on_day(b.in, o) + assumed + ". ";
    if (b.why == visit_kind::usual) {
        s += "That is the usual interval of this coat; " + odds(b.asked) +
             " such dogs don't reach their matting-prone length before.";
        return s + (brushing.empty() ? "" : " (" + brushing + ")");
    }
    const std::string fine = odds(b.asked) + who + " are fine until then";
    const std::string holder = counted(r.patient.brushed) == habit::none
                                   ? "today's combing out, if it reached the skin,"
                                   : "brushing";
    // a full groom within the week after makes two visits of one
    if (b.why == visit_kind::brush_out && b.full_groom <= b.in + day(7.0)) {
        s += "What is kept long is held by " + holder + " until then. " + odds(b.asked) + who +
             " need no full groom before ";
        return s + (b.full_groom > b.in ? on_day(b.full_groom, o) + ": one visit does both."
                                        : "that day either: one visit does both.");
    }
    if (b.why == visit_kind::brush_out) {
        s += "What is kept long is held by " + holder +
             " until then; then a bath and a brush to the skin are due, and again as often. Full "
             "groom by " +
             on_day(b.full_groom, o) + ", for " + odds(b.asked) + " such dogs" +
             (brushing.empty() ? "." : ", " + brushing + ".");
        return s;
    }
    s += fine;
    if (b.even_odds > b.in) {
        // nobody is asked to wait longer than is usual: the chance is higher still on that day
        const days usual = r.sheet.longest_interval
                               ? std::min(c.usual_interval.best, *r.sheet.longest_interval)
                               : c.usual_interval.best;
        const bool at_end = std::floor(in_days(b.even_odds)) >= std::floor(in_days(usual));
        s += std::string(at_end ? "; at least 1 in 2 until " : "; 1 in 2 until ") +
             on_day(b.even_odds, o) + (at_end ? ", the usual interval of this coat" : "");
    }
    return s + ".";
}

}  // namespace pelage::io
