// Records as JSON: entries are as their lines have them.
#include <pelage/answers/record.hpp>
#include <pelage/model/dog_record.hpp>

#include "answers/json.hpp"

namespace pelage::io {

namespace {

json entry_json(const log_entry& e, const std::string& dog) {
    json j = json::parse(line_of(e, dog));
    j.erase("crc32");
    j.erase("format");
    return j;
}

json faults_json(const diagnostics& all) {
    json out = json::array();
    for (const diagnostic& f : all) {
        out.push_back({{"file", f.file}, {"line", f.line}, {"text", f.text}});
    }
    return out;
}

}  // namespace

std::string recorded_json(const record_of_dog& of, const recorded_entry& e) {
    json j{{"schema", "pelage/recorded/1"}, {"file", of.read.file}};
    j["entry"] = entry_json(e.entry, of.id);
    if (!e.set_aside.empty()) {
        j["set_aside"] = e.set_aside;
    }
    return dumped(j);
}

std::string export_json(const std::vector<record_of_dog>& all) {
    json j{{"schema", "pelage/record/1"}, {"records", json::array()}};
    for (const record_of_dog& of : all) {
        json one{{"dog", of.id}, {"name", of.name}, {"file", of.read.file}};
        one["entries"] = json::array();
        for (const log_entry& e : of.read.entries) {
            one["entries"].push_back(entry_json(e, of.id));
        }
        one["in_force"] = json::array();
        for (const log_entry& e : entries_in_force(of.read.entries)) {
            one["in_force"].push_back(e.number);
        }
        one["faults"] = faults_json(of.read.faults);
        j["records"].push_back(std::move(one));
    }
    return dumped(j);
}

std::string json_of(const record_audit& a) {
    return dumped({{"schema", "pelage/record-check/1"},
                   {"files", a.files},
                   {"entries", a.entries},
                   {"damaged", faults_json(a.damaged)},
                   {"doubtful", faults_json(a.doubtful)}});
}

}  // namespace pelage::io
