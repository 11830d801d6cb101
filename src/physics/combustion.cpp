#include "fluewright/physics/combustion.hpp"

#include "fluewright/core/constants.hpp"

namespace fluewright::combustion {
namespace {

// Atomic masses [kg/mol], IUPAC abridged values.
constexpr double carbon_kg_mol = 12.011e-3;
constexpr double hydrogen_kg_mol = 1.00794e-3;
constexpr double oxygen_kg_mol = 15.9994e-3;
constexpr double nitrogen_kg_mol = 14.0067e-3;
constexpr double sulphur_kg_mol = 32.065e-3;
constexpr double water_per_hydrogen_kg_kg = 8.937;

constexpr const MoleFractions& air = mixture::dry_air;

constexpr double air_sum() {
    double sum = 0.0;
    for (const double x : air) {
        sum += x;
    }
    return sum;
}

/// Share of a gas in dry air; the printed percentages sum to 1 only after rounding.
constexpr double in_air(Species s) {
    return air[at(s)] / air_sum();
}

/// Moles of each element per kg of dry fuel, and the oxygen its complete combustion takes.
struct Moles {
    double carbon;
    double hydrogen;
    double nitrogen;
    double sulphur;
    double oxygen_needed; ///< mol O2
    double air_needed;    ///< mol dry air
    /// Dry gas less the dry air it came from: dry gas = dry_offset + air_ratio air_needed.
    double dry_offset;
};

Moles moles_of(const FuelAnalysis& fuel) {
    Moles m{};
    m.carbon = fuel.carbon / carbon_kg_mol;
    m.hydrogen = fuel.hydrogen / hydrogen_kg_mol;
    m.nitrogen = fuel.nitrogen / nitrogen_kg_mol;
    m.sulphur = fuel.sulphur / sulphur_kg_mol;
    m.oxygen_needed = m.carbon + m.hydrogen / 4.0 + m.sulphur - fuel.oxygen / oxygen_kg_mol / 2.0;
    m.air_needed = m.oxygen_needed / in_air(Species::o2);
    m.dry_offset = m.carbon + m.sulphur + m.nitrogen / 2.0 - m.oxygen_needed;
    return m;
}

double air_molar_mass_kg_mol() {
    return mixture::molar_mass_kg_mol(air) / air_sum();
}

} // namespace

Products burn(const FuelAnalysis& fuel, const Burn& how) {
    const Moles m = moles_of(fuel);
    const double dry_share = 1.0 - how.moisture;
    const double air_moles = how.air_ratio * m.air_needed * dry_share;
    const double air_kg = air_moles * air_molar_mass_kg_mol();
    const double water_molar_mass = species::molar_mass_kg_mol[at(Species::h2o)];

    MoleFractions moles{};
    moles[at(Species::n2)] = dry_share * m.nitrogen / 2.0 + air_moles * in_air(Species::n2);
    moles[at(Species::o2)] = dry_share * (how.air_ratio - 1.0) * m.oxygen_needed;
    moles[at(Species::co2)] = dry_share * m.carbon + air_moles * in_air(Species::co2);
    moles[at(Species::h2o)] = dry_share * m.hydrogen / 2.0
                              + (how.moisture + how.air_humidity_kg_kg * air_kg) / water_molar_mass;
    moles[at(Species::ar)] = air_moles * in_air(Species::ar);
    moles[at(Species::so2)] = dry_share * m.sulphur;

    double total = 0.0;
    double mass = 0.0;
    for (std::size_t i = 0; i < species_count; ++i) {
        total += moles[i];
        mass += moles[i] * species::molar_mass_kg_mol[i];
    }
    const double dry_total = total - moles[at(Species::h2o)];
    Products products{};
    for (std::size_t i = 0; i < species_count; ++i) {
        products.wet[i] = moles[i] / total;
    }
    products.gas_per_fuel_kg_kg = mass;
    products.dry_air_per_fuel_kg_kg = air_kg;
    products.carbon_dioxide_dry = moles[at(Species::co2)] / dry_total;
    products.oxygen_dry = moles[at(Species::o2)] / dry_total;
    return products;
}

double air_ratio_for_gas(const FuelAnalysis& fuel, double moisture, double gas_per_fuel_kg_kg) {
    const auto gas_at = [&](double air_ratio) {
        return burn(fuel, {.moisture = moisture, .air_ratio = air_ratio, .air_humidity_kg_kg = 0.0})
            .gas_per_fuel_kg_kg;
    };
    const double least = gas_at(1.0);
    return 1.0 + (gas_per_fuel_kg_kg - least) / (gas_at(2.0) - least);
}

double stoichiometric_air_kg_kg(const FuelAnalysis& fuel, double moisture) {
    return moles_of(fuel).air_needed * air_molar_mass_kg_mol() * (1.0 - moisture);
}

double greatest_carbon_dioxide(const FuelAnalysis& fuel) {
    const Moles m = moles_of(fuel);
    return (m.carbon + m.air_needed * in_air(Species::co2)) / (m.dry_offset + m.air_needed);
}

double air_ratio_for_carbon_dioxide(const FuelAnalysis& fuel, double carbon_dioxide_dry) {
    const Moles m = moles_of(fuel);
    return (m.carbon - carbon_dioxide_dry * m.dry_offset)
           / (m.air_needed * (carbon_dioxide_dry - in_air(Species::co2)));
}

double air_ratio_for_oxygen(const FuelAnalysis& fuel, double oxygen_dry) {
    const Moles m = moles_of(fuel);
    return (m.oxygen_needed + oxygen_dry * m.dry_offset)
           / (m.oxygen_needed - oxygen_dry * m.air_needed);
}

double gross_heating_value_j_kg(const FuelAnalysis& fuel, double moisture) {
    return fuel.gross_heating_value_dry_j_kg * (1.0 - moisture);
}

double net_heating_value_j_kg(const FuelAnalysis& fuel, double moisture) {
    const double water_kg_kg =
        moisture + water_per_hydrogen_kg_kg * fuel.hydrogen * (1.0 - moisture);
    return gross_heating_value_j_kg(fuel, moisture)
           - constants::water_latent_heat_25c_j_kg * water_kg_kg;
}

double gross_heating_value_channiwala_2002_j_kg(const FuelAnalysis& fuel, double ash) {
    // The published coefficients are per mass per cent; mass shares carry the factor 100.
    return 1e6
           * (34.91 * fuel.carbon + 117.83 * fuel.hydrogen + 10.05 * fuel.sulphur
              - 10.34 * fuel.oxygen - 1.51 * fuel.nitrogen - 2.11 * ash);
}

} // namespace fluewright::combustion
