#include "record.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace pelage::io {

namespace {

std::string named(std::string_view key) { return fmt::format("\"{}\"", escaped(key, 60)); }

std::string slug(std::string_view s) {
    std::string out;
    for (const char c : s.substr(0, 64)) {
        const char low = c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
        const bool letter = low >= 'a' && low <= 'z';
        const bool digit = low >= '0' && low <= '9';
        if (letter || (digit && !out.empty())) {
            out += low;
        } else if (!out.empty() && out.back() != '-') {
            out += '-';
        }
    }
    while (!out.empty() && out.back() == '-') {
        out.pop_back();
    }
    return out.empty() ? "bella" : out;
}

std::optional<date> day_at(const node& n, std::string_view key, faults& out) {
    std::optional<date> d;
    if (n.kind == node_kind::day) {
        d = n.day;
    } else if (n.kind == node_kind::text) {
        d = parse_date(n.text);
    } else {
        out.add(n.at, errc::type,
                fmt::format("{} must be a day; found {}; write it like 2026-03-14", named(key),
                            found(n)));
        return std::nullopt;
    }
    if (!d) {
        out.add(n.at, errc::range,
                fmt::format("{} is no day of the calendar; found {}; write it like 2026-03-14",
                            named(key), found(n)));
        return std::nullopt;
    }
    using namespace std::chrono;
    if (*d < sys_days{year{1990} / January / 1} || *d >= sys_days{year{2200} / January / 1}) {
        out.add(n.at, errc::range,
                fmt::format("{} is too far away; found {}; right is a day from 1990 to 2199",
                            named(key), found(n)));
        return std::nullopt;
    }
    return d;
}

}  // namespace

bool is_id(std::string_view s) {
    return !s.empty() && s.size() <= 64 && s.front() >= 'a' && s.front() <= 'z' &&
           std::all_of(s.begin(), s.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
           });
}

std::optional<std::string> text_at(const node& n, std::string_view key, text_kind k, faults& out) {
    constexpr std::size_t longest = 2000;
    if (n.kind != node_kind::text) {
        out.add(n.at, errc::type,
                fmt::format("{} must be text; found {}; write it in quotes", named(key), found(n)));
        return std::nullopt;
    }
    if (n.text.find_first_not_of(" \t\n") == std::string::npos) {
        out.add(n.at, errc::missing,
                fmt::format("{} is empty; found {}; write something or leave the key out",
                            named(key), found(n)));
        return std::nullopt;
    }
    if (const std::size_t size = characters(n.text); size > longest) {
        out.add(n.at, errc::range,
                fmt::format("{} is too long; found {} characters; right are at most {}",
                            named(key), size, longest));
        return std::nullopt;
    }
    if (has_control(n.text, k == text_kind::prose)) {
        out.add(n.at, errc::syntax,
                fmt::format("{} holds control characters; found {}; write plain text", named(key),
                            found(n)));
        return std::nullopt;
    }
    return n.text;
}

int index_of(const word& w, std::string_view what, const std::vector<std::string>& names,
             faults& out) {
    const auto at = std::find(names.begin(), names.end(), w.text);
    if (at != names.end()) {
        return static_cast<int>(at - names.begin());
    }
    out.add_unknown(w.at, fmt::format("unknown {}", what), w.text, names);
    return -1;
}

spot record::at(std::string_view key) const {
    for (const member& m : table_.members) {
        if (m.key == key) {
            return m.value.at;
        }
    }
    return table_.at;
}

const member* record::get(std::string_view key, presence p, std::string_view example) {
    known_.emplace_back(key);
    for (const member& m : table_.members) {
        if (m.key == key) {
            return &m;
        }
    }
    if (p == presence::must) {
        std::string text = fmt::format("{} is missing", named(key));
        if (!example.empty()) {
            text += fmt::format("; write {}", example);
        }
        out_.add(table_.at, errc::missing, std::move(text));
    }
    return nullptr;
}

std::string record::get_text(std::string_view key, presence p, text_kind k) {
    const member* m = get(key, p, fmt::format("{} = \"...\"", key));
    if (m == nullptr) {
        return {};
    }
    return text_at(m->value, key, k, out_).value_or("");
}

std::string record::get_id(std::string_view key) {
    const member* m = get(key, presence::must, fmt::format("{} = \"...\"", key));
    if (m == nullptr) {
        return {};
    }
    const auto text = text_at(m->value, key, text_kind::line, out_);
    if (text && !is_id(*text)) {
        out_.add(m->value.at, errc::syntax,
                 fmt::format("an id is made of a-z, 0-9 and -, begins with a letter and has at "
                             "most 64 characters; found {}; write \"{}\"",
                             quoted(*text), slug(*text)));
        return {};
    }
    return text.value_or("");
}

std::optional<length> record::get_length(std::string_view key, presence p) {
    const auto v = get_number(key, p, measure::length, over_zero(longest_mm));
    return v ? std::optional{mm(*v)} : std::nullopt;
}

std::optional<date> record::get_day(std::string_view key, presence p) {
    const member* m = get(key, p, fmt::format("{} = 2026-03-14", key));
    return m == nullptr ? std::nullopt : day_at(m->value, key, out_);
}

bool record::get_flag(std::string_view key) {
    const member* m = get(key, presence::may);
    if (m == nullptr) {
        return false;
    }
    if (m->value.kind != node_kind::truth) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be true or false; found {}; write {} = true", named(key),
                             found(m->value), key));
    }
    return m->value.truth;
}

int record::get_count(std::string_view key, int low, int high, int otherwise) {
    const member* m = get(key, presence::may);
    if (m == nullptr) {
        return otherwise;
    }
    const node& n = m->value;
    if (n.kind != node_kind::whole) {
        out_.add(n.at, errc::type,
                 fmt::format("{} must be a whole number; found {}; write {} = {}", named(key),
                             found(n), key, otherwise));
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
    constexpr std::array<std::string_view, 6> examples{"\"13 mm\"",       "\"56 days\"",
                                                       "\"2 min\"",       "\"0.34 mm/day\"",
                                                       "\"60 deg\"",      "1.0"};
    const member* found_here =
        get(key, p, fmt::format("{} = {}", key, examples[static_cast<std::size_t>(m)]));
    return found_here == nullptr ? std::nullopt : number_at(found_here->value, key, m, b, out_);
}

std::vector<word> record::get_words(std::string_view key, presence p) {
    const member* m = get(key, p, fmt::format("{} = [\"...\"]", key));
    if (m == nullptr) {
        return {};
    }
    if (m->value.kind != node_kind::list) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be a list; found {}; write {} = [\"...\"]", named(key),
                             found(m->value), key));
        return {};
    }
    std::vector<word> words;
    for (const node& n : m->value.items) {
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
            out_.add(n.at, errc::duplicate,
                     fmt::format("named twice in {}; found {}; name it once", named(key),
                                 quoted(*text)));
            continue;
        }
        words.push_back({*text, n.at});
    }
    return words;
}

const node* record::get_table(std::string_view key, presence p) {
    const member* m = get(key, p, fmt::format("[{}] with its keys below", key));
    if (m == nullptr) {
        return nullptr;
    }
    if (m->value.kind != node_kind::table) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be a table; found {}; write [{}] with its keys below",
                             named(key), found(m->value), key));
        return nullptr;
    }
    return &m->value;
}

std::vector<const node*> record::get_tables(std::string_view key, presence p) {
    const std::string right = fmt::format("write [[{}]] with its keys below", key);
    const member* m = get(key, p, fmt::format("[[{}]] with its keys below", key));
    if (m == nullptr) {
        return {};
    }
    if (m->value.kind != node_kind::list) {
        out_.add(m->value.at, errc::type,
                 fmt::format("{} must be a list of tables; found {}; {}", named(key),
                             found(m->value), right));
        return {};
    }
    std::vector<const node*> tables;
    for (const node& n : m->value.items) {
        if (n.kind == node_kind::table) {
            tables.push_back(&n);
        } else {
            out_.add(n.at, errc::type,
                     fmt::format("{} must hold tables only; found {}; {}", named(key), found(n),
                                 right));
        }
    }
    return tables;
}

int record::index_of_name(std::string_view key, presence p, const std::vector<std::string>& names) {
    const member* m = get(key, p, fmt::format("{} = \"{}\"", key, names.front()));
    if (m == nullptr) {
        return -1;
    }
    const auto text = text_at(m->value, key, text_kind::line, out_);
    return text ? index_of({*text, m->value.at}, key, names, out_) : -1;
}

std::string record::get_choice(std::string_view key, presence p,
                               const std::vector<std::string>& names) {
    const int i = index_of_name(key, p, names);
    return i < 0 ? std::string{} : names[static_cast<std::size_t>(i)];
}

void record::done() {
    for (const member& m : table_.members) {
        if (std::find(known_.begin(), known_.end(), m.key) == known_.end()) {
            out_.add_unknown(m.at, "unknown key", m.key, known_);
        }
    }
}

void check_format(record& r) {
    const member* m = r.get("format", presence::must, "format = 1 as the first line");
    if (m != nullptr && (m->value.kind != node_kind::whole || m->value.whole != 1)) {
        r.out().add(m->value.at, errc::range,
                    fmt::format("a format of files that this version doesn't know; found {}; write "
                                "format = 1",
                                found(m->value)));
    }
}

}  // namespace pelage::io
