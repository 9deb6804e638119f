// The quiz: one right answer a question, whatever lies in the drawer; and what comes back when.
#include <algorithm>
#include <array>
#include <map>
#include <string>

#include <pelage/answers/quiz.hpp>
#include <pelage/data/quiz_file.hpp>
#include <pelage/kit/quiz.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

const reference_data& ref() {
    return io::reference();
}

/// A drawer by lot, the same for the same number; measured figures in it, and blades out.
kit random_drawer(unsigned number) {
    unsigned state = number * 2654435761U + 17U;
    const auto one_in = [&](unsigned n) {
        state = state * 1664525U + 1013904223U;
        return (state >> 16U) % n == 0;
    };
    std::vector<std::string> blades;
    std::vector<std::string> combs;
    for (const blade& b : ref().blades) {
        if (b.shape != edge::adjustable && (b.id == "30" || one_in(2))) {
            blades.push_back(b.id);
        }
    }
    for (const comb& c : ref().combs) {
        if (one_in(2)) {
            combs.push_back(c.id);
        }
    }
    kit k = drawer(blades, combs);
    for (kit_blade& b : k.blades) {
        b.out = one_in(6);
        if (one_in(5)) {
            b.measured = b.spec.stated.best * 1.1;
        }
    }
    return k;
}

length left(const setup& s, coat_class c) {
    return cut_length(s, lay_of(ref(), ref().rules, c).best, ref().rules.cut).best;
}

/// What the rules say of a bare blade in a zone; `how` is how a sheet asks for it, 0: plainly.
bool goes(setup s, std::size_t z, direction way, unsigned how = 0) {
    s.way = way;
    zone_today t;
    t.where = &ref().dog_body.zones[z];
    t.clean = (how & 1U) != 0;
    t.show = (how & 2U) != 0;
    t.pattern = (how & 4U) != 0;
    const auto& usual = t.where->prep_blades;
    const bool customary =
        usual.empty() || (std::find(usual.begin(), usual.end(), s.tool.id) != usual.end() &&
                          way == direction::with_lay);
    return customary && !refuse(s, t, ref().rules.refusal, ref().rules.cut);
}

bool goes_somehow(const setup& s, std::size_t z, direction way) {
    for (unsigned how = 0; how < 8; ++how) {
        if (goes(s, z, way, how)) {
            return true;
        }
    }
    return false;
}

bool goes_on_or_under(const setup& s, const mat_finding* mat) {
    zone firm;
    firm.uses = static_cast<std::uint32_t>(zone_use::skip_teeth);
    zone_today t;
    t.where = &firm;
    t.mat = mat;
    return !refuse(s, t, ref().rules.refusal, ref().rules.cut);
}

length tolerated(const length& l, bool head = false) {
    return tolerance(l, head, ref().rules.prices);
}

/// Whether the option is a right answer, in words of this test alone.
bool is_right(const quiz_option& o, const quiz_question& q, const std::vector<style>& sheets) {
    const auto* l = std::get_if<length>(&o.says);
    const auto* s = std::get_if<setup>(&o.says);
    const mat_finding unknown;
    switch (q.asks) {
        case quiz_asks::left_by:
        case quiz_asks::against: {
            CHECK(q.tool.way ==
                  (q.asks == quiz_asks::left_by ? direction::with_lay : direction::against_lay));
            // who can read needn't know: "what does the 22 mm comb leave?"
            CHECK_FALSE((q.tool.over && show(std::get<length>(q.right.says), length_unit::mm) ==
                                            show(q.tool.over->stated.best, length_unit::mm)));
            const finished f =
                cut_length(q.tool, lay_of(ref(), ref().rules, q.coat).best, ref().rules.cut);
            return f.low <= *l && *l <= f.high;
        }
        case quiz_asks::which_way: {
            CHECK(q.topic == quiz_topic::ways);
            const bool with = goes_somehow(q.tool, *q.zone, direction::with_lay);
            const bool against = goes_somehow(q.tool, *q.zone, direction::against_lay);
            return std::get<use_there::may>(o.says) == (against ? use_there::may::both_ways
                                                        : with  ? use_there::may::with_lay_only
                                                                : use_there::may::not_at_all);
        }
        case quiz_asks::may_go:
            return goes_somehow(*s, *q.zone, direction::with_lay);
        case quiz_asks::never_goes:
            return !goes(*s, *q.zone, direction::with_lay);
        case quiz_asks::under_mat:
            return goes_on_or_under(*s, &unknown);
        case quiz_asks::in_place_of: {
            CHECK(s->tool.id != q.tool.tool.id);
            CHECK(ref().dog_body.zones[q.zone.value()].has(zone_use::skip_teeth));
            const length wanted = left(q.tool, q.coat);
            return gap(left(*s, q.coat), wanted) <= tolerated(wanted);
        }
        case quiz_asks::under_comb:
            return goes_on_or_under(combed(*q.tool.over, s->tool, direction::with_lay), nullptr);
        case quiz_asks::nearest_comb:
            return gap(left(*s, q.coat), q.wanted) < mm(0.011);  // it is what one of them leaves
        case quiz_asks::sheet_length:
        case quiz_asks::sheet_blade:
            break;
    }
    const part_index parts(ref().dog_body);
    const resolved_style laid(ref().dog_body, parts, sheets[q.sheet]);
    const instruction& wish = laid.at({*q.zone, side::both});
    const bool head = ref().dog_body.zones[*q.zone].where == group::head;
    return l != nullptr ? gap(*l, *wish.target) <= tolerated(*wish.target, head)
                        : std::get<std::string>(o.says) == *wish.blade;
}

const date monday = *parse_date("2026-11-30");

quiz_answer answered(const quiz_question& q, const date& on, bool right) {
    return {on, q.key, q.topic, right};
}

std::vector<quiz_question> of_demo_kit() {
    const salon_files& salon = io::demo_salon();
    return quiz_questions({ref(), salon.rules, salon.tools, salon.styles, monday});
}

}  // namespace

TEST_CASE("every question of every drawer has one right answer, wherever it stands", "[quiz]") {
    const std::vector<style> sheets(ref().styles.begin(), ref().styles.begin() + 6);
    std::array<std::size_t, 4> stands{};
    std::array<std::size_t, 11> kinds{};
    for (unsigned number = 0; number < 13; ++number) {
        // combs near enough to one another for one to mislead are in few drawers
        const kit k = number < 12 ? random_drawer(number) : io::demo_salon().tools;
        const quiz_request r{ref(), ref().rules, k, sheets, monday};
        std::vector<std::string> keys;
        for (const quiz_question& q : quiz_questions(r)) {
            INFO("drawer " << number << ": " << q.key);
            ++kinds[static_cast<std::size_t>(q.asks)];
            CHECK(is_right(q.right, q, sheets));
            for (const quiz_option& o : q.wrong) {
                INFO(io::option_words(o, q, length_unit::mm));
                CHECK_FALSE(is_right(o, q, sheets));
            }
            const posed_question p = pose(q, monday, "mia");
            CHECK(p.options.size() >= 3);
            std::vector<std::string> read;
            for (const quiz_option& o : p.options) {
                read.push_back(io::option_words(o, q, length_unit::mm));
            }
            CHECK(read[p.right] == io::option_words(q.right, q, length_unit::mm));
            std::sort(read.begin(), read.end());
            CHECK(std::adjacent_find(read.begin(), read.end()) == read.end());
            CHECK_FALSE(io::reason_words(q, p, nullptr, r, length_unit::mm).empty());
            stands[p.right] += p.options.size() == 4 ? 1 : 0;
            keys.push_back(q.key);
        }
        std::sort(keys.begin(), keys.end());
        CHECK(std::adjacent_find(keys.begin(), keys.end()) == keys.end());
    }
    for (const std::size_t n : stands) {
        CHECK(n * 5 > stands[0] + stands[1] + stands[2] + stands[3] - n);  // about a quarter
    }
    CHECK(std::count(kinds.begin(), kinds.end(), 0U) == 0);
}

TEST_CASE("a comb is asked for only where another one's name is nearer", "[quiz]") {
    const quiz_request r{ref(), ref().rules, io::demo_salon().tools, {}, monday};
    int asked = 0;
    for (const quiz_question& q : quiz_questions(r)) {
        if (q.asks != quiz_asks::nearest_comb) {
            continue;
        }
        ++asked;
        const auto off = [&](const quiz_option& o) {
            return gap(std::get<setup>(o.says).over->stated.best, q.wanted);
        };
        CHECK(std::any_of(q.wrong.begin(), q.wrong.end(),
                          [&](const quiz_option& o) { return off(o) <= off(q.right); }));
    }
    CHECK(asked > 0);
}

TEST_CASE("each of the ways is the right one somewhere", "[quiz]") {
    std::array<std::size_t, 5> right{};
    for (const quiz_question& q : of_demo_kit()) {
        if (q.asks == quiz_asks::which_way) {
            ++right[static_cast<std::size_t>(std::get<use_there::may>(q.right.says))];
        }
    }
    using may = use_there::may;
    for (const may m : {may::both_ways, may::with_lay_only, may::not_at_all}) {
        CHECK(right[static_cast<std::size_t>(m)] > 1);
    }
}

TEST_CASE("what was missed comes first, then what is due; the rest waits", "[quiz]") {
    const auto all = of_demo_kit();
    const quiz_rules& rules = io::quiz_figures();
    const auto later = [&](int days) { return monday + std::chrono::days{days}; };
    const std::vector<quiz_answer> before{
        answered(all[3], monday, true), answered(all[4], monday, false),
        answered(all[5], monday, true), answered(all[5], later(1), true)};
    const auto the_day_after = quiz_order(all, before, rules, later(1), "mia");
    REQUIRE(the_day_after.size() == all.size() - 1);  // all[5] was right twice: three days
    CHECK(the_day_after[0].question == 4);
    CHECK(the_day_after[0].why == quiz_turn::missed);
    CHECK(the_day_after[1].question == 3);
    CHECK(the_day_after[1].why == quiz_turn::due);
    CHECK(the_day_after[2].why == quiz_turn::fresh);
    CHECK(quiz_order(all, before, rules, later(4), "mia")[2].question == 5);
    CHECK(quiz_next_day(all, before, rules) == monday);
    // twice right on one day is once remembered
    const std::vector<quiz_answer> twice{answered(all[3], monday, true),
                                         answered(all[3], monday, true)};
    CHECK(quiz_order(all, twice, rules, later(1), "mia")[0].question == 3);
}

TEST_CASE("new questions go through the topics, in an order of the day and the name", "[quiz]") {
    const auto all = of_demo_kit();
    const auto first_six = [&](const date& on, const char* whose) {
        std::vector<std::size_t> out;
        for (const quiz_turn_of& t : quiz_order(all, {}, io::quiz_figures(), on, whose)) {
            out.push_back(t.question);
        }
        out.resize(6);
        return out;
    };
    std::array<unsigned, 6> topics{};
    for (const std::size_t q : first_six(monday, "mia")) {
        ++topics[static_cast<std::size_t>(all[q].topic)];
    }
    CHECK(topics == std::array<unsigned, 6>{1, 1, 1, 1, 1, 1});
    CHECK(first_six(monday, "mia") == first_six(monday, "mia"));
    CHECK(first_six(monday, "mia") != first_six(monday, "noor"));
    CHECK(first_six(monday, "mia") != first_six(monday + std::chrono::days{1}, "mia"));
}

TEST_CASE("a share is told from five answers to a topic on", "[quiz]") {
    const auto all = of_demo_kit();
    const auto topic = static_cast<std::size_t>(all[0].topic);
    std::vector<quiz_question> of_topic;
    std::copy_if(all.begin(), all.end(), std::back_inserter(of_topic),
                 [&](const quiz_question& q) { return q.topic == all[0].topic; });
    std::vector<quiz_answer> answers;
    for (std::size_t i = 0; i < 4; ++i) {
        answers.push_back(answered(of_topic[i], monday, true));
        answers.push_back(answered(of_topic[i], monday, true));  // told before: no first answer
    }
    CHECK_FALSE(quiz_scores(all, answers, io::quiz_figures())[topic].enough);
    answers.push_back(answered(of_topic[4], monday, false));
    answers.push_back(answered(of_topic[4], monday, true));
    const quiz_score s = quiz_scores(all, answers, io::quiz_figures())[topic];
    CHECK(s.enough);
    CHECK((s.answers == 10 && s.right == 9 && s.asked == 5 && s.missed == 0));
    CHECK((s.first == 5 && s.first_right == 4));
}

TEST_CASE("asked for another turn the same choices stand otherwise", "[quiz]") {
    const auto all = of_demo_kit();
    std::size_t moved = 0;
    for (const quiz_question& q : all) {
        const posed_question first = pose(q, monday, "mia");
        const posed_question again = pose(q, monday, "mia 1");
        moved += first.right != again.right || first.options.size() != again.options.size() ? 1 : 0;
    }
    CHECK(2 * moved > all.size());  // three in four by chance
}

TEST_CASE("neither the shortest nor the longest of the choices is right by the look of it",
          "[quiz]") {
    const auto all = of_demo_kit();
    for (const quiz_asks asks : {quiz_asks::left_by, quiz_asks::in_place_of}) {
        std::size_t asked = 0;
        std::size_t shortest = 0;
        std::size_t longest = 0;
        for (const quiz_question& q : all) {
            for (const char* whose : {"mia", "noor", "ida", "lou", "kim", "ben"}) {
                if (q.asks != asks) {
                    continue;
                }
                const posed_question p = pose(q, monday, whose);
                const auto left = [](const quiz_option& o) {
                    const auto* l = std::get_if<length>(&o.says);
                    return in_mm(l != nullptr ? *l : o.leaves->best);
                };
                const auto others = [&](auto than) {
                    return std::all_of(p.options.begin(), p.options.end(),
                                       [&](const quiz_option& o) {
                                           return !than(left(o), left(p.options[p.right]));
                                       });
                };
                ++asked;
                shortest += others(std::less<>{}) ? 1 : 0;
                longest += others(std::greater<>{}) ? 1 : 0;
            }
        }
        INFO(static_cast<int>(asks) << ": " << shortest << " and " << longest << " of " << asked);
        CHECK(asked > 30);
        CHECK(10 * shortest < 6 * asked);  // there is little shorter than a 10
        CHECK(10 * longest < 5 * asked);
    }
}

TEST_CASE("what stands in for another isn't told by its number or by being the only comb",
          "[quiz]") {
    const auto digits = [](const std::string& s) {
        return s.substr(0, s.find_first_not_of("0123456789"));
    };
    for (const quiz_question& q : of_demo_kit()) {
        if (q.asks != quiz_asks::in_place_of) {
            continue;
        }
        const setup& right = std::get<setup>(q.right.says);
        INFO(q.key);
        CHECK((right.over || digits(right.tool.etched) != digits(q.tool.tool.etched)));
        CHECK(std::get<setup>(q.wrong.front().says).over.has_value() == right.over.has_value());
    }
}

TEST_CASE("no length of the sheets is the answer each time it is offered", "[quiz]") {
    const auto all = of_demo_kit();
    std::map<double, std::pair<std::size_t, std::size_t>>
        offered;  // by length: so often, right so often
    for (const quiz_question& q : all) {
        if (q.asks != quiz_asks::sheet_length) {
            continue;
        }
        for (const char* whose : {"mia", "noor", "ida", "lou", "kim", "ben"}) {
            const posed_question p = pose(q, monday, whose);
            for (std::size_t i = 0; i < p.options.size(); ++i) {
                auto& [times, right] = offered[in_mm(std::get<length>(p.options[i].says))];
                ++times;
                right += i == p.right ? 1 : 0;
            }
        }
    }
    for (const auto& [mm_of_it, seen] : offered) {
        INFO(mm_of_it << " mm");
        CHECK((seen.first < 8 || seen.second < seen.first));
    }
}

TEST_CASE("a sheet is asked about as it is on the day", "[quiz]") {
    const salon_files& salon = io::demo_salon();
    const part_index parts(ref().dog_body);
    const date in_winter = *parse_date("2026-12-15");
    const quiz_request r{ref(), salon.rules, salon.tools, salon.styles, in_winter};
    std::size_t of_a_season = 0;
    for (const quiz_question& q : quiz_questions(r)) {
        if (q.asks != quiz_asks::sheet_length) {
            continue;
        }
        const season* now = season_on(salon.styles[q.sheet], in_winter);
        if (now == nullptr) {
            continue;
        }
        ++of_a_season;
        INFO(q.key);
        const resolved_style laid(ref().dog_body, parts, in_season(salon.styles[q.sheet], *now));
        CHECK(std::get<length>(q.right.says) == *laid.at({*q.zone, side::both}).target);
        CHECK_THAT(io::question_words(q, r, length_unit::mm),
                   match::ContainsSubstring(", " + now->name + ", "));
    }
    CHECK(of_a_season > 3);
}

TEST_CASE("nobody learns that a short blade goes against the lay", "[quiz]") {
    for (unsigned number = 0; number < 12; ++number) {
        const kit k = random_drawer(number);
        const std::vector<style> none;
        for (const quiz_question& q : quiz_questions({ref(), ref().rules, k, none, monday})) {
            const bool both = q.asks == quiz_asks::which_way && q.there &&
                              q.there->use == use_there::may::both_ways;
            INFO(q.key);
            CHECK_FALSE((both && in_mm(q.tool.tool.stated.best) < 1.6));
        }
    }
}
