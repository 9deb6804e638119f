// Runs command cases (see README) in this process.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>
#include <sys/stat.h>
#include <unistd.h>

#include "cli.hpp"

namespace {

namespace fs = std::filesystem;

/// A check of one line: what it wants, and whether it holds for (out, err).
struct check {
    int line = 0;
    std::string what;
    std::function<bool(const std::string&, const std::string&)> holds;
};

struct test_case {
    std::string name;
    int line = 0;
    std::vector<std::string> args;
    std::vector<std::vector<std::string>> before{};  ///< calls made first
    int exit = 0;
    std::vector<check> checks;
    bool wide = false;  ///< JSON may be wider than a terminal
    bool crlf = false;  ///< every line of iCalendar ends in CR LF
    std::string input{};
};

/// Words between blanks; '...' keeps them, \xff is a byte.
std::vector<std::string> split(const std::string& text) {
    std::vector<std::string> out;
    std::string word;
    bool open = false;
    bool any = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '\\' && text.compare(i, 2, "\\x") == 0 && i + 3 < text.size()) {
            word += static_cast<char>(std::stoi(text.substr(i + 2, 2), nullptr, 16));
            i += 3;
        } else if (c == '\'') {
            open = !open;
            any = true;
        } else if (c == ' ' && !open) {
            if (any || !word.empty()) {
                out.push_back(word);
            }
            word.clear();
            any = false;
        } else {
            word += c;
        }
    }
    if (any || !word.empty()) {
        out.push_back(word);
    }
    return out;
}

/// Every run of blanks and line ends as one blank: how a text is wrapped doesn't matter.
std::string flat(const std::string& text) {
    std::string out;
    for (const char c : text) {
        const bool blank = c == ' ' || c == '\n';
        if (!blank || out.empty() || out.back() != ' ') {
            out += blank ? ' ' : c;
        }
    }
    return out;
}

bool has(const std::string& text, const std::string& part) {
    return flat(text).find(flat(part)) != std::string::npos;
}

nlohmann::json json_in(const std::string& text) {
    return nlohmann::json::parse(text, nullptr, false);
}

/// Whether the value at a JSON pointer is written as `want`, or lies in it ("28 to 35"); an empty
/// `want` only asks that it is there.
bool holds_at(const std::string& out, const std::string& pointer, const std::string& want) {
    const nlohmann::json j = json_in(out);
    const nlohmann::json::json_pointer at(pointer);
    if (j.is_discarded() || !j.contains(at)) {
        return false;
    }
    const nlohmann::json& found = j.at(at);
    if (want.empty()) {
        return true;
    }
    const auto to = want.front() == '"' ? std::string::npos : want.find(" to ");
    if (to == std::string::npos) {
        return found.dump() == want;
    }
    return found.is_number() && found.get<double>() >= std::stod(want.substr(0, to)) &&
           found.get<double>() <= std::stod(want.substr(to + 4));
}

/// The plan's JSON of the zone with that title, in one line; empty if there is none.
std::string zone_in(const std::string& out, const std::string& title) {
    const nlohmann::json j = json_in(out);
    if (j.is_discarded() || !j.contains("zones")) {
        return {};
    }
    for (const nlohmann::json& z : j["zones"]) {
        if (z.value("title", "") == title) {
            return z.dump();
        }
    }
    return {};
}

class runner {
  public:
    runner()
        : folder_(fs::temp_directory_path() / ("pelage-cli-tests-" + std::to_string(getpid()))) {}
    runner(const runner&) = delete;
    runner& operator=(const runner&) = delete;
    ~runner() {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }

    void file(const std::string& path) {
        path_ = path;
        std::ifstream in(path);
        std::vector<std::string> lines;
        for (std::string l; std::getline(in, l);) {
            lines.push_back(l);
        }
        std::size_t at = 0;
        bool open = false;
        while (at < lines.size()) {
            open = word(lines, at) || open;
        }
        if (open) {
            finish();
        }
    }

    [[nodiscard]] int close() const {
        std::cout << passed_ << " passed, " << failed_ << " failed\n";
        return failed_ == 0 && passed_ > 0 ? 0 : 1;
    }

  private:
    /// Takes one instruction; whether a case is open now.
    bool word(const std::vector<std::string>& lines, std::size_t& at) {
        const int line = static_cast<int>(at) + 1;
        const std::string& l = lines[at++];
        const auto starts = [&](const char* k) { return l.rfind(k, 0) == 0; };
        const auto rest = [&](std::size_t n) { return l.substr(n); };
        if (l.empty() || l.front() == '#') {
            return false;
        }
        if (starts("case ")) {
            begin(rest(5), line);
        } else if (starts("file ")) {
            write(rest(5), block(lines, at));
        } else if (starts("folder ")) {
            fs::create_directories(folder_ / rest(7));
        } else if (starts("link ")) {
            link(split(rest(5)));
        } else if (starts("pipe ")) {
            (void)mkfifo((folder_ / rest(5)).c_str(), 0600);
        } else if (starts("first ")) {
            now_.before.push_back(split(rest(6)));
        } else if (l == "run" || starts("run ")) {
            now_.args = split(l == "run" ? "" : rest(4));
            now_.wide = std::any_of(now_.args.begin(), now_.args.end(), [](const std::string& a) {
                return a == "json" || a == "csv" || a == "html" || a == "svg" || a == "--roster";
            });
            now_.crlf = std::any_of(now_.args.begin(), now_.args.end(),
                                    [](const std::string& a) { return a == "ics" || a == "csv"; });
            now_.line = line;
        } else if (l == "input") {
            now_.input = block(lines, at);
        } else if (starts("exit ")) {
            now_.exit = std::stoi(rest(5));
        } else if (l == "out is" || l == "err is") {
            const std::string want = block(lines, at);
            const bool out = l == "out is";
            add(line, l + ":\n" + want,
                [=](const std::string& o, const std::string& e) { return (out ? o : e) == want; });
        } else if (starts("out has ") || starts("err has ")) {
            const std::string want = rest(8);
            const bool out = starts("out");
            add(line, l,
                [=](const std::string& o, const std::string& e) { return has(out ? o : e, want); });
        } else if (starts("out lacks ") || starts("err lacks ")) {
            const std::string want = rest(10);
            const bool out = starts("out");
            add(line, l, [=](const std::string& o, const std::string& e) {
                return !has(out ? o : e, want);
            });
        } else if (starts("out before ")) {
            const auto cut = l.find(" // ");
            const std::string a = l.substr(11, cut - 11);
            const std::string b = l.substr(cut + 4);
            add(line, l, [=](const std::string& o, const std::string&) {
                return has(o, a) && has(o, b) && flat(o).find(flat(a)) < flat(o).find(flat(b));
            });
        } else if (l == "out json") {
            add(line, l,
                [](const std::string& o, const std::string&) { return nlohmann::json::accept(o); });
        } else if (!word_of_json(l, line) && !word_of_file(l, line)) {
            std::cout << path_ << ":" << line << ": not an instruction: " << l << "\n";
            ++failed_;
        }
        return true;
    }

    /// "json /back/chance 0.9", "zone left ear has 7F"
    bool word_of_json(const std::string& l, int line) {
        if (l.rfind("json ", 0) == 0) {
            const auto cut = std::min(l.find(' ', 5), l.size());
            const std::string pointer = l.substr(5, cut - 5);
            const std::string want = cut < l.size() ? l.substr(cut + 1) : "";
            add(line, l, [=](const std::string& o, const std::string&) {
                return holds_at(o, pointer, want);
            });
            return true;
        }
        const auto yes = l.find(" has ");
        const auto no = l.find(" lacks ");
        const auto cut = std::min(yes, no);
        if (l.rfind("zone ", 0) != 0 || cut == std::string::npos) {
            return false;
        }
        const std::string title = l.substr(5, cut - 5);
        const std::string part = l.substr(cut + (yes == cut ? 5 : 7));
        const bool wanted = yes == cut;
        add(line, l, [=](const std::string& o, const std::string&) {
            const std::string z = zone_in(o, title);
            return !z.empty() && has(z, part) == wanted;
        });
        return true;
    }

    /// "wrote plan.txt has back by": a file that the command made
    bool word_of_file(const std::string& l, int line) {
        const auto cut = l.find(" has ");
        if (l.rfind("wrote ", 0) != 0 || cut == std::string::npos) {
            return false;
        }
        const fs::path made = folder_ / l.substr(6, cut - 6);
        const std::string part = l.substr(cut + 5);
        add(line, l, [=](const std::string&, const std::string&) {
            std::ifstream in(made, std::ios::binary);
            return has(std::string(std::istreambuf_iterator<char>(in), {}), part);
        });
        return true;
    }

    static std::string block(const std::vector<std::string>& lines, std::size_t& at) {
        std::string text;
        while (at < lines.size() && !lines[at].empty() && lines[at].front() == '|') {
            text += lines[at++].substr(1) + "\n";
        }
        return text;
    }

    void begin(const std::string& name, int line) {
        if (!now_.name.empty()) {
            finish();
        }
        now_ = {};
        now_.name = name;
        now_.line = line;
        fs::remove_all(folder_);
        fs::create_directories(folder_);
    }

    void write(const std::string& name, const std::string& text) {
        fs::create_directories((folder_ / name).parent_path());
        std::ofstream(folder_ / name, std::ios::binary) << text;
    }

    /// A link of the first name to the second, which stands as it is written.
    void link(const std::vector<std::string>& names) {
        fs::create_directories((folder_ / names.at(0)).parent_path());
        fs::create_symlink(names.at(1), folder_ / names.at(0));
    }

    void add(int line, std::string what,
             std::function<bool(const std::string&, const std::string&)> holds) {
        now_.checks.push_back({line, std::move(what), std::move(holds)});
    }

    void fail(int line, const std::string& text) {
        std::cout << path_ << ":" << line << ": " << now_.name << ": " << text << "\n";
        ok_ = false;
    }

    void manners(const std::string& out, const std::string& err, int code) {
        const bool expected =
            std::any_of(now_.checks.begin(), now_.checks.end(), [](const check& c) {
                return c.what.rfind("err has", 0) == 0 || c.what.rfind("err is", 0) == 0;
            });
        if (code == 0 && !err.empty() && !expected) {
            fail(now_.line, "said something on standard error: " + err);
        }
        if (code >= 2 && err.empty()) {
            fail(now_.line, "failed without a word on standard error");
        }
        std::istringstream lines(out);
        for (std::string l; std::getline(lines, l);) {
            std::size_t wide = 0;
            if (now_.crlf && !l.empty() && l.back() == '\r') {
                l.pop_back();
            } else if (now_.crlf) {
                fail(now_.line, "no CR LF at the end of: " + l);
            }
            for (const char c : l) {
                wide += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
                if (static_cast<unsigned char>(c) < 0x20U) {
                    fail(now_.line, "a control character in: " + l);
                    break;
                }
            }
            // a picture is read by programs, whatever it is called
            if (!now_.wide && !out.starts_with("<svg") && wide > 80) {
                fail(now_.line, "over 80 columns: " + l);
            }
        }
    }

    int called(std::vector<std::string> args, const std::string& text, std::ostream& out,
               std::ostream& err) const {
        for (std::string& a : args) {
            if (!a.empty() && a.front() == '@') {
                a = (folder_ / a.substr(1)).string();
            }
        }
        pelage::cli::surroundings around;
        around.today = pelage::parse_date("2026-11-25");
        std::istringstream input(text);
        around.in = &input;
        around.cores = 2;
        return pelage::cli::run(args, around, out, err);
    }

    void finish() {
        ok_ = true;
        if (now_.checks.empty()) {
            fail(now_.line, "checks nothing");
        }
        std::ostringstream out;
        std::ostringstream err;
        for (const std::vector<std::string>& args : now_.before) {
            if (called(args, {}, out, err) != 0) {
                fail(now_.line, "a call before it failed:\n" + out.str() + err.str());
            }
        }
        out.str({});
        err.str({});
        const int code = called(now_.args, now_.input, out, err);
        if (code != now_.exit) {
            fail(now_.line, "exit " + std::to_string(code) + ", wanted " +
                                std::to_string(now_.exit) + "\n" + out.str() + err.str());
        }
        for (const check& c : now_.checks) {
            if (!c.holds(out.str(), err.str())) {
                fail(c.line,
                     "does not hold: " + c.what + "\nout:\n" + out.str() + "err:\n" + err.str());
            }
        }
        manners(out.str(), err.str(), code);
        ++(ok_ ? passed_ : failed_);
        now_ = {};
    }

    fs::path folder_;
    std::string path_;
    test_case now_;
    bool ok_ = true;
    int passed_ = 0;
    int failed_ = 0;
};

}  // namespace

int main(int argc, char** argv) {
    runner r;
    for (int i = 1; i < argc; ++i) {
        r.file(argv[i]);
    }
    return r.close();
}
