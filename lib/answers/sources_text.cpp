// Every figure with its basis, and faults, as text.
#include <array>
#include <set>

#include <pelage/answers/write.hpp>

#include "answers/layout.hpp"
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
            out += (out.empty() ? "" : ", ") + std::to_string(n[i]) + " " +
                   std::string(basis_names[i]);
        }
    }
    return std::to_string(c.figures.size()) + " figures: " + out + ".";
}

}  // namespace

std::string sources_text(const reference_data& c, const std::string& key, const print_options& o) {
    std::string figures;
    std::set<std::string> named;
    for (const listed_figure& f : c.figures) {
        if (f.key.find(key) != std::string::npos) {
            figures +=
                wrapped("  " + f.key + ": ", f.value + "; " + basis_words(f.why), 4, o.width);
            named.insert(f.why.from);
        }
    }
    std::string cautions;
    const auto caution_line = [&](const std::string& id, const std::string& text,
                                  const evidence& e) {
        if (id.find(key) != std::string::npos) {
            cautions += wrapped("  " + id + ": ", text + " [" + basis_words(e) + "]", 4, o.width);
            named.insert(e.from);
        }
    };
    for (const caution& one : c.cautions) {
        caution_line("cautions/" + one.id, one.text, one.why);
    }
    for (const stop_rule& one : c.stops) {
        caution_line("cautions/stop/" + std::string(name(one.sign)), one.seen + ". " + one.act,
                     one.why);
    }
    std::string used;
    for (const source& s : c.sources) {
        if (s.id.find(key) != std::string::npos || named.contains(s.id)) {
            used += wrapped("  ", source_line(s), 4, o.width);
        }
    }
    if (figures.empty() && cautions.empty() && used.empty()) {
        return {};
    }
    return wrapped("", counts(c), 0, o.width) + figures +
           (cautions.empty() ? "" : "Cautions\n" + cautions) +
           (used.empty() ? "" : "Sources\n" + used);
}

std::string text_of(const diagnostics& all, std::size_t most) {
    std::string out;
    for (std::size_t i = 0; i < all.size() && i < most; ++i) {
        const diagnostic& d = all[i];
        out += d.file;
        if (d.line > 0) {
            out += ":" + std::to_string(d.line) + ":" + std::to_string(d.column);
        } else if (d.column > 0) {  // words of an option are no file
            out += ", character " + std::to_string(d.column);
        }
        out += (d.file.empty() ? "error: " : ": error: ") + d.text + "\n";
    }
    if (all.size() > most) {
        out += "and " + std::to_string(all.size() - most) + " more\n";
    }
    return out;
}

}  // namespace pelage::io
