// Private to lib: one function for each kind of file, and what they share in handling documents.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/data/read.hpp>
#include <pelage/kit/quiz.hpp>
#include <pelage/trade/outline.hpp>

#include "data/read/parts.hpp"

namespace pelage::io {

/// How a salon knows a figure of its own.
constexpr std::array<std::string_view, 2> own_basis{"measured", "assumption"};

/// A record read from a file, with the position of its id for later checks.
template <class Value>
struct placed {
    Value value;
    spot id_at;
};

/// A sheet laid over its parent, null if it has none. `parent_unread`: it has one that can't be had, so
/// it isn't judged.
placed<style> get_style(const node& root, page& p, const style* parent, bool parent_unread = false);
/// `other_sheets`: ids of sheets that are there but faulty.
placed<dog> get_dog(const node& root, page& p, const std::vector<style>& styles,
                    const std::vector<std::string>& other_sheets = {});
salon_files get_salon(const node& root, page& p);

void get_sources(const node& root, page& p, reference_data& c);
void get_cautions(const node& root, page& p, reference_data& c);
/// Of the zones read before.
void get_services(const node& root, page& p, reference_data& c);
void get_blades(const node& root, page& p, reference_data& c);
void get_combs(const node& root, page& p, reference_data& c);
void get_zones(const node& root, page& p, reference_data& c);
/// Of the zones read before.
void get_places(const node& root, page& p, reference_data& c);
void get_coats(const node& root, page& p, reference_data& c);
void get_inheritance(const node& root, page& p, reference_data& c);
void get_breeds(const node& root, page& p, reference_data& c);
/// The drawing of a dog; of the zones and breeds read before.
outline get_outline(const node& root, page& p);
/// A file of figures; `set` is "cut", "growth", "matting", "refusal" or "prices".
void get_rule_file(const node& root, page& p, reference_data& c, std::string_view set);
/// The figures of the quiz.
void get_quiz(const node& root, page& p, quiz_rules& to);
/// Every zone but the prep zones must be told something by the reference's own sheet.
void check_complete(const style& s, const spot& at, page& p);

/// A text parsed: what it says, or what is wrong with it.
struct parsed_text {
    faults out;
    std::optional<node> root;
};

/// Each text parsed, in the order given.
[[nodiscard]] std::vector<parsed_text> parse_all(const std::vector<document_text>& files);

/// Like read_text, of a text already parsed.
bool read_parsed(parsed_text& text, diagnostics& to,
                 const std::function<void(const node&, faults&)>& read);

/// Parses `d` and hands its tree to `read`; the faults go to `to`. Whether there were none.
bool read_text(const document_text& d, diagnostics& to,
               const std::function<void(const node&, faults&)>& read);

/// Throws bad_input with the faults in order, if there are any.
void throw_if_any(diagnostics faults);

/// A salon's files put together: `salon_file`, sheets and dogs. What is unsound is left out and told.
/// Throws bad_input with every fault of all, `before` included, where that isn't empty or salon_file is
/// faulty.
[[nodiscard]] salon_files assemble_salon(const document_text& salon_file,
                                         const std::vector<document_text>& sheets,
                                         const std::vector<document_text>& dogs,
                                         const reference_data& c,
                                         std::vector<unsound_file>& unsound,
                                         diagnostics before = {});

}  // namespace pelage::io
