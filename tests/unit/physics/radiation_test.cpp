#include "catch.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/physics/flue_gas.hpp"
#include "fluewright/physics/gas_radiation.hpp"

#include <algorithm>
#include <cmath>

using namespace fluewright;

namespace {

struct Gas {
    double carbon_dioxide;
    double water_vapour;
};

// Wood gas at 4, 8, 12 and 16 % CO2, and gas of dry coal.
constexpr Gas gases[] = {
    {0.038, 0.040}, {0.0739, 0.0765}, {0.1067, 0.1107}, {0.14, 0.15}, {0.079, 0.021}};

gas_radiation::Path path_of(const Gas& gas, double diameter_m) {
    return {.carbon_dioxide = gas.carbon_dioxide,
            .water_vapour = gas.water_vapour,
            .length_m = gas_radiation::beam_length_over_diameter * diameter_m,
            .pressure_pa = constants::standard_pressure_pa};
}

} // namespace

TEST_CASE("the fit of emission keeps its stated accuracy in every stove pipe") {
    double worst_emissivity = 0.0;
    double worst_flux = 0.0;
    double worst_flux_of_emission = 0.0;
    for (const Gas& gas : gases) {
        for (const double diameter_m : {0.08, 0.12, 0.15, 0.2, 0.3, 0.4}) {
            const auto path = path_of(gas, diameter_m);
            const EmissionFit fit(
                gas.carbon_dioxide, gas.water_vapour, diameter_m, constants::standard_pressure_pa);
            for (double t = 300.0; t <= 1450.0; t += 23.0) {
                worst_emissivity = std::max(
                    worst_emissivity,
                    std::abs(fit.emissivity(t) / gas_radiation::emissivity(path, t) - 1.0));
                for (const double wall_share : {0.2, 0.4, 0.6, 0.8, 0.9}) {
                    const double wall = 280.0 + wall_share * (t - 280.0);
                    const double exact = gas_radiation::flux_w_m2(path, 0.85, t, wall);
                    const double error = std::abs(fit.flux_w_m2(0.85, t, wall) - exact);
                    const double emission = gas_radiation::emissivity(path, t)
                                            * constants::stefan_boltzmann_w_m2k4 * t * t * t * t;
                    worst_flux_of_emission = std::max(worst_flux_of_emission, error / emission);
                    if (wall_share <= 0.8) {
                        worst_flux = std::max(worst_flux, error / std::abs(exact));
                    }
                }
            }
        }
    }
    INFO("emissivity " << worst_emissivity << " flux " << worst_flux << " of emission "
                       << worst_flux_of_emission);
    CHECK(worst_emissivity < 0.002);
    CHECK(worst_flux < 0.008);
    CHECK(worst_flux_of_emission < 0.003);
}

TEST_CASE("one fit serves gas diluted with air") {
    const auto worst_at = [](double undiluted) {
        double worst = 0.0;
        for (const Gas& gas : gases) {
            for (const double diameter_m : {0.08, 0.15, 0.4}) {
                const EmissionFit fit(gas.carbon_dioxide,
                                      gas.water_vapour,
                                      diameter_m,
                                      constants::standard_pressure_pa);
                const auto path = path_of(
                    {undiluted * gas.carbon_dioxide, undiluted * gas.water_vapour}, diameter_m);
                for (double t = 300.0; t <= 1450.0; t += 23.0) {
                    const double exact = gas_radiation::emissivity(path, t);
                    const double ours = fit.emissivity(t, std::log(undiluted));
                    worst = std::max(worst, std::abs(ours / exact - 1.0));
                    const double wall = 0.5 * (280.0 + t);
                    const double taken = gas_radiation::absorptivity(path, t, wall);
                    const double taken_fit = fit.absorptivity(t, wall, std::log(undiluted));
                    worst = std::max(worst, std::abs(taken_fit / taken - 1.0));
                }
            }
        }
        return worst;
    };
    CHECK(worst_at(1.0) < 0.008);
    CHECK(worst_at(0.8) < 0.015);
    CHECK(worst_at(0.5) < 0.033);
    CHECK(worst_at(0.15) < 0.056);
}

TEST_CASE("gas without carbon dioxide and water is clear") {
    const EmissionFit clear(0.0, 0.0, 0.15, constants::standard_pressure_pa);
    REQUIRE(clear.emissivity(600.0) == 0.0);
    REQUIRE(clear.flux_w_m2(0.8, 600.0, 400.0) == 0.0);
    REQUIRE(gas_radiation::emissivity(path_of({0.0, 0.0}, 0.15), 600.0) == 0.0);
}

TEST_CASE("emissivity grows with path and stays below one") {
    for (const Gas& gas : gases) {
        for (double t = 300.0; t < 1450.0; t += 50.0) {
            double before = 0.0;
            for (double diameter_m = 0.05; diameter_m < 1.0; diameter_m *= 1.1) {
                const double now = gas_radiation::emissivity(path_of(gas, diameter_m), t);
                REQUIRE(now > before);
                REQUIRE(now < 1.0);
                before = now;
            }
        }
    }
}

TEST_CASE("gas and wall at one temperature exchange nothing") {
    for (const Gas& gas : gases) {
        const auto path = path_of(gas, 0.15);
        for (double t = 300.0; t < 1450.0; t += 50.0) {
            const double emission = std::pow(t, 4.0) * constants::stefan_boltzmann_w_m2k4;
            REQUIRE(std::abs(gas_radiation::flux_w_m2(path, 0.8, t, t)) < 1e-12 * emission);
            REQUIRE(gas_radiation::flux_w_m2(path, 0.8, t + 50.0, t) > 0.0);
        }
    }
}
