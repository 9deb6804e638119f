// Private to lib: values every JSON answer writes alike, and parts of an answer written on their own.
#pragma once

#include <nlohmann/json.hpp>

#include <pelage/answers/write.hpp>

#include "answers/json_line.hpp"

namespace pelage::io {

using json = nlohmann::ordered_json;

/// Millimetres to 0.01.
[[nodiscard]] json mm_json(const length& l);
/// Minutes to 0.001.
[[nodiscard]] json minutes_json(const work& w);
[[nodiscard]] json json_of(const finished& f);
[[nodiscard]] json json_of(const setup& s);
[[nodiscard]] json json_of(const evidence& e);

/// Days to 0.1, or "never".
[[nodiscard]] json days_json(const days& d);
/// A share to six digits.
[[nodiscard]] json share_json(double p);
/// To a thousandth.
[[nodiscard]] double thousandth(double v);
/// What `write` puts down straight as text, as a value.
template <class Write>
[[nodiscard]] json parsed(Write write) {
    std::string text;
    json_line line(text);
    write(line);
    return json::parse(text);
}
/// A place: "zone", and "side" where only one is meant.
[[nodiscard]] json place_json(const body& b, const place& p);
/// The text of an answer.
[[nodiscard]] std::string dumped(const json& j);
/// The dog an answer is about.
[[nodiscard]] json dog_json(const plan_request& r);
/// When it must be back.
[[nodiscard]] json back_json(const return_date& b, const print_options& o);
/// What a mix comes to, where a plan was made by it.
[[nodiscard]] json unseen_json(const mixed_coat& u, const plan_request& r);

/// Other ways and conflicts, and under --explain why each setup and the plan without each tool.
void add_beside(json& j, const beside& b, const groom& g, const plan_request& r,
                const print_options& o);

}  // namespace pelage::io
