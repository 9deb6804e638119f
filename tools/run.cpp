#include <cstdio>
#include <fstream>
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

/// Writes the whole answer beside the file, then puts it in its place: never half a file.
void write_file(const std::string& path, const std::string& text) {
    const std::string part = path + ".part";
    std::ofstream file(part, std::ios::binary | std::ios::trunc);
    file << text;
    file.close();
    if (!file || std::rename(part.c_str(), path.c_str()) != 0) {
        std::remove(part.c_str());
        throw error(errc::io, "cannot write \"" + path + "\"");
    }
}

int deliver(const request& q, const reply& r, std::ostream& out) {
    if (!q.output.empty()) {
        write_file(q.output, r.text);
        return r.code;
    }
    out << r.text << std::flush;
    if (!out) {
        throw error(errc::io, "cannot write the answer");
    }
    return r.code;
}

}  // namespace

int run(const std::vector<std::string>& args, const surroundings& around, std::ostream& out,
        std::ostream& err) {
    try {
        const parsed p = parse_arguments(args);
        if (p.finished) {
            (p.code == 0 ? out : err) << p.text << std::flush;
            return p.code;
        }
        return deliver(p.asked, answer(p.asked, around), out);
    } catch (const bad_input& e) {
        err << io::text_of(e.all());
        return code_for(e.all());
    } catch (const error& e) {
        err << "pelage: error: " << e.what() << "\n";
        return code_for(e.code());
    } catch (const std::exception& e) {
        err << "pelage: error: our own fault, please report it: " << e.what() << "\n";
        return our_fault;
    }
}

}  // namespace pelage::cli
