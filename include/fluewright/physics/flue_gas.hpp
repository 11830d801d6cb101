#pragma once

#include "fluewright/core/numeric/polynomial.hpp"
#include "fluewright/physics/mixture.hpp"

#include <array>

/// Flue gas in the form the solver uses: property laws of the mixture rules, fitted once per
/// mixture to polynomials in temperature, at three degrees of dilution with room air.
namespace fluewright {

/// Temperatures the fits cover [K]; the solver's states stay inside.
inline constexpr Interval gas_fit_range{220.0, 1500.0};
inline constexpr std::size_t gas_fit_terms = 7;
inline constexpr std::size_t path_fit_terms = 4; ///< of what a shorter radiating path changes

/// Properties of one mixture. All take u = gas_fit_range.u_of(temperature_k), so that a caller who
/// needs several of them maps the temperature once.
/// [theory eq. 10]
class GasFit {
public:
    double gas_constant_j_kgk{};
    double carbon_dioxide{}; ///< mole fraction
    double water_vapour{};   ///< mole fraction

    Coefficients<gas_fit_terms> specific_heat{};
    Coefficients<gas_fit_terms + 1> enthalpy{};
    Coefficients<gas_fit_terms> viscosity{};
    Coefficients<gas_fit_terms> conductivity{};
    Coefficients<gas_fit_terms> conductivity_prandtl{};

    [[nodiscard]] double specific_heat_j_kgk(double u) const { return evaluate(specific_heat, u); }

    /// Above the middle of gas_fit_range: only differences have a meaning.
    [[nodiscard]] double enthalpy_j_kg(double u) const { return evaluate(enthalpy, u); }

    [[nodiscard]] double viscosity_pa_s(double u) const { return evaluate(viscosity, u); }

    [[nodiscard]] double conductivity_w_mk(double u) const { return evaluate(conductivity, u); }

    /// Conductivity times Pr^0.4, the group of pipe_gnielinski_gas_1976(), to spare its power.
    [[nodiscard]] double conductivity_prandtl_w_mk(double u) const {
        return evaluate(conductivity_prandtl, u);
    }

    /// The temperature [K] of this enthalpy, to round-off; Newton from a first guess.
    [[nodiscard]] double temperature_k(double enthalpy_j_kg, double guess_k) const;
};

/// Combustion products and the air that may dilute them.
class FlueGas {
public:
    /// Range: from 230 K to 1450 K at any dilution specific heat stays within 0.05 % of mixture::,
    /// viscosity within 0.2 % and conductivity within 0.2 %; with more than 12 % vapour
    /// conductivity comes to 0.4 % near 1235 K, where the law of the single gases has a bend.
    FlueGas(const MoleFractions& products, const MoleFractions& air);

    /// Properties after dilution; `air_share` is kg air per kg mixture, 0 to 1. Specific heat, gas
    /// constant and enthalpy follow by mass exactly, viscosity and conductivity by a parabola
    /// through shares 0, 1/2 and 1.
    [[nodiscard]] GasFit diluted(double air_share) const;

    [[nodiscard]] const GasFit& products() const { return at_share_[0]; }

    [[nodiscard]] const GasFit& air() const { return at_share_[2]; }

    [[nodiscard]] const MoleFractions& product_fractions() const { return products_; }

    [[nodiscard]] const MoleFractions& air_fractions() const { return air_; }

private:
    MoleFractions products_;
    MoleFractions air_;
    std::array<GasFit, 3> at_share_;
};

/// Radiation of one mixture in one pipe, fitted like the gas.
class EmissionFit {
public:
    EmissionFit() = default;

    /// Source   gas_radiation::emissivity() and absorptivity()
    /// Range    pipes of 80 to 400 mm, gas 300 K to 1450 K, wall below gas: emissivity to 0.2 %,
    ///          absorptivity to 0.8 %; heat flux to 0.3 % of what the gas emits, which is 0.8 % of
    ///          gas_radiation::flux_w_m2() or less while T_wall - 280 K is below 0.8 (T_gas - 280
    ///          K)
    EmissionFit(double carbon_dioxide, double water_vapour, double diameter_m, double pressure_pa);

    /// Flux from gas to wall [W/m2].
    [[nodiscard]] double
    flux_w_m2(double wall_emissivity, double gas_temperature_k, double wall_temperature_k) const;

    /// Emissivity over a path of `exp(log_path)` times the fitted one. Gas diluted with air acts
    /// like the same gas over a path shorter by its dilution, so that one fit serves all dilutions.
    /// Range    emissivity and absorptivity to 1.5 % at 0.8 of the path, 3.3 % at a half, 5.6 % at
    ///          0.15: thinner gas has narrower lines, which a shorter path does not show
    [[nodiscard]] double emissivity(double temperature_k, double log_path = 0.0) const;

    /// Absorptivity for a wall at `wall_temperature_k`.
    [[nodiscard]] double
    absorptivity(double gas_temperature_k, double wall_temperature_k, double log_path = 0.0) const;

    struct Absorbed {
        double absorptivity;
        double log_slope_per_k;     ///< d ln(absorptivity) / d T_wall
        double log_slope_per_gas_k; ///< d ln(absorptivity) / d T_gas
    };

    /// Absorptivity with its slopes, for searches of the wall temperature.
    [[nodiscard]] Absorbed
    absorbed(double gas_temperature_k, double wall_temperature_k, double log_path = 0.0) const;

private:
    Coefficients<gas_fit_terms> log_emissivity_{};
    Coefficients<path_fit_terms> path_exponent_{}; ///< d ln eps / d ln L at a temperature
    Coefficients<path_fit_terms> path_curve_{};    ///< half its second derivative
    bool clear_{true};
};

} // namespace fluewright
