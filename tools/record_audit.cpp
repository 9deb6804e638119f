#include "record_audit.hpp"

#include <algorithm>
#include <filesystem>

#include <pelage/base/length_text.hpp>
#include <pelage/data/read.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/model/hair_by_record.hpp>

namespace pelage::cli {

namespace {

namespace fs = std::filesystem;

/// The records of the folder and what was set aside of them, by name.
std::vector<std::string> record_files(const std::string& folder) {
    std::vector<std::string> out;
    std::error_code failed;
    for (fs::directory_iterator at(folder, failed), end; !failed && at != end;
         at.increment(failed)) {
        const std::string name = at->path().filename().string();
        if (name.ends_with(".record.jsonl") || name.find(".record.torn-") != std::string::npos) {
            out.push_back(at->path().string());
        }
    }
    if (failed && fs::exists(folder)) {
        throw error(errc::io, "can't read the folder \"" + folder + "\": " + failed.message());
    }
    std::sort(out.begin(), out.end());
    return out;
}

class auditor {
  public:
    auditor(const salon_files& s, const reference_data& c, const std::optional<date>& today)
        : salon_(s), known_(c), today_(today), parts_(c.dog_body) {}

    io::record_audit all(const std::vector<std::string>& files) && {
        for (const std::string& file : files) {
            if (file.ends_with(".jsonl")) {
                record(file);
            } else {
                doubt(file, 0,
                      "a line that was never finished, set aside; remove it once nothing "
                      "in it is wanted");
            }
        }
        return std::move(out_);
    }

  private:
    void doubt(const std::string& file, unsigned line, std::string text) {
        out_.doubtful.push_back({file, line, line == 0 ? 0U : 1U, errc::unknown, std::move(text)});
    }

    void record(const std::string& file) {
        ++out_.files;
        const auto owner = std::find_if(salon_.dogs.begin(), salon_.dogs.end(), [&](const dog& d) {
            return io::record_path(d.file) == file;
        });
        if (owner == salon_.dogs.end()) {
            doubt(file, 0, "no dog's file that can be read lies beside it");
            return;
        }
        const io::dog_record r = io::read_record(file, owner->id, known_);
        out_.entries += r.entries.size();
        for (const diagnostic& one : r.faults) {
            const bool counted =
                std::find(r.lines.begin(), r.lines.end(), one.line) != r.lines.end() &&
                one.code != errc::missing && one.code != errc::conflict;
            (counted ? out_.doubtful : out_.damaged).push_back(one);
        }
        if (r.torn > 0) {
            doubt(file, 0, "its last line was never finished; the next entry sets it aside");
        }
        for (std::size_t i = 0; i < r.entries.size(); ++i) {
            if (today_ && r.entries[i].on > *today_) {
                doubt(file, r.lines[i],
                      "a visit after today; found " + iso(r.entries[i].on) + "; is its day right?");
            }
        }
        for (const log_entry& e : entries_in_force(r.entries)) {
            const auto at = std::find_if(r.entries.begin(), r.entries.end(),
                                         [&](const auto& one) { return one.number == e.number; });
            doubt_what_it_says(file, r.lines[static_cast<std::size_t>(at - r.entries.begin())], e,
                               *owner);
        }
    }

    /// The dog as it came to the visit, where anything measured is to be held against its hair; else no
    /// more than its coat, which is quicker.
    [[nodiscard]] dog before(const dog& owner, const log_entry& e) const {
        const bool measured = std::any_of(e.left.begin(), e.left.end(),
                                          [](const logged_length& l) { return l.measured; });
        dog d;
        d.coat = owner.coat;
        if (!measured || !d.coat) {
            return d;
        }
        d = owner;
        std::erase_if(d.visits, [&](const visit& v) { return v.on >= e.on; });
        std::erase_if(d.measured, [&](const measurement& m) { return m.on >= e.on; });
        d.now.clear();
        return as_by_record(std::move(d), known_, salon_.rules, e.on);
    }

    void doubt_what_it_says(const std::string& file, unsigned line, const log_entry& e,
                            const dog& owner) {
        const dog d = before(owner, e);
        for (const length_doubt& one : length_doubts(e, d, parts_, known_, salon_.rules)) {
            doubt(file, line,
                  (one.before_cut ? "before the cut " : "left ") + one.whom + " " + show(one.said) +
                      ": " + io::doubt_words(one, d, known_, length_unit::mm));
        }
        for (const logged_tool& t : e.used) {
            if (const auto one = doubt_of_tool(t.tool, known_, salon_.rules, &salon_.tools, e.on)) {
                doubt(file, line, io::doubt_words(*one));
            }
        }
    }

    const salon_files& salon_;
    const reference_data& known_;
    const std::optional<date>& today_;
    part_index parts_;
    io::record_audit out_;
};

}  // namespace

io::record_audit audit_records(const std::string& salon, const reference_data& c,
                               const std::optional<date>& today) {
    std::vector<io::unsound_file> left_out;  // dogs' files are judged by whoever plans them
    const salon_files s = io::read_salon_folder(salon, c, left_out);
    return auditor(s, c, today).all(record_files(salon + "/dogs"));
}

}  // namespace pelage::cli
