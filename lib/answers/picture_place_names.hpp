// Private to lib: names on a place of the dog that is drawn enlarged.
#pragma once

#include <string>
#include <vector>

#include "answers/chart.hpp"
#include "answers/picture_lens.hpp"

namespace pelage::io {

/// Writes names where they cover nothing. Borrows all it is made of.
class names_on_place {
  public:
    /// `taken`: what else stands in the window; names and their leaders are added to it.
    names_on_place(const zones_in_view& v, const lens& l, const body& b, chart& to,
                   std::vector<text_box>& taken)
        : zones_(v), lens_(l), body_(b), sheet_(to), taken_(taken) {}

    /// The name of a zone, inside; whether it had room there.
    bool inside(const drawn_area& a);
    /// Inside, or beside it at the end of a line.
    void inside_or_beside(const drawn_area& a);
    /// At the end of a line that leads there.
    void beside(const std::string& text, const drawn_point& anchor, bool off_the_dog = false);

  private:
    [[nodiscard]] std::string name_of(const drawn_area& a) const;
    /// The largest of its rings that is seen.
    [[nodiscard]] polygon largest(const drawn_area& a) const;
    void write(const std::string& text, const drawn_point& at);
    /// A leader over no text; of one that stands, no text comes on it.
    [[nodiscard]] bool leads_clear(const drawn_point& from, const drawn_point& anchor) const;
    void keep_clear(const drawn_point& from, const drawn_point& anchor);
    /// Of texts, arrows and marked places, or of all the dog.
    [[nodiscard]] bool is_clear(const text_box& b, bool off_the_dog) const;

    const zones_in_view& zones_;
    const lens& lens_;
    const body& body_;
    chart& sheet_;
    std::vector<text_box>& taken_;
};

}  // namespace pelage::io
