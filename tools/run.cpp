#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <ostream>

#include <utf8proc.h>

#include <pelage/error.hpp>
#include <pelage/io/dog_file.hpp>
#include <pelage/io/write.hpp>

#include "cli.hpp"
#include "commands.hpp"
#include "interview.hpp"
#include "judge.hpp"
#include "part_file.hpp"

namespace pelage::cli {

namespace {

int code_for(errc e) {
    switch (e) {
        case errc::usage:
            return usage;
        case errc::io:
            return cannot_io;
        case errc::internal:
            return our_fault;
        case errc::refused:
            return answer_is_no;
        default:
            return bad_data;
    }
}

/// The gravest of several faults decides: 70, then 4, then 3, then 2, then 1.
int code_for(const diagnostics& all) {
    int code = done;
    for (const diagnostic& d : all) {
        code = std::max(code, code_for(d.code));
    }
    return code;
}

reply answer(const request& q, const surroundings& around) {
    switch (q.what) {
        case verb::lookup:
            return lookup(q, around);
        case verb::plan:
            return q.any_sheet ? any_sheet(q, around) : plan(q, around);
        case verb::sheet:
            return sheet(q, around);
        case verb::regrow:
            return regrow(q, around);
        case verb::kit:
            return kit_of(q, around);
        case verb::none:
            break;
    }
    throw error(errc::internal, "no verb");
}

/// How many bytes at `at` are one character that may be shown; none for a control character, a change of
/// the direction of writing, and what isn't UTF-8.
std::size_t printable_bytes(const std::string& text, std::size_t at) {
    utf8proc_int32_t c = 0;
    const auto took = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()) + at,
                                       static_cast<utf8proc_ssize_t>(text.size() - at), &c);
    if (took <= 0) {
        return 0;
    }
    const utf8proc_category_t kind = utf8proc_category(c);
    const bool hidden = kind == UTF8PROC_CATEGORY_CC || kind == UTF8PROC_CATEGORY_CF;
    return hidden ? 0 : static_cast<std::size_t>(took);
}

/// What a stranger's text may hold, made fit for a terminal: control characters and what isn't UTF-8
/// as \\xNN, and no more than `most` bytes of a line.
std::string printable(const std::string& text, std::size_t most = 700) {
    std::string out;
    std::size_t in_line = 0;
    std::size_t shown_up_to = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const auto byte = static_cast<unsigned char>(c);
        in_line = c == '\n' ? 0 : in_line + 1;
        if (in_line > most) {
            out += in_line == most + 1 ? "..." : "";
        } else if (c == '\n' || shown_up_to > i) {
            out += c;
        } else if (const std::size_t n = printable_bytes(text, i); n > 0) {
            shown_up_to = i + n;
            out += c;
        } else {
            constexpr const char* digits = "0123456789abcdef";
            out += std::string("\\x") + digits[byte >> 4U] + digits[byte & 15U];
        }
    }
    return out;
}

/// What people write themselves is never written over by an answer: the file that was asked about, or
/// any other dog, sheet or salon.
void spare_what_was_read(const request& q) {
    namespace fs = std::filesystem;
    std::error_code failed;
    if (!fs::exists(q.output, failed) || failed) {
        return;
    }
    std::vector<std::string> read = q.operands;
    read.insert(read.end(), {q.roster, q.kit, q.catalogue});
    const bool is_read = std::any_of(read.begin(), read.end(), [&](const std::string& one) {
        return fs::equivalent(one, q.output, failed);
    });
    if (is_read || fs::path(q.output).extension() == ".toml") {
        cannot_write(q.output,
                     "it is there already, and holds what somebody wrote; remove it "
                     "first, or write another name behind -o");
    }
}

/// What was noted on the way, before the answer.
void say_notes(const surroundings& around, std::ostream& err) {
    for (const std::string& one : *around.notes) {
        err << printable(one);
    }
    around.notes->clear();
}

int deliver(const request& q, const reply& r, const surroundings& around, std::ostream& out,
            std::ostream& err) {
    say_notes(around, err);
    err << printable(r.said);
    if (r.text.empty() && r.code == answer_is_no) {
        return r.code;  // nothing to write, and what was there stays
    }
    if (!q.output.empty()) {
        spare_what_was_read(q);
        write_file(q.output, [&](std::ostream& file) { file << r.text; });
        return r.code;
    }
    out << r.text << std::flush;
    if (!out) {
        throw error(errc::io, "cannot write the answer");
    }
    return r.code;
}

/// A roster's lines leave as they are made; what is said of them all goes to standard error.
int deliver_roster(const request& q, const surroundings& around, std::ostream& out,
                   std::ostream& err) {
    reply r;
    if (q.output.empty()) {
        r = roster(q, around, out);
    } else {
        spare_what_was_read(q);
        write_file(q.output, [&](std::ostream& file) { r = roster(q, around, file); });
    }
    say_notes(around, err);
    err << r.text;
    return r.code;
}

/// An id that no dog of the salon has: that of the name, of the file asked for, or one with a number.
std::string free_id(const request& q, const workplace& w, const dog& d) {
    std::vector<std::string> taken;
    if (w.own) {
        taken = ids(w.own->dogs);
    }
    for (const io::unsound_file& u : w.unsound) {
        taken.push_back(u.id);
        taken.push_back(std::filesystem::path(u.file).stem().string());
    }
    const auto free = [&](const std::string& id) {
        return std::find(taken.begin(), taken.end(), id) == taken.end();
    };
    const std::string file = std::filesystem::path(q.output).stem().string();
    const std::string of_file = file.empty() ? d.id : io::dog_id(file);
    if (free(d.id) || free(of_file)) {
        return free(d.id) ? d.id : of_file;
    }
    int n = 2;
    while (!free(d.id + "-" + std::to_string(n))) {
        ++n;
    }
    return d.id + "-" + std::to_string(n);
}

/// Where the file of an asked dog goes: as said, or its id. Nothing is written over without a yes.
std::string free_path(asker& a, const request& q, const dog& d) {
    std::string path = q.output.empty() ? d.id + ".toml" : q.output;
    std::error_code failed;
    while (std::filesystem::exists(std::filesystem::symlink_status(path, failed))) {
        if (a.yes("\"" + path + "\" is there already. Write over it")) {
            break;
        }
        path = a.line("Another name for the file", [](const std::string& s) {
            return std::string(s.empty() ? "a name is needed" : "");
        });
    }
    return path;
}

/// The intake as a talk: writes the dog's file, then plans it. Questions go to standard error, so that
/// the plan can go elsewhere.
int deliver_intake(const request& q, const surroundings& around, std::ostream& out,
                   std::ostream& err) {
    if (!q.operands.empty()) {
        throw error(errc::usage, "--ask: asks for a new dog; found \"" + q.operands.front() +
                                     "\"; leave one out");
    }
    if (!around.terminal || around.in == nullptr) {
        throw error(errc::usage,
                    "--ask: needs a terminal to ask in; found none; write the dog's file, or say "
                    "what was found by options (pelage plan --help)");
    }
    faults f;
    const workplace w = workplace_of(q, around, f);
    f.throw_if_any();
    asker a(*around.in, err, around.one_key);
    dog d = interview(a, w.reference, w.styles, w.print.today);
    const std::string own = d.id;
    d.id = free_id(q, w, d);
    const std::string path = free_path(a, q, d);
    if (std::filesystem::exists(path) && std::filesystem::path(path).stem() == own) {
        d.id = own;  // the file it was in is written over
    }
    write_file(path, [&](std::ostream& file) { file << io::dog_file(d, w.reference.dog_body); });
    err << "Wrote " << path << "; again with: pelage plan " << path << "\n" << std::flush;
    request again = q;
    again.ask = false;
    again.output.clear();
    again.operands = {path};
    if (path.find('/') == std::string::npos) {
        again.operands.front().insert(0, "./");
    }
    return deliver(again, plan(again, around), around, out, err);
}

}  // namespace

int run(const std::vector<std::string>& args, const surroundings& around, std::ostream& out,
        std::ostream& err) {
    std::vector<std::string> notes;
    surroundings here = around;
    here.notes = &notes;
    try {
        parsed p = parse_arguments(args);
        if (p.finished) {
            (p.code == 0 ? out : err) << (p.code == 0 ? p.text : printable(p.text)) << std::flush;
            return p.code == 0 && !out ? cannot_io : p.code;
        }
        if (p.asked.output == "-") {
            p.asked.output.clear();  // standard output, where it goes anyway
        }
        if (!p.asked.roster.empty()) {
            return deliver_roster(p.asked, here, out, err);
        }
        if (p.asked.ask) {
            return deliver_intake(p.asked, here, out, err);
        }
        return deliver(p.asked, answer(p.asked, here), here, out, err);
    } catch (const bad_input& e) {
        err << printable(io::text_of(e.all()));
        return code_for(e.all());
    } catch (const error& e) {
        err << printable(std::string("pelage: error: ") + e.what() + "\n");
        return code_for(e.code());
    } catch (const std::exception& e) {
        err << "pelage: error: our own fault, please report it: " << e.what() << "\n";
        return our_fault;
    }
}

}  // namespace pelage::cli
