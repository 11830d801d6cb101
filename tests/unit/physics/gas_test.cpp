#include "catch.hpp"
#include "fluewright/physics/flue_gas.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <utility>
#include <vector>

using namespace fluewright;

namespace {

/// Compositions a flue can see: from nearly air to wet gas at no excess air.
std::vector<MoleFractions> random_products() {
    std::mt19937 random(20240917);
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
    };
    std::vector<MoleFractions> all;
    for (int i = 0; i < 40; ++i) {
        MoleFractions x{};
        x[at(Species::co2)] = between(0.0, 0.20);
        x[at(Species::h2o)] = between(0.0, 0.25);
        x[at(Species::so2)] = between(0.0, 0.002);
        x[at(Species::ar)] = between(0.006, 0.0094);
        x[at(Species::o2)] = between(0.0, 0.20) * (1.0 - x[at(Species::co2)] / 0.2);
        double rest = 1.0;
        for (const double share : x) {
            rest -= share;
        }
        x[at(Species::n2)] = rest;
        all.push_back(x);
    }
    return all;
}

/// Ratio of the fit to the mixture rules, less one.
struct Errors {
    double specific_heat{};
    double viscosity{};
    double conductivity{};

    void see(const GasFit& fit, const MoleFractions& x, double t) {
        const double u = gas_fit_range.u_of(t);
        const auto larger = [](double& worst, double ours, double exact) {
            worst = std::max(worst, std::abs(ours / exact - 1.0));
        };
        larger(specific_heat, fit.specific_heat_j_kgk(u), mixture::specific_heat_j_kgk(x, t));
        larger(viscosity, fit.viscosity_pa_s(u), mixture::viscosity_pa_s(x, t));
        larger(conductivity, fit.conductivity_w_mk(u), mixture::conductivity_w_mk(x, t));
    }
};

} // namespace

TEST_CASE("fits stay close to the mixture rules at any dilution") {
    Errors worst;
    Errors worst_dry;
    for (const auto& products : random_products()) {
        const FlueGas gas(products, mixture::dry_air);
        for (double share = 0.0; share <= 1.0; share += 0.125) {
            const auto x = mixture::mix_by_mass(products, mixture::dry_air, share);
            const GasFit fit = gas.diluted(share);
            REQUIRE(fit.gas_constant_j_kgk
                    == Approx(constants::gas_constant_j_molk / mixture::molar_mass_kg_mol(x))
                           .epsilon(1e-12));
            REQUIRE(fit.carbon_dioxide == Approx(x[at(Species::co2)]).epsilon(1e-10));
            REQUIRE(fit.water_vapour == Approx(x[at(Species::h2o)]).epsilon(1e-10).margin(1e-15));
            for (double t = 230.0; t <= 1450.0; t += 20.0) {
                worst.see(fit, x, t);
                if (products[at(Species::h2o)] < 0.12) {
                    worst_dry.see(fit, x, t);
                }
            }
        }
    }
    INFO("cp " << worst.specific_heat << " mu " << worst.viscosity << " k " << worst.conductivity);
    CHECK(worst.specific_heat < 0.0005);
    CHECK(worst.viscosity < 0.002);
    CHECK(worst.conductivity < 0.004);
    CHECK(worst_dry.conductivity < 0.002);
}

TEST_CASE("enthalpy differences of the fit follow the mixture") {
    for (const auto& products : random_products()) {
        const FlueGas gas(products, mixture::dry_air);
        const GasFit& fit = gas.products();
        for (double t = 300.0; t <= 1400.0; t += 100.0) {
            const double ours = fit.enthalpy_j_kg(gas_fit_range.u_of(t))
                                - fit.enthalpy_j_kg(gas_fit_range.u_of(288.15));
            const double exact =
                mixture::enthalpy_j_kg(products, t) - mixture::enthalpy_j_kg(products, 288.15);
            REQUIRE(ours == Approx(exact).epsilon(0.002));
        }
    }
}

TEST_CASE("the temperature of an enthalpy is found to a billionth of a kelvin") {
    for (const auto& products : random_products()) {
        const FlueGas gas(products, mixture::dry_air);
        for (const double share : {0.0, 0.4, 1.0}) {
            const GasFit fit = gas.diluted(share);
            for (double t = 230.0; t <= 1450.0; t += 61.0) {
                const double h = fit.enthalpy_j_kg(gas_fit_range.u_of(t));
                for (const double guess : {240.0, 600.0, 1400.0}) {
                    REQUIRE(std::abs(fit.temperature_k(h, guess) - t) < 1e-9);
                }
            }
        }
    }
}

TEST_CASE("the slope of the enthalpy is the specific heat") {
    const GasFit fit = FlueGas(random_products().front(), mixture::dry_air).products();
    for (double t = 240.0; t < 1440.0; t += 50.0) {
        const auto h = [&](double at_k) { return fit.enthalpy_j_kg(gas_fit_range.u_of(at_k)); };
        REQUIRE((h(t + 0.5) - h(t - 0.5)
                 == Approx(fit.specific_heat_j_kgk(gas_fit_range.u_of(t))).epsilon(1e-6)));
    }
}

TEST_CASE("single gases: enthalpy has the specific heat as its slope and no jump at 1000 K") {
    for (std::size_t i = 0; i < species_count; ++i) {
        const auto s = static_cast<Species>(i);
        for (double t = 300.0; t < 1500.0; t += 37.0) {
            const double slope = 0.5
                                 * (species::molar_enthalpy_j_mol(s, t + 1.0)
                                    - species::molar_enthalpy_j_mol(s, t - 1.0));
            REQUIRE(slope == Approx(species::molar_cp_j_molk(s, t)).epsilon(1e-4));
        }
        REQUIRE(species::molar_cp_j_molk(s, 1000.0)
                == Approx(species::molar_cp_j_molk(s, 1000.0 + 1e-6)).epsilon(1e-5));
        REQUIRE(species::molar_enthalpy_j_mol(s, 1000.0 + 1e-9)
                == Approx(species::molar_enthalpy_j_mol(s, 1000.0)).margin(0.5));
        REQUIRE(species::conductivity_w_mk(s, 1100.0)
                == Approx(species::conductivity_w_mk(s, 1100.0 + 1e-9)).epsilon(1e-9));
    }
}

TEST_CASE("viscosity and conductivity of every gas rise with temperature") {
    for (std::size_t i = 0; i < species_count; ++i) {
        const auto s = static_cast<Species>(i);
        INFO("species " << i);
        for (double t = 230.0; t < 1500.0; t += 5.0) {
            REQUIRE(species::viscosity_pa_s(s, t + 5.0) > species::viscosity_pa_s(s, t));
            REQUIRE(species::conductivity_w_mk(s, t + 5.0) > species::conductivity_w_mk(s, t));
        }
    }
}

TEST_CASE("a mixture of one gas has that gas's properties") {
    for (std::size_t i = 0; i < species_count; ++i) {
        MoleFractions pure{};
        pure[i] = 1.0;
        const auto s = static_cast<Species>(i);
        for (const double t : {300.0, 700.0, 1200.0}) {
            REQUIRE(mixture::viscosity_pa_s(pure, t) == Approx(species::viscosity_pa_s(s, t)));
            REQUIRE(mixture::conductivity_w_mk(pure, t)
                    == Approx(species::conductivity_w_mk(s, t)));
        }
    }
}

TEST_CASE("mixing by mass keeps mass and moles") {
    const auto a = random_products().front();
    const auto mixed = mixture::mix_by_mass(a, mixture::dry_air, 0.3);
    // Moles per kg add: 1/M = (1 - s)/Ma + s/Mb.
    REQUIRE(1.0 / mixture::molar_mass_kg_mol(mixed)
            == Approx(0.7 / mixture::molar_mass_kg_mol(a)
                      + 0.3 / mixture::molar_mass_kg_mol(mixture::dry_air))
                   .epsilon(1e-5));
    REQUIRE(mixture::mix_by_mass(a, mixture::dry_air, 0.0)[0] == Approx(a[0]));
}
