#include "data/packed_tree.hpp"

#include <bit>
#include <charconv>

namespace pelage::io {

namespace {

class packer {
  public:
    std::string out;

    void put(const node& n) {
        number(static_cast<std::int64_t>(n.kind));
        place(n.at);
        switch (n.kind) {
            case node_kind::table:
                number(static_cast<std::int64_t>(n.members.size()));
                for (const member& m : n.members) {
                    text(m.key);
                    place(m.at);
                    put(m.value);
                }
                break;
            case node_kind::list:
                number(static_cast<std::int64_t>(n.items.size()));
                for (const node& i : n.items) {
                    put(i);
                }
                break;
            case node_kind::text:
            case node_kind::other:
                text(n.text);
                break;
            case node_kind::whole:
                number(n.whole);
                break;
            case node_kind::real:
                number(std::bit_cast<std::int64_t>(n.real));
                break;
            case node_kind::truth:
                number(n.truth ? 1 : 0);
                break;
            case node_kind::day:
                number(n.day.time_since_epoch().count());
                break;
        }
    }

  private:
    void number(std::int64_t v) { out += std::to_string(v) + ' '; }
    void place(const spot& s) {
        number(s.line);
        number(s.column);
    }
    void text(std::string_view s) {
        number(static_cast<std::int64_t>(s.size()));
        out += s;
    }
};

class unpacker {
  public:
    explicit unpacker(std::string_view text) : rest_(text) {}

    node get() {
        node n;
        n.kind = static_cast<node_kind>(number());
        n.at = place();
        switch (n.kind) {
            case node_kind::table:
                n.members.resize(static_cast<std::size_t>(number()));
                for (member& m : n.members) {
                    m.key = text();
                    m.at = place();
                    m.value = get();
                }
                break;
            case node_kind::list:
                n.items.resize(static_cast<std::size_t>(number()));
                for (node& i : n.items) {
                    i = get();
                }
                break;
            case node_kind::text:
            case node_kind::other:
                n.text = text();
                break;
            case node_kind::whole:
                n.whole = number();
                break;
            case node_kind::real:
                n.real = std::bit_cast<double>(number());
                break;
            case node_kind::truth:
                n.truth = number() != 0;
                break;
            case node_kind::day:
                n.day = date{std::chrono::days{number()}};
                break;
        }
        return n;
    }

  private:
    std::int64_t number() {
        std::int64_t v = 0;
        const auto r = std::from_chars(rest_.data(), rest_.data() + rest_.size(), v);
        rest_.remove_prefix(static_cast<std::size_t>(r.ptr - rest_.data()) + 1);
        return v;
    }
    spot place() {
        const auto line = static_cast<unsigned>(number());
        return {line, static_cast<unsigned>(number())};
    }
    std::string text() {
        const auto size = static_cast<std::size_t>(number());
        const std::string s{rest_.substr(0, size)};
        rest_.remove_prefix(size);
        return s;
    }

    std::string_view rest_;
};

}  // namespace

std::string packed(const node& n) {
    packer p;
    p.put(n);
    return std::move(p.out);
}

node unpacked(std::string_view text) {
    return unpacker(text).get();
}

}  // namespace pelage::io
