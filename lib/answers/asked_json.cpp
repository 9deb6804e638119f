// Places, words of the trade, coats and tools side by side, as JSON.
#include <algorithm>

#include <pelage/answers/kit.hpp>

#include "answers/json.hpp"
#include "answers/words/asked.hpp"
#include "answers/words/lookup.hpp"

namespace pelage::io {

namespace {

using io::json_of;  // beside those of this file

json setups_json(const std::vector<setup>& all) {
    json j = json::array();
    for (const setup& s : all) {
        j.push_back(json_of(s));
    }
    return j;
}

json json_of(const zone_card& c, const lookup_request& r) {
    const zone& z = r.reference.dog_body.zones[c.zone];
    json j{{"zone", z.id},
           {"title", z.title},
           {"is", c.words == nullptr ? "" : c.words->text},
           {"skin", name(z.cover)},
           {"skin_because", c.words == nullptr ? "" : c.words->skin},
           {"hold", z.hold},
           {"way", z.stroke},
           {"mind", z.hazard}};
    j["with"] = setups_json(c.with);
    j["with_where_clean"] = setups_json(c.clean);
    j["with_in_show"] = setups_json(c.in_show);
    j["against"] = setups_json(c.against);
    j["against_where_clean"] = setups_json(c.against_clean);
    j["against_on_pattern_breeds"] = setups_json(c.against_pattern);
    j["customary"] = z.prep_blades;
    j["usual"] = usual_words(c, r);
    j["never"] = json::array();
    for (const never_there& n : c.never) {
        j["never"].push_back(
            {{"why", no_go_words(n.why, r.reference.dog_body)}, {"setups", setups_json(n.tools)}});
    }
    j["never_de_mat"] = z.has(zone_use::never_demat);
    return j;
}

json json_of(const term& t) {
    json j{{"id", t.id},       {"title", t.title}, {"kind", name(t.kind)}, {"is", t.text},
           {"words", t.words}, {"see", t.see},     {"why", json_of(t.why)}};
    if (!t.usual.empty()) {
        j["usual"] = t.usual;
    }
    return j;
}

json terms_json(const std::vector<const term*>& all, const lookup_request& r) {
    json j = json::array();
    for (const term* one : all) {
        j.push_back(json_of(*one));
        if (const term_on_coats* on = r.coat ? said_of(words_of(r), *one, *r.coat) : nullptr) {
            j.back()["on_this_coat"] = on->text;
        }
    }
    return j;
}

std::string no_words(const never_rule& n) {
    return "never " + n.text + ". " + n.instead;
}

json json_of(const never_rule& n) {
    return {{"never", n.text}, {"because", n.instead}, {"of", n.of}, {"why", json_of(n.why)}};
}

}  // namespace

std::string json_of(const place_card& c, const lookup_request& r) {
    json j{{"schema", "pelage/place/1"}, {"asked", r.text}, {"word", c.asked.word}};
    if (c.asked.said != nullptr) {
        j["term"] = json_of(*c.asked.said);
    }
    if (!c.asked.beside.empty()) {
        j["words"] = terms_json(c.asked.beside, r);
    }
    if (const never_rule* n = never_of(r, c.asked)) {
        j["no"] = no_words(*n);
    } else if (c.is_no()) {
        j["no"] = not_there_words(c.no.front(), r.reference.dog_body);
    }
    j["zones"] = json::array();
    for (const zone_card& z : c.zones) {
        j["zones"].push_back(json_of(z, r));
    }
    return dumped(j);
}

std::string json_of(const terms_asked& t, const lookup_request& r) {
    json j{{"schema", "pelage/term/1"}, {"asked", r.text}};
    if (never_of_this_coat(r, t)) {
        j["no"] = coat_words(r);
    } else if (const never_rule* n = never_of(r, t)) {
        j["no"] = no_words(*n);
    }
    if (t.open != nullptr) {
        j["coat_open"] = coat_open_words(t);
    }
    j["terms"] = terms_json(t.all, r);
    return dumped(j);
}

std::string json_of(const carrying_answer& a, const lookup_request& r) {
    json j{{"schema", "pelage/carrying/1"}, {"asked", r.text}};
    if (a.asked.size() == 1) {
        j["blade"] = a.asked.front().tool.id;
        j["may"] = a.may();
    } else if (!a.asked.empty()) {
        j["each"] = json::array();
        for (const carrying_answer::one& b : a.asked) {
            j["each"].push_back(
                {{"blade", b.tool.id}, {"may", b.may}, {"adds_mm", mm_json(b.adds)}});
        }
    }
    j["blades"] = ids(a.blades);
    j["combs"] = ids(a.combs);
    return dumped(j);
}

std::string json_of(const list_asked& l, const lookup_request& r) {
    json j{{"schema", "pelage/list/1"}, {"asked", r.text}};
    if (l.what == list_asked::of::nevers) {
        j["nevers"] = json::array();
        for (const never_rule& n : words_of(r).never) {
            j["nevers"].push_back(json_of(n));
        }
        return dumped(j);
    }
    j["terms"] = json::array();
    for (const term& t : words_of(r).terms) {
        j["terms"].push_back({{"id", t.id}, {"title", t.title}, {"kind", name(t.kind)}});
    }
    return dumped(j);
}

std::string json_with(const std::string& tools, const tools_asked& asked, const lookup_request& r) {
    json j = json::parse(tools);
    if (!asked.beside.empty()) {
        j["words"] = terms_json(asked.beside, r);
    }
    if (const never_rule* n = never_of(r, asked)) {
        j["no"] = no_words(*n);
    }
    return dumped(j);
}

std::string json_of(const coat_asked& c, const lookup_request& r) {
    const coat& k = coat_of(r.reference, c.coat);
    return dumped({{"schema", "pelage/coat/1"},
                   {"asked", r.text},
                   {"coat", name(c.coat)},
                   {"title", k.title},
                   {"look", k.look},
                   {"said_first", k.said_first},
                   {"in_words", c.said == nullptr ? "" : c.said->text},
                   {"keeps_growing", k.kind == cycle::growing},
                   {"stops_mm", mm_json(longest_terminal(k).best)}});
}

namespace {

json cautions_json(const std::vector<const caution*>& all) {
    json out = json::array();
    for (const caution* c : all) {
        out.push_back({{"id", c->id}, {"text", c->text}, {"why", json_of(c->why)}});
    }
    return out;
}

void add_stops(const std::vector<const stop_rule*>& stops, json& to) {
    for (const stop_rule* s : stops) {
        to.push_back(
            {{"id", name(s->sign)}, {"text", s->seen + ". " + s->act}, {"why", json_of(s->why)}});
    }
}

}  // namespace

std::string json_of(const card_asked& c, const lookup_request& r) {
    json all = cautions_json(c.all);
    add_stops(c.stops, all);
    for (const card_line* l : c.figures) {
        all.push_back({{"id", l->said.front()}, {"text", l->text}, {"why", json_of(l->why)}});
    }
    return dumped({{"schema", "pelage/card/1"}, {"asked", r.text}, {"cautions", std::move(all)}});
}

std::string json_of(const health_asked& h, const lookup_request& r) {
    json j{{"schema", "pelage/health/1"}, {"asked", r.text}};
    j["cautions"] = json::array();
    add_stops(h.stops, j["cautions"]);
    for (json& one : cautions_json(h.all)) {
        j["cautions"].push_back(std::move(one));
    }
    if (!h.beside.empty()) {
        j["words"] = terms_json(h.beside, r);
    }
    return dumped(j);
}

std::string json_of(const comparison& c, const lookup_request& r) {
    json j{{"schema", "pelage/comparison/1"}, {"asked", r.text}};
    j["tools"] = json::array();
    for (const lookup_answer& a : c.all) {
        json one = json::parse(json_of(a, r));
        one.erase("schema");
        one.erase("asked");
        one["etched_mm"] = mm_json(etched(a));
        j["tools"].push_back(std::move(one));
    }
    j["longest"] = c.longest ? json(*c.longest) : json();
    if (!c.otherwise.empty()) {
        j["otherwise_on"] = json::array();
        for (const coat_class one : c.otherwise) {
            j["otherwise_on"].push_back(name(one));
        }
    }
    return dumped(j);
}

}  // namespace pelage::io
