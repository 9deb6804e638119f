// What holds of every picture: no text covers another or leaves it, and it stays small.
#pragma once

#include <pelage/answers/picture.hpp>

#include "catch.hpp"

namespace drawn {

[[nodiscard]] inline bool cover(const pelage::io::text_box& a, const pelage::io::text_box& b) {
    return a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height &&
           b.top < a.top + a.height;
}

inline void check_picture(const pelage::io::dog_picture& p) {
    for (const pelage::io::picture_part& part : p.parts) {
        for (std::size_t i = 0; i < part.texts.size(); ++i) {
            const pelage::io::text_box& one = part.texts[i];
            if (one.left < 0.0 || one.top < 0.0 || one.left + one.width > part.width ||
                one.top + one.height > part.height) {
                FAIL_CHECK(part.title << ": " << one.text << " leaves the picture");
            }
            for (std::size_t k = 0; k < i; ++k) {
                if (cover(one, part.texts[k])) {
                    FAIL_CHECK(part.title << ": " << one.text << " on " << part.texts[k].text);
                }
            }
        }
    }
    CHECK(svg_of(p).size() < 60'000);
}

}  // namespace drawn
