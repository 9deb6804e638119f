#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

#include <pelage/data/read.hpp>

#include "data/faults.hpp"

namespace pelage::io {

namespace {

constexpr std::uintmax_t largest_read = 1'000'000;

[[noreturn]] void refuse(const std::string& path, std::string_view why) {
    throw error(errc::io, "can't read the file; found " + shown(path) + ", " + std::string(why));
}

}  // namespace

document_text read_text(const std::string& path) {
    namespace fs = std::filesystem;
    std::error_code failed;
    const fs::file_status what = fs::status(path, failed);
    if (what.type() == fs::file_type::not_found &&
        fs::is_symlink(fs::symlink_status(path, failed))) {
        refuse(path, "which is a link that leads nowhere; put a file of its own there");
    }
    if (what.type() == fs::file_type::not_found) {
        refuse(path, "which isn't there; write the path of a TOML file");
    }
    if (what.type() == fs::file_type::directory) {
        refuse(path, "which is a folder; write the path of a TOML file");
    }
    if (failed == std::errc::permission_denied) {
        refuse(path, "which may not be read; look at its permissions");
    }
    if (failed || what.type() != fs::file_type::regular) {
        refuse(path, "which is no ordinary file; write the path of a TOML file");
    }
    const std::uintmax_t size = fs::file_size(path, failed);
    if (failed || size > largest_read) {
        refuse(path, "which is larger than 1 MB; no file of a salon is");
    }
    std::ifstream in(path, std::ios::binary);
    if (!in.is_open()) {
        refuse(path, "which may not be read; look at its permissions");
    }
    try {
        return {path, std::string(std::istreambuf_iterator<char>(in), {})};
    } catch (const std::ios_base::failure&) {  // what the stream's buffer throws, asked or not
        refuse(path, "which can't be read to its end; look at the disk it is on");
    }
}

std::vector<std::string> toml_files(const std::string& folder) {
    namespace fs = std::filesystem;
    std::vector<std::string> paths;
    std::error_code failed;
    for (fs::directory_iterator at(folder, failed), end; !failed && at != end;
         at.increment(failed)) {
        const std::string file = at->path().filename().string();
        if (file.ends_with(".toml") && file.front() != '.') {
            paths.push_back(at->path().string());
        }
    }
    if (failed) {
        std::error_code unknown;
        throw error(errc::io, "can't read the folder; found " + shown(folder) +
                                  (fs::is_directory(folder, unknown)
                                       ? ", which may not be read; look at its permissions"
                                       : ", which is no folder"));
    }
    std::sort(paths.begin(), paths.end());
    return paths;
}

}  // namespace pelage::io
