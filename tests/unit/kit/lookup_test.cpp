// What a trainee asks.
#include <algorithm>
#include <optional>
#include <string>

#include <pelage/answers/write.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/kit/lookup.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

using form = question::form;

/// The invented salon's kit; a question with all the rest left open.
struct asking {
    kit tools = io::demo_salon().tools;
    asked_kind kind = asked_kind::any;
    bool barber = false;
    std::optional<coat_class> coat{};
    std::vector<place> where{};
    std::optional<direction> way{};
    std::optional<date> today{};

    [[nodiscard]] lookup_request request(std::string text) const {
        return {io::reference(),
                io::reference().rules,
                tools,
                std::move(text),
                kind,
                barber,
                coat,
                where,
                way,
                today};
    }
    [[nodiscard]] question read(const std::string& text) const {
        return read_question(request(text));
    }
    [[nodiscard]] lookup_answer answer(const std::string& text) const {
        return look_up(request(text));
    }
    /// The cause and words of the refusal; fails the test if it is answered.
    [[nodiscard]] std::pair<errc, std::string> refused(const std::string& text) const {
        try {
            static_cast<void>(read(text));
        } catch (const error& e) {
            return {e.code(), e.what()};
        }
        FAIL("answered: " << text);
        return {};
    }
};

asking of_kind(asked_kind k) {
    asking a;
    a.kind = k;
    return a;
}

bool minds(const lookup_answer& a, lookup_caution c) {
    return std::find(a.cautions.begin(), a.cautions.end(), c) != a.cautions.end();
}

/// The answer as a page, on lines as long as they like.
std::string told(const asking& a, const std::string& text, length_unit u) {
    io::print_options o;
    o.units = u;
    o.width = 1000;
    const lookup_request r = a.request(text);
    return text_of(document_of(look_up(r), r, o), u, o.width);
}

bool offers(const std::vector<near_setup>& all, const char* what) {
    return std::any_of(all.begin(), all.end(),
                       [&](const near_setup& n) { return held(n.how) == what; });
}

}  // namespace

TEST_CASE("9 is the blade, and it says how to ask for nine millimetres", "[lookup]") {
    const question q = asking().read("9");
    CHECK(q.what == form::of_blade);
    CHECK(q.tool.tool.id == "9");
    CHECK(q.hints == std::vector{question_hint::as_millimetres});
    const question l = asking().read("9mm");
    CHECK(l.what == form::of_length);
    CHECK(l.wanted == mm(9));
}

TEST_CASE("blades are called as the trade writes them", "[lookup]") {
    struct row {
        const char* text;
        const char* id;
    };
    const row rows[] = {{"7F", "7F"},
                        {"7f", "7F"},
                        {"7FC", "7F"},
                        {" 7F ", "7F"},
                        {"#7F", "7F"},
                        {"blade 7F", "7F"},
                        {"7F blade", "7F"},
                        {"Blade 10", "10"},
                        {"10", "10"},
                        {"40", "40"},
                        {"8", "8"},
                        {"8 1/2", "8.5"},
                        {"8.5", "8.5"},
                        {"8½", "8.5"},
                        {"8 ½", "8.5"},
                        {"blade 8 1/2", "8.5"},
                        {"3¾", "3.75"},
                        {"3 3/4", "3.75"},
                        {"3.75", "3.75"},
                        {"3 ¾", "3.75"},
                        {"5/8 long", "5/8 long"},
                        {"5/8 LONG", "5/8 long"},
                        {"3/4 long", "3/4 long"},
                        {"5/8 toe", "5/8 toe"},
                        {"7/8 toe", "7/8 toe"},
                        {"10W", "10W"},
                        {"10T", "10W"},
                        {"7FT", "7FW"}};
    for (const row& r : rows) {
        INFO(r.text);
        const question q = asking().read(r.text);
        CHECK(q.what == form::of_blade);
        CHECK(q.tool.tool.id == r.id);
        CHECK_FALSE(q.tool.over);
    }
}

TEST_CASE("a length is a length, in millimetres or inches", "[lookup]") {
    struct row {
        const char* text;
        double is;
    };
    const row rows[] = {{"9mm", 9},       {"9 mm", 9},        {"1mm", 1},         {"2 mm", 2},
                        {"3/8in", 9.525}, {"5/8in", 15.875},  {"7/8 in", 22.225}, {"1/2\"", 12.7},
                        {"1.3 cm", 13},   {"1 1/4 in", 31.75}};
    for (const row& r : rows) {
        INFO(r.text);
        const question q = asking().read(r.text);
        CHECK(q.what == form::of_length);
        CHECK_THAT(in_mm(q.wanted), match::WithinAbs(r.is, 1e-9));
    }
}

TEST_CASE("bare 5/8 and 7/8 are asked back: on a toe blade the fraction is its width", "[lookup]") {
    for (const char* text : {"5/8", "7/8", "blade 5/8", "#7/8", " 5/8 "}) {
        for (const asked_kind k : {asked_kind::any, asked_kind::blade}) {
            INFO(text);
            const auto [code, words] = of_kind(k).refused(text);
            CHECK(code == errc::ambiguous);
            CHECK_THAT(words, match::ContainsSubstring("width"));
            CHECK_THAT(words, match::ContainsSubstring("0.8 mm"));
            CHECK_THAT(words, match::ContainsSubstring("toe\""));
        }
    }
    CHECK_THAT(asking().refused("5/8").second, match::ContainsSubstring("16 mm"));
}

TEST_CASE("1 and 2 mean too many things and are asked back, unless somebody says blade",
          "[lookup]") {
    for (const char* text : {"1", "2", " 2 "}) {
        INFO(text);
        const auto [code, words] = asking().refused(text);
        CHECK(code == errc::ambiguous);
        CHECK_THAT(words, match::ContainsSubstring("comb"));
        CHECK_THAT(words, match::ContainsSubstring("mm\""));
    }
    CHECK(of_kind(asked_kind::blade).read("2").tool.tool.id == "2");
    CHECK(asking().read("blade 2").tool.tool.id == "2");
    CHECK(asking().read("Blade 1").tool.tool.id == "1");
}

TEST_CASE("other bare fractions could be a length or a blade", "[lookup]") {
    for (const char* text : {"1/2", "3/8", "3/4"}) {
        INFO(text);
        const auto [code, words] = asking().refused(text);
        CHECK(code == errc::ambiguous);
        CHECK_THAT(words, match::ContainsSubstring(std::string(text) + "in"));
    }
    CHECK_THAT(asking().refused("3/4").second, match::ContainsSubstring("3/4 long"));
}

TEST_CASE("letters that mean nothing are refused, with those that do", "[lookup]") {
    const auto [code, words] = asking().refused("7X");
    CHECK(code == errc::unknown);
    for (const char* known : {"\"7\"", "\"7F\"", "\"X\""}) {
        INFO(known);
        CHECK_THAT(words, match::ContainsSubstring(known));
    }
    CHECK_THAT(asking().refused("40F").second, match::ContainsSubstring("\"40\""));
}

TEST_CASE("what is nothing at all gets a near miss or the ways to ask", "[lookup]") {
    CHECK(asking().refused("7FF").first == errc::unknown);
    for (const char* text : {"hello", "99", "-3", "blade"}) {
        INFO(text);
        const auto [code, words] = asking().refused(text);
        CHECK(code == errc::unknown);
        CHECK_THAT(words, match::ContainsSubstring(text));
    }
    CHECK(asking().refused("12 Fx").first == errc::unit);
    CHECK(asking().refused("").first == errc::missing);
    CHECK(asking().refused("   ").first == errc::missing);
    CHECK(asking().refused(std::string(201, '7')).first == errc::range);
    CHECK(asking().refused("0 mm").first == errc::range);
    CHECK(asking().refused("5000 mm").first == errc::range);
}

TEST_CASE("a bare comb number is no length: sets number both ways", "[lookup]") {
    for (const char* text : {"2", "1", "4"}) {
        INFO(text);
        const auto [code, words] = of_kind(asked_kind::comb).refused(text);
        CHECK(code == errc::ambiguous);
        CHECK_THAT(words, match::ContainsSubstring("sets number both ways"));
    }
    CHECK(asking().refused("comb 2").first == errc::ambiguous);
    CHECK(asking().refused("2 comb over 10").first == errc::ambiguous);
}

TEST_CASE("with the barber convention guard n is n/8 inch", "[lookup]") {
    // common practice, no source; within 0.5 mm, since the trade rounds
    asking a = of_kind(asked_kind::comb);
    a.barber = true;
    for (const int n : {1, 2, 3, 4, 6, 8, 16}) {
        INFO(n);
        const question q = a.read(std::to_string(n));
        CHECK(q.what == form::of_comb);
        REQUIRE(q.tool.over);
        CHECK_THAT(in_mm(q.tool.over->stated.best), match::WithinAbs(25.4 * n / 8, 0.5));
    }
    for (const char* text : {"0", "17", "1.5"}) {
        INFO(text);
        CHECK(a.refused(text).first == errc::ambiguous);
    }
    // only where a comb is meant
    asking any;
    any.barber = true;
    CHECK(any.refused("2").first == errc::ambiguous);
    CHECK(any.read("9").what == form::of_blade);
}

TEST_CASE("a comb stands over the blade kept under combs, or over the one said", "[lookup]") {
    const question plain_comb = asking().read("13 mm comb");
    CHECK(held(plain_comb.tool) == "comb 13 mm over blade 30");
    CHECK(held(asking().read("comb 13mm").tool) == "comb 13 mm over blade 30");
    CHECK(held(asking().read("1/2 in comb over 10").tool) == "comb 13 mm over blade 10");
    CHECK(held(asking().read("13 mm Comb Over blade 40").tool) == "comb 13 mm over blade 40");
    CHECK(held(of_kind(asked_kind::comb).read("13 mm").tool) == "comb 13 mm over blade 30");
    CHECK(asking().refused("13 mm comb over 7X").first == errc::unknown);
}

TEST_CASE("a 13 mm comb over a 10 leaves a millimetre more", "[lookup]") {
    asking a;
    a.coat = coat_class::curly;
    const lookup_answer r = a.answer("13 mm comb over 10");
    REQUIRE(r.stated);
    CHECK_THAT(in_mm(r.stated->best), match::WithinAbs(14, 1e-9));
    REQUIRE(r.leaves.size() == 1);
    CHECK_THAT(in_mm(r.leaves[0].with.best), match::WithinAbs(14, 1e-9));
    CHECK(minds(r, lookup_caution::comb_drops_off));
    CHECK_FALSE(minds(r, lookup_caution::refused));
}

TEST_CASE("a comb over a long or skip-tooth blade is a no", "[lookup]") {
    for (const char* text : {"13 mm comb over 7F", "13 mm comb over 7", "13 mm comb over 4F"}) {
        INFO(text);
        const lookup_answer a = asking().answer(text);
        REQUIRE(a.never.has_value());
        CHECK(a.never->why == answered_no::cause::rule);
        CHECK(a.never->rule == refusal::comb_on_wrong_blade);
        CHECK(a.leaves.empty());
        REQUIRE_FALSE(a.replaces.empty());  // the comb as it may be used
        for (const near_setup& n : a.replaces) {
            CHECK(n.how.over->id == "13 mm");
            CHECK(n.how.tool.id == "30");
        }
    }
    CHECK(asking().answer("13 mm comb over 50").never->rule == refusal::never_50);
}

TEST_CASE("inches name the comb the trade rounds them to", "[lookup]") {
    CHECK(asking().read("1 in comb").tool.over->id == "25 mm");
    CHECK(asking().read("1 in comb").hints.empty());
    CHECK(asking().read("1/4 in comb").tool.over->id == "6 mm");
    const question odd = asking().read("14 mm comb");
    CHECK(odd.tool.over->stated.best == mm(14));
    CHECK(odd.hints == std::vector{question_hint::comb_as_typed});
    CHECK(asking().refused("5000 mm comb").first == errc::range);
}

TEST_CASE("what a test patch of the kit measured wins", "[lookup]") {
    asking a;
    a.coat = coat_class::curly;
    for (kit_comb& c : a.tools.combs) {
        c.measured = c.spec.id == "13 mm" ? std::optional{mm(14.2)} : std::nullopt;
    }
    for (kit_blade& b : a.tools.blades) {
        b.measured = b.spec.id == "7F" ? std::optional{mm(3.6)} : std::nullopt;
    }
    CHECK(a.answer("7F").leaves.front().with.best == mm(3.6));
    CHECK_THAT(in_mm(a.answer("13 mm comb").leaves.front().with.best),
               match::WithinAbs(14.2, 1e-9));
    REQUIRE(a.answer("7F").stated);
    CHECK(a.answer("7F").stated->why.how == basis::measured);
}

TEST_CASE("a blade leaves more with the lay than against it, on every coat but off-standing ones",
          "[lookup]") {
    const lookup_answer a = asking().answer("7F");
    REQUIRE(a.leaves.size() == coat_names.size());
    for (const coat_row& r : a.leaves) {
        INFO(name(r.coat));
        CHECK(r.against.best == mm(3.2));
        CHECK((r.with.best > r.against.best) == (r.coat != coat_class::curly));
        CHECK(r.with.low <= r.with.best);
        CHECK(r.with.best <= r.with.high);
    }
    REQUIRE(a.stated);
    CHECK(a.stated->best == mm(3.2));
    CHECK_FALSE(a.sure.empty());
}

TEST_CASE("7F reversed leaves about what a 10 leaves with the lay, on a flat coat", "[lookup]") {
    // common practice, two educators
    asking a;
    a.coat = coat_class::drop;
    const lookup_answer r = a.answer("7F");
    CHECK(r.judged_on == coat_class::drop);
    CHECK(offers(r.reverse, "blade 10"));
    for (const near_setup& n : r.reverse) {
        CHECK(n.how.way == direction::with_lay);
        CHECK(held(n.how) != "blade 7F");
    }
}

TEST_CASE("what replaces a 4F that is out for sharpening", "[lookup]") {
    asking a;
    a.coat = coat_class::curly;
    a.tools = drawer({"30", "10", "4F"}, {"10 mm", "13 mm"});
    a.tools.blades.back().out_until = parse_date("2026-12-01");
    a.today = parse_date("2026-11-25");
    const lookup_answer r = a.answer("4F");
    CHECK(offers(r.replaces, "comb 10 mm over blade 30"));
    CHECK_FALSE(offers(r.replaces, "blade 4F"));
    CHECK_FALSE(offers(r.replaces, "comb 13 mm over blade 30"));
    for (const near_setup& n : r.replaces) {
        INFO(held(n.how));
        const bool here =
            held(n.how) == "comb 10 mm over blade 30" || held(n.how) == "comb 10 mm over blade 10";
        CHECK(n.at_hand == here);
        CHECK(n.off <= mm(1.5));
    }
    // what is at hand first, and the longer side before the shorter
    CHECK(std::is_sorted(
        r.replaces.begin(), r.replaces.end(),
        [](const near_setup& x, const near_setup& y) { return x.at_hand && !y.at_hand; }));
    CHECK(r.replaces.front().leaves.best >= mm(9.5));
}

TEST_CASE("nearest to nine millimetres: by coat, nearest first, from what is at hand", "[lookup]") {
    const lookup_answer all = asking().answer("9mm");
    CHECK(all.nearest.size() == coat_names.size());
    CHECK_FALSE(all.stated);
    CHECK(all.leaves.empty());
    for (const nearest_row& r : all.nearest) {
        INFO(name(r.coat));
        REQUIRE(r.best.size() == 3);
        for (std::size_t i = 0; i < r.best.size(); ++i) {
            const near_setup& n = r.best[i];
            CHECK(n.off == gap(n.leaves.best, mm(9)));
            CHECK(n.at_hand);
            CHECK((i == 0 || in_hundredths(r.best[i - 1].off) <= in_hundredths(n.off)));
            CHECK(held(n.how) != "blade 4F");  // out for sharpening
        }
    }
    asking a;
    a.coat = coat_class::curly;
    a.way = direction::against_lay;
    const lookup_answer one = a.answer("9.9 mm");
    REQUIRE(one.nearest.size() == 1);
    CHECK(title(one.nearest[0].best[0].how) == "comb 10 mm over blade 30, against the lay");
    for (const near_setup& n : one.nearest[0].best) {
        CHECK(n.how.way == direction::against_lay);
    }
}

TEST_CASE("what may not be used in the zone asked about stands last and says why", "[lookup]") {
    asking a;
    a.coat = coat_class::curly;
    a.tools = drawer({"30", "10", "7", "7F"}, {"3 mm"});
    a.where = {at("groin")};
    const lookup_answer r = a.answer("0.5mm");
    REQUIRE(r.nearest.size() == 1);
    bool refused_before = false;
    for (const near_setup& n : r.nearest[0].best) {
        INFO(title(n.how));
        CHECK((!refused_before || n.why_not));
        refused_before = refused_before || n.why_not;
        CHECK((n.how.tool.id != "30" || n.how.over || n.why_not));
    }
    // skip teeth asked for where skin is thin
    const lookup_answer skip = a.answer("7");
    REQUIRE(skip.never.has_value());
    CHECK(skip.never->why == answered_no::cause::there);
    REQUIRE(skip.there.has_value());
    CHECK(skip.there->use == use_there::may::not_at_all);
    REQUIRE(skip.there->no.has_value());
    CHECK(skip.there->no->why == no_go::cause::rule);
    CHECK(skip.there->no->rule == refusal::skip_teeth_here);
    CHECK(skip.there->no->where == a.where);
}

TEST_CASE("the cautions that belong to the blade", "[lookup]") {
    CHECK(minds(asking().answer("7"), lookup_caution::fold_of_skin));
    CHECK_FALSE(minds(asking().answer("7F"), lookup_caution::fold_of_skin));
    CHECK(minds(asking().answer("8.5"), lookup_caution::teeth_unknown));
    CHECK(minds(asking().answer("5/8 toe"), lookup_caution::fraction_is_width));
    CHECK(minds(asking().answer("10"), lookup_caution::short_irritates));
    CHECK_FALSE(minds(asking().answer("9"), lookup_caution::short_irritates));
    const lookup_answer fifty = asking().answer("50");
    CHECK(minds(fifty, lookup_caution::refused));
    REQUIRE(fifty.on_firm_skin.has_value());
    CHECK(fifty.on_firm_skin->rule == refusal::never_50);
}

TEST_CASE("a look-up is told in the units asked for", "[lookup]") {
    asking a;
    a.coat = coat_class::smooth;
    CHECK_THAT(told(a, "25mm", length_unit::mm),
               match::ContainsSubstring("no blade or comb leaves 25 mm of a smooth coat: its hair "
                                        "stops at about 22 mm"));
    CHECK_THAT(told(a, "25mm", length_unit::inch),
               match::ContainsSubstring("no blade or comb leaves 1 in of a smooth coat: its hair "
                                        "stops at about 7/8 in"));
    a.coat = coat_class::curly;
    const std::string comb = told(a, "13 mm comb", length_unit::inch);
    CHECK_THAT(comb, match::StartsWith("comb 1/2 in over blade 30. Stated length 1/2 in."));
    for (const char* text : {"7F", "10", "9mm", "13 mm comb", "14 mm comb", "4F"}) {
        INFO(text);
        CHECK_THAT(told(a, text, length_unit::inch), !match::ContainsSubstring(" mm"));
    }
    CHECK_THAT(told(a, "10", length_unit::mm),
               match::ContainsSubstring("(for 10 millimetres type 10mm)"));
}

TEST_CASE("what may not go on the body leads no answer about a length", "[lookup]") {
    for (const char* text : {"0.5 mm", "1 mm", "1.5 mm", "2 mm", "3 mm", "9 mm", "13 mm"}) {
        for (const nearest_row& row : asking{}.answer(text).nearest) {
            INFO(text << " on " << name(row.coat));
            CHECK((row.best.empty() || !row.best.front().why_not));
        }
    }
}

TEST_CASE("in place of what goes on the body stands what does, and rather longer", "[lookup]") {
    for (const char* text : {"10", "9", "7F", "5F", "4F"}) {
        const lookup_answer a = asking{}.answer(text);
        for (const nearest_row& row : a.replaces_by_coat) {
            for (const near_setup& n : row.best) {
                INFO(text << " on " << name(row.coat) << ": " << title(n.how));
                CHECK(!n.why_not);
            }
        }
    }
    for (const char* text : {"15", "30", "40"}) {  // never one that is shorter still
        for (const nearest_row& row : asking{}.answer(text).replaces_by_coat) {
            for (const near_setup& n : row.best) {
                INFO(text << " on " << name(row.coat) << ": " << title(n.how));
                CHECK((!n.why_not || n.leaves.best >= n.wanted));
            }
        }
    }
    const lookup_answer surgical = asking{}.answer("50");
    CHECK(surgical.replaces.empty());
    CHECK(surgical.replaces_by_coat.empty());
}

TEST_CASE("nobody is sent to a 50", "[lookup]") {
    asking a;
    for (const char* text : {"40", "30"}) {
        INFO(text);
        CHECK_FALSE(offers(a.answer(text).replaces, "blade 50"));
        CHECK_FALSE(offers(a.answer(text).reverse, "blade 50"));
    }
    a.tools = drawer({"50", "30", "10"});
    a.coat = coat_class::curly;
    const lookup_answer r = a.answer("0.2 mm");
    REQUIRE(r.nearest.size() == 1);
    for (const near_setup& n : r.nearest[0].best) {
        CHECK((n.how.tool.id != "50" || n.why_not));
    }
    // nor to a 30: what may go there comes first
    CHECK(r.nearest[0].best.front().how.tool.id == "10");
    CHECK_FALSE(r.nearest[0].best.front().why_not);
}

TEST_CASE("every figure of an answer says how it is known", "[lookup]") {
    asking a;
    CHECK_FALSE(a.answer("9mm").sure.empty());
    a.coat = coat_class::wavy;
    for (const char* text : {"7F", "9mm", "13 mm comb"}) {
        INFO(text);
        const lookup_answer r = a.answer(text);
        CHECK(std::any_of(r.sure.begin(), r.sure.end(), [](const known_figure& f) {
            return f.what == lookup_figure::lay_angle;
        }));
    }
}
