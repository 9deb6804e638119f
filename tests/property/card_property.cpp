// What a card says is what its plan does: the card is read back word by word, as a groomer reads it, and
// held against the plan. Nothing below calls what wrote the card.
#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/planner/appointment.hpp>
#include <pelage/trade/place_words.hpp>

#include "catch.hpp"
#include "generate/trouble.hpp"

using namespace pelage;
using generate::dice;
using generate::table;

namespace {

using strings = std::vector<std::string>;
using places = std::set<std::pair<std::size_t, side>>;

const body& whole() {
    return io::reference().dog_body;
}
const part_index& named() {
    static const part_index all(whole());
    return all;
}

strings cut(const std::string& text, const std::string& at) {
    strings out;
    std::size_t from = 0;
    for (std::size_t to = text.find(at); to != std::string::npos; to = text.find(at, from)) {
        out.push_back(text.substr(from, to - from));
        from = to + at.size();
    }
    out.push_back(text.substr(from));
    return out;
}

/// Adds both sides of a pair one by one.
void add(places& to, const place& p) {
    if (whole().zones[p.zone].paired && p.which == side::both) {
        to.insert({p.zone, side::left});
        to.insert({p.zone, side::right});
    } else {
        to.insert({p.zone, p.which});
    }
}

/// "body", "left ear", "edge of the left ear"; nothing where that names no place.
std::optional<places> named_by(const std::string& word) {
    const selection* meant = named().find(word);
    if (meant == nullptr) {
        return std::nullopt;
    }
    places out;
    for (const place& p : meant->places) {
        add(out, p);
    }
    return out;
}

/// "body but skirt and left flank".
std::optional<places> with_exceptions(const std::string& text) {
    const strings halves = cut(text, " but ");
    auto out = named_by(halves.front());
    if (!out || halves.size() == 1) {
        return out;
    }
    for (const std::string& list : cut(halves[1], " and ")) {
        for (const std::string& one : cut(list, ", ")) {
            const auto gone = named_by(one);
            if (!gone) {
                return std::nullopt;
            }
            for (const auto& p : *gone) {
                if (out->erase(p) != 1) {
                    return std::nullopt;
                }
            }
        }
    }
    return out;
}

/// Places, and the length said behind the last of those of the same length.
struct said_places {
    places where;
    std::string aim;
};

/// "13 mm skirt, feet; 3.2 mm edge of the left ear", or places alone.
std::optional<std::vector<said_places>> read_places(const std::string& text) {
    std::vector<said_places> out;
    places all;
    for (std::string group : cut(text, "; ")) {
        said_places& to = out.emplace_back();
        if (group.find_first_of("0123456789") == 0) {
            const std::size_t end = group.find(" mm ");
            if (end == std::string::npos) {
                return std::nullopt;
            }
            to.aim = group.substr(0, end);
            group = group.substr(end + 4);
        }
        for (const std::string& one : cut(group, ", ")) {
            const auto where = with_exceptions(one);
            if (!where) {
                return std::nullopt;
            }
            for (const auto& p : *where) {
                to.where.insert(p);
                if (!all.insert(p).second) {
                    return std::nullopt;  // said twice
                }
            }
        }
    }
    return out;
}

/// "13" mm of "13 mm": what is stated, and how far rounding may be off.
bool is_said(const std::string& said, const length& is) {
    const double stated = std::stod(said);
    const double v = in_mm(is);
    const double off = v < 0.995 ? 0.0051 : v < 9.95 ? 0.051 : 0.51;
    return std::abs(stated - v) <= off;
}

class reading {
  public:
    explicit reading(const table& t) : r_(t.request()), g_(make_plan(r_)) {
        if (g_.planned()) {
            when_ = pelage::back_of(r_, g_);
        }
        options_.today = date{std::chrono::days{20000}};
        text_ = io::text_of(io::card_of(g_, when_, r_, options_), length_unit::mm, 1U << 20U);
    }

    [[nodiscard]] const std::string& text() const { return text_; }
    [[nodiscard]] bool planned() const { return g_.planned(); }

    [[nodiscard]] strings wrong() {
        cautions();
        if (g_.planned()) {
            minutes();
            steps();
            back();
        }
        return std::move(wrong_);
    }

  private:
    void must(bool holds, const std::string& what) {
        if (!holds) {
            wrong_.push_back(what);
        }
    }
    [[nodiscard]] bool has(const std::string& what) const {
        return text_.find(what) != std::string::npos;
    }

    void cautions() {
        if (g_.question) {
            return;  // told whole there
        }
        for (const caution_line& c : g_.cautions) {
            const bool at_home = c.what.usual && c.what.who == "owner";
            const bool asked = c.what.id == "wire-softens" && has("(clip-jacket)");
            const bool above =
                g_.stopped() && has("A vet sees this dog first") &&
                (c.what.when == caution_when::stop || c.what.when == caution_when::skin_finding);
            // who is out most of the day is told it in more words
            const bool in_more = c.what.id == "sun" && has("skin can burn, shade at midday");
            const bool to_sign = c.what.id == "double-clipped" &&
                                 (has("(clip-jacket)") ||
                                  has("a double coat may come back slowly, patchy or changed"));
            // the steps' order says it: mats come off before the bath
            const bool in_order =
                c.what.id == "mats-before-bath" &&
                (has("no bath while a mat is in") ||
                 std::all_of(g_.blocks.begin(), g_.blocks.end(),
                             [](const block& b) { return !b.off || b.when == list::before_bath; }));
            // no work of this visit's minutes: the whole plan tells it
            const bool not_counted = c.what.when == caution_when::much_off;
            // that a veterinarian is asked first stands above
            const bool in_visits = c.what.when == caution_when::ill &&
                                   has("a vet before it is groomed") &&
                                   has(c.what.brief.substr(c.what.brief.find("; ") + 2));
            // where skin is broken a veterinarian is more than advised
            const bool in_more_haste = c.what.when == caution_when::skin_finding &&
                                       has("; tell the owner") &&
                                       has("a vet today, tomorrow at the latest");
            must(at_home || asked || in_more_haste || above || in_more || to_sign || in_order ||
                     not_counted || in_visits || has(c.what.brief),
                 "a caution is lost: " + c.what.id);
        }
        for (const consent& c : g_.consents) {
            must(g_.stopped() || has("(" + c.id + ")") == !c.given, "consent " + c.id);
        }
    }

    void minutes() {
        const service& full = service_of(r_.reference, service_kind::full);
        const double all = in_minutes(appointment_of(r_, g_, full).total());
        const std::size_t at = text_.find("; about ");
        must(g_.bath_waits() || (at != std::string::npos &&
                                 std::abs(std::stod(text_.substr(at + 8)) - all) <= 0.51),
             "minutes of the whole appointment");
    }

    /// The lines that bear a number, in their order.
    [[nodiscard]] strings numbered() {
        strings out;
        for (const std::string& line : cut(text_, "\n")) {
            std::istringstream in(line);
            std::size_t n = 0;
            if (line.size() > 4 && line[2] == ' ' && line[3] == ' ' && in >> n) {
                must(n == out.size() + 1, "numbers in order");
                out.push_back(line.substr(4));
            }
        }
        return out;
    }

    void steps() {
        const strings lines = numbered();
        std::vector<const block*> blocks;
        const bool frail = std::any_of(
            g_.cautions.begin(), g_.cautions.end(),
            [](const caution_line& c) { return c.what.when == caution_when::frail_felted; });
        for (const list when : {list::before_bath, list::after_bath}) {
            for (const block& b : g_.blocks) {
                const bool another_day = when == list::after_bath && (g_.bath_waits() || frail);
                if (b.when == when && !another_day) {
                    blocks.push_back(&b);
                }
            }
        }
        must(lines.size() >= blocks.size(), "a line a tool");
        if (lines.size() < blocks.size()) {
            return;
        }
        later_steps(lines.size());
        const std::size_t first = lines.size() - blocks.size();
        for (std::size_t i = 0; i < blocks.size(); ++i) {
            const block* last =
                i > 0 && blocks[i - 1]->when == blocks[i]->when ? blocks[i - 1] : nullptr;
            step(lines[first + i], *blocks[i], last);
        }
    }

    /// Those of another day follow on in number, and stand in the whole plan.
    void later_steps(std::size_t today) {
        const std::size_t at = text_.find("; then step");
        if (at == std::string::npos) {
            return;
        }
        const auto later = std::count_if(g_.blocks.begin(), g_.blocks.end(),
                                         [](const block& b) { return b.when == list::after_bath; });
        const std::string first = std::to_string(today + 1);
        const std::string last = std::to_string(today + static_cast<std::size_t>(later));
        must(
            has(later == 1 ? "then step " + first + " of the whole plan (--full)"
                           : "then steps " + first + " to " + last + " of the whole plan (--full)"),
            "steps of another day");
    }

    void step(const std::string& line, const block& b, const block* last) {
        const std::size_t colon = line.find(": ");
        if (colon == std::string::npos) {
            must(false, "no places: " + line);
            return;
        }
        const std::string hold = line.substr(0, colon);
        std::string where = line.substr(colon + 2);
        for (std::size_t open = where.find(" (not "); open != std::string::npos;
             open = where.find(" (not ")) {
            where.erase(where.find(')', open), 1);
            where.replace(open, 6, " but ");
        }
        for (std::size_t open = where.find(" ("); open != std::string::npos;
             open = where.find(" (")) {
            where.erase(open, where.find(')', open) - open + 1);
        }
        held_is_true(hold, b, last);
        const auto read = read_places(where);
        must(read.has_value(), "places not understood: " + where);
        if (!read) {
            return;
        }
        places all;
        places planned;
        for (const said_places& s : *read) {
            all.insert(s.where.begin(), s.where.end());
        }
        for (const std::size_t i : b.zones) {
            add(planned, g_.zones[i].at);
        }
        must(all == planned, "other places than the plan's: " + line);
        lengths(hold, *read, b, line);
    }

    void held_is_true(const std::string& hold, const block& b, const block* last) {
        const setup& s = b.how;
        if (s.kind != tool_kind::clip) {
            must(hold.starts_with(held(s)), "another tool: " + hold);
            return;
        }
        if (hold.find(" again, then") != std::string::npos) {
            must(last != nullptr && title(last->how) == title(s), "not the same: " + hold);
            must(hold.starts_with(s.over ? "comb " + s.over->id : held(s)), "another: " + hold);
            return;
        }
        if (s.over) {
            must(hold.starts_with("comb " + s.over->id), "another comb: " + hold);
            must(hold.find(" over " + s.tool.id) != std::string::npos,
                 "another blade beneath: " + hold);
        } else {
            must(hold.starts_with(held(s)), "another blade: " + hold);
        }
        // a way holds until another is said
        for (const direction d : {direction::with_lay, direction::against_lay}) {
            way_ = hold.find(name(d)) != std::string::npos ? std::optional{d} : way_;
        }
        must(way_ == s.way, "another way: " + hold);
    }

    void lengths(const std::string& hold, const std::vector<said_places>& read, const block& b,
                 const std::string& line) {
        const bool clip = b.how.kind == tool_kind::clip;
        const std::size_t at = hold.find("leaves ");
        for (const std::size_t i : b.zones) {
            const auto& left = left_in(b, g_.zones[i]);
            if (!left) {
                continue;
            }
            if (const auto apart = aim_apart(hold, g_.zones[i].at); clip && !apart.empty()) {
                must(is_said(apart, left->best), "leaves another length apart: " + line);
                must(left->high - left->low < mm(1.5), "not known so well: " + line);
                continue;
            }
            if (clip && at != std::string::npos) {
                const std::string said =
                    hold.substr(at + 7, hold.find("; ", at) - std::min(at + 7, hold.size()));
                const std::size_t spread = said.find('(');
                if (spread != std::string::npos) {
                    must(said.starts_with("about ") &&
                             is_said(said.substr(6, said.find(" mm") - 6), left->best),
                         "leaves another length: " + line);
                }
                const strings ends =
                    cut(spread == std::string::npos ? said : said.substr(spread + 1), " to ");
                const double low = std::stod(ends.front()) - 0.051;
                const double high = std::stod(ends.back()) + 0.51;
                must(in_mm(left->best) >= low - 0.5 && in_mm(left->best) <= high,
                     "leaves another length: " + line);
            } else if (clip) {
                must(b.how.over && is_said(b.how.over->id, left->best), "no length said: " + line);
            } else if (b.how.kind == tool_kind::scissors || b.how.kind == tool_kind::thinners) {
                aimed(read, g_.zones[i].at, left->best, line);
            }
        }
    }
    /// "leaves about 3 mm (1.5 to 4; groin, armpits 2 mm; pads 1.5 mm)": what is said of a place behind the range.
    [[nodiscard]] static std::string aim_apart(const std::string& hold, const place& p) {
        const std::size_t from = hold.find("; ");
        const std::size_t to = hold.rfind(" mm)");
        if (from == std::string::npos || to == std::string::npos || to < from) {
            return {};
        }
        places one;
        add(one, p);
        for (const std::string& said : cut(hold.substr(from + 2, to + 3 - from - 2), "; ")) {
            const std::string both = said.substr(0, said.rfind(" mm"));
            const std::size_t blank = both.rfind(' ');
            for (const std::string& word : cut(both.substr(0, blank), ", ")) {
                const auto where = named_by(word);
                if (where && std::includes(where->begin(), where->end(), one.begin(), one.end())) {
                    return both.substr(blank + 1);
                }
            }
        }
        return {};
    }
    void aimed(const std::vector<said_places>& read, const place& p, const length& is,
               const std::string& line) {
        places one;
        add(one, p);
        for (const said_places& s : read) {
            if (std::includes(s.where.begin(), s.where.end(), one.begin(), one.end())) {
                must(!s.aim.empty() && is_said(s.aim, is), "aims at another length: " + line);
            }
        }
    }

    /// "Thu 4 Oct 2024".
    [[nodiscard]] std::string in_short(const days& d) const {
        const date on = plus(*options_.today, d);
        constexpr const char* days_of_week[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
        std::istringstream whole(in_words(on));
        std::string day;
        std::string month;
        std::string year;
        whole >> day >> month >> year;
        return std::string(days_of_week[std::chrono::weekday{on}.iso_encoding() - 1]) + " " + day +
               " " + month.substr(0, 3) + " " + year;
    }

    /// Without its year where that is the visit's.
    [[nodiscard]] std::string full_groom_as_said() const {
        const std::string visit = in_short(when_->next_visit);
        const std::string full = in_short(when_->full_groom);
        constexpr std::size_t year = 5;  // and the blank before it
        return full.substr(full.size() - year) == visit.substr(visit.size() - year)
                   ? full.substr(0, full.size() - year)
                   : full;
    }

    void back() {
        if (g_.bath_waits()) {
            must(has("Back: once what stopped it is mended") && !has("Back by"), "no date yet");
            return;
        }
        if (std::any_of(g_.cautions.begin(), g_.cautions.end(), [](const caution_line& c) {
                return c.what.when == caution_when::frail_felted;
            })) {
            must(has("Back: the next visit when the vet agrees") && !has("Back by"),
                 "a day before a veterinarian's word");
            return;
        }
        must(when_.has_value() && has("ack by " + in_short(when_->next_visit)), "the date");
        must(!when_ || when_->reason == visit_kind::usual ||
                 has("at least bath and brush; full groom by " + full_groom_as_said()),
             "the full groom");
    }

    plan_request r_;
    groom g_;
    std::optional<return_date> when_;
    io::print_options options_;
    std::string text_;
    strings wrong_;
    std::optional<direction> way_{};  // that the card said last
};

/// More than mats: skin, what it hates, an alert.
void more_trouble(dice& d, dog& patient) {
    const auto& zones = whole().zones;
    for (int n = d.luck(40) ? 1 + d.roll(2) : 0; n > 0; --n) {
        skin_finding f;
        f.at.zone = static_cast<std::size_t>(d.roll(static_cast<int>(zones.size())));
        f.state = static_cast<skin_state>(d.roll(6));
        patient.skin.push_back(f);
    }
    if (d.luck(30)) {
        patient.sensitive.emplace_back("feet");
    }
}

void read_cards(int n, std::uint64_t seed) {
    dice d(seed);
    int planned = 0;
    for (int i = 0; i < n; ++i) {
        table t = generate::any_trouble(d);
        more_trouble(d, t.patient);
        reading one(t);
        planned += one.planned() ? 1 : 0;
        const strings wrong = one.wrong();
        INFO(one.text());
        INFO((wrong.empty() ? std::string{} : wrong.front()));
        REQUIRE(wrong.empty());
    }
    CHECK(planned > n / 3);
}

}  // namespace

TEST_CASE("a card says what its plan does: places, lengths, order, minutes, cautions, date",
          "[card]") {
    read_cards(150, 71);
}

TEST_CASE("a card says what its plan does: ten thousand dogs", "[card]") {
    read_cards(10000, 72);
}
