// The owner's page as JSON.
#include <pelage/answers/owner_page.hpp>

#include "answers/json.hpp"
#include "answers/owner_page_parts.hpp"

namespace pelage::io {

std::string owner_json(const owner_matter& m, const print_options& o) {
    const owner_page page = page_of(m, o);
    json j{{"schema", "pelage/owner/1"},
           {"dog", {{"id", m.asked.patient.id}, {"name", m.asked.patient.name}}},
           {"title", page.title},
           {"from", page.from},
           {"sections", json::array()},
           {"to_sign", page.sign},
           {"foot", page.foot}};
    if (m.when && o.today) {
        j["back_by"] = iso(plus(*o.today, m.when->next_visit));
    }
    for (const page_section& s : page.sections) {
        const char* as = s.how == lines_as::steps   ? "steps"
                         : s.how == lines_as::boxes ? "boxes"
                                                    : "bullets";
        j["sections"].push_back(
            {{"heading", s.heading}, {"says", s.says}, {"lines", s.lines}, {"lines_as", as}});
    }
    return dumped(j);
}

}  // namespace pelage::io
