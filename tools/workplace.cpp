// The salon, its sheets and its kit, read from where options say.
#include <algorithm>
#include <filesystem>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>

#include "resolve_arguments.hpp"

namespace pelage::cli {

void note(const surroundings& around, const std::string& text) {
    if (around.notes != nullptr) {
        around.notes->push_back("pelage: note: " + text + "\n");
    }
}

namespace {

/// The first fault of the file in about a line of a terminal: the whole is told to whoever asks about it.
std::string in_short(const io::unsound_file& u) {
    constexpr std::size_t most = 150;
    if (u.faults.empty()) {
        return u.file + ": the sheet it extends, \"" + u.extends + "\", is faulty";
    }
    std::string why = io::text_of({u.faults.front()});
    why = why.substr(0, why.find('\n'));
    if (why.size() > most) {
        const auto cut = why.find_last_of(' ', most);
        why = why.substr(
                  0, cut == std::string::npos || cut < u.file.size() ? u.file.size() + 1 : cut) +
              " ...";
    }
    return why +
           (u.faults.size() > 1 ? " (and " + std::to_string(u.faults.size() - 1) + " more)" : "");
}

/// Whether the file is that of the dog or sheet of that id, as far as its id can be read.
bool is_of(const io::unsound_file& u, const std::string& id, bool dog) {
    return !u.is_record && u.is_dog == dog &&
           (u.id.empty() ? std::filesystem::path(u.file).stem().string() : u.id) == id;
}

}  // namespace

salon_files salon_at(const std::string& dir, const reference_data& c, const surroundings& around,
                     std::vector<io::unsound_file>& unsound) {
    salon_files s = io::read_salon_folder(dir, c, unsound);
    constexpr std::size_t most = 3;
    for (std::size_t i = 0; i < unsound.size() && i < most; ++i) {
        note(around, "left out: " + in_short(unsound[i]));
    }
    if (unsound.size() > most) {
        const std::size_t more = unsound.size() - most;
        note(around, "left out: " + std::to_string(more) + (more == 1 ? " file" : " files") +
                         " more of " + dir + "; whoever asks about one is told its faults");
    }
    return s;
}

void throw_if_unsound(const workplace& w, const std::string& id, bool dog) {
    const auto u = std::find_if(w.unsound.begin(), w.unsound.end(),
                                [&](const io::unsound_file& one) { return is_of(one, id, dog); });
    if (u == w.unsound.end()) {
        return;
    }
    if (u->faults.empty() && u->extends != id) {
        throw_if_unsound(w, u->extends, dog);
    }
    if (!u->faults.empty()) {
        throw bad_input(u->faults);
    }
}

std::vector<std::string> ids_to_ask(const workplace& w) {
    std::vector<std::string> out = ids(w.place().dogs);
    std::erase_if(out, [&](const std::string& id) {
        return std::any_of(w.unsound.begin(), w.unsound.end(),
                           [&](const io::unsound_file& one) { return is_of(one, id, true); });
    });
    return out;
}

style asked_season(const std::string& name, const style& s, const std::optional<date>& today) {
    if (name.empty()) {
        return on_day(s, today);
    }
    const season* one = season_called(s, name);
    return one == nullptr ? s : in_season(s, *one);
}

void check_season(const std::string& name, const style& s, faults& f) {
    if (name.empty() || name == "none" || s.in_season == name) {
        return;
    }
    std::vector<std::string> known{"none"};
    for (const season& one : s.seasons) {
        known.push_back(one.name);
    }
    f.say(errc::unknown, "--season: the sheet \"" + s.id + "\" has no such season; found \"" +
                             name + "\"" + did_you_mean(name, known) + "; write one of " +
                             joined(known, ", "));
}

namespace {

/// The formats there are, by name, and whether this answer has them.
void read_format(const common_options& o, workplace& w, faults& f) {
    bool text = false;
    struct known_format {
        const char* name;
        bool here;
        bool& asked;
    };
    std::vector<std::string> names;
    bool any = false;
    for (const known_format& one : {known_format{"text", true, text},
                                    {"json", true, w.json},
                                    {"html", o.has.html, w.html},
                                    {"csv", o.has.csv, w.csv},
                                    {"ics", o.has.ics, w.ics},
                                    {"svg", o.has.svg, w.svg}}) {
        if (one.here) {
            names.emplace_back(one.name);
            one.asked = o.format == one.name;
            any = any || one.asked;
        }
    }
    if (!any) {
        const std::string no_ics = o.format == "ics" ? o.has.no_ics : "";
        f.say(errc::usage, "--format: " + (!no_ics.empty() ? no_ics
                                                           : "found \"" + o.format + "\"; write " +
                                                                 one_of(names)));
    }
}

void read_answer(const common_options& o, workplace& w, faults& f) {
    read_format(o, w, f);
    if (o.units == "in") {
        w.print.units = length_unit::inch;
    } else if (o.units != "mm") {
        f.say(errc::usage, "--units: found \"" + o.units + "\"; write mm or in");
    }
    w.print.explain = o.explain;
}

/// The folder asked for, or that of the environment.
void read_own_salon(const std::string& asked, const surroundings& around, workplace& w) {
    const std::string dir = asked.empty() ? around.salon : asked;
    if (!dir.empty()) {
        try {
            w.own = salon_at(dir, w.reference, around, w.unsound);
        } catch (const bad_input&) {
            throw;
        } catch (const error& e) {
            if (!asked.empty()) {
                throw;
            }
            throw error(e.code(), std::string("PELAGE_SALON: ") + e.what());
        }
    }
}

void take_table(const std::string& id, workplace& w, faults& f) {
    std::vector<std::string> known;
    for (const table_drawer& t : w.tools().tables) {
        known.push_back(t.id);
    }
    if (std::find(known.begin(), known.end(), id) != known.end()) {
        w.own_kit = at_table(w.tools(), id);
    } else {
        f.say(errc::unknown, "--table: no table of the kit is called \"" + id + "\"" +
                                 did_you_mean(id, known) +
                                 (known.empty() ? "; the kit has no [[kit.table]]"
                                                : "; there are " + joined(known, ", ")));
    }
}

}  // namespace

void throw_no_picture(const std::string& why) {
    throw error(errc::usage, "--format: there is no picture, " + why +
                                 "; found \"svg\"; write text, json, html or csv");
}

std::string workplace::written(const io::document& d) const {
    if (csv) {
        std::string tables = io::csv_of(d, print.units);
        if (tables.empty()) {
            throw error(errc::missing,
                        "this answer has no table; without --format csv it says why");
        }
        return tables;
    }
    return html ? io::html_of(d, print.units) : io::text_of(d, print.units, print.width);
}

workplace workplace_of(const common_options& o, const surroundings& around, faults& f,
                       const std::string& season) {
    workplace w{.reference = io::reference()};
    read_answer(o, w, f);
    w.print.today = around.today;
    if (o.output.empty() || o.output == "-") {
        w.print.width = around.columns;
    }
    if (!o.today.empty()) {
        w.print.today = day_in("--today", o.today, f);
    }
    read_own_salon(o.salon, around, w);
    if (!o.kit.empty()) {
        w.own_kit = io::read_kit(io::read_text(o.kit), w.reference);
    }
    if (!o.table.empty()) {
        take_table(o.table, w, f);
    }
    w.styles = w.place().styles;
    for (const style& s : w.reference.styles) {
        if (find(w.styles, s.id) == nullptr) {
            w.styles.push_back(s);
        }
    }
    for (style& s : w.styles) {
        s = asked_season(season, s, w.print.today);
    }
    return w;
}

}  // namespace pelage::cli
