// What an entry says, held against the coat, the record and the kit before it is written.
#pragma once

#include <array>
#include <string>
#include <vector>

#include <pelage/model/entry_check.hpp>
#include <pelage/trade/log_entry.hpp>

#include "resolve_arguments.hpp"

namespace pelage::cli {

/// The checks of one visit of one dog.
class entry_checks {
  public:
    /// `d` as its file and record have it, `on` the day of the visit. Nothing is refused where somebody is
    /// `sure`.
    entry_checks(const workplace& w, dog d, const date& on, bool sure);

    /// A fault of `option` for each tool that isn't there.
    void tools(const std::string& option, const std::vector<logged_tool>& all, faults& f) const;
    /// A fault for each length of the entry that can't be; `option` names those left and those before the
    /// cut.
    void lengths(const std::array<std::string, 2>& option, const log_entry& e, faults& f) const;
    /// What is odd, and goes on record all the same; with `sure` what can't be, too.
    [[nodiscard]] std::vector<std::string> odd(const log_entry& e) const;

  private:
    [[nodiscard]] std::vector<length_doubt> doubts_of(const log_entry& e) const;
    [[nodiscard]] const kit* drawer() const;

    const workplace& w_;
    dog dog_;
    date on_;
    bool sure_;
    part_index parts_;
};

}  // namespace pelage::cli
