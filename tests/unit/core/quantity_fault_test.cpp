#include "catch.hpp"
#include "fluewright/core/quantity/quantity.hpp"

#include <string>

using namespace fluewright;

namespace {

QuantityError error_of(std::string_view text, Kind kind) {
    CAPTURE(std::string(text), std::string(name(kind)));
    const auto result = parse_quantity(text, kind);
    REQUIRE_FALSE(result.has_value());
    CHECK(result.error().allowed.size() > 0);
    CHECK(result.error().message.size() > 0);
    CHECK(result.error().message.back() != '.');
    CHECK(result.error().help.find('"') != std::string::npos);
    return result.error();
}

} // namespace

TEST_CASE("A number without a unit is an error that shows how to write it") {
    const auto error = error_of("6", Kind::length);
    CHECK(error.message == "a length needs a unit");
    CHECK(error.allowed == "m, cm, mm, um, in, ft, yd");
    CHECK(error.help == R"(write "6 in" or "6 mm")");
    CHECK(error_of("5.", Kind::length).help == R"(write "5 in" or "5 mm")");
    CHECK(error_of("12", Kind::pressure).help == R"(write "12 Pa" or "12 inH2O")");
    CHECK(error_of("0.18", Kind::fraction).help == R"(write "18 %")");
    CHECK(error_of("18", Kind::fraction).help == R"(write "18 %")");
    CHECK(error_of("18", Kind::moisture).help == R"(write "18 % wet" or "18 % dry")");
    CHECK(error_of("20 ± 5 %", Kind::length).message == "a length needs a unit");
}

TEST_CASE("A quantity of another kind is named") {
    const auto error = error_of("150 psi", Kind::length);
    CHECK(error.message == "`150 psi` is a pressure, but a length is due");
    CHECK(error.help == R"(for example "150 mm")");
    CHECK(error_of("20 deg", Kind::temperature).message
          == "`20 deg` is an angle, but a temperature is due");
    CHECK(error_of("3 mm", Kind::number).help == R"(write "3")");
}

TEST_CASE("A misspelt unit is answered with the nearest one") {
    CHECK(error_of("6 inchs", Kind::length).message == "`inchs` is not a unit of length");
    CHECK(error_of("6 inchs", Kind::length).help == R"(did you mean "6 inch"?)");
    CHECK(error_of("18 mj/kg", Kind::heating_value).help == R"(did you mean "18 MJ/kg"?)");
    CHECK(error_of("3 ach50", Kind::leakage).help == R"(write "3 ach")");
    CHECK(error_of("3 ft foo", Kind::length).help == R"(for example "150 mm")");
}

TEST_CASE("Letter case is kept where it changes the size") {
    error_of("5 mPa", Kind::pressure);
    error_of("5 MPa", Kind::pressure);
    error_of("5 mJ", Kind::energy);
    error_of("5 mW", Kind::power);
}

TEST_CASE("Commas and separators are answered with the plain number") {
    CHECK(error_of("1,5 mm", Kind::length).help == R"(write "1.5 mm")");
    CHECK(error_of("1,5", Kind::length).help == R"(write "1.5 in" or "1.5 mm")");
    CHECK(error_of("-0,125 m", Kind::length).help == R"(write "-0.125 m")");
    CHECK(error_of("\u22121,5 degC", Kind::temperature).help == "write \"\u22121.5 degC\"");
    CHECK(error_of("1,200 mm", Kind::length).help == R"(write "1200 mm" or "1.200 mm")");
    CHECK(error_of("1,234,567 mm", Kind::length).help == R"(write "1234567 mm")");
    CHECK(error_of("1.200,5 mm", Kind::length).help == R"(write "1200.5 mm")");
    CHECK(error_of("1,200.5 mm", Kind::length).help == R"(write "1200.5 mm")");
    CHECK(error_of("1.200.000 mm", Kind::length).help == R"(write "1200000 mm")");
    CHECK(error_of("1_000 mm", Kind::length).help == R"(write "1000 mm")");
    CHECK(error_of("1 200 mm", Kind::length).help == R"(write "1200 mm")");
    CHECK(error_of("1 200 000 mm ± 5 mm", Kind::length).help == R"(write "1200000 mm ± 5 mm")");
    CHECK(error_of("½200 mm", Kind::length).help == R"(for example "150 mm")");
    CHECK(error_of("3 ft 1,5 in", Kind::length).help == R"(write "3 ft 1.5 in")");
    CHECK(error_of("4.2 m ± 0,1 m", Kind::length).help == R"(write "4.2 m ± 0.1 m")");
    CHECK(error_of("R1,3", Kind::thermal_resistance).help == R"(write "R1.3")");
    CHECK(error_of("1.2.3 m", Kind::length).help == R"(for example "150 mm")");
    error_of(".5.3 m", Kind::length);
    error_of("1,2,3,4 m ± 3,3", Kind::length);
}

TEST_CASE("What is no finite decimal number is refused") {
    for (const char* text : {"",
                             " ",
                             "m",
                             "nan m",
                             "inf m",
                             "-inf m",
                             "0x10 m",
                             "- 5 m",
                             "--5 m",
                             "+-5 m",
                             "1e400 m",
                             "1e-400 m",
                             "1/0 in",
                             "4 5/4 in",
                             "1e m",
                             "1e308 ft 1 in",
                             "1e999999999999 m",
                             "5 m m",
                             "6 6 in",
                             "1 m 20 cm",
                             "6 in 3 ft",
                             "3 ft -4 in 2",
                             "3 ft in",
                             "5..m",
                             "5 ft2",
                             "\xFF",
                             "5 \xFF\xC2",
                             "½½ in",
                             "1/2/3 in",
                             "\u00B1 5 m"}) {
        error_of(text, Kind::length);
    }
    CHECK(error_of("", Kind::length).message == "a length is due, but the text is empty");
    CHECK(error_of("abc", Kind::energy).message
          == "`abc` is not an energy: it does not begin with a number");
    error_of(std::string(100000, '1') + " m", Kind::length);
    error_of("1 " + std::string(100000, 'm'), Kind::length);
    std::string commas;
    for (int i = 0; i < 10000; ++i) {
        commas += "1,1 ";
    }
    error_of(commas, Kind::length);
}

TEST_CASE("Values that cannot be are refused") {
    CHECK(error_of("-300 degC", Kind::temperature).message
          == "the temperature lies below absolute zero");
    CHECK(error_of("-1 K", Kind::temperature).allowed == "degC, degF, K");
    error_of("-100 % dry", Kind::moisture);
}

TEST_CASE("A tolerance must be positive and of the right kind") {
    CHECK(error_of("4.2 m ± 0 m", Kind::length).message == "a tolerance must be greater than zero");
    CHECK(error_of("4.2 m ± -0.1 m", Kind::length).message
          == "a tolerance must be greater than zero");
    error_of("0 m ± 5 %", Kind::length);
    CHECK(error_of("4.2 m ± 0.1", Kind::length).help == R"(write "4.2 m ± 0.1 m")");
    CHECK(error_of("20 degF ± 2", Kind::temperature).help == R"(write "20 degF ± 2 degF")");
    CHECK(error_of("20 degC ± 5 %", Kind::temperature).allowed == "K, degC, degF");
    CHECK(error_of("4 m ± 2 Pa", Kind::length).message
          == "the tolerance in `4 m ± 2 Pa` is not a length: `Pa`");
    error_of("4 m ±", Kind::length);
    error_of("4 m ± 1e400 m", Kind::length);
    error_of("4 m ± 1 m ± 1 m", Kind::length);
}

TEST_CASE("Messages hold short pieces of the text and no control characters") {
    const auto error = error_of("5 \n\x01 " + std::string(60, 'x') + "\u00FC", Kind::length);
    CHECK(error.message.size() < 80);
    CHECK(error.message.find('\n') == std::string::npos);
}
