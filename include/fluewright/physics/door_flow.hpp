#pragma once

/// Air in and gas out through an upright opening with hot gas behind it.   [theory eq. 27]
namespace fluewright::door_flow {

/// A rectangular opening between a room and a box that is evenly hot.
struct Opening {
    double width_m;
    double height_m;
    double room_density_kg_m3;
    double box_density_kg_m3;
};

struct Flow {
    double in_kg_s;  ///< of room air, low down
    double out_kg_s; ///< of what is in the box, higher up

    [[nodiscard]] double net_in_kg_s() const { return in_kg_s - out_kg_s; }
};

/// Both flows [kg/s] where the room exceeds the box by `top_pa` at the top edge of the opening.
///
///   dp(y) = dp_top + (rho_room - rho_box) g y, y down from the top edge
///   in    = C w integral sqrt(2 rho_room dp) dy where dp > 0
///   out   = C w integral sqrt(2 rho_box |dp|) dy where dp < 0,   C = openings::door_discharge
///
/// Source   Bernoulli over each height of a doorway with a fire behind it   [steckler-1982]
/// Range    a box at least as light as the room
/// Notes    in a room fire the lower part of the room stays cool, and less comes in than an evenly
///          hot box would let in: tests/published/door_flow.csv
[[nodiscard]] Flow through(const Opening& opening, double top_pa);

/// Room less box at the top edge [Pa] when the neutral level is so far over the lower edge.
[[nodiscard]] double top_edge_pa(const Opening& opening, double neutral_height_m);

} // namespace fluewright::door_flow
