#include "data/read/sheets.hpp"

#include <algorithm>

#include <fmt/format.h>

#include <pelage/data/sheet_files.hpp>

namespace pelage::io {

namespace {

constexpr std::size_t deepest_line = 16;   ///< parents over a sheet
constexpr std::size_t most_waiting = 500;  ///< read by recursion

enum class stage { waiting, reading, done };

/// A key of the file's own level, as far as it is text.
const member* text_under(const parsed_text& t, std::string_view key) {
    if (!t.root) {
        return nullptr;
    }
    const auto at = std::find_if(t.root->members.begin(), t.root->members.end(),
                                 [&](const member& m) { return m.key == key; });
    return at == t.root->members.end() || at->value.kind != node_kind::text ? nullptr : &*at;
}

class sheet_resolver {
  public:
    sheet_resolver(std::vector<parsed_text>& texts, const std::vector<style>& others,
                   const page_maker& make, const std::function<void(placed<style>&, page&)>& after)
        : texts_(texts),
          others_(others),
          make_(make),
          after_(after),
          stages_(texts.size(), stage::waiting),
          sheets_(texts.size()) {}

    std::vector<read_sheet> run() {
        for (std::size_t i = 0; i < texts_.size(); ++i) {
            read(i);
        }
        return std::move(sheets_);
    }

  private:
    /// What a sheet's `extends` comes to.
    struct parentage {
        const style* parent = nullptr;
        bool unread = false;  ///< it has one that can't be had
    };

    void read(std::size_t i) {
        if (stages_[i] != stage::waiting) {
            return;
        }
        stages_[i] = stage::reading;
        parsed_text& t = texts_[i];
        if (t.root) {
            const parentage p = parents_of(i);
            page on = make_(t.out);
            sheets_[i].sheet = get_style(*t.root, on, p.parent, p.unread);
            if (t.out.none() && !p.unread && after_) {
                after_(sheets_[i].sheet, on);
            }
            if (const member* m = text_under(t, "extends"); m != nullptr && p.unread) {
                sheets_[i].sheet.value.extends = m->value.text;  // whoever asks is told of it
            }
            sheets_[i].sound = t.out.none() && !p.unread;
        }
        stages_[i] = stage::done;
    }

    [[nodiscard]] std::string id_of(std::size_t i) const {
        const member* m = text_under(texts_[i], "id");
        return m == nullptr ? std::string{} : m->value.text;
    }

    [[nodiscard]] std::size_t called(const std::string& id) const {
        for (std::size_t i = 0; i < texts_.size(); ++i) {
            if (id_of(i) == id) {
                return i;
            }
        }
        return texts_.size();
    }

    parentage parents_of(std::size_t i) {
        parsed_text& t = texts_[i];
        const auto is_key = [](const member& m) { return m.key == "extends"; };
        const auto at = std::find_if(t.root->members.begin(), t.root->members.end(), is_key);
        if (at == t.root->members.end()) {
            return {};
        }
        const auto id = text_at(at->value, "extends", text_kind::line, t.out);
        if (!id) {
            return {nullptr, true};
        }
        const std::size_t own = called(*id);
        if (own < texts_.size() && own != i) {
            return parent_among(i, own, at->value.at);
        }
        const style* other = find(others_, *id);
        if (other == nullptr) {
            complain_of_unknown(i, *id, at->value.at);
        }
        return {other, other == nullptr};
    }

    parentage parent_among(std::size_t i, std::size_t parent, const spot& at) {
        if (stages_[parent] == stage::reading) {
            texts_[i].out.add(at, errc::conflict,
                              fmt::format("sheets that extend one another in a circle; found {}; "
                                          "take \"extends\" out of one of them",
                                          circle(parent, i)));
            return {nullptr, true};
        }
        if (chain_.size() >= most_waiting) {
            too_long(i, at);
            return {nullptr, true};
        }
        chain_.push_back(i);
        read(parent);
        chain_.pop_back();
        if (!sheets_[parent].sound) {
            return {nullptr, true};
        }
        const style& found = sheets_[parent].sheet.value;
        if (found.line.size() >= deepest_line) {
            too_long(i, at);
            return {nullptr, true};
        }
        return {&found, false};
    }

    void too_long(std::size_t i, const spot& at) {
        texts_[i].out.add(at, errc::range,
                          fmt::format("too long a line of sheets; found more than {}; extend a "
                                      "sheet further up",
                                      deepest_line));
    }

    /// "a -> b -> a": from the one that closes the circle round to itself.
    [[nodiscard]] std::string circle(std::size_t from, std::size_t last) const {
        std::string text;
        const auto begin = std::find(chain_.begin(), chain_.end(), from);
        for (auto at = begin; at != chain_.end(); ++at) {
            text += escaped(id_of(*at), 60) + " -> ";
        }
        return text + escaped(id_of(last), 60) + " -> " + escaped(id_of(from), 60);
    }

    void complain_of_unknown(std::size_t i, const std::string& id, const spot& at) {
        if (id == id_of(i)) {
            texts_[i].out.add(at, errc::conflict,
                              fmt::format("a sheet that extends itself; found {}; write the id of "
                                          "another sheet, or leave extends out",
                                          shown(id)));
            return;
        }
        std::vector<std::string> known;
        for (std::size_t k = 0; k < texts_.size(); ++k) {
            if (k != i && !id_of(k).empty()) {
                known.push_back(id_of(k));
            }
        }
        for (const style& s : others_) {
            known.push_back(s.id);
        }
        texts_[i].out.add_unknown(at, "no style sheet is called so", id, known);
    }

    std::vector<parsed_text>& texts_;
    const std::vector<style>& others_;
    const page_maker& make_;
    const std::function<void(placed<style>&, page&)>& after_;
    std::vector<stage> stages_;
    std::vector<read_sheet> sheets_;
    std::vector<std::size_t> chain_;  ///< being read, each waiting for the next
};

}  // namespace

std::vector<read_sheet> read_sheets(std::vector<parsed_text>& texts,
                                    const std::vector<style>& others, const page_maker& make,
                                    const std::function<void(placed<style>&, page&)>& after) {
    return sheet_resolver(texts, others, make, after).run();
}

std::vector<style> read_sheet_folder(const std::string& dir, const reference_data& c,
                                     const kit* tools) {
    const std::vector<std::string> paths = toml_files(dir);
    if (paths.empty()) {
        throw error(errc::io, "can't read style sheets; found " + shown(dir) +
                                  ", which holds no *.toml file; write the folder that holds the "
                                  "sheets");
    }
    std::vector<document_text> files;
    for (const std::string& path : paths) {
        files.push_back(read_text(path));
    }
    std::vector<style> out;
    diagnostics wrong;
    for (sheet_file& one : read_sheet_files(files, {}, c, c.styles, tools)) {
        wrong.insert(wrong.end(), one.faults.begin(), one.faults.end());
        if (one.sheet) {
            out.push_back(std::move(*one.sheet));
        }
    }
    throw_if_any(std::move(wrong));
    return out;
}

bool sheet_id(const std::string& s) {
    return is_id(s);
}

std::vector<sheet_file> read_sheet_files(const std::vector<document_text>& files,
                                         const std::vector<document_text>& beside,
                                         const reference_data& c, const std::vector<style>& others,
                                         const kit* tools) {
    std::vector<document_text> all = files;
    all.insert(all.end(), beside.begin(), beside.end());
    std::vector<parsed_text> texts = parse_all(all);
    place_finder places(c.dog_body);
    std::vector<read_sheet> read = read_sheets(texts, others, [&](faults& out) {
        return page{out, c, places, tools};
    });
    std::map<std::string, std::string> ids;
    std::vector<sheet_file> out;
    for (std::size_t i = 0; i < files.size(); ++i) {
        sheet_file one;
        one.file = files[i].name;
        const std::string& id = read[i].sheet.value.id;
        const auto [before, is_new] = ids.emplace(id, one.file);
        if (!id.empty() && !is_new) {
            texts[i].out.add(read[i].sheet.id_at, errc::duplicate,
                             fmt::format("two style sheets with one id; found {} in {} too; give "
                                         "one another id",
                                         shown(id), shown(before->second)));
        }
        one.parent_faulty = texts[i].out.none() && !read[i].sound;
        one.parent = read[i].sheet.value.extends;
        if (texts[i].out.none() && read[i].sound) {
            one.sheet = std::move(read[i].sheet.value);
        }
        texts[i].out.move_to(one.faults);
        out.push_back(std::move(one));
    }
    return out;
}

}  // namespace pelage::io
