#pragma once

/// What a bare thermometer in a stream of gas shows: it gives heat to the wall it sees, and stays
/// between the gas and that wall.
namespace fluewright::probe {

/// The gas that flows across a stem.
struct CrossFlow {
    double velocity_m_s{};
    double density_kg_m3{};
    double viscosity_pa_s{};
    double conductivity_w_mk{};
    double prandtl{};
};

/// From gas to a round stem across the stream [W/(m2 K)].
///
/// Source   Churchill and Bernstein 1977: convection::cross_wind_churchill_1977()
///          [churchill-bernstein-1977]; properties at the temperature of the gas in place of the
///          film's, which here differ by some per cent
[[nodiscard]] double coefficient_w_m2k(double diameter_m, const CrossFlow& flow);

/// Temperature of the stem [K].
///
///   h (T_gas - T) = e sigma (T^4 - T_wall^4)
///
/// Source   heat balance of a small gray body in a large enclosure, that of any handbook on
///          measuring gas temperatures [memory]. The glow of the gas itself and the heat along the
///          stem are left out: the first is small over a stem's width, the second works the same
///          way as the wall and depends on how deep the stem is pushed in
[[nodiscard]] double
reading_k(double gas_k, double wall_k, double coefficient_w_m2k, double emissivity);

} // namespace fluewright::probe
