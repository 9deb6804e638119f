#include <algorithm>

#include <pelage/answers/kit.hpp>
#include <pelage/answers/sheets.hpp>
#include <pelage/answers/style_book.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/model/hair_by_record.hpp>
#include <pelage/sheets/check.hpp>
#include <pelage/sheets/compare.hpp>
#include <pelage/trade/upkeep.hpp>

#include "command.hpp"
#include "resolve_arguments.hpp"
#include "sheet_files.hpp"

namespace pelage::cli {

namespace {

struct check_options : common_options {
    using common_options::common_options;
    list_option paths{app, "path", "PATH", "a sheet's file, a folder of them or of a salon"};
    text_option against{app, "--against", "ID", "the limits of another sheet, by id or file"};
};

constexpr introduction about_check{
    "check", "are sheets sound, and within the limits of another",
    "pelage sheet check reference/styles --against lagotto\n",
    "Without a PATH all sheets of the salon and of the reference are checked.\n"
    "It ends with 0 clean or with advice only, 1 something can't be had as written (a\n"
    "limit broken, a blade not used there, hair that doesn't grow so long), 3 faulty.\n",
    "text, json, html"};

/// The sheet whose limits are held against others.
std::optional<style> standard_of(const check_options& o, const std::vector<style>& all,
                                 const workplace& w, faults& f) {
    if (o.against.empty()) {
        return std::nullopt;
    }
    auto standard = sheet_called(o.against, all, w, "--against: ", f);
    if (standard && standard->limits.empty()) {
        f.say(errc::conflict, "--against: the sheet \"" + standard->id +
                                  "\" states no limits; write one that does, such as lagotto");
    }
    return standard;
}

/// The sheets of the files asked for, or all that are in force.
std::vector<io::checked_sheet> sheets_to_check(const check_options& o,
                                               const std::vector<style>& all, const workplace& w) {
    std::vector<io::checked_sheet> out;
    if (o.paths.empty()) {
        for (const style& s : all) {
            out.push_back({{s.at.file, s, {}, false}, {}});
        }
        return out;
    }
    const asked_files asked = files_at(o.paths, w.reference);
    const kit* tools = asked.tools ? &*asked.tools : w.own ? &w.own->tools : nullptr;
    for (io::sheet_file& one :
         io::read_sheet_files(asked.files, asked.beside, w.reference, all, tools)) {
        out.push_back({std::move(one), {}});
    }
    return out;
}

reply check(check_options& o, const surroundings& around) {
    o.has.csv = false;
    faults f;
    const workplace w = workplace_of(o, around, f);
    const std::vector<style> all = plain_sheets(w);
    const std::optional<style> standard = standard_of(o, all, w, f);
    f.throw_if_any();
    std::vector<io::checked_sheet> checked = sheets_to_check(o, all, w);
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
    reply r{w.json ? io::json_of(checked, w.reference)
                   : w.written(io::document_of(checked, w.reference, w.print)),
            faulty ? bad_data
            : no   ? answer_is_no
                   : done};
    if (faulty) {
        r.said = "pelage: error: not every sheet can be read\n";
    }
    return r;
}

struct show_options : common_options {
    explicit show_options(CLI::App& a) : common_options(a) {
        keep_of_dog(app, {"--coat", "--size", "--season"});
    }
    text_option sheet{app, "sheet", "ID", "the sheet, by id or file"};
    dog_options dog{app};
};

constexpr introduction about_show{
    "show", "a sheet as a page for the wall", "pelage sheet show one-length --coat curly\n",
    "ID is a sheet of the salon or of the reference, or a file that ends in .toml.\n",
    "text, json, html, csv; the picture svg"};

/// A dog of no name for a sheet: of its first coat.
dog dog_for(const style& s, const workplace& w) {
    dog d;
    const std::vector<coat_class> coats = coats_for(s, w.reference);
    d.coat = coats.empty() ? coat_class::wavy : coats.front();
    d.brushed = parse_brushing(s.upkeep).value_or(brushing{habit::two_or_three, true});
    d.consents = s.consent;
    return d;
}

/// The same, of the coat and size that are asked for.
dog dog_for(const dog_options& o, const style& s, const workplace& w, faults& f) {
    dog d = dog_for(s, w);
    apply_options(o, w, d, f);
    return d;
}

reply show(show_options& o, const surroundings& around) {
    o.has.svg = true;
    faults f;
    const workplace w = workplace_of(o, around, f, o.dog.season);
    if (o.sheet.empty()) {
        f.say(errc::usage,
              "sheet show: one sheet is shown at a time; write its id or its file, as "
              "in sheet show one-length");
    }
    f.throw_if_any();
    const auto plain = sheet_called(o.sheet, plain_sheets(w), w, "", f);
    f.throw_if_any();
    const style s = asked_season(o.dog.season, *plain, w.print.today);
    check_season(o.dog.season, s, f);
    dog d = dog_for(o.dog, s, w, f);
    f.throw_if_any();
    (void)coat_by_mix(d, w);
    d.consents.emplace_back("clip-jacket");  // the page shows the sheet, and what is to be signed
    const plan_request r{w.reference, w.place().rules, w.tools(), d, s, w.print.today};
    const groom g = make_plan(r);
    if (w.json) {
        return {io::sheet_json(s, g, r)};
    }
    io::document page = io::sheet_page(s, g, r, w.print);
    if (!w.own && !w.own_kit) {
        page.add({io::line_as::paragraph,
                  "The kit is that of the invented demo salon; --kit FILE or --salon DIR for "
                  "yours."});
    }
    if (!w.html && !w.svg) {
        return {w.written(page)};
    }
    const outline& drawn_dog = io::dog_outline();
    const io::dog_picture drawn =
        picture_of(io::picture_of(g, r, drawn_dog, w.print.units), drawn_dog, w.reference.dog_body);
    return {w.svg ? svg_of(drawn) : w.written(io::with_dog_drawn(std::move(page), drawn, *d.coat))};
}

struct list_options : common_options {
    using common_options::common_options;
    text_option suits{app, "--for", "MIX", "sheets for the coats of a mix"};
};

constexpr introduction about_list{"list", "the sheets there are, or those for a mix",
                                  "pelage sheet list\n"
                                  "pelage sheet list --for 'miniature poodle x cocker spaniel'\n",
                                  "It ends with 1 if no sheet is for such a coat.\n"};

reply list(list_options& o, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(o, around, f);
    f.throw_if_any();
    const std::vector<style> all = plain_sheets(w);
    if (o.suits.empty()) {
        std::vector<io::listed_sheet> listed;
        for (const style& s : all) {
            listed.push_back({&s});
        }
        // the salon's own first: they are what is asked for
        std::stable_partition(listed.begin(), listed.end(), [&](const io::listed_sheet& one) {
            return find(w.reference.styles, one.sheet->id) == nullptr;
        });
        return {w.json ? io::list_json(listed, nullptr, w.reference)
                       : w.written(io::sheet_list(listed, nullptr, w.reference))};
    }
    const expected_coat mix = expect_coat(o.suits, w.reference.genes, w.reference.coats);
    const auto listed = io::sheets_for(all, mix, w.reference);
    const bool any = std::any_of(listed.begin(), listed.end(), [](const io::listed_sheet& one) {
        return one.for_mix || one.for_coat;
    });
    return {w.json ? io::list_json(listed, &mix, w.reference)
                   : w.written(io::sheet_list(listed, &mix, w.reference)),
            any ? done : answer_is_no};
}

struct new_options : common_options {
    explicit new_options(CLI::App& a) : common_options(a) {
        drop(app, {"--format", "--units", "--explain"});
    }
    text_option id{app, "id", "ID", "what it is called"};
    text_option coat{app, "--coat", "COAT", "the coat it is for", heading::dog};
    text_option suits{app, "--for", "MIX", "the mix it is for", heading::dog};
};

constexpr introduction about_new{"new", "a sheet to begin with, as a file",
                                 "pelage sheet new house -o house.toml\n"};

reply begin(new_options& o, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(o, around, f);
    if (!io::sheet_id(o.id)) {
        f.say(errc::usage,
              "sheet new: a sheet has one id of a-z, 0-9 and -, beginning with a "
              "letter; found " +
                  (o.id.empty() ? "none" : "\"" + o.id + "\"") +
                  "; write it like sheet new summer-doodle");
    }
    const auto coat = o.coat.empty() ? std::nullopt : coat_called(o.coat, f);
    coat_class hair = coat.value_or(coat_class::wavy);
    if (!o.suits.empty() && !coat) {
        hair = expect_coat(o.suits, w.reference.genes, w.reference.coats).may_be.likeliest();
    }
    f.throw_if_any();
    return {io::new_sheet(o.id, coat, hair, o.suits, w.print.today)};
}

struct compare_options : common_options {
    explicit compare_options(CLI::App& a) : common_options(a) {
        keep_of_dog(app, {"dog", "--coat", "--size", "--season", "--brush", "--chance"});
    }
    text_option one{app, "one", "ID", "a sheet, by id or file"};
    text_option other{app, "other", "OTHER", "another"};
    dog_options dog{app};
};

constexpr introduction about_compare{"compare", "two sheets beside one another, on a dog if named",
                                     "pelage sheet compare one-length low-upkeep --coat wavy\n"
                                     "pelage sheet compare one-length low-upkeep biscuit\n"};

/// A dog of no name for two sheets: of a coat that both are for, unless another is asked.
dog common_dog(const dog_options& o, const style& a, const style& b, const workplace& w,
               faults& f) {
    dog d = dog_for(o, a, w, f);
    const auto of_a = coats_for(a, w.reference);
    const auto of_b = coats_for(b, w.reference);
    const auto common = std::find_first_of(of_a.begin(), of_a.end(), of_b.begin(), of_b.end());
    d.coat = o.coat.empty() && common != of_a.end() ? std::optional{*common} : d.coat;
    return d;
}

/// "which lamb is for, schnauzer-pet isn't": of a coat that not both are made for; empty: both are.
std::string not_both(const style& a, const style& b, coat_class c, const workplace& w) {
    const auto for_it = [&](const style& s) {
        const auto all = coats_for(s, w.reference);
        return std::find(all.begin(), all.end(), c) != all.end();
    };
    const bool one = for_it(a);
    const bool two = for_it(b);
    return one && two   ? ""
           : one || two ? (one ? a.id : b.id) + " is made for it, " + (one ? b.id : a.id) + " isn't"
                        : "neither sheet is made for it";
}

reply compare(compare_options& o, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(o, around, f, o.dog.season);
    if (o.other.empty()) {
        f.say(errc::usage,
              "sheet compare: two sheets are compared, on a dog if you name one; write "
              "it like sheet compare one-length low-upkeep biscuit");
    }
    f.throw_if_any();
    const std::vector<style> all = plain_sheets(w);
    const auto one = sheet_called(o.one, all, w, "", f);
    const auto two = sheet_called(o.other, all, w, "", f);
    f.throw_if_any();
    const style a = asked_season(o.dog.season, *one, w.print.today);
    const style b = asked_season(o.dog.season, *two, w.print.today);
    if (season_called(*one, o.dog.season) == nullptr) {  // one of the two may be without it
        check_season(o.dog.season, b, f);
    }
    dog d = o.dog.dog.empty() ? common_dog(o.dog, a, b, w, f) : dog_of(o.dog, w, around, f);
    const auto chance_asked = o.dog.chance.empty() ? std::nullopt : chance_in(o.dog.chance, f);
    f.throw_if_any();
    (void)coat_by_mix(d, w);
    const bool taken = o.dog.dog.empty() && o.dog.coat.empty() && o.dog.mix.empty();
    if (const std::string no = d.coat ? not_both(a, b, *d.coat, w) : ""; taken || !no.empty()) {
        note(around, "compared on a " + std::string(name(*d.coat)) + " coat" +
                         (taken ? ", since none is named (--coat)" : "") +
                         (no.empty() ? "" : "; " + no));
    }
    d.body_length.reset();
    assume_upkeep(d, a);
    d = as_by_record(std::move(d), w.reference, w.place().rules, w.print.today);
    const plan_request ra{w.reference, w.place().rules, w.tools(),   d,
                          a,           w.print.today,   chance_asked};
    const plan_request rb{w.reference, w.place().rules, w.tools(),   d,
                          b,           w.print.today,   chance_asked};
    const sheet_comparison c = compare_sheets(ra, rb, w.closed());
    if (w.json) {
        return {io::json_of(c, ra)};
    }
    io::document page = io::document_of(c, ra, w.print);
    return {w.written(
        w.html ? io::with_dogs_drawn(std::move(page), c, ra, rb, io::dog_outline(), w.print.units)
               : std::move(page))};
}

struct book_options : common_options {
    explicit book_options(CLI::App& a) : common_options(a) {}
    list_option paths{app, "path", "ID", "sheets by id or file; none: the salon's own, or all"};
};

constexpr introduction about_book{
    "book", "sheets as a book: the dogs drawn, kit and words",
    "pelage sheet book --salon my-salon --format html -o sheets.html\n"
    "pelage sheet book lamb one-length --format html -o two.html\n",
    "Each sheet is on a page of its own; it prints on A4 and on Letter.\n", "text, json, html"};

/// The sheets asked for, each as it is on the day of the plan.
std::vector<style> sheets_of_book(const book_options& o, const workplace& w, faults& f) {
    std::vector<style> out;
    for (const std::string& name : o.paths) {
        if (auto s = sheet_called(name, plain_sheets(w), w, "", f)) {
            out.push_back(std::move(*s));
        }
    }
    if (o.paths.empty()) {
        out = own_sheets(w);
        out = out.empty() ? plain_sheets(w) : out;
    }
    for (style& s : out) {
        s = on_day(s, w.print.today);
    }
    return out;
}

/// What the kit leaves on each coat that the sheets are shown on.
std::vector<io::document> ladders_of(const io::style_book& b, const workplace& w) {
    std::vector<coat_class> told;
    std::vector<io::document> out;
    for (const io::book_sheet& one : b.sheets) {
        const coat_class c = *one.patient.coat;
        if (std::find(told.begin(), told.end(), c) != told.end()) {
            continue;
        }
        told.push_back(c);
        lookup_request r{b.reference, b.rules, b.tools, {}, asked_kind::any,
                         false,       c,       {},      {}, b.today};
        out.push_back(io::document_of(whole_ladder(r), r, w.print));
    }
    return out;
}

reply book(book_options& o, const surroundings& around) {
    o.has.csv = false;
    faults f;
    const workplace w = workplace_of(o, around, f);
    f.throw_if_any();
    const std::vector<style> sheets = sheets_of_book(o, w, f);
    f.throw_if_any();
    const std::string of = w.own && !w.own->title.empty() ? w.own->title : "Pelage";
    io::style_book b{of + ": style book", w.reference,       w.place().rules, w.tools(),
                     io::dog_outline(),   io::trade_words(), w.print.today};
    for (const style& s : sheets) {
        dog d = dog_for(s, w);
        d.consents.emplace_back("clip-jacket");  // the page shows the sheet
        b.sheets.push_back({s, std::move(d)});
    }
    return {w.json ? io::json_of(b) : w.written(io::document_of(b, ladders_of(b, w), w.print))};
}

}  // namespace

void add_sheet(CLI::App& root, task& chosen) {
    CLI::App& sheet =
        add_subcommand(root, {"sheet", "style sheets: sound or not, shown, found, compared", ""});
    add_command<check_options>(sheet, chosen, about_check, check);
    add_command<show_options>(sheet, chosen, about_show, show);
    add_command<list_options>(sheet, chosen, about_list, list);
    add_command<new_options>(sheet, chosen, about_new, begin);
    add_command<compare_options>(sheet, chosen, about_compare, compare);
    add_command<book_options>(sheet, chosen, about_book, book);
}

}  // namespace pelage::cli
