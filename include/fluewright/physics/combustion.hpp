#pragma once

#include "fluewright/physics/mixture.hpp"

/// Complete combustion of a fuel of known analysis: the gas it makes, the air it takes.
namespace fluewright::combustion {

/// Mass shares of the dry fuel (they sum to 1 with the ash) and its gross heating value.
struct FuelAnalysis {
    double carbon;
    double hydrogen;
    double oxygen;
    double nitrogen;
    double sulphur;
    double gross_heating_value_dry_j_kg;
};

struct Burn {
    double moisture;             ///< kg water per kg fuel as fired, 0 to 0.7
    double air_ratio;            ///< air over stoichiometric air, at least 1
    double air_humidity_kg_kg{}; ///< kg water vapour per kg dry combustion air
};

struct Products {
    MoleFractions wet;             ///< mole fractions of the wet gas
    double gas_per_fuel_kg_kg;     ///< kg wet gas per kg fuel as fired
    double dry_air_per_fuel_kg_kg; ///< kg dry air per kg fuel as fired
    double carbon_dioxide_dry;     ///< share of the dry gas
    double oxygen_dry;
};

/// The gas of one kg fuel as fired.
///
///   n_O2 = C/12.011 + H/4.0318 + S/32.065 - O/31.9988   [kmol per kg],  air = n_O2 / 0.209476
///
/// Source   element balance   [derivation]; atomic masses IUPAC; dry air of mixture::dry_air
/// Range    0 <= moisture <= 0.7, air_ratio >= 1
/// Notes    Ash and unburned fuel take no part; with 1 to 15 % of the heat unburned the gas flow
///          comes out high by less than that share.
/// [theory eq. 5]
[[nodiscard]] Products burn(const FuelAnalysis& fuel, const Burn& how);

/// Air ratio with which a kg of fuel as fired gives this much gas [kg], in dry air: gas grows with
/// the air ratio in a straight line. Below 1 where the gas is less than the fuel needs in air.
/// [theory eq. 5]
[[nodiscard]] double
air_ratio_for_gas(const FuelAnalysis& fuel, double moisture, double gas_per_fuel_kg_kg);

/// kg dry air per kg fuel as fired at air ratio 1.
[[nodiscard]] double stoichiometric_air_kg_kg(const FuelAnalysis& fuel, double moisture);

/// Greatest share of CO2 in the dry gas: that at air ratio 1.
[[nodiscard]] double greatest_carbon_dioxide(const FuelAnalysis& fuel);

/// Air ratio that gives this share of CO2 in the dry gas; exact, from the same balance.
/// Range: 0.001 < carbon_dioxide_dry <= greatest_carbon_dioxide(fuel).
/// [theory eq. 6]
[[nodiscard]] double air_ratio_for_carbon_dioxide(const FuelAnalysis& fuel,
                                                  double carbon_dioxide_dry);

/// Air ratio that gives this share of O2 in the dry gas. Range: 0 <= oxygen_dry < 0.209.
/// [theory eq. 6]
[[nodiscard]] double air_ratio_for_oxygen(const FuelAnalysis& fuel, double oxygen_dry);

/// Net heating value of the fuel as fired [J/kg].
///
///   net = gross (1 - w) - r (w + 8.937 H (1 - w))
///
/// Source   definition   [derivation]; 8.937 kg water per kg hydrogen, r = 2.4426 MJ/kg at 25 degC
/// [theory eq. 7]
[[nodiscard]] double net_heating_value_j_kg(const FuelAnalysis& fuel, double moisture);

/// Gross heating value of the fuel as fired [J/kg].
[[nodiscard]] double gross_heating_value_j_kg(const FuelAnalysis& fuel, double moisture);

/// Gross heating value of a dry solid or liquid fuel from its analysis [J/kg].
///
///   HHV [MJ/kg] = 0.3491 C + 1.1783 H + 0.1005 S - 0.1034 O - 0.0151 N - 0.0211 ash  [mass %]
///
/// Source   Channiwala and Parikh 2002, Fuel 81 1051-1063   [channiwala-parikh-2002]
/// Range    mean absolute error 1.45 % over solid, liquid and gaseous fuels
[[nodiscard]] double gross_heating_value_channiwala_2002_j_kg(const FuelAnalysis& fuel, double ash);

} // namespace fluewright::combustion
