#pragma once

#include "fluewright/model/fields/installation.hpp"

#include <string>

/// Parts as a file would name them.
namespace fluewright {

inline Part named(PartKind kind) {
    Part part;
    part.part = kind;
    return part;
}

inline Part straight_up(double rise_m, std::string wall, Zone zone) {
    Part part = named(PartKind::straight);
    part.up_m = rise_m;
    part.wall = std::move(wall);
    part.zone = zone;
    return part;
}

/// The same with a diameter, for runs built without a file.
inline Part pipe_up(double rise_m, std::string wall, Zone zone) {
    Part part = straight_up(rise_m, std::move(wall), zone);
    part.diameter_m = 0.15;
    return part;
}

} // namespace fluewright
