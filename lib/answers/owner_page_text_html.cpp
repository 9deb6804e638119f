// The owner's page as text and as HTML.
#include <pelage/answers/owner_page.hpp>

#include "answers/layout.hpp"
#include "answers/owner_page_parts.hpp"

namespace pelage::io {

namespace {

/// Text made safe inside an element: markup characters, and the marks that turn the direction of
/// writing, which could make a line read as another.
std::string escaped(std::string_view s) {
    std::string out;
    for (std::size_t i = 0; i < s.size(); ++i) {
        const char c = s[i];
        const std::string_view three = s.substr(i, 3);
        // U+202A to U+202E and U+2066 to U+2069 in UTF-8
        const bool turns =
            (three >= "\xE2\x80\xAA" && three <= "\xE2\x80\xAE" && three.size() == 3) ||
            (three >= "\xE2\x81\xA6" && three <= "\xE2\x81\xA9" && three.size() == 3);
        if (turns) {
            i += 2;
        } else if (c == '&') {
            out += "&amp;";
        } else if (c == '<') {
            out += "&lt;";
        } else if (c == '>') {
            out += "&gt;";
        } else if (c == '"') {
            out += "&quot;";
        } else if (c == '\'') {
            out += "&#39;";
        } else {
            out += c;
        }
    }
    return out;
}

constexpr std::string_view style_sheet =
    "@page{size:A4;margin:11mm 13mm}"
    "*{box-sizing:border-box}"
    "body{font:10.2pt/1.32 sans-serif;color:#111;margin:0 auto;max-width:184mm;"
    "overflow-wrap:anywhere}"
    "h1{font-size:15pt;margin:0 0 2mm;border-bottom:.5mm solid #111;padding-bottom:1mm}"
    "h2{font-size:11.2pt;margin:2.6mm 0 .6mm}"
    "p{margin:0 0 .8mm}"
    "ul,ol{margin:0 0 .8mm;padding-left:5.5mm}"
    "li{margin:0 0 .4mm}"
    "ul.boxes{list-style:none;padding-left:0}"
    "ul.boxes li{padding-left:6mm;text-indent:-6mm}"
    "ul.boxes li::before{content:\"\";display:inline-block;width:3.2mm;height:3.2mm;"
    "border:.35mm solid #111;margin-right:2.6mm;vertical-align:-.4mm;text-indent:0}"
    ".pair{display:grid;grid-template-columns:1fr 1fr;column-gap:8mm}"
    ".sign{display:grid;grid-template-columns:2fr 1fr 2fr;column-gap:6mm;margin-top:8mm}"
    ".sign div{border-top:.3mm solid #111;padding-top:.6mm;font-size:9pt}"
    "footer{margin-top:2.6mm;font-size:8.4pt;color:#333}"
    "@media print{section{break-inside:avoid}}"
    "@media screen{body{padding:8mm}}";

std::string list_of(const page_section& s) {
    if (s.lines.empty()) {
        return {};
    }
    const char* open = s.how == lines_as::steps   ? "<ol>\n"
                       : s.how == lines_as::boxes ? "<ul class=\"boxes\">\n"
                                                  : "<ul>\n";
    std::string out = open;
    for (const std::string& l : s.lines) {
        out += "<li>" + escaped(l) + "</li>\n";
    }
    return out + (s.how == lines_as::steps ? "</ol>\n" : "</ul>\n");
}

std::string section_of(const page_section& s) {
    std::string out = "<section>\n<h2>" + escaped(s.heading) + "</h2>\n";
    if (!s.says.empty()) {
        out += "<p>";
        for (std::size_t i = 0; i < s.says.size(); ++i) {
            out += (i == 0 ? "" : " ") + escaped(s.says[i]);
        }
        out += "</p>\n";
    }
    return out + list_of(s) + "</section>\n";
}

std::string text_lines(const page_section& s, std::size_t width) {
    std::string out;
    std::string says;
    for (const std::string& p : s.says) {
        says += (says.empty() ? "" : " ") + p;
    }
    if (!says.empty()) {
        out += wrapped("  ", says, 2, width);
    }
    int n = 0;
    for (const std::string& l : s.lines) {
        const std::string mark = s.how == lines_as::steps   ? "  " + std::to_string(++n) + ". "
                                 : s.how == lines_as::boxes ? "  [ ] "
                                                            : "  - ";
        out += wrapped(mark, l, mark.size(), width);
    }
    return out;
}

}  // namespace

std::string owner_text(const owner_matter& m, const print_options& o) {
    const owner_page page = page_of(m, o);
    std::string out = wrapped("", page.title, 2, o.width);
    out += page.from.empty() ? "" : wrapped("", page.from, 2, o.width);
    for (const page_section& s : page.sections) {
        out += "\n" + s.heading + "\n" + text_lines(s, o.width);
    }
    if (page.sign) {
        out += "\n  Name ______________________  Date ____________  Signed __________________\n";
    }
    return out + "\n" + wrapped("", page.foot, 0, o.width);
}

std::string owner_html(const owner_matter& m, const print_options& o) {
    const owner_page page = page_of(m, o);
    std::string out =
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
        "'unsafe-inline'\">\n"
        "<meta name=\"viewport\" content=\"width=device-width\">\n<title>" +
        escaped(page.title) + "</title>\n<style>\n" + std::string(style_sheet) +
        "\n</style>\n</head>\n<body>\n<h1><bdi>" + escaped(page.name) + "</bdi>" +
        escaped(page.title.substr(page.name.size())) + "</h1>\n" +
        (page.from.empty() ? "" : "<p>" + escaped(page.from) + "</p>\n");
    bool open = false;
    for (const page_section& s : page.sections) {
        if (s.beside != open) {
            out += s.beside ? "<div class=\"pair\">\n" : "</div>\n";
            open = s.beside;
        }
        out += section_of(s);
    }
    out += open ? "</div>\n" : "";
    if (page.sign) {
        out += "<div class=\"sign\"><div>Name</div><div>Date</div><div>Signed</div></div>\n";
    }
    return out + "<footer>" + escaped(page.foot) + "</footer>\n</body>\n</html>\n";
}

}  // namespace pelage::io
