#include "sheet_files.hpp"

#include <filesystem>
#include <set>

#include <pelage/answers/sheets.hpp>
#include <pelage/base/suggest.hpp>

namespace pelage::cli {

namespace {

namespace fs = std::filesystem;

bool is_file(const std::string& name) {
    return name.find('/') != std::string::npos || name.ends_with(".toml");
}

/// Reads each file once.
class sheet_gatherer {
  public:
    explicit sheet_gatherer(const reference_data& c) : c_(c) {}

    void take_file(const std::string& path) {
        take(path, out_.files);
        const fs::path folder = fs::path(path).parent_path();
        folders_.insert(folder.empty() ? "." : folder.string());
    }

    /// The sheets of a folder, or of the salon whose folder it is.
    void take_folder(const std::string& path) {
        const bool salon = is_salon(path);
        const fs::path folder = salon ? fs::path(path) / "styles" : fs::path(path);
        const fs::path salon_file = fs::path(path) / "salon.toml";
        std::error_code failed;
        if (salon && !out_.tools && fs::exists(salon_file, failed)) {
            out_.tools = io::read_kit(io::read_text(salon_file.string()), c_);
        }
        const auto found = io::toml_files(folder.string());
        if (found.empty()) {
            throw error(errc::io, "no style sheet in the folder \"" + path +
                                      "\"; a sheet is a file whose name ends in .toml");
        }
        for (const std::string& one : found) {
            take(one, out_.files);
        }
    }

    /// What lies beside the files and wasn't asked for.
    asked_files done() {
        for (const std::string& folder : folders_) {
            for (const std::string& one : io::toml_files(folder)) {
                if (folder != "." || !seen_.contains(fs::path(one).filename().string())) {
                    take_if_readable(one);
                }
            }
        }
        return std::move(out_);
    }

  private:
    [[nodiscard]] static bool is_salon(const std::string& path) {
        std::error_code failed;
        return fs::is_directory(fs::path(path) / "styles", failed) &&
               (fs::exists(fs::path(path) / "salon.toml", failed) || io::toml_files(path).empty());
    }
    void take(const std::string& path, std::vector<io::document_text>& to) {
        if (seen_.insert(path).second) {
            to.push_back(io::read_text(path));
        }
    }
    /// What nobody asked about may be unreadable: who extends it is told that it isn't there.
    void take_if_readable(const std::string& path) {
        try {
            take(path, out_.beside);
        } catch (const error& e) {
            if (e.code() != errc::io) {
                throw;
            }
        }
    }

    const reference_data& c_;
    asked_files out_;
    std::set<std::string> seen_;
    std::set<std::string> folders_;
};

}  // namespace

asked_files files_at(const std::vector<std::string>& paths, const reference_data& c) {
    sheet_gatherer all(c);
    for (const std::string& path : paths) {
        std::error_code failed;
        if (fs::is_directory(path, failed)) {
            all.take_folder(path);
        } else {
            all.take_file(path);
        }
    }
    return all.done();
}

std::vector<style> plain_sheets(const workplace& w) {
    std::vector<style> all = w.place().styles;
    for (const style& s : w.reference.styles) {
        if (find(all, s.id) == nullptr) {
            all.push_back(s);
        }
    }
    return all;
}

std::vector<style> own_sheets(const workplace& w) {
    std::vector<style> out;
    for (const style& s : w.own ? w.own->styles : std::vector<style>{}) {
        const style* known = find(w.reference.styles, s.id);
        if (known == nullptr || known->at.file != s.at.file) {
            out.push_back(s);
        }
    }
    return out;
}

std::optional<style> sheet_called(const std::string& name, const std::vector<style>& all,
                                  const workplace& w, const std::string& option, faults& f) {
    if (is_file(name)) {
        const asked_files files = files_at({name}, w.reference);
        const auto read = io::read_sheet_files(files.files, files.beside, w.reference, all,
                                               w.own ? &w.own->tools : nullptr);
        if (read.front().sheet) {
            return read.front().sheet;
        }
        if (!read.front().faults.empty()) {
            throw bad_input(read.front().faults);
        }
        f.say(errc::conflict, "a sheet that " + name + " extends is faulty, \"" +
                                  read.front().parent + "\" or one above that; check it first");
        return std::nullopt;
    }
    throw_if_unsound(w, name, false);
    if (const style* s = find(all, name)) {
        return *s;
    }
    f.say(errc::unknown, option + "no style sheet is called \"" + name + "\"" +
                             did_you_mean(name, ids(all)) +
                             "; pelage sheet list names them; a file ends in .toml");
    return std::nullopt;
}

}  // namespace pelage::cli
