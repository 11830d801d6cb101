#include "fluewright/core/numeric/cube_root.hpp"
#include "fluewright/core/numeric/tenth_root.hpp"
#include "fluewright/physics/convection.hpp"
#include "fluewright/physics/fittings.hpp"
#include "model/march/wall_balance.hpp"
#include "plain_run.hpp"

#include <cmath>
#include <numbers>

using namespace fluewright;

namespace {

double density_kg_m3(const Case& c, double temperature_k) {
    return c.air_pressure_pa / (c.gas_high().products().gas_constant_j_kgk * temperature_k);
}

double viscosity_pa_s(const Case& c, double temperature_k) {
    return c.gas_high().products().viscosity_pa_s(gas_fit_range.u_of(temperature_k));
}

double area_m2(double diameter_m) {
    return std::numbers::pi / 4.0 * diameter_m * diameter_m;
}

} // namespace

// With no heat lost the column is isothermal; its weight and that of the outdoor air follow from
// p = p0 exp(-g z / (R T)).
TEST_CASE("isothermal stack without friction") {
    const double height_m = GENERATE(0.5, 5.0, 10.0);
    const double gas_k = GENERATE(350.0, 600.0, 1000.0);
    const Case c = plain::resolved(plain::stack(height_m, 0.2, plain::adiabatic_m2k_w));
    const FlueModel model = plain::burning(c);
    const MarchResult m = model.solve(plain::gas(1e-4, gas_k));
    const double outdoor = model.surroundings().outdoor_density_kg_m3;
    const double p = c.air_pressure_pa;
    const double head = constants::gravity_m_s2 * height_m / p;
    const double exact_pa =
        p * (std::exp(-density_kg_m3(c, gas_k) * head) - std::exp(-outdoor * head));
    CHECK(m.buoyancy_pa == Approx(exact_pa).epsilon(plain::closed_form));
    CHECK(m.top_temperature_k == Approx(gas_k).epsilon(1e-6));
    CHECK(model.draft_pa(m) == Approx(exact_pa).epsilon(plain::closed_form));
}

// A resistance beside which both surface coefficients vanish makes the overall one constant:
// (T - T_a)/(T_0 - T_a) = exp(-P L / (m cp R)).
TEST_CASE("cooling under a constant coefficient is exponential") {
    const double resistance = 3000.0;
    const double transfer_units = GENERATE(0.1, 1.0, 3.0);
    const double diameter_m = 0.15;
    const double height_m = 10.0;
    Case c = plain::resolved(plain::stack(height_m, diameter_m, plain::adiabatic_m2k_w));
    plain::set_resistance(c, resistance);
    const double ambient_k = 293.15;
    const double start_k = 297.15; // so near that cp is constant
    const double cp = c.gas_high().products().specific_heat_j_kgk(gas_fit_range.u_of(295.0));
    const double flow_kg_s =
        std::numbers::pi * diameter_m * height_m / (transfer_units * cp * resistance);
    const MarchResult m = plain::burning(c).solve(plain::gas(flow_kg_s, start_k));
    const double left = (m.top_temperature_k - ambient_k) / (start_k - ambient_k);
    CHECK(left == Approx(std::exp(-transfer_units)).epsilon(plain::closed_form));
}

// Beside a heater the excess e over the room obeys e' = -(N/L) (e - d(x)), so that its end is
// exp(-N) (e_0 + integral of N/L d(x) exp(N x/L)).   [theory eq. 74]
TEST_CASE("a heater warms what is round the pipe on its collar") {
    const double resistance = 3000.0;
    const double transfer_units = GENERATE(0.1, 1.0, 3.0);
    const double diameter_m = 0.15;
    const double height_m = 10.0;
    const double share = 0.16;
    Case c = plain::resolved(plain::stack(height_m, diameter_m, plain::adiabatic_m2k_w));
    c.appliance.warmed_pipe_share = share;
    plain::set_resistance(c, resistance);
    const double room_k = 293.15;
    const double start_k = 297.15;
    const double cp = c.gas_high().products().specific_heat_j_kgk(gas_fit_range.u_of(295.0));
    const double flow_kg_s =
        std::numbers::pi * diameter_m * height_m / (transfer_units * cp * resistance);
    const MarchResult m = plain::burning(c).solve(plain::gas(flow_kg_s, start_k));
    const double left = (m.top_temperature_k - room_k) / (start_k - room_k);
    double gained = 0.0;
    constexpr int slices = 20000;
    for (int i = 0; i < slices; ++i) {
        const double along = (i + 0.5) / slices;
        const double reach = along * height_m / 0.5;
        gained += transfer_units * share / (1.0 + reach * reach) * std::exp(transfer_units * along)
                  / slices;
    }
    CHECK(left == Approx(std::exp(-transfer_units) * (1.0 + gained)).epsilon(1e-3));
    c.shelter = Shelter::outdoors; // where the wind carries the warmth off
    const MarchResult bare = plain::burning(c).solve(plain::gas(flow_kg_s, start_k));
    CHECK(bare.top_temperature_k < m.top_temperature_k);
}

TEST_CASE("laminar pipe obeys Hagen and Poiseuille") {
    const double diameter_m = GENERATE(0.08, 0.15);
    const Case c = plain::resolved(plain::stack(20.0, diameter_m, plain::adiabatic_m2k_w));
    const double gas_k = 500.0;
    const double flow_kg_s = 5e-5;
    const MarchResult m = plain::burning(c).solve(plain::gas(flow_kg_s, gas_k));
    const double velocity = flow_kg_s / (density_kg_m3(c, gas_k) * area_m2(diameter_m));
    const double exact_pa =
        32.0 * viscosity_pa_s(c, gas_k) * 20.0 * velocity / (diameter_m * diameter_m);
    CHECK(m.friction_pa == Approx(exact_pa).epsilon(plain::closed_form));
}

TEST_CASE("a joint leaks like an orifice") {
    Case c = plain::resolved(plain::stack(3.0, 0.15, plain::adiabatic_m2k_w));
    const double slit_m2 = 1e-4;
    c.sections[1].joint_leak_m2 = slit_m2;
    const FlueModel model = plain::burning(c);
    SECTION("air comes in below the room's pressure") {
        const double below_pa = 10.0;
        const MarchResult m = model.march(plain::gas(5e-3, 500.0), -below_pa);
        const double air = model.surroundings().density_kg_m3[0];
        CHECK(
            m.leak_in_kg_s
            == Approx(0.6 * slit_m2 * std::sqrt(2.0 * air * below_pa)).epsilon(plain::closed_form));
        CHECK(m.top_air_share == Approx(m.leak_in_kg_s / m.top_flow_kg_s));
    }
    SECTION("smoke goes out above it") {
        const double above_pa = 4.0;
        const MarchResult m = model.march(plain::gas(5e-3, 500.0), above_pa);
        CHECK(m.leak_out_kg_s
              == Approx(0.6 * slit_m2 * std::sqrt(2.0 * density_kg_m3(c, 500.0) * above_pa))
                     .epsilon(plain::closed_form));
    }
}

TEST_CASE("an obstruction takes its share of the velocity head") {
    Installation in = plain::stack(3.0, 0.15, plain::adiabatic_m2k_w);
    Part plate;
    plate.part = PartKind::obstruction;
    plate.blocked = 0.4;
    in.run.push_back(plate);
    const Case c = plain::resolved(in);
    const double flow_kg_s = 8e-3;
    const MarchResult m = plain::burning(c).solve(plain::gas(flow_kg_s, 500.0));
    const double flux = flow_kg_s / area_m2(0.15);
    const double exact_pa =
        fittings::obstruction(0.6) * 0.5 * flux * flux / density_kg_m3(c, 500.0);
    CHECK(m.fittings_pa == Approx(exact_pa).epsilon(plain::closed_form));
}

// Borda and Carnot: the static pressure rises by rho v1^2 a (1 - a), a being small over large.
TEST_CASE("a sudden enlargement gives back what momentum leaves") {
    Installation in = plain::stack(2.0, 0.12, plain::adiabatic_m2k_w);
    Part wide = in.run.front();
    wide.diameter_m = 0.18;
    in.run.push_back(wide);
    const Case c = plain::resolved(in);
    const FlueModel model = plain::burning(c);
    const double flow_kg_s = 1e-2;
    std::vector<Station> stations(model.station_count());
    model.solve(plain::gas(flow_kg_s, 500.0), stations);
    std::size_t step = 0;
    for (std::size_t i = 0; i < c.sections.size(); ++i) {
        step = c.sections[i].kind == PartKind::increaser ? i : step;
    }
    REQUIRE(step > 0);
    const double flux = flow_kg_s / area_m2(0.12);
    const double a = area_m2(0.12) / area_m2(0.18);
    const double exact_pa = flux * flux / density_kg_m3(c, 500.0) * a * (1.0 - a);
    CHECK(stations[step + 1].pressure_pa - stations[step].pressure_pa
          == Approx(exact_pa).epsilon(plain::closed_form));
}

TEST_CASE("the profile of a tight run is the sums, section by section") {
    const Case c = plain::resolved(plain::stack(6.0, 0.15, 0.05));
    const FlueModel model = plain::burning(c);
    std::vector<Station> stations(model.station_count());
    const MarchResult m = model.solve(plain::gas(8e-3, 600.0), stations);
    CHECK(stations.front().pressure_pa == Approx(m.outlet_pressure_pa));
    CHECK(stations.back().pressure_pa == Approx(m.top_pressure_pa).margin(1e-9));
    CHECK(stations.back().height_m == Approx(6.0));
    CHECK(stations.back().gas_temperature_k == m.top_temperature_k);
    CHECK(stations.back().inner_wall_k < stations.back().gas_temperature_k);
}

TEST_CASE("a model taken over to other air is the model made for it") {
    Installation in = plain::stack(6.0, 0.15, 0.05);
    in.run.front().zone = Zone::outdoors;
    Weather frost = in.site.weather.front();
    frost.name = "frost";
    frost.outdoor_temperature_k = 253.15;
    frost.wind_m_s = 4.0;
    in.site.weather.push_back(frost);
    const Case c = plain::resolved(in);
    const FlueModel calm = plain::burning(c, 0);
    const FlueModel fresh = plain::burning(c, 1);
    const FlueModel taken(calm, surroundings_of(c, 1, Fire::burning));
    const GasStream stream = plain::gas(8e-3, 600.0);
    CHECK(taken.draft_pa(taken.solve(stream)) == fresh.draft_pa(fresh.solve(stream)));
    CHECK(taken.draft_pa(taken.solve(stream)) != calm.draft_pa(calm.solve(stream)));
}

TEST_CASE("the two ends of the inside coefficient lie on both sides of the usual one") {
    Installation in = plain::stack(5.0, 0.15, 0.01);
    const double flow_kg_s = GENERATE(4e-3, 8e-3, 1.6e-2);
    const auto drawn = [&](InsideHeat heat, int cells_factor) {
        Case c = plain::resolved(in);
        c.inside_heat = heat;
        c.cells_factor = cells_factor;
        const FlueModel model = plain::burning(c);
        return model.solve(plain::gas(flow_kg_s, 600.0));
    };
    const MarchResult least = drawn(InsideHeat::european_floor, 1);
    const MarchResult usual = drawn(InsideHeat::disturbed, 1);
    const MarchResult most = drawn(InsideHeat::opposed_upper, 1);
    CHECK(least.heat_loss_w < usual.heat_loss_w);
    CHECK(usual.heat_loss_w < most.heat_loss_w);
    CHECK(least.buoyancy_pa > usual.buoyancy_pa);
    CHECK(usual.buoyancy_pa > most.buoyancy_pa);
    const MarchResult fine = drawn(InsideHeat::opposed_upper, 8);
    CHECK(most.heat_loss_w == Approx(fine.heat_loss_w).epsilon(plain::closed_form));
    CHECK(most.buoyancy_pa == Approx(fine.buoyancy_pa).epsilon(plain::closed_form));
}

// Where the gas is as warm as the wall nothing opposes, and the balance is that of forced flow.
TEST_CASE("opposed flow falls back to forced flow without buoyancy") {
    const double forced = 7.0;
    WallBalance balance{};
    balance.gas_k = 500.0;
    balance.forced_w_m2k = forced;
    balance.opposed_per_k = 0.05;
    CHECK(balance.carried_at(0.0).w_m2k == Approx(forced));
    const WallBalance::Carried at = balance.carried_at(100.0);
    CHECK(at.w_m2k == Approx(forced * std::pow(6.0, 0.31)));
    const double wider = balance.carried_at(100.1).w_m2k - balance.carried_at(99.9).w_m2k;
    CHECK(at.growth_w_m2k == Approx(100.0 * wider / 0.2).epsilon(1e-4));
}

// The fast forms the march uses, held to the slow ones of physics.
TEST_CASE("floored pipe flow with one power is the published form") {
    const double re = GENERATE(10.0, 500.0, 2000.0, 2300.0, 3000.0, 8000.0, 5e4);
    const double pr = 0.71;
    CHECK(convection::pipe_gnielinski_gas_floored(re) * std::pow(pr, 0.4)
          == Approx(convection::pipe_gnielinski_gas_1976(convection::floored_reynolds(re), pr))
                 .epsilon(1e-9));
}

TEST_CASE("coefficients in air and on a tall wall are those of their general forms") {
    const double ra = GENERATE(1e2, 1e5, 1e9, 1e12);
    CHECK(convection::vertical_plate_in_air(ra)
          == Approx(convection::vertical_plate_churchill_1975(ra, 0.70)).epsilon(1e-12));
    CHECK(convection::horizontal_cylinder_in_air(ra)
          == Approx(convection::horizontal_cylinder_churchill_1975(ra, 0.70)).epsilon(1e-12));
    const double re = ra / 1e3;
    CHECK(convection::cross_wind_in_air(re)
          == Approx(convection::cross_wind_churchill_1977(re, 0.70)).epsilon(1e-9));
    CHECK(convection::tall_wall_factor_gas
          == Approx(convection::tall_wall_factor(0.72)).epsilon(1e-12));
}

TEST_CASE("roots by integer arithmetic and Halley's steps") {
    CHECK(cube_root(0.0) == 0.0);
    for (double x = 1e-60; x < 1e60; x *= 1.7) {
        CHECK(cube_root(x) == Approx(std::cbrt(x)).epsilon(2e-14));
        CHECK(tenth_root(x) == Approx(std::pow(x, 0.1)).epsilon(1e-9));
    }
}

TEST_CASE("conductivity times the power of the Prandtl number is fitted as its factors are") {
    const Case c = plain::resolved(plain::stack(3.0, 0.15, 1.0));
    const double share = GENERATE(0.0, 0.3, 0.9);
    const GasFit fit = c.gas_high().diluted(share);
    for (double t = 240.0; t < 1400.0; t += 40.0) {
        const double u = gas_fit_range.u_of(t);
        const double pr =
            fit.specific_heat_j_kgk(u) * fit.viscosity_pa_s(u) / fit.conductivity_w_mk(u);
        CHECK(fit.conductivity_prandtl_w_mk(u)
              == Approx(fit.conductivity_w_mk(u) * std::pow(pr, 0.4)).epsilon(1e-3));
    }
}

TEST_CASE("the slopes of the absorptivity are its derivatives") {
    const EmissionFit fit(0.08, 0.09, 0.15, 101325.0);
    const double wall_k = GENERATE(280.0, 400.0, 700.0);
    const double step_k = 0.01;
    const double up = fit.absorptivity(800.0, wall_k + step_k, -0.4);
    const double down = fit.absorptivity(800.0, wall_k - step_k, -0.4);
    CHECK(fit.absorbed(800.0, wall_k, -0.4).log_slope_per_k
          == Approx(std::log(up / down) / (2.0 * step_k)).epsilon(1e-6));
    const double hotter = fit.absorptivity(800.0 + step_k, wall_k, -0.4);
    const double cooler = fit.absorptivity(800.0 - step_k, wall_k, -0.4);
    CHECK(fit.absorbed(800.0, wall_k, -0.4).log_slope_per_gas_k
          == Approx(std::log(hotter / cooler) / (2.0 * step_k)).epsilon(1e-6));
}

TEST_CASE("the wall takes from the gas what it gives outside") {
    const Case c = plain::resolved(plain::stack(3.0, 0.15, 0.05));
    const WallHeat outside({.wall = &c.walls[c.sections[1].wall],
                            .inside_diameter_m = 0.15,
                            .ambient_k = 293.15,
                            .air_pressure_pa = 101325.0,
                            .wind_m_s = 0.0,
                            .height_m = 3.0,
                            .upright = true,
                            .rectangular = false});
    const EmissionFit emission(0.08, 0.09, 0.15, 101325.0);
    const double gas_k = GENERATE(250.0, 320.0, 600.0, 1100.0);
    WallBalance balance{.outside = &outside,
                        .emission = &emission,
                        .log_path = -0.2,
                        .radiating_w_m2k4 = 5.4e-8,
                        .gas_k = gas_k,
                        .forced_w_m2k = 9.0,
                        .natural_cubed_w3_m6k4 = 3.0};
    const double gas_4 = std::pow(gas_k, 4.0);
    for (const double guess_k : {200.0, 300.0, gas_k, 1300.0}) {
        const WallBalance::Answer answer = balance.solve(guess_k);
        const double difference_k = gas_k - answer.inner_k;
        const double inside = std::cbrt(729.0 + 3.0 * std::abs(difference_k)) * difference_k
                              + 5.4e-8
                                    * (emission.emissivity(gas_k, -0.2) * gas_4
                                       - emission.absorptivity(gas_k, answer.inner_k, -0.2)
                                             * std::pow(answer.inner_k, 4.0));
        // The absorptivity may be carried over some kelvins by its slopes.
        CHECK(answer.flux_w_m2 == Approx(inside).epsilon(3e-4).margin(1e-3));
        CHECK(answer.flux_w_m2 == Approx(outside.at(answer.inner_k).flux_w_m2).epsilon(1e-5));
    }
}
