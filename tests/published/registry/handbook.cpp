#include "fluewright/model/standards/handbook.hpp"

#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "registry.hpp"

#include <stdexcept>

namespace published {
namespace {

using namespace fluewright;

constexpr double inch_m = 0.0254;
constexpr double btu_j = 1055.05585;
constexpr double hour_s = 3600.0;
constexpr double inch_water_pa = 249.089;
constexpr double inch_mercury_pa = 3386.389;
constexpr double pound_per_kbtu_kg_j = 0.45359237 / (1e3 * btu_j);

double flow_per_heat_kg_mj(const Inputs& in) {
    for (const handbook::FuelLine& row : handbook::fuel_lines()) {
        if (row.fuel == in.text("fuel")) {
            return 1e6 * handbook::flow_per_heat_kg_j(row.line, in.number("co2_pct") / 100.0);
        }
    }
    throw std::runtime_error("no line for " + in.text("fuel"));
}

/// The tables write " / " where the construction has a comma.
std::string with_commas(std::string text) {
    if (const auto place = text.find(" / "); place != std::string::npos) {
        text.replace(place, 3, ", ");
    }
    return text;
}

double transmittance(const Inputs& in) {
    for (const handbook::Transmittance& row : handbook::transmittances()) {
        if (row.construction == with_commas(in.text("construction"))) {
            return row.design_w_m2k;
        }
    }
    throw std::runtime_error("no construction " + in.text("construction"));
}

/// The row chosen for a catalog wall: what decides is its kind, its air gap and its outside.
double wall_transmittance(const Inputs& in) {
    const catalog::Wall* row = catalog::find_wall(in.text("wall"));
    if (row == nullptr) {
        throw std::runtime_error("no wall " + in.text("wall"));
    }
    WallBuild wall;
    wall.kind = row->kind;
    wall.outer_emissivity = row->outer_emissivity;
    constexpr std::string_view gap = "air gap ";
    if (const auto place = row->layers.find(gap); place != std::string_view::npos) {
        wall.layer_count = 1;
        wall.layers[0].air_gap = true;
        wall.layers[0].thickness_m =
            1e-3 * std::stod(std::string{row->layers.substr(place + gap.size())});
    }
    return handbook::transmittance_of(wall).design_w_m2k;
}

double capacity_kw(const Inputs& in) {
    return 1e-3
           * handbook::input_capacity_w(
               {.diameter_m = in.number("di_in") * inch_m,
                .flow_per_heat_kg_j = in.number("m_lb_kbtu") * pound_per_kbtu_kg_j,
                .loss_pa = in.number("loss_inwc") * inch_water_pa,
                .barometer_pa = in.number("b_inhg") * inch_mercury_pa,
                .k = in.number("k"),
                .mean_gas_temperature_k = in.number("tm_r") / 1.8});
}

double design_mean_c(const Inputs& in) {
    ApplianceCase appliance;
    appliance.type =
        in.text("kind") == "draft-hood" ? ApplianceType::draft_hood : ApplianceType::furnace;
    appliance.fuel_group = from_word<FuelGroup>(in.text("group")).value();
    return handbook::design_mean_temperature_k(appliance).value() - constants::celsius_zero_k;
}

} // namespace

void add_handbook_checks(Registry& registry) {
    registry["handbook_draft"] = {"theoretical draft", "Pa", [](const Inputs& in) {
                                      return handbook::theoretical_draft_pa(
                                          in.number("barometer_pa"),
                                          in.number("height_m"),
                                          in.number("outdoor_k"),
                                          in.number("gas_k"));
                                  }};
    registry["handbook_flow"] = {"gas over gross heat", "kg/MJ", flow_per_heat_kg_mj};
    registry["handbook_mass_flow"] = {"gas flow", "kg/s", [](const Inputs& in) {
                                          return handbook::mass_flow_kg_s(
                                              in.number("input_mw") * 1e6,
                                              in.number("flow_kg_mj") * 1e-6);
                                      }};
    registry["handbook_density"] = {"density of gas", "kg/m3", [](const Inputs& in) {
                                        return handbook::density_kg_m3(in.number("barometer_pa"),
                                                                       in.number("gas_k"));
                                    }};
    registry["handbook_velocity"] = {"velocity", "m/s", [](const Inputs& in) {
                                         return handbook::velocity_m_s(in.number("flow_kg_s"),
                                                                       in.number("density"),
                                                                       in.number("area_m2"));
                                     }};
    registry["handbook_loss"] = {"flow loss", "Pa", [](const Inputs& in) {
                                     return handbook::flow_loss_pa(in.number("k"),
                                                                   in.number("density"),
                                                                   in.number("velocity_m_s"));
                                 }};
    registry["handbook_capacity"] = {"input capacity", "kW", capacity_kw};
    registry["handbook_u"] = {"overall coefficient", "W/(m2 K)", transmittance};
    registry["handbook_wall_u"] = {"overall coefficient", "W/(m2 K)", wall_transmittance};
    registry["handbook_elbow"] = {"resistance coefficient", "", [](const Inputs& in) {
                                      return handbook::elbow_k(in.number("angle_deg")
                                                               * constants::pi / 180.0);
                                  }};
    registry["handbook_friction"] = {"resistance coefficient", "", [](const Inputs& in) {
                                         return handbook::friction_k(in.number("length_m"),
                                                                     in.number("diameter_m"));
                                     }};
    registry["handbook_mean"] = {"mean gas temperature", "degC", design_mean_c};
}

} // namespace published
