#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <ostream>

#include <utf8proc.h>

#include <pelage/answers/calendar_file.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/base/error.hpp>

#include "cli.hpp"
#include "command_line.hpp"
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
void spare_what_was_read(const std::string& output, const std::vector<std::string>& words) {
    namespace fs = std::filesystem;
    std::error_code failed;
    if (!fs::exists(output, failed) || failed) {
        return;
    }
    const bool is_read = std::any_of(words.begin(), words.end(), [&](const std::string& one) {
        return fs::equivalent(one, output, failed);
    });
    if (is_read || fs::path(output).extension() == ".toml" || output.ends_with(".record.jsonl") ||
        output.ends_with(".quiz.jsonl")) {
        cannot_write(output,
                     "it is there already, and holds what somebody wrote; remove it "
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
    const auto write = [&r](std::ostream& to) {
        if (r.lines) {
            r = r.lines(to);
        } else {
            to << r.text;
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
        err << "pelage: error: our own fault, please report it: " << e.what() << "\n";
        return our_fault;
    }
}

}  // namespace pelage::cli
