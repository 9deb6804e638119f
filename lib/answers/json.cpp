// Values that every answer writes alike as JSON. Lengths in millimetres to 0.01, days to 0.1, minutes to 0.001; dates
// ISO 8601.
#include "answers/json.hpp"

#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

using io::json_of;  // beside those of this file

const char* end_of(visit_kind k) {
    return k == visit_kind::by_length     ? "length"
           : k == visit_kind::by_brushing ? "brushing"
                                          : "usual interval";
}

}  // namespace

json mm_json(const length& l) {
    return std::round(in_mm(l) * 100.0) / 100.0;
}
json minutes_json(const work& w) {
    return in_minutes(w);
}

json json_of(const finished& f) {
    return {{"low_mm", mm_json(f.low)}, {"best_mm", mm_json(f.best)}, {"high_mm", mm_json(f.high)}};
}

json json_of(const setup& s) {
    json j{{"name", title(s)}};
    if (s.kind != tool_kind::clip) {
        return j;
    }
    j["blade"] = s.tool.id;
    j["blade_stated_mm"] = mm_json(s.tool.stated.best);
    if (s.over) {
        j["comb"] = s.over->id;
        j["comb_stated_mm"] = mm_json(s.over->stated.best);
    }
    j["direction"] = name(s.way);
    return j;
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
    json j{{"back_in_days", days_json(b.next_visit)},
           {"ended_by", end_of(b.reason)},
           {"chance", b.asked},
           {"even_odds_days", days_json(b.even_odds)},
           {"full_groom_days", days_json(b.full_groom)}};
    if (b.fine) {
        j["chance_then"] = share_json(*b.fine);
    }
    if (b.fine_even) {
        j["chance_even_odds"] = share_json(*b.fine_even);
    }
    if (!b.by_brushing.empty()) {
        j["brushing_holds_days"] = days_json(b.held_for);
    }
    if (b.if_prone) {
        j["if_it_mats_from"] = {
            {{"mm", mm_json(b.if_prone->low)}, {"back_in_days", days_json(b.if_prone->if_low)}},
            {{"mm", mm_json(b.if_prone->high)}, {"back_in_days", days_json(b.if_prone->if_high)}}};
    }
    if (b.was_due) {
        j["was_due"] = iso(*b.was_due);
    }
    if (o.today) {
        const date by = plus(*o.today, b.next_visit);
        j["back_by"] = iso(by);
        j["full_groom_by"] = iso(plus(*o.today, b.full_groom));
        if (o.closed.cover(by)) {
            const auto open = last_open(o.closed, *o.today + std::chrono::days{1}, by);
            j["last_open_day"] = open ? json(iso(*open)) : json(nullptr);
        }
    }
    return j;
}

}  // namespace pelage::io
