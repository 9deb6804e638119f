#include <cstdio>
#include <filesystem>
#include <fstream>
#include <functional>
#include <ostream>

#include <pelage/error.hpp>
#include <pelage/io/write.hpp>

#include "cli.hpp"
#include "commands.hpp"

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
            return plan(q, around);
        case verb::regrow:
            return regrow(q, around);
        case verb::none:
            break;
    }
    throw error(errc::internal, "no verb");
}

[[noreturn]] void cannot_write(const std::string& path, const std::string& why) {
    throw error(errc::io, "cannot write \"" + path + "\": " + why);
}

/// A name beside `file` that nothing has yet.
std::filesystem::path fresh_name(const std::filesystem::path& file) {
    for (int n = 0; n < 1000; ++n) {
        std::filesystem::path name = file;
        name += ".part" + std::to_string(n);
        if (!std::filesystem::exists(std::filesystem::symlink_status(name))) {
            return name;
        }
    }
    return {};
}

/// Has `write` write the whole answer beside the file, then puts it in its place: never half a file,
/// and never in place of something that isn't one. A link is followed to what it names.
void write_file(const std::string& path, const std::function<void(std::ostream&)>& write) {
    namespace fs = std::filesystem;
    std::error_code failed;
    fs::path file = path;
    if (fs::is_symlink(fs::symlink_status(file, failed))) {
        file = fs::canonical(path, failed);
        if (failed) {
            cannot_write(path, "the link leads nowhere");
        }
    }
    const fs::file_status is = fs::status(file, failed);
    if (fs::exists(is) && !fs::is_regular_file(is)) {
        cannot_write(path, "it is no ordinary file");
    }
    constexpr fs::perms any_write =
        fs::perms::owner_write | fs::perms::group_write | fs::perms::others_write;
    if (fs::exists(is) && (is.permissions() & any_write) == fs::perms::none) {
        cannot_write(path, "it is write-protected");
    }
    const fs::path part = fresh_name(file);
    std::ofstream out(part, std::ios::binary);
    try {
        write(out);
    } catch (...) {
        fs::remove(part, failed);
        throw;
    }
    out.close();
    if (!out) {
        fs::remove(part, failed);
        cannot_write(path, "no room, no such folder, or not allowed");
    }
    fs::rename(part, file, failed);
    if (failed) {
        fs::remove(part, failed);
        cannot_write(path, "not allowed");
    }
}

/// What a stranger's text may hold, made fit for a terminal: control characters and what isn't UTF-8
/// as \\xNN, and no more than `most` bytes of a line.
std::string printable(const std::string& text, std::size_t most = 700) {
    std::string out;
    std::size_t in_line = 0;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        in_line = c == '\n' ? 0 : in_line + 1;
        if (in_line > most) {
            out += in_line == most + 1 ? "..." : "";
        } else if ((byte < 0x20U && c != '\n') || byte == 0x7FU) {
            constexpr const char* digits = "0123456789abcdef";
            out += std::string("\\x") + digits[byte >> 4U] + digits[byte & 15U];
        } else {
            out += c;
        }
    }
    return out;
}

int deliver(const request& q, const reply& r, std::ostream& out) {
    if (!q.output.empty()) {
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
        write_file(q.output, [&](std::ostream& file) { r = roster(q, around, file); });
    }
    err << r.text;
    return r.code;
}

}  // namespace

int run(const std::vector<std::string>& args, const surroundings& around, std::ostream& out,
        std::ostream& err) {
    try {
        const parsed p = parse_arguments(args);
        if (p.finished) {
            (p.code == 0 ? out : err) << (p.code == 0 ? p.text : printable(p.text)) << std::flush;
            return p.code == 0 && !out ? cannot_io : p.code;
        }
        if (!p.asked.roster.empty()) {
            return deliver_roster(p.asked, around, out, err);
        }
        return deliver(p.asked, answer(p.asked, around), out);
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
