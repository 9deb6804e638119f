// The reference as a whole.
#include <algorithm>

#include <fmt/format.h>

#include <pelage/data/reference.hpp>

#include "data/read/readers.hpp"
#include "data/read/sheets.hpp"

namespace pelage::io {

namespace {

constexpr std::string_view root_folder = "reference/";
constexpr std::string_view style_folder = "reference/styles/";
constexpr std::string_view demo_folder = "reference/demo/";

class reference_reader {
  public:
    explicit reference_reader(const std::vector<document_text>& files)
        : files_(files), parsed_(parse_all(files)) {}

    reference_data run() {
        // sources first: figures name them; then blades: zones and sheets name those
        one("sources", get_sources);
        one("blades", get_blades);
        one("combs", get_combs);
        one("zones", get_zones);
        one("places", get_places);
        one("coats", get_coats);
        one("inheritance", get_inheritance);
        one("breeds", get_breeds);
        for (const std::string_view set : {"cut", "growth", "matting", "refusal", "prices"}) {
            one(set,
                [&](const node& n, page& p, reference_data& c) { get_rule_file(n, p, c, set); });
        }
        one("quiz", [](const node& n, page& p, reference_data&) {
            quiz_rules listed_only;  // quiz_figures() has them
            get_quiz(n, p, listed_only);
        });
        one("cautions", get_cautions);
        one("services", get_services);
        sheets();
        outline_drawn();
        strangers();
        throw_if_any(std::move(wrong_));
        return std::move(book_);
    }

  private:
    using reader = std::function<void(const node&, page&, reference_data&)>;

    page page_for(faults& out) { return {out, book_, places_, nullptr, &book_.figures, true}; }

    void one(std::string_view stem, const reader& get) {
        const std::string name = fmt::format("{}{}.toml", root_folder, stem);
        const auto at = std::find_if(files_.begin(), files_.end(),
                                     [&](const document_text& d) { return d.name == name; });
        known_.push_back(name);
        if (at == files_.end()) {
            wrong_.push_back({name, 0, 0, errc::missing, "a file of the reference is missing"});
            return;
        }
        read_parsed(parsed_of(*at), wrong_, [&](const node& root, faults& out) {
            page p = page_for(out);
            get(root, p, book_);
        });
    }

    parsed_text& parsed_of(const document_text& d) {
        return parsed_[static_cast<std::size_t>(&d - files_.data())];
    }

    void sheets() {
        std::vector<parsed_text> texts;
        for (const document_text& d : files_) {
            if (d.name.starts_with(style_folder)) {
                known_.push_back(d.name);
                texts.push_back(std::move(parsed_of(d)));
            }
        }
        const auto complete = [](placed<style>& s, page& p) {
            // the file is called after the sheet, so no two sheets have one id
            if (p.out.file() != fmt::format("{}{}.toml", style_folder, s.value.id)) {
                p.out.add(
                    s.id_at, errc::conflict,
                    fmt::format("a sheet's file bears its id; found {}; write the file's name",
                                shown(s.value.id)));
            } else {
                check_complete(s.value, s.id_at, p);
            }
        };
        auto read = read_sheets(
            texts, {}, [&](faults& out) { return page_for(out); }, complete);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            texts[i].out.move_to(wrong_);
            book_.styles.push_back(std::move(read[i].sheet.value));
        }
    }

    /// The drawing is no part of what the rest needs, and may be left out; what is wrong with it is told.
    void outline_drawn() {
        const std::string name = fmt::format("{}outline.toml", root_folder);
        if (std::any_of(files_.begin(), files_.end(),
                        [&](const document_text& d) { return d.name == name; })) {
            one("outline",
                [](const node& n, page& p, reference_data&) { (void)get_outline(n, p); });
        }
    }

    /// Files nobody asked for: a misspelt name would go unread.
    void strangers() {
        known_.push_back(std::string(root_folder) + "glossary.toml");  // read where it is asked for
        for (const document_text& d : files_) {
            if (!d.name.starts_with(demo_folder) &&
                std::find(known_.begin(), known_.end(), d.name) == known_.end()) {
                wrong_.push_back({d.name, 0, 0, errc::unknown,
                                  "no such file belongs to the reference; found " + shown(d.name)});
            }
        }
    }

    const std::vector<document_text>& files_;
    std::vector<parsed_text> parsed_;
    reference_data book_;
    place_finder places_{book_.dog_body};
    diagnostics wrong_;
    std::vector<std::string> known_;
};

}  // namespace

reference_data read_reference(const std::vector<document_text>& files) {
    return reference_reader(files).run();
}

}  // namespace pelage::io
