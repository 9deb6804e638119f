// plan --ask: the intake as a talk, which writes the dog's file. Questions go to standard error, so that
// the plan can go elsewhere.
#include <algorithm>
#include <filesystem>
#include <ostream>

#include <pelage/data/write_dog.hpp>

#include "interview.hpp"
#include "part_file.hpp"
#include "plan_options.hpp"
#include "resolve_arguments.hpp"

namespace pelage::cli {

namespace {

/// An id that no dog of the salon has: that of the name, of the file asked for, or one with a number.
std::string free_id(const std::string& output, const workplace& w, const dog& d) {
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
    const std::string file = std::filesystem::path(output).stem().string();
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
std::string free_path(asker& a, const std::string& output, const dog& d) {
    std::string path = output.empty() ? d.id + ".toml" : output;
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

}  // namespace

std::string ask_for_dog(const plan_options& o, const surroundings& around) {
    if (!around.terminal || around.in == nullptr || around.talk == nullptr) {
        throw error(errc::usage,
                    "--ask: needs a terminal to ask in; found none; write the dog's file, or say "
                    "what was found by options (pelage plan --help)");
    }
    faults f;
    const workplace w = workplace_of(o, around, f, o.dog.season);
    f.throw_if_any();
    asker a(*around.in, *around.talk, around.one_key);
    dog d = interview(a, w.reference, w.styles, w.print.today);
    const std::string own = d.id;
    d.id = free_id(o.output, w, d);
    const std::string path = free_path(a, o.output, d);
    if (std::filesystem::exists(path) && std::filesystem::path(path).stem() == own) {
        d.id = own;  // the file it was in is written over
    }
    write_file(path, [&](std::ostream& file) { file << io::dog_file(d, w.reference.dog_body); });
    *around.talk << "Wrote " << path << "; again with: pelage plan " << path << "\n" << std::flush;
    return path.find('/') == std::string::npos ? "./" + path : path;
}

}  // namespace pelage::cli
