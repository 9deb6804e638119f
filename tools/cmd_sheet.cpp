#include <algorithm>

#include <pelage/io/sheets.hpp>
#include <pelage/sheet_check.hpp>
#include <pelage/sheet_compare.hpp>
#include <pelage/suggest.hpp>
#include <pelage/text.hpp>
#include <pelage/upkeep.hpp>

#include "commands.hpp"
#include "judge.hpp"
#include "sheet_files.hpp"

namespace pelage::cli {

namespace {

const std::vector<std::string> actions{"check", "show", "list", "new", "compare"};

reply check(const request& q, const workplace& w, faults& f) {
    const std::vector<style> all = plain_sheets(w);
    std::optional<style> standard;
    if (!q.against.empty()) {
        standard = sheet_called(q.against, all, w, "--against: ", f);
        if (standard && standard->limits.empty()) {
            f.say(errc::conflict, "--against: the sheet \"" + standard->id +
                                      "\" states no limits; write one that does, such as lagotto");
        }
    }
    f.throw_if_any();
    std::vector<io::checked_sheet> checked;
    if (q.operands.size() > 1) {
        const asked_files asked = files_at({q.operands.begin() + 1, q.operands.end()}, w.reference);
        const kit* tools = asked.tools ? &*asked.tools : w.own ? &w.own->tools : nullptr;
        for (io::sheet_file& one :
             io::read_sheet_files(asked.files, asked.beside, w.reference, all, tools)) {
            checked.push_back({std::move(one), {}});
        }
    } else {
        for (const style& s : all) {
            checked.push_back({{s.at.file, s, {}, false}, {}});
        }
    }
    bool faulty = false;
    bool no = false;
    for (io::checked_sheet& one : checked) {
        faulty = faulty || !one.read.sheet;
        if (one.read.sheet) {
            one.doubts = doubts_about(*one.read.sheet, w.reference, w.place().rules);
            if (standard) {
                one.broken = broken_limits(*one.read.sheet, *standard, w.reference);
            }
        }
        no = no || !one.broken.empty() ||
             std::any_of(one.doubts.begin(), one.doubts.end(),
                         [](const sheet_warning& d) { return graver(d.what); });
    }
    reply r{w.json ? io::json_of(checked, w.reference) : io::text_of(checked, w.reference, w.print),
            faulty ? bad_data
            : no   ? answer_is_no
                   : done};
    if (faulty) {
        r.said = "pelage: error: not every sheet can be read\n";
    }
    return r;
}

/// A dog of no name for a sheet: of its first coat unless another is asked.
dog dog_for(const request& q, const style& s, const workplace& w, faults& f) {
    dog d;
    const std::vector<coat_class> coats = coats_for(s, w.reference);
    d.coat = coats.empty() ? coat_class::wavy : coats.front();
    d.brushed = parse_brushing(s.upkeep).value_or(brushing{habit::two_or_three, true});
    d.consents = s.consent;
    lay_options(q, d, f);
    return d;
}

reply show_sheet(const request& q, const workplace& w, faults& f) {
    if (q.operands.size() != 2) {
        f.say(errc::usage,
              "sheet show: one sheet is shown at a time; write its id or its file, as "
              "in sheet show one-length");
    }
    f.throw_if_any();
    const auto plain = sheet_called(q.operands[1], plain_sheets(w), w, "", f);
    f.throw_if_any();
    const style s = asked_season(q, *plain, w.print.today);
    judge_season(q, s, f);
    dog d = dog_for(q, s, w, f);
    f.throw_if_any();
    d.consents.emplace_back(
        "clip-jacket");  // the page shows the sheet; it says what is to be agreed
    const groom_request r{w.reference, w.place().rules, w.tools(), d, s, w.print.today};
    const groom g = plan_groom(r);
    if (w.json) {
        return {io::sheet_json(s, g, r)};
    }
    return {io::sheet_page(s, g, r, w.print) +
            (w.own || w.own_kit ? ""
                                : "The kit is that of the invented demo salon; --kit FILE or "
                                  "--salon DIR for yours.\n")};
}

reply list_sheets(const request& q, const workplace& w, faults& f) {
    if (q.operands.size() > 1) {
        f.say(errc::usage, "sheet list: found \"" + q.operands[1] +
                               "\"; leave it out, or write sheet list --for 'a x b'");
    }
    f.throw_if_any();
    const std::vector<style> all = plain_sheets(w);
    if (q.suits.empty()) {
        std::vector<io::listed_sheet> listed;
        for (const style& s : all) {
            listed.push_back({&s});
        }
        return {w.json ? io::list_json(listed, nullptr, w.reference)
                       : io::list_text(listed, nullptr, w.reference, w.print)};
    }
    const expected_coat mix = expect_coat(q.suits, w.reference.genes, w.reference.coats);
    const auto listed = io::sheets_for(all, mix, w.reference);
    const bool any = std::any_of(listed.begin(), listed.end(), [](const io::listed_sheet& one) {
        return one.for_mix || one.for_coat;
    });
    return {w.json ? io::list_json(listed, &mix, w.reference)
                   : io::list_text(listed, &mix, w.reference, w.print),
            any ? done : answer_is_no};
}

reply begin_sheet(const request& q, const workplace& w, faults& f) {
    const bool one = q.operands.size() == 2;
    if (!one || !io::sheet_id(q.operands[1])) {
        f.say(errc::usage,
              "sheet new: a sheet has one id of a-z, 0-9 and -, beginning with a "
              "letter; found " +
                  (one ? "\"" + q.operands[1] + "\"" : "none or several") +
                  "; write it like sheet new summer-doodle");
    }
    const auto coat = q.coat.empty() ? std::nullopt : coat_called(q.coat, f);
    coat_class hair = coat.value_or(coat_class::wavy);
    if (!q.suits.empty() && !coat) {
        hair = expect_coat(q.suits, w.reference.genes, w.reference.coats).may_be.likeliest();
    }
    f.throw_if_any();
    return {io::new_sheet(q.operands[1], coat, hair, q.suits, w.print.today)};
}

reply compare(const request& q, const workplace& w, const surroundings& around, faults& f) {
    if (q.operands.size() < 3 || q.operands.size() > 4) {
        f.say(errc::usage,
              "sheet compare: two sheets are compared, on a dog if you name one; write "
              "it like sheet compare one-length low-upkeep biscuit");
    }
    f.throw_if_any();
    const std::vector<style> all = plain_sheets(w);
    const auto one = sheet_called(q.operands[1], all, w, "", f);
    const auto two = sheet_called(q.operands[2], all, w, "", f);
    f.throw_if_any();
    const style a = asked_season(q, *one, w.print.today);
    const style b = asked_season(q, *two, w.print.today);
    if (season_called(*one, q.season) == nullptr) {  // one of the two may be without it
        judge_season(q, b, f);
    }
    dog d;
    if (q.operands.size() == 4) {
        request of_dog = q;
        of_dog.operands = {q.operands[3]};
        d = dog_of(of_dog, w, around, f);
    } else {
        d = dog_for(q, a, w, f);
        const auto of_a = coats_for(a, w.reference);
        const auto of_b = coats_for(b, w.reference);
        const auto common = std::find_if(of_a.begin(), of_a.end(), [&](coat_class k) {
            return std::find(of_b.begin(), of_b.end(), k) != of_b.end();
        });
        d.coat = q.coat.empty() && common != of_a.end() ? std::optional{*common} : d.coat;
    }
    const auto chance_asked = q.chance.empty() ? std::nullopt : chance_in(q.chance, f);
    f.throw_if_any();
    (void)coat_by_mix(d, w);
    d.body_length.reset();
    assume_upkeep(d, a);
    const groom_request ra{w.reference, w.place().rules, w.tools(),   d,
                           a,           w.print.today,   chance_asked};
    const groom_request rb{w.reference, w.place().rules, w.tools(),   d,
                           b,           w.print.today,   chance_asked};
    const sheet_comparison c = compare_sheets(ra, rb, w.place().closed);
    return {w.json ? io::json_of(c, ra) : io::text_of(c, ra, w.print)};
}

}  // namespace

reply sheet(const request& q, const surroundings& around) {
    faults f;
    const std::string what = q.operands.empty() ? "" : q.operands.front();
    if (std::find(actions.begin(), actions.end(), what) == actions.end()) {
        f.say(errc::usage,
              what.empty() ? "sheet: found nothing to do; write check, show, list, new or compare"
                           : "sheet: found \"" + what + "\"" + did_you_mean(what, actions) +
                                 "; write check, show, list, new or compare");
        f.throw_if_any();
    }
    const workplace w = workplace_of(q, around, f);
    return what == "check"  ? check(q, w, f)
           : what == "show" ? show_sheet(q, w, f)
           : what == "list" ? list_sheets(q, w, f)
           : what == "new"  ? begin_sheet(q, w, f)
                            : compare(q, w, around, f);
}

}  // namespace pelage::cli
