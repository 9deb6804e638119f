#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/data/write_dog.hpp>

#include "data/table_reader.hpp"
#include "data/toml_edit.hpp"

namespace pelage::io {

namespace {

/// A text in TOML's quotes; what TOML doesn't allow in them is written as an escape.
std::string in_quotes(std::string_view text) {
    std::string out = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (c == '\n') {
            out += "\\n";
        } else if (byte < 0x20U || byte == 0x7FU) {
            constexpr const char* digits = "0123456789ABCDEF";
            out += std::string("\\u00") + digits[byte >> 4U] + digits[byte & 15U];
        } else {
            out += c;
        }
    }
    return out + "\"";
}

std::string brushing_text(const brushing& b) {
    switch (b.how_often) {
        case habit::none:
            return "none";
        case habit::weekly:
            return std::string("weekly") + (b.to_skin ? " to the skin" : " on the surface");
        case habit::two_or_three:
            return std::string("every 3 days") + (b.to_skin ? " to the skin" : " on the surface");
        case habit::every_other_day:
            return std::string("every 2 days") + (b.to_skin ? " to the skin" : " on the surface");
        case habit::daily:
            break;
    }
    return std::string("daily") + (b.to_skin ? " to the skin" : " on the surface");
}

/// A key above the first heading, and its value as it is written; empty: the dog's file hasn't got it.
struct top_line {
    const char* key;
    std::string value;
};

std::string text_value(std::string_view text) {
    return text.empty() ? std::string{} : in_quotes(text);
}

std::string words_value(const std::vector<std::string>& all) {
    std::vector<std::string> quoted;
    for (const std::string& one : all) {
        quoted.push_back(in_quotes(one));
    }
    return all.empty() ? std::string{} : "[" + joined(quoted, ", ") + "]";
}

std::string length_value(const std::optional<length>& l) {
    return l ? in_quotes(with_unit(in_mm(*l), measure::length)) : std::string{};
}

std::string flag_value(bool value) {
    return value ? "true" : "";
}

/// Everything above the first heading, in the order in which a new file has it.
std::vector<top_line> top_lines(const dog& d) {
    std::vector<std::string> signs;
    for (const stop_sign s : d.signs) {
        signs.emplace_back(name(s));
    }
    return {
        {"id", text_value(d.id)},
        {"name", text_value(d.name)},
        {"invented", flag_value(d.invented)},
        {"size", text_value(name(d.size))},
        {"coat", d.coat ? text_value(name(*d.coat)) : ""},
        {"mix", text_value(d.mix)},
        {"style", text_value(d.style)},
        {"body_length", length_value(d.body_length)},
        {"brushing", d.brushing_said ? text_value(brushing_text(d.brushed)) : ""},
        {"age", d.age ? text_value(name(*d.age)) : ""},
        {"coat_change", flag_value(d.coat_change)},
        {"shedding", flag_value(d.shedding)},
        {"thin_or_old", flag_value(d.thin_or_old)},
        {"pink_skin", flag_value(d.pink_skin)},
        {"outdoors", d.out ? text_value(name(*d.out)) : ""},
        {"health", text_value(d.health)},
        {"sensitive", words_value(d.sensitive)},
        {"signs", words_value(signs)},
        {"alerts", words_value(titles(d.alerts))},
        {"comb_checked", flag_value(d.comb_checked)},
        {"combed_on", d.combed_on ? in_quotes(iso(*d.combed_on)) : ""},
        {"consents", words_value(d.consents)},
        {"note", text_value(d.note)},
        {"now_on", d.told.empty() ? "" : in_quotes(iso(d.told.front().on))},
    };
}

/// The tables of a dog's file, each with its headings; empty where it has none.
class tables {
  public:
    explicit tables(const body& b) : body_(b) {}

    std::string hair(const dog& d) {
        std::string out;
        const auto add = [&](const std::string& whom, const length& is) {
            out += (out.empty() ? "[now]\n" : "") + (is_id(whom) ? whom : in_quotes(whom)) + " = " +
                   length_value(is) + "\n";
        };
        for (const hair_now& n : d.now) {
            add(n.whom, n.is);
        }
        for (const measurement& m : d.told) {
            add(m.whom, m.is);
        }
        return out;
    }
    std::string mats(const dog& d) {
        return each(d.mats, "[[mat]]", [&](const mat_finding& m) {
            return key("zone", text_value(place_text(m.at))) +
                   key("grade", text_value(name(m.grade))) +
                   key("free_hair", length_value(m.free_hair)) +
                   key("to_skin", flag_value(m.to_skin)) +
                   key("comb_passes", flag_value(m.comb_passes)) +
                   key("comb_out", flag_value(m.comb_out)) +
                   key("seen", m.seen ? text_value(iso(*m.seen)) : "");
        });
    }
    std::string skin(const dog& d) {
        return each(d.skin, "[[skin]]", [&](const skin_finding& s) {
            return key("zone", text_value(place_text(s.at))) +
                   key("state", text_value(name(s.state))) + key("size", length_value(s.size)) +
                   key("known", flag_value(s.known));
        });
    }
    std::string visits(const dog& d) {
        return each(d.visits, "[[visit]]", [&](const visit& v) {
            return key("date", text_value(iso(v.on))) + key("kind", text_value(v.kind)) +
                   key("mats", !v.mats           ? ""
                               : v.mats->empty() ? text_value("none")
                                                 : words_value(*v.mats));
        });
    }
    static std::string key(const std::string& k, const std::string& value) {
        return value.empty() ? value : k + " = " + value + "\n";
    }

  private:
    template <class Finding, class Lines>
    static std::string each(const std::vector<Finding>& all, const std::string& heading,
                            Lines lines) {
        std::string out;
        for (const Finding& f : all) {
            out += (out.empty() ? "" : "\n") + heading + "\n" + lines(f);
        }
        return out;
    }
    [[nodiscard]] std::string place_text(const place& p) const {
        return p.which == side::both ? body_.zones[p.zone].id : title(body_, p);
    }

    const body& body_;
};

}  // namespace

std::string dog_file(const dog& d, const body& b) {
    std::string out = "# Written from an intake.\nformat = 1\n\n";
    for (const top_line& l : top_lines(d)) {
        out += tables::key(l.key, l.value);
    }
    tables t(b);
    for (const std::string& table : {t.hair(d), t.mats(d), t.skin(d), t.visits(d)}) {
        out += (table.empty() ? "" : "\n") + table;
    }
    return out;
}

std::string updated_dog_file(const std::string& text, const dog& before, const dog& after,
                             const body& b) {
    toml_edit file(text);
    const auto old = top_lines(before);
    const auto now = top_lines(after);
    for (std::size_t i = 0; i < now.size(); ++i) {
        if (now[i].value.empty() && !old[i].value.empty()) {
            file.remove(now[i].key);
        } else if (now[i].value != old[i].value) {
            file.set(now[i].key, now[i].value);
        }
    }
    tables t(b);
    const auto lay = [&](const char* name, const std::string& was, const std::string& is) {
        if (was != is) {
            file.replace_tables(name, is);
        }
    };
    lay("now", t.hair(before), t.hair(after));
    lay("mat", t.mats(before), t.mats(after));
    lay("skin", t.skin(before), t.skin(after));
    if (after.visits.size() > before.visits.size()) {
        dog added;
        added.visits.assign(
            after.visits.begin() + static_cast<std::ptrdiff_t>(before.visits.size()),
            after.visits.end());
        return file.text() + "\n" + t.visits(added);
    }
    return file.text();
}

std::optional<weight> weight_in_file(const std::string& text) {
    const std::string value = toml_edit(text).value_of("weight");
    return value.size() < 2 ? std::nullopt
                            : parse_weight(std::string_view(value).substr(1, value.size() - 2));
}

std::string with_weight(const std::string& text, const weight& w) {
    toml_edit file(text);
    file.set("weight", in_quotes(title(w)));
    return file.text();
}

std::string dog_id(const std::string& name) {
    const bool latin = std::any_of(name.begin(), name.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    });
    const std::string id = latin ? id_like(name) : "dog";  // of a name in another script
    return is_id(id) ? id : "dog";
}

}  // namespace pelage::io
