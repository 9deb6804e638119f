// Two years of an invented salon: does its record pay? A fixed rota against pelage's own dates.
//
// A dog has a rate and a factor on all its matting-prone lengths, drawn from the reference's spreads; each
// groom has a rate and a start error of its own; a visit finds mats where hair is past its length and
// the clock in which brushing holds it has run out (head of model/return_date.hpp), but for a share of
// mishaps. The same dogs live twice: by the rota, and by what due_dogs() says after each visit of the record
// so far. A visit between full grooms is a bath and a brush; what is due within visits-apart of a full groom is
// done with it; nobody comes late, and visits fall on the last open day. Groomers are as many as it takes:
// it is their minutes that are counted.
#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include <pelage/data/reference.hpp>
#include <pelage/forecast/week.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/planner/planned_entry.hpp>
#include <pelage/trade/upkeep.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"

using namespace pelage;

namespace {

constexpr int two_years = 730;
constexpr int six_weeks = 42;
const date first_day{std::chrono::year{2026} / 1 / 6};  // a Tuesday: open

const reference_data& ref() {
    return io::reference();
}

struct salon_dog {
    dog patient;
    log_entry full_groom;          ///< what is logged of each
    std::vector<kept_zone> zones;  ///< as the reference has them, before the dog's own factor
    std::vector<std::string> words;
    work full{};
    work between{};
    unsigned seed = 0;
};

/// All dogs of a few coats, or only those that six weeks fit: even without brushing at least every other
/// one is fine for five, as far as the reference knows.
enum class whom { all, six_weeks_fit };

class salon {
  public:
    salon(int dogs, unsigned seed, whom w) : files_(io::demo_salon()) {
        files_.groomers.clear();
        oracle::draws d(seed);
        while (static_cast<int>(dogs_.size()) < dogs) {
            add(d, w);
        }
    }
    [[nodiscard]] const std::vector<salon_dog>& dogs() const { return dogs_; }
    [[nodiscard]] due_dog due(const salon_dog& one, const std::vector<log_entry>& record,
                              const date& today) {
        files_.dogs.assign(1, one.patient);
        add_record(files_.dogs[0], record);
        return due_dogs({ref(), files_, ref().styles, today}).front();
    }
    void ask(chance p) { files_.rules.matting.chance.best = p; }
    [[nodiscard]] int gap() const {
        return static_cast<int>(in_days(files_.rules.matting.visits_apart.best));
    }
    [[nodiscard]] date last_open(const salon_dog& one, const date& after, const date& by) const {
        return last_open_day(files_, one.patient, after + std::chrono::days{1}, by).value_or(by);
    }

  private:
    /// Brushed as its sheet asks, or, every other dog, one habit less.
    static brushing brushed(oracle::draws& d, const style& sheet) {
        dog upkeep;
        upkeep.brushing_said = false;
        assume_upkeep(upkeep, sheet);
        const int asked = static_cast<int>(counted(upkeep.brushed));
        const int h = d.whole(0, 1) == 0 ? std::max(0, asked - 1) : asked;
        return {static_cast<habit>(h), h != 0};
    }
    void add(oracle::draws& d, whom w) {
        constexpr std::array coats{coat_class::wavy,  coat_class::wavy,  coat_class::wavy,
                                   coat_class::curly, coat_class::curly, coat_class::drop,
                                   coat_class::shaggy};
        salon_dog one;
        one.patient.id = "dog-" + std::to_string(dogs_.size());
        one.patient.name = one.patient.id;
        one.patient.size = static_cast<dog_size>(d.whole(0, 3));
        one.patient.coat = coats[static_cast<std::size_t>(d.whole(0, 6))];
        std::vector<const style*> fit;
        for (const style& s : ref().styles) {
            if (!s.show && std::count(s.coats.begin(), s.coats.end(), *one.patient.coat) > 0) {
                fit.push_back(&s);
            }
        }
        const style& sheet =
            *fit[static_cast<std::size_t>(d.whole(0, static_cast<int>(fit.size()) - 1))];
        one.patient.style = sheet.id;
        one.patient.brushed = brushed(d, sheet);
        one.seed = static_cast<unsigned>(d.whole(1, 1'000'000'000));
        one.patient.consents.assign(consent_names.begin(), consent_names.end());
        const plan_request r{ref(), files_.rules, files_.tools, one.patient, sheet, first_day};
        const groom g = make_plan(r);
        if (!g.planned() || !g.stuck.empty()) {
            return;  // the demo salon's kit can't do it
        }
        const kept_coat k = after_groom(r, g);
        if (w == whom::six_weeks_fit &&
            last_fine_day(k.zones, k.law, 0.5, k.usual, false) < day(35)) {
            return;
        }
        one.zones = k.zones;
        for (const std::size_t i : k.index) {
            one.words.push_back(title(ref().dog_body, g.zones[i].at));
        }
        one.full_groom = planned_entry(r, g, first_day);
        one.full_groom.number = 1;
        const due_dog u = due(one, {one.full_groom}, first_day);
        one.full = u.full_takes;
        one.between = u.between_takes;
        dogs_.push_back(std::move(one));
    }

    salon_files files_;
    std::vector<salon_dog> dogs_;
};

struct tally {
    int visits = 0;
    int matted = 0;  ///< that found mats
    work minutes{};
    [[nodiscard]] double share() const { return static_cast<double>(matted) / visits; }
    tally& operator+=(const tally& t) {
        visits += t.visits;
        matted += t.matted;
        minutes += t.minutes;
        return *this;
    }
};

/// One dog as it lives, its mats found or not. What is drawn hangs on the dog and on how many visits it had.
class life {
  public:
    life(const salon_dog& one, bool remembered) : one_(one), remembered_(remembered), d_(one.seed) {
        const rate_prior& p = coat_of(ref(), *one.patient.coat).rate;
        log_rate_ = std::log(in_mm_per_day(p.median)) + p.log_sd * d_.normal();
        factor_ = std::exp(ref().rules.matting.threshold_log_sd.best * d_.normal());
        groomed(first_day);
        log(first_day, true, std::nullopt);
    }
    void visit(const date& on, bool full) {
        const std::vector<logged_mat> mats = found(on);
        ++tally_.visits;
        tally_.matted += mats.empty() ? 0 : 1;
        tally_.minutes += full ? one_.full : one_.between;
        log(on, full, remembered_ ? std::optional{mats} : std::nullopt);
        brushed_ = on;
        if (full) {
            groomed(on);
        }
    }
    [[nodiscard]] const tally& so_far() const { return tally_; }
    [[nodiscard]] const std::vector<log_entry>& record() const { return record_; }

  private:
    void groomed(const date& on) {
        full_ = on;
        brushed_ = on;
        rate_ = std::exp(log_rate_ + ref().rules.growth.visit_log_sd.best * d_.normal());
        off_ = in_mm(ref().rules.growth.start_error.best) * d_.normal();
    }
    void log(const date& on, bool full, std::optional<std::vector<logged_mat>> mats) {
        log_entry e;
        if (full) {
            e = one_.full_groom;
        } else {
            e.services = {service_kind::bath};
        }
        e.number = static_cast<unsigned>(record_.size()) + 1;
        e.on = on;
        e.mats = std::move(mats);
        record_.push_back(std::move(e));
    }
    std::vector<logged_mat> found(const date& on) {
        const bool mishap = d_.between(0.0, 1.0) < ref().rules.matting.mishap_share.best;
        const int anyhow =
            d_.whole(0, 1) == 0 ? 0 : d_.whole(1, static_cast<int>(one_.zones.size()));
        const double t = in_days(between(full_, on));
        std::vector<logged_mat> out;
        for (std::size_t i = 0; i < one_.zones.size(); ++i) {
            const kept_zone& z = one_.zones[i];
            const double start = std::max(0.0, in_mm(z.start) + off_);
            const double is = std::min(start + rate_ * t, std::max(start, in_mm(z.terminal)));
            const bool past = z.threshold && is >= in_mm(*z.threshold) * factor_ &&
                              between(brushed_, on) > z.clock;
            if (mishap ? z.threshold && static_cast<int>(i) < anyhow : past) {
                out.push_back({one_.words[i], {}});
            }
        }
        return out;
    }

    const salon_dog& one_;
    bool remembered_;
    oracle::draws d_;
    double log_rate_ = 0.0;
    double factor_ = 1.0;
    double rate_ = 0.0;
    double off_ = 0.0;
    date full_{};
    date brushed_{};
    tally tally_;
    std::vector<log_entry> record_;
};

tally by_rota(const salon& s, int every) {
    tally sum;
    for (const salon_dog& one : s.dogs()) {
        life l(one, false);
        for (int n = every; n < two_years; n += every) {
            l.visit(first_day + std::chrono::days{n}, true);
        }
        sum += l.so_far();
    }
    return sum;
}

tally by_rule(salon& s, chance p, bool remembered) {
    s.ask(p);
    tally sum;
    for (const salon_dog& one : s.dogs()) {
        life l(one, remembered);
        for (date today = first_day;;) {
            const due_dog u = s.due(one, l.record(), today);
            const date by = std::max(u.by, today + std::chrono::days{s.gap()});
            const date on = s.last_open(one, today, by);
            if (on >= first_day + std::chrono::days{two_years}) {
                break;
            }
            const bool full =
                u.what == visit_work::full_groom || u.full_by < on + std::chrono::days{s.gap()};
            l.visit(on, full);
            today = on;
        }
        sum += l.so_far();
    }
    return sum;
}

/// The rule at the chance at which it takes as many minutes, within a hundredth: by halving, since
/// a higher chance brings dogs sooner.
struct matched {
    chance at = 0.0;
    tally is;
};
matched at_minutes(salon& s, const work& minutes, bool remembered) {
    double low = 0.005;
    double high = 0.95;
    matched m;
    for (int tries = 0; tries < 9; ++tries) {
        m.at = 0.5 * (low + high);
        m.is = by_rule(s, m.at, remembered);
        const double off = in_minutes(m.is.minutes) / in_minutes(minutes) - 1.0;
        if (std::abs(off) < 0.01) {
            break;
        }
        (off < 0.0 ? low : high) = m.at;
    }
    return m;
}

}  // namespace

TEST_CASE("dogs that come by pelage's dates come in matted less often than by a rota",
          "[oracle][salon]") {
    salon s(6, 91, whom::six_weeks_fit);
    const tally rota = by_rota(s, six_weeks);
    const tally rule = by_rule(s, 0.9, true);
    CHECK(rule.share() < 0.5 * rota.share());
    CHECK(rule.minutes > rota.minutes);
    CHECK(by_rota(s, six_weeks).matted == rota.matted);
}

// At the minutes of a rota of five weeks the record pays. At those of six the chance that spends no more
// comes out at a few in a hundred: the rule then waits until mats are likely, and nothing is gained.
TEST_CASE("with the record fewer visits find mats than by a rota that takes as many minutes",
          "[oracle][salon][.full]") {
    salon s(60, 3, whom::six_weeks_fit);
    const tally six = by_rota(s, six_weeks);
    const tally five = by_rota(s, 35);
    const matched at_six = at_minutes(s, six.minutes, true);
    const matched at_five = at_minutes(s, five.minutes, true);
    const matched unlearned = at_minutes(s, five.minutes, false);
    WARN("six weeks: " << six.share() << " of visits; by the record at chance " << at_six.at << ": "
                       << at_six.is.share() << "\nfive weeks: " << five.share()
                       << "; by the record at chance " << at_five.at << ": " << at_five.is.share()
                       << "; by the coats alone at chance " << unlearned.at << ": "
                       << unlearned.is.share());
    CHECK(at_six.is.share() < six.share() + 0.02);
    CHECK(at_five.is.share() < 0.85 * five.share());
    CHECK(at_five.is.share() < 0.95 * unlearned.is.share());
}
