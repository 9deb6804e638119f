// Entries as lines, and back.
#include "data/record_line.hpp"

#include <boost/crc.hpp>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <pelage/base/date.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/data/record_file.hpp>

#include "data/json.hpp"

namespace pelage::io {

namespace {

using json = nlohmann::ordered_json;

constexpr std::string_view sum_key = ",\"crc32\":\"";
constexpr std::size_t sum_digits = 8;
constexpr std::size_t tail = sum_key.size() + sum_digits + 2;  // and "}
constexpr std::array<std::string_view, 2> bases{"as planned", "measured by the user"};
constexpr double most_minutes = 24 * 60;

std::string sum_of(std::string_view bytes) {
    boost::crc_32_type crc;
    crc.process_bytes(bytes.data(), bytes.size());
    return fmt::format("{:08x}", crc.checksum());
}

std::string in_text(const length& l) {
    return with_unit(in_hundredths(l) / 100.0, measure::length);
}

// ---- to a line ----

json lengths_json(const std::vector<logged_length>& all) {
    json out = json::array();
    for (const logged_length& l : all) {
        out.push_back({{"place", l.whom}, {"length", in_text(l.is)}, {"basis", bases[l.measured]}});
    }
    return out;
}

json mats_json(const std::vector<logged_mat>& all) {
    json out = json::array();
    for (const logged_mat& m : all) {
        json one{{"place", m.whom}};
        if (m.grade) {
            one["grade"] = name(*m.grade);
        }
        out.push_back(std::move(one));
    }
    return out;
}

json skin_json(const std::vector<logged_skin>& all) {
    json out = json::array();
    for (const logged_skin& s : all) {
        json one{{"place", s.whom}, {"state", name(s.state)}};
        if (s.size) {
            one["size"] = in_text(*s.size);
        }
        if (s.known) {
            one["known"] = true;
        }
        out.push_back(std::move(one));
    }
    return out;
}

json used_json(const std::vector<logged_tool>& all) {
    json out = json::array();
    for (const logged_tool& t : all) {
        out.push_back({{"tool", t.tool}, {"places", t.places}});
    }
    return out;
}

void add_visit(json& j, const log_entry& e) {
    const auto add = [&](const char* key, const auto& value) {
        if (!value.empty()) {
            j[key] = value;
        }
    };
    std::vector<std::string> services;
    for (const service_kind s : e.services) {
        services.emplace_back(name(s));
    }
    j["date"] = iso(e.on);
    add("services", services);
    add("who", e.who);
    add("used", used_json(e.used));
    add("found", lengths_json(e.found));
    add("left", lengths_json(e.left));
    if (e.mats) {
        j["mats"] = mats_json(*e.mats);
    }
    add("skin", skin_json(e.skin));
    add("behaviour", e.behaviour);
    if (e.took) {
        j["minutes"] = with_unit(in_minutes(*e.took), measure::minutes);
    }
    add("price", e.price);
    add("remarks", e.remarks);
    if (e.next) {
        j["next"] = iso(*e.next);
    }
}

// ---- from a line ----

/// The place under "place"; empty if it is none of the dog.
std::string place_in(record& r, page& p) {
    std::string whom = r.get_text("place", presence::must);
    return whom.empty() || p.places.find({whom, r.at("place")}, p.out) == nullptr ? std::string{}
                                                                                  : whom;
}

std::vector<logged_length> get_lengths(record& top, page& p, std::string_view key) {
    std::vector<logged_length> out;
    for (const node* n : top.get_tables(key, presence::may)) {
        record r(*n, p.out);
        const std::string whom = place_in(r, p);
        const auto l = r.get_length("length", presence::must);
        const std::string basis = r.get_choice("basis", presence::must, bases);
        r.done();
        if (!whom.empty() && l) {
            out.push_back({whom, rounded(*l), basis == bases[1]});
        }
    }
    return out;
}

std::vector<logged_mat> get_logged_mats(record& top, page& p) {
    std::vector<logged_mat> out;
    for (const node* n : top.get_tables("mats", presence::must)) {
        record r(*n, p.out);
        const std::string whom = place_in(r, p);
        const auto grade = r.get_name<mat_grade>("grade", presence::may, mat_names);
        r.done();
        if (!whom.empty()) {
            out.push_back({whom, grade});
        }
    }
    return out;
}

std::vector<logged_skin> get_logged_skin(record& top, page& p) {
    std::vector<logged_skin> out;
    for (const node* n : top.get_tables("skin", presence::may)) {
        record r(*n, p.out);
        const std::string whom = place_in(r, p);
        const auto state = r.get_name<skin_state>("state", presence::must, skin_state_names);
        const auto size = r.get_length("size", presence::may);
        const bool known = r.get_flag("known");
        r.done();
        if (!whom.empty() && state) {
            out.push_back({whom, *state, size ? std::optional{rounded(*size)} : size, known});
        }
    }
    return out;
}

std::vector<logged_tool> get_used(record& top, page& p) {
    std::vector<logged_tool> out;
    for (const node* n : top.get_tables("used", presence::may)) {
        record r(*n, p.out);
        logged_tool t{r.get_text("tool", presence::must), {}};
        for (const word& w : r.get_words("places", presence::must)) {
            if (p.places.find(w, p.out) != nullptr) {
                t.places.push_back(w.text);
            }
        }
        r.done();
        if (!t.tool.empty()) {
            out.push_back(std::move(t));
        }
    }
    return out;
}

void get_visit(record& r, page& p, log_entry& e) {
    e.on = r.get_day("date", presence::must).value_or(date{});
    for (const word& w : r.get_words("services", presence::must)) {
        const int i = index_of(w, "service", service_names, p.out);
        if (i >= 0) {
            e.services.push_back(static_cast<service_kind>(i));
        }
    }
    e.who = r.get_text("who", presence::may);
    e.used = get_used(r, p);
    e.found = get_lengths(r, p, "found");
    e.left = get_lengths(r, p, "left");
    if (r.get("mats") != nullptr) {
        e.mats = get_logged_mats(r, p);
    }
    e.skin = get_logged_skin(r, p);
    e.behaviour = r.get_text("behaviour", presence::may);
    if (const auto m =
            r.get_number("minutes", presence::may, measure::minutes, over_zero(most_minutes))) {
        e.took = minutes(*m);
    }
    e.price = r.get_text("price", presence::may);
    e.remarks = r.get_text("remarks", presence::may);
    e.next = r.get_day("next", presence::may);
}

/// Whether the line is another dog's; complains if so.
bool is_anothers(record& r, std::string_view dog, page& p) {
    const std::string id = r.get_text("dog", presence::must);
    if (id.empty() || id == dog) {
        return id.empty();
    }
    p.out.add(
        r.at("dog"), errc::conflict,
        fmt::format("the entry of another dog; found {}; right is {}", shown(id), shown(dog)));
    return true;
}

}  // namespace

bool sum_agrees(std::string_view line) {
    if (line.size() <= tail || !line.ends_with("\"}") ||
        line.substr(line.size() - tail, sum_key.size()) != sum_key) {
        return false;
    }
    return line.substr(line.size() - sum_digits - 2, sum_digits) ==
           sum_of(line.substr(0, line.size() - tail));
}

std::string line_of(const log_entry& e, const std::string& dog) {
    json j{{"format", 1}, {"dog", dog}, {"entry", e.number}};
    if (e.corrects != 0) {
        j["corrects"] = e.corrects;
    }
    if (e.takes_back) {
        j["takes_back"] = true;
        j["date"] = iso(e.on);
    } else {
        add_visit(j, e);
    }
    return with_checksum(j.dump(-1, ' ', false, json::error_handler_t::strict));
}

std::string with_checksum(std::string object) {
    if (!object.starts_with('{') || !object.ends_with('}')) {
        return {};
    }
    object.pop_back();
    return object + std::string(sum_key) + sum_of(object) + "\"}\n";
}

std::optional<log_entry> entry_in(std::string_view line, unsigned number, std::string_view dog,
                                  page& p) {
    if (!sum_agrees(line)) {
        p.out.add({number, 1}, errc::conflict,
                  "damaged: the line's bytes don't agree with its checksum; found " + shown(line) +
                      "; it isn't counted; copy it back from a backup, or log the visit again");
        return std::nullopt;
    }
    const auto root = parse_json(line, number, p.out);
    if (!root) {
        return std::nullopt;
    }
    record r(*root, p.out);
    const std::size_t before = p.out.count();
    check_format(r);
    if (p.out.count() > before || is_anothers(r, dog, p)) {
        return std::nullopt;  // a later version's keys say nothing to this one
    }
    log_entry e;
    constexpr int most = 1'000'000;
    e.number = static_cast<unsigned>(r.get_count("entry", 1, most, 0));
    e.corrects = static_cast<unsigned>(r.get_count("corrects", 1, most, 0));
    e.takes_back = r.get_flag("takes_back");
    if (e.takes_back) {
        e.on = r.get_day("date", presence::must).value_or(date{});
    } else {
        get_visit(r, p, e);
    }
    (void)r.get("crc32");
    r.done();
    const bool dated = is_near(e.on) && e.on != date{};
    if (e.number == 0 && p.out.count() == before) {
        p.out.add({number, 1}, errc::missing,
                  "an entry has its number; found none; write \"entry\": 1");
    }
    return e.number != 0 && dated ? std::optional{std::move(e)} : std::nullopt;
}

}  // namespace pelage::io
