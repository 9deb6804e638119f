#include <algorithm>
#include <cctype>
#include <variant>

#include <pelage/answers/illustrated.hpp>
#include <pelage/answers/kit.hpp>
#include <pelage/answers/sheets.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/data/salon_file.hpp>

#include "command.hpp"
#include "resolve_arguments.hpp"
#include "sheet_files.hpp"

namespace pelage::cli {

namespace {

struct lookup_options : common_options {
    explicit lookup_options(CLI::App& a) : common_options(a) {
        excludes(app, "--sources",
                 {"--coat", "--zone", "--direction", "--kind", "--curl", "--barber", "--all"});
        excludes(app, "--all", {"question", "--kind", "--barber", "--curl"});
        needs(app, "--all", "--coat");
    }
    list_option what{app, "question", "WHAT", "7F, 9mm, '4F vs 5F', belly, lay, 'poodle x beagle'"};
    text_option coat{app, "--coat", "COAT", "the coat it is for"};
    text_option zone{app, "--zone", "ZONE", "the zone it is for"};
    text_option direction{app, "--direction", "WAY", "with or against the lay of the coat"};
    text_option kind{app, "--kind", "KIND", "blade or comb, where a name could be either"};
    text_option curl{app, "--curl", "HOW", "of a mix: additive, or dominant as some labs say"};
    flag_option barber{app, "--barber", "bare comb numbers are n/8 inch"};
    flag_option all{app, "--all",
                    "everything the kit leaves on a coat, shortest first"};  ///< the whole ladder
    flag_option sources{app, "--sources", "figures and cautions with their basis; WHAT picks some"};
};

constexpr introduction about{"lookup", "what a tool, length, place, breed or word means",
                             "pelage lookup 7F\n"
                             "pelage lookup 9mm --coat wavy\n"
                             "pelage lookup '13 mm comb over 10' --coat curly\n"
                             "pelage lookup 7 --zone groin\n"
                             "pelage lookup '4F vs 5F'\n"
                             "pelage lookup belly\n"
                             "pelage lookup lay\n"
                             "pelage lookup 'which blade for the armpit'\n"
                             "pelage lookup 'miniature poodle x english cocker spaniel'\n"
                             "pelage lookup 'F1b poodle x labrador to poodle' --explain\n"
                             "pelage lookup '(genotype l/l F/f C/c) x poodle'\n"
                             "pelage lookup --all --coat curly\n"
                             "pelage lookup --sources matting\n",
                             "", "text, json, html, csv; pictures svg"};

void throw_if_svg(const workplace& w) {
    if (w.svg) {
        throw_no_picture("only a place of the dog and the ladder of --all have one");
    }
}

/// The reference with the salon's own figures in place of some, which say what they replace.
reference_data figures_in_force(const reference_data& c, const std::string& salon) {
    reference_data out = c;
    if (salon.empty()) {
        return out;
    }
    for (const listed_figure& own : io::own_figures(io::read_text(salon + "/salon.toml"), c)) {
        for (listed_figure& f : out.figures) {
            if (f.key == own.key) {
                const std::string before =
                    "the reference has " + f.value + ", " + std::string(in_words(f.why.how));
                f = own;
                f.why.note += "; " + before;
            }
        }
    }
    return out;
}

reply sources(const lookup_options& o, const workplace& w, const surroundings& around) {
    const std::string key = o.what.empty() ? "" : o.what.front();
    const reference_data known =
        figures_in_force(w.reference, o.salon.empty() ? around.salon : o.salon);
    const io::document found = io::sources(known, key);
    if (!found.sections.empty()) {
        return {w.json ? io::sources_json(known, key) : w.written(found)};
    }
    faults f;
    f.say(errc::unknown, "no figure or source has \"" + key +
                             "\" in its name; write lookup --sources "
                             "for all of them");
    f.throw_if_any();
    return {};
}

void resolve_words(const lookup_options& o, const workplace& w, lookup_request& r, faults& f) {
    if (!o.coat.empty()) {
        r.coat = coat_called(o.coat, f);
    }
    if (!o.zone.empty()) {
        if (const auto there = places_called("--zone", o.zone, w.reference.dog_body, f)) {
            r.where = there->places;
        }
    }
    r.way = direction_called(o.direction, f);
    if (const auto kind = choice_in("--kind", o.kind, {"blade", "comb"}, f)) {
        r.kind = *kind == 0 ? asked_kind::blade : asked_kind::comb;
    }
}

/// A breed or a mix: what it was asked with that only goes with tools is told.
reply a_mix(const lookup_options& o, const workplace& w, const std::string& text, faults& f) {
    const std::vector<std::pair<const char*, bool>> tools_only{
        {"--coat", !o.coat.empty()},
        {"--zone", !o.zone.empty()},
        {"--direction", !o.direction.empty()},
        {"--barber", o.barber}};
    for (const auto& [option, given] : tools_only) {
        if (given) {
            f.say(errc::conflict, std::string(option) +
                                      ": goes with a blade, a comb or a length; " +
                                      "found the mix \"" + text + "\"; leave it out");
        }
    }
    const bool dominant = choice_in("--curl", o.curl, {"additive", "dominant"}, f) == 1U;
    const curl_mode curl = dominant ? curl_mode::dominant : curl_mode::additive;
    f.throw_if_any();
    const expected_coat e = expect_coat(text, w.reference.genes, w.reference.coats, curl);
    return {w.json ? io::json_of(e, w.reference)
                   : w.written(io::document_of(e, w.reference, w.print))};
}

/// The answer, with its picture if it is a page, or that picture alone.
reply with_picture(const workplace& w, io::document answer, const io::dog_picture& drawn) {
    return {w.svg    ? svg_of(drawn)
            : w.html ? w.written(illustrated(std::move(answer), drawn))
                     : w.written(answer)};
}

/// Everything the kit leaves on a coat, and what the sheets ask of it.
reply ladder_of(const workplace& w, const lookup_request& r) {
    ladder l = whole_ladder(r);
    const std::vector<style> own = own_sheets(w);
    l.targets = targets_on(r, own.empty() ? w.place().styles : own);
    if (w.json) {
        return {io::json_of(l, r)};
    }
    io::document answer = io::document_of(l, r, w.print);
    if (!w.html && !w.svg) {
        return {w.written(answer)};
    }
    const auto drawn = io::picture_of(l, r, io::dog_outline(), w.print.units);
    if (!drawn && w.svg) {
        throw_no_picture("nothing in this kit clips");
    }
    return drawn ? with_picture(w, std::move(answer), *drawn) : reply{w.written(answer)};
}

template <class Answer>
std::string written(const workplace& w, const lookup_request& r, const Answer& a) {
    return w.json ? io::json_of(a, r) : w.written(io::document_of(a, r, w.print));
}

/// An answer about tools with the words that were said beside them before it.
template <class Answer>
reply with_beside(const workplace& w, const lookup_request& r, const Answer& a,
                  const tools_asked& t, bool no) {
    if (t.beside.empty() && !t.same) {
        return {written(w, r, a), no ? answer_is_no : done};
    }
    const bool never =
        no || never_of_this_coat(r, terms_asked{t.beside}) || never_of(r, t) != nullptr;
    if (w.json) {
        return {io::json_with(io::json_of(a, r), t, r), never ? answer_is_no : done};
    }
    io::document d = io::document_of(t, r, w.print);
    d.append(io::document_of(a, r, w.print));
    return {w.written(std::move(d)), never ? answer_is_no : done};
}

reply tools_reply(const workplace& w, const lookup_request& r, const tools_asked& t) {
    if (t.all.size() > 1) {
        const comparison c = compare(r, t.all);
        const bool no = std::all_of(c.all.begin(), c.all.end(),
                                    [](const lookup_answer& a) { return a.never.has_value(); });
        return with_beside(w, r, c, t, no);
    }
    const lookup_answer a = look_up(r, t.all.front());
    return with_beside(w, r, a, t, a.never.has_value());
}

reply place_reply(const workplace& w, const lookup_request& r, const place_card& c) {
    const auto drawn =
        w.html || w.svg ? io::picture_of(c, r, io::dog_outline(), w.svg) : std::nullopt;
    if (w.svg && !drawn) {
        throw_no_picture("this place is seen from no side");
    }
    return drawn ? with_picture(w, io::document_of(c, r, w.print), *drawn)
                 : reply{written(w, r, c)};
}

/// The sheet whose id or title that is, whatever its case, blanks and commas: cards are headed by it.
const style* sheet_called(const std::vector<style>& all, const std::string& text) {
    const auto bare = [](const std::string& whole) {
        std::string out;
        for (const char ch : whole) {
            if (std::isalnum(static_cast<unsigned char>(ch)) != 0) {
                out += static_cast<char>(std::tolower(static_cast<unsigned char>(ch)));
            }
        }
        return out;
    };
    const std::string asked = bare(text);
    const auto at = std::find_if(all.begin(), all.end(), [&](const style& s) {
        return bare(s.id) == asked || bare(s.title) == asked;
    });
    return at == all.end() || asked.empty() ? nullptr : &*at;
}

reply a_sheet(const workplace& w, const style& sheet, const std::string& text) {
    throw_if_svg(w);
    if (w.json) {
        throw error(errc::unknown, "\"" + text + "\" is a style sheet; write pelage sheet show " +
                                       sheet.id + " --format json");
    }
    return {w.written(io::sheet_in_brief(sheet))};
}

/// What was asked in words.
reply answer_to(const lookup_options& o, const workplace& w, const lookup_request& asking,
                const asked& a, faults& f) {
    if (const auto* mix = std::get_if<mix_asked>(&a.what)) {
        throw_if_svg(w);
        return a_mix(o, w, mix->text, f);
    }
    if (!o.curl.empty()) {
        f.say(errc::conflict, "--curl: goes with a breed or a mix; leave it out");
    }
    f.throw_if_any();
    const lookup_request r = with_circumstances(asking, a);
    if (const auto* tools = std::get_if<tools_asked>(&a.what)) {
        throw_if_svg(w);
        return tools_reply(w, r, *tools);
    }
    if (const auto* place = std::get_if<place_asked>(&a.what)) {
        const place_card card = card_of(r, *place);
        reply told = place_reply(w, r, card);
        told.code = never_of(r, *place) != nullptr || card.is_no() ? answer_is_no : done;
        return told;
    }
    if (const auto* terms = std::get_if<terms_asked>(&a.what)) {
        throw_if_svg(w);
        const bool no = never_of_this_coat(r, *terms) || never_of(r, *terms) != nullptr;
        return {written(w, r, *terms), no ? answer_is_no : done};
    }
    if (const auto* on_what = std::get_if<carrying_asked>(&a.what)) {
        throw_if_svg(w);
        const carrying_answer c = carrying(r, *on_what);
        return {written(w, r, c), c.may() ? done : answer_is_no};
    }
    if (const auto* list = std::get_if<list_asked>(&a.what)) {
        throw_if_svg(w);
        return {written(w, r, *list)};
    }
    if (const auto* of_coat = std::get_if<coat_asked>(&a.what)) {
        throw_if_svg(w);
        return {written(w, r, *of_coat)};
    }
    if (const auto* health = std::get_if<health_asked>(&a.what)) {
        throw_if_svg(w);
        return {written(w, r, *health)};
    }
    if (const auto* card = std::get_if<card_asked>(&a.what)) {
        throw_if_svg(w);
        return {written(w, r, *card)};
    }
    if (const auto* back = std::get_if<asked_back>(&a.what)) {
        throw error(errc::ambiguous, io::text_of(*back));
    }
    if (const style* sheet = sheet_called(w.styles, r.text)) {
        return a_sheet(w, *sheet, r.text);
    }
    throw error(errc::unknown, io::text_of(std::get<strangers>(a.what)));
}

reply lookup(lookup_options& o, const surroundings& around) {
    faults f;
    // "lookup 13 mm comb over 10" without quotes
    const std::string text = joined(o.what, " ");
    o.has.svg = !o.sources;
    const workplace w = workplace_of(o, around, f);
    // "(watson-2020)", as a basis names it
    if (o.sources || find(w.reference.sources, text) != nullptr) {
        f.throw_if_any();
        return sources(o, w, around);
    }
    lookup_request r{
        w.reference, w.place().rules, w.tools(),         text, asked_kind::any, o.barber, {}, {},
        {},          w.print.today,   &io::trade_words()};
    r.invented = !w.own && o.kit.empty();
    // "Shaggy coat, short trim" is no question about a coat
    if (text.find(' ') != std::string::npos && !term_index(*r.words).find(text)) {
        if (const style* sheet = sheet_called(w.styles, text)) {
            f.throw_if_any();
            return a_sheet(w, *sheet, text);
        }
    }
    resolve_words(o, w, r, f);
    if (o.all) {
        f.throw_if_any();
        return ladder_of(w, r);
    }
    if (text.empty() && !r.where.empty()) {  // "lookup --zone belly"
        r.text = o.zone;
        f.throw_if_any();
        const term* said = term_index(*r.words).find(o.zone);
        return answer_to(o, w, r, {place_asked{o.zone, r.where, said, {}}}, f);
    }
    f.throw_if_any();
    return answer_to(o, w, r, read_asked(r), f);
}

}  // namespace

void add_lookup(CLI::App& root, task& chosen) {
    add_command<lookup_options>(root, chosen, about, lookup);
}

}  // namespace pelage::cli
