// The kit: checked, measured with a test patch, and what to buy for it.
#include <pelage/answers/kit.hpp>
#include <pelage/answers/sheets.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/data/salon_file.hpp>

#include "command.hpp"
#include "resolve_arguments.hpp"
#include "sheet_files.hpp"

namespace pelage::cli {

namespace {

/// The sheets of a folder, which may extend one another; names may mean the kit's own blades.
std::vector<style> sheets_in(const std::string& dir, const workplace& w) {
    return io::read_sheet_folder(dir, w.reference, &w.tools());
}

struct kit_options : common_options {
    explicit kit_options(CLI::App& a) : common_options(a) {
        excludes(app, "--with-reference", {"--sheets"});
    }
    text_option sheets{app, "--sheets", "DIR", "a folder of style sheets, in place of the salon's",
                       heading::place};
    flag_option with_reference{app, "--with-reference", "the reference's sheets, too",
                               heading::place};
};

/// Whose sheets a kit is judged by.
struct asked_sheets {
    std::vector<style> all;
    bool own_alone = false;  ///< the salon's, without the reference's
};

/// The salon's own, unless others are asked for or it has none.
asked_sheets sheets_for(const kit_options& o, const workplace& w) {
    if (!o.sheets.empty()) {
        return {sheets_in(o.sheets, w)};
    }
    std::vector<style> own = own_sheets(w);
    return o.with_reference || own.empty() ? asked_sheets{w.place().styles}
                                           : asked_sheets{std::move(own), true};
}

/// The document as it is asked for, with a word on whose sheets were looked at.
std::string written(io::document d, const asked_sheets& sheets, const workplace& w) {
    if (sheets.own_alone) {
        d.add({io::line_as::paragraph, "Your own sheets alone (" +
                                           std::to_string(sheets.all.size()) +
                                           "); --with-reference adds the reference's."});
    }
    return w.written(d);
}

struct check_options : kit_options {
    using kit_options::kit_options;
    text_option file{app, "file", "FILE", "a salon file; else the salon's own kit"};
};

constexpr introduction about_check{
    "check", "what is unsafe, mislabelled, out, idle or missing",
    "pelage kit check\n"
    "pelage kit check my-salon/salon.toml --sheets my-salon/styles\n",
    "", "text, json, html"};

reply check(check_options& o, const surroundings& around) {
    o.has.csv = false;
    faults f;
    const workplace w = workplace_of(o, around, f);
    f.throw_if_any();
    std::optional<salon_files> file;
    if (!o.file.empty()) {
        file = io::read_salon(io::read_text(o.file), w.reference);
    }
    const asked_sheets sheets = sheets_for(o, w);
    const kit_check_request r{w.reference, file ? file->rules : w.place().rules,
                              file ? file->tools : w.tools(), sheets.all, w.print.today};
    const kit_check c = check_kit(r);
    return {w.json ? io::json_of(c, r) : written(io::document_of(c, r, w.print), sheets, w),
            c.amiss() ? answer_is_no : done};
}

struct measure_options : kit_options {
    using kit_options::kit_options;
    list_option tool{app, "tool", "TOOL", "what was run over the patch: 7F, '13 mm comb over 30'"};
    text_option coat{app, "--coat", "COAT", "the coat of the patch"};
    text_option zone{app, "--zone", "ZONE", "where the patch is"};
    text_option direction{app, "--direction", "WAY", "with the lay (if not said) or against"};
    text_option length{app, "--length", "LENGTH", "what was left, combed out and dry"};
    text_option sets{app, "--sets", "WHICH", "lay or tool, where it could set either"};
};

constexpr introduction about_measure{
    "measure", "what a test patch teaches; it changes no file",
    "pelage kit measure 7F --coat drop --zone back --length 5.8mm\n"
    "pelage kit measure 10 --coat wavy --direction against --length 1.8mm\n"};

/// What the words after "measure" hold: "7F", "13 mm comb over 30".
setup tool_called(const std::string& text, const workplace& w, direction way) {
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

reply measure(measure_options& o, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(o, around, f);
    if (o.tool.empty()) {
        f.say(errc::missing, "measure: which blade or comb? write it like kit measure 7F");
    }
    if (o.coat.empty()) {
        f.say(errc::missing, "measure: the coat of the patch isn't said; write --coat wavy");
    }
    if (o.length.empty()) {
        f.say(errc::missing, "measure: what was left isn't said; write --length 4.1mm");
    }
    const auto coat = o.coat.empty() ? std::nullopt : coat_called(o.coat, f);
    const auto found = o.length.empty() ? std::nullopt : length_in("--length", o.length, f);
    const auto where = o.zone.empty() ? std::nullopt : zone_called(o.zone, w.reference.dog_body, f);
    const auto way = direction_called(o.direction, f).value_or(direction::with_lay);
    const auto said = choice_in("--sets", o.sets, {"lay", "tool"}, f);
    const patch_sets sets = !said        ? patch_sets::by_direction
                            : *said == 0 ? patch_sets::lay
                                         : patch_sets::tool;
    f.throw_if_any();
    const asked_sheets sheets = sheets_for(o, w);
    const test_patch r{w.reference,
                       w.place().rules,
                       w.tools(),
                       sheets.all,
                       tool_called(joined(o.tool, " "), w, way),
                       *coat,
                       where,
                       *found,
                       sets,
                       w.print.today};
    const calibration l = read_patch(r);
    if (l.refused) {
        throw error(errc::refused, io::refusal_text(l, r, w.print.units));
    }
    return {w.json ? io::json_of(l, r) : written(io::document_of(l, r, w.print), sheets, w)};
}

struct buy_options : kit_options {
    using kit_options::kit_options;
    text_option most{app, "--most", "N", "at most so many things, 1 to 40; 5 if not said"};
    text_option offers{app, "--offers", "FILE",
                       "a salon file whose kit is offered; price = \"24 EUR\""};
    flag_option from_nothing{app, "--from-nothing", "for an empty drawer"};
};

constexpr introduction about_buy{
    "buy", "the best few things to buy for the sheets, proven",
    "pelage kit buy --most 3\n"
    "pelage kit buy --from-nothing --sheets reference/styles --most 8\n"};

/// What is offered, with the prices that its file says.
std::vector<ware> wares_in(const buy_options& o, const kit& own, const reference_data& c) {
    if (o.offers.empty()) {
        return usual_wares(c, own);
    }
    const io::document_text offered = io::read_text(o.offers);
    std::vector<ware> wares = wares_of(io::read_kit(offered, c), own);
    io::add_prices(wares, offered, c);
    return wares;
}

reply buy(buy_options& o, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(o, around, f);
    const auto most = o.most.empty()
                          ? std::optional{5U}
                          : whole_in("--most", o.most, 1, 40, "write it like --most 5", f);
    f.throw_if_any();
    kit empty;
    empty.title = "an empty drawer";
    const kit& own = o.from_nothing ? empty : w.tools();
    const asked_sheets sheets = sheets_for(o, w);
    const shopping_request r{w.reference,
                             w.place().rules,
                             own,
                             sheets.all,
                             wares_in(o, own, w.reference),
                             *most,
                             w.print.today,
                             places_in(w.tools(), w.place().groomers)};
    const shopping s = what_to_buy(r);
    return {w.json ? io::json_of(s, r) : written(io::document_of(s, r, w.print), sheets, w)};
}

}  // namespace

void add_kit(CLI::App& root, task& chosen) {
    CLI::App& kit = add_subcommand(root, {"kit", "the kit: sound or not, measured, added to", ""});
    add_command<check_options>(kit, chosen, about_check, check);
    add_command<measure_options>(kit, chosen, about_measure, measure);
    add_command<buy_options>(kit, chosen, about_buy, buy);
}

}  // namespace pelage::cli
