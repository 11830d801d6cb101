#pragma once

#include "fluewright/advice/remedies/remedy.hpp"

/// What each kind of remedy does to an installation that is spelled out. A change that does not
/// apply leaves it as it was.
namespace fluewright::changes {

// Passage: remedy_passage.cpp
void open_damper(Installation& in);
void remove_damper(Installation& in);
void fit_damper(Installation& in, double blade_angle_rad);
void fit_regulator(Installation& in, double setting_pa);
void sweep(Installation& in);
void seal_joints(Installation& in);
/// Swaps the ends of pipe whose crimped end points up.
void turn_round(Installation& in);
void clean_screen(Installation& in);
void remove_screen(Installation& in);
void wider_mesh(Installation& in, double mesh_m);
void change_cap(Installation& in, Build build);

// Fire, door and room: remedy_fire.cpp
/// Raises the room's pressure to a value, where the file gives the pressure.
void air_inlet(Installation& in, double pressure_pa);
/// Adds an opening to the house, from which its pressure follows.
void house_inlet(Installation& in, double area_m2);
void stop_fans(Installation& in);
void dry_fuel(Installation& in, double moisture);
/// Burn rates of fuel as fired; the other end of the fire keeps its own.
void set_burn_rates(Installation& in, double high_kg_s, double low_kg_s);
void lower_door_opening(Installation& in, double height_m);
/// Raises the lower edge of an open front, whose upper edge stays.
void raise_hearth(Installation& in, double up_m);
/// Puts a stove of ordinary size in the place of an open hearth, on a liner in its masonry; nothing
/// where there is no masonry to line.
void fit_insert(Installation& in, double liner_m, const std::string& liner);

// Shape of the run: remedy_shape.cpp
void give_slope(Installation& in, double slope);
void smooth_elbows(Installation& in);
void two_45(Installation& in);
void shorten_level(Installation& in, double factor);
void straighten_level(Installation& in);
void remove_level(Installation& in);
/// From the walls whose distance the file gives, by so much each; a horizontal run becomes as much
/// longer, and upright pipe alone takes an offset at 45 degrees. Nothing where that has no height.
void move_heater(Installation& in, double away_m);
void shield_heater(Installation& in);
/// A chimney top that looks over the ridge and over all that is near, by the roof in the file, no
/// longer stands in its eddies. `wall` is what the flue outside the warm room is built of from then
/// on; empty: as it is.
void raise_top(Installation& in, double height_m, const std::string& wall);

// Pipe and walls: remedy_pipe.cpp
void connector_wall(Installation& in, const std::string& wall);
void black_pipe(Installation& in);
void remove_reducer(Installation& in);
void connector_size(Installation& in, double diameter_m);
void chimney_size(Installation& in, double diameter_m);
void pipe_size(Installation& in, double diameter_m);
void fit_shield(Installation& in);
void insulate_outside(Installation& in, const std::string& wall);
void enclose_outside(Installation& in);
void line_flue(Installation& in, double diameter_m, const std::string& wall);

} // namespace fluewright::changes
