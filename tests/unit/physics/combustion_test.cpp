#include "catch.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/physics/atmosphere.hpp"
#include "fluewright/physics/combustion.hpp"
#include "fluewright/physics/dew_point.hpp"

#include <array>
#include <cmath>
#include <numeric>

using namespace fluewright;

namespace {

// Analyses of red oak, bituminous coal, fuel oil and methane in mass shares of the dry fuel.
constexpr std::array<combustion::FuelAnalysis, 4> fuels{{
    {0.4996, 0.0592, 0.4377, 0.0003, 0.0001, 19.88e6},
    {0.7912, 0.0487, 0.0965, 0.0134, 0.0057, 32.31e6},
    {0.870, 0.126, 0.0, 0.0002, 0.003, 45.3e6},
    {0.7487, 0.2513, 0.0, 0.0, 0.0, 55.51e6},
}};

/// kg of one element in the gas of one kg fuel as fired.
struct Elements {
    double carbon;
    double hydrogen;
    double oxygen;
    double nitrogen;
    double sulphur;
    double argon;
};

Elements elements_of(const MoleFractions& x, double mass_kg) {
    double molar_mass = 0.0;
    for (std::size_t i = 0; i < species_count; ++i) {
        molar_mass += x[i] * species::molar_mass_kg_mol[i];
    }
    const double moles = mass_kg / molar_mass;
    const auto n = [&](Species s) { return moles * x[at(s)]; };
    return {12.011e-3 * n(Species::co2),
            2.01588e-3 * n(Species::h2o),
            15.9994e-3
                * (2.0 * n(Species::o2) + 2.0 * n(Species::co2) + n(Species::h2o)
                   + 2.0 * n(Species::so2)),
            28.0134e-3 * n(Species::n2),
            32.065e-3 * n(Species::so2),
            39.948e-3 * n(Species::ar)};
}

} // namespace

TEST_CASE("every element that goes in comes out") {
    for (const auto& fuel : fuels) {
        for (const double moisture : {0.0, 0.2, 0.5}) {
            for (const double ratio : {1.0, 1.7, 4.0}) {
                const combustion::Burn how{
                    .moisture = moisture, .air_ratio = ratio, .air_humidity_kg_kg = 0.008};
                const auto gas = combustion::burn(fuel, how);
                INFO("moisture " << moisture << " air ratio " << ratio);
                REQUIRE(std::accumulate(gas.wet.begin(), gas.wet.end(), 0.0)
                        == Approx(1.0).epsilon(1e-12));
                const double dry = 1.0 - moisture;
                const double air_kg = gas.dry_air_per_fuel_kg_kg;
                const double water_kg = moisture + how.air_humidity_kg_kg * air_kg;
                const Elements out = elements_of(gas.wet, gas.gas_per_fuel_kg_kg);
                const Elements air = elements_of(mixture::dry_air, air_kg);
                // Atomic masses and those of the gases differ in the fifth digit.
                REQUIRE(out.carbon == Approx(dry * fuel.carbon + air.carbon).epsilon(1e-4));
                REQUIRE(
                    out.hydrogen
                    == Approx(dry * fuel.hydrogen + water_kg * 2.01588 / 18.01528).epsilon(1e-4));
                REQUIRE(out.oxygen
                        == Approx(dry * fuel.oxygen + air.oxygen + water_kg * 15.9994 / 18.01528)
                               .epsilon(2e-4));
                REQUIRE(out.nitrogen == Approx(dry * fuel.nitrogen + air.nitrogen).epsilon(1e-4));
                REQUIRE(out.sulphur == Approx(dry * fuel.sulphur).epsilon(1e-3).margin(1e-12));
                REQUIRE(out.argon == Approx(air.argon).epsilon(1e-4));
                const double burnt =
                    dry
                    * (fuel.carbon + fuel.hydrogen + fuel.oxygen + fuel.nitrogen + fuel.sulphur);
                REQUIRE(gas.gas_per_fuel_kg_kg == Approx(burnt + air_kg + water_kg).epsilon(1e-4));
            }
        }
    }
}

TEST_CASE("air ratios from CO2 and from O2 undo burn()") {
    for (const auto& fuel : fuels) {
        for (const double ratio : {1.0, 1.2, 2.0, 3.5, 8.0}) {
            const auto gas = combustion::burn(fuel, {.moisture = 0.15, .air_ratio = ratio});
            REQUIRE(combustion::air_ratio_for_carbon_dioxide(fuel, gas.carbon_dioxide_dry)
                    == Approx(ratio).epsilon(1e-12));
            REQUIRE(combustion::air_ratio_for_oxygen(fuel, gas.oxygen_dry)
                    == Approx(ratio).epsilon(1e-11));
        }
        const auto tight = combustion::burn(fuel, {.moisture = 0.0, .air_ratio = 1.0});
        REQUIRE(tight.carbon_dioxide_dry == Approx(combustion::greatest_carbon_dioxide(fuel)));
        REQUIRE(tight.oxygen_dry == Approx(0.0).margin(1e-15));
        REQUIRE(tight.dry_air_per_fuel_kg_kg
                == Approx(combustion::stoichiometric_air_kg_kg(fuel, 0.0)));
    }
}

TEST_CASE("moisture changes neither the dry gas nor the air per dry fuel") {
    for (const auto& fuel : fuels) {
        const auto dry = combustion::burn(fuel, {.moisture = 0.0, .air_ratio = 2.0});
        const auto wet = combustion::burn(fuel, {.moisture = 0.4, .air_ratio = 2.0});
        REQUIRE(wet.carbon_dioxide_dry == Approx(dry.carbon_dioxide_dry).epsilon(1e-12));
        REQUIRE(wet.dry_air_per_fuel_kg_kg
                == Approx(0.6 * dry.dry_air_per_fuel_kg_kg).epsilon(1e-12));
        REQUIRE(wet.wet[at(Species::h2o)] > dry.wet[at(Species::h2o)]);
        REQUIRE(combustion::net_heating_value_j_kg(fuel, 0.4)
                < 0.6 * combustion::net_heating_value_j_kg(fuel, 0.0));
    }
}

TEST_CASE("saturation pressure and water dew point are inverses") {
    for (double t = 270.0; t < 370.0; t += 1.0) {
        REQUIRE(dew_point::water_k(dew_point::saturation_pressure_pa(t))
                == Approx(t).epsilon(1e-12));
    }
}

TEST_CASE("the acid dew point rises with acid and with water") {
    for (double water_pa = 2000.0; water_pa < 16000.0; water_pa *= 1.4) {
        for (double acid_pa = 0.02; acid_pa < 5.0; acid_pa *= 1.5) {
            const double here = dew_point::acid_k(water_pa, acid_pa);
            REQUIRE(dew_point::acid_k(water_pa, 1.1 * acid_pa) > here);
            REQUIRE(dew_point::acid_k(1.1 * water_pa, acid_pa) > here);
            REQUIRE(here > dew_point::water_k(water_pa));
        }
    }
}

TEST_CASE("moist air is lighter than dry air and keeps its vapor") {
    const double pressure = constants::standard_pressure_pa;
    for (double t = 250.0; t < 310.0; t += 5.0) {
        REQUIRE(atmosphere::density_kg_m3(pressure, t, 1.0)
                < atmosphere::density_kg_m3(pressure, t, 0.0));
        const double w = atmosphere::humidity_ratio_kg_kg(pressure, t, 0.6);
        const auto x = atmosphere::moist_air(w);
        REQUIRE(std::accumulate(x.begin(), x.end(), 0.0) == Approx(1.0).epsilon(1e-12));
        REQUIRE(x[at(Species::h2o)] * pressure
                == Approx(0.6 * dew_point::saturation_pressure_pa(t)).epsilon(1e-9));
        // The mixture's own molar mass must give the same density.
        REQUIRE(pressure * mixture::molar_mass_kg_mol(x) / (constants::gas_constant_j_molk * t)
                == Approx(atmosphere::density_kg_m3(pressure, t, 0.6)).epsilon(1e-5));
    }
}

TEST_CASE("air pressure falls steadily with height") {
    double before = 2.0 * constants::standard_pressure_pa;
    for (double z = -500.0; z <= 11000.0; z += 50.0) {
        REQUIRE(atmosphere::pressure_pa(z) < before);
        before = atmosphere::pressure_pa(z);
    }
    REQUIRE(atmosphere::pressure_pa(0.0) == Approx(constants::standard_pressure_pa));
}
