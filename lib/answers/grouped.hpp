// Private to lib: things of which the same is said, together.
#pragma once

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace pelage::io {

/// Indices by a key, in the order of the first of each.
template <class Key>
class grouped {
  public:
    void add(const Key& key, std::size_t one) {
        const auto at = std::find_if(all_.begin(), all_.end(),
                                     [&](const auto& group) { return group.first == key; });
        (at == all_.end() ? all_.emplace_back(key, std::vector<std::size_t>{}) : *at)
            .second.push_back(one);
    }
    [[nodiscard]] const auto& all() const { return all_; }
    [[nodiscard]] bool empty() const { return all_.empty(); }

  private:
    std::vector<std::pair<Key, std::vector<std::size_t>>> all_;
};

}  // namespace pelage::io
