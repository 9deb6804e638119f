#include "data/json.hpp"

#include <algorithm>
#include <iterator>
#include <limits>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace pelage::io {

namespace {

constexpr std::size_t deepest = 16;
constexpr std::size_t most_values = 10'000;

/// Reads a text and tells others how far it has come: where the parser's token ends.
class followed {
  public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    explicit followed(const char** at) : at_(at) {}
    reference operator*() const { return **at_; }
    followed& operator++() {
        ++*at_;
        return *this;
    }
    followed operator++(int) {
        followed before = *this;
        ++*this;
        return before;
    }
    friend bool operator==(const followed& a, const followed& b) { return *a.at_ == *b.at_; }
    friend bool operator!=(const followed& a, const followed& b) { return !(a == b); }

  private:
    const char** at_;
};

/// "syntax error while parsing value - unexpected end of input; expected ..." without the words in
/// front and the bytes behind, which may be no UTF-8.
std::string in_short(std::string_view what) {
    if (const auto front = what.find("] "); front != std::string_view::npos) {
        what.remove_prefix(front + 2);
    }
    if (what.starts_with("parse error at line")) {
        what.remove_prefix(std::min(what.find(": ") + 2, what.size()));
    }
    const auto read = what.find("; last read: ");
    const auto expected = what.rfind("; expected ");
    std::string text{what.substr(0, read)};
    if (read != std::string_view::npos && expected != std::string_view::npos && expected > read) {
        text += what.substr(expected);
    }
    return escaped(text, 200);
}

/// Builds the tree from what the parser finds. Every function returns whether to read on.
class builder : public nlohmann::json_sax<nlohmann::json> {
  public:
    builder(std::string_view text, unsigned line, faults& out)
        : text_(text), line_(line), out_(out), token_end_(text.data()), counted_(text.data()) {}

    std::optional<node> run() {
        const char* end = text_.data() + text_.size();
        const char* last = end;
        const bool sound = nlohmann::json::sax_parse(followed(&token_end_), followed(&last), this,
                                                     nlohmann::json::input_format_t::json, true);
        return sound && told_ == 0 ? std::move(root_) : std::nullopt;
    }

    bool null() override {
        node* n = value(node_kind::other);
        if (n != nullptr) {
            n->text = "null";
        }
        return n != nullptr;
    }
    bool boolean(bool v) override {
        node* n = value(node_kind::truth);
        if (n != nullptr) {
            n->truth = v;
        }
        return n != nullptr;
    }
    bool number_integer(number_integer_t v) override {
        node* n = value(node_kind::whole);
        if (n != nullptr) {
            n->whole = v;
        }
        return n != nullptr;
    }
    bool number_unsigned(number_unsigned_t v) override {
        if (v > static_cast<number_unsigned_t>(std::numeric_limits<std::int64_t>::max())) {
            return number_float(static_cast<double>(v), {});
        }
        return number_integer(static_cast<std::int64_t>(v));
    }
    bool number_float(number_float_t v, const string_t& /*digits*/) override {
        node* n = value(node_kind::real);
        if (n != nullptr) {
            n->real = v;
        }
        return n != nullptr;
    }
    bool string(string_t& v) override {
        node* n = value(node_kind::text);
        if (n != nullptr) {
            n->text = std::move(v);
        }
        return n != nullptr;
    }
    bool binary(binary_t& /*v*/) override { return false; }  // JSON has none

    bool start_object(std::size_t /*members*/) override { return open(node_kind::table); }
    bool key(string_t& k) override {
        node& table = *open_.back();
        const spot at = next_token();
        const bool twice = std::any_of(table.members.begin(), table.members.end(),
                                       [&](const member& m) { return m.key == k; });
        if (twice) {
            out_.add(at, errc::duplicate,
                     fmt::format("the same key twice; found {}; write it once", shown(k)));
        }
        member& m = table.members.emplace_back();
        m.key = std::move(k);
        m.at = at;
        return true;
    }
    bool end_object() override { return close(); }
    bool start_array(std::size_t /*items*/) override { return open(node_kind::list); }
    bool end_array() override { return close(); }

    bool parse_error(std::size_t position, const std::string& /*token*/,
                     const nlohmann::json::exception& e) override {
        counted_ = text_.data();
        column_ = 1;
        const std::size_t at = std::min(std::max<std::size_t>(position, 1) - 1, text_.size());
        stop(column_of(text_.data() + at),
             "not JSON: " + in_short(e.what()) + "; the line was not read");
        return false;
    }

  private:
    /// The column of a place no earlier than the last one asked for.
    spot column_of(const char* at) {
        column_ +=
            static_cast<unsigned>(characters({counted_, static_cast<std::size_t>(at - counted_)}));
        counted_ = at;
        return {line_, column_};
    }

    /// Where the token begins that the parser has just read.
    spot next_token() {
        while (before_ < token_end_ - text_.data() &&
               std::string_view(" \t\r\n,:").find(text_[static_cast<std::size_t>(before_)]) !=
                   std::string_view::npos) {
            ++before_;
        }
        const spot at = column_of(text_.data() + before_);
        before_ = token_end_ - text_.data();
        return at;
    }

    void stop(const spot& at, std::string text) {
        out_.add(at, errc::syntax, std::move(text));
        ++told_;
    }

    /// Puts a value of that kind where it belongs; null if it may not be there.
    node* value(node_kind kind) {
        const spot at = next_token();
        if (++values_ > most_values) {
            stop(at, fmt::format("too much for one dog; found more than {} values; leave out what "
                                 "doesn't matter",
                                 most_values));
            return nullptr;
        }
        if (open_.empty() && kind != node_kind::table) {
            stop(at, fmt::format("a line holds one dog; found {}; write {{\"id\": ...}}",
                                 kind == node_kind::list ? "a list" : "a value that is no object"));
            return nullptr;
        }
        node& n = open_.empty()                           ? root_.emplace()
                  : open_.back()->kind == node_kind::list ? open_.back()->items.emplace_back()
                                                          : open_.back()->members.back().value;
        n.kind = kind;
        n.at = at;
        return &n;
    }

    bool open(node_kind kind) {
        node* n = value(kind);
        if (n == nullptr) {
            return false;
        }
        if (open_.size() == deepest) {
            stop(n->at, fmt::format("nested too deep; found more than {} levels; no dog needs more "
                                    "than 4",
                                    deepest));
            return false;
        }
        if (open_.empty()) {
            n->members.reserve(16);  // about as many keys as a dog has
        }
        open_.push_back(n);
        return true;
    }
    bool close() {
        (void)next_token();
        open_.pop_back();
        return true;
    }

    std::string_view text_;
    unsigned line_;
    faults& out_;
    const char* token_end_;      ///< moved on by the parser
    std::ptrdiff_t before_ = 0;  ///< the end of the token before
    const char* counted_;        ///< as far as columns are counted
    unsigned column_ = 1;
    std::size_t values_ = 0;
    int told_ = 0;  ///< faults that end the reading
    std::optional<node> root_;
    std::vector<node*>
        open_;  ///< tables and lists not yet closed; nothing moves while they are open
};

}  // namespace

std::optional<node> parse_json(std::string_view text, unsigned line, faults& out) {
    // the parser takes a NUL for the end
    if (const auto nul = text.find('\0'); nul != std::string_view::npos) {
        out.add({line, static_cast<unsigned>(characters(text.substr(0, nul))) + 1}, errc::syntax,
                "not JSON: a NUL byte; found one; the line was not read");
        return std::nullopt;
    }
    return builder(text, line, out).run();
}

}  // namespace pelage::io
