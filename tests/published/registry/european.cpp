#include "fluewright/core/constants.hpp"
#include "fluewright/model/standards/en13384.hpp"
#include "fluewright/physics/european_chimney.hpp"
#include "registry.hpp"

namespace published {
namespace {

using namespace fluewright;

combustion::FuelAnalysis fuel_of(const Inputs& in) {
    return {.carbon = in.number("c") / 100.0,
            .hydrogen = in.number("h") / 100.0,
            .oxygen = in.number_or("o", 0.0) / 100.0,
            .nitrogen = in.number_or("n", 0.0) / 100.0,
            .sulphur = in.number_or("s", 0.0) / 100.0,
            .gross_heating_value_dry_j_kg = in.number("gross_mj_kg") * 1e6};
}

/// A connector and a chimney of 150 mm, gas of constant cp and R: the example of the tables.
struct Chain {
    european::Stretch connector{};
    european::Stretch chimney{};
    european::StretchTerms in_connector{};
    european::StretchTerms in_chimney{};
    double outdoor_density_kg_m3{};
    double outdoor_k{};

    explicit Chain(const Inputs& in) {
        GasFit gas;
        gas.gas_constant_j_kgk = 287.0;
        gas.specific_heat[0] = 1090.0;
        outdoor_k = in.number("outdoor_k");
        const double pressure_pa = european::air_pressure_pa(97000.0, 200.0, 288.15);
        outdoor_density_kg_m3 = pressure_pa / (european::air_gas_constant_j_kgk * outdoor_k);
        connector = {.flow_kg_s = 7e-3,
                     .entry_k = 573.15,
                     .ambient_k = in.number("connector_ambient_k"),
                     .air_pressure_pa = pressure_pa,
                     .outdoor_density_kg_m3 = outdoor_density_kg_m3,
                     .length_m = 1.8,
                     .rise_m = 1.2,
                     .entry_length_m = 1.8,
                     .diameter_m = 0.15,
                     .area_m2 = constants::pi * 0.0225 / 4.0,
                     .perimeter_m = constants::pi * 0.15,
                     .roughness_m = 1e-3,
                     .zeta = 1.2,
                     .outside_diameter_m = 0.1512,
                     .resistance_m2k_w = 0.0,
                     .outside_w_m2k = 8.0,
                     .warm_factor = in.number("sh")};
        in_connector = european::solve_stretch(connector, gas);
        chimney = connector;
        chimney.entry_k = in_connector.outlet_k;
        chimney.ambient_k = in.number("chimney_ambient_k");
        chimney.length_m = chimney.rise_m = chimney.entry_length_m = 5.0;
        chimney.zeta = 2.2;
        chimney.outside_diameter_m = 0.210;
        chimney.resistance_m2k_w = 0.40;
        in_chimney = european::solve_stretch(chimney, gas);
    }

    [[nodiscard]] double pz_pa() const {
        return in_chimney.draught_pa - safety * in_chimney.resistance_pa;
    }

    [[nodiscard]] double pfv_pa() const {
        return safety * in_connector.resistance_pa - in_connector.draught_pa;
    }

    [[nodiscard]] double tiob_k() const {
        const double overall = european::overall_coefficient_w_m2k(
            {.inside_w_m2k = in_chimney.inside_w_m2k,
             .resistance_m2k_w = chimney.resistance_m2k_w,
             .inside_over_outside_diameter = chimney.diameter_m / chimney.outside_diameter_m,
             .outside_w_m2k = 23.0,
             .warm_factor = 1.0});
        return european::inner_wall_k(
            in_chimney.outlet_k, outdoor_k, overall, in_chimney.inside_w_m2k);
    }

    static constexpr double safety = 1.5;
};

void add_stretch(Registry& registry,
                 const std::string& name,
                 const std::string& quantity,
                 const std::string& unit,
                 double european::StretchTerms::*member) {
    registry[name] = {quantity, unit, [member](const Inputs& in) {
                          const Chain chain(in);
                          const bool connector = in.text("part") == "connector";
                          return (connector ? chain.in_connector : chain.in_chimney).*member;
                      }};
}

void add_chain(Registry& registry) {
    using Terms = european::StretchTerms;
    add_stretch(registry, "european_mean_k", "mean gas temperature", "K", &Terms::mean_k);
    add_stretch(registry, "european_outlet_k", "gas leaving", "K", &Terms::outlet_k);
    add_stretch(registry, "european_density", "density", "kg/m3", &Terms::density_kg_m3);
    add_stretch(registry, "european_velocity", "velocity", "m/s", &Terms::velocity_m_s);
    add_stretch(registry, "european_reynolds", "Reynolds number", "", &Terms::reynolds);
    add_stretch(registry, "european_prandtl", "Prandtl number", "", &Terms::prandtl);
    add_stretch(registry, "european_psi", "friction factor", "", &Terms::psi);
    add_stretch(registry, "european_psi_smooth", "friction factor", "", &Terms::psi_smooth);
    add_stretch(registry, "european_nusselt", "Nusselt number", "", &Terms::nusselt);
    add_stretch(
        registry, "european_alpha_i", "inside coefficient", "W/(m2 K)", &Terms::inside_w_m2k);
    add_stretch(registry, "european_k", "overall coefficient", "W/(m2 K)", &Terms::overall_w_m2k);
    add_stretch(registry, "european_cooling_number", "cooling number", "", &Terms::cooling_number);
    add_stretch(registry, "european_ph", "draught", "Pa", &Terms::draught_pa);
    add_stretch(registry, "european_pe", "resistance", "Pa", &Terms::resistance_pa);
    registry["european_pr"] = {
        "resistance with safety", "Pa", [](const Inputs& in) {
            const Chain chain(in);
            const bool connector = in.text("part") == "connector";
            return Chain::safety
                   * (connector ? chain.in_connector : chain.in_chimney).resistance_pa;
        }};
    registry["european_outdoor_density"] = {
        "density of outdoor air", "kg/m3", [](const Inputs& in) {
            static_cast<void>(in.text("part"));
            static_cast<void>(in.number("sh"));
            return Chain(in).outdoor_density_kg_m3;
        }};
    registry["european_pz"] = {
        "draught at the inlet", "Pa", [](const Inputs& in) { return Chain(in).pz_pa(); }};
    registry["european_pfv"] = {
        "need of the connector", "Pa", [](const Inputs& in) { return Chain(in).pfv_pa(); }};
    registry["european_at_collar"] = {"draught at the collar", "Pa", [](const Inputs& in) {
                                          const Chain chain(in);
                                          return chain.pz_pa() - chain.pfv_pa();
                                      }};
    registry["european_pg"] = {"change of velocity head", "Pa", [](const Inputs& in) {
                                   const Chain chain(in);
                                   return chain.in_chimney.velocity_head_pa
                                          - chain.in_connector.velocity_head_pa;
                               }};
    registry["european_tiob"] = {
        "inner wall at the top", "K", [](const Inputs& in) { return Chain(in).tiob_k(); }};
}

void add_european_formulas(Registry& registry) {
    registry["european_pl"] = {"pressure of outdoor air", "Pa", [](const Inputs& in) {
                                   return european::air_pressure_pa(
                                       97000.0, in.number("altitude_m"), in.number("outdoor_k"));
                               }};
    registry["european_fm1"] = {
        "flow factor", "g %/(kW s)", [](const Inputs& in) {
            return european::flow_factors(fuel_of(in), in.number_or("moisture_pct", 0.0) / 100.0)
                .fm1_g_pct_per_kw_s;
        }};
    registry["european_fm2"] = {
        "flow factor", "g/(kW s)", [](const Inputs& in) {
            return european::flow_factors(fuel_of(in), in.number_or("moisture_pct", 0.0) / 100.0)
                .fm2_g_per_kw_s;
        }};
    registry["european_conductivity"] = {
        "conductivity of flue gas", "mW/(m K)", [](const Inputs& in) {
            return 1e3 * european::conductivity_w_mk(in.number("t_k"));
        }};
    registry["european_viscosity"] = {"viscosity of flue gas", "uPa s", [](const Inputs& in) {
                                          return 1e6 * european::viscosity_pa_s(in.number("t_k"));
                                      }};
    const auto zeta = [&](const std::string& name, std::function<double(const Inputs&)> compute) {
        registry[name] = {"loss coefficient", "", std::move(compute)};
    };
    const auto angle = [](const Inputs& in) {
        return in.number("angle_deg") * constants::pi / 180.0;
    };
    zeta("european_bend", [angle](const Inputs& in) {
        return european::bend_zeta(angle(in), in.number("straight"));
    });
    zeta("european_tee", [angle](const Inputs& in) { return european::tee_zeta(angle(in)); });
    zeta("european_reduction",
         [](const Inputs& in) { return european::sudden_reduction_zeta(in.number("area_ratio")); });
    zeta("european_enlargement", [](const Inputs& in) {
        return european::sudden_enlargement_zeta(in.number("area_ratio"));
    });
}

} // namespace

void add_european_checks(Registry& registry) {
    add_chain(registry);
    add_european_formulas(registry);
}

} // namespace published
