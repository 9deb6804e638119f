// What was left against the sheet, as a document and as values.
#include <algorithm>

#include <pelage/answers/record.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/json.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

/// "+4.0 mm", "-1.5 mm", "0 mm".
std::string signed_words(const length& l, length_unit u) {
    const std::string much = show(gap(l, length{}), u);
    return in_hundredths(l) == 0 ? much : (l > length{} ? "+" : "-") + much;
}

std::string between_words(const kept_row& r, length_unit u) {
    return r.between
               ? signed_words(r.between->first, u) + " to " + signed_words(r.between->second, u)
               : "too few visits";
}

std::string claim_of(const kept_row& r) {
    return !r.claimed() ? "" : r.middle > length{} ? "longer" : "shorter";
}

std::string visits_words(std::size_t n) {
    return std::to_string(n) + (n == 1 ? " visit" : " visits");
}

typed_table people_table(const kept_lengths& k, kept_by by, length_unit u) {
    typed_table t{{std::string(name(by)), "visits", "dogs", "off", "between", "than the sheet"}};
    t.numbers = {false, true, true, true, false, false};
    t.whom = shown_to::people;
    for (const kept_row& r : k.rows) {
        if (r.by == by) {
            t.rows.push_back(
                {r.what, static_cast<std::int64_t>(r.visits), static_cast<std::int64_t>(r.dogs),
                 cell(r.middle, signed_words(r.middle, u)), between_words(r, u), claim_of(r)});
        }
    }
    return t;
}

typed_table program_table(const kept_lengths& k) {
    typed_table t{{"by", "what", "visits", "dogs", "off", "low", "high", "claim"}};
    t.whom = shown_to::programs;
    for (const kept_row& r : k.rows) {
        t.rows.push_back({std::string(name(r.by)), r.what, static_cast<std::int64_t>(r.visits),
                          static_cast<std::int64_t>(r.dogs), r.middle,
                          r.between ? cell(r.between->first) : cell(),
                          r.between ? cell(r.between->second) : cell(), claim_of(r)});
    }
    return t;
}

}  // namespace

document document_of(const kept_lengths& k, const print_options& o) {
    document d{"What was left against the sheet"};
    d.titled = true;
    d.open({}, false);
    if (k.rows.empty()) {
        d.say(
            "No visit on record has a length measured after the cut at a place where the sheet "
            "wants one: log --left writes it.");
        return d;
    }
    d.say(visits_words(k.visits) + " of " + std::to_string(k.dogs) +
          (k.dogs == 1 ? " dog" : " dogs") + " with lengths measured after the cut; " +
          visits_words(k.unsaid) +
          " without. Who measures only what differs is seen here at the worst.");
    const std::vector<const char*> headings{"By who groomed", "By part of the dog", "By tool"};
    for (const kept_by by : {kept_by::groomer, kept_by::part, kept_by::tool}) {
        typed_table t = people_table(k, by, o.units);
        if (!t.rows.empty()) {
            d.open(headings[static_cast<std::size_t>(by)]);
            d.show(std::move(t));
        }
    }
    d.show(program_table(k));
    d.open();
    d.say(
        "off: the middle of the visits' differences, left less wanted by the sheet as it is "
        "today. between: where the middle of many such visits lies, in all lines together in " +
        odds(k.asked) +
        ", whatever they are spread like; visits are taken as independent of each other. Of "
        "fewer than " +
        visits_words(k.enough) + " nothing is said, nor where between holds 0.");
    return d;
}

std::string json_of(const kept_lengths& k) {
    json j{{"schema", "pelage/against-sheet/1"},
           {"visits", k.visits},
           {"dogs", k.dogs},
           {"visits_without", k.unsaid},
           {"visits_needed", k.enough},
           {"chance", k.asked},
           {"rows", json::array()}};
    for (const kept_row& r : k.rows) {
        json one{{"by", name(r.by)},
                 {"what", r.what},
                 {"visits", r.visits},
                 {"dogs", r.dogs},
                 {"off_mm", mm_json(r.middle)}};
        one["low_mm"] = r.between ? json(mm_json(r.between->first)) : json();
        one["high_mm"] = r.between ? json(mm_json(r.between->second)) : json();
        one["claim"] = claim_of(r).empty() ? json() : json(claim_of(r));
        j["rows"].push_back(std::move(one));
    }
    return dumped(j);
}

}  // namespace pelage::io
