#include "catch.hpp"
#include "core/quantity/unit_table.hpp"
#include "fluewright/core/quantity/one_system.hpp"
#include "fluewright/core/quantity/quantity.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <string>

using namespace fluewright;

namespace {

double value_of_text(std::string_view text, Kind kind) {
    CAPTURE(std::string(text), std::string(name(kind)));
    const auto result = parse_quantity(text, kind);
    INFO((result ? std::string() : result.error().message));
    REQUIRE(result.has_value());
    return result->value;
}

// Finite doubles of both signs and many sizes; temperatures stay above absolute zero.
double random_value(std::mt19937_64& source, Kind kind) {
    const double size = std::exp(std::uniform_real_distribution(-25.0, 25.0)(source));
    const bool negative = kind != Kind::temperature && std::bernoulli_distribution(0.3)(source);
    return negative ? -size : size;
}

} // namespace

TEST_CASE("Values are shown in the unit of the trade") {
    const auto metric = [](double si, Kind kind) {
        return format_quantity(si, kind, UnitSystem::metric);
    };
    CHECK(metric(0.15, Kind::length) == "150 mm");
    CHECK(metric(0.00045, Kind::length) == "0.45 mm");
    CHECK(metric(0.9996, Kind::length) == "1 m");
    CHECK(metric(4.567, Kind::length) == "4.57 m");
    CHECK(metric(310.0, Kind::length) == "310 m");
    CHECK(metric(293.15, Kind::temperature) == "20 degC");
    CHECK(metric(273.149, Kind::temperature) == "0 degC");
    CHECK(metric(12.04, Kind::pressure) == "12 Pa");
    CHECK(metric(-0.001, Kind::pressure) == "0 Pa");
    CHECK(metric(3.8 / 3600, Kind::mass_rate) == "3.8 kg/h");
    CHECK(metric(0.00812, Kind::gas_flow) == "8.12 g/s");
    CHECK(metric(7040.0, Kind::power) == "7.04 kW");
    CHECK(metric(450.0, Kind::power) == "450 W");
    CHECK(metric(0.018, Kind::area) == "180 cm2");
    CHECK(metric(0.18, Kind::moisture) == "18 % wet");
    CHECK(metric(0.687, Kind::fraction) == "68.7 %");
    CHECK(metric(0.02, Kind::slope) == "20 mm/m");
    CHECK(metric(std::numbers::pi / 2, Kind::angle) == "90 deg");
    CHECK(metric(5400.0, Kind::duration) == "90 min");
    CHECK(metric(3.0 / 3600, Kind::leakage) == "3 1/h");
    CHECK(metric(1.5, Kind::number) == "1.5");
    CHECK(metric(std::numeric_limits<double>::quiet_NaN(), Kind::length) == "not computed");
    CHECK(format_quantity(1.23456, Kind::pressure, UnitSystem::metric, 2) == "1.2 Pa");
}

TEST_CASE("US values are shown as on a US rule and gauge") {
    const auto us = [](double si, Kind kind) { return format_quantity(si, kind, UnitSystem::us); };
    CHECK(us(0.1524, Kind::length) == "6 in");
    CHECK(us(0.15, Kind::length) == "5 7/8 in");
    CHECK(us(4.57, Kind::length) == "15 ft");            // 14 ft 11.9 in
    CHECK(us(3.8227, Kind::length) == "12 ft 6 1/2 in"); // as typed
    CHECK(us(2.9, Kind::length) == "9 ft 6 1/8 in");
    CHECK(us(0.0127, Kind::length) == "1/2 in");
    CHECK(us(0.0004, Kind::length) == "0.016 in");
    CHECK(us(0.0, Kind::length) == "0 in");
    CHECK(us(0.6095, Kind::length) == "2 ft");
    CHECK(us(1.0287, Kind::length) == "3 ft 4 1/2 in");
    CHECK(us(-1.0287, Kind::length) == "-3 ft 4 1/2 in");
    CHECK(us(310.0, Kind::length) == "1017 ft");
    CHECK(us(293.15, Kind::temperature) == "68 degF");
    CHECK(us(12.0, Kind::pressure) == "0.0482 inH2O");
    CHECK(us(-0.000001, Kind::pressure) == "0.0000 inH2O");
    CHECK(us(8 * 0.45359237 / 3600, Kind::mass_rate) == "8 lb/h");
    CHECK(us(10000.0, Kind::power) == "34100 Btu/h");
    CHECK(us(0.018, Kind::area) == "27.9 in2");
    CHECK(us(1.0, Kind::area) == "10.8 ft2");
    CHECK(us(3.048, Kind::speed) == "10 ft/s");
}

TEST_CASE("One given unit and plain numbers can be shown, too") {
    CHECK(format_in_unit(0.1524, Kind::length, "in") == "6 in");
    CHECK(format_in_unit(0.15, Kind::length, "in", 5) == "5.9055 in");
    CHECK(format_in_unit(293.15, Kind::temperature, "K", 5) == "293.15 K");
    CHECK(format_in_unit(0.2, Kind::moisture, "% dry") == "25 % dry");
    CHECK(format_in_unit(1.0, Kind::moisture, "% dry") == "not computed");
    CHECK(format_number(-0.0) == "0");
    CHECK(format_number(12.345) == "12.3");
    CHECK(format_number(12345.6, 4) == "12350");
    CHECK(format_number(1.0 / 3.0, 5) == "0.33333");
}

TEST_CASE("What is shown can be read again and is never a negative zero") {
    std::mt19937_64 source(11);
    for (const Kind kind : all_kinds()) {
        for (int i = 0; i < 500; ++i) {
            const double si = random_value(source, kind);
            for (const auto system : {UnitSystem::metric, UnitSystem::us}) {
                const std::string text = format_quantity(si, kind, system);
                CAPTURE(si, text);
                CHECK_FALSE((text.starts_with("-0 ") || text == "-0"));
                CHECK(text.find("-0.0000 ") == std::string::npos);
                const bool near_zero_k = kind == Kind::temperature && si < 1.0;
                CHECK((near_zero_k || parse_quantity(text, kind).has_value()));
            }
        }
    }
}

TEST_CASE("Nothing is a plain zero in every unit of every kind") {
    for (const Kind kind : all_kinds()) {
        for (const unit_table::Unit& unit : unit_table::units(kind)) {
            const std::string symbol{unit.symbol};
            const std::string zero = symbol.empty() ? "0" : "0 " + symbol;
            CAPTURE(zero);
            const auto read = parse_quantity(zero, kind);
            REQUIRE(read.has_value());
            CHECK(format_in_unit(read->value, kind, unit.symbol) == zero);
            for (const auto system : {UnitSystem::metric, UnitSystem::us}) {
                const std::string written = write_quantity(read->value, kind, system);
                CHECK(written.find("e-") == std::string::npos);
                CHECK(parse_quantity(written, kind)->value == read->value);
                // Shown in the unit of the trade it is a round zero or the same in another scale.
                const std::string shown = format_quantity(read->value, kind, system);
                CHECK_FALSE(shown.starts_with("-0"));
                CHECK((kind == Kind::temperature || shown.starts_with("0")));
            }
        }
    }
    constexpr double zero_fahrenheit_k = 459.67 * 5.0 / 9.0;
    CHECK(format_quantity(zero_fahrenheit_k, Kind::temperature, UnitSystem::us) == "0 degF");
    CHECK(format_in_unit(zero_fahrenheit_k, Kind::temperature, "degF", 12) == "0 degF");
    CHECK(write_quantity(zero_fahrenheit_k, Kind::temperature, UnitSystem::us) == "0 degF");
    // Just beside it nothing is rounded away.
    CHECK(format_in_unit(zero_fahrenheit_k + 1e-6, Kind::temperature, "degF", 2)
          == "0.0000018 degF");
}

TEST_CASE("A number shown with seventeen digits reads back in every unit") {
    std::mt19937_64 source(12);
    for (const Kind kind : all_kinds()) {
        for (const std::string_view unit : unit_symbols(kind)) {
            for (int i = 0; i < 200; ++i) {
                const double si = std::uniform_real_distribution(0.01, 0.9)(source)
                                  + (kind == Kind::temperature ? 250.0 : 0.0);
                const std::string text = format_in_unit(si, kind, unit, 17);
                CAPTURE(si, text);
                // The number may carry no more than 12 decimals.
                const double margin =
                    1e-12 * std::abs(value_of_text("1 " + std::string(unit), kind));
                CHECK(value_of_text(text, kind) == Approx(si).epsilon(1e-14).margin(margin));
            }
        }
    }
}

TEST_CASE("A written quantity reads back as the identical double") {
    std::mt19937_64 source(13);
    for (const Kind kind : all_kinds()) {
        for (int i = 0; i < 2000; ++i) {
            const double si = random_value(source, kind);
            const std::string text = write_quantity(si, kind);
            CAPTURE(si, text);
            const auto read = parse_quantity(text, kind);
            REQUIRE(read.has_value());
            REQUIRE(read->value == si);
        }
        for (const double si : {0.0, -0.0, 1e-300, 1e300, 5e-324, 0.1, 1.0 / 3.0}) {
            const auto read = parse_quantity(write_quantity(si, kind), kind);
            CAPTURE(si, std::string(name(kind)), write_quantity(si, kind));
            REQUIRE(read.has_value());
            CHECK(read->value == si);
        }
    }
}

TEST_CASE("A quantity of any size is shown in characters that show") {
    for (const Kind kind : all_kinds()) {
        for (const double si : {1e30, 1e108, -1e300, 1.7e308, 5e-324}) {
            for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us}) {
                const std::string text = format_quantity(si, kind, system);
                CAPTURE(si, std::string(name(kind)), text);
                CHECK(!text.empty());
                CHECK(std::none_of(
                    text.begin(), text.end(), [](char c) { return c >= 0 && c < ' '; }));
            }
        }
    }
}

TEST_CASE("A figure and its limit are told apart where they differ") {
    constexpr double inh2o_pa = 249.08891;
    const auto apart = [](double figure, double limit, Kind kind, UnitSystem units) {
        const ShownApart both = format_apart(figure, limit, kind, units);
        return both.figure + " of " + both.limit;
    };
    CHECK(apart(0.02406 * inh2o_pa, 0.02413 * inh2o_pa, Kind::pressure, UnitSystem::us)
          == "0.02406 inH2O of 0.02413 inH2O");
    CHECK(apart(11.996, 12.0, Kind::pressure, UnitSystem::metric) == "11.996 Pa of 12 Pa");
    // What is told apart by the usual digits, or is the same, stays as it is.
    CHECK(apart(11.9, 12.0, Kind::pressure, UnitSystem::metric) == "11.9 Pa of 12 Pa");
    CHECK(apart(12.0, 12.0, Kind::pressure, UnitSystem::metric) == "12 Pa of 12 Pa");
    CHECK(apart(12.0 - 1e-9, 12.0, Kind::pressure, UnitSystem::metric) == "12 Pa of 12 Pa");
    // A length of the US that no eighth tells apart is decimal.
    CHECK(apart(0.4571, 0.4572, Kind::length, UnitSystem::us) == "17.996 in of 18 in");
    CHECK(format_apart(-0.0003, 0.0, Kind::pressure, UnitSystem::us).figure == "-0.000001 inH2O");
}

TEST_CASE("A written quantity is as short as a person would write it") {
    CHECK(write_quantity(0.0127, Kind::length) == "12.7 mm");
    CHECK(write_quantity(4.2, Kind::length) == "4.2 m");
    CHECK(write_quantity(293.15, Kind::temperature) == "20 degC");
    CHECK(write_quantity(3.8 / 3600, Kind::mass_rate) == "3.8 kg/h");
    CHECK(write_quantity(7000.0, Kind::power) == "7 kW");
    CHECK(write_quantity(0.18, Kind::moisture) == "18 % wet");
    CHECK(write_quantity(0.687, Kind::fraction) == "68.7 %");
    CHECK(write_quantity(std::numbers::pi / 2, Kind::angle) == "90 deg");
    CHECK(write_quantity(-12.0, Kind::pressure) == "-12 Pa");
    CHECK(write_quantity(1.0e-12, Kind::pressure) == "1e-12 Pa");
    CHECK(write_quantity(-0.0, Kind::number) == "0");
}

TEST_CASE("a figure of the tables that stands in both systems is told in one") {
    const auto us = [](std::string_view text) { return in_one_system(text, UnitSystem::us); };
    const auto metric = [](std::string_view text) {
        return in_one_system(text, UnitSystem::metric);
    };
    CHECK(us("at least 18 in (457 mm) from wood") == "at least 18 in from wood");
    CHECK(metric("at least 18 in (457 mm) from wood") == "at least 457 mm from wood");
    CHECK(us("400 mm (16 in), or 3 diameters") == "16 in, or 3 diameters");
    CHECK(metric("200 to 260 degF (93 to 127 degC)") == "93 to 127 degC");
    CHECK(metric("about 0.012 to 0.028 inH2O (3 to 7 Pa) each") == "about 3 to 7 Pa each");
    CHECK(metric("1/2 in (12.7 mm); 3 ft (914 mm)") == "12.7 mm; 914 mm");
    // What is no such pair stays: another remark, a figure alone, one unit of both.
    for (const std::string_view other : {"a wall (brick) 4 in thick",
                                         "4 in (100 to be sure)",
                                         "the 6 (six) holes",
                                         "6 in (2 in)",
                                         "in (mm)",
                                         "18 in (457 mm",
                                         "(457 mm)",
                                         ""}) {
        CHECK(us(other) == other);
    }
}

TEST_CASE("a roof may be told by its rise over 12") {
    for (const std::string_view text :
         {"7/12", "7:12", "7 in 12", "7-in-12", "7 on 12", "7 in 12 in", "7 / 12"}) {
        CAPTURE(text);
        const auto read = parse_quantity(text, Kind::angle);
        REQUIRE(read);
        CHECK(std::tan(read->value) == Approx(7.0 / 12.0));
        CHECK(read->us_units);
    }
    CHECK(parse_quantity("30 deg", Kind::angle)->value == Approx(std::numbers::pi / 6.0));
    // What is no twelfth is no roof's rise: an elbow of 45 or 90 must not become one of 27.
    for (const std::string_view text :
         {"45/90", "7/12 deg", "7:10", "7 in", "in 12", "/12", "7/", "7 in 12 ft"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_quantity(text, Kind::angle));
    }
    CHECK(parse_quantity("7/12 deg", Kind::angle).error().help == "write \"7/12\"");
    CHECK_FALSE(parse_quantity("7/12", Kind::length));
}

TEST_CASE("a comma in a figure of US units parts thousands; a Btu of a heater is one an hour") {
    CHECK(parse_quantity("40,000 Btu/h", Kind::power).error().help == "write \"40000 Btu/h\"");
    CHECK(parse_quantity("3,500 m", Kind::length).error().help
          == "write \"3500 m\" or \"3.500 m\"");
    CHECK(parse_quantity("40000 btu", Kind::power).error().help == "write \"40000 Btu/h\"");
    CHECK(parse_quantity("12 kWh", Kind::power).error().help == "write \"12 kW\"");
}
