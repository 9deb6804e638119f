// Records: what is in them, and how an entry gets there for good.
#include <algorithm>
#include <filesystem>

#include <fmt/format.h>

#include <pelage/data/record_file.hpp>
#include <pelage/model/dog_record.hpp>

#include "data/appended_file.hpp"
#include "data/record_line.hpp"

namespace pelage::io {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view ending = ".record.jsonl";

/// Reads the lines of a record in order.
class record_reader {
  public:
    record_reader(const std::string& file, const std::string& dog, const reference_data& c,
                  place_finder& places)
        : dog_(dog), known_(c), places_(places), wrong_(file, notation::json_text) {
        out_.file = file;
        out_.there = true;
    }

    dog_record all(std::string_view bytes) && {
        while (!bytes.empty()) {
            const auto end = bytes.find('\n');
            const std::string_view line = bytes.substr(0, end);
            ++number_;
            if (end == std::string_view::npos) {
                last(line);
                break;
            }
            take(line);
            bytes.remove_prefix(end + 1);
        }
        wrong_.move_to(out_.faults);
        return std::move(out_);
    }

  private:
    /// A line without its end is whole if its checksum says so.
    void last(std::string_view line) {
        out_.torn = line.size();
        if (sum_agrees(line)) {
            take(line);
        }
    }

    void take(std::string_view line) {
        page p{wrong_, known_, places_};
        const auto e = entry_in(line, number_, dog_, p);
        if (!e) {
            out_.damaged = true;
            ++uncounted_;
            ++out_.next;
            return;
        }
        if (in_order(*e)) {
            out_.entries.push_back(*e);
            out_.lines.push_back(number_);
        }
    }

    /// Whether the entry's number is the next, as far as damaged lines don't stand in between.
    bool in_order(const log_entry& e) {
        const unsigned last = out_.entries.empty() ? 0 : out_.entries.back().number;
        if (e.number <= last) {
            say(errc::duplicate,
                fmt::format("an entry's number comes once; found {} after {}; it isn't counted",
                            e.number, last));
            return false;
        }
        const unsigned between = e.number - last - 1;
        if (between > uncounted_) {
            const unsigned missing = between - uncounted_;
            say(errc::missing,
                fmt::format("{} missing before it; found entry {} after {}; copy what is lost back "
                            "from a backup",
                            missing == 1 ? "an entry is" : std::to_string(missing) + " entries are",
                            e.number, last == 0 ? "nothing" : std::to_string(last)));
        }
        if (e.corrects >= e.number) {
            say(errc::conflict,
                fmt::format("an entry corrects an earlier one; found that {} corrects {}", e.number,
                            e.corrects));
        }
        uncounted_ = 0;
        out_.next = e.number + 1;
        return true;
    }

    void say(errc code, std::string text) {
        wrong_.add({number_, 1}, code, std::move(text));
        out_.damaged = true;
    }

    const std::string& dog_;
    const reference_data& known_;
    place_finder& places_;
    faults wrong_;
    dog_record out_;
    unsigned number_ = 0;
    unsigned uncounted_ = 0;  ///< damaged lines since the last entry
};

/// A name beside the record that nothing has yet.
std::string free_name(const std::string& path) {
    const std::string stem = path.substr(0, path.size() - std::string_view(".jsonl").size());
    std::error_code failed;
    int n = 1;
    while (fs::exists(fs::symlink_status(stem + ".torn-" + std::to_string(n), failed))) {
        ++n;
    }
    return stem + ".torn-" + std::to_string(n);
}

/// Moves a last line that was never finished out of the way; gives the file it is in now.
std::string set_aside(appended_file& f, const std::string& path, std::string_view bytes,
                      std::size_t torn) {
    const std::string to = free_name(path);
    write_new_file(to, bytes.substr(bytes.size() - torn));
    f.cut_to(bytes.size() - torn);
    return to;
}

}  // namespace

std::string record_path(const std::string& dog_file) {
    constexpr std::string_view toml = ".toml";
    const bool usual = dog_file.ends_with(toml) && dog_file.size() > toml.size();
    return (usual ? dog_file.substr(0, dog_file.size() - toml.size()) : dog_file) +
           std::string(ending);
}

namespace {

dog_record read(const std::string& path, const std::string& dog, const reference_data& c,
                place_finder& places) {
    try {
        const auto bytes = read_ordinary_file(path);
        if (bytes) {
            return record_reader(path, dog, c, places).all(*bytes);
        }
        dog_record none;
        none.file = path;
        return none;
    } catch (const error& e) {
        dog_record out;
        out.file = path;
        out.there = true;
        out.damaged = true;
        out.faults.push_back({path, 0, 0, e.code(), e.what()});
        return out;
    }
}

}  // namespace

dog_record record_of(std::string_view bytes, const std::string& file, const std::string& dog,
                     const reference_data& c) {
    place_finder places(c.dog_body);
    return record_reader(file, dog, c, places).all(bytes);
}

dog_record read_record(const std::string& path, const std::string& dog, const reference_data& c) {
    place_finder places(c.dog_body);
    return read(path, dog, c, places);
}

diagnostics add_record_beside(dog& d, const reference_data& c, place_finder& places) {
    dog_record r = read(record_path(d.file), d.id, c, places);
    add_record(d, r.entries);
    return std::move(r.faults);
}

diagnostics add_record_beside(dog& d, const reference_data& c) {
    place_finder places(c.dog_body);
    return add_record_beside(d, c, places);
}

recorded_entry append_to_record(const std::string& path, const std::string& dog,
                                const reference_data& c,
                                const std::function<log_entry(const dog_record&)>& make) {
    appended_file f(path);
    std::string bytes = f.bytes();
    const dog_record before = record_of(bytes, path, dog, c);
    recorded_entry done{make(before), {}};
    done.entry.number = before.next;
    std::string line = line_of(done.entry, dog);
    const bool whole =
        before.torn > 0 && sum_agrees(std::string_view(bytes).substr(bytes.size() - before.torn));
    if (whole) {
        line.insert(0, "\n");  // only its end is missing
    } else if (before.torn > 0) {
        done.set_aside = set_aside(f, path, bytes, before.torn);
    }
    f.append(line);
    return done;
}

}  // namespace pelage::io
