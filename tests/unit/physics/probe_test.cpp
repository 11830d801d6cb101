#include "../catch.hpp"
#include "fluewright/core/constants.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/probe.hpp"

#include <cmath>

using namespace fluewright;

namespace {

double glow_w_m2(double emissivity, double hot_k, double cold_k) {
    return emissivity * constants::stefan_boltzmann_w_m2k4
           * (std::pow(hot_k, 4.0) - std::pow(cold_k, 4.0));
}

} // namespace

TEST_CASE("a probe that gives nothing to the wall shows the gas", "[probe]") {
    const double gas_k = GENERATE(350.0, 600.0, 1200.0);
    CHECK(probe::reading_k(gas_k, 300.0, 60.0, 0.0) == Approx(gas_k)); // no radiation
    CHECK(probe::reading_k(gas_k, gas_k, 60.0, 0.9) == Approx(gas_k)); // wall as warm as the gas
    CHECK(probe::reading_k(gas_k, 300.0, 1e12, 0.9) == Approx(gas_k)); // endless stream
    CHECK(probe::reading_k(gas_k, 300.0, 1e-9, 0.9) == Approx(300.0).margin(1e-3)); // none
}

// Which gas a reading belongs to is written down at once: T_gas = T + e sigma (T^4 - T_w^4)/h.
TEST_CASE("a reading is the root of its balance", "[probe]") {
    const double shown_k = GENERATE(320.0, 500.0, 900.0);
    const double wall_k = GENERATE(280.0, 450.0, 700.0);
    const double h = GENERATE(8.0, 70.0, 400.0);
    const double gas_k = shown_k + glow_w_m2(0.9, shown_k, wall_k) / h;
    if (gas_k > 0.0) {
        CHECK(probe::reading_k(gas_k, wall_k, h, 0.9) == Approx(shown_k).epsilon(1e-9));
    }
}

TEST_CASE("the error of a probe grows with the gas and falls with the stream", "[probe]") {
    const auto error_k = [](double gas_k, double h) {
        return gas_k - probe::reading_k(gas_k, 0.6 * gas_k, h, 0.9);
    };
    CHECK(error_k(500.0, 60.0) > 0.0);
    CHECK(error_k(700.0, 60.0) > error_k(500.0, 60.0));
    CHECK(error_k(700.0, 120.0) < error_k(700.0, 60.0));
}

// By hand: 1 m/s of air at 600 K (0.588 kg/m3, 3.02e-5 Pa s, 0.0456 W/mK, Pr 0.70) across 3 mm is
// Re 58.4 and Nu 3.99.
TEST_CASE("heat to a stem is that of a cylinder across the stream", "[probe]") {
    const probe::CrossFlow flow{.velocity_m_s = 1.0,
                                .density_kg_m3 = 0.588,
                                .viscosity_pa_s = 3.02e-5,
                                .conductivity_w_mk = 0.0456,
                                .prandtl = 0.70};
    const double re = 0.588 * 0.003 / 3.02e-5;
    CHECK(probe::coefficient_w_m2k(0.003, flow)
          == Approx(convection::cross_wind_churchill_1977(re, 0.70) * 0.0456 / 0.003));
    CHECK(probe::coefficient_w_m2k(0.003, flow) == Approx(60.7).epsilon(0.01));
    // Still gas: only the constant of the correlation is left.
    probe::CrossFlow still = flow;
    still.velocity_m_s = 0.0;
    CHECK(probe::coefficient_w_m2k(0.003, still) == Approx(0.3 * 0.0456 / 0.003));
}

// Stems of 1.5 to 4.8 mm in gas of 150 to 400 degC at 1 to 2.5 m/s, beside bare pipe.
TEST_CASE("the error of a bare probe in stovepipe is some 4 to 80 K", "[probe]") {
    const auto error_k = [](double stem_m, double gas_k, double wall_k, double velocity_m_s) {
        const probe::CrossFlow flow{.velocity_m_s = velocity_m_s,
                                    .density_kg_m3 = 353.0 / gas_k,
                                    .viscosity_pa_s = 3.02e-5 * std::pow(gas_k / 600.0, 0.7),
                                    .conductivity_w_mk = 0.0456 * gas_k / 600.0,
                                    .prandtl = 0.70};
        const double h = probe::coefficient_w_m2k(stem_m, flow);
        return gas_k - probe::reading_k(gas_k, wall_k, h, 0.9);
    };
    CHECK(error_k(0.0015, 423.15, 345.0, 1.0) > 4.0);
    CHECK(error_k(0.0015, 423.15, 345.0, 1.0) < 12.0);
    CHECK(error_k(0.0048, 673.15, 455.0, 1.5) > 40.0);
    CHECK(error_k(0.0048, 673.15, 455.0, 1.5) < 85.0);
}
