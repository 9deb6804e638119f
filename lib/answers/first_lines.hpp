// Private to lib: what stands before and right below the heading of whatever is said about a dog.
#pragma once

#include <pelage/answers/document.hpp>
#include <pelage/trade/dog.hpp>

namespace pelage::io {

/// "ALERT: bites; two people."; nothing where there is no alert.
void say_alert(document& d, const dog& of);

/// "Note: ..."; nothing where the dog's file has none.
void say_note(document& d, const dog& of);

}  // namespace pelage::io
