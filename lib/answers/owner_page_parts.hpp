// Private to lib: the owner's page before it is text or HTML.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/owner_page.hpp>

namespace pelage::io {

/// How the lines of a section stand.
enum class lines_as { bullets, steps, boxes };

/// A heading, sentences, then lines.
struct page_section {
    std::string heading;
    std::vector<std::string> says;
    std::vector<std::string> lines;
    lines_as how = lines_as::bullets;
    bool beside = false;  ///< in HTML two such sections in a row stand side by side
};

/// The page.
struct owner_page {
    std::string name;  ///< the dog's, as written by hand, cut to a line
    std::string title;
    std::string from;  ///< the salon's name and telephone, and the groomer; empty where not given
    std::vector<page_section> sections;
    bool sign = false;  ///< with lines for name, date and signature
    std::string foot;
};

[[nodiscard]] owner_page page_of(const owner_matter& m, const print_options& o);

}  // namespace pelage::io
