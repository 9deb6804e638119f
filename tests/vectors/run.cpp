// Runs check vectors against the library.
//
//   pelage_vectors FILE.chk...            every case must hold
//   pelage_vectors --nudge FILE.chk...    every case must fail once what it expects is moved
#include <array>
#include <fstream>
#include <iostream>
#include <map>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include <pelage/base/error.hpp>

#include "chk.hpp"
#include "quantities.hpp"
#include "value.hpp"

namespace {

using chk::check_case;

std::string name(pelage::errc e) {
    constexpr std::array<const char*, 13> names{
        "syntax",    "type",     "range",   "unit",  "unknown", "missing", "duplicate",
        "ambiguous", "conflict", "refused", "usage", "io",      "internal"};
    return names[static_cast<std::size_t>(e)];
}

struct raised {
    std::string code;
    std::string text;
};

/// What a case comes to: its answers, or the error it raised.
using result = std::variant<chk::answers, raised>;

/// Throws bad_case where the case itself is at fault.
result reckon(const check_case& c) {
    const auto q = chk::quantities().find(c.quantity);
    if (q == chk::quantities().end()) {
        throw chk::bad_case("unknown quantity '" + c.quantity + "'");
    }
    chk::givens given(c);
    try {
        chk::answers all = q->second(given);
        if (const auto rest = given.unread(); !rest.empty()) {
            throw chk::bad_case("quantity " + c.quantity + " has no use for '" + rest.front() +
                                "'");
        }
        return all;
    } catch (const pelage::error& e) {
        return raised{name(e.code()), e.what()};
    }
}

const chk::answer& answer_for(const check_case& c, const chk::answers& all,
                              const std::string& key) {
    const auto at = all.find(key);
    if (at == all.end()) {
        throw chk::bad_case("quantity " + c.quantity + " has no '" + key + "'");
    }
    return at->second;
}

/// What is wrong with a case; empty if it holds.
std::vector<std::string> complaints(const check_case& c) {
    std::vector<std::string> out;
    const result r = reckon(c);
    if (const auto* no = std::get_if<raised>(&r)) {
        if (no->code != c.raises) {
            const std::string want = c.raises.empty() ? "an answer" : "error " + c.raises;
            out.push_back("want " + want + ", got error " + no->code + " (" + no->text + ")");
        }
        return out;
    }
    if (!c.raises.empty()) {
        return {"want error " + c.raises + ", got an answer"};
    }
    const auto& all = std::get<chk::answers>(r);
    for (const chk::entry& e : c.expect) {
        if (auto no =
                chk::complaint(chk::parse_wish(e.text), answer_for(c, all, e.key), c.within)) {
            out.push_back(c.expect.size() > 1 ? e.key + ": " + *no : *no);
        }
    }
    return out;
}

/// Expectations that still hold after they were moved out of reach; empty if the check bites.
std::vector<std::string> blind_spots(const check_case& c) {
    if (!complaints(c).empty()) {
        return {"does not hold to begin with"};
    }
    if (!c.raises.empty()) {
        check_case other = c;
        other.raises = "not-" + c.raises;
        return complaints(other).empty() ? std::vector<std::string>{"another error does as well"}
                                         : std::vector<std::string>{};
    }
    std::vector<std::string> out;
    const result r = reckon(c);
    const auto& all = std::get<chk::answers>(r);
    for (const chk::entry& e : c.expect) {
        for (const chk::wish& w : chk::nudged(chk::parse_wish(e.text), c.within)) {
            if (!chk::complaint(w, answer_for(c, all, e.key), c.within)) {
                out.push_back(e.key + ": " + chk::show(w) + " would do as well as " + e.text);
            }
        }
    }
    return out;
}

struct tally {
    int passed = 0;
    int failed = 0;
    std::map<std::string, int> by_tag;
    std::set<std::string> ids;
};

void fail(tally& t, const std::string& text) {
    std::cout << text << "\n";
    ++t.failed;
}

void run_case(const std::string& file, const check_case& c, bool nudge, tally& t) {
    const std::string where =
        file + ":" + std::to_string(c.line) + ": " + c.id + " [" + c.source + "]: ";
    ++t.by_tag[std::string(chk::name(c.how))];
    if (!t.ids.insert(c.id).second) {
        fail(t, where + "the id is used in another file already");
        return;
    }
    try {
        const auto wrong = nudge ? blind_spots(c) : complaints(c);
        for (const std::string& w : wrong) {
            std::cout << where << w << "\n";
        }
        ++(wrong.empty() ? t.passed : t.failed);
    } catch (const chk::bad_case& e) {
        fail(t, where + e.what());
    }
}

void run_file(const std::string& file, bool nudge, tally& t) {
    std::ifstream in(file);
    if (!in) {
        fail(t, file + ": cannot be read");
        return;
    }
    const chk::vectors v = chk::read(in);
    for (const chk::fault& f : v.faults) {
        fail(t, file + ":" + std::to_string(f.line) + ": " + f.text);
    }
    if (v.faults.empty()) {
        for (const check_case& c : v.cases) {
            run_case(file, c, nudge, t);
        }
    }
}

}  // namespace

int main(int argc, char** argv) {
    std::vector<std::string> files(argv + 1, argv + argc);
    const bool nudge = !files.empty() && files.front() == "--nudge";
    if (nudge) {
        files.erase(files.begin());
    }
    tally t;
    if (files.empty()) {
        fail(t, "usage: pelage_vectors [--nudge] FILE.chk...");
    }
    for (const std::string& f : files) {
        run_file(f, nudge, t);
    }
    for (const auto& [tag, count] : t.by_tag) {
        std::cout << tag << " " << count << "\n";
    }
    std::cout << t.passed << " passed, " << t.failed << " failed\n";
    return t.failed == 0 ? 0 : 1;
}
