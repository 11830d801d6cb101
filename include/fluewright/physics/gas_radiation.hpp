#pragma once

#include <array>

/// Heat radiated by the carbon dioxide and water vapour of the flue gas to the wall around it.
namespace fluewright::gas_radiation {

struct Path {
    double carbon_dioxide; ///< mole fraction
    double water_vapour;   ///< mole fraction
    double length_m;       ///< mean beam length; 0.95 of the diameter in a long pipe
    double pressure_pa;
};

/// Mean beam length over diameter of a long cylinder. Source: Modest, Radiative Heat Transfer, 3rd
/// ed. (0.95 for the effect on the whole wall)   [leckner-1972]
inline constexpr double beam_length_over_diameter = 0.95;

/// Total emissivity of the gas [-].
///
///   eps_0 = exp( sum_i sum_j c_ij t^j x^i ),  t = T/1000 K,  x = log10( p_a L / bar cm )
///   eps = eps_0 (1 - (a-1)(1-P_E)/(a+b-1+P_E) exp(-c log10^2( (p_a L)_m / p_a L )))
///   eps_mix = eps_H2O + eps_CO2 - overlap
///
/// Source   Leckner 1972, Combustion and Flame 19 33-48, in the form of Modest table 11.4; pressure
///          and overlap terms from memory   [leckner-1972]
/// Range    400 K to 2500 K, p_a L from 0.01 to 1000 bar cm; within 7 % of a narrow-band model for
///          wood smoke in pipes of 100 to 250 mm, 400 to 1000 K
/// Notes    Smoke particles radiate too; they are left out, which keeps the loss low.
[[nodiscard]] double emissivity(const Path& path, double gas_temperature_k);

/// What the emissivity takes from the temperature alone, with all its powers and logarithms.
struct TemperatureTerms {
    explicit TemperatureTerms(double temperature_k);

    struct Gas {
        std::array<double, 3> log_emissivity; ///< at one bar: coefficients over x
        double a;
        double b;
        double log_greatest_path; ///< log10 of (p_a L)_m / bar cm
    };

    double root_t; ///< of t = T/1000 K
    Gas water;
    Gas dioxide;
};

/// What it takes from the path alone.
struct PathTerms {
    explicit PathTerms(const Path& path);

    double total_bar;
    double water_bar;
    double dioxide_bar;
    double water_bar_cm;
    double dioxide_bar_cm;
    double log_water; ///< x of the gas
    double log_dioxide;
    double overlap;
};

/// The same as emissivity() of a path and a temperature, for callers with many of both.
[[nodiscard]] double emissivity(const PathTerms& path, const TemperatureTerms& temperature);

/// Absorptivity of gas at one temperature for black radiation of a wall at another [-].
///
///   alpha = (T_gas/T_wall)^0.5 eps(T_wall, L T_wall/T_gas) for each gas, less the overlap
///
/// Source   as emissivity()
[[nodiscard]] double
absorptivity(const Path& path, double gas_temperature_k, double wall_temperature_k);

/// Heat flux from gas to a grey wall around it [W/m2].
///
///   q = (eps_wall + 1)/2 sigma (eps_gas T_gas^4 - alpha T_wall^4)
///
/// Source   Hottel and Sarofim 1967, Radiative Transfer: for eps_wall above 0.7
///          [hottel-sarofim-1967, from memory]; theory eq. 23
[[nodiscard]] double flux_w_m2(const Path& path,
                               double wall_emissivity,
                               double gas_temperature_k,
                               double wall_temperature_k);

} // namespace fluewright::gas_radiation
