#include "fluewright/core/constants.hpp"
#include "fluewright/physics/atmosphere.hpp"
#include "fluewright/physics/door_flow.hpp"
#include "fluewright/physics/openings.hpp"
#include "registry.hpp"

namespace published {
namespace {

using namespace fluewright;

constexpr double zero_celsius_k = 273.15;

double dry_density(double celsius) {
    return atmosphere::density_kg_m3(
        constants::standard_pressure_pa, celsius + zero_celsius_k, 0.0);
}

/// A doorway with air outside and a room as hot throughout as its upper part, the neutral level
/// where it was measured.
door_flow::Flow doorway(const Inputs& in) {
    const door_flow::Opening opening{.width_m = in.number("width_m"),
                                     .height_m = in.number("height_m"),
                                     .room_density_kg_m3 = dry_density(in.number("ambient_c")),
                                     .box_density_kg_m3 = dry_density(in.number("upper_c"))};
    return door_flow::through(opening, door_flow::top_edge_pa(opening, in.number("neutral_m")));
}

} // namespace

void add_door_checks(Registry& registry) {
    registry["door_discharge"] = {
        "discharge coefficient", "", [](const Inputs&) { return openings::door_discharge; }};
    registry["door_inflow"] = {
        "mass flow", "kg/s", [](const Inputs& in) { return doorway(in).in_kg_s; }};
    registry["door_outflow"] = {
        "mass flow", "kg/s", [](const Inputs& in) { return doorway(in).out_kg_s; }};
}

} // namespace published
