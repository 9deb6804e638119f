#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/data/write_dog.hpp>

#include "data/table_reader.hpp"

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

class file_writer {
  public:
    explicit file_writer(const body& b) : body_(b) {}

    std::string all(const dog& d) {
        out_ = "# Written from an intake.\nformat = 1\n\n";
        key("id", d.id);
        key("name", d.name);
        flag("invented", d.invented);
        key("size", std::string(name(d.size)));
        key("coat", d.coat ? std::string(name(*d.coat)) : std::string{});
        key("mix", d.mix);
        key("style", d.style);
        if (d.body_length) {
            key("body_length", with_unit(in_mm(*d.body_length), measure::length));
        }
        if (d.brushing_said) {
            key("brushing", brushing_text(d.brushed));
        }
        whole_dog(d);
        lengths(d);
        findings(d);
        for (const visit& v : d.visits) {
            out_ += "\n[[visit]]\n";
            key("date", iso(v.on));
            key("kind", v.kind);
            if (v.mats && v.mats->empty()) {
                key("mats", "none");
            } else if (v.mats) {
                words("mats", *v.mats);
            }
        }
        return std::move(out_);
    }

  private:
    void key(std::string_view k, const std::string& value) {
        if (!value.empty()) {
            out_ += std::string(k) + " = " + in_quotes(value) + "\n";
        }
    }
    void flag(std::string_view k, bool value) {
        out_ += value ? std::string(k) + " = true\n" : std::string{};
    }
    void words(std::string_view k, const std::vector<std::string>& all) {
        if (all.empty()) {
            return;
        }
        out_ += std::string(k) + " = [";
        for (std::size_t i = 0; i < all.size(); ++i) {
            out_ += (i == 0 ? "" : ", ") + in_quotes(all[i]);
        }
        out_ += "]\n";
    }

    void whole_dog(const dog& d) {
        key("age", d.age ? std::string(name(*d.age)) : std::string{});
        flag("coat_change", d.coat_change);
        flag("shedding", d.shedding);
        flag("thin_or_old", d.thin_or_old);
        flag("pink_skin", d.pink_skin);
        key("outdoors", d.out ? std::string(name(*d.out)) : std::string{});
        key("health", d.health);
        words("sensitive", d.sensitive);
        std::vector<std::string> signs;
        for (const stop_sign s : d.signs) {
            signs.emplace_back(name(s));
        }
        words("signs", signs);
        words("alerts", titles(d.alerts));
        flag("comb_checked", d.comb_checked);
        words("consents", d.consents);
        key("note", d.note);
    }

    void lengths(const dog& d) {
        if (d.now.empty()) {
            return;
        }
        out_ += "\n[now]\n";
        for (const hair_now& n : d.now) {
            const bool bare = is_id(n.whom);
            out_ += (bare ? n.whom : in_quotes(n.whom)) + " = " +
                    in_quotes(with_unit(in_mm(n.is), measure::length)) + "\n";
        }
    }

    void findings(const dog& d) {
        for (const mat_finding& m : d.mats) {
            out_ += "\n[[mat]]\n";
            key("zone", place_text(m.at));
            key("grade", std::string(name(m.grade)));
            if (m.free_hair) {
                key("free_hair", with_unit(in_mm(*m.free_hair), measure::length));
            }
            flag("to_skin", m.to_skin);
            flag("comb_passes", m.comb_passes);
            flag("comb_out", m.comb_out);
        }
        for (const skin_finding& s : d.skin) {
            out_ += "\n[[skin]]\n";
            key("zone", place_text(s.at));
            key("state", std::string(name(s.state)));
            if (s.size) {
                key("size", with_unit(in_mm(*s.size), measure::length));
            }
            flag("known", s.known);
        }
    }
    [[nodiscard]] std::string place_text(const place& p) const {
        return p.which == side::both ? body_.zones[p.zone].id : title(body_, p);
    }

    const body& body_;
    std::string out_;
};

}  // namespace

std::string dog_file(const dog& d, const body& b) {
    return file_writer(b).all(d);
}

std::string dog_id(const std::string& name) {
    const bool latin = std::any_of(name.begin(), name.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    });
    const std::string id = latin ? id_like(name) : "dog";  // of a name in another script
    return is_id(id) ? id : "dog";
}

}  // namespace pelage::io
