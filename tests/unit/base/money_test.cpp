// Amounts as a salon writes them.
#include <pelage/base/money.hpp>

#include "catch.hpp"

using namespace pelage;

TEST_CASE("a price is an amount with its currency, if it is said", "[money]") {
    CHECK(parse_money("24.50 EUR") == money{2450, "EUR"});
    CHECK(parse_money(" 60 ") == money{6000, ""});
    CHECK(parse_money("0.05") == money{5, ""});
}

TEST_CASE("what is no price is none", "[money]") {
    for (const char* text : {"", "EUR", "-3", "cheap", "3 EUR 20", "99999999", "1 shillings and"}) {
        INFO(text);
        CHECK_FALSE(parse_money(text).has_value());
    }
}

TEST_CASE("a price is shown as it would be written", "[money]") {
    CHECK(show(money{2450, "EUR"}) == "24.50 EUR");
    CHECK(show(money{6005, ""}) == "60.05");
    CHECK(show(money{6000, "GBP"}) == "60 GBP");
}
