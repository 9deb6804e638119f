#include "data/table_reader.hpp"

#include <algorithm>

#include <fmt/format.h>

#include <pelage/base/phrase.hpp>

namespace pelage::io {

namespace {

/// The whole number that a text or a value looks like; `otherwise` if none.
std::string right_count(const node& n, int otherwise) {
    const bool digits = n.kind == node_kind::text && !n.text.empty() && n.text.size() < 4 &&
                        n.text.find_first_not_of("0123456789") == std::string::npos;
    return digits ? n.text : std::to_string(otherwise);
}

}  // namespace

spot record::at(std::string_view key) const {
    const auto at = std::find_if(table_.members.begin(), table_.members.end(),
                                 [&](const member& m) { return m.key == key; });
    return at == table_.members.end() ? table_.at : at->value.at;
}

const member* record::get(std::string_view key) {
    if (known_.empty()) {
        known_.reserve(32);  // a dog has as many keys
    }
    known_.push_back(key);
    const auto at = std::find_if(table_.members.begin(), table_.members.end(),
                                 [&](const member& m) { return m.key == key; });
    return at == table_.members.end() ? nullptr : &*at;
}

void record::missing(std::string_view key, std::string_view right) {
    out_.add(table_.at, errc::missing, fmt::format("{} is missing; write {}", named(key), right));
}

const member* record::get(std::string_view key, presence p, std::string_view right) {
    const member* m = get(key);
    if (m == nullptr && p == presence::must) {
        missing(key, out_.setting(key, right));
    }
    return m;
}

std::string record::get_text(std::string_view key, presence p, text_kind k) {
    const member* m = get(key, p, "\"...\"");
    if (m == nullptr) {
        return {};
    }
    return text_at(m->value, key, k, out_).value_or("");
}

std::string record::get_id(std::string_view key) {
    const member* m = get(key, presence::must, "\"...\"");
    if (m == nullptr) {
        return {};
    }
    const auto text = text_at(m->value, key, text_kind::line, out_);
    if (text && !is_id(*text)) {
        out_.add(m->value.at, errc::syntax,
                 fmt::format("an id is made of a-z, 0-9 and -, begins with a letter and has at "
                             "most 64 characters; found {}; write \"{}\"",
                             shown(*text), id_like(*text)));
        return {};
    }
    return text.value_or("");
}

std::optional<length> record::get_length(std::string_view key, presence p, const bounds& b) {
    const auto v = get_number(key, p, measure::length, b);
    return v ? std::optional{mm(*v)} : std::nullopt;
}

std::optional<date> record::get_day(std::string_view key, presence p) {
    const member* m = get(key, p, out_.day());
    return m == nullptr ? std::nullopt : day_at(m->value, key, out_);
}

bool record::get_flag(std::string_view key) {
    const member* m = get(key);
    if (m == nullptr) {
        return false;
    }
    if (m->value.kind != node_kind::truth) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be true or false; found {}; write {}", named(key),
                             found(m->value), out_.setting(key, "true")));
    }
    return m->value.truth;
}

int record::get_count(std::string_view key, int low, int high, int otherwise) {
    const member* m = get(key);
    if (m == nullptr) {
        return otherwise;
    }
    const node& n = m->value;
    if (n.kind != node_kind::whole) {
        out_.add(n.at, errc::type,
                 fmt::format("{} must be a whole number; found {}; write {}", named(key), found(n),
                             out_.setting(key, right_count(n, otherwise))));
        return otherwise;
    }
    if (n.whole < low || n.whole > high) {
        out_.add(n.at, errc::range,
                 fmt::format("{} is out of range; found {}; right is {} to {}", named(key), n.whole,
                             low, high));
        return otherwise;
    }
    return static_cast<int>(n.whole);
}

std::optional<double> record::get_number(std::string_view key, presence p, measure m,
                                         const bounds& b) {
    constexpr std::array<std::string_view, 6> examples{
        "\"13 mm\"", "\"56 days\"", "\"2 min\"", "\"0.34 mm/day\"", "\"60 deg\"", "1.0"};
    const member* found_here = get(key, p, examples[static_cast<std::size_t>(m)]);
    return found_here == nullptr ? std::nullopt : number_at(found_here->value, key, m, b, out_);
}

std::vector<word> record::get_words(std::string_view key, presence p) {
    const member* m = get(key, p, "[\"...\"]");
    if (m == nullptr) {
        return {};
    }
    if (m->value.kind != node_kind::list) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be a list; found {}; write {}", named(key), found(m->value),
                             out_.setting(key, "[\"...\"]")));
        return {};
    }
    std::vector<word> words;
    for (const node& n : m->value.items) {
        if (n.kind != node_kind::text) {
            out_.add(n.at, errc::type,
                     fmt::format("{} holds text only; found {}; write it in quotes", named(key),
                                 found(n)));
            continue;
        }
        const auto text = text_at(n, key, text_kind::line, out_);
        if (!text) {
            continue;
        }
        // long lists are no use to anybody, and looking for doubles in them would take for ever
        if (words.size() == 200) {
            out_.add(n.at, errc::range,
                     fmt::format("{} is too long; found {} entries; right are at most 200",
                                 named(key), m->value.items.size()));
            break;
        }
        if (std::any_of(words.begin(), words.end(),
                        [&](const word& w) { return w.text == *text; })) {
            out_.add(
                n.at, errc::duplicate,
                fmt::format("named twice in {}; found {}; name it once", named(key), shown(*text)));
            continue;
        }
        words.push_back({*text, n.at});
    }
    return words;
}

const node* record::get_table(std::string_view key, presence p) {
    const member* m = get(key);
    if (m == nullptr) {
        if (p == presence::must) {
            missing(key, out_.table(path_, key, false));
        }
        return nullptr;
    }
    if (m->value.kind != node_kind::table) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be a table; found {}; write {}", named(key), found(m->value),
                             out_.table(path_, key, false)));
        return nullptr;
    }
    return &m->value;
}

std::vector<const node*> record::get_tables(std::string_view key, presence p) {
    const member* m = get(key);
    if (m == nullptr) {
        if (p == presence::must) {
            missing(key, out_.table(path_, key, true));
        }
        return {};
    }
    if (m->value.kind != node_kind::list) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be a list of tables; found {}; write {}", named(key),
                             found(m->value), out_.table(path_, key, true)));
        return {};
    }
    std::vector<const node*> tables;
    for (const node& n : m->value.items) {
        if (n.kind == node_kind::table) {
            tables.push_back(&n);
        } else {
            out_.add(n.at, errc::type,
                     fmt::format("{} must hold tables only; found {}; write {}", named(key),
                                 found(n), out_.table(path_, key, true)));
        }
    }
    return tables;
}

int record::get_index(std::string_view key, presence p, names_view names) {
    const member* m = get(key);
    if (m == nullptr) {
        if (p == presence::must) {
            missing(key, "one of " + one_of({names.begin(), names.end()}));
        }
        return -1;
    }
    if (m->value.kind != node_kind::text) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be a word in quotes; found {}; right is {}", named(key),
                             found(m->value), one_of({names.begin(), names.end()})));
        return -1;
    }
    const auto text = text_at(m->value, key, text_kind::line, out_);
    return text ? index_of({*text, m->value.at}, key, names, out_) : -1;
}

std::string record::get_choice(std::string_view key, presence p, names_view names) {
    const int i = get_index(key, p, names);
    return i < 0 ? std::string{} : std::string(names[static_cast<std::size_t>(i)]);
}

void record::done() {
    for (const member& m : table_.members) {
        if (std::find(known_.begin(), known_.end(), m.key) == known_.end()) {
            out_.add_unknown(m.at, "unknown key", m.key, {known_.begin(), known_.end()});
        }
    }
}

void check_format(record& r, presence p) {
    const member* m = r.get("format", p, "1 as the first line");
    if (m != nullptr && (m->value.kind != node_kind::whole || m->value.whole != 1)) {
        const bool point = m->value.kind == node_kind::real && m->value.real == 1.0;
        r.out().add(
            m->value.at, errc::range,
            fmt::format("a format of files that this version doesn't know; found {}; write {}{}",
                        point ? "1.0" : found(m->value), r.out().setting("format", "1"),
                        point ? " without a point" : ""));
    }
}

}  // namespace pelage::io
