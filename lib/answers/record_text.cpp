// Records as documents.
#include <algorithm>

#include <pelage/answers/record.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/model/dog_record.hpp>

#include "answers/words/record.hpp"

namespace pelage::io {

namespace {

/// A place by its name where a file has its id.
void name_place(const body& b, std::string& whom) {
    std::string_view id = whom;
    side which = side::both;
    for (const side one : {side::left, side::right}) {
        const std::string before = std::string(name(one)) + " ";
        if (id.starts_with(before)) {
            id.remove_prefix(before.size());
            which = one;
        }
    }
    for (std::size_t i = 0; i < b.zones.size(); ++i) {
        if (b.zones[i].id == id) {
            whom = title(b, {i, which});
            return;
        }
    }
}

log_entry with_names(const body& b, log_entry e) {
    const auto name_all = [&](auto& all) {
        for (auto& one : all) {
            name_place(b, one.whom);
        }
    };
    name_all(e.found);
    name_all(e.left);
    name_all(e.skin);
    if (e.mats) {
        name_all(*e.mats);
    }
    for (logged_tool& t : e.used) {
        for (std::string& whom : t.places) {
            name_place(b, whom);
        }
    }
    return e;
}

/// What an entry says, a line each.
void say_entry(document& d, const body& b, const log_entry& written, length_unit u, bool tools) {
    const log_entry e = with_names(b, written);
    const auto say = [&](const std::string& lead, const std::string& text) {
        if (!text.empty()) {
            d.add({line_as::paragraph, text, lead + ": ", 2, 4});
        }
    };
    say("before", lengths_words(e.found, u));
    say("left", lengths_words(e.left, u));
    say("mats", mats_words(e.mats));
    say("skin", skin_words_of(e.skin, u));
    say("tools", tools ? tools_words(e.used) : "");
    say("behaviour", e.behaviour);
    say("remarks", e.remarks);
    say("next", e.next ? in_words(*e.next) : "");
}

/// What somebody wrote, for a spreadsheet: one that begins like a formula has a ' before it.
std::string harmless_cell(std::string text) {
    constexpr std::string_view begins = "=+-@\t\r";
    if (!text.empty() && begins.find(text.front()) != std::string_view::npos) {
        text.insert(0, "'");
    }
    return text;
}

std::string head_of(const log_entry& e) {
    std::string text = in_words(e.on) + ": " + services_words(e.services);
    text += e.who.empty() ? "" : " by " + e.who;
    text += e.took ? ", " + minutes_words(*e.took) : "";
    text += e.price.empty() ? "" : ", " + e.price;
    return text + (e.corrects == 0 ? "" : ", in place of entry " + std::to_string(e.corrects));
}

/// What became of an entry, by those that hold.
std::string state_of(const log_entry& e, const std::vector<log_entry>& in_force,
                     const std::vector<log_entry>& all) {
    const auto holds = [&](const log_entry& one) {
        return std::any_of(in_force.begin(), in_force.end(),
                           [&](const log_entry& o) { return o.number == one.number; });
    };
    if (holds(e)) {
        return "holds";
    }
    const auto by = std::find_if(all.rbegin(), all.rend(),
                                 [&](const log_entry& o) { return o.corrects == e.number; });
    const std::string how = by != all.rend() && by->takes_back ? "taken back by " : "corrected by ";
    return by == all.rend() ? "holds" : how + std::to_string(by->number);
}

}  // namespace

document recorded_document(const record_of_dog& of, const recorded_entry& e, const body& b,
                           const std::string& undo, const print_options& o) {
    document d{"Recorded"};
    if (e.entry.takes_back) {
        d.say("Taken back: entry " + std::to_string(e.entry.corrects) + " of " + of.name +
              ". It stays in the file and counts no more.");
    } else {
        d.say("Recorded: " + of.name + ", " + head_of(e.entry) + ".");
        say_entry(d, b, e.entry, o.units, false);
    }
    d.say("Entry " + std::to_string(e.entry.number) + " of " + of.read.file +
          (e.entry.takes_back ? "." : "; take it back with: " + undo));
    return d;
}

document record_document(const record_of_dog& of, std::size_t most, const body& b,
                         const print_options& o) {
    document d{"The record of " + of.name};
    const std::vector<log_entry> all = entries_in_force(of.read.entries);
    const std::size_t shown = std::min(most, all.size());
    if (all.empty()) {
        d.say("Nothing is on record of " + of.name + ".");
        return d;
    }
    d.say(of.name + ": " + std::to_string(all.size()) + (all.size() == 1 ? " visit" : " visits") +
          " on record" + (shown < all.size() ? ", the last " + std::to_string(shown) : "") + ".");
    for (auto e = all.end() - static_cast<std::ptrdiff_t>(shown); e != all.end(); ++e) {
        d.open();
        d.add({line_as::paragraph, head_of(*e), std::to_string(e->number) + ". ", 0, 2});
        say_entry(d, b, *e, o.units, true);
    }
    return d;
}

document export_document(const std::vector<record_of_dog>& all) {
    typed_table t{{"dog", "entry", "date", "services", "who", "minutes", "price", "before", "left",
                   "mats", "skin", "tools", "behaviour", "remarks", "next", "state"}};
    for (const record_of_dog& of : all) {
        const std::vector<log_entry> in_force = entries_in_force(of.read.entries);
        for (const log_entry& e : of.read.entries) {
            if (e.takes_back) {
                continue;
            }
            std::vector<cell> row{of.id, std::int64_t{e.number}, iso(e.on),
                                  services_words(e.services), harmless_cell(e.who)};
            row.push_back(e.took ? cell(*e.took) : cell());
            const auto text = [&](std::string s) { row.emplace_back(harmless_cell(std::move(s))); };
            text(e.price);
            text(lengths_words(e.found, length_unit::mm));
            text(lengths_words(e.left, length_unit::mm));
            text(mats_words(e.mats));
            text(skin_words_of(e.skin, length_unit::mm));
            text(tools_words(e.used));
            text(e.behaviour);
            text(e.remarks);
            text(e.next ? iso(*e.next) : "");
            text(state_of(e, in_force, of.read.entries));
            t.rows.push_back(std::move(row));
        }
    }
    document d{"Records"};
    d.show(std::move(t));
    return d;
}

document document_of(const record_audit& a) {
    document d{"Records checked"};
    const auto count = [](std::size_t n, const char* one, const char* many) {
        return std::to_string(n) + " " + (n == 1 ? one : many);
    };
    for (const diagnostics* list : {&a.damaged, &a.doubtful}) {
        for (const diagnostic& f : *list) {
            const std::string at = f.line == 0 ? "" : ":" + std::to_string(f.line);
            d.add({line_as::paragraph, f.text, f.file + at + ": ", 0, 2});
        }
    }
    d.say(count(a.files, "record", "records") + ", " + count(a.entries, "entry", "entries") + ": " +
          (a.damaged.empty() && a.doubtful.empty()
               ? "all sound."
               : count(a.damaged.size(), "fault", "faults") + ", " +
                     count(a.doubtful.size(), "doubt", "doubts") + "."));
    return d;
}

}  // namespace pelage::io
