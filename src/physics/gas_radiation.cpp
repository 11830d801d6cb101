#include "fluewright/physics/gas_radiation.hpp"

#include "fluewright/core/constants.hpp"

#include <array>
#include <cmath>

namespace fluewright::gas_radiation {
namespace {

constexpr double pascal_per_bar = 1e5;
constexpr double centimetre_per_metre = 100.0;
/// Below this pressure path the gas is clear for our purpose and the logarithms lose their meaning.
constexpr double least_path_bar_cm = 1e-4;

using Row = std::array<double, 4>;

constexpr std::array<Row, 3> water_coefficients{{
    {-2.2118, -1.1987, 0.035596, 0.0},
    {0.85667, 0.93048, -0.14391, 0.0},
    {-0.10838, -0.17156, 0.045915, 0.0},
}};

constexpr std::array<Row, 3> carbon_dioxide_coefficients{{
    {-3.9893, 2.7669, -2.1081, 0.39163},
    {1.2710, -1.1090, 1.0195, -0.21897},
    {-0.23678, 0.19731, -0.19544, 0.044644},
}};

double square(double x) {
    return x * x;
}

constexpr double overlap_power = 2.76;

double cubic(const Row& r, double t) {
    return r[0] + t * (r[1] + t * (r[2] + t * r[3]));
}

std::array<double, 3> at_temperature(const std::array<Row, 3>& rows, double t) {
    return {cubic(rows[0], t), cubic(rows[1], t), cubic(rows[2], t)};
}

/// One gas alone: the emissivity at one bar and its correction for total and partial pressure.
double alone(const TemperatureTerms::Gas& gas, double c, double effective_bar, double log_path) {
    const auto& [constant, slope, bend] = gas.log_emissivity;
    const double one_bar = std::exp(constant + log_path * (slope + log_path * bend));
    const double pressure = 1.0
                            - (gas.a - 1.0) * (1.0 - effective_bar)
                                  / (gas.a + gas.b - 1.0 + effective_bar)
                                  * std::exp(-c * square(gas.log_greatest_path - log_path));
    return one_bar * pressure;
}

/// Of both gases, before what they count twice is taken off.
double each(const PathTerms& path, const TemperatureTerms& temperature) {
    double sum = 0.0;
    if (path.water_bar_cm >= least_path_bar_cm) {
        sum += alone(temperature.water,
                     0.5,
                     path.total_bar + 2.56 * path.water_bar / temperature.root_t,
                     path.log_water);
    }
    if (path.dioxide_bar_cm >= least_path_bar_cm) {
        sum += alone(
            temperature.dioxide, 1.47, path.total_bar + 0.28 * path.dioxide_bar, path.log_dioxide);
    }
    return sum;
}

/// What both gases would count twice in the bands they share.
double overlap_of(double water_share, double sum_path_bar_cm) {
    if (sum_path_bar_cm <= 1.0) {
        return 0.0;
    }
    const double z = water_share;
    return (z / (10.7 + 101.0 * z) - 0.0089 * std::pow(z, 10.4))
           * std::pow(std::log10(sum_path_bar_cm), overlap_power);
}

} // namespace

TemperatureTerms::TemperatureTerms(double temperature_k) {
    const double t = temperature_k / 1000.0;
    root_t = std::sqrt(t);
    water = {.log_emissivity = at_temperature(water_coefficients, t),
             .a = t < 0.75 ? 2.144 : 1.888 - 2.053 * std::log10(t),
             .b = 1.10 / std::pow(t, 1.4),
             .log_greatest_path = std::log10(13.2 * t * t)};
    dioxide = {.log_emissivity = at_temperature(carbon_dioxide_coefficients, t),
               .a = 1.0 + 0.1 / std::pow(t, 1.45),
               .b = 0.23,
               .log_greatest_path = std::log10(t < 0.7 ? 0.054 / square(t) : 0.225 * square(t))};
}

PathTerms::PathTerms(const Path& path) {
    total_bar = path.pressure_pa / pascal_per_bar;
    water_bar = path.water_vapour * total_bar;
    dioxide_bar = path.carbon_dioxide * total_bar;
    const double length_cm = path.length_m * centimetre_per_metre;
    water_bar_cm = water_bar * length_cm;
    dioxide_bar_cm = dioxide_bar * length_cm;
    log_water = std::log10(std::fmax(water_bar_cm, least_path_bar_cm));
    log_dioxide = std::log10(std::fmax(dioxide_bar_cm, least_path_bar_cm));
    const double sum = path.water_vapour + path.carbon_dioxide;
    const double water_share = sum > 0.0 ? path.water_vapour / sum : 0.0;
    overlap = overlap_of(water_share, water_bar_cm + dioxide_bar_cm);
}

double emissivity(const PathTerms& path, const TemperatureTerms& temperature) {
    return each(path, temperature) - path.overlap;
}

double emissivity(const Path& path, double gas_temperature_k) {
    return emissivity(PathTerms{path}, TemperatureTerms{gas_temperature_k});
}

double absorptivity(const Path& path, double gas_temperature_k, double wall_temperature_k) {
    Path shortened = path;
    shortened.length_m *= wall_temperature_k / gas_temperature_k;
    const PathTerms terms{shortened};
    return std::sqrt(gas_temperature_k / wall_temperature_k)
               * each(terms, TemperatureTerms{wall_temperature_k})
           - terms.overlap;
}

double flux_w_m2(const Path& path,
                 double wall_emissivity,
                 double gas_temperature_k,
                 double wall_temperature_k) {
    const double gas = emissivity(path, gas_temperature_k) * square(square(gas_temperature_k));
    const double wall = absorptivity(path, gas_temperature_k, wall_temperature_k)
                        * square(square(wall_temperature_k));
    return 0.5 * (wall_emissivity + 1.0) * constants::stefan_boltzmann_w_m2k4 * (gas - wall);
}

} // namespace fluewright::gas_radiation
