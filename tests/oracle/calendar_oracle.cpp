// The cheapest calendar against every calendar there is, tried day by day, and against a shortest path
// through every state of a dog by GLPK; the chance of a whole calendar against simulated dogs and GSL.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <glpk.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_randist.h>

#include <pelage/forecast/calendar.hpp>
#include <pelage/solver/visit_schedule.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"

using namespace pelage;

namespace {

constexpr std::array all_work{visit_work::tidy, visit_work::bath, visit_work::bath_and_tidy,
                              visit_work::full_groom};

std::int64_t price(const schedule_problem& p, visit_work w) {
    return in_mmin(p.costs[static_cast<std::size_t>(w)]);
}

bool open(const schedule_problem& p, int on) {
    return p.open[static_cast<std::size_t>(on)];
}

/// Lives through the calendar a day at a time and tries everything on each.
class every_calendar {
  public:
    explicit every_calendar(const schedule_problem& p) : p_(p) {}

    std::optional<std::vector<booking>> best() {
        full_ = -p_.full_ago;
        brush_ = -p_.brush_ago;
        tidy_ = -p_.tidy_ago;
        const int visited = std::max(full_, std::max(brush_, tidy_));
        // the day nobody can come before
        grace_ = p_.last + 1;
        for (int n = p_.last; n >= 0; --n) {
            grace_ = open(p_, n) && n >= visited + p_.gap ? n : grace_;
        }
        live(visited < 0 ? 0 : 1, visited, 0);
        return best_;
    }

  private:
    [[nodiscard]] bool ran_out(int today) const {
        const bool first = full_ == -p_.full_ago;
        if (first && p_.full_ago > 0 && today <= grace_) {
            return false;
        }
        const visit_clocks& c = first ? p_.first : p_.later;
        return today - full_ > c.full ||
               (c.brush && today - brush_ > *c.brush && today - full_ > c.length) ||
               (c.tidy && today - tidy_ > *c.tidy);
    }
    [[nodiscard]] bool stale(int today) const {
        return std::any_of(p_.fresh.begin(), p_.fresh.end(), [&](const fresh_by& f) {
            return f.on == today && today - full_ > f.within;
        });
    }
    /// Whether `visits` is better than the best: cheaper, or at the first difference the later day, or
    /// there the earlier kind.
    [[nodiscard]] bool better(std::int64_t cost) const {
        if (!best_ || cost != cost_) {
            return !best_ || cost < cost_;
        }
        for (std::size_t i = 0; i < std::min(visits_.size(), best_->size()); ++i) {
            const booking& mine = visits_[i];
            const booking& other = (*best_)[i];
            if (!(mine == other)) {
                return mine.on != other.on ? mine.on > other.on : mine.what < other.what;
            }
        }
        return false;
    }

    void live(int today, int visited, std::int64_t cost) {
        if ((best_ && cost > cost_) || ran_out(today) || stale(today)) {
            return;
        }
        if (today == p_.last) {
            if (better(cost)) {
                best_ = visits_;
                cost_ = cost;
            }
            return;
        }
        live(today + 1, visited, cost);
        if (!open(p_, today) || today - visited < p_.gap) {
            return;
        }
        for (const visit_work w : all_work) {
            const int full = full_;
            const int brush = brush_;
            const int tidy = tidy_;
            full_ = w == visit_work::full_groom ? today : full_;
            brush_ = brushes(w) ? today : brush_;
            tidy_ = tidies(w) ? today : tidy_;
            visits_.push_back({today, w});
            live(today + 1, today, cost + price(p_, w));
            visits_.pop_back();
            full_ = full;
            brush_ = brush;
            tidy_ = tidy;
        }
    }

    const schedule_problem& p_;
    int full_ = 0;
    int brush_ = 0;
    int tidy_ = 0;
    int grace_ = 0;
    std::vector<booking> visits_;
    std::optional<std::vector<booking>> best_;
    std::int64_t cost_ = 0;
};

visit_clocks any_clocks(oracle::draws& d, int longest) {
    visit_clocks c;
    c.full = d.whole(2, longest);
    if (d.whole(0, 1) == 0) {
        c.brush = d.whole(2, longest);
        c.length = d.whole(0, 1) == 0 ? 0 : d.whole(1, c.full);
    }
    if (d.whole(0, 2) > 0) {
        c.tidy = d.whole(2, longest);
    }
    return c;
}

void close_days(oracle::draws& d, schedule_problem& p) {
    p.open.assign(static_cast<std::size_t>(p.last) + 1, true);
    const int rest = d.whole(0, 7);  // 7: no day of rest
    const int away = d.whole(0, p.last);
    const int away_for = d.whole(0, 2) == 0 ? d.whole(1, 6) : 0;
    for (int n = 0; n <= p.last; ++n) {
        if (n % 7 == rest || (n >= away && n < away + away_for)) {
            p.open[static_cast<std::size_t>(n)] = false;
        }
    }
}

/// Few prices, so that equals abound.
schedule_problem any_problem(oracle::draws& d, int last, int longest) {
    schedule_problem p;
    p.last = last;
    close_days(d, p);
    p.gap = d.whole(1, 4);
    const int tidy = d.whole(1, 6);
    const int bath = d.whole(1, 6);
    const int both = std::max(tidy, bath) + d.whole(0, 3);
    p.costs = {mmin(tidy), mmin(bath), mmin(both), mmin(d.whole(1, 9))};
    p.first = any_clocks(d, longest);
    p.later = d.whole(0, 1) == 0 ? p.first : any_clocks(d, longest);
    if (d.whole(0, 1) == 0) {
        p.full_ago = d.whole(1, 2 * longest);
        p.brush_ago = d.whole(1, p.full_ago);
        p.tidy_ago = d.whole(1, p.full_ago);
    }
    if (d.whole(0, 2) == 0) {
        const fresh_by f{d.whole(1, last), d.whole(1, 5)};
        p.fresh.push_back(f);
        p.open[static_cast<std::size_t>(f.on)] = false;
    }
    return p;
}

std::string shown(const schedule_problem& p) {
    const auto clocks = [](const visit_clocks& c) {
        return std::to_string(c.full) + "/" + std::to_string(c.brush.value_or(0)) + "/" +
               std::to_string(c.tidy.value_or(0)) + "/" + std::to_string(c.length);
    };
    std::string s = "days " + std::to_string(p.last) + ", gap " + std::to_string(p.gap) +
                    ", clocks " + clocks(p.first) + " then " + clocks(p.later) + ", ago " +
                    std::to_string(p.full_ago) + "/" + std::to_string(p.brush_ago) + "/" +
                    std::to_string(p.tidy_ago) + ", costs";
    for (const work& w : p.costs) {
        s += " " + std::to_string(in_mmin(w));
    }
    s += ", open ";
    for (const bool o : p.open) {
        s += o ? "o" : ".";
    }
    for (const fresh_by& f : p.fresh) {
        s += ", fresh on " + std::to_string(f.on) + " within " + std::to_string(f.within);
    }
    return s;
}

std::string shown(const std::optional<std::vector<booking>>& visits) {
    std::string s = visits ? "" : "none";
    for (const booking& b : visits.value_or(std::vector<booking>{})) {
        s += std::to_string(b.on) + " " + std::string(name(b.what)) + "; ";
    }
    return s;
}

void check_against_every_calendar(unsigned seed, int problems, int last) {
    oracle::draws d(seed);
    int possible = 0;
    for (int i = 0; i < problems; ++i) {
        const schedule_problem p = any_problem(d, last, 9);
        const auto best = every_calendar(p).best();
        const auto ours = cheapest(p);
        INFO(shown(p));
        INFO("best: " << shown(best));
        INFO("ours: " << shown(ours));
        REQUIRE((ours == best));
        possible += best ? 1 : 0;
    }
    // of both kinds there are many
    CHECK(possible > problems / 5);
    CHECK(possible < problems * 9 / 10);
}

/// The same as a network: a job for every state the dog can be in on an open day, and one for every
/// thing that can be done there. A job lasts `a day` for each day to the next open one, less what is
/// done: so the longest way to the last day is the cheapest, and GLPK finds it as a critical path.
class network {
  public:
    explicit network(const schedule_problem& p)
        : p_(p), graph_(glp_create_graph(sizeof(double), 0), glp_delete_graph) {
        end_ = job(0.0);
        const state today{0, 0, 0, 0};
        job_of(today);
        while (!to_do_.empty()) {
            const state s = to_do_.back();
            to_do_.pop_back();
            leave(s);
        }
    }

    /// The least cost; nothing if no way leads to the last day.
    std::optional<std::int64_t> least() {
        const double longest = glp_cpp(graph_.get(), 0, -1, -1);
        const double cost = a_day * p_.last - longest;
        return cost < a_day ? std::optional{std::llround(cost)} : std::nullopt;
    }
    [[nodiscard]] int jobs() const { return graph_->nv; }

  private:
    /// More than all visits of a year cost.
    static constexpr double a_day = 1e9;
    /// An open day, and the days of the last full groom, brush and tidy before it.
    using state = std::array<int, 4>;

    int job(double lasts) {
        const int j = glp_add_vertices(graph_.get(), 1);
        *static_cast<double*>(graph_->v[j]->data) = lasts;
        return j;
    }
    int job_of(const state& s) {
        const auto [at, fresh] = jobs_.try_emplace(s, 0);
        if (fresh) {
            at->second = job(0.0);
            to_do_.push_back(s);
        }
        return at->second;
    }
    /// What comes after an open day, from which the dog goes with these last visits.
    void join(int from, const state& last, std::int64_t cost) {
        const int today = last[0];
        int next = today + 1;
        while (next < p_.last && !open(p_, next)) {
            ++next;
        }
        for (int t = today + 1; t <= next; ++t) {
            if (!fine(t, last)) {
                return;
            }
        }
        const int done = job(a_day * (next - today) - static_cast<double>(cost));
        glp_add_arc(graph_.get(), from, done);
        glp_add_arc(graph_.get(), done,
                    next == p_.last ? end_ : job_of({next, last[1], last[2], last[3]}));
    }
    [[nodiscard]] bool fine(int t, const state& last) const {
        const visit_clocks& c = last[1] == 0 ? p_.first : p_.later;
        const bool fresh = std::none_of(p_.fresh.begin(), p_.fresh.end(), [&](const fresh_by& f) {
            return f.on == t && t - last[1] > f.within;
        });
        return fresh && t - last[1] <= c.full &&
               (!c.brush || t - last[2] <= *c.brush || t - last[1] <= c.length) &&
               (!c.tidy || t - last[3] <= *c.tidy);
    }
    void leave(const state& s) {
        const int from = jobs_.at(s);
        const int today = s[0];
        join(from, s, 0);
        if (today == 0 || today - std::max(s[1], std::max(s[2], s[3])) < p_.gap) {
            return;
        }
        for (const visit_work w : all_work) {
            state then = s;
            then[1] = w == visit_work::full_groom ? today : s[1];
            then[2] = brushes(w) ? today : s[2];
            then[3] = tidies(w) ? today : s[3];
            join(from, then, price(p_, w));
        }
    }

    const schedule_problem& p_;
    std::unique_ptr<glp_graph, void (*)(glp_graph*)> graph_;
    int end_ = 0;
    std::map<state, int> jobs_;
    std::vector<state> to_do_;
};

/// A dog of a real salon over real weeks: clocks as the reference has them, a week between visits.
schedule_problem real_problem(oracle::draws& d, int weeks) {
    schedule_problem p;
    p.last = 7 * weeks;
    // two or three days of the week: a state for every day of the year would be millions
    const std::array<int, 3> days{d.whole(0, 6), d.whole(0, 6), d.whole(0, 6)};
    for (int n = 0; n <= p.last; ++n) {
        p.open.push_back(std::find(days.begin(), days.end(), n % 7) != days.end());
    }
    p.gap = 7;
    const double tidy = d.between(15.0, 50.0);
    const double bath = d.between(40.0, 80.0);
    p.costs = {minutes(tidy), minutes(bath), minutes(d.between(std::max(tidy, bath), tidy + bath)),
               minutes(d.between(60.0, 180.0))};
    p.later.full = d.whole(17, 84);
    if (d.whole(0, 2) > 0) {
        p.later.brush = d.whole(14, 28);
        p.later.length = d.whole(0, 1) == 0 ? 0 : d.whole(1, p.later.full);
    }
    if (d.whole(0, 3) > 0) {
        p.later.tidy = d.whole(21, 35);
    }
    p.first = p.later;
    p.first.full = d.whole(14, 84);
    if (d.whole(0, 1) == 0) {
        const fresh_by f{d.whole(20, p.last), d.whole(2, 7)};
        p.fresh.push_back(f);
        p.open[static_cast<std::size_t>(f.on)] = false;
    }
    return p;
}

void check_against_network(unsigned seed, int problems) {
    oracle::draws d(seed);
    int possible = 0;
    for (int i = 0; i < problems; ++i) {
        const schedule_problem p = real_problem(d, d.whole(0, 1) == 0 ? 26 : 52);
        const auto ours = cheapest(p);
        network all(p);
        const auto least = all.least();
        INFO(shown(p));
        INFO("ours: " << shown(ours));
        INFO(all.jobs() << " jobs");
        REQUIRE(ours.has_value() == least.has_value());
        if (ours) {
            CHECK(in_mmin(cost_of(p, *ours)) == *least);
        }
        possible += ours ? 1 : 0;
    }
    CHECK(possible > problems / 2);
}

}  // namespace

TEST_CASE("the cheapest calendar is the best of all there are, equals included",
          "[oracle][calendar]") {
    check_against_every_calendar(31, 1500, 16);
}

TEST_CASE("the cheapest calendar is the best of all there are: more of them",
          "[oracle][calendar][.full]") {
    check_against_every_calendar(32, 20000, 16);
    check_against_every_calendar(33, 300, 24);
}

TEST_CASE("half a year and a whole one cost what a shortest path by GLPK does",
          "[oracle][calendar]") {
    check_against_network(34, 20);
}

TEST_CASE("half a year and a whole one cost what a shortest path by GLPK does: more of them",
          "[oracle][calendar][.full]") {
    check_against_network(35, 300);
}

namespace {

/// The share of simulated dogs that are fine to the end of every interval. A dog has one rate and one
/// factor on all its matting-prone lengths; each groom has its own start error and swing of the rate.
double fine_throughout(const std::vector<kept_interval>& intervals, const shared_law& law,
                       double visit_log_sd, int dogs, unsigned seed) {
    oracle::draws d(seed);
    const double own = std::sqrt(law.rate.log_sd * law.rate.log_sd - visit_log_sd * visit_log_sd);
    int fine = 0;
    for (int i = 0; i < dogs; ++i) {
        const double rate = law.rate.log_median + own * d.normal();
        const double factor = std::exp(law.threshold_log_sd * d.normal());
        bool all = true;
        for (const kept_interval& k : intervals) {
            const double grown = std::exp(rate + visit_log_sd * d.normal()) * in_days(k.t);
            const double error = in_mm(law.start_error) * d.normal();
            for (const kept_zone& z : k.zones) {
                const double start = std::max(0.0, in_mm(z.start) + error);
                const double end = std::min(start + grown, std::max(start, in_mm(z.terminal)));
                const bool counts = z.threshold && k.t > z.clock;
                all = all && (!counts || end < in_mm(*z.threshold) * factor);
            }
        }
        fine += all ? 1 : 0;
    }
    return static_cast<double>(fine) / dogs;
}

void check_throughout(unsigned seed, int problems, int dogs) {
    oracle::draws d(seed);
    for (int i = 0; i < problems; ++i) {
        std::vector<kept_zone> zones;
        const double mats = d.between(25.0, 50.0);
        for (int n = d.whole(1, 4); n > 0; --n) {
            zones.push_back({mm(d.between(2.0, 0.8 * mats)), mm(mats * d.between(0.8, 1.1)),
                             mm(d.between(40.0, 200.0)), day(d.whole(0, 28))});
        }
        std::vector<kept_interval> intervals;
        const int often = d.whole(14, 56);
        for (int n = d.whole(1, 12); n > 0; --n) {
            intervals.push_back({zones, day(d.whole(0, 3) == 0 ? d.whole(10, 56) : often)});
        }
        const shared_law law{{std::log(d.between(0.25, 0.45)), d.between(0.2, 0.5)},
                             d.between(0.05, 0.25),
                             mm(d.between(0.3, 1.5))};
        const double visit = d.between(0.08, 0.18);
        const double exact = all_fine_throughout(intervals, law, visit);
        const double share = fine_throughout(intervals, law, visit, dogs, seed + 1000U);
        const double error = std::sqrt(std::max(share * (1.0 - share), 1.0 / dogs) / dogs);
        INFO(intervals.size() << " intervals of " << zones.size() << " zones");
        CHECK_THAT(exact, match::WithinAbs(share, 4.0 * error + 2e-4));
    }
}

}  // namespace

TEST_CASE("fine every time: against simulated dogs that live through all of it",
          "[oracle][calendar]") {
    check_throughout(36, 20, 40'000);
}

TEST_CASE("fine every time: against many more simulated dogs", "[oracle][calendar][.full]") {
    check_throughout(37, 100, 500'000);
}

namespace {

/// A dog kept alike from groom to groom, and how many times it waits how many days.
struct kept_dog {
    std::vector<kept_zone> zones;
    std::map<int, int> waits;
    shared_law law;
    double visit_log_sd = 0.0;
};

/// The same integral by GSL: adaptive over the factor on the matting-prone lengths, piece by piece
/// where hair stops before it mats or another zone becomes the worst; by many nodes over the rate and
/// the start error, in which it is smooth or nearly so.
class by_gsl {
  public:
    explicit by_gsl(const kept_dog& d)
        : dog_(d),
          own_(std::sqrt(d.law.rate.log_sd * d.law.rate.log_sd - d.visit_log_sd * d.visit_log_sd)) {
    }

    double fine_throughout() {
        const std::unique_ptr<gsl_integration_workspace, void (*)(gsl_integration_workspace*)>
            space(gsl_integration_workspace_alloc(500), gsl_integration_workspace_free);
        gsl_function f{[](double x, void* of) {
                           return gsl_ran_ugaussian_pdf(x) * static_cast<by_gsl*>(of)->given(x);
                       },
                       this};
        const std::vector<double> at = joints();
        double sum = 0.0;
        for (std::size_t i = 1; i < at.size(); ++i) {
            double part = 0.0;
            double error = 0.0;
            gsl_integration_qag(&f, at[i - 1], at[i], 1e-8, 0.0, 500, GSL_INTEG_GAUSS15,
                                space.get(), &part, &error);
            sum += part;
        }
        return sum;
    }

  private:
    static constexpr double far = 7.0;  // standard deviations; beyond lie 3e-12 of all dogs

    struct node {
        double x = 0.0;
        double weight = 0.0;
    };
    static std::vector<node> nodes(std::size_t n) {
        const std::unique_ptr<gsl_integration_glfixed_table,
                              void (*)(gsl_integration_glfixed_table*)>
            rule(gsl_integration_glfixed_table_alloc(n), gsl_integration_glfixed_table_free);
        std::vector<node> out(n);
        for (std::size_t i = 0; i < n; ++i) {
            gsl_integration_glfixed_point(-far, far, i, &out[i].x, &out[i].weight, rule.get());
            out[i].weight *= gsl_ran_ugaussian_pdf(out[i].x);
        }
        return out;
    }

    /// The standard deviations of the factor at which the chance may jump or bend.
    [[nodiscard]] std::vector<double> joints() const {
        std::vector<double> at{-far, far};
        const auto see = [&](const length& part, const length& whole) {
            const double f = std::log(part / whole) / dog_.law.threshold_log_sd;
            if (f > -far && f < far) {
                at.push_back(f);
            }
        };
        for (const kept_zone& a : dog_.zones) {
            see(a.terminal, *a.threshold);
            for (const kept_zone& b : dog_.zones) {
                if (*a.threshold > *b.threshold && a.start > b.start) {
                    see(a.start - b.start, *a.threshold - *b.threshold);
                }
            }
        }
        std::sort(at.begin(), at.end());
        return at;
    }

    /// What hair may grow in `wait` days until the first zone mats.
    [[nodiscard]] double room(int wait, double factor, double error) const {
        double least = std::numeric_limits<double>::infinity();
        for (const kept_zone& z : dog_.zones) {
            const double start = std::max(0.0, in_mm(z.start) + error);
            const double mats = in_mm(*z.threshold) * factor;
            if (wait > in_days(z.clock) && mats <= std::max(start, in_mm(z.terminal))) {
                least = std::min(least, std::max(0.0, mats - start));
            }
        }
        return least;
    }

    [[nodiscard]] double given(double f) const {
        const double factor = std::exp(dog_.law.threshold_log_sd * f);
        std::vector<double> product(rates_.size(), 1.0);
        for (const auto& [wait, times] : dog_.waits) {
            std::vector<double> fine(rates_.size(), 0.0);
            for (const node& e : errors_) {
                const double left = room(wait, factor, in_mm(dog_.law.start_error) * e.x);
                for (std::size_t i = 0; i < rates_.size(); ++i) {
                    const double rate = dog_.law.rate.log_median + own_ * rates_[i].x;
                    fine[i] += e.weight * gsl_cdf_ugaussian_P((std::log(left / wait) - rate) /
                                                              dog_.visit_log_sd);
                }
            }
            for (std::size_t i = 0; i < rates_.size(); ++i) {
                product[i] *= std::pow(fine[i], times);
            }
        }
        double sum = 0.0;
        for (std::size_t i = 0; i < rates_.size(); ++i) {
            sum += rates_[i].weight * product[i];
        }
        return sum;
    }

    const kept_dog& dog_;
    double own_;
    std::vector<node> rates_ = nodes(100);
    std::vector<node> errors_ = nodes(32);
};

/// Hair that stops near the length it mats at, so that in many dogs it never does.
kept_dog stops_near(oracle::draws& d) {
    kept_dog k;
    const double mats = d.between(25.0, 50.0);
    for (int n = d.whole(1, 4); n > 0; --n) {
        k.zones.push_back({mm(d.between(4.0, 0.7 * mats)), mm(mats * d.between(0.8, 1.1)),
                           mm(mats * d.between(0.8, 1.3)), day(d.whole(0, 28))});
    }
    k.waits[d.whole(14, 84)] += d.whole(1, 11);
    k.waits[d.whole(14, 84)] += 1;
    k.law = {{std::log(d.between(0.25, 0.45)), d.between(0.2, 0.5)},
             d.between(0.05, 0.25),
             mm(d.between(0.3, 1.5))};
    k.visit_log_sd = d.between(0.08, 0.18);
    return k;
}

}  // namespace

// The factor is split where hair stops before it mats; only where that hangs on the start error too, or
// another zone becomes the worst, are the nodes a little coarse.
TEST_CASE("fine every time: hair that stops near the length it mats at, against GSL",
          "[oracle][calendar]") {
    gsl_set_error_handler_off();
    oracle::draws d(38);
    for (int i = 0; i < 40; ++i) {
        const kept_dog k = stops_near(d);
        std::vector<kept_interval> intervals;
        for (const auto& [wait, times] : k.waits) {
            intervals.insert(intervals.end(), static_cast<std::size_t>(times),
                             {k.zones, day(wait)});
        }
        INFO(intervals.size() << " intervals of " << k.zones.size() << " zones");
        CHECK_THAT(all_fine_throughout(intervals, k.law, k.visit_log_sd),
                   match::WithinAbs(by_gsl(k).fine_throughout(), 5e-4));
    }
}
