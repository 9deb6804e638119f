// What a check vector can ask of the library, by name.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>

#include <pelage/base/units.hpp>
#include <pelage/trade/brushing.hpp>
#include <pelage/trade/coat.hpp>

#include "value.hpp"

namespace chk {

/// What a case gives. Remembers what was asked for, so that a key nobody reads is a fault.
class givens {
  public:
    explicit givens(const check_case& c);

    [[nodiscard]] bool has(const std::string& key) const { return all_.count(key) != 0; }
    /// The text of a key. Throws bad_case where it isn't given.
    [[nodiscard]] const std::string& word(const std::string& key);
    /// A number in that unit. Throws bad_case for anything else.
    [[nodiscard]] double number(const std::string& key, const std::string& unit = {});
    [[nodiscard]] int whole(const std::string& key);
    [[nodiscard]] pelage::length length(const std::string& key);
    [[nodiscard]] pelage::days days(const std::string& key);
    [[nodiscard]] pelage::growth_rate rate(const std::string& key);
    /// "7F,10": a list.
    [[nodiscard]] std::vector<std::string> list(const std::string& key);
    [[nodiscard]] pelage::coat_class coat(const std::string& key = "coat");
    /// As an owner's brushing is written, with hyphens for the blanks.
    [[nodiscard]] pelage::brushing brushing(const std::string& key = "brushing");
    /// Keys not asked for yet.
    [[nodiscard]] std::vector<std::string> unread() const;

  private:
    std::map<std::string, std::string> all_;
    std::set<std::string> read_;
};

/// Every value a quantity can name, by key.
using answers = std::map<std::string, answer>;
/// Reckons a quantity with the library. Throws bad_case where a given is missing or malformed, and
/// lets the library's own errors through.
using quantity = answers (*)(givens&);

/// All quantities by name.
[[nodiscard]] const std::map<std::string, quantity>& quantities();

/// The answers of the groups, for quantities().
void add_tools(std::map<std::string, quantity>& to);
void add_growth(std::map<std::string, quantity>& to);
void add_matting(std::map<std::string, quantity>& to);
void add_inheritance(std::map<std::string, quantity>& to);
void add_sheets(std::map<std::string, quantity>& to);

[[nodiscard]] answer in(const pelage::length& l);
[[nodiscard]] answer in(const pelage::days& d);  ///< "never" where it is never
[[nodiscard]] answer in(const pelage::work& w);
[[nodiscard]] answer plain(double v);

}  // namespace chk
