#include "catch.hpp"
#include "core/quantity/unit_table.hpp"
#include "fluewright/core/quantity/quantity.hpp"

#include <algorithm>
#include <cctype>
#include <numbers>
#include <set>
#include <string>

using namespace fluewright;

namespace {

struct Reading {
    std::string_view text;
    Kind kind;
    double si;
};

// Factors are written out here on their own, so that a slip in the table shows.
constexpr double btu = 1055.05585262;

constexpr Reading readings[] = {
    {"4.2 m", Kind::length, 4.2},
    {"2 meters", Kind::length, 2.0},
    {"15 cm", Kind::length, 0.15},
    {"150 mm", Kind::length, 0.15},
    {"150mm", Kind::length, 0.15},
    {"45 um", Kind::length, 45e-6},
    {"45 µm", Kind::length, 45e-6},
    {"6 in", Kind::length, 0.1524},
    {"6\"", Kind::length, 0.1524},
    {"6″", Kind::length, 0.1524},
    {"6 inches", Kind::length, 0.1524},
    {"1 inch", Kind::length, 0.0254},
    {"4 1/2 in", Kind::length, 0.1143},
    {"4-1/2 in", Kind::length, 0.1143},
    {"4½ in", Kind::length, 0.1143},
    {"4 ½ in", Kind::length, 0.1143},
    {"½ in", Kind::length, 0.0127},
    {"¼\"", Kind::length, 0.00635},
    {"¾ in", Kind::length, 0.01905},
    {"⅛ in", Kind::length, 0.003175},
    {"⅜ in", Kind::length, 0.009525},
    {"⅝ in", Kind::length, 0.015875},
    {"⅞ in", Kind::length, 0.022225},
    {"⅓ ft", Kind::length, 0.1016},
    {"⅔ ft", Kind::length, 0.2032},
    {"3/8 in", Kind::length, 0.009525},
    {"12 ft", Kind::length, 3.6576},
    {"1 foot", Kind::length, 0.3048},
    {"12 feet", Kind::length, 3.6576},
    {"2 yd", Kind::length, 1.8288},
    {"3 ft 4 1/2 in", Kind::length, 1.0287},
    {"3 ft 4½ in", Kind::length, 1.0287},
    {"3ft4.5in", Kind::length, 1.0287},
    {"5' 6\"", Kind::length, 1.6764},
    {"5'6\"", Kind::length, 1.6764},
    {"5' 6 1/2\"", Kind::length, 1.6891},
    {"5'-6 1/2\"", Kind::length, 1.6891},
    {"5′ 6½″", Kind::length, 1.6891},
    {"-3 ft 4 in", Kind::length, -1.016},
    {"\u22125 m", Kind::length, -5.0},
    {"+5 m", Kind::length, 5.0},
    {"1.5e2 mm", Kind::length, 0.15},
    {"1.5E+2 mm", Kind::length, 0.15},
    {" .5 m ", Kind::length, 0.5},
    {"150\u00A0mm", Kind::length, 0.15},
    {"150\u202Fmm", Kind::length, 0.15},
    {"150 MM", Kind::length, 0.15},
    {"6 IN", Kind::length, 0.1524},

    {"20 degC", Kind::temperature, 293.15},
    {"20 °C", Kind::temperature, 293.15},
    {"20°C", Kind::temperature, 293.15},
    {"20 C", Kind::temperature, 293.15},
    {"20 c", Kind::temperature, 293.15},
    {"20 ℃", Kind::temperature, 293.15},
    {"-40 degF", Kind::temperature, 233.15},
    {"\u221240 °F", Kind::temperature, 233.15},
    {"212 F", Kind::temperature, 373.15},
    {"300 K", Kind::temperature, 300.0},
    {"0 K", Kind::temperature, 0.0},

    {"15 K", Kind::temperature_difference, 15.0},
    {"15 degC", Kind::temperature_difference, 15.0},
    {"18 degF", Kind::temperature_difference, 10.0},
    {"-18 °F", Kind::temperature_difference, -10.0},

    {"12 Pa", Kind::pressure, 12.0},
    {"12 PA", Kind::pressure, 12.0},
    {"1013.25 hPa", Kind::pressure, 101325.0},
    {"1 kPa", Kind::pressure, 1000.0},
    {"0.1 mbar", Kind::pressure, 10.0},
    {"0.05 inH2O", Kind::pressure, 12.4544455},
    {"0.05 in H₂O", Kind::pressure, 12.4544455},
    {"0.05 in wc", Kind::pressure, 12.4544455},
    {"0.05 inwc", Kind::pressure, 12.4544455},
    {"0.05 in w.c.", Kind::pressure, 12.4544455},
    {"0.05 in. w.c.", Kind::pressure, 12.4544455},
    {"0.05 IN. W.C.", Kind::pressure, 12.4544455},
    {"0.05\" w.c.", Kind::pressure, 12.4544455},
    {"2 mmH2O", Kind::pressure, 19.6133},
    {"2 mm wc", Kind::pressure, 19.6133},
    {"29.92 inHg", Kind::pressure, 101320.75888},
    {"1 psi", Kind::pressure, 6894.757293168361},

    {"3.6 kg/h", Kind::mass_rate, 1e-3},
    {"3.6 KG/H", Kind::mass_rate, 1e-3},
    {"3.6 kg / h", Kind::mass_rate, 1e-3},
    {"0.01 kg/s", Kind::mass_rate, 0.01},
    {"10 g/s", Kind::mass_rate, 0.01},
    {"60 g/min", Kind::mass_rate, 1e-3},
    {"8 lb/h", Kind::mass_rate, 8 * 0.45359237 / 3600},
    {"8 lbs/hr", Kind::mass_rate, 8 * 0.45359237 / 3600},
    {"8 g/s", Kind::gas_flow, 0.008},
    {"36 kg/h", Kind::gas_flow, 0.01},
    {"1 kg/s", Kind::gas_flow, 1.0},
    {"60 g/min", Kind::gas_flow, 1e-3},
    {"60 lb/h", Kind::gas_flow, 0.45359237 / 60},

    {"360 m3/h", Kind::volume_flow, 0.1},
    {"360 m³/h", Kind::volume_flow, 0.1},
    {"360 m^3/h", Kind::volume_flow, 0.1},
    {"0.1 m3/s", Kind::volume_flow, 0.1},
    {"100 L/s", Kind::volume_flow, 0.1},
    {"100 l/s", Kind::volume_flow, 0.1},
    {"60 L/min", Kind::volume_flow, 1e-3},
    {"100 cfm", Kind::volume_flow, 2.8316846592 / 60},
    {"100 CFM", Kind::volume_flow, 2.8316846592 / 60},

    {"3 m/s", Kind::speed, 3.0},
    {"36 km/h", Kind::speed, 10.0},
    {"10 mph", Kind::speed, 4.4704},
    {"10 ft/s", Kind::speed, 3.048},
    {"600 ft/min", Kind::speed, 3.048},
    {"10 kn", Kind::speed, 18520.0 / 3600},

    {"7 kW", Kind::power, 7000.0},
    {"750 W", Kind::power, 750.0},
    {"30000 Btu/h", Kind::power, 30000 * btu / 3600},
    {"30000 BTU/hr", Kind::power, 30000 * btu / 3600},
    {"30 kBtu/h", Kind::power, 30000 * btu / 3600},
    {"30 MBH", Kind::power, 30000 * btu / 3600},

    {"40 MJ", Kind::energy, 40e6},
    {"40 kJ", Kind::energy, 40e3},
    {"40 J", Kind::energy, 40.0},
    {"2 kWh", Kind::energy, 7.2e6},
    {"10 Btu", Kind::energy, 10 * btu},

    {"1.5 m2", Kind::area, 1.5},
    {"1.5 m²", Kind::area, 1.5},
    {"180 cm2", Kind::area, 0.018},
    {"180 mm2", Kind::area, 180e-6},
    {"50 in2", Kind::area, 50 * 0.00064516},
    {"50 sq in", Kind::area, 50 * 0.00064516},
    {"50 sq. in.", Kind::area, 50 * 0.00064516},
    {"2 ft2", Kind::area, 0.18580608},
    {"2 sq ft", Kind::area, 0.18580608},

    {"2 m3", Kind::volume, 2.0},
    {"45 L", Kind::volume, 0.045},
    {"45 l", Kind::volume, 0.045},
    {"45 litres", Kind::volume, 0.045},
    {"2 ft3", Kind::volume, 2 * 0.028316846592},
    {"2 cu. ft.", Kind::volume, 2 * 0.028316846592},
    {"100 in3", Kind::volume, 100 * 0.000016387064},

    {"18 %", Kind::fraction, 0.18},
    {"18%", Kind::fraction, 0.18},
    {"40 ppm", Kind::fraction, 40e-6},
    {"18 %", Kind::moisture, 0.18},
    {"18 % wet", Kind::moisture, 0.18},
    {"18% wet basis", Kind::moisture, 0.18},
    {"18 % w.b.", Kind::moisture, 0.18},
    {"25 % dry", Kind::moisture, 0.2},
    {"25 % dry basis", Kind::moisture, 0.2},
    {"25 % db", Kind::moisture, 0.2},

    {"90 deg", Kind::angle, std::numbers::pi / 2},
    {"90°", Kind::angle, std::numbers::pi / 2},
    {"1 rad", Kind::angle, 1.0},
    {"20 mm/m", Kind::slope, 0.02},
    {"1/4 in/ft", Kind::slope, 1.0 / 48},
    {"1/4 in per ft", Kind::slope, 1.0 / 48},
    {"2 %", Kind::slope, 0.02},
    {"45 deg", Kind::slope, 1.0},

    {"0.4 m2K/W", Kind::thermal_resistance, 0.4},
    {"0.4 m²·K/W", Kind::thermal_resistance, 0.4},
    {"13 ft2 h F/Btu", Kind::thermal_resistance, 13 * 0.09290304 * 3600 * 5 / 9 / btu},
    {"13 h·ft²·°F/Btu", Kind::thermal_resistance, 13 * 0.09290304 * 3600 * 5 / 9 / btu},
    {"R-13", Kind::thermal_resistance, 13 * 0.09290304 * 3600 * 5 / 9 / btu},
    {"R13", Kind::thermal_resistance, 13 * 0.09290304 * 3600 * 5 / 9 / btu},
    {"13 R", Kind::thermal_resistance, 13 * 0.09290304 * 3600 * 5 / 9 / btu},
    {"0.04 W/mK", Kind::conductivity, 0.04},
    {"0.04 W/(m·K)", Kind::conductivity, 0.04},
    {"0.3 Btu in/h ft2 F", Kind::conductivity, 0.3 * btu * 0.0254 / (3600 * 0.09290304 * 5 / 9)},
    {"0.3 Btu·in/(h·ft²·°F)", Kind::conductivity, 0.3 * btu * 0.0254 / (3600 * 0.09290304 * 5 / 9)},
    {"9 Btu/h ft F", Kind::conductivity, 9 * btu / (3600 * 0.3048 * 5 / 9)},
    {"1.2 W/m2K", Kind::transmittance, 1.2},
    {"1.2 W/(m²·K)", Kind::transmittance, 1.2},
    {"1 Btu/h ft2 F", Kind::transmittance, btu / (3600 * 0.09290304 * 5 / 9)},
    {"840 J/kgK", Kind::specific_heat, 840.0},
    {"0.84 kJ/kgK", Kind::specific_heat, 840.0},
    {"0.84 kJ/(kg K)", Kind::specific_heat, 840.0},
    {"0.2 Btu/lb F", Kind::specific_heat, 0.2 * 4186.8},

    {"18 MJ/kg", Kind::heating_value, 18e6},
    {"18000 kJ/kg", Kind::heating_value, 18e6},
    {"18000 J/kg", Kind::heating_value, 18e3},
    {"5 kWh/kg", Kind::heating_value, 18e6},
    {"8000 Btu/lb", Kind::heating_value, 8000 * 2326.0},
    {"12 kg", Kind::mass, 12.0},
    {"500 g", Kind::mass, 0.5},
    {"0.2 t", Kind::mass, 200.0},
    {"10 lb", Kind::mass, 4.5359237},
    {"8 oz", Kind::mass, 0.226796185},
    {"5 lb 8 oz", Kind::mass, 5.5 * 0.45359237},
    {"120 kg/m3", Kind::density, 120.0},
    {"8 lb/ft3", Kind::density, 8 * 0.45359237 / 0.028316846592},
    {"90 s", Kind::duration, 90.0},
    {"30 min", Kind::duration, 1800.0},
    {"8 h", Kind::duration, 28800.0},
    {"1 h 30 min", Kind::duration, 5400.0},
    {"1 h 30 min 10 s", Kind::duration, 5410.0},
    {"3 1/h", Kind::leakage, 3.0 / 3600},
    {"3 ach", Kind::leakage, 3.0 / 3600},
    {"3 /h", Kind::leakage, 3.0 / 3600},
    {"3 h⁻¹", Kind::leakage, 3.0 / 3600},
    {"0.001 1/s", Kind::leakage, 0.001},
    {"1.5", Kind::number, 1.5},
    {"-0", Kind::number, 0.0},
    {"1/3", Kind::number, 1.0 / 3},
};

double value_of(std::string_view text, Kind kind) {
    CAPTURE(std::string(text), std::string(name(kind)));
    const auto result = parse_quantity(text, kind);
    INFO((result ? std::string() : result.error().message));
    REQUIRE(result.has_value());
    return result->value;
}

double tolerance_of(std::string_view text, Kind kind) {
    CAPTURE(std::string(text));
    const auto result = parse_quantity(text, kind);
    REQUIRE(result.has_value());
    return result->tolerance;
}

std::string squeezed(std::string_view spelling) {
    std::string result;
    for (const char c : spelling) {
        if (c != ' ') {
            result += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        }
    }
    return result;
}

} // namespace

TEST_CASE("Every spelling gives its value in SI") {
    for (const Reading& reading : readings) {
        CAPTURE(std::string(reading.text));
        CHECK(value_of(reading.text, reading.kind)
              == Approx(reading.si).epsilon(1e-14).margin(0.0));
    }
}

TEST_CASE("Every unit of every kind stands in the list of readings") {
    for (const Kind kind : all_kinds()) {
        for (const std::string_view symbol : unit_symbols(kind)) {
            CAPTURE(std::string(symbol), std::string(name(kind)));
            CHECK(
                std::any_of(std::begin(readings), std::end(readings), [&](const Reading& reading) {
                    return reading.kind == kind && reading.text.ends_with(symbol);
                }));
        }
    }
}

TEST_CASE("No two units of a kind are told apart by letter case or blanks alone") {
    for (const Kind kind : all_kinds()) {
        std::set<std::string> seen;
        for (const auto& unit : unit_table::units(kind)) {
            std::set<std::string> own = {squeezed(unit.symbol)};
            for (std::string_view also = unit.also; !also.empty();) {
                const std::size_t bar = std::min(also.find('|'), also.size());
                own.insert(squeezed(also.substr(0, bar)));
                const std::string text = "2 " + std::string(also.substr(0, bar));
                CHECK(value_of(text, kind) == value_of("2 " + std::string(unit.symbol), kind));
                also.remove_prefix(std::min(bar + 1, also.size()));
            }
            for (const std::string& spelling : own) {
                CAPTURE(spelling);
                CHECK(seen.insert(spelling).second);
            }
        }
    }
}

TEST_CASE("The facts of a kind agree with each other") {
    for (const Kind kind : all_kinds()) {
        CAPTURE(std::string(name(kind)));
        CHECK(parse_quantity(example(kind), kind).has_value());
        if (!si_unit(kind).empty()) {
            CHECK(value_of("2.5 " + std::string(si_unit(kind)), kind) == 2.5);
        }
        for (const auto system : {UnitSystem::metric, UnitSystem::us}) {
            CHECK(unit_table::by_symbol(customary_unit(kind, system), kind) != nullptr);
        }
        for (const std::string_view unit : unit_table::facts(kind).help_units) {
            CHECK((unit.empty() || parse_quantity("2 " + std::string(unit), kind).has_value()));
        }
        for (const auto& unit : unit_table::units(kind)) {
            CHECK((unit.followed_by.empty()
                   || unit_table::by_symbol(unit.followed_by, kind) != nullptr));
        }
    }
}

TEST_CASE("The same size in two units is the same double") {
    CHECK(value_of("150 mm", Kind::length) == 0.15);
    CHECK(value_of("6 in", Kind::length) == 0.1524);
    CHECK(value_of("152.4 mm", Kind::length) == 0.1524);
    CHECK(value_of("15.24 cm", Kind::length) == 0.1524);
    CHECK(value_of("68.7 %", Kind::fraction) == 0.687);
    CHECK(value_of("123456789.123456789 mm", Kind::length) == 123456.789123456789);
}

TEST_CASE("The system of units and the stated basis are kept") {
    const auto inches = parse_quantity("6 in", Kind::length);
    CHECK((inches->us_units && !inches->metric_units));
    const auto mixed = parse_quantity("4 m ± 2 in", Kind::length);
    CHECK((mixed->us_units && mixed->metric_units));
    const auto share = parse_quantity("18 %", Kind::fraction);
    CHECK_FALSE((share->us_units || share->metric_units));
    CHECK_FALSE(parse_quantity("18 %", Kind::moisture)->basis_stated);
    CHECK(parse_quantity("18 % wet", Kind::moisture)->basis_stated);
    CHECK(parse_quantity("18 % dry", Kind::moisture)->basis_stated);
}

TEST_CASE("Tolerances are half-widths in SI") {
    CHECK(tolerance_of("4.2 m", Kind::length) == 0.0);
    for (const char* text : {"4.2 m ± 0.1 m",
                             "4.2 ± 0.1 m",
                             "4.2 m +- 0.1 m",
                             "4.2 m +/- 0.1 m",
                             "4.2m±0.1m",
                             "420 cm ± 100 mm"}) {
        CHECK(tolerance_of(text, Kind::length) == Approx(0.1));
        CHECK(value_of(text, Kind::length) == 4.2);
    }
    CHECK(tolerance_of("4.2 m ± 5 %", Kind::length) == Approx(0.21));
    CHECK(tolerance_of("-4.2 m ± 5%", Kind::length) == Approx(0.21));
    CHECK(tolerance_of("5' 6\" ± 1/2\"", Kind::length) == Approx(0.0127));
    CHECK(tolerance_of("12 ft ± 1 ft 6 in", Kind::length) == Approx(0.4572));
    CHECK(tolerance_of("20 degC ± 2 K", Kind::temperature) == 2.0);
    CHECK(tolerance_of("20 ± 2 degC", Kind::temperature) == 2.0);
    CHECK(value_of("20 ± 2 degC", Kind::temperature) == 293.15);
    CHECK(tolerance_of("70 degF ± 9 degF", Kind::temperature) == Approx(5.0));
    CHECK(tolerance_of("1.5 ± 0.1", Kind::number) == 0.1);
    CHECK(tolerance_of("1.5 ± 10 %", Kind::number) == Approx(0.15));
    CHECK(tolerance_of("1e+2 mm ± 1e+0 mm", Kind::length) == 0.001);
    CHECK(tolerance_of("R-13 ± 5 %", Kind::thermal_resistance)
          == Approx(0.05 * value_of("R-13", Kind::thermal_resistance)));
}

TEST_CASE("Where the kind is measured in %, a tolerance in % means points") {
    CHECK(tolerance_of("75 % ± 5 %", Kind::fraction) == Approx(0.05));
    CHECK(tolerance_of("75 ± 5 %", Kind::fraction) == Approx(0.05));
    CHECK(tolerance_of("18 % ± 2 %", Kind::moisture) == Approx(0.02));
}

TEST_CASE("A moisture tolerance follows the basis") {
    // w = u / (1 + u), so dw = du / (1 + u)^2.
    const double expected = 0.05 / (1.25 * 1.25);
    CHECK(tolerance_of("25 % dry ± 5 % dry", Kind::moisture) == Approx(expected));
    CHECK(tolerance_of("25 % dry ± 5 %", Kind::moisture) == Approx(expected));
    CHECK(tolerance_of("25 ± 5 % dry", Kind::moisture) == Approx(expected));
    CHECK(tolerance_of("25 % ± 5 % dry", Kind::moisture) == Approx(expected));
    CHECK(value_of("25 % ± 5 % dry", Kind::moisture) == Approx(0.2));
    CHECK(tolerance_of("20 % wet ± 5 %", Kind::moisture) == Approx(0.05));
    CHECK(tolerance_of("45 deg ± 1 deg", Kind::slope) == Approx(2 * std::numbers::pi / 180));
}
