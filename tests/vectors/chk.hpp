// The reader of check vectors: text in, cases and faults out. The format is in README beside this
// file. Nothing here knows what a dog is.
#pragma once

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <istream>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace chk {

/// How the number a case expects is known.
enum class tag { published, derived, measured, practice, memory };
inline constexpr std::array<std::string_view, 5> tag_names{"published", "derived", "measured",
                                                           "practice", "memory"};
[[nodiscard]] constexpr std::string_view name(tag t) {
    return tag_names[static_cast<std::size_t>(t)];
}

/// How far a value may lie off: `most` in `unit`, or as a share of what is wanted ("rel"). Exact: 0
/// in any unit.
struct tolerance {
    double most = 0.0;
    std::string unit;
    [[nodiscard]] bool exact() const { return unit.empty(); }
    [[nodiscard]] bool relative() const { return unit == "rel"; }
};

/// key=text, with the line it stands on.
struct entry {
    std::string key;
    std::string text;
    int line = 0;
};

/// One case. Exactly one of `expect` and `raises` is filled.
struct check_case {
    int line = 0;
    std::string id;
    std::string source;
    tag how = tag::derived;
    std::string quantity;
    tolerance within;
    std::vector<entry> given;
    std::vector<entry> expect;
    std::string raises;
};

/// What is wrong with the file itself.
struct fault {
    int line = 0;
    std::string text;
};

/// A file as read: its cases, in order, and every fault. With a fault the cases are not to be used.
struct vectors {
    std::vector<check_case> cases;
    std::vector<fault> faults;
};

namespace detail {

[[nodiscard]] inline std::vector<std::string> words_of(std::string_view line) {
    std::istringstream in{std::string(line.substr(0, line.find('#')))};
    std::vector<std::string> words;
    for (std::string w; in >> w;) {
        words.push_back(w);
    }
    return words;
}

[[nodiscard]] inline std::optional<tag> parse_tag(std::string_view word) {
    for (std::size_t i = 0; i < tag_names.size(); ++i) {
        if (word == "[" + std::string(tag_names[i]) + "]") {
            return static_cast<tag>(i);
        }
    }
    return std::nullopt;
}

/// A finite number that is the whole of `word`.
[[nodiscard]] inline std::optional<double> parse_number(std::string_view word) {
    double v = 0.0;
    const auto end = word.data() + word.size();
    const auto r = std::from_chars(word.data(), end, v);
    if (r.ec != std::errc{} || r.ptr != end || !std::isfinite(v)) {
        return std::nullopt;
    }
    return v;
}

class reader {
  public:
    vectors read(std::istream& in) {
        for (std::string text; std::getline(in, text);) {
            ++line_;
            if (const words w = words_of(text); !w.empty()) {
                take(w);
            }
        }
        end_case();
        finish();
        return std::move(out_);
    }

  private:
    using words = std::vector<std::string>;

    void take(const words& w) {
        if (!begun_) {
            begun_ = true;
            if (w != words{"format", "1"}) {
                say("the first line must be: format 1");
            }
            return;
        }
        if (w[0] == "source") {
            take_source(w);
        } else if (w[0] == "quantity") {
            take_quantity(w);
        } else if (w[0] == "tolerance") {
            take_tolerance(w);
        } else if (w[0] == "case") {
            take_case(w);
        } else if (w[0] == "given" || w[0] == "expect" || w[0] == "raises") {
            take_part(w);
        } else {
            say("unknown word '" + w[0] + "'");
        }
    }

    void take_source(const words& w) {
        if (w.size() < 4) {
            say("expected: source <id> <what it is> [tag]");
            return;
        }
        const auto how = parse_tag(w.back());
        if (!how) {
            say("source " + w[1] + " has no tag; found '" + w.back() +
                "'; one of [published] [derived] [measured] [practice] [memory] must end the line");
        }
        if (!sources_.emplace(w[1], declared{how.value_or(tag::derived), line_}).second) {
            say("source " + w[1] + " declared twice");
        }
    }

    void take_quantity(const words& w) {
        end_case();
        if (w.size() != 2) {
            say("expected: quantity <name>");
            return;
        }
        quantity_ = w[1];
        within_.reset();  // every quantity states its own tolerance
    }

    void take_tolerance(const words& w) {
        end_case();
        if (w == words{"tolerance", "exact"}) {
            within_ = tolerance{};
            return;
        }
        const auto most = w.size() == 3 ? parse_number(w[1]) : std::nullopt;
        if (!most || !(*most > 0.0)) {
            say("expected: tolerance exact, or tolerance <number over 0> <unit>");
            return;
        }
        within_ = tolerance{*most, w[2]};
    }

    void take_case(const words& w) {
        end_case();
        check_case c;
        c.line = line_;
        if (w.size() != 3) {
            say("expected: case <id> <source>");
            open_ = c;
            return;
        }
        c.id = w[1];
        c.source = w[2];
        if (!ids_.insert(c.id).second) {
            say("case id '" + c.id + "' used twice");
        }
        if (const auto s = sources_.find(c.source); s != sources_.end()) {
            c.how = s->second.how;
            s->second.cited = true;
        } else {
            say("case " + c.id + " cites undeclared source '" + c.source + "'");
        }
        if (quantity_.empty()) {
            say("case " + c.id + " before any quantity");
        }
        if (!within_) {
            say("case " + c.id + " before any tolerance");
        }
        c.quantity = quantity_;
        c.within = within_.value_or(tolerance{});
        open_ = c;
    }

    void take_part(const words& w) {
        if (!open_) {
            say("'" + w[0] + "' outside a case");
            return;
        }
        if (w[0] == "raises") {
            if (w.size() != 2 || !open_->raises.empty()) {
                say("expected once: raises <error>");
                return;
            }
            open_->raises = w[1];
            return;
        }
        if (w.size() < 2) {
            say("'" + w[0] + "' with nothing after it");
        }
        for (std::size_t i = 1; i < w.size(); ++i) {
            add_entry(w[0] == "given" ? open_->given : open_->expect, w[i]);
        }
    }

    void add_entry(std::vector<entry>& to, const std::string& word) {
        const auto equals = word.find('=');
        if (equals == 0 || equals == std::string::npos || equals + 1 == word.size()) {
            say("expected key=value; found '" + word + "'");
            return;
        }
        const std::string key = word.substr(0, equals);
        if (std::any_of(to.begin(), to.end(), [&](const entry& e) { return e.key == key; })) {
            say("'" + key + "' given twice");
            return;
        }
        to.push_back({key, word.substr(equals + 1), line_});
    }

    void end_case() {
        if (!open_) {
            return;
        }
        if (open_->expect.empty() == open_->raises.empty()) {
            out_.faults.push_back(
                {open_->line, "case " + open_->id + " needs exactly one of expect and raises"});
        }
        out_.cases.push_back(*open_);
        open_.reset();
    }

    void finish() {
        if (out_.cases.empty()) {
            say("no case in the file");
        }
        for (const auto& [id, s] : sources_) {
            if (!s.cited) {
                out_.faults.push_back({s.line, "source " + id + " is cited by no case"});
            }
        }
        std::stable_sort(out_.faults.begin(), out_.faults.end(),
                         [](const fault& a, const fault& b) { return a.line < b.line; });
    }

    void say(const std::string& text) { out_.faults.push_back({line_, text}); }

    struct declared {
        tag how = tag::derived;
        int line = 0;
        bool cited = false;
    };

    vectors out_;
    int line_ = 0;
    bool begun_ = false;
    std::map<std::string, declared> sources_;
    std::set<std::string> ids_;
    std::string quantity_;
    std::optional<tolerance> within_;
    std::optional<check_case> open_;
};

}  // namespace detail

/// Reads a file of check vectors; every fault is told at once.
[[nodiscard]] inline vectors read(std::istream& in) {
    return detail::reader{}.read(in);
}

}  // namespace chk
