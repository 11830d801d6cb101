#include "fluewright/model/standards/handbook.hpp"
#include "method_terms.hpp"

#include <algorithm>
#include <array>

namespace fluewright::handbook {
namespace {

/// Btu/(h ft2 F) in W/(m2 K).
constexpr double imperial_w_m2k = 5.678263;

enum Row : std::size_t { black_steel, bright_metal, brick, air_6_mm, air_12_mm, insulated };

constexpr std::array<Transmittance, 8> rows{{
    {"black or painted steel stovepipe", 1.2 * imperial_w_m2k, from_memory},
    {"single-wall galvanised steel or bare aluminum", 1.0 * imperial_w_m2k, from_memory},
    {"brick chimney, tile lined", 1.0 * imperial_w_m2k, from_memory},
    {"double wall, 1/4 in air", 0.6 * imperial_w_m2k, from_memory},
    {"double wall, 1/2 in air", 0.4 * imperial_w_m2k, from_memory},
    {"insulated factory chimney", 0.3 * imperial_w_m2k, from_memory},
    {"industrial steel stack", 1.3 * imperial_w_m2k, from_memory},
    {"clay or iron sewer pipe", 1.3 * imperial_w_m2k, from_memory},
}};

enum Fuel : std::size_t { natural_gas, lpg, oil, coal, wood };

constexpr std::array<FuelLine, 5> lines{{
    {"natural gas", {0.303, 0.159, 10.72}},
    {"LPG", {0.303, 0.144, 12.61}},
    {"No. 2 oil", {0.310, 0.12, 14.4}},
    {"bituminous coal", {0.327, 0.11, 18.2}},
    {"wood", {0.297, 0.16, 19.7}},
}};

constexpr double bright_emissivity = 0.5;
constexpr double wide_gap_m = 9e-3;

double widest_gap_m(const WallBuild& wall) {
    double widest = 0.0;
    for (std::size_t i = 0; i < wall.layer_count; ++i) {
        if (wall.layers[i].air_gap) {
            widest = std::max(widest, wall.layers[i].thickness_m);
        }
    }
    return widest;
}

constexpr double fahrenheit(double degrees) {
    return (degrees - 32.0) / 1.8 + constants::celsius_zero_k;
}

} // namespace

std::span<const Transmittance> transmittances() {
    return rows;
}

const Transmittance& transmittance_of(const WallBuild& wall) {
    const double gap_m = widest_gap_m(wall);
    if (wall.kind == WallKind::masonry) {
        return rows[brick];
    }
    if (wall.kind == WallKind::insulated || (wall.kind == WallKind::liner && gap_m == 0.0)) {
        return rows[insulated];
    }
    if (gap_m > 0.0) {
        return rows[gap_m > wide_gap_m ? air_12_mm : air_6_mm];
    }
    return rows[wall.outer_emissivity < bright_emissivity ? bright_metal : black_steel];
}

std::span<const FuelLine> fuel_lines() {
    return lines;
}

const FuelLine& fuel_line_of(const ApplianceCase& a) {
    if (a.fuel_group == FuelGroup::gas) {
        return lines[a.fuel.find("natural") != std::string::npos ? natural_gas : lpg];
    }
    if (a.fuel_group == FuelGroup::oil) {
        return lines[oil];
    }
    return lines[a.fuel_group == FuelGroup::coal ? coal : wood];
}

std::optional<double> design_mean_temperature_k(const ApplianceCase& a) {
    if (a.fuel_group == FuelGroup::gas) {
        return fahrenheit(a.type == ApplianceType::draft_hood ? 360.0 : 460.0);
    }
    if (a.fuel_group == FuelGroup::oil) {
        return fahrenheit(560.0);
    }
    return std::nullopt;
}

double elbow_k(double angle_rad) {
    const double degrees = angle_rad * 180.0 / constants::pi;
    constexpr double half = 45.0;
    constexpr double at_45 = 0.3;
    constexpr double at_90 = 0.75;
    return degrees <= half ? at_45 * degrees / half
                           : at_45 + (at_90 - at_45) * (degrees - half) / half;
}

} // namespace fluewright::handbook
