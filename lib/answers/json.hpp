// Private to lib: values every JSON answer writes alike, and parts of an answer written on their own.
#pragma once

#include <nlohmann/json.hpp>

#include <pelage/answers/write.hpp>

namespace pelage::io {

using json = nlohmann::ordered_json;

/// Millimetres to 0.01.
[[nodiscard]] json mm_json(const length& l);
/// Minutes to 0.001.
[[nodiscard]] json minutes_json(const work& w);
[[nodiscard]] json json_of(const finished& f);
[[nodiscard]] json json_of(const setup& s);
[[nodiscard]] json json_of(const evidence& e);

/// Other ways and conflicts, and under --explain why each setup and the plan without each tool.
void add_beside(json& j, const beside& b, const groom& g, const plan_request& r,
                const print_options& o);

}  // namespace pelage::io
