#include <algorithm>
#include <cctype>
#include <deque>
#include <utility>

#include <pelage/answers/picture.hpp>
#include <pelage/answers/sheets.hpp>
#include <pelage/answers/style_book.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/json.hpp"
#include "answers/picture_view.hpp"
#include "answers/words/sheet.hpp"

namespace pelage::io {

namespace {

class book_writer {
  public:
    book_writer(const style_book& b, const print_options& o) : b_(b), o_(o) {
        out_.titled = true;
        out_.small = true;
    }

    document all(std::vector<document> ladders) {
        index();
        for (const book_sheet& one : b_.sheets) {
            sheet(one);
        }
        begin("kit", "What the kit leaves: " + b_.tools.title);
        for (document& l : ladders) {
            out_.append(std::move(l));
        }
        words();
        return std::move(out_);
    }

  private:
    void begin(std::string id, std::string heading) {
        out_.open(std::move(heading)).id = std::move(id);
    }
    void leads_to(std::string id, std::string text) {
        out_.add({line_as::item, std::move(text), {}, 2, 4, std::move(id)});
    }
    static std::string page_of(const style& s) { return "sheet-" + s.id; }

    void index() {
        for (const book_sheet& one : b_.sheets) {
            const style& s = one.sheet;
            std::vector<std::string> coats;
            for (const coat_class c : coats_for(s, b_.reference)) {
                coats.emplace_back(name(c));
            }
            leads_to(page_of(s), std::to_string(++listed_) + ". " + s.title + ": " +
                                     (coats.empty() ? "any coat" : listed(coats)) + "; version " +
                                     std::to_string(s.version) +
                                     (s.approved_by.empty() ? ", not approved by anybody yet"
                                                            : ", approved by " + s.approved_by));
        }
        leads_to("kit", "What the kit leaves");
        leads_to("words", "The words of the trade");
        out_.show(key_drawing(b_.drawn, o_.units));
    }

    void sheet(const book_sheet& one) {
        const plan_request r{b_.reference, b_.rules, b_.tools, one.patient, one.sheet, b_.today};
        const groom g = make_plan(r);
        begin(page_of(one.sheet), std::to_string(++number_) + ". " + one.sheet.title);
        section views;
        const picture_request asked = picture_of(g, r, b_.drawn, o_.units);
        signs_used used;
        dog_picture drawn =
            picture_of(asked, b_.drawn, b_.reference.dog_body, ready_for(asked.look), false, used);
        drawn.style.clear();  // the index has it
        for (drawing& d : drawings_of(drawn)) {
            if (d.caption != drawn.parts.back().title) {
                d.caption =
                    "left on a " + std::string(name(*one.patient.coat)) + " coat, " + d.caption;
            }
            views.blocks.emplace_back(std::move(d));
        }
        out_.sections.push_back(std::move(views));
        out_.append(sheet_page(one.sheet, g, r, o_));
    }

    void words() {
        begin("words", "The words of the trade");
        const auto lower = [](const std::string& text) {
            std::string out = text;
            std::transform(out.begin(), out.end(), out.begin(),
                           [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
            return out;
        };
        std::vector<const term*> all;
        for (const term& t : b_.words.terms) {
            all.push_back(&t);
        }
        std::stable_sort(all.begin(), all.end(), [&](const term* a, const term* b) {
            return lower(a->title) < lower(b->title);
        });
        char letter = 0;
        for (const term* t : all) {
            const auto first = static_cast<unsigned char>(t->title.empty() ? ' ' : t->title[0]);
            const char own = static_cast<char>(std::toupper(first));
            if (own != letter && std::isalpha(first) != 0) {
                letter = own;
                out_.say_of(std::string(1, own), "");
            }
            out_.item_of(t->title + ": ", t->text);
        }
    }

    /// Sheets are drawn on dogs of few looks.
    prepared_dog& ready_for(const dog_look& look) {
        const auto known = std::find_if(ready_.begin(), ready_.end(),
                                        [&](const prepared_dog& d) { return d.look == look; });
        return known != ready_.end() ? *known
                                     : ready_.emplace_back(b_.drawn, look, b_.reference.dog_body);
    }

    const style_book& b_;
    const print_options& o_;
    std::deque<prepared_dog> ready_;
    int listed_ = 0;  ///< sheets in the index so far
    int number_ = 0;  ///< pages of sheets so far
    document out_{b_.title};
};

}  // namespace

document document_of(const style_book& b, std::vector<document> ladders, const print_options& o) {
    return book_writer(b, o).all(std::move(ladders));
}

std::string json_of(const style_book& b) {
    json j{{"schema", "pelage/style-book/1"}, {"title", b.title}, {"sheets", json::array()}};
    for (const book_sheet& one : b.sheets) {
        const plan_request r{b.reference, b.rules, b.tools, one.patient, one.sheet, b.today};
        j["sheets"].push_back(json::parse(sheet_json(one.sheet, make_plan(r), r)));
    }
    return dumped(j);
}

}  // namespace pelage::io
