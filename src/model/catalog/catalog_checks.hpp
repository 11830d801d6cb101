#pragma once

#include "fluewright/model/catalog/catalog.hpp"

#include <algorithm>
#include <string_view>

/// What the compiler checks of the embedded tables over and above data/embed, which holds every
/// cell against its column: what the cells of a row, or two tables, owe each other.
namespace fluewright::catalog {

/// The elements of a fuel make up the whole, but for what the analysis left out.
template <class Fuels>
consteval bool analyses_complete(const Fuels& fuels) {
    return std::all_of(fuels.begin(), fuels.end(), [](const Fuel& fuel) {
        const double sum =
            fuel.carbon + fuel.hydrogen + fuel.oxygen + fuel.nitrogen + fuel.sulphur + fuel.ash;
        return sum > 0.995 && sum < 1.002;
    });
}

/// Each layer of a wall is "material thickness_mm" with a listed material, or "air gap width_mm".
template <class Walls, class Materials>
consteval bool layers_known(const Walls& walls, const Materials& materials) {
    for (const Wall& wall : walls) {
        for (std::string_view rest = wall.layers; !rest.empty();) {
            const std::string_view layer = rest.substr(0, rest.find('|'));
            rest.remove_prefix(std::min(layer.size() + 1, rest.size()));
            const auto space = layer.rfind(' ');
            if (space == std::string_view::npos || space + 1 == layer.size()
                || layer.find_first_not_of("0123456789.", space + 1) != std::string_view::npos) {
                return false;
            }
            const std::string_view name = layer.substr(0, space);
            const bool known =
                std::any_of(materials.begin(), materials.end(), [&](const Material& material) {
                    return material.id == name;
                });
            if (!known && name != "air gap") {
                return false;
            }
        }
    }
    return true;
}

/// Each wall has a rated gas temperature, or says why it has none.
template <class Walls>
consteval bool rated_or_said_why(const Walls& walls) {
    return std::all_of(walls.begin(), walls.end(), [](const Wall& wall) {
        return (wall.rated_gas_temperature_k > 0.0) == wall.unrated_because.empty();
    });
}

} // namespace fluewright::catalog
