// A roster's lines. Lengths in millimetres to 0.01, minutes to 0.001, whole days; dates ISO 8601.
#include "roster/line_json.hpp"

#include <algorithm>
#include <cmath>

#include "answers/plan_values.hpp"

namespace pelage::io {

namespace {

/// Opens an answer: which schema it has, and of which line it is.
void begin(json_line& j, std::uint64_t line) {
    j.begin('{').key("schema").text("pelage/roster/1");
    j.key("line").whole(static_cast<std::int64_t>(line));
}

void add_coats(json_line& j, const coat_answer& a) {
    j.key("coat_from_mix").begin('{').key("coats").begin('[');
    for (const coat_chance& c : a.coats) {
        j.begin('{').key("coat").text(name(c.coat));
        j.key("chance").decimal(std::llround(c.chance * 1e6), 1000000).end('}');
    }
    j.end(']').end('}');
}

}  // namespace

void add_plan(std::string& out, std::uint64_t line, const groom& g,
              const std::optional<return_date>& when, const plan_request& r,
              const std::optional<coat_answer>& by_mix) {
    json_line j(out);
    begin(j, line);
    j.key("id").text(r.patient.id).key("name").text(r.patient.name).key("alerts").begin('[');
    for (const std::string& one : titles(r.patient.alerts)) {
        j.text(one);
    }
    j.end(']');
    if (!r.patient.note.empty()) {
        j.key("note").text(r.patient.note);
    }
    j.key("plan").begin('{').key("style").text(r.sheet.id);
    if (by_mix) {
        add_coats(j, *by_mix);
    }
    add_plan(j, g, when, r, plan_detail::line);
    j.end('}').end('}');
    out += '\n';
}

void add_faults(std::string& out, std::uint64_t line, const std::string& id,
                const diagnostics& all) {
    json_line j(out);
    begin(j, line);
    if (!id.empty()) {
        j.key("id").text(id);
    }
    j.key("error").begin('[');
    const auto tell = [&](unsigned column, std::string_view text) {
        j.begin('{').key("line").whole(static_cast<std::int64_t>(line));
        j.key("column").whole(column).key("message").text(text).end('}');
    };
    constexpr std::size_t most = 20;
    for (std::size_t i = 0; i < std::min(all.size(), most); ++i) {
        tell(all[i].column, all[i].text);
    }
    if (all.size() > most) {
        tell(all[most].column, "and " + std::to_string(all.size() - most) + " more");
    }
    j.end(']').end('}');
    out += '\n';
}

}  // namespace pelage::io
