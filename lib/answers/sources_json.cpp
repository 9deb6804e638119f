// The figures and what they rest on, as JSON.
#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/json.hpp"

namespace pelage::io {

std::string sources_json(const reference_data& c, const std::string& key) {
    json j{{"schema", "pelage/sources/1"},
           {"figures", json::array()},
           {"cautions", json::array()},
           {"sources", json::array()}};
    for (const listed_figure& f : c.figures) {
        if (f.key.find(key) != std::string::npos) {
            json one{{"key", f.key}, {"value", f.value}};
            one.update(json_of(f.why));
            j["figures"].push_back(std::move(one));
        }
    }
    const auto caution_to = [&](const std::string& id, const std::string& text, const evidence& e) {
        if (id.find(key) != std::string::npos) {
            json one{{"key", id}, {"text", text}};
            one.update(json_of(e));
            j["cautions"].push_back(std::move(one));
        }
    };
    for (const caution& one : c.cautions) {
        caution_to("cautions/" + one.id, one.text, one.why);
    }
    for (const stop_rule& one : c.stops) {
        caution_to("cautions/stop/" + std::string(name(one.sign)), one.seen + ". " + one.act,
                   one.why);
    }
    for (const source& s : c.sources) {
        if (s.id.find(key) != std::string::npos) {
            j["sources"].push_back({{"id", s.id},
                                    {"kind", s.kind},
                                    {"title", s.title},
                                    {"author", s.author},
                                    {"publisher", s.publisher},
                                    {"year", s.year},
                                    {"address", s.address},
                                    {"seen", s.seen},
                                    {"note", s.note}});
        }
    }
    return j["figures"].empty() && j["cautions"].empty() && j["sources"].empty() ? std::string{}
                                                                                 : dumped(j);
}

}  // namespace pelage::io
