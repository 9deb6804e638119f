// One include for tests under Catch2 v2 (Debian 12) and v3 (Debian 13).
//
// Use the matchers through the namespace `match`. Approx is left out on purpose: it hides a relative
// tolerance; say WithinAbs or WithinRel.
#pragma once

#if __has_include(<catch2/catch_test_macros.hpp>)  // v3
#include <catch2/catch_template_test_macros.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>
#include <catch2/generators/catch_generators_adapters.hpp>
#include <catch2/generators/catch_generators_range.hpp>
#include <catch2/matchers/catch_matchers.hpp>
#include <catch2/matchers/catch_matchers_exception.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

namespace match {
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::EndsWith;
using Catch::Matchers::Equals;
using Catch::Matchers::Message;
using Catch::Matchers::StartsWith;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
}  // namespace match
#else  // v2
#include <string>

#include <catch2/catch.hpp>

namespace match {
inline auto ContainsSubstring(const std::string& text) {
    return Catch::Matchers::Contains(text);
}
using Catch::Matchers::EndsWith;
using Catch::Matchers::Equals;
using Catch::Matchers::Message;
using Catch::Matchers::StartsWith;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
}  // namespace match
#endif
