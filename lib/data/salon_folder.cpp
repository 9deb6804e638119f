// Documents, and the files of a salon put together.
#include <algorithm>
#include <atomic>
#include <filesystem>
#include <future>

#include <fmt/format.h>

#include <pelage/data/embedded.hpp>
#include <pelage/data/record_file.hpp>
#include <pelage/data/write_dog.hpp>

#include "data/packed_tree.hpp"
#include "data/read/readers.hpp"
#include "data/read/sheets.hpp"
#include "data/record_line.hpp"

namespace pelage::io {

namespace {

/// One document read on its own.
template <class Value>
Value read_alone(const document_text& d, const reference_data& c,
                 const std::function<Value(const node&, page&)>& get, const kit* drawer = nullptr) {
    place_finder places(c.dog_body);
    diagnostics wrong;
    Value v;
    read_text(d, wrong, [&](const node& root, faults& out) {
        page p{out, c, places, drawer};
        v = get(root, p);
    });
    throw_if_any(std::move(wrong));
    return v;
}

/// Puts a sheet in place of the reference's of the same id, or behind the others.
void put(std::vector<style>& all, style s) {
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const style& o) { return o.id == s.id; });
    if (at == all.end()) {
        all.push_back(std::move(s));
    } else {
        *at = std::move(s);
    }
}

/// The ids of files of one kind, each with the file that has it.
class ids_of_files {
  public:
    void add(const std::string& id, const spot& at, std::string_view what, faults& out) {
        if (id.empty()) {
            return;
        }
        const auto [before, is_new] = files_.emplace(id, out.file());
        if (!is_new) {
            out.add(at, errc::duplicate,
                    fmt::format("two {} with one id; found {} in {} too; give one another id", what,
                                shown(id), shown(before->second)));
        }
    }

  private:
    std::map<std::string, std::string> files_;
};

/// Whether a link leads out of that folder: its record would stand in one salon and the dog in another.
bool leads_out(const std::string& path, const std::string& folder) {
    namespace fs = std::filesystem;
    std::error_code failed;
    if (!fs::is_symlink(fs::symlink_status(path, failed))) {
        return false;
    }
    const fs::path to = fs::canonical(path, failed);
    const fs::path home = fs::canonical(folder, failed);
    return !failed &&
           std::mismatch(home.begin(), home.end(), to.begin(), to.end()).first != home.end();
}

/// The texts of a folder's *.toml files, none if there is no such folder. A folder that can't be read is
/// a fault of the salon, a file that can't be is unsound.
std::vector<document_text> slurp_all(const std::string& folder, bool dogs, diagnostics& wrong,
                                     std::vector<unsound_file>& unsound) {
    std::vector<std::string> paths;
    std::error_code failed;
    try {
        if (std::filesystem::exists(folder, failed)) {
            paths = toml_files(folder);
        }
    } catch (const error& e) {
        wrong.push_back({folder, 0, 0, e.code(), e.what()});
    }
    std::vector<document_text> out;
    for (const std::string& path : paths) {
        try {
            if (dogs && leads_out(path, folder + "/..")) {
                throw error(errc::io, "can't read the dog; found " + shown(path) +
                                          ", which is a link out of the salon, and a file of its "
                                          "own is wanted; copy it, its record too");
            }
            out.push_back(read_text(path));
        } catch (const error& e) {
            unsound.push_back({path, {}, dogs, {}, {{path, 0, 0, e.code(), e.what()}}});
        }
    }
    return out;
}

}  // namespace

namespace {

/// The tree of a text: an embedded one was parsed when the library was built.
std::optional<node> tree_of(const document_text& d, faults& out) {
    const auto& texts = embedded_reference();
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const packed_file& made = packed_reference()[i];  // the same files in the same order
        if (texts[i].path == d.name && texts[i].text == d.text && made.path == d.name) {
            return unpacked(made.tree);
        }
    }
    return parse_toml(d.text, out);
}

}  // namespace

bool read_text(const document_text& d, diagnostics& to,
               const std::function<void(const node&, faults&)>& read) {
    parsed_text text{faults(d.name), std::nullopt};
    text.root = tree_of(d, text.out);
    return read_parsed(text, to, read);
}

bool read_parsed(parsed_text& text, diagnostics& to,
                 const std::function<void(const node&, faults&)>& read) {
    if (text.root) {
        read(*text.root, text.out);
    }
    const bool sound = text.out.none();
    text.out.move_to(to);
    return sound;
}

std::vector<parsed_text> parse_all(const std::vector<document_text>& files) {
    std::vector<parsed_text> out;
    out.reserve(files.size());
    for (const document_text& d : files) {
        faults wrong(d.name);
        auto root = tree_of(d, wrong);
        out.push_back({std::move(wrong), std::move(root)});
    }
    return out;
}

void throw_if_any(diagnostics faults) {
    if (!faults.empty()) {
        std::stable_sort(faults.begin(), faults.end());
        throw bad_input(std::move(faults));
    }
}

style read_style(const document_text& d, const reference_data& c) {
    place_finder places(c.dog_body);
    std::vector<parsed_text> text = parse_all({d});
    auto one = read_sheets(text, c.styles, [&](faults& out) { return page{out, c, places}; });
    diagnostics wrong;
    text.front().out.move_to(wrong);
    throw_if_any(std::move(wrong));
    return std::move(one.front().sheet.value);
}

dog read_dog(const document_text& d, const reference_data& c, const std::vector<style>& styles) {
    dog one =
        read_alone<dog>(d, c, [&](const node& n, page& p) { return get_dog(n, p, styles).value; });
    one.file = d.name;
    return one;
}

dog read_dog_of_salon(const document_text& d, const reference_data& c,
                      const std::vector<style>& styles, const kit& drawer) {
    dog one = read_alone<dog>(
        d, c, [&](const node& n, page& p) { return get_dog(n, p, styles).value; }, &drawer);
    one.file = d.name;
    return one;
}

salon_files read_salon(const document_text& d, const reference_data& c) {
    return read_alone<salon_files>(d, c, [](const node& n, page& p) { return get_salon(n, p); });
}

kit read_kit(const document_text& d, const reference_data& c) {
    return read_salon(d, c).tools;
}

namespace {

void put_sheets(salon_files& s, const std::vector<document_text>& sheets, const page_maker& on,
                const reference_data& c, std::vector<unsound_file>& unsound) {
    ids_of_files ids;
    std::vector<parsed_text> texts = parse_all(sheets);
    std::vector<read_sheet> read = read_sheets(texts, c.styles, on);
    for (std::size_t i = 0; i < read.size(); ++i) {
        placed<style>& one = read[i].sheet;
        ids.add(one.value.id, one.id_at, "style sheets", texts[i].out);
        if (read[i].sound && texts[i].out.none()) {
            put(s.styles, std::move(one.value));
            continue;
        }
        unsound.push_back({sheets[i].name, one.value.id, false, one.value.extends, {}});
        texts[i].out.move_to(unsound.back().faults);
    }
}

void put_dogs(salon_files& s, const std::vector<document_text>& dogs, const page_maker& on,
              std::vector<unsound_file>& unsound) {
    std::vector<std::string> faulty_sheets;
    for (const unsound_file& u : unsound) {
        if (!u.id.empty() && !u.is_dog) {
            faulty_sheets.push_back(u.id);
        }
    }
    ids_of_files ids;
    for (const document_text& d : dogs) {
        diagnostics faults;
        placed<dog> one;
        read_text(d, faults, [&](const node& root, pelage::io::faults& out) {
            page p = on(out);
            one = get_dog(root, p, s.styles, faulty_sheets);
            ids.add(one.value.id, one.id_at, "dogs", out);
        });
        one.value.file = d.name;
        if (faults.empty()) {
            s.dogs.push_back(std::move(one.value));
        } else {
            unsound.push_back({d.name, one.value.id, true, {}, std::move(faults)});
        }
    }
}

}  // namespace

salon_files assemble_salon(const document_text& salon_file,
                           const std::vector<document_text>& sheets,
                           const std::vector<document_text>& dogs, const reference_data& c,
                           std::vector<unsound_file>& unsound, diagnostics before) {
    place_finder places(c.dog_body);
    salon_files s;
    read_text(salon_file, before, [&](const node& root, faults& out) {
        page p{out, c, places};
        s = get_salon(root, p);
    });
    s.styles = c.styles;
    const page_maker on = [&](faults& out) { return page{out, c, places, &s.tools}; };
    put_sheets(s, sheets, on, c, unsound);
    put_dogs(s, dogs, on, unsound);
    if (!before.empty()) {
        for (const unsound_file& u : unsound) {
            before.insert(before.end(), u.faults.begin(), u.faults.end());
        }
        throw_if_any(std::move(before));
    }
    return s;
}

namespace {

void add_records(salon_files& s, const reference_data& c, std::vector<unsound_file>& unsound) {
    place_finder places(c.dog_body);
    for (dog& d : s.dogs) {
        diagnostics faults = add_record_beside(d, c, places);
        if (!faults.empty()) {
            unsound.push_back({record_path(d.file), {}, false, {}, std::move(faults), true});
        }
    }
}

}  // namespace

salon_files read_salon_folder(const std::string& dir, const reference_data& c) {
    std::vector<unsound_file> unsound;
    salon_files s = read_salon_folder(dir, c, unsound);
    diagnostics all;
    for (const unsound_file& u : unsound) {
        all.insert(all.end(), u.faults.begin(), u.faults.end());
    }
    throw_if_any(std::move(all));
    return s;
}

salon_files read_salon_folder(const std::string& dir, const reference_data& c,
                              std::vector<unsound_file>& unsound) {
    std::error_code failed;
    if (!std::filesystem::is_directory(dir, failed)) {
        throw error(errc::io, "can't read the salon; found " + shown(dir) +
                                  ", which is no folder; write the folder that holds salon.toml");
    }
    if (!std::filesystem::exists(dir + "/salon.toml", failed) && !failed) {
        throw error(errc::io, "can't read the salon; found " + shown(dir) +
                                  ", a folder without salon.toml; write the folder that holds "
                                  "it, or begin one as reference/handbook.md has it");
    }
    const document_text salon_file = read_text(dir + "/salon.toml");
    diagnostics wrong;
    const auto sheets = slurp_all(dir + "/styles", false, wrong, unsound);
    const auto dogs = slurp_all(dir + "/dogs", true, wrong, unsound);
    salon_files s = assemble_salon(salon_file, sheets, dogs, c, unsound, std::move(wrong));
    add_records(s, c, unsound);
    return s;
}

}  // namespace pelage::io
