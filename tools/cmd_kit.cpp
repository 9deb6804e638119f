// The kit: checked, measured with a test patch, and what to buy for it.
#include <algorithm>
#include <charconv>

#include <pelage/io/sheets.hpp>
#include <pelage/io/write_kit.hpp>
#include <pelage/suggest.hpp>

#include "commands.hpp"
#include "judge.hpp"

namespace pelage::cli {

namespace {

/// The sheets of a folder, which may extend one another; names may mean the kit's own blades.
std::vector<style> sheets_in(const std::string& dir, const workplace& w) {
    return io::read_sheet_folder(dir, w.reference, &w.tools());
}

std::vector<style> sheets_for(const request& q, const workplace& w) {
    return q.sheets.empty() ? w.place().styles : sheets_in(q.sheets, w);
}

reply check(const request& q, workplace& w, faults& f) {
    std::optional<salon> file;
    if (q.operands.size() > 2) {
        f.say(errc::usage, "one kit at a time; found \"" + q.operands[2] + "\" too");
    }
    f.throw_if_any();
    if (q.operands.size() == 2) {
        file = io::read_salon(io::slurp(q.operands[1]), w.reference);
    }
    const std::vector<style> sheets = sheets_for(q, w);
    const drawer_request r{w.reference, file ? file->rules : w.place().rules,
                           file ? file->tools : w.tools(), sheets, w.print.today};
    const drawer_check c = check_drawer(r);
    return {w.json ? io::json_of(c, r) : io::text_of(c, r, w.print),
            c.amiss() ? answer_is_no : done};
}

patch_sets sets_called(const std::string& text, faults& f) {
    if (!text.empty() && text != "lay" && text != "tool") {
        f.say(errc::unknown, "--sets: found \"" + text + "\"; write lay or tool");
    }
    return text == "lay"    ? patch_sets::lay
           : text == "tool" ? patch_sets::tool
                            : patch_sets::by_direction;
}

/// What the words after "measure" hold: "7F", "13 mm comb over 30".
setup tool_called(const request& q, const workplace& w, direction way) {
    std::string text;
    for (std::size_t i = 1; i < q.operands.size(); ++i) {
        text += (i == 1 ? "" : " ") + q.operands[i];
    }
    const lookup_request ask{
        w.reference, w.place().rules, w.tools(), text, asked_kind::any, false, {}, {},
        {},          w.print.today};
    question asked = read_question(ask);
    if (asked.what == question::form::of_length) {
        throw error(errc::type,
                    "measure: a blade or a comb was run over the patch; found the "
                    "length \"" +
                        text + "\"; write it like 7F or '13 mm comb'");
    }
    asked.tool.way = way;
    return asked.tool;
}

reply measure(const request& q, workplace& w, faults& f) {
    if (q.operands.size() < 2) {
        f.say(errc::missing, "measure: which blade or comb? write it like kit measure 7F");
    }
    if (q.coat.empty()) {
        f.say(errc::missing, "measure: the coat of the patch isn't said; write --coat wavy");
    }
    if (q.length.empty()) {
        f.say(errc::missing, "measure: what was left isn't said; write --length 4.1mm");
    }
    const auto coat = q.coat.empty() ? std::nullopt : coat_called(q.coat, f);
    const auto found = q.length.empty() ? std::nullopt : length_in("--length", q.length, f);
    const auto where = q.zone.empty() ? std::nullopt : zone_called(q.zone, w.reference.dog_body, f);
    const auto way = q.direction.empty() ? direction::with_lay
                                         : direction_called(q.direction, f).value_or(direction{});
    const patch_sets sets = sets_called(q.sets, f);
    f.throw_if_any();
    const std::vector<style> sheets = sheets_for(q, w);
    const patch_request r{w.reference, w.place().rules, w.tools(), sheets, tool_called(q, w, way),
                          *coat,       where,           *found,    sets,   w.print.today};
    const patch_lesson l = read_patch(r);
    if (l.refused) {
        throw error(errc::refused, io::refusal_text(l, r, w.print.units));
    }
    return {w.json ? io::json_of(l, r) : io::text_of(l, r, w.print)};
}

std::size_t most_in(const std::string& text, faults& f) {
    if (text.empty()) {
        return 5;
    }
    std::size_t n = 0;
    const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), n);
    if (failed == std::errc{} && end == text.data() + text.size() && n >= 1 && n <= 40) {
        return n;
    }
    f.say(errc::range,
          "--most: a whole number from 1 to 40; found \"" + text + "\"; write it like --most 5");
    return 5;
}

reply buy(const request& q, workplace& w, faults& f) {
    if (q.operands.size() > 1) {
        f.say(errc::usage, "buy: nothing comes after it; found \"" + q.operands[1] +
                               "\"; what is offered is named by --catalogue FILE");
    }
    const std::size_t most = most_in(q.most, f);
    f.throw_if_any();
    kit empty;
    empty.title = "an empty drawer";
    const kit& own = q.from_nothing ? empty : w.tools();
    const std::vector<style> sheets = sheets_for(q, w);
    const std::vector<ware> wares =
        q.catalogue.empty() ? usual_wares(w.reference, own)
                            : wares_of(io::read_kit(io::slurp(q.catalogue), w.reference), own);
    const shopping_request r{w.reference, w.place().rules, own, sheets, wares, most, w.print.today};
    const shopping s = what_to_buy(r);
    return {w.json ? io::json_of(s, r) : io::text_of(s, r, w.print)};
}

}  // namespace

reply kit_of(const request& q, const surroundings& around) {
    faults f;
    workplace w = workplace_of(q, around, f);
    const std::string what = q.operands.empty() ? "" : q.operands.front();
    if (what == "check") {
        return check(q, w, f);
    }
    if (what == "measure") {
        return measure(q, w, f);
    }
    if (what == "buy") {
        return buy(q, w, f);
    }
    f.say(errc::usage, what.empty() ? "kit: what with it? write kit check, kit measure or kit buy"
                                    : "kit: unknown; found \"" + what + "\"" +
                                          did_you_mean(what, {"check", "measure", "buy"}) +
                                          "; write check, measure or buy");
    f.throw_if_any();
    return {};
}

}  // namespace pelage::cli
