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

double at_one_bar(const std::array<Row, 3>& c, double t, double x) {
    const auto in_t = [t](const Row& r) { return r[0] + t * (r[1] + t * (r[2] + t * r[3])); };
    return std::exp(in_t(c[0]) + x * (in_t(c[1]) + x * in_t(c[2])));
}

/// Correction of the emissivity for total and partial pressure.
double pressure_term(double a, double b, double c, double effective_bar, double log_path_ratio) {
    return 1.0
           - (a - 1.0) * (1.0 - effective_bar) / (a + b - 1.0 + effective_bar)
                 * std::exp(-c * square(log_path_ratio));
}

double water(double t, double partial_bar, double total_bar, double path_bar_cm) {
    if (path_bar_cm < least_path_bar_cm) {
        return 0.0;
    }
    const double effective_bar = total_bar + 2.56 * partial_bar / std::sqrt(t);
    const double a = t < 0.75 ? 2.144 : 1.888 - 2.053 * std::log10(t);
    const double b = 1.10 / std::pow(t, 1.4);
    const double ratio = std::log10(13.2 * t * t / path_bar_cm);
    return at_one_bar(water_coefficients, t, std::log10(path_bar_cm))
           * pressure_term(a, b, 0.5, effective_bar, ratio);
}

double carbon_dioxide(double t, double partial_bar, double total_bar, double path_bar_cm) {
    if (path_bar_cm < least_path_bar_cm) {
        return 0.0;
    }
    const double effective_bar = total_bar + 0.28 * partial_bar;
    const double greatest_path = t < 0.7 ? 0.054 / square(t) : 0.225 * square(t);
    const double a = 1.0 + 0.1 / std::pow(t, 1.45);
    const double ratio = std::log10(greatest_path / path_bar_cm);
    return at_one_bar(carbon_dioxide_coefficients, t, std::log10(path_bar_cm))
           * pressure_term(a, 0.23, 1.47, effective_bar, ratio);
}

/// What both gases would count twice in the bands they share.
double overlap(double water_share, double sum_path_bar_cm) {
    if (sum_path_bar_cm <= 1.0) {
        return 0.0;
    }
    const double z = water_share;
    return (z / (10.7 + 101.0 * z) - 0.0089 * std::pow(z, 10.4))
           * std::pow(std::log10(sum_path_bar_cm), 2.76);
}

struct Parts {
    double each;    ///< sum over the gases taken alone
    double overlap; ///< to be taken off
};

Parts parts_at(const Path& path, double temperature_k, double length_m) {
    const double t = temperature_k / 1000.0;
    const double total_bar = path.pressure_pa / pascal_per_bar;
    const double water_bar = path.water_vapour * total_bar;
    const double dioxide_bar = path.carbon_dioxide * total_bar;
    const double length_cm = length_m * centimetre_per_metre;
    const double sum = path.water_vapour + path.carbon_dioxide;
    const double water_share = sum > 0.0 ? path.water_vapour / sum : 0.0;
    return {water(t, water_bar, total_bar, water_bar * length_cm)
                + carbon_dioxide(t, dioxide_bar, total_bar, dioxide_bar * length_cm),
            overlap(water_share, (water_bar + dioxide_bar) * length_cm)};
}

} // namespace

double emissivity(const Path& path, double gas_temperature_k) {
    const Parts parts = parts_at(path, gas_temperature_k, path.length_m);
    return parts.each - parts.overlap;
}

double absorptivity(const Path& path, double gas_temperature_k, double wall_temperature_k) {
    const double shortened_m = path.length_m * wall_temperature_k / gas_temperature_k;
    const Parts parts = parts_at(path, wall_temperature_k, shortened_m);
    return std::sqrt(gas_temperature_k / wall_temperature_k) * parts.each - parts.overlap;
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
