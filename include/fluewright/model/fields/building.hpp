#pragma once

#include "fluewright/model/fields/given.hpp"

#include <vector>

/// What the heater has to keep warm.
namespace fluewright {

/// A part of the building that loses heat.
struct BuildingPart {
    Word name;
    Word element; ///< a row of the catalog
    Given area_m2;
    Given u_value_w_m2k;
    Given thermal_resistance_m2k_w;

    bool operator==(const BuildingPart&) const = default;
};

struct Building {
    std::vector<BuildingPart> parts;
    Given volume_m3;
    Given air_changes_per_s;
    Given outdoor_temperature_k; ///< to design for
    Given indoor_temperature_k;

    bool operator==(const Building&) const = default;
};

} // namespace fluewright
