#pragma once

/// Darcy friction factor of pipe flow [-].
namespace fluewright::friction {

/// All regimes in one smooth expression: the factor the solver uses.
///
///   f = 8 ( (8/Re)^12 + (A + B)^-1.5 )^(1/12)
///   A = ( 2.457 ln( 1 / ((7/Re)^0.9 + 0.27 e/D) ) )^16,   B = (37530/Re)^16
///
/// Source   Churchill 1977, Chemical Engineering 84(24) 91-92   [churchill-1977]
/// Range    any Re > 0, held at 1e-6 below that; 0 <= e/D <= 0.05; within 3.5 % of
///          colebrook_1939() from Re 4000
/// [theory eq. 16]
[[nodiscard]] double churchill_1977(double re, double relative_roughness);

/// Fully turbulent flow, solved to round-off.
///
///   1/sqrt(f) = -2 log10( e/(3.7 D) + 2.51/(Re sqrt(f)) )
///
/// Source   Colebrook 1939, J. Inst. Civ. Eng. 11(4) 133-156   [colebrook-1939]
/// Range    4000 <= Re <= 1e8, 0 <= e/D <= 0.05
[[nodiscard]] double colebrook_1939(double re, double relative_roughness);

/// Laminar flow: f = 64/Re. Range: Re below about 2300.
[[nodiscard]] inline double laminar(double re) {
    return 64.0 / re;
}

} // namespace fluewright::friction
