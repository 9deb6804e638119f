// Values that every answer writes alike as JSON. Lengths in millimetres to 0.01, days to 0.1, minutes to 0.001; dates
// ISO 8601.
#include "answers/json.hpp"

#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/plan_values.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

json mm_json(const length& l) {
    return std::round(in_mm(l) * 100.0) / 100.0;
}
json minutes_json(const work& w) {
    return in_minutes(w);
}

json json_of(const finished& f) {
    return parsed([&](json_line& j) { add_finished(j, f); });
}

json json_of(const setup& s) {
    return parsed([&](json_line& j) { add_setup(j, s); });
}

json place_json(const body& b, const place& p) {
    return parsed([&](json_line& j) {
        j.begin('{');
        add_place(j, b, p);
        j.end('}');
    });
}

json json_of(const evidence& e) {
    json j{{"basis", name(e.how)}};
    if (!e.from.empty()) {
        j["source"] = e.from;
    }
    if (e.relayed) {
        j["second_hand"] = true;
    }
    if (!e.note.empty()) {
        j["note"] = e.note;
    }
    return j;
}

json days_json(const days& d) {
    return is_never(d) ? json("never") : json(std::round(in_days(d) * 10.0) / 10.0);
}

json share_json(double p) {
    return std::round(p * 1e6) / 1e6;
}

double thousandth(double v) {
    return std::round(v * 1000.0) / 1000.0;
}

std::string dumped(const json& j) {
    // what isn't UTF-8 in a name is replaced rather than thrown over: the readers refuse it before
    return j.dump(2, ' ', false, json::error_handler_t::replace) + "\n";
}

json dog_json(const plan_request& r) {
    const dog& d = r.patient;
    json j{{"id", d.id},
           {"name", d.name},
           {"invented", d.invented},
           {"size", name(d.size)},
           {"coat", name(*d.coat)},
           {"style", r.sheet.id},
           {"brushing", title(d.brushed)},
           {"brushing_said", d.brushing_said}};
    if (!d.note.empty()) {
        j["note"] = d.note;
    }
    if (!r.sheet.in_season.empty()) {
        j["season"] = r.sheet.in_season;
    }
    return j;
}

json back_json(const return_date& b, const print_options& o) {
    return parsed([&](json_line& j) { add_back(j, b, o.today, o.closed); });
}

}  // namespace pelage::io
