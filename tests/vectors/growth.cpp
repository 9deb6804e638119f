// Distributions and growth.
#include <pelage/base/stats.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/model/growth.hpp>

#include "quantities.hpp"

namespace chk {

namespace {

pelage::rate_law law(givens& g) {
    return {std::log(pelage::in_mm_per_day(g.rate("median"))),
            pelage::log_sd_from_cv(g.number("cv"))};
}

pelage::resting_coat resting(givens& g) {
    return {g.number("share"), g.days("reentry"), g.length("terminal")};
}

answers normal_quantile(givens& g) {
    return {{"z", plain(pelage::normal_quantile(g.number("p")))}};
}

answers log_sd(givens& g) {
    return {{"log-sd", plain(pelage::log_sd_from_cv(g.number("cv")))}};
}

answers time_quantile(givens& g) {
    return {{"days", in(pelage::reach_quantile(g.length("from"), g.length("to"),
                                               g.length("terminal"), law(g), g.number("p")))}};
}

answers reached_by(givens& g) {
    return {{"chance", plain(pelage::reached_by(g.length("from"), g.length("to"),
                                                g.length("terminal"), law(g), g.days("day")))}};
}

answers growing_time(givens& g) {
    return {{"days", in(pelage::days_to_length(g.length("from"), g.length("to"),
                                               g.length("terminal"), g.rate("rate")))}};
}

answers resting_mean(givens& g) {
    return {{"length", in(pelage::resting_mean(resting(g), g.rate("rate"), g.days("day")))}};
}

answers resting_time(givens& g) {
    return {{"days", in(pelage::resting_days_to(resting(g), g.rate("rate"), g.length("to")))}};
}

/// A resting coat of the reference clipped to the skin, at its median rate: days until the mean is
/// `regrown` of its terminal length again.
answers regrown_after_clip(givens& g) {
    const pelage::coat& c = pelage::coat_of(pelage::io::reference(), g.coat());
    if (!c.reentry) {
        throw bad_case("not a resting coat");
    }
    const pelage::resting_coat r{c.growing_share.best, c.reentry->best, c.terminal.best};
    return {{"days",
             in(pelage::resting_days_to(r, c.rate.median, c.terminal.best * g.number("regrown")))}};
}

}  // namespace

void add_growth(std::map<std::string, quantity>& to) {
    to["normal-quantile"] = normal_quantile;
    to["log-sd"] = log_sd;
    to["time-quantile"] = time_quantile;
    to["reached-by"] = reached_by;
    to["growing-time"] = growing_time;
    to["resting-mean"] = resting_mean;
    to["resting-time"] = resting_time;
    to["calibration-regrown"] = regrown_after_clip;
}

}  // namespace chk
