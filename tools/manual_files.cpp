// The page of the files, made of the schemas that editors check them by, so that no key is missing.
#include <algorithm>
#include <fstream>
#include <stdexcept>

#include <nlohmann/json.hpp>

#include "manual.hpp"

namespace pelage::cli {

namespace {

using json = nlohmann::json;

class schema_pages {
  public:
    explicit schema_pages(std::string folder) : folder_(std::move(folder)) {
        common_ = read("common");
    }

    /// A section: what the file is, and its keys.
    [[nodiscard]] std::string section_of(const std::string& name, const std::string& heading) {
        own_ = read(name);
        return ".Sh " + heading + "\n" + plain(own_.at("description").get<std::string>()) + ".\n" +
               keys_of(own_);
    }

  private:
    [[nodiscard]] json read(const std::string& name) const {
        std::ifstream from(folder_ + "/" + name + ".json", std::ios::binary);
        if (!from) {
            throw std::runtime_error("no schema " + folder_ + "/" + name + ".json");
        }
        return json::parse(from);
    }
    /// What a reference stands for; the thing itself where it is none. What is said beside the reference counts more.
    [[nodiscard]] json meant(const json& one) const {
        const auto ref = one.find("$ref");
        if (ref == one.end()) {
            return one;
        }
        const std::string path = ref->get<std::string>();
        const std::size_t hash = path.find('#');
        const json& from = hash == 0 ? own_ : common_;
        json out = from.at(json::json_pointer(path.substr(hash + 1)));
        out = meant(out);
        if (one.contains("description")) {
            out["description"] = one.at("description");
        }
        return out;
    }
    [[nodiscard]] static std::string value(const json& v) {
        return v.is_string() ? v.get<std::string>() : v.dump();
    }
    /// "one of toy, small", "true or false", "a list": what is written there.
    [[nodiscard]] std::string kind_of(const json& one) const {
        if (one.contains("const")) {
            return value(one.at("const"));
        }
        if (one.contains("enum")) {
            std::string out;
            for (const json& v : one.at("enum")) {
                out += (out.empty() ? "one of " : ", ") + value(v);
            }
            return out;
        }
        const auto type = one.find("type");
        const std::string t =
            type != one.end() && type->is_string() ? type->get<std::string>() : "";
        return t == "boolean"                    ? "true or false"
               : t == "array"                    ? "a list"
               : t == "object"                   ? "a table"
               : t == "integer" || t == "number" ? "a number"
               : t == "string"                   ? "text"
                                                 : "";
    }
    /// The keys of a table as a list, tables in it as lists within.
    [[nodiscard]] std::string keys_of(const json& table) const {
        if (!table.contains("properties")) {
            return {};
        }
        const json must = table.value("required", json::array());
        std::string out = ".Bl -tag -width Ds\n";
        for (const auto& [key, said] : table.at("properties").items()) {
            const json one = meant(said);
            std::string text = one.value("description", std::string{});
            const std::string kind = kind_of(one);
            text += (text.empty() || kind.empty() ? "" : "; ") + kind;
            const bool needed = std::find(must.begin(), must.end(), json(key)) != must.end();
            text += needed ? (text.empty() ? "needed" : "; needed") : "";
            out +=
                ".It Li " + argument(key) + "\n" + plain(text.empty() ? "see there" : text) + "\n";
            out += keys_of(one.contains("items") ? meant(one.at("items")) : one);
        }
        return out + ".El\n";
    }

    std::string folder_;
    json common_;
    json own_;
};

}  // namespace

manual_page manual_of_files(const std::string& day, const std::string& schemas) {
    schema_pages from(schemas);
    std::string text =
        ".Dd " + day +
        "\n.Dt PELAGE-FILES 5\n.Os\n.Sh NAME\n.Nm pelage-files\n.Nd "
        "the files of a salon\n.Sh DESCRIPTION\n" +
        plain(
            "A salon is a folder: salon.toml, dogs/ID.toml with a record beside each, and "
            "styles/ID.toml, text in UTF-8: TOML is written by hand, JSON Lines "
            "by the command; a length has its unit behind it.") +
        "\n";
    text += from.section_of("dog", "A DOG");
    text += from.section_of("salon", "A SALON");
    text += from.section_of("style", "A STYLE SHEET");
    text += from.section_of("roster-line", "A LINE OF A ROSTER");
    text += from.section_of("record-line", "A LINE OF A RECORD");
    return {"pelage-files.5",
            text +
                ".Sh FILES\n.Pa share/pelage/schema\nholds these schemas for editors.\n"
                ".Sh SEE ALSO\n.Xr pelage 1\n"};
}

}  // namespace pelage::cli
