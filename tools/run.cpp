#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <ostream>

#include <pelage/answers/calendar_file.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/base/error.hpp>

#include "cli.hpp"
#include "colour.hpp"
#include "command_line.hpp"
#include "part_file.hpp"
#include "printable.hpp"

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

/// Whether the name is that of what a person keeps: a dog, a sheet, a salon, a record, a quiz, an intake that
/// isn't finished.
bool is_kept(const std::filesystem::path& file) {
    std::string name = file.filename().string();
    std::transform(name.begin(), name.end(), name.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return name.ends_with(".toml") || name.ends_with(".record.jsonl") ||
           name.ends_with(".quiz.jsonl") || name.ends_with(".intake");
}

/// What people write themselves is never written over by an answer: the file that was asked about, or
/// any other dog, sheet, salon or record, by whatever link it is named.
void spare_what_was_read(const std::string& output, const std::vector<std::string>& words) {
    namespace fs = std::filesystem;
    std::error_code failed;
    if (!fs::is_regular_file(output, failed) || failed) {
        return;  // whether it can be written is write_file's matter
    }
    const bool is_read = std::any_of(words.begin(), words.end(), [&](const std::string& one) {
        return fs::equivalent(one, output, failed);
    });
    const fs::path there = fs::canonical(output, failed);
    if (is_read || failed || is_kept(output) || is_kept(there)) {
        const bool link = fs::is_symlink(fs::symlink_status(output, failed));
        cannot_write(output, (link ? "it is a link to " + there.string() + ", which"
                                   : std::string("it is there already, and")) +
                                 " holds what somebody wrote; remove it "
                                 "first, or write another name behind -o");
    }
}

/// What was noted on the way, and what is said of the answer.
void say_beside(const reply& r, const surroundings& around, std::ostream& err) {
    for (const std::string& one : *around.notes) {
        err << printable(one);
    }
    around.notes->clear();
    err << printable(r.said);
}

/// The bytes of the file that an answer takes the place of; empty where there is none to be read.
std::string earlier(const std::string& output) {
    std::error_code failed;
    if (!std::filesystem::is_regular_file(output, failed) || failed) {
        return {};
    }
    std::ifstream in(output, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

int deliver(const parsed& p, const surroundings& around, std::ostream& out, std::ostream& err) {
    std::string& output = p.asked.options->output;
    output = output == "-" ? "" : output;  // standard output, where it goes anyway
    reply r = p.asked.answer(around);
    say_beside(r, around, err);
    if (r.text.empty() && !r.lines && r.code == answer_is_no) {
        return r.code;  // nothing to write, and what was there stays
    }
    const bool loud = around.colour && output.empty() && p.asked.options->format == "text";
    const auto write = [&](std::ostream& to) {
        if (r.lines) {
            r = r.lines(to);
        } else {
            to << (loud ? coloured(r.text) : r.text);
            r.said.clear();
        }
    };
    if (!output.empty()) {
        spare_what_was_read(output, p.words);
        if (p.asked.options->format == "ics") {
            r.text = io::in_place_of(std::move(r.text), earlier(output));
        }
        write_file(output, write);
    } else if (write(out); !(out << std::flush)) {
        throw error(errc::io, "cannot write the answer");
    }
    say_beside(r, around, err);
    return r.code;
}

}  // namespace

int run(const std::vector<std::string>& args, const surroundings& around, std::ostream& out,
        std::ostream& err) {
    std::vector<std::string> notes;
    surroundings here = around;
    here.notes = &notes;
    here.talk = &err;
    try {
        const parsed p = parse_arguments(args);
        if (!p.asked.answer) {
            (p.code == 0 ? out : err) << (p.code == 0 ? p.text : printable(p.text)) << std::flush;
            return p.code == 0 && !out ? cannot_io : p.code;
        }
        return deliver(p, here, out, err);
    } catch (const bad_input& e) {
        err << printable(io::text_of(e.all()));
        return code_for(e.all());
    } catch (const error& e) {
        err << printable(std::string("pelage: error: ") + e.what() + "\n");
        return code_for(e.code());
    } catch (const std::exception& e) {
        err << "pelage: error: our own fault, please report it: " << printable(e.what()) << "\n";
        return our_fault;
    }
}

}  // namespace pelage::cli
