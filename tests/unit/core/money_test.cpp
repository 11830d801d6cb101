#include "catch.hpp"
#include "fluewright/core/quantity/money.hpp"

using fluewright::format_money;

TEST_CASE("money is written to the hundredth, with the currency behind it") {
    CHECK(format_money(1050.0, "EUR") == "1050.00 EUR");
    CHECK(format_money(1.005e6, "crowns") == "1005000.00 crowns");
    CHECK(format_money(0.126, "") == "0.13");
    CHECK(format_money(0.0, "EUR") == "0.00 EUR");
}
