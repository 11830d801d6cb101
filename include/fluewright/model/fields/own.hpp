#pragma once

#include "fluewright/model/fields/given.hpp"

#include <string>
#include <vector>

/// Fuels, walls and fittings of the user's own.
namespace fluewright {

/// A fuel of the user's own, dry analysis as mass shares.
struct OwnFuel {
    std::string id;
    Choice<FuelGroup> group;
    Given carbon;
    Given hydrogen;
    Given oxygen;
    Given nitrogen;
    Given sulphur;
    Given ash;
    Given gross_heating_value_dry_j_kg;
    Given net_heating_value_dry_j_kg;
    Given moisture;

    bool operator==(const OwnFuel&) const = default;
};

struct OwnLayer {
    Word material;
    Given thickness_m;
    Given conductivity_w_mk;

    bool operator==(const OwnLayer&) const = default;
};

struct OwnWall {
    std::string id;
    Choice<WallKind> kind;
    std::vector<OwnLayer> layers;
    Given thermal_resistance_m2k_w; ///< on the inside area, instead of layers
    Given outside_diameter_m;
    Given inner_emissivity;
    Given outer_emissivity;
    Given roughness_m;
    Given rated_gas_temperature_k;

    bool operator==(const OwnWall&) const = default;
};

struct OwnFitting {
    std::string id;
    Given loss;

    bool operator==(const OwnFitting&) const = default;
};

} // namespace fluewright
