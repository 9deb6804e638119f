#include <algorithm>
#include <filesystem>
#include <set>

#include <pelage/any_sheet.hpp>
#include <pelage/io/sheets.hpp>
#include <pelage/sheet_check.hpp>
#include <pelage/sheet_compare.hpp>
#include <pelage/suggest.hpp>
#include <pelage/text.hpp>

#include "commands.hpp"
#include "judge.hpp"

namespace pelage::cli {

namespace {

namespace fs = std::filesystem;

const std::vector<std::string> actions{"check", "show", "list", "new", "compare"};

bool is_file(const std::string& name) {
    return name.find('/') != std::string::npos || name.ends_with(".toml");
}

/// The *.toml files of a folder, by name; hidden ones left out.
std::vector<std::string> sheets_in(const fs::path& folder) {
    std::vector<std::string> out;
    std::error_code failed;
    for (fs::directory_iterator at(folder, failed), end; !failed && at != end;
         at.increment(failed)) {
        const std::string file = at->path().filename().string();
        if (file.ends_with(".toml") && file.front() != '.') {
            out.push_back(at->path().string());
        }
    }
    if (failed) {
        throw error(errc::io, "can't read the folder \"" + folder.string() + "\"");
    }
    std::sort(out.begin(), out.end());
    return out;
}

/// The files that were asked for, the others beside them, and the salon's kit where a path is its
/// folder.
struct asked_files {
    std::vector<io::document_text> files;
    std::vector<io::document_text> beside;
    std::optional<kit> tools;

    asked_files(const std::vector<std::string>& paths, const catalogue& c) {
        std::set<std::string> seen;
        std::set<std::string> folders;
        for (const std::string& path : paths) {
            std::error_code failed;
            if (!fs::is_directory(path, failed)) {
                take(path, seen, files);
                const fs::path folder = fs::path(path).parent_path();
                folders.insert(folder.empty() ? "." : folder.string());
                continue;
            }
            fs::path folder = path;
            if (fs::is_directory(folder / "styles", failed) &&
                (fs::exists(folder / "salon.toml", failed) || sheets_in(folder).empty())) {
                if (fs::exists(folder / "salon.toml", failed) && !tools) {
                    tools = io::read_kit(io::slurp((folder / "salon.toml").string()), c);
                }
                folder /= "styles";
            }
            const auto found = sheets_in(folder);
            if (found.empty()) {
                throw error(errc::io, "no style sheet in the folder \"" + path +
                                          "\"; a sheet is a file whose name ends in .toml");
            }
            for (const std::string& one : found) {
                take(one, seen, files);
            }
        }
        for (const std::string& folder : folders) {
            for (const std::string& one : sheets_in(folder)) {
                if (!seen.contains(one) &&
                    (folder != "." || !seen.contains(fs::path(one).filename().string()))) {
                    take(one, seen, beside);
                }
            }
        }
    }

  private:
    static void take(const std::string& path, std::set<std::string>& seen,
                     std::vector<io::document_text>& to) {
        if (seen.insert(path).second) {
            to.push_back(io::slurp(path));
        }
    }
};

/// The sheets in force as they are written, without a season.
std::vector<style> plain_sheets(const workplace& w) {
    std::vector<style> all = w.place().styles;
    for (const style& s : w.reference.styles) {
        if (find(all, s.id) == nullptr) {
            all.push_back(s);
        }
    }
    return all;
}

/// A sheet by id or file. Throws bad_input with its faults, or told in `f`.
std::optional<style> sheet_called(const std::string& name, const std::vector<style>& all,
                                  const workplace& w, const std::string& option, faults& f) {
    if (is_file(name)) {
        const asked_files files({name}, w.reference);
        const auto read = io::read_sheet_files(files.files, files.beside, w.reference, all,
                                               w.own ? &w.own->tools : nullptr);
        if (read.front().sheet) {
            return read.front().sheet;
        }
        if (!read.front().faults.empty()) {
            throw bad_input(read.front().faults);
        }
        f.say(errc::conflict, "a sheet that " + name + " extends is faulty; check it first");
        return std::nullopt;
    }
    if (const style* s = find(all, name)) {
        return *s;
    }
    f.say(errc::unknown, option + "no style sheet is called \"" + name + "\"" +
                             did_you_mean(name, ids(all)) +
                             "; pelage sheet list names them; a file ends in .toml");
    return std::nullopt;
}

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
        const asked_files asked({q.operands.begin() + 1, q.operands.end()}, w.reference);
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
                auto broken = broken_limits(*one.read.sheet, *standard, w.reference);
                one.doubts.insert(one.doubts.end(), broken.begin(), broken.end());
            }
        }
        no = no || std::any_of(one.doubts.begin(), one.doubts.end(),
                               [](const sheet_warning& d) { return graver(d.what); });
    }
    reply r{w.json ? io::json_of(checked) : io::text_of(checked, w.print), faulty ? bad_data
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
    const dog d = dog_for(q, s, w, f);
    f.throw_if_any();
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

reply compare(const request& q, const workplace& w, faults& f) {
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
        d = dog_of(of_dog, w, f);
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
                            : compare(q, w, f);
}

reply any_sheet(const request& q, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(q, around, f);
    if (!q.style.empty()) {
        f.say(errc::usage, "--any-sheet: every sheet is tried; found --style; leave one out");
    }
    if (!q.roster.empty()) {
        f.say(errc::usage, "--any-sheet: goes with one dog; found --roster; leave one out");
    }
    const auto wait =
        q.back_in.empty() ? std::optional{shortest_rota} : wait_in("--back-in", q.back_in, f);
    dog d = dog_of(q, w, f);
    const auto chance_asked = q.chance.empty() ? std::nullopt : chance_in(q.chance, f);
    f.throw_if_any();
    const bool unseen = coat_by_mix(d, w).has_value();
    const style* own = find(w.styles, d.style);
    if (own == nullptr) {
        d.style.clear();
        own = &w.styles.front();
    }
    const groom_request r{w.reference, w.place().rules, w.tools(),   d,
                          *own,        w.print.today,   chance_asked};
    const auto all = try_sheets(r, w.styles, *wait);
    const bool any =
        std::any_of(all.begin(), all.end(), [](const sheet_trial& t) { return t.carried(); });
    return {w.json ? io::json_of(all, r, *wait, w.print)
                   : (unseen ? "Its coat is the likeliest of its mix: nobody has seen it.\n" : "") +
                         io::text_of(all, r, *wait, w.print),
            any ? done : answer_is_no};
}

}  // namespace pelage::cli
