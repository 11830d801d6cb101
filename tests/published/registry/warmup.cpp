#include "fluewright/core/constants.hpp"
#include "fluewright/model/catalog/catalog.hpp"
#include "fluewright/model/warmup/storing_wall.hpp"
#include "rebuilt.hpp"
#include "registry.hpp"

#include <cmath>
#include <stdexcept>

namespace published {
namespace {

using namespace fluewright;

/// "clay tile 16|fired brick 100", inside out, in millimetres.
WallBuild wall_named(const std::string& text) {
    WallBuild wall;
    std::string rest = text;
    while (!rest.empty()) {
        const std::string item = rest.substr(0, rest.find('|'));
        rest.erase(0, item.size() + 1);
        const std::size_t blank = item.rfind(' ');
        const catalog::Material* row = catalog::find_material(item.substr(0, blank));
        if (row == nullptr) {
            throw std::runtime_error("no material " + item);
        }
        wall.layers[wall.layer_count++] = {.thickness_m = 1e-3 * std::stod(item.substr(blank)),
                                           .conductivity_w_mk = row->conductivity_w_mk,
                                           .conductivity_slope_w_mk2 = 0.0,
                                           .density_kg_m3 = row->density_kg_m3,
                                           .specific_heat_j_kgk = row->specific_heat_j_kgk,
                                           .emissivity = row->emissivity};
    }
    return wall;
}

WallPlace place_of(const WallBuild& wall, const Inputs& in) {
    return {.wall = &wall,
            .inside_diameter_m = 1e-3 * in.number("diameter_mm"),
            .ambient_k = 293.15,
            .air_pressure_pa = constants::standard_pressure_pa,
            .wind_m_s = 0.0,
            .height_m = 3.0};
}

/// Heat that a wall of the catalog stores, on its inner face.
double wall_heat_kj_m2k(const Inputs& in) {
    Installation written;
    written.site.weather.push_back(rebuilt::calm(273.15));
    written.appliance.type = ApplianceType::stove;
    written.appliance.heat_input_w.high = 10e3;
    written.run.push_back(rebuilt::up(5.0, in.text("wall")));
    written.run.front().diameter_m = 0.15;
    const Case c = rebuilt::resolved(written);
    const WallBuild& wall = c.walls[c.sections.back().wall];
    return StoringWall({.wall = &wall,
                        .inside_diameter_m = 0.15,
                        .ambient_k = 293.15,
                        .air_pressure_pa = constants::standard_pressure_pa,
                        .wind_m_s = 0.0,
                        .height_m = 3.0})
               .heat_capacity_j_m2k()
           * 1e-3;
}

double time_constant_min(const Inputs& in) {
    const WallBuild wall = wall_named(in.text("layers"));
    const StoringWall storing(place_of(wall, in));
    return storing.heat_capacity_j_m2k() / in.number("inside_w_m2k") / 60.0;
}

/// Steps until the wall has taken up 1 - 1/e of what the gas could give it.
double to_63_percent_min(const Inputs& in) {
    const WallBuild wall = wall_named(in.text("layers"));
    const StoringWall storing(place_of(wall, in));
    std::vector<double> nodes(storing.node_count(), 293.15);
    std::vector<double> before;
    const double cold = storing.heat_j_m2(nodes);
    const double wanted = (1.0 - std::exp(-1.0)) * storing.heat_capacity_j_m2k() * 100.0;
    double time_s = 0.0;
    constexpr double step_s = 0.5;
    while (storing.heat_j_m2(nodes) - cold < wanted) {
        before = nodes;
        storing.step({.inside_w_m2k = in.number("inside_w_m2k"),
                      .gas_k = 393.15,
                      .outside_w_m2k = 0.0,
                      .ambient_k = 293.15},
                     step_s,
                     before,
                     nodes);
        time_s += step_s;
    }
    return time_s / 60.0;
}

} // namespace

void add_warmup_checks(Registry& registry) {
    registry["material_conductivity"] = {
        "conductivity", "W/(m K)", [](const Inputs& in) {
            const catalog::Material* row = catalog::find_material(in.text("material"));
            if (row == nullptr) {
                throw std::runtime_error("no material " + in.text("material"));
            }
            return row->conductivity_w_mk
                   + row->conductivity_slope_w_mk2 * (in.number("t_c") - 20.0);
        }};
    registry["wall_heat"] = {"heat of a wall", "kJ/(m2 K)", wall_heat_kj_m2k};
    registry["warmup_time_constant"] = {"time constant", "min", time_constant_min};
    registry["warmup_63_percent"] = {"time to 63 % of the heat", "min", to_63_percent_min};
}

} // namespace published
