// Every figure with its basis; and faults as text.
#include <array>
#include <set>

#include <pelage/answers/write.hpp>

#include "answers/lines.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

std::string source_line(const source& s) {
    std::string out = s.id + ": ";
    out += s.author.empty() ? "" : s.author + ", ";
    out += s.title;
    out += s.publisher.empty() ? "" : ", " + s.publisher;
    out += s.year == 0 ? "" : ", " + std::to_string(s.year);
    out += s.address.empty() ? "" : ", " + s.address;
    return out + (s.seen.empty() ? "" : " [" + s.seen + "]");
}

std::string counts(const reference_data& c) {
    std::array<std::size_t, basis_names.size()> n{};
    for (const listed_figure& f : c.figures) {
        ++n[static_cast<std::size_t>(f.why.how)];
    }
    std::string out;
    for (std::size_t i = 0; i < n.size(); ++i) {
        if (n[i] > 0) {
            const std::string words(in_words(static_cast<basis>(i)));
            out += (out.empty() ? "" : "; ") + std::to_string(n[i]) + " " + words +
                   (words == basis_names[i] ? "" : " (" + std::string(basis_names[i]) + ")");
        }
    }
    return std::to_string(c.figures.size()) + " figures: " + out + ".";
}

}  // namespace

document sources(const reference_data& c, const std::string& key) {
    const auto wanted = [&](const std::string& id) { return id.find(key) != std::string::npos; };
    std::set<std::string> named;
    std::vector<line> figures;
    typed_table table{{"key", "value", "basis"}};
    table.whom = shown_to::programs;
    for (const listed_figure& f : c.figures) {
        if (wanted(f.key)) {
            figures.push_back(item(f.value + "; " + basis_words(f.why), f.key + ": "));
            table.rows.push_back({f.key, f.value, basis_words(f.why)});
            named.insert(f.why.from);
        }
    }
    std::vector<line> cautions;
    const auto add = [&](const std::string& id, const std::string& text, const evidence& e) {
        if (wanted(id)) {
            cautions.push_back(item(text + " [" + basis_words(e) + "]", id + ": "));
            named.insert(e.from);
        }
    };
    for (const caution& one : c.cautions) {
        add("cautions/" + one.id, one.text, one.why);
    }
    for (const stop_rule& one : c.stops) {
        add("cautions/stop/" + std::string(name(one.sign)), one.seen + ". " + one.act, one.why);
    }
    std::vector<line> used;
    for (const source& s : c.sources) {
        if (wanted(s.id) || named.contains(s.id)) {
            used.push_back(item(source_line(s)));
        }
    }
    document d{"Figures and their sources"};
    if (figures.empty() && cautions.empty() && used.empty()) {
        return d;
    }
    d.say(counts(c));
    d.show(std::move(table));
    for (line& l : figures) {
        d.add(std::move(l));
    }
    d.tell("Cautions", std::move(cautions), false);
    d.tell("Sources", std::move(used), false);
    return d;
}

std::string text_of(const diagnostics& all, std::size_t most) {
    std::string out;
    for (std::size_t i = 0; i < all.size() && i < most; ++i) {
        const diagnostic& d = all[i];
        out += d.file.empty() ? "pelage" : d.file;
        if (d.line > 0) {
            out += ":" + std::to_string(d.line) + ":" + std::to_string(d.column);
        } else if (d.column > 0 && !d.file.empty()) {  // words of an option are no file
            out += ", character " + std::to_string(d.column);
        }
        out += ": error: " + d.text + "\n";
    }
    if (all.size() > most) {
        out += "and " + std::to_string(all.size() - most) + " more\n";
    }
    return out;
}

}  // namespace pelage::io
