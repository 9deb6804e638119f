#include <algorithm>
#include <filesystem>
#include <fstream>
#include <istream>
#include <memory>

#include <pelage/roster/roster.hpp>

#include "plan_options.hpp"
#include "progress.hpp"
#include "resolve_arguments.hpp"

namespace pelage::cli {

namespace {

/// The roster asked for: a file, a pipe, or standard input.
class opened {
  public:
    opened(const std::string& path, const surroundings& around) {
        if (path == "-") {
            in_ = around.in;
            if (in_ == nullptr) {
                throw error(errc::io, "can't read the roster; found no standard input");
            }
            return;
        }
        namespace fs = std::filesystem;
        std::error_code failed;
        const fs::file_type what = fs::status(path, failed).type();
        const std::string name = "can't read the roster; found \"" + path + "\", which ";
        if (what == fs::file_type::not_found) {
            throw error(errc::io, name + "isn't there; write the path of a file of JSON Lines");
        }
        if (what == fs::file_type::directory) {
            throw error(errc::io, name + "is a folder; write the path of a file of JSON Lines");
        }
        if (what == fs::file_type::fifo && !handed_over(path)) {
            throw error(errc::io, name +
                                      "is a named pipe, where nobody may ever write; write -, and "
                                      "lead it to standard input");
        }
        file_.open(path, std::ios::binary);
        if (!file_) {
            throw error(errc::io, name + "may not be read; look at its permissions");
        }
    }
    [[nodiscard]] std::istream& in() { return in_ != nullptr ? *in_ : file_; }

  private:
    /// A pipe that the shell opened for this call, which has a writer.
    static bool handed_over(const std::string& path) {
        return path == "/dev/stdin" || path.starts_with("/dev/fd/") ||
               path.starts_with("/proc/self/fd/");
    }

    std::ifstream file_;
    std::istream* in_ = nullptr;
};

/// How many lines a file has; 0 of what is no plain file.
std::uint64_t lines_of_file(const std::string& path) {
    std::error_code failed;
    if (path == "-" || !std::filesystem::is_regular_file(path, failed) || failed) {
        return 0;
    }
    std::ifstream in(path, std::ios::binary);
    return static_cast<std::uint64_t>(
        std::count(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>(), '\n'));
}

std::string lines(std::uint64_t n) {
    return std::to_string(n) + (n == 1 ? " line" : " lines");
}

/// What is said beside the answers, and the gravest of their exit codes.
reply summed_up(const pelage::roster_count& n) {
    if (n.failed > 0) {
        return {{},
                our_fault,
                "pelage: error: our own fault in " + lines(n.failed) + " of " +
                    std::to_string(n.lines) + ", please report it; see \"error\" there\n"};
    }
    if (n.faulty > 0) {
        return {{},
                bad_data,
                "pelage: error: " + lines(n.faulty) + " of " + std::to_string(n.lines) +
                    " can't be planned; see \"error\" there\n"};
    }
    return {{}, n.refused > 0 ? answer_is_no : done};
}

}  // namespace

reply roster(const plan_options& o, const surroundings& around) {
    faults f;
    const auto w = std::make_shared<workplace>(workplace_of(o, around, f));
    const std::string& jobs = o.jobs;
    const auto threads =
        jobs.empty()
            ? std::optional{std::clamp(around.cores, 1U, 256U)}
            : whole_in("--jobs", jobs, 1, 256, "write it like 4, or leave it out for all cores", f);
    const auto from =
        o.from.empty() ? std::optional{1U}
                       : whole_in("--from", o.from, 1, 1'000'000'000,
                                  "write the number of the first line that has no answer yet", f);
    const auto asked = o.dog.chance.empty() ? std::nullopt : chance_in(o.dog.chance, f);
    f.throw_if_any();
    const auto file = std::make_shared<opened>(o.roster, around);
    reply r;
    const io::roster_request wanted{
        w->reference, w->place().rules, w->tools(), w->styles, w->print.today,
        asked,        *threads,         *from};
    const std::uint64_t whole = around.watched ? lines_of_file(o.roster) : 0;
    std::ostream* err = around.watched ? around.talk : nullptr;
    r.lines = [w, file, wanted, whole, err, begun = *from - 1](std::ostream& out) {
        if (err == nullptr) {
            return summed_up(io::plan_roster(file->in(), out, wanted));
        }
        told_lines counted(out, *err, whole > begun ? whole - begun : 0);
        std::ostream watched(&counted);
        const reply done = summed_up(io::plan_roster(file->in(), watched, wanted));
        out.setstate(watched.rdstate());
        return done;
    };
    return r;
}

}  // namespace pelage::cli
