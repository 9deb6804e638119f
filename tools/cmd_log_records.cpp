// log: records shown, handed out, held against their sheets, audited.
#include <algorithm>

#include <pelage/answers/record.hpp>
#include <pelage/model/dog_record.hpp>

#include "cmd_log.hpp"
#include "record_audit.hpp"

namespace pelage::cli {

namespace {

constexpr std::size_t shown_at_once = 5;

/// What is wrong in a record, beside the answer.
void note_faults(const io::dog_record& r, const surroundings& around) {
    for (const diagnostic& one : r.faults) {
        const std::string text = io::text_of({one});
        note(around, text.substr(0, text.size() - 1));
    }
    if (r.torn > 0) {
        note(around, r.file +
                         ": its last line was never finished and isn't counted; the next "
                         "entry sets it aside");
    }
}

}  // namespace

reply shown(const workplace& w, const dog& d, const std::string& path, const surroundings& around) {
    const io::record_of_dog of{d.id, d.name, io::read_record(path, d.id, w.reference)};
    note_faults(of.read, around);
    return {w.json
                ? io::export_json({of})
                : w.written(io::record_document(of, shown_at_once, w.reference.dog_body, w.print)),
            of.read.damaged ? bad_data : done};
}

reply exported(const log_options& o, const workplace& w, const std::vector<const dog*>& dogs,
               const surroundings& around) {
    std::vector<io::record_of_dog> all;
    bool damaged = false;
    for (const dog* d : dogs) {
        io::dog_record r = io::read_record(io::record_path(d->file), d->id, w.reference);
        if (r.there) {
            note_faults(r, around);
            damaged = damaged || r.damaged;
            all.push_back({d->id, d->name, std::move(r)});
        }
    }
    return {o.exported == "json" ? io::export_json(all)
                                 : io::csv_of(io::export_document(all), w.print.units),
            damaged ? bad_data : done};
}

reply against_sheet(const workplace& w, const std::vector<const dog*>& asked,
                    const surroundings& around) {
    std::vector<dog> dogs;
    std::vector<kept_dog> all;
    dogs.reserve(asked.size());  // they are pointed at
    bool damaged = false;
    for (const dog* d : asked) {
        const io::dog_record r = io::read_record(io::record_path(d->file), d->id, w.reference);
        note_faults(r, around);
        damaged = damaged || r.damaged;
        if (r.there) {
            (void)coat_by_mix(dogs.emplace_back(*d), w);
            all.push_back({&dogs.back(), entries_in_force(r.entries)});
        }
    }
    const parameters& rules = w.place().rules;
    const kept_lengths k =
        kept_lengths_of({w.reference, rules, w.tools(), w.styles, rules.matting.chance.best}, all);
    return {w.json ? io::json_of(k) : w.written(io::document_of(k, w.print)),
            damaged ? bad_data : done};
}

reply audited(const log_options& o, const workplace& w) {
    const io::record_audit a = audit_records(o.audit, w.reference, w.print.today);
    reply r{w.json ? io::json_of(a) : w.written(io::document_of(a)), !a.damaged.empty() ? bad_data
                                                                     : !a.doubtful.empty()
                                                                         ? answer_is_no
                                                                         : done};
    if (r.code == bad_data) {
        r.said = "pelage: error: not every record is sound\n";
    }
    return r;
}

}  // namespace pelage::cli
