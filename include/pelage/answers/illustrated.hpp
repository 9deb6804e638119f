// Answers as pictures: the ladder of a kit, how a coat grows out, a place of the dog; and a page with its
// picture.
#pragma once

#include <optional>

#include <pelage/answers/picture.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/forecast/growth_course.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/kit/place_card.hpp>

namespace pelage::io {

/// All a kit leaves on one axis of lengths, from short to long: with the lay and against it, what each may
/// lie between, what the sheets ask. Nothing where nothing in the kit clips.
[[nodiscard]] std::optional<dog_picture> picture_of(const ladder& l, const lookup_request& r,
                                                    const outline& o, length_unit u);

/// How a coat grows out after a planned groom, with when it must be back and what brushing changes; `c` came from
/// course_of. Nothing where nothing that is known of the coat grows.
[[nodiscard]] std::optional<dog_picture> picture_of(const growth_course& c, const forecast& f,
                                                    const plan_request& r, const outline& o,
                                                    const print_options& print);

/// A place enlarged on the dog around it, the way of the stroke as arrows, and small where on the dog it is; a
/// view for each side from which some of it is seen. `alone`: with how it is held, which way and what to mind,
/// which a page says in its own words. Nothing where no view shows it.
[[nodiscard]] std::optional<dog_picture> picture_of(const place_card& c, const lookup_request& r,
                                                    const outline& o, bool alone);

/// An answer with its picture behind the lines it begins with.
[[nodiscard]] document illustrated(document page, const dog_picture& p);
/// The same with the views of a dog side by side, in a section of their own behind the first.
[[nodiscard]] document with_views(document page, const dog_picture& p);

}  // namespace pelage::io
