#include "catch.hpp"
#include "fluewright/io/input/piece_price_reader.hpp"
#include "fluewright/io/report/price_template.hpp"

#include <fmt/format.h>
#include <string>

using namespace fluewright;

namespace {

PiecePrices read(std::string_view text) {
    auto prices = read_piece_prices(text, "prices.json");
    REQUIRE(prices.has_value());
    return std::move(prices).value();
}

std::string first_fault(std::string_view text) {
    const auto prices = read_piece_prices(text, "prices.json");
    REQUIRE_FALSE(prices.has_value());
    REQUIRE_FALSE(prices.error().empty());
    return prices.error().front().fault.pointer;
}

} // namespace

TEST_CASE("a length has its own price before one by its length") {
    const PiecePrices prices = read(R"({"currency": "crowns", "prices": [
        {"wall": "single-wall steel", "per_meter": 20},
        {"wall": "Single-wall steel", "diameter": "150 mm", "length": "1 m", "each": 17.5},
        {"wall": "insulated 25 mm", "per_foot": 30.48},
        {"wall": "insulated 25 mm", "length": "400 mm", "telescopes": true, "each": 90},
        {"what": "wall thimble", "each": 60}, {"what": "storm collar", "each": null}]})");
    CHECK(prices.currency == "crowns");
    CHECK(prices.of_length("single-wall steel", 0.15, 1.0, false) == 17.5);
    CHECK(prices.of_length("single-wall steel", 0.18, 1.0, false) == 20.0);
    CHECK(prices.of_length("single-wall steel", 0.15, 0.5, false) == 10.0);
    CHECK(*prices.of_length("insulated 25 mm", 0.15, 1.0, false) == Approx(100.0));
    CHECK(*prices.of_length("insulated 25 mm", 0.15, 0.4, false) == Approx(40.0));
    CHECK(prices.of_length("insulated 25 mm", 0.15, 0.4, true) == 90.0);
    CHECK_FALSE(prices.of_length("flexible liner", 0.15, 1.0, false).has_value());
    CHECK(prices.of_part("wall thimble", 0.15) == 60.0);
    CHECK_FALSE(prices.of_part("storm collar", 0.15).has_value());
}

TEST_CASE("what is wrong with a price list is placed") {
    CHECK(first_fault(R"({"prices": [{"wall": "x", "each": -1}]})") == "/prices/0/each");
    CHECK(first_fault(R"({"prices": [{"wall": "x", "eech": 1}]})") == "/prices/0/eech");
    CHECK(first_fault(R"({"prices": [{"each": 1}]})") == "/prices/0");
    CHECK(first_fault(R"({"prices": [{"wall": "x", "length": "4 kg"}]})") == "/prices/0/length");
    CHECK(first_fault(R"({"prices": [7]})") == "/prices/0");
    CHECK(first_fault(R"({"prices": [{"wall": "x", "telescopes": 1}]})") == "/prices/0/telescopes");
    CHECK(first_fault(R"({"prices": {}})") == "/prices");
    CHECK_FALSE(read_piece_prices(R"({"currency": "x"})", "p").has_value());
}

TEST_CASE("prices have bounds: how much, how many, how long a name") {
    const std::string one = R"({"what": "screw", "each": 1})";
    const auto list = [](std::string_view entries) {
        return fmt::format(R"({{"prices": [{}]}})", entries);
    };
    CHECK(read(list(R"({"what": "screw", "each": 1e9})")).prices.front().each == 1e9);
    CHECK(first_fault(list(R"({"what": "screw", "each": 1.001e9})")) == "/prices/0/each");
    CHECK(first_fault(list(R"({"wall": "x", "per_foot": 1e308})")) == "/prices/0/per_foot");
    CHECK(first_fault(fmt::format(R"({{"currency": "{:x>1001}", "prices": []}})", ""))
          == "/currency");
    CHECK(first_fault(list(fmt::format(R"({{"what": "{:x>1001}", "each": 1}})", "")))
          == "/prices/0/what");
    std::string many = one;
    for (int i = 1; i < 2000; ++i) {
        many += ',' + one;
    }
    CHECK(read(list(many)).prices.size() == 2000);
    CHECK(first_fault(list(many + ',' + one)) == "/prices");
}

TEST_CASE("the template reads back, with nothing priced") {
    PartsList list;
    list.sold = {{"single-wall steel", 0.15, 1.0, false}, {"insulated 25 mm", 0.15, 0.4, true}};
    list.lines.push_back({.what = "storm collar", .diameter_m = 0.15});
    list.lines.push_back({.what = "single-wall steel, length of 1 m", .pipe = true});
    list.lines.push_back({.what = "furnace \"cement\""});
    const PiecePrices prices = read(price_template(list, UnitSystem::metric));
    REQUIRE(prices.prices.size() == 4);
    CHECK(prices.prices[1].telescopes);
    CHECK(prices.prices[1].length_m == 0.4);
    CHECK(prices.prices[2].what == "storm collar");
    CHECK(prices.prices[3].what == "furnace \"cement\"");
    CHECK_FALSE(prices.of_length("single-wall steel", 0.15, 1.0, false).has_value());
}
